#include "tape/TapeStrip.h"

#include <QElapsedTimer>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "paint/Look.h"
#include "paint/Painting.h"
#include "plan/SumpList.h"

namespace sumpwright::tape {

namespace {

constexpr double kPxPerMm = 4.0;
constexpr double kGrab_px = 24.0;
constexpr double kLabel_mm = 30.0;
constexpr double kRightMargin_px = 20.0;
constexpr double kLeastLanes_px = 150.0;
constexpr double kLeastReach_px = 110.0;

}  // namespace

TapeStrip::TapeStrip(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setMinimumHeight(qRound(kLeastLanes_px * scale()));
  setAccessibleName(tr("Wall tape"));
  setAccessibleDescription(
      tr("The outside walls unrolled, a lane for each rule. Arrow keys move the sump by 10 cm."));
  connect(&session, &session::Session::studyChanged, this, &TapeStrip::lookAgain);
  connect(&session, &session::Session::placeChanged, this, &TapeStrip::followPlace);
  connect(&session, &session::Session::hoverChanged, this, qOverload<>(&QWidget::update));
  connect(&session, &session::Session::jobChanged, this, [this] {
    m_dragging = false;
    m_scroll_mm = 0.0;
  });
}

QSize TapeStrip::sizeHint() const { return {qRound(900 * scale()), qRound(222 * scale())}; }

void TapeStrip::setSuction(session::SuctionDesk& desk) {
  m_suction = &desk;
  const auto again = [this] {
    if (m_reach) lookAgain();
  };
  connect(&desk, &session::SuctionDesk::answerChanged, this, again);
  connect(&desk, &session::SuctionDesk::workChanged, this, [this, again] {
    if (m_suction->along() == nullptr) again();
  });
}

void TapeStrip::setShowingReach(bool showing) {
  SUMPWRIGHT_REQUIRE(m_suction != nullptr);
  if (showing == m_reach) return;
  m_reach = showing;
  m_scroll_mm = 0.0;
  setMinimumHeight(qRound((showing ? kLeastReach_px : kLeastLanes_px) * scale()));
  setAccessibleDescription(
      showing
          ? tr("The outside walls unrolled, with the share of floor that a sump at each place "
               "is predicted to hold. Arrow keys move the sump by 10 cm.")
          : tr("The outside walls unrolled, a lane for each rule. Arrow keys move the sump by 10 "
               "cm."));
  lookAgain();
}

double TapeStrip::scale() const { return paint::uiScale(font()); }

paint::QtVoice TapeStrip::voice() const { return paint::QtVoice(m_session.job().display_units); }

drawing::TapeView TapeStrip::view() const {
  drawing::TapeView v;
  v.width_mm = (width() - kRightMargin_px * scale()) / kPxPerMm / scale();
  v.height_mm = height() / kPxPerMm / scale();
  v.theme = paint::themeOf(palette());
  v.label_mm = kLabel_mm;
  v.scroll_mm = m_scroll_mm;
  v.deciding_rule = m_deciding;
  v.reach = m_reach;
  return v;
}

double TapeStrip::xOf(perimeter::Place place) const {
  return drawing::tapeX(*m_session.study(), view(), place) * kPxPerMm * scale();
}

perimeter::Place TapeStrip::placeAt(double x) const {
  return drawing::tapePlace(*m_session.study(), view(), x / kPxPerMm / scale());
}

void TapeStrip::lookAgain() {
  m_base_old = true;
  update();
}

/// The lane that decides at the place is tinted; only when it becomes another is the picture
/// redrawn.
void TapeStrip::followPlace() {
  const siting::Assessment* a = m_session.assessment();
  const std::string deciding =
      a == nullptr || a->findings.empty() ? std::string() : a->findings.front().rule;
  if (deciding != m_deciding || m_session.sump() != m_base_sump) {
    m_deciding = deciding;
    m_base_old = true;
  }
  update();
}

/// Why there is no curve of reach and none is on its way; empty: it is.
base::Message TapeStrip::absence() const {
  if (m_suction->isStopped()) return base::Message("drawing.reach.stopped");
  if (m_suction->isWorking() || m_suction->problems().empty()) return {};
  return base::Message("drawing.reach.why",
                       {base::phrase("why", m_suction->problems().front().message)});
}

drawing::DrawList TapeStrip::picture() const {
  if (!m_reach) return drawing::tapeBase(*m_session.study(), view(), voice());
  return drawing::tapeReach(*m_session.study(), m_suction->along(), view(), voice(), absence());
}

void TapeStrip::renderBase() {
  QElapsedTimer timer;
  timer.start();
  const double ratio = devicePixelRatioF();
  const QSize pixels = (QSizeF(size()) * ratio).toSize();
  if (m_base.size() != pixels) m_base = QPixmap(pixels);
  m_base.setDevicePixelRatio(ratio);
  m_base.fill(paint::colour(paint::look(palette()).panel));
  QPainter painter(&m_base);
  painter.setRenderHint(QPainter::Antialiasing);
  paint::paintDrawList(painter, picture(), kPxPerMm * scale());
  m_base_sump = m_session.sump();
  paint::paintDrawList(painter,
                       drawing::tapeOthers(*m_session.study(), view(), voice(), m_base_sump),
                       kPxPerMm * scale());
  m_base_old = false;
  m_base_ms = static_cast<double>(timer.nsecsElapsed()) * 1e-6;
}

void TapeStrip::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const drawing::Theme& t = paint::look(palette());
  if (m_session.study() == nullptr) {
    painter.fillRect(rect(), paint::colour(t.panel));
    return;
  }
  if (m_base_old || m_base.size() != (QSizeF(size()) * devicePixelRatioF()).toSize()) renderBase();
  painter.drawPixmap(0, 0, m_base);
  if (const auto place = m_session.hovered(); place && !m_session.isMoving()) {
    painter.setPen(QPen(paint::colour(t.selection), 1.6 * scale()));
    const double x = xOf(*place);
    painter.drawLine(QPointF(x, 6 * scale()), QPointF(x, height() - 38 * scale()));
  }
  if (m_session.assessment() != nullptr) {
    const auto list =
        drawing::tapeMarker(*m_session.study(), *m_session.assessment(), view(), voice(),
                            plan::neededNumber(m_session.job(), m_session.sump()));
    paint::paintDrawList(painter, list, kPxPerMm * scale());
  }
  if (hasFocus() && window()->property("keysUsed").toBool()) {
    painter.setPen(QPen(paint::colour(t.selection), 2.6));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(rect()).adjusted(1.3, 1.3, -1.3, -1.3));
  }
}

