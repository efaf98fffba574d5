#pragma once
// The pointer laying things on walls: a ghost under it with what a tape would show, a click or
// Enter lays it, and the next is in hand at once. Typed numbers fix the distance from the left
// corner seen from outside, then the width (Tab or space between).

#include "canvas/PlanHand.h"
#include "session/Session.h"
#include "tools/WallLaying.h"

namespace sumpwright::canvas {

class WallLayHand final : public PlanHand {
 public:
  explicit WallLayHand(session::Session& session) : m_session(session) {}

  bool serves(tools::Task task) const override { return tools::laysOnWall(task); }
  void begin(tools::Task task) override;
  bool press(QPointF at) override;
  void move(QPointF at) override { hover(at); }
  void release() override;
  void hover(QPointF at) override;
  void leave() override;
  void cancel() override;
  bool isActive() const override { return m_pressed || !m_typed.isEmpty(); }
  bool key(QKeyEvent& event) override;
  bool isTyping() const override { return !m_typed.isEmpty(); }
  std::optional<Qt::CursorShape> cursor(QPointF at) const override;
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

 private:
  std::optional<tools::WallGhost> ghost() const;
  void lay();
  void takeTyped();

  session::Session& m_session;
  std::optional<tools::WallLaying> m_laying;
  QPointF m_pointer;
  bool m_pressed = false;
  std::optional<QPointF> m_laid_under;    ///< the pointer has not left what it laid
  std::optional<plan::OnWall> m_laid_at;  ///< the latest, whose wall typing goes on along
  QString m_typed;
};

}  // namespace sumpwright::canvas
