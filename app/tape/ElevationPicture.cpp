#include "tape/ElevationPicture.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "build/RefusedZone.h"
#include "build/Run.h"
#include "drawing/Box.h"
#include "drawing/CableDrawing.h"
#include "drawing/Signs.h"
#include "paint/Look.h"
#include "paint/Painting.h"
#include "plan/SumpEdits.h"
#include "words/Words.h"

namespace sumpwright::tape {

namespace {

constexpr double kMmInPx = 4.0;
constexpr double kGripReach_px = 24.0;
constexpr double kVerdict_px = 30.0;  // line under the large one
constexpr double kStep_m = 0.10;      // of an arrow key, as on the plan; with Shift a tenth
constexpr double kHighest_m = 15.0;   // no riser of a house ends higher (own figure)

}  // namespace

ElevationPicture::ElevationPicture(session::Session& session, Size size, QWidget* parent)
    : QWidget(parent), m_session(session), m_size(size) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  const bool large = size == Size::large;
  setObjectName(large ? QStringLiteral("elevation") : QStringLiteral("elevationStrip"));
  setAccessibleName(large ? tr("Elevation, unrolled") : tr("Elevation of the whole house"));
  setAccessibleDescription(
      large ? tr("The walls unrolled, heights up. Arrow keys move the discharge by 10 cm, with "
                 "Shift by 1 cm; Page Up and Page Down the fan; P places a discharge.")
            : tr("The walls unrolled, heights up. Press or drag to move the sump."));
  connect(&session, &session::Session::studyChanged, this, &ElevationPicture::takeStudy);
  connect(&session, &session::Session::placeChanged, this, &ElevationPicture::followPlace);
  connect(&session, &session::Session::jobChanged, this, [this] {
    m_grip = Grip::none;
    m_centre.reset();
    m_zoom = 1.0;
    m_base_old = true;
    update();
  });
}

QSize ElevationPicture::sizeHint() const {
  return m_size == Size::large ? QSize(qRound(760 * scale()), qRound(520 * scale()))
                               : QSize(qRound(900 * scale()), qRound(110 * scale()));
}

QSize ElevationPicture::minimumSizeHint() const {
  return m_size == Size::large ? QSize(qRound(300 * scale()), qRound(200 * scale()))
                               : QSize(qRound(300 * scale()), qRound(70 * scale()));
}

double ElevationPicture::scale() const { return paint::uiScale(font()); }

paint::QtVoice ElevationPicture::voice() const {
  return paint::QtVoice(m_session.job().display_units);
}

const plan::Sump* ElevationPicture::sump() const {
  if (!m_session.hasJob()) return nullptr;
  for (const plan::Sump& s : m_session.job().design.sumps) {
    if (s.id == m_session.sump()) return &s;
  }
  return nullptr;
}

drawing::ElevationView ElevationPicture::view() const {
  const double unit = kMmInPx * scale();
  const auto theme = paint::themeOf(palette());
  if (m_size == Size::strip) {
    return drawing::elevationStrip(*m_session.study(), width() / unit, height() / unit, theme);
  }
  if (isDragging() && m_grip != Grip::view && m_held) return *m_held;
  const double high = (height() - kVerdict_px * scale()) / unit;
  const perimeter::Place centre = m_centre.value_or(m_session.place().value_or(perimeter::Place{}));
  return drawing::elevationAbout(*m_session.study(), centre, width() / unit, high, theme, m_zoom);
}

QPointF ElevationPicture::pointOf(drawing::ElevationSpot spot) const {
  const geometry::Point p = drawing::elevationPoint(*m_session.study(), view(), spot);
  const double unit = kMmInPx * scale();
  return {p.x * unit, p.y * unit};
}

drawing::ElevationSpot ElevationPicture::spotAt(QPointF at) const {
  const double unit = kMmInPx * scale();
  return drawing::elevationSpot(*m_session.study(), view(), {at.x() / unit, at.y() / unit});
}

