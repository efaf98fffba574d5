#include "tape/BookStrip.h"

#include <QHelpEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "paint/Look.h"
#include "perimeter/Perimeter.h"
#include "words/Words.h"

namespace sumpwright::tape {

namespace {

constexpr double kLabel_px = 124.0;
constexpr double kRight_px = 24.0;
constexpr double kTop_px = 14.0;
constexpr double kBlock_px = 36.0;
constexpr double kShared_px = 20.0;
constexpr double kAxis_px = 34.0;

QString bare(double metres, const plan::Job& job) {
  words::QuantityStyle style;
  style.decimals = 3;
  style.bare = true;
  return QString::fromStdString(words::print({metres, base::Unit::metre},
                                             job.display_units == plan::DisplayUnits::imperial
                                                 ? words::Units::imperial
                                                 : words::Units::metric,
                                             style));
}

double lengthOf(const plan::Ring& ring, std::size_t wall) {
  const std::size_t next = (wall + 1) % ring.corners.size();
  return geometry::distance(ring.corners[wall], ring.corners[next]);
}

}  // namespace

BookStrip::BookStrip(session::Session& session, session::TapeDesk& desk, QWidget* parent)
    : QWidget(parent), m_session(session), m_desk(desk) {
  setAccessibleName(tr("Walls as taped"));
  setAttribute(Qt::WA_StyledBackground);
  connect(&desk, &session::TapeDesk::changed, this, qOverload<>(&QWidget::update));
}

QSize BookStrip::sizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(600 * k), qRound((kTop_px + kBlock_px + kShared_px + kAxis_px + 8) * k)};
}

std::vector<BookStrip::Piece> BookStrip::pieces() const {
  std::vector<Piece> all;
  if (!m_session.hasJob()) return all;
  const plan::Ring* ring = m_desk.outline();
  double at = 0.0;
  const auto add = [&](double length, double shared, bool draft) {
    all.push_back({at, at + length, shared, draft});
    at += length;
  };
  if (ring != nullptr && !ring->taped.empty()) {
    for (std::size_t i = 0; i < ring->taped.size(); ++i) {
      const bool is_wall = ring->closed ? i < ring->corners.size() : i + 1 < ring->corners.size();
      const double taped = ring->taped[i].length_m;
      add(taped, is_wall ? lengthOf(*ring, i) : taped, false);
    }
    if (ring->closed && ring->taped.size() < ring->corners.size()) {
      const double drawn = lengthOf(*ring, ring->taped.size());
      add(drawn, drawn, true);  // nobody measured it
    }
  } else if (ring != nullptr) {
    const std::size_t walls =
        ring->corners.size() - (ring->closed || ring->corners.empty() ? 0 : 1);
    for (std::size_t i = 0; i < walls; ++i) add(lengthOf(*ring, i), lengthOf(*ring, i), false);
  }
  if (const auto draft = m_desk.draft(); draft && !m_desk.correcting() && !m_desk.inserting()) {
    const double length = geometry::distance(draft->a, draft->b);
    add(length, length, true);
  }
  return all;
}

double BookStrip::left() const { return kLabel_px * paint::uiScale(font()); }

double BookStrip::pxPerMetre(const std::vector<Piece>& pieces) const {
  if (pieces.empty()) return 1.0;
  const double room = width() - left() - kRight_px * paint::uiScale(font());
  return std::max(1.0, room) / std::max(pieces.back().to_m, 1e-3);
}

QRectF BookStrip::block(std::size_t wall) const {
  const std::vector<Piece> all = pieces();
  if (wall >= all.size()) return {};
  const double k = paint::uiScale(font());
  const double scale = pxPerMetre(all);
  return {left() + scale * all[wall].from_m + 1.0, kTop_px * k,
          std::max(1.0, scale * (all[wall].to_m - all[wall].from_m) - 2.0), kBlock_px * k};
}

std::optional<std::size_t> BookStrip::wallAt(QPointF at) const {
  const std::size_t count = pieces().size();
  for (std::size_t i = 0; i < count; ++i) {
    if (block(i).contains(at)) return i;
  }
  return std::nullopt;
}

void BookStrip::mousePressEvent(QMouseEvent* event) {
  const auto wall = wallAt(event->position());
  if (!wall || event->button() != Qt::LeftButton) return;
  const plan::Ring* ring = m_desk.outline();
  if (ring == nullptr) return;
  if (*wall < ring->taped.size()) m_desk.correct(*wall);
  if (*wall < ring->walls.size()) m_session.show(ring->walls[*wall].id);
}

