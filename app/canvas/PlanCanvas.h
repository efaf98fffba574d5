#pragma once
// The plan on screen: the house and its stretches as one cached picture, the sump on top of it.
// Translates Qt's events into tools and session calls and paints draw lists; it decides nothing.
//
// Pointer: a press on a sump's grip or hole chooses that sump, a drag moves it; a press on the
// wall's band moves the one chosen there; drag empty paper (or with
// the middle button, or with the space bar held) to pan; wheel and pinch zoom about the pointer; a
// click chooses the thing under it. Escape gives a drag up. While the house is surveyed the pointer
// does what the strip at the left says instead (PlanHand.h), and the sump stays where it is.

#include <QImage>
#include <QPoint>
#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "canvas/Camera.h"
#include "canvas/FieldLayer.h"
#include "canvas/PictureLayer.h"
#include "canvas/PlanHand.h"
#include "canvas/TaskStrip.h"
#include "paint/QtVoice.h"
#include "session/PictureDesk.h"
#include "session/Session.h"
#include "session/TapeDesk.h"
#include "session/TaskDesk.h"
#include "tools/SiteDrag.h"

class QAction;
class QLabel;
class QToolButton;

namespace sumpwright::canvas {

inline constexpr double kPxPerMm = 4.0;  // 1 px at 100 % is 0.25 mm (own figure)

class PlanCanvas final : public QWidget {
  Q_OBJECT

 public:
  explicit PlanCanvas(session::Session& session, QWidget* parent = nullptr);

  /// The zoom buttons at the corner press these.
  void setZoomActions(QAction* in, QAction* out, QAction* fit);
  void zoomBy(double factor);
  void fit();
  /// Both must outlive the canvas.
  void setDesks(session::TapeDesk& tape, session::TaskDesk& tasks);
  /// The picture under the plan. Contract: setDesks() was called; `picture` outlives the canvas.
  void setPicture(session::PictureDesk& picture);
  /// The field under the floor, drawn while it is asked for. `desk` outlives the canvas.
  void setSuction(session::SuctionDesk& desk);
  void setShowingField(bool showing);
  bool isShowingField() const { return m_showing_field; }
  /// What the strip offers. Contract: setDesks() was called.
  void setTasks(const std::vector<TaskChoice>& choices);
  /// nullptr before setTasks().
  TaskStrip* strip() const { return m_strip; }
  /// How a refusal is worded: by the names of things. Without it their ids stay.
  void setSentences(std::function<QString(const base::Message&, const plan::Job&)> sentence);
  /// What to do next, as shown in the survey.
  QString hint() const;
  /// Whether the pointer surveys the house or sites the sump. Contract: setDesks() was called.
  void setSurveying(bool surveying);
  bool isSurveying() const { return m_surveying; }

  const Camera& camera() const { return m_camera; }
  QPointF toWidget(geometry::Point plan_m) const { return m_camera.toWidget(plan_m, size()); }
  /// Middle of the grip; nothing without a sump on show.
  std::optional<QPointF> grip() const;
  bool isDragging() const { return m_drag.has_value(); }
  /// Milliseconds the latest picture and the latest sump (with the field under it) took to paint;
  /// for the tests' budgets.
  double basePaint_ms() const { return m_base_ms; }
  double markerPaint_ms() const { return m_marker_ms; }

 Q_SIGNALS:
  /// A digit was typed: the beginning of a distance.
  void digitTyped(const QString& text);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  bool event(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  bool focusNextPrevChild(bool next) override;

 private:
  double scale() const;
  drawing::PlanView view() const;
  paint::QtVoice voice() const;
  void lookAgain();  ///< the picture is out of date
  void renderBase();
  void refreshBase();
  bool drawsField() const;
  void paintMarker(QPainter& painter);
  void paintHover(QPainter& painter);
  drawing::DrawList outline() const;
  void makeHands();
  std::optional<session::PictureDesk::Layer> pictureLayer() const;
  void lookAtPicture();
  /// The one whose gesture is on, or nullptr.
  PlanHand* activeHand() const;
  /// Those that serve the task in force, told how the plan is looked at; none while the sump is
  /// sited.
  std::vector<PlanHand*> hands() const;
  void takeTask();
  void cancelHands();
  bool handKey(QKeyEvent& event);
  void refreshHint();
  void placeButtons();
  Covered covered() const;
  /// The sump whose grip or hole is nearest to a point within reach; empty: none.
  std::string sumpUnder(QPointF at);
  bool onBand(QPointF at) const;
  void startDrag(tools::SiteDrag drag);
  void endDrag(bool keep);
  void hoverAt(QPointF at);
  std::string thingUnder(QPointF at) const;
  void pickAt(QPointF at);
  void takeOutChosen();
  void showThing(const std::string& id);
  void setCamera(const Camera& camera);
  void updateCursor(QPointF at);

  session::Session& m_session;
  Camera m_camera;
  bool m_fitted = true;  ///< refit when the widget grows
  QImage m_base;
  std::vector<drawing::Box> m_words;  ///< of the base, which the marker's keep off
  bool m_base_old = true;
  std::string m_base_sump;  ///< the one left to paintMarker()
  std::vector<drawing::SumpSign> m_signs;
  drawing::DrawList m_others;  ///< the other sumps
  double m_base_ms = 0.0;
  double m_marker_ms = 0.0;
  std::optional<tools::SiteDrag> m_drag;
  session::TapeDesk* m_desk = nullptr;
  session::TaskDesk* m_tasks = nullptr;
  Speech m_speech;
  std::vector<std::unique_ptr<PlanHand>> m_hands;
  std::optional<FieldLayer> m_field;
  bool m_showing_field = false;
  bool m_base_has_field = false;
  std::string m_left_behind;  ///< chosen on another stage: stays chosen, but is not outlined here
  session::PictureDesk* m_picture = nullptr;
  PictureLayer m_picture_layer;
  int m_picture_seen = 0;
  std::vector<plan::Ring> m_rings_seen;
  TaskStrip* m_strip = nullptr;
  QLabel* m_hint = nullptr;
  bool m_surveying = false;
  std::optional<QPointF> m_pan;  ///< where the pointer was when panning
  Qt::MouseButton m_pan_button = Qt::LeftButton;
  QPointF m_pressed;
  bool m_clicking = false;
  bool m_space = false;
  QToolButton* m_zoom[3] = {};
};

}  // namespace sumpwright::canvas