/// The picture of the walls stays while only the run changes: a drag asks for it every time.
void ElevationPicture::takeStudy() {
  if (m_session.study() == nullptr || m_session.job().plan != m_drawn_plan ||
      m_session.job().house != m_drawn_house || m_session.study()->sheet().id != m_drawn_sheet) {
    m_base_old = true;
  }
  m_cable_old = true;
  update();
}

void ElevationPicture::followPlace() {
  m_cable_old = true;
  if (m_session.study() != nullptr && m_size == Size::large && !isDragging()) {
    const auto place = m_session.place();
    const geometry::Interval shown = drawing::elevationShown(view());
    if (place) {
      const double at = drawing::unrolled_m(*m_session.study(), *place);
      if (!m_centre || at < shown.from || at > shown.to) m_centre = *place;
    }
  }
  tellVerdict();
  update();
}

void ElevationPicture::tellVerdict() {
  const siting::Assessment* a = m_session.assessment();
  if (a == nullptr || m_size == Size::strip) return;
  const QString told =
      QString::fromStdString(words::say(a->sentence, m_session.job().display_units));
  if (told == m_told) return;
  m_told = told;
  setAccessibleName(tr("Elevation, unrolled. %1").arg(told));
}

void ElevationPicture::renderBase() {
  const double ratio = devicePixelRatioF();
  const QSize pixels = (QSizeF(size()) * ratio).toSize();
  if (m_base.size() != pixels) m_base = QPixmap(pixels);
  m_base.setDevicePixelRatio(ratio);
  const drawing::Theme& t = paint::look(palette());
  m_base.fill(paint::colour(m_size == Size::large ? t.paper : t.panel));
  QPainter painter(&m_base);
  painter.setRenderHint(QPainter::Antialiasing);
  m_drawn_view = view();
  const drawing::DrawList base = drawing::elevationBase(*m_session.study(), *m_drawn_view, voice());
  m_words = drawing::wordsOf(base, voice());
  paint::paintDrawList(painter, base, kMmInPx * scale());
  m_drawn_plan = m_session.job().plan;
  m_drawn_house = m_session.job().house;
  m_drawn_sheet = m_session.study()->sheet().id;
  m_base_old = false;
}

void ElevationPicture::paintVerdict(QPainter& painter, const siting::Assessment& a) {
  const double k = scale();
  const drawing::Theme& t = paint::look(palette());
  const double middle = height() - 0.5 * kVerdict_px * k;
  drawing::DrawList list{width() / (kMmInPx * k), height() / (kMmInPx * k), {}};
  drawing::Sketch sketch(list);
  drawing::stateSign(sketch, t, a.state, {5.5, middle / (kMmInPx * k)}, 4.2);
  paint::paintDrawList(painter, list, kMmInPx * k);
  QFont bold = font();
  bold.setBold(true);
  painter.setFont(bold);
  painter.setPen(paint::colour(t.of(a.state).text));
  const QRectF box(36 * k, middle - 12 * k, width() - 48 * k, 24 * k);
  painter.drawText(box, Qt::AlignLeft | Qt::AlignVCenter,
                   QFontMetricsF(bold).elidedText(m_told, Qt::ElideRight, box.width()));
}

void ElevationPicture::paintLive(QPainter& painter) {
  const siting::Study& study = *m_session.study();
  const siting::Assessment* a = m_session.assessment();
  const double unit = kMmInPx * scale();
  const auto words = voice();
  if (a == nullptr) {
    return paint::paintDrawList(painter, drawing::elevationLane(study, view(), words), unit);
  }
  const drawing::DrawList run =
      drawing::elevationMarker(study, *a, m_session.sump(), view(), words, m_words);
  paint::paintDrawList(painter, run, unit);
  if (m_size != Size::large) return;
  if (const Cable* cable = cableAtRest()) {
    std::vector<drawing::Box> taken = drawing::wordsOf(run, words);
    taken.insert(taken.end(), m_words.begin(), m_words.end());
    paint::paintDrawList(
        painter, drawing::elevationCable(study, cable->route, cable->fan, view(), words, taken),
        unit);
  }
  paintVerdict(painter, *a);
}

