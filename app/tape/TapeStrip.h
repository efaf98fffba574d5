#pragma once
// The unrolled wall: score curve, verdict and a lane per rule, the sump on top. Press or drag
// anywhere on it to move the sump; the wheel scrolls the lanes; hover shows the same place on the
// plan.

#include <QPixmap>
#include <QWidget>
#include <optional>

#include "drawing/TapeDrawing.h"
#include "paint/QtVoice.h"
#include "session/Session.h"
#include "session/SuctionDesk.h"

namespace sumpwright::tape {

class TapeStrip final : public QWidget {
  Q_OBJECT

 public:
  explicit TapeStrip(session::Session& session, QWidget* parent = nullptr);
  QSize sizeHint() const override;

  /// The curve of reach instead of score and rules, while it is asked for. `desk` outlives the
  /// strip.
  void setSuction(session::SuctionDesk& desk);
  void setShowingReach(bool showing);
  bool isShowingReach() const { return m_reach; }

  /// What the strip shows but for the sumps. Contract: there is a study.
  drawing::DrawList picture() const;
  /// Widget x of a place, for tests and for the grip.
  double xOf(perimeter::Place place) const;
  bool isDragging() const { return m_dragging; }
  double basePaint_ms() const { return m_base_ms; }

 Q_SIGNALS:
  void digitTyped(const QString& text);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  bool event(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  double scale() const;
  drawing::TapeView view() const;
  paint::QtVoice voice() const;
  perimeter::Place placeAt(double x) const;
  bool onLanes(QPointF at) const;
  /// The sump whose grip on top is nearest to a point within reach; empty: none.
  std::string sumpUnder(QPointF at) const;
  void lookAgain();
  base::Message absence() const;
  void renderBase();
  void followPlace();
  void endDrag(bool keep);

  session::Session& m_session;
  session::SuctionDesk* m_suction = nullptr;
  bool m_reach = false;
  QPixmap m_base;
  bool m_base_old = true;
  std::string m_base_sump;  ///< the one that is not in the picture
  double m_base_ms = 0.0;
  double m_scroll_mm = 0.0;
  std::string m_deciding;
  bool m_dragging = false;
  double m_grab_px = 0.0;  ///< from the place to the pointer
};

}  // namespace sumpwright::tape
