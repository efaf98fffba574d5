#pragma once
// The pointer lays points, lines and areas: a click a point, Enter or a double click the end; an
// area also as a rectangle pulled open. Numbers typed meanwhile win (tools/Laying.h); Backspace
// takes the last point back, Escape gives up what is being laid and nothing else.

#include <optional>

#include "canvas/PlanHand.h"
#include "session/Session.h"
#include "session/TapeDesk.h"
#include "session/TaskDesk.h"
#include "tools/Laying.h"

namespace sumpwright::canvas {

class LayHand final : public PlanHand {
 public:
  /// All must outlive the hand.
  LayHand(session::Session& session, session::TaskDesk& tasks, session::TapeDesk& tape)
      : m_session(session), m_tasks(tasks), m_tape(tape) {}

  bool serves(tools::Task task) const override;
  void begin(tools::Task task) override;
  bool press(QPointF at) override;
  void move(QPointF at) override;
  void release() override;
  void hover(QPointF at) override;
  void leave() override;
  void cancel() override;
  bool isActive() const override;
  bool key(QKeyEvent& event) override;
  bool isTyping() const override { return !m_typed.isEmpty(); }
  std::optional<Qt::CursorShape> cursor(QPointF /*at*/) const override { return Qt::CrossCursor; }
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

 private:
  /// What is being laid, on the job as it is now; begun anew where there is none.
  tools::Laying& laying();
  void aim(QPointF at);
  void click(QPointF at);
  void beginAnew();
  void enter();
  void finish();
  bool takesText(const QString& text) const;
  QString liveText() const;
  void paintLaid(QPainter& painter, const drawing::Theme& theme) const;
  void paintToWalls(QPainter& painter, const drawing::Theme& theme, const QFont& font) const;

  session::Session& m_session;
  session::TaskDesk& m_tasks;
  session::TapeDesk& m_tape;
  std::optional<tools::Laying> m_laying;
  QPointF m_pointer;
  QPointF m_pressed;
  bool m_on_plan = false;  ///< the pointer is over the plan
  bool m_down = false;
  bool m_pulled = false;  ///< a rectangle, since the press
  QString m_typed;
  QString m_warning;  ///< why the last could not be
};

}  // namespace sumpwright::canvas