/// As the papers draw it, also where they stop. Not while something is dragged: it is looked for
/// anew after each change.
const ElevationPicture::Cable* ElevationPicture::cableAtRest() {
  const plan::Sump* one = sump();
  const siting::Assessment* a = m_session.assessment();
  if (isDragging() || m_session.isMoving() || m_session.isPreviewing()) return nullptr;
  if (one == nullptr || a == nullptr || one->kind != plan::SumpKind::cored) return nullptr;
  if (m_cable_old) {
    m_cable_old = false;
    m_cable.reset();
    const build::CableAsk ask = build::cableAskOf(m_session.study()->site(), *one, a->place);
    const build::CableAnswer answer = build::cableRoutes(m_session.study()->site(), ask);
    if (answer.chosen) {
      m_cable = Cable{answer.routes[*answer.chosen], {ask.fan, ask.fan_height_m}};
    }
  }
  return m_cable ? &*m_cable : nullptr;
}

void ElevationPicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const drawing::Theme& t = paint::look(palette());
  if (m_session.study() == nullptr) {
    painter.fillRect(rect(), paint::colour(m_size == Size::large ? t.paper : t.panel));
    painter.setPen(paint::colour(t.ink2));
    painter.drawText(rect(), Qt::AlignCenter,
                     tr("The walls stand here unrolled once the outline is closed."));
    return;
  }
  if (m_base_old || m_base.size() != (QSizeF(size()) * devicePixelRatioF()).toSize() ||
      m_drawn_view != view()) {
    renderBase();
  }
  painter.drawPixmap(0, 0, m_base);
  paintLive(painter);
  if (hasFocus() && window()->property("keysUsed").toBool()) {
    painter.setPen(QPen(paint::colour(t.selection), 2.6));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(rect()).adjusted(1.3, 1.3, -1.3, -1.3));
  }
}

void ElevationPicture::resizeEvent(QResizeEvent*) {
  m_base_old = true;
  update();
}

void ElevationPicture::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
    m_base_old = true;
    update();
  }
  QWidget::changeEvent(event);
}

bool ElevationPicture::event(QEvent* event) {
  if (event->type() == QEvent::ToolTip && m_session.study() != nullptr) {
    auto* help = static_cast<QHelpEvent*>(event);
    const double unit = kMmInPx * scale();
    const std::string id = drawing::elevationOpeningAt(
        *m_session.study(), view(), {help->pos().x() / unit, help->pos().y() / unit});
    if (id.empty()) {
      QToolTip::hideText();
    } else {
      QToolTip::showText(help->globalPos(),
                         QString::fromStdString(voice().say(m_session.study()->labelOf(id))), this);
    }
    return true;
  }
  return QWidget::event(event);
}

ElevationPicture::Grip ElevationPicture::gripAt(QPointF at) const {
  if (m_size == Size::strip) return Grip::sump;
  const auto near = [&](perimeter::Place place, double height) {
    const QPointF off = at - pointOf({place, height});
    return std::hypot(off.x(), off.y()) <= kGripReach_px * scale();
  };
  const auto hole = m_session.place();
  const plan::Sump* s = sump();
  if (!hole || s == nullptr) return Grip::view;
  if (const auto run = build::placedRun(m_session.study()->site(), *s)) {
    const perimeter::Place out{hole->ring, hole->chainage_m + run->shift_m};
    const bool low = run->fan_place == plan::FanPlace::outside_low;
    if (near(out, run->outlet_m)) return Grip::discharge;
    const bool outside = run->fan_place != plan::FanPlace::roof_space;
    if (outside && near(low ? *hole : out, run->fan_m)) return Grip::fan;
  }
  const QPointF foot = pointOf({*hole, 0.0});
  const bool at_foot =
      std::abs(at.x() - foot.x()) <= kGripReach_px * scale() && at.y() > foot.y() - 20;
  return at_foot ? Grip::sump : Grip::view;
}

