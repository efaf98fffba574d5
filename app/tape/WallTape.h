#pragma once
// The wall tape with its row of legend, totals and jumps.

#include <QWidget>

#include "tape/Legend.h"
#include "tape/TapeStrip.h"

class QHBoxLayout;

namespace sumpwright::tape {

class WallTape final : public QWidget {
  Q_OBJECT

 public:
  explicit WallTape(session::Session& session, QWidget* parent = nullptr);
  TapeStrip* strip() const { return m_strip; }
  /// A control at the left of the row, or a button at its right; the tape takes it over.
  void addLeading(QWidget* widget);
  void addTrailing(QWidget* widget);

 private:
  QHBoxLayout* m_row;
  Legend* m_legend;
  TapeStrip* m_strip;
};

}  // namespace sumpwright::tape
