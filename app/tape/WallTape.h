#pragma once
// The wall tape, or the whole house as an unrolled elevation in its place, with the row of legend,
// totals and jumps.

#include <QWidget>

#include "tape/ElevationPicture.h"
#include "tape/Legend.h"
#include "tape/TapeStrip.h"

class QHBoxLayout;
class QStackedLayout;

namespace sumpwright::tape {

class WallTape final : public QWidget {
  Q_OBJECT

 public:
  explicit WallTape(session::Session& session, QWidget* parent = nullptr);
  TapeStrip* strip() const { return m_strip; }
  ElevationPicture* elevation() const { return m_elevation; }
  void showElevation(bool elevation);
  /// A control at the left of the row, or a button at its right; the tape takes it over.
  void addLeading(QWidget* widget);
  void addTrailing(QWidget* widget);

 private:
  QHBoxLayout* m_row;
  Legend* m_legend;
  TapeStrip* m_strip;
  ElevationPicture* m_elevation;
  QStackedLayout* m_either;
};

}  // namespace sumpwright::tape
