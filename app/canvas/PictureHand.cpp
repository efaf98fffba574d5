#include "canvas/PictureHand.h"

#include <QFileInfo>
#include <QKeyEvent>
#include <algorithm>
#include <cmath>

#include "canvas/HandPaint.h"
#include "canvas/PictureLayer.h"
#include "files/Underlay.h"
#include "paint/Look.h"

namespace sumpwright::canvas {

namespace {

constexpr double kPictureReach_px = 16.0;
constexpr double kPictureSlip_px = 4.0;
constexpr double kNudge_px = 1.0;
constexpr double kFarNudge_px = 10.0;

}  // namespace

bool PictureHand::isAlone() const {
  return m_desk.isAtWork() && (m_desk.tool() != Tool::move || m_desk.mayMove());
}

double PictureHand::reach_m() const { return sight().metres(kPictureReach_px); }

double PictureHand::reach_px() const {
  const auto layer = m_desk.layer();
  return layer ? reach_m() / layer->placed.m_per_px : 0.0;
}

bool PictureHand::inPicture(geometry::Point at) const {
  const auto layer = m_desk.layer();
  if (!layer) return false;
  const geometry::Point px = files::underlayPx(layer->placed, at);
  const QImage& image = layer->halves->front();
  return px.x >= 0 && px.y >= 0 && px.x <= image.width() && px.y <= image.height();
}

geometry::Point PictureHand::toPhoto(geometry::Point at) const {
  const auto layer = m_desk.layer();
  return layer ? files::underlayPx(layer->placed, at) : geometry::Point{};
}

geometry::Point PictureHand::markAt() const {
  if (m_desk.tool() == Tool::scale) {
    const tools::TwoPoints& two = m_desk.points();
    return (two.current() == 0 ? two.first() : two.second()).value_or(geometry::Point{});
  }
  const tools::FourCorners& four = m_desk.corners();
  return files::planPoint(m_desk.layer()->placed, four.corners()[four.current()]);
}

bool PictureHand::press(QPointF at) {
  m_pressed = at;
  m_slipped = false;
  if (!m_desk.isAtWork()) return false;
  const geometry::Point plan = sight().plan(at);
  switch (m_desk.tool()) {
    case Tool::move:
      m_active = m_desk.mayMove() && inPicture(plan);
      break;
    case Tool::scale:
      m_active = m_desk.layer() && m_desk.points().press(plan, reach_m());
      break;
    case Tool::straighten:
      m_before = m_desk.corners().corners();
      m_active = m_desk.showsCorners() && m_desk.corners().press(toPhoto(plan), reach_px());
      break;
  }
  if (m_active && m_desk.tool() != Tool::move) {
    m_rod = markAt() - plan;  // a mark is not thrown by where it was taken hold of
    m_desk.touchMarks();
  }
  return m_active;
}

void PictureHand::move(QPointF at) {
  if (!m_active) return;
  m_pointer = at;
  if (m_desk.tool() == Tool::move) {
    const QPointF slip = at - m_pressed;
    if (!m_slipped && std::hypot(slip.x(), slip.y()) <= kPictureSlip_px * sight().scale) return;
    if (!m_slipped) m_desk.beginMove(sight().plan(m_pressed));
    m_slipped = true;
    m_desk.moveTo(sight().plan(at));
    if (!m_desk.isMoving()) m_active = false;
    return;
  }
  const geometry::Point to = sight().plan(at) + m_rod;
  if (m_desk.tool() == Tool::scale) {
    m_desk.points().drag(to);
  } else {
    m_desk.corners().drag(toPhoto(to));
  }
  m_desk.touchMarks();
}

void PictureHand::release() {
  if (!m_active) return;
  m_active = false;
  switch (m_desk.tool()) {
    case Tool::move:
      return m_desk.finishMove();
    case Tool::scale:
      m_desk.points().release(sight().metres(kPictureSlip_px));
      break;
    case Tool::straighten:
      m_desk.corners().release();
      break;
  }
  m_desk.touchMarks();
}

/// The drag alone; the tool stays in hand.
void PictureHand::cancel() {
  if (!m_active) return;
  m_active = false;
  switch (m_desk.tool()) {
    case Tool::move:
      return m_desk.cancelMove();
    case Tool::scale:
      m_desk.points().clear();
      break;
    case Tool::straighten:
      m_desk.corners().release();
      m_desk.corners().put(m_before);
      break;
  }
  m_desk.touchMarks();
}

bool PictureHand::nudge(geometry::Vec by_m) {
  switch (m_desk.tool()) {
    case Tool::move:
      if (!m_desk.mayMove()) return false;
      m_desk.nudge(by_m);
      return true;
    case Tool::scale:
      if (!m_desk.points().nudge(by_m)) return false;
      break;
    case Tool::straighten: {
      if (!m_desk.showsCorners()) return false;
      const geometry::Point at = markAt();
      m_desk.corners().nudge(toPhoto(at + by_m) - toPhoto(at));
      break;
    }
  }
  m_desk.touchMarks();
  return true;
}

bool PictureHand::key(QKeyEvent& event) {
  if (!m_desk.isAtWork()) return false;
  if (event.key() == Qt::Key_Escape) {
    if (m_active) return cancel(), true;
    if (m_desk.tool() == Tool::move) return false;
    m_desk.giveUp();
    return true;
  }
  const bool far = event.modifiers() & Qt::ShiftModifier;
  const double step = (far ? kFarNudge_px : kNudge_px) / sight().camera.px_per_m;
  switch (event.key()) {
    case Qt::Key_Left:
      return nudge({-step, 0});
    case Qt::Key_Right:
      return nudge({step, 0});
    case Qt::Key_Up:
      return nudge({0, step});
    case Qt::Key_Down:
      return nudge({0, -step});
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
      if (!m_desk.showsCorners()) return false;
      m_desk.corners().step(event.key() == Qt::Key_PageDown ? 1 : -1);
      m_desk.touchMarks();
      return true;
    default:
      return false;
  }
}

std::optional<Qt::CursorShape> PictureHand::cursor(QPointF at) const {
  if (!m_desk.isAtWork()) return std::nullopt;
  const geometry::Point plan = sight().plan(at);
  switch (m_desk.tool()) {
    case Tool::move:
      if (!m_desk.mayMove() || !inPicture(plan)) return std::nullopt;
      return m_active ? Qt::ClosedHandCursor : Qt::OpenHandCursor;
    case Tool::scale:
      return Qt::CrossCursor;
    case Tool::straighten:
      return m_desk.showsCorners() ? std::optional(Qt::CrossCursor) : std::nullopt;
  }
  return std::nullopt;
}

QString PictureHand::hint() const {
  using session::PictureDesk;
  if (!m_desk.isAtWork()) return {};
  switch (m_desk.tool()) {
    case Tool::move:
      if (!m_desk.layer()) return PictureDesk::tr("The picture is not shown: see its page.");
      if (!m_desk.mayMove()) return PictureDesk::tr("The picture is locked: drags move the view.");
      return PictureDesk::tr("Drag the picture to where it belongs; arrow keys move it a little.");
    case Tool::scale:
      if (m_desk.points().line()) {
        return PictureDesk::tr("Type how long that is. Its ends can be dragged.");
      }
      return PictureDesk::tr("Drag along something whose length you know, the longer the better.");
    case Tool::straighten:
      if (m_desk.isSampling()) return PictureDesk::tr("So it will look.");
      return PictureDesk::tr("Drag the corners 1 to 4 onto a rectangle whose sides you know.");
  }
  return {};
}

void PictureHand::paintHandle(QPainter& painter, const drawing::Theme& theme, QPointF at,
                              bool current) const {
  const double k = sight().scale;
  const double r = 8.0 * k;
  // A ring to look through, with a cross: what it stands on stays in sight.
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(paint::colour(theme.paper), 5.0 * k));
  painter.drawEllipse(at, r, r);
  painter.setPen(QPen(paint::colour(theme.selection), (current ? 3.0 : 1.8) * k));
  painter.drawEllipse(at, r, r);
  painter.setPen(QPen(paint::colour(theme.selection), 1.0 * k));
  painter.drawLine(at - QPointF(r, 0), at + QPointF(r, 0));
  painter.drawLine(at - QPointF(0, r), at + QPointF(0, r));
}

