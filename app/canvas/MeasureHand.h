#pragma once
// The pointer measures: pressed and dragged, or two clicks, between places it snaps to. What was
// measured stays on show until the next or Escape; nothing in the job changes.

#include <optional>

#include "canvas/PlanHand.h"
#include "session/Session.h"
#include "tools/Snap.h"

namespace sumpwright::canvas {

class MeasureHand final : public PlanHand {
 public:
  explicit MeasureHand(session::Session& session) : m_session(session) {}

  bool serves(tools::Task task) const override { return task == tools::Task::measure; }
  void begin(tools::Task /*task*/) override { cancel(); }
  bool press(QPointF at) override;
  void move(QPointF at) override;
  void release() override;
  void hover(QPointF at) override;
  void leave() override { m_snapped.reset(); }
  void cancel() override;
  bool isActive() const override { return m_from.has_value() && !m_done; }
  bool key(QKeyEvent& event) override;
  std::optional<Qt::CursorShape> cursor(QPointF /*at*/) const override { return Qt::CrossCursor; }
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

 private:
  void aim(QPointF at);

  session::Session& m_session;
  std::optional<tools::Snapped> m_snapped;
  std::optional<geometry::Point> m_from;
  geometry::Point m_to;
  bool m_done = false;   ///< both ends are laid
  bool m_fresh = false;  ///< the press that is on laid the first end
  QPointF m_pressed;
};

}  // namespace sumpwright::canvas
