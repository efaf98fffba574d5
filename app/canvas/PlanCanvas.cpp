// PlanCanvas: the picture. Its input stands in PlanCanvasInput.cpp.

#include "canvas/PlanCanvas.h"

#include <QAction>
#include <QElapsedTimer>
#include <QEvent>
#include <QPainter>
#include <QToolButton>
#include <algorithm>
#include <cmath>

#include "canvas/PlanPicker.h"
#include "drawing/OutlineDrawing.h"
#include "paint/Look.h"
#include "paint/Painting.h"
#include "plan/SumpList.h"

namespace sumpwright::canvas {

namespace {

constexpr double kLeastStepBack = 0.4;  // own figure: below, the house would be too small to read

/// Lower left and upper right of a picture and what is drawn.
std::pair<geometry::Point, geometry::Point> boxWith(const std::array<geometry::Point, 4>& picture,
                                                    const plan::Plan& plan) {
  geometry::Point low = picture[0];
  geometry::Point high = picture[0];
  const auto take = [&](geometry::Point p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  };
  for (const geometry::Point p : picture) take(p);
  for (const plan::Ring& ring : plan.rings) {
    for (const geometry::Point p : ring.corners) take(p);
  }
  return {low, high};
}

}  // namespace

PlanCanvas::PlanCanvas(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  grabGesture(Qt::PinchGesture);
  setMinimumSize(240, 180);
  setAccessibleName(tr("Plan"));
  setAccessibleDescription(
      tr("The house from above. Arrow keys move the sump along the wall by 10 cm, with Shift by 1 "
         "cm."));
  connect(&session, &session::Session::jobChanged, this, [this] {
    m_drag.reset();
    m_fitted = true;
    fit();
  });
  connect(&session, &session::Session::studyChanged, this, [this] {
    // While an outline grows it is kept in sight, unless the user has chosen what to look at.
    // Over a picture that is traced nothing moves, nor when it is hidden.
    const bool grows = m_session.hasJob() && m_session.job().plan.rings != m_rings_seen;
    if (grows) m_rings_seen = m_session.job().plan.rings;
    if (grows && m_fitted && m_session.study() == nullptr && !m_session.isPreviewing() &&
        !pictureLayer()) {
      fit();
    }
    lookAgain();
  });
  connect(&session, &session::Session::selectionChanged, this, [this] {
    m_left_behind.clear();
    lookAgain();
  });
  connect(&session, &session::Session::placeChanged, this, qOverload<>(&QWidget::update));
  connect(&session, &session::Session::hoverChanged, this, qOverload<>(&QWidget::update));
  connect(&session, &session::Session::showRequested, this, &PlanCanvas::showThing);
}

void PlanCanvas::setZoomActions(QAction* in, QAction* out, QAction* fit) {
  int i = 0;
  for (QAction* action : {in, out, fit}) {
    auto* button = new QToolButton(this);
    button->setProperty("role", QStringLiteral("square"));
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonIconOnly);
    button->setFocusPolicy(Qt::TabFocus);
    button->setAccessibleName(action->text().remove(QLatin1Char('&')));
    m_zoom[i++] = button;
  }
  placeButtons();
}

void PlanCanvas::placeButtons() {
  const int side = qRound(38 * scale());
  const int margin = qRound(16 * scale());
  for (int i = 0; i < 3; ++i) {
    if (m_zoom[i] == nullptr) continue;
    m_zoom[i]->setIconSize(QSize(side / 2, side / 2));
    m_zoom[i]->setGeometry(width() - side - margin, margin + i * (side + 2), side, side);
  }
  // Below north point and scale bar.
  const int top = qRound(drawing::kFurnitureHeight_mm * kPxPerMm * scale());
  if (m_strip != nullptr) m_strip->place({margin, top}, height() - top - margin);
  refreshHint();
}

/// The margins of a fit hold letters and lengths; with buttons they hold these beside them.
Covered PlanCanvas::covered() const {
  const double column = 40.0 * scale();
  const bool strip = m_surveying && m_strip != nullptr;
  return {strip ? m_strip->width() : 0.0, m_zoom[0] != nullptr ? column : 0.0};
}

double PlanCanvas::scale() const { return paint::uiScale(font()); }

drawing::PlanView PlanCanvas::view() const {
  drawing::PlanView v = m_camera.view(size(), scale(), paint::themeOf(palette()));
  if (m_session.selected() != m_left_behind) v.selected = m_session.selected();
  return v;
}

paint::QtVoice PlanCanvas::voice() const { return paint::QtVoice(m_session.job().display_units); }

