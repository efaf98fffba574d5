#pragma once
// What the pointer does on the plan while the house is surveyed, as one object for each way of
// working: the canvas hands its events over, and jobs change only through session and desks.
//
// Of the hands that serve the task in force (tools/Task.h) the canvas asks each in turn whether it
// takes a press; the one that does is active and gets all moves and keys until it is released or
// cancelled. All that serve are painted and told where the pointer hovers. How to add one: see
// tools/Task.h.

#include <QFont>
#include <QPainter>
#include <QPointF>
#include <QSizeF>
#include <QString>
#include <functional>
#include <optional>

#include "base/Problem.h"
#include "canvas/Camera.h"
#include "drawing/Theme.h"
#include "plan/Job.h"
#include "tools/Task.h"

class QKeyEvent;

namespace sumpwright::canvas {

/// How the plan is looked at, for reaches in pixels and grids in metres.
struct Sight {
  Camera camera;
  QSizeF size;
  double scale = 1.0;   ///< of the window's signs and texts
  bool traces = false;  ///< a picture lies under the plan

  double metres(double px) const { return px * scale / camera.px_per_m; }
  QPointF widget(geometry::Point p) const { return camera.toWidget(p, size); }
  geometry::Point plan(QPointF at) const { return camera.toPlan(at, size); }
  /// Coarser where a pixel is more: 5 cm from afar, 1 cm near or over a picture, whose walls stand
  /// on no grid (own figures).
  double grid_m() const { return traces || camera.px_per_m >= 120.0 ? 0.01 : 0.05; }
};

/// The canvas's words for what hands say.
struct Speech {
  /// A sentence in which things go by their names, not by their ids.
  std::function<QString(const base::Message&, const plan::Job&)> sentence;
  std::function<QString()> task;  ///< "Drain run": what the task in force lays
};

class PlanHand {
 public:
  virtual ~PlanHand() = default;

  /// Must outlive the hand.
  void speakBy(const Speech& speech) { m_speech = &speech; }

  virtual bool serves(tools::Task task) const = 0;
  /// While true, the hands after it have nothing to do on the plan.
  virtual bool isAlone() const { return false; }
  /// Before every other call, the latest.
  void look(const Sight& sight) { m_sight = sight; }
  /// A task it serves is taken up.
  virtual void begin(tools::Task /*task*/) {}

  /// True when the press is taken; the next hand is asked otherwise, then the canvas pans or picks.
  virtual bool press(QPointF at) = 0;
  /// The pointer with the button down, after a press that was taken.
  virtual void move(QPointF at) = 0;
  virtual void release() = 0;
  /// The pointer without a button down, while no hand is active.
  virtual void hover(QPointF /*at*/) {}
  /// The pointer has left the plan.
  virtual void leave() {}
  /// Gives the gesture up: nothing has changed. Must stand being called at any time.
  virtual void cancel() = 0;
  /// A gesture is on: a press was taken, or numbers are being typed.
  virtual bool isActive() const = 0;
  /// True when the key is taken. Asked while active, and while its task is in force.
  virtual bool key(QKeyEvent& event) = 0;
  /// Whether Tab and Space go to key() too.
  virtual bool isTyping() const { return false; }

  /// What lies under the pointer for it; nothing: no matter.
  virtual std::optional<Qt::CursorShape> cursor(QPointF /*at*/) const { return std::nullopt; }
  /// One sentence: what to do next; empty: leave it to the others.
  virtual QString hint() const { return {}; }
  /// Handles, ghost, guides and live lengths over the plan.
  virtual void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const = 0;

 protected:
  const Sight& sight() const { return m_sight; }
  /// Contract for both: speakBy() was called.
  QString why(const base::Problem& problem, const plan::Job& job) const {
    return m_speech->sentence(problem.message, job);
  }
  QString taskTitle() const { return m_speech->task(); }

 private:
  Sight m_sight;
  const Speech* m_speech = nullptr;
};

}  // namespace sumpwright::canvas
