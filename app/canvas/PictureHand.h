#pragma once
// The pointer on the picture under the plan, while its page is open: moves it, sets the two points
// of a known length, drags the four corners of a known rectangle. Comes before the other hands.
// A picture that is not there is said on the plan, whatever page is open.

#include "canvas/PlanHand.h"
#include "session/PictureDesk.h"

namespace sumpwright::canvas {

class PictureHand final : public PlanHand {
 public:
  PictureHand(session::Session& session, session::PictureDesk& desk)
      : m_session(session), m_desk(desk) {}

  bool serves(tools::Task) const override { return true; }
  /// While it can be moved or a tool is in hand, nothing else on the plan is.
  bool isAlone() const override;
  bool press(QPointF at) override;
  void move(QPointF at) override;
  void release() override;
  void cancel() override;
  bool isActive() const override { return m_active; }
  /// Arrows move what is in hand, Page up and Page down take the next corner, Escape gives the tool
  /// up; figures are left to the panel.
  bool key(QKeyEvent& event) override;
  std::optional<Qt::CursorShape> cursor(QPointF at) const override;
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

 private:
  using Tool = session::PictureDesk::Tool;
  double reach_m() const;
  /// The mark in hand, on the plan.
  geometry::Point markAt() const;
  bool inPicture(geometry::Point at) const;
  geometry::Point toPhoto(geometry::Point at) const;
  double reach_px() const;
  bool nudge(geometry::Vec by_m);
  void paintMissing(QPainter& painter, const drawing::Theme& theme, const QFont& font) const;
  void paintPoints(QPainter& painter, const drawing::Theme& theme, const QFont& font) const;
  void paintCorners(QPainter& painter, const drawing::Theme& theme, const QFont& font) const;
  void paintHandle(QPainter& painter, const drawing::Theme& theme, QPointF at, bool current) const;

  session::Session& m_session;
  session::PictureDesk& m_desk;
  bool m_active = false;
  QPointF m_pressed;
  QPointF m_pointer;
  bool m_slipped = false;
  geometry::Quad m_before;  ///< corners, to be put back
  geometry::Vec m_rod;      ///< from the pointer to the mark, plan metres
};

}  // namespace sumpwright::canvas