void PlanCanvas::lookAgain() {
  m_base_old = true;
  update();
}

void PlanCanvas::setCamera(const Camera& camera) {
  if (camera == m_camera) return;
  m_camera = camera;
  m_fitted = false;
  lookAgain();
}

void PlanCanvas::zoomBy(double factor) {
  Camera camera = m_camera;
  camera.zoom(factor, QRectF(rect()).center(), size());
  setCamera(camera);
}

void PlanCanvas::fit() {
  if (m_session.study() != nullptr) {
    m_camera = fitted(*m_session.study(), size(), scale(), covered());
  } else if (m_session.hasJob()) {
    m_camera = fittedToOutline(m_session.job().plan, size(), scale(), covered());
    if (const auto layer = pictureLayer()) {
      const auto [low, high] = boxWith(outlineOf(*layer), m_session.job().plan);
      m_camera = fittedToBox(low, high, size(), scale(), covered());
    }
  }
  m_fitted = true;
  lookAgain();
}

void PlanCanvas::showThing(const std::string& id) {
  if (!m_session.hasJob()) return;
  const auto spot = spotOf(m_session.job(), id);
  if (!spot) return;
  const Covered under = covered();
  const QRectF inner = QRectF(rect()).adjusted(40 + under.left, 40, -40 - under.right, -40);
  const QPointF at = toWidget(*spot);
  if (inner.contains(at)) return;  // in sight already: nothing should move
  Camera camera = m_camera;
  // Where the whole plan is looked at, it stays in sight beside the thing.
  const QPointF off = at - inner.center();
  const double out = std::min(inner.width() / 2 / std::max(std::abs(off.x()), 1.0),
                              inner.height() / 2 / std::max(std::abs(off.y()), 1.0));
  if (m_fitted && out > kLeastStepBack) {
    camera.zoom(std::min(out, 1.0), inner.center(), size());
  } else {
    camera.centre_m = *spot;
  }
  setCamera(camera);
}

std::optional<QPointF> PlanCanvas::grip() const {
  if (m_session.assessment() == nullptr) return std::nullopt;
  const geometry::Point mm =
      drawing::gripCentre(*m_session.study(), *m_session.assessment(), view());
  return QPointF(mm.x, mm.y) * kPxPerMm * scale();
}

void PlanCanvas::setSuction(session::SuctionDesk& desk) {
  m_field.emplace(m_session, desk);
  connect(&desk, &session::SuctionDesk::fieldChanged, this, [this] {
    if (!m_showing_field) return;
    // Base and field come and go together.
    if (drawsField() != m_base_has_field || m_field->isOld()) m_base_old = true;
    update();
  });
}

void PlanCanvas::setShowingField(bool showing) {
  if (showing == m_showing_field) return;
  m_showing_field = showing;
  if (showing) m_left_behind = m_session.selected();
  lookAgain();
}

bool PlanCanvas::drawsField() const { return m_showing_field && m_field && m_field->shows(); }

void PlanCanvas::renderBase() {
  QElapsedTimer timer;
  timer.start();
  const double ratio = devicePixelRatioF();
  const QSize pixels = (QSizeF(size()) * ratio).toSize();
  if (m_base.size() != pixels) {
    m_base = QImage(pixels, QImage::Format_RGB32);
    m_base.fill(paint::colour(paint::look(palette()).paper));  // every drawing lays its paper after
  }
  m_base.setDevicePixelRatio(ratio);
  m_base_has_field = drawsField();
  m_base_sump = m_session.sump();
  if (m_base_has_field) {
    m_field->render(m_base, view(), voice(), kPxPerMm * scale());
    m_words.clear();  // no distances stand beside the sump
  } else {
    const drawing::DrawList list = m_session.study() == nullptr
                                       ? outline()
                                       : drawing::planBase(*m_session.study(), view(), voice());
    paint::paintOn(m_base, list, kPxPerMm * scale());
    m_words = drawing::wordsOf(list, voice());
  }
  if (const auto layer = pictureLayer()) {
    QPainter painter(&m_base);
    painter.setRenderHint(QPainter::Antialiasing);
    m_picture_layer.paint(painter, *layer, m_camera, size(), ratio,
                          paint::themeOf(palette()) == drawing::ThemeName::dark);
  }
  m_signs.clear();
  m_others = {};
  if (const siting::Study* study = m_session.study()) {
    m_signs = drawing::sumpSigns(*study, view());
    // While the house is surveyed none is in hand.
    m_others = drawing::otherSumps(*study, view(), voice(),
                                   m_surveying ? std::string() : m_base_sump, !m_surveying);
  }
  m_base_old = false;
  m_base_ms = static_cast<double>(timer.nsecsElapsed()) * 1e-6;
}

