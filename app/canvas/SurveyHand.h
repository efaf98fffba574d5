#pragma once
// The pointer on the outline: draws walls from the end of the tape, drags corners and walls of a
// closed outline, and shows what it snaps to. A click takes a corner in hand, Delete takes it out.

#include <optional>

#include "canvas/PlanHand.h"
#include "session/Session.h"
#include "session/TapeDesk.h"
#include "tools/OutlineDrag.h"

namespace sumpwright::canvas {

class SurveyHand final : public PlanHand {
 public:
  SurveyHand(session::Session& session, session::TapeDesk& desk)
      : m_session(session), m_desk(desk) {}

  bool serves(tools::Task task) const override { return task == tools::Task::choose; }
  bool press(QPointF at) override;
  void move(QPointF at) override;
  void release() override;
  void hover(QPointF /*at*/) override { m_warning.clear(); }
  void cancel() override;
  bool isActive() const override { return m_drawing || m_grip.has_value(); }
  /// Figures fix the length, Enter ends, Escape gives up.
  bool key(QKeyEvent& event) override;
  std::optional<Qt::CursorShape> cursor(QPointF at) const override;
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

 private:
  tools::SnapField drawField() const;
  bool atTapeEnd(QPointF at) const;
  std::optional<tools::OutlineGrip> gripAtPlan(geometry::Point at_m) const;
  void beginHere(QPointF at);
  void beginDrag();
  void apply(base::Result<plan::Job> live);
  void readTyped();
  bool removeCorner();
  /// Whether that corner is in hand still: an undo may have taken it away.
  bool isInHand(int ring, int corner) const;
  void paintHandles(QPainter& painter, const drawing::Theme& theme) const;
  QString liveText() const;

  session::Session& m_session;
  session::TapeDesk& m_desk;
  bool m_drawing = false;
  std::optional<geometry::Point> m_before_start;
  tools::Snapped m_snapped;
  std::optional<tools::OutlineGrip> m_grip;    ///< pressed on
  std::optional<tools::OutlineDrag> m_drag;    ///< since it moved
  std::optional<tools::OutlineGrip> m_corner;  ///< in hand: clicked last
  geometry::Point m_corner_m;                  ///< where it stood then
  QPointF m_pointer;
  QPointF m_pressed;
  geometry::Point m_pressed_m;
  bool m_moved = false;
  QString m_typed;
  bool m_amiss = false;  ///< what is typed cannot be read, or cannot be
  QString m_warning;     ///< why the corner in hand stays; until the pointer goes on
};

}  // namespace sumpwright::canvas