void ElevationPicture::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || m_session.study() == nullptr) return;
  const QPointF at = event->position();
  m_held = view();
  m_last = at;
  const Grip grip = gripAt(at);
  const auto hole = m_session.place();
  m_off = {};
  if (grip == Grip::sump) {
    m_session.beginMove();
    if (hole && m_size == Size::large) m_off = at - pointOf({*hole, 0.0});
    m_grip = grip;
    if (m_size == Size::strip) m_session.moveTo(spotAt(at).place);
    return;
  }
  m_grip = grip;
  if (grip == Grip::view) return;
  m_session.beginPreview();
  const plan::Sump& s = *sump();
  if (grip == Grip::discharge) {
    m_off = at - pointOf({{s.discharge->ring, s.discharge->chainage_m}, s.discharge->height_m});
  } else {
    m_off = at - pointOf({*hole, build::placedRun(m_session.study()->site(), s)->fan_m});
  }
}

void ElevationPicture::mouseDoubleClickEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || m_size == Size::strip || sump() == nullptr) return;
  endDrag(false);
  const drawing::ElevationSpot spot = spotAt(event->position());
  const plan::Discharge to{spot.place.ring, spot.place.chainage_m,
                           std::clamp(spot.height_m, 0.0, kHighest_m)};
  if (to.ring != sump()->ring) return;
  m_session.edit(tr("Place the discharge"), plan::setDischarge(m_session.job(), sump()->id, to));
}

void ElevationPicture::drag(QPointF at) {
  const drawing::ElevationSpot spot = spotAt(at - m_off);
  if (m_grip == Grip::sump) return m_session.moveTo(spot.place);
  const plan::Sump& s = *sump();
  if (m_grip == Grip::discharge) {
    if (spot.place.ring != s.ring) return;
    const plan::Discharge to{
        s.ring, spot.place.chainage_m,
        std::clamp(std::round(spot.height_m * 100.0) / 100.0, 0.0, kHighest_m)};
    if (auto job = plan::setDischarge(m_session.jobBeforePreview(), s.id, to)) {
      m_session.preview(std::move(job).value());
    }
    return;
  }
  const double height = std::clamp(std::round(spot.height_m * 100.0) / 100.0, 0.1, kHighest_m);
  if (auto job = plan::setFanPlace(m_session.jobBeforePreview(), s.id, s.fan_place, height)) {
    m_session.preview(std::move(job).value());
  }
}

void ElevationPicture::mouseMoveEvent(QMouseEvent* event) {
  if (m_session.study() == nullptr) return;
  const QPointF at = event->position();
  if (m_grip == Grip::view) {
    const auto now = view();
    const double by = (m_last.x() - at.x()) / (kMmInPx * scale()) / now.mm_per_m;
    m_last = at;
    const geometry::Interval shown = drawing::elevationShown(now);
    const double middle = 0.5 * (shown.from + shown.to) + by;
    const double x = (middle - now.left_m) * now.mm_per_m + now.label_mm;
    m_centre = drawing::elevationSpot(*m_session.study(), now, {x, 0.0}).place;
    return update();
  }
  if (m_grip != Grip::none) return drag(at);
  const Grip grip = gripAt(at);
  setCursor(m_size == Size::strip || grip == Grip::sump ? Qt::SizeHorCursor
            : grip == Grip::fan                         ? Qt::SizeVerCursor
            : grip == Grip::discharge                   ? Qt::SizeAllCursor
                                                        : Qt::OpenHandCursor);
}

