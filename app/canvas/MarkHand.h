#pragma once
// The pointer marks a wall: an outside wall is split where it is clicked, a rising wall gets a gap
// between two clicks. A typed length, from the wall's first corner or along the rising wall, wins.

#include <optional>

#include "canvas/PlanHand.h"
#include "session/Session.h"
#include "tools/AlongMark.h"

namespace sumpwright::canvas {

class MarkHand final : public PlanHand {
 public:
  explicit MarkHand(session::Session& session) : m_session(session) {}

  bool serves(tools::Task task) const override {
    return task == tools::Task::split_wall || task == tools::Task::lay_gap;
  }
  void begin(tools::Task task) override;
  bool press(QPointF at) override;
  void move(QPointF at) override { aim(at); }
  void release() override;
  void hover(QPointF at) override { aim(at); }
  void leave() override;
  void cancel() override;
  bool isActive() const override { return m_down || m_gap_from || !m_typed.isEmpty(); }
  bool key(QKeyEvent& event) override;
  bool isTyping() const override { return !m_typed.isEmpty(); }
  std::optional<Qt::CursorShape> cursor(QPointF /*at*/) const override { return Qt::CrossCursor; }
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

 private:
  void aim(QPointF at);
  void readTyped();
  void readAlong(double at_m);
  void mark();
  void push(const QString& text, base::Result<plan::Job> after);
  bool fill();
  void paintWallMark(QPainter& painter, const drawing::Theme& theme, const QFont& font) const;
  void paintGapMark(QPainter& painter, const drawing::Theme& theme) const;
  QString liveText() const;

  session::Session& m_session;
  bool m_splits = true;  ///< the task: split a wall, else lay a gap
  std::optional<tools::WallMark> m_wall;
  std::optional<tools::RisingMark> m_rising;
  std::optional<tools::RisingMark> m_gap_from;
  QPointF m_pointer;
  bool m_down = false;
  QString m_typed;
  bool m_amiss = false;  ///< what is typed cannot be read, or is not on the wall
  QString m_warning;
};

}  // namespace sumpwright::canvas
