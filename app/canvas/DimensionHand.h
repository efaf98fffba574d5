#pragma once
// The pointer pulls dimension lines out and drags those that are there.

#include <optional>
#include <string>

#include "canvas/PlanHand.h"
#include "session/Session.h"
#include "session/TaskDesk.h"
#include "tools/DimensionPull.h"

namespace sumpwright::canvas {

/// Two places, then how far off: three clicks. A typed length is how far off.
class DimensionHand final : public PlanHand {
 public:
  explicit DimensionHand(session::Session& session) : m_session(session) {}

  bool serves(tools::Task task) const override { return task == tools::Task::dimension; }
  void begin(tools::Task /*task*/) override { cancel(); }
  bool press(QPointF at) override;
  void move(QPointF at) override;
  void release() override;
  void hover(QPointF at) override { aim(at); }
  void cancel() override;
  bool isActive() const override { return m_down || (m_pull && m_pull->from().has_value()); }
  bool key(QKeyEvent& event) override;
  bool isTyping() const override { return !m_typed.isEmpty(); }
  std::optional<Qt::CursorShape> cursor(QPointF /*at*/) const override { return Qt::CrossCursor; }
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

 private:
  tools::DimensionPull& pull();
  void aim(QPointF at);
  void readTyped();
  void finish();

  session::Session& m_session;
  std::optional<tools::DimensionPull> m_pull;
  QPointF m_pointer;
  bool m_down = false;
  QString m_typed;
  QString m_warning;
};

/// While choosing: drags a dimension line nearer or further off.
class DimensionDragHand final : public PlanHand {
 public:
  explicit DimensionDragHand(session::Session& session) : m_session(session) {}

  bool serves(tools::Task task) const override { return task == tools::Task::choose; }
  bool press(QPointF at) override;
  void move(QPointF at) override;
  void release() override;
  void cancel() override;
  bool isActive() const override { return !m_dimension.empty(); }
  bool key(QKeyEvent& event) override;
  std::optional<Qt::CursorShape> cursor(QPointF at) const override;
  QString hint() const override;
  void paint(QPainter& /*painter*/, const drawing::Theme& /*theme*/,
             const QFont& /*font*/) const override {}

 private:
  std::string under(QPointF at) const;

  session::Session& m_session;
  std::string m_dimension;  ///< pressed on
  std::optional<plan::Job> m_before;
  QPointF m_pressed;
};

}  // namespace sumpwright::canvas