void PlanCanvas::refreshBase() {
  const bool fits = m_base.size() == (QSizeF(size()) * devicePixelRatioF()).toSize();
  if (m_base_old || !fits || m_base_sump != m_session.sump()) renderBase();
}

void PlanCanvas::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  if (!m_session.hasJob()) {
    painter.fillRect(rect(), paint::colour(paint::look(palette()).paper));
    return;
  }
  refreshBase();
  painter.drawImage(0, 0, m_base);
  QElapsedTimer timer;
  timer.start();
  if (m_surveying) {
    paint::paintDrawList(painter, m_others, kPxPerMm * scale());
    for (const PlanHand* hand : hands()) hand->paint(painter, paint::look(palette()), font());
  } else {
    if (m_base_has_field && drawsField()) m_field->paint(painter, voice(), kPxPerMm * scale());
    paint::paintDrawList(painter, m_others, kPxPerMm * scale());
    paintHover(painter);
    paintMarker(painter);
  }
  m_marker_ms = static_cast<double>(timer.nsecsElapsed()) * 1e-6;
  if (hasFocus() && window()->property("keysUsed").toBool()) {
    painter.setPen(QPen(paint::colour(paint::look(palette()).selection), 2.6));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(rect()).adjusted(1.3, 1.3, -1.3, -1.3));
  }
}

void PlanCanvas::paintMarker(QPainter& painter) {
  if (m_session.assessment() == nullptr) return;
  const siting::Study& study = *m_session.study();
  const siting::Assessment& here = *m_session.assessment();
  const int number = plan::neededNumber(m_session.job(), m_session.sump());
  const drawing::DrawList list =
      m_base_has_field ? drawing::fieldMarker(study, here, view(), voice(), number)
                       : drawing::planMarker(study, here, view(), voice(), false, m_words, number);
  paint::paintDrawList(painter, list, kPxPerMm * scale());
}

void PlanCanvas::paintHover(QPainter& painter) {
  const auto place = m_session.hovered();
  if (!place || m_session.isMoving() || m_session.study() == nullptr) return;
  const auto& p = m_session.study()->perimeter();
  const geometry::Vec in = p.edgeAt(*place).inward;
  const QPointF at = toWidget(p.pointAt(*place));
  const QPointF out = QPointF(-in.x, in.y) * 18 * scale();
  const QColor ink = paint::colour(paint::look(palette()).selection);
  painter.setPen(QPen(ink, 2 * scale(), Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(at, at + out);
  painter.setBrush(paint::colour(paint::look(palette()).paper));
  painter.drawEllipse(at, 3.5 * scale(), 3.5 * scale());
}

/// A plan that cannot be studied (yet), and while a wall is taped.
drawing::DrawList PlanCanvas::outline() const {
  drawing::OutlineMarks marks;
  marks.gap = m_surveying;
  marks.ring = -1;
  if (m_surveying) {
    marks.ring = m_desk->ring();
    marks.draft = m_desk->draft();
    if (m_desk->correcting()) marks.wall = static_cast<int>(*m_desk->correcting());
  }
  return drawing::outlineDrawing(m_session.job(), marks, view(), voice());
}

void PlanCanvas::setSurveying(bool surveying) {
  SUMPWRIGHT_REQUIRE(m_desk != nullptr);
  if (surveying == m_surveying) return;
  endDrag(false);
  cancelHands();
  m_tasks->take(tools::Task::choose);
  m_surveying = surveying;
  m_left_behind = surveying ? std::string() : m_session.selected();
  if (m_strip != nullptr) m_strip->setVisible(surveying);
  if (m_fitted) fit();  // the strip takes room, or gives it back
  setAccessibleDescription(
      surveying ? tr("The house from above. Drag from the end of the tape to draw a wall; drag "
                     "corners and walls of a closed outline.")
                : tr("The house from above. Arrow keys move the sump along the wall by 10 cm, with "
                     "Shift by 1 cm."));
  refreshHint();
  lookAgain();
}

void PlanCanvas::resizeEvent(QResizeEvent*) {
  placeButtons();
  if (m_fitted) fit();
  lookAgain();
}

void PlanCanvas::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
    placeButtons();
    if (m_fitted) fit();
    lookAgain();
  }
  QWidget::changeEvent(event);
}

}  // namespace sumpwright::canvas
