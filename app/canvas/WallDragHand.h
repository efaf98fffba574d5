#pragma once
// The pointer on what stands on walls: a click chooses it, a drag takes it along its wall or to
// another, the ends of the one chosen change its width. Typed numbers win: the distance from the
// left corner seen from outside, then the width; at an end, the width.

#include <functional>

#include "canvas/PlanHand.h"
#include "session/Session.h"
#include "tools/WallThingDrag.h"

namespace sumpwright::canvas {

class WallDragHand final : public PlanHand {
 public:
  /// What is drawn at a place of the widget; empty: nothing.
  using Pick = std::function<std::string(QPointF at)>;

  WallDragHand(session::Session& session, Pick pick)
      : m_session(session), m_pick(std::move(pick)) {}

  bool serves(tools::Task task) const override { return task == tools::Task::choose; }
  bool press(QPointF at) override;
  void move(QPointF at) override;
  void release() override;
  void cancel() override;
  bool isActive() const override { return m_grip.has_value(); }
  bool key(QKeyEvent& event) override;
  bool isTyping() const override { return m_grip && !m_typed.isEmpty(); }
  std::optional<Qt::CursorShape> cursor(QPointF at) const override;
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

 private:
  std::optional<tools::WallGrip> gripAt(QPointF at) const;
  bool beginDrag();
  void apply(base::Result<plan::Job> live);
  void takeTyped();
  bool isAmiss() const;
  void paintEnds(QPainter& painter, const drawing::Theme& theme) const;
  void reset();

  session::Session& m_session;
  Pick m_pick;
  std::optional<tools::WallGrip> m_grip;       ///< pressed on
  std::optional<tools::WallThingDrag> m_drag;  ///< since it moved
  std::optional<base::Problem> m_refusal;      ///< why it is not where the pointer is
  QPointF m_pressed;
  QPointF m_pointer;
  QString m_typed;
};

}  // namespace sumpwright::canvas
