#pragma once
// While choosing: drags points (gullies, sockets, holes …) at once, and of the chosen line or area
// its points, the middle of a side (a new point comes out of it) or, on the line itself, all of it.
// A press on a point takes it in hand; Delete takes out what is in hand.

#include <optional>

#include "canvas/PlanHand.h"
#include "session/Session.h"
#include "tools/PointDrag.h"

namespace sumpwright::canvas {

class PointHand final : public PlanHand {
 public:
  explicit PointHand(session::Session& session) : m_session(session) {}

  bool serves(tools::Task task) const override { return task == tools::Task::choose; }
  bool press(QPointF at) override;
  void move(QPointF at) override;
  void release() override;
  void hover(QPointF /*at*/) override { m_warning.clear(); }
  void cancel() override;
  bool isActive() const override { return m_grip.has_value(); }
  bool key(QKeyEvent& event) override;
  bool isTyping() const override { return !m_typed.isEmpty(); }
  std::optional<Qt::CursorShape> cursor(QPointF at) const override;
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

  /// The point in hand of the chosen thing.
  std::optional<int> vertexInHand() const;

 private:
  std::optional<tools::PointGrip> gripAt(QPointF at) const;
  bool beginDrag();
  void apply(base::Result<plan::Job> live);
  void readTyped();
  bool remove();
  void paintHandles(QPainter& painter, const drawing::Theme& theme) const;
  QString liveText() const;

  session::Session& m_session;
  std::optional<tools::PointGrip> m_grip;     ///< pressed on
  std::optional<tools::PointDrag> m_drag;     ///< since it moved
  std::optional<tools::PointGrip> m_in_hand;  ///< a vertex that was pressed last
  QPointF m_pressed;
  QPointF m_pointer;
  QString m_typed;
  bool m_amiss = false;  ///< what is typed cannot be read, or cannot be
  QString m_warning;     ///< why the point in hand stays; until the pointer goes on
};

}  // namespace sumpwright::canvas