void PictureHand::paintPoints(QPainter& painter, const drawing::Theme& theme,
                              const QFont& font) const {
  const tools::TwoPoints& two = m_desk.points();
  const auto a = two.first();
  if (!a) return;
  if (const auto line = two.line()) {
    const QPointF from = sight().widget(line->a);
    const QPointF to = sight().widget(line->b);
    painter.setPen(QPen(paint::colour(theme.paper), 5.0 * sight().scale));
    painter.drawLine(from, to);
    painter.setPen(QPen(paint::colour(theme.selection), 2.2 * sight().scale));
    painter.drawLine(from, to);
    paintPlate(painter, theme, font, sight(), 0.5 * (from + to),
               session::PictureDesk::tr("now %1").arg(printedLength(
                   geometry::distance(line->a, line->b), m_session.job().display_units)));
    paintHandle(painter, theme, to, two.current() == 1);
  }
  paintHandle(painter, theme, sight().widget(*a), two.current() == 0);
}

void PictureHand::paintCorners(QPainter& painter, const drawing::Theme& theme,
                               const QFont& font) const {
  const auto layer = m_desk.layer();
  const tools::FourCorners& four = m_desk.corners();
  QPolygonF quad;
  for (const geometry::Point p : four.corners()) {
    quad << sight().widget(files::planPoint(layer->placed, p));
  }
  const bool proper = four.isProper();
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(paint::colour(theme.paper), 5.0 * sight().scale));
  painter.drawPolygon(quad);
  painter.setPen(QPen(paint::colour(proper ? theme.selection : theme.warning_text),
                      2.0 * sight().scale, proper ? Qt::SolidLine : Qt::DashLine));
  painter.drawPolygon(quad);
  const QFont bold = paint::sized(font, 1.0, true);
  const double away = 20.0 * sight().scale;
  QPointF middle;
  for (const QPointF& p : quad) middle += p / 4.0;
  for (int i = 0; i < quad.size(); ++i) {
    paintHandle(painter, theme, quad[i], static_cast<std::size_t>(i) == four.current());
    QPointF out = quad[i] - middle;
    const double length = std::max(1.0, std::hypot(out.x(), out.y()));
    out *= away / length;
    const QRectF disc(quad[i] + out - QPointF(0.5, 0.5) * away, QSizeF(away, away));
    painter.setPen(Qt::NoPen);
    painter.setBrush(paint::colour(theme.selection));
    painter.drawEllipse(disc);
    painter.setFont(bold);
    painter.setPen(paint::colour(theme.paper));
    painter.drawText(disc, Qt::AlignCenter, QString::number(i + 1));
  }
}

