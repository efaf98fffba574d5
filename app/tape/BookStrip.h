#pragma once
// The field book along the bottom: each wall as taped, as it became when the closing error was
// shared out, and the corners between them on one scale. A click takes a wall in hand.

#include <QWidget>

#include "session/Session.h"
#include "session/TapeDesk.h"

namespace sumpwright::tape {

class BookStrip final : public QWidget {
  Q_OBJECT

 public:
  BookStrip(session::Session& session, session::TapeDesk& desk, QWidget* parent = nullptr);
  QSize sizeHint() const override;
  /// Where a wall's block is painted; empty for a wall that is not there.
  QRectF block(std::size_t wall) const;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  bool event(QEvent* event) override;

 private:
  struct Piece {
    double from_m = 0.0;
    double to_m = 0.0;
    double shared_m = 0.0;  ///< as it is in the plan
    bool draft = false;
  };
  std::vector<Piece> pieces() const;
  double left() const;
  double pxPerMetre(const std::vector<Piece>& pieces) const;
  std::optional<std::size_t> wallAt(QPointF at) const;

  session::Session& m_session;
  session::TapeDesk& m_desk;
};

}  // namespace sumpwright::tape