bool BookStrip::event(QEvent* event) {
  if (event->type() == QEvent::ToolTip) {
    const auto* help = static_cast<QHelpEvent*>(event);
    const auto wall = wallAt(help->pos());
    if (wall) {
      const std::vector<Piece> all = pieces();
      QToolTip::showText(help->globalPos(),
                         tr("Wall %1: %2 as taped, %3 in the plan")
                             .arg(*wall + 1)
                             .arg(bare(all[*wall].to_m - all[*wall].from_m, m_session.job()),
                                  bare(all[*wall].shared_m, m_session.job())),
                         this);
      return true;
    }
  }
  return QWidget::event(event);
}

void BookStrip::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  p.fillRect(rect(), paint::colour(t.panel));
  if (!m_session.hasJob()) return;
  const plan::Job& job = m_session.job();
  const std::vector<Piece> all = pieces();
  const plan::Ring* ring = m_desk.outline();
  const bool book = ring == nullptr || !ring->taped.empty() || ring->corners.size() < 2;
  const auto label = [&](double top, double high, const QString& text) {
    p.setFont(paint::sized(font(), 0.95, true));
    p.setPen(paint::colour(t.ink));
    p.drawText(QRectF(20 * k, top, left() - 24 * k, high), Qt::AlignLeft | Qt::AlignVCenter, text);
  };
  label(kTop_px * k, kBlock_px * k, book ? tr("As taped") : tr("As drawn"));
  const double shared_top = (kTop_px + kBlock_px) * k;
  const bool shared = ring != nullptr && ring->closed && !ring->taped.empty();
  if (shared) label(shared_top, kShared_px * k, tr("In the plan"));
  const double scale = pxPerMetre(all);
  const double axis = (kTop_px + kBlock_px + kShared_px + 8) * k;
  if (all.empty()) {
    p.setFont(paint::sized(font(), 1.0));
    p.setPen(paint::colour(t.ink2));
    p.drawText(QRectF(left(), kTop_px * k, width() - left(), kBlock_px * k),
               Qt::AlignLeft | Qt::AlignVCenter,
               tr("No outline yet. Type the first wall: direction, then length."));
    return;
  }
  for (std::size_t i = 0; i < all.size(); ++i) {
    const QRectF box = block(i);
    const bool in_hand = all[i].draft || (m_desk.correcting() && *m_desk.correcting() == i);
    p.setPen(in_hand ? QPen(paint::colour(t.selection), 1.6 * k, Qt::DashLine) : QPen(Qt::NoPen));
    p.setBrush(paint::colour(in_hand ? t.selection_tint : t.wall));
    p.drawRoundedRect(box, 3 * k, 3 * k);
    const QString text = bare(all[i].to_m - all[i].from_m, job);
    p.setFont(paint::sized(font(), 0.98, true));
    if (QFontMetricsF(p.font()).horizontalAdvance(text) < box.width() - 4) {
      p.setPen(paint::colour(in_hand ? t.ink : t.paper));
      p.drawText(box, Qt::AlignCenter, text);
    }
    p.setFont(paint::sized(font(), 0.9, false, true));
    const QString became = bare(all[i].shared_m, job);
    if (shared && QFontMetricsF(p.font()).horizontalAdvance(became) < box.width() - 2) {
      p.setPen(paint::colour(t.ink2));
      p.drawText(QRectF(box.left(), shared_top, box.width(), kShared_px * k), Qt::AlignCenter,
                 became);
    }
  }
  p.setPen(QPen(paint::colour(t.ink), 1.2 * k));
  p.drawLine(QPointF(left(), axis), QPointF(left() + scale * all.back().to_m, axis));
  std::size_t first = 0;
  for (int r = 0; r < m_desk.ring() && r < static_cast<int>(job.plan.rings.size()); ++r) {
    first += job.plan.rings[static_cast<std::size_t>(r)].corners.size();
  }
  double last_x = -1e9;
  for (std::size_t i = 0; i <= all.size(); ++i) {
    const double x = left() + scale * (i == all.size() ? all.back().to_m : all[i].from_m);
    p.setPen(QPen(paint::colour(t.ink), 1.2 * k));
    p.drawLine(QPointF(x, axis - 3 * k), QPointF(x, axis + 3 * k));
    if (x - last_x < 22 * k) continue;
    last_x = x;
    const bool home = i == all.size() && ring != nullptr && ring->closed;
    const QRectF circle(x - 8 * k, axis + 6 * k, 16 * k, 16 * k);
    p.setBrush(Qt::NoBrush);
    p.drawEllipse(circle);
    p.setFont(paint::sized(font(), 0.85, true));
    p.drawText(circle, Qt::AlignCenter,
               QString::fromStdString(perimeter::letterOfCorner(first + (home ? 0 : i))));
  }
}

}  // namespace sumpwright::tape
