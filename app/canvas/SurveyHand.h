#pragma once
// The pointer on the plan while the house is measured: draws walls from the end of the tape, drags
// corners and walls of a closed outline, and shows what it snaps to. The canvas hands its events
// over; jobs change only through session and desk.

#include <QPainter>
#include <QPointF>
#include <optional>

#include "canvas/Camera.h"
#include "session/Session.h"
#include "session/TapeDesk.h"
#include "tools/OutlineDrag.h"

class QKeyEvent;

namespace sumpwright::canvas {

class SurveyHand {
 public:
  SurveyHand(session::Session& session, session::TapeDesk& desk)
      : m_session(session), m_desk(desk) {}

  /// Pixels a metre and the window's scale, for reach and grid.
  void look(const Camera& camera, QSizeF size, double scale);

  /// True when the press is taken; the canvas pans or picks otherwise.
  bool press(QPointF at);
  void move(QPointF at);
  void release();
  /// Gives the gesture up: nothing has changed.
  void cancel();
  bool isActive() const { return m_drawing || m_grip.has_value(); }
  /// A key during a gesture: figures fix the length, Enter ends, Escape gives up. True when taken.
  bool key(QKeyEvent& event);
  /// What the pointer would take hold of.
  std::optional<tools::OutlineGrip> gripAt(QPointF at) const;
  bool atTapeEnd(QPointF at) const;

  /// Handles, guides and the live length over the plan.
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const;

 private:
  double metres(double px) const { return px * m_scale / m_camera.px_per_m; }
  double grid_m() const;
  tools::SnapField drawField() const;
  std::optional<tools::OutlineGrip> gripAtPlan(geometry::Point at_m) const;
  void beginDrag();
  void apply(base::Result<plan::Job> live);
  void paintHandles(QPainter& painter, const drawing::Theme& theme) const;
  void paintGuides(QPainter& painter, const drawing::Theme& theme,
                   const tools::Snapped& snapped) const;
  void paintPlate(QPainter& painter, const drawing::Theme& theme, const QFont& font, QPointF at,
                  const QString& text) const;
  QString liveText() const;
  QPointF widget(geometry::Point p) const { return m_camera.toWidget(p, m_size); }

  session::Session& m_session;
  session::TapeDesk& m_desk;
  Camera m_camera;
  QSizeF m_size;
  double m_scale = 1.0;
  bool m_drawing = false;
  tools::Snapped m_snapped;
  std::optional<tools::OutlineGrip> m_grip;  ///< pressed on
  std::optional<tools::OutlineDrag> m_drag;  ///< since it moved
  QPointF m_pointer;
  QPointF m_pressed;
  geometry::Point m_pressed_m;
  bool m_moved = false;
  QString m_typed;
};

}  // namespace sumpwright::canvas