void PictureHand::paintMissing(QPainter& painter, const drawing::Theme& theme,
                               const QFont& font) const {
  if (m_desk.underlay() == nullptr || m_desk.isReading() || !m_desk.underlay()->shown) return;
  const QString name = QFileInfo(QString::fromStdString(m_desk.underlay()->path)).fileName();
  paintPlate(painter, theme, font, sight(),
             QPointF(0, sight().size.height() - 84.0 * sight().scale),
             session::PictureDesk::tr("The picture %1 is not shown").arg(name), PlateTone::warning);
}

void PictureHand::paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const {
  const auto layer = m_desk.layer();
  if (!layer) return paintMissing(painter, theme, font);
  if (!m_desk.isAtWork()) return;
  if (m_desk.tool() == Tool::scale) return paintPoints(painter, theme, font);
  if (m_desk.showsCorners()) return paintCorners(painter, theme, font);
  if (!layer->placed.shown && m_desk.tool() == Tool::move) return;
  QPolygonF outline;
  for (const geometry::Point p : outlineOf(*layer)) outline << sight().widget(p);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(paint::colour(theme.selection), 1.5 * sight().scale, Qt::DashLine));
  painter.drawPolygon(outline);
  if (!m_desk.isMoving()) return;
  const geometry::Vec by = m_desk.moved();
  const auto units = m_session.job().display_units;
  const QString across =
      by.x < 0 ? session::PictureDesk::tr("%1 left") : session::PictureDesk::tr("%1 right");
  const QString along =
      by.y < 0 ? session::PictureDesk::tr("%1 down") : session::PictureDesk::tr("%1 up");
  paintPlate(painter, theme, font, sight(), m_pointer,
             across.arg(printedLength(std::abs(by.x), units)) + QStringLiteral("   ") +
                 along.arg(printedLength(std::abs(by.y), units)));
}

}  // namespace sumpwright::canvas