void TapeStrip::resizeEvent(QResizeEvent*) { lookAgain(); }

void TapeStrip::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) lookAgain();
  QWidget::changeEvent(event);
}

bool TapeStrip::onLanes(QPointF at) const {
  return m_session.study() != nullptr && at.x() >= (kLabel_mm * kPxPerMm - 4) * scale();
}

std::string TapeStrip::sumpUnder(QPointF at) const {
  std::string id;
  double least = kGrab_px * scale();
  if (at.y() > 2 * least) return id;
  for (const plan::Sump& sump : m_session.job().design.sumps) {
    const perimeter::Place place{sump.ring, sump.chainage_m};
    const bool stands =
        sump.kind == plan::SumpKind::cored && m_session.study()->perimeter().contains(place);
    const double off = stands ? std::abs(at.x() - xOf(place)) : 2 * least;
    if (off > least || (!id.empty() && off == least)) continue;
    least = off;
    id = sump.id;
  }
  return id;
}

void TapeStrip::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || !onLanes(event->position())) return;
  m_session.hover(std::nullopt);
  m_dragging = true;
  m_grab_px = 0.0;
  if (const std::string sump = sumpUnder(event->position()); !sump.empty()) {
    m_session.chooseSump(sump);
    m_session.beginMove();
    // Taken by the grip: it must not jump under the hand.
    if (m_session.place()) m_grab_px = event->position().x() - xOf(*m_session.place());
    return;
  }
  m_session.beginMove();
  m_session.moveTo(placeAt(event->position().x()));
}

void TapeStrip::mouseMoveEvent(QMouseEvent* event) {
  if (m_dragging) {
    const auto place = placeAt(event->position().x() - m_grab_px);
    if (place != m_session.place()) m_session.moveTo(place);
    return;
  }
  if (!onLanes(event->position())) {
    unsetCursor();
    return m_session.hover(std::nullopt);
  }
  setCursor(Qt::SizeHorCursor);
  m_session.hover(placeAt(event->position().x()));
}

void TapeStrip::endDrag(bool keep) {
  if (!m_dragging) return;
  m_dragging = false;
  if (keep)
    m_session.finishMove();
  else
    m_session.cancelMove();
}

void TapeStrip::mouseReleaseEvent(QMouseEvent*) { endDrag(true); }

void TapeStrip::leaveEvent(QEvent*) { m_session.hover(std::nullopt); }

void TapeStrip::wheelEvent(QWheelEvent* event) {
  if (m_session.study() == nullptr) return;
  const double full = drawing::tapeFullHeight_mm(*m_session.study(), view());
  const double most = std::max(0.0, full - view().height_mm);
  const double by = -event->angleDelta().y() / 120.0 * 8.5;  // two lanes a notch
  const double to = std::clamp(m_scroll_mm + by, 0.0, most);
  if (to != m_scroll_mm) {
    m_scroll_mm = to;
    lookAgain();
  }
  event->accept();
}

bool TapeStrip::event(QEvent* event) {
  if (event->type() == QEvent::ToolTip && m_session.study() != nullptr) {
    auto* help = static_cast<QHelpEvent*>(event);
    const std::string id =
        drawing::tapeRuleAt(*m_session.study(), view(), help->pos().y() / kPxPerMm / scale());
    const rules::Rule* rule = m_session.study()->sheet().find(id);
    if (rule == nullptr) {
      QToolTip::hideText();
    } else {
      QString text = QString::fromStdString(rule->title);
      if (rule->needed_m)
        text += QStringLiteral(" — ") + QString::fromStdString(rule->needed_m->source.text);
      else
        text += QStringLiteral(" — ") + QString::fromStdString(rule->source.text);
      QToolTip::showText(help->globalPos(), text, this);
    }
    return true;
  }
  return QWidget::event(event);
}

void TapeStrip::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && m_dragging) return endDrag(false);
  const QString text = event->text();
  if (!text.isEmpty() && text[0].isDigit() && m_session.study() != nullptr &&
      !(event->modifiers() & (Qt::ControlModifier | Qt::AltModifier))) {
    Q_EMIT digitTyped(text);
    return;
  }
  QWidget::keyPressEvent(event);
}

void TapeStrip::focusInEvent(QFocusEvent* event) {
  update();
  QWidget::focusInEvent(event);
}

void TapeStrip::focusOutEvent(QFocusEvent* event) {
  if (event->reason() != Qt::PopupFocusReason) endDrag(false);
  update();
  QWidget::focusOutEvent(event);
}

}  // namespace sumpwright::tape