void ElevationPicture::endDrag(bool keep) {
  const Grip grip = m_grip;
  m_grip = Grip::none;
  m_held.reset();
  if (grip == Grip::sump) {
    if (keep) {
      m_session.finishMove();
    } else {
      m_session.cancelMove();
    }
  } else if (grip == Grip::discharge || grip == Grip::fan) {
    if (!m_session.isPreviewing()) return;
    if (keep) {
      m_session.finishPreview(grip == Grip::fan ? tr("Move the fan") : tr("Move the discharge"));
    } else {
      m_session.cancelPreview();
    }
  }
  update();
}

void ElevationPicture::mouseReleaseEvent(QMouseEvent*) { endDrag(true); }

void ElevationPicture::wheelEvent(QWheelEvent* event) {
  if (m_size == Size::strip || m_session.study() == nullptr) return QWidget::wheelEvent(event);
  const double by = std::pow(1.2, event->angleDelta().y() / 120.0);
  m_zoom = std::clamp(m_zoom * by, 1.0, 4.0);
  update();
  event->accept();
}

void ElevationPicture::placeDischarge() {
  const plan::Sump* s = sump();
  if (s == nullptr || s->discharge || m_session.study() == nullptr || !m_session.place()) return;
  const auto to = build::proposedDischarge(m_session.study()->site(), *m_session.place(),
                                           m_session.study()->accuracy_m());
  m_session.edit(tr("Place the discharge"), plan::setDischarge(m_session.job(), s->id, to));
}

void ElevationPicture::moveDischarge(double along_m, double up_m) {
  const plan::Sump* s = sump();
  if (s == nullptr || m_session.study() == nullptr) return;
  if (!s->discharge) return placeDischarge();
  plan::Discharge to = *s->discharge;
  to.chainage_m =
      m_session.study()->perimeter().wrapped({to.ring, to.chainage_m + along_m}).chainage_m;
  to.height_m = std::clamp(std::round((to.height_m + up_m) * 1000.0) / 1000.0, 0.0, kHighest_m);
  m_session.edit(tr("Move the discharge"), plan::setDischarge(m_session.job(), s->id, to), m_keys);
}

void ElevationPicture::moveFan(double up_m) {
  const plan::Sump* s = sump();
  if (s == nullptr || m_session.study() == nullptr) return;
  const auto run = build::placedRun(m_session.study()->site(), *s);
  if (!run) return;
  const double height =
      std::clamp(std::round((run->fan_m + up_m) * 1000.0) / 1000.0, 0.1, kHighest_m);
  m_session.edit(tr("Move the fan"),
                 plan::setFanPlace(m_session.job(), s->id, s->fan_place, height), m_keys);
}

void ElevationPicture::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && isDragging()) return endDrag(false);
  const bool plain = !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier));
  if (m_size == Size::strip || !plain || isDragging()) return QWidget::keyPressEvent(event);
  const double step = event->modifiers() & Qt::ShiftModifier ? 0.1 * kStep_m : kStep_m;
  // A key held down is one step of undo.
  if (!event->isAutoRepeat()) m_keys = m_session.newGesture();
  switch (event->key()) {
    case Qt::Key_Left:
      return moveDischarge(-step, 0.0);
    case Qt::Key_Right:
      return moveDischarge(step, 0.0);
    case Qt::Key_Up:
      return moveDischarge(0.0, step);
    case Qt::Key_Down:
      return moveDischarge(0.0, -step);
    case Qt::Key_PageUp:
      return moveFan(step);
    case Qt::Key_PageDown:
      return moveFan(-step);
    case Qt::Key_P:
      return placeDischarge();
    default:
      return QWidget::keyPressEvent(event);
  }
}

void ElevationPicture::focusInEvent(QFocusEvent* event) {
  update();
  QWidget::focusInEvent(event);
}

void ElevationPicture::focusOutEvent(QFocusEvent* event) {
  if (event->reason() != Qt::PopupFocusReason) endDrag(false);
  update();
  QWidget::focusOutEvent(event);
}

}  // namespace sumpwright::tape
