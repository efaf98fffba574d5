#include "canvas/WallPaint.h"

#include <algorithm>
#include <cmath>

#include "canvas/HandPaint.h"
#include "paint/Look.h"
#include "session/Session.h"

namespace sumpwright::canvas {

namespace {

// Own figures.
constexpr double kNearRow_px = 26.0;  // outside the wall's face
constexpr double kFarRow_px = 50.0;
constexpr double kLeast_px = 3.0;  // shorter gaps carry no line

/// A wall's face in the widget: where it starts, along it and away from the house.
struct WidgetFace {
  QPointF from;
  QPointF along;
  QPointF out;
  double px_per_m = 1.0;

  QPointF at(double along_m, double out_px) const {
    return from + along_m * px_per_m * along + out_px * out;
  }
};

std::optional<WidgetFace> widgetFace(const Sight& sight, const plan::Job& job,
                                     const plan::OnWall& at) {
  const auto face = tools::faceOf(job.plan, at);
  if (!face) return std::nullopt;
  const QPointF a = sight.widget(face->a);
  const QPointF run = sight.widget(face->b) - a;
  const double length = std::hypot(run.x(), run.y());
  if (!(length > 0.0)) return std::nullopt;
  WidgetFace w;
  w.from = a;
  w.along = run / length;
  w.out = QPointF(-w.along.y(), w.along.x());  // the house lies to the left of the wall as walked
  w.px_per_m = sight.camera.px_per_m;
  return w;
}

struct GapLine {
  double from_m;
  double to_m;
  double out_px;
  bool strong;  ///< the thing's own width
};

void paintGapLine(QPainter& painter, const drawing::Theme& theme, const QFont& font,
                  const Sight& sight, const WidgetFace& face, const GapLine& line,
                  const QString& text) {
  const double k = sight.scale;
  if ((line.to_m - line.from_m) * face.px_per_m < kLeast_px * k) return;
  const QPointF a = face.at(line.from_m, line.out_px * k);
  const QPointF b = face.at(line.to_m, line.out_px * k);
  const QColor ink = paint::colour(theme.selection);
  painter.setPen(QPen(ink, (line.strong ? 2.0 : 1.2) * k));
  painter.drawLine(a, b);
  const QPointF tick = 4.0 * k * (face.along + face.out) / std::sqrt(2.0);
  for (const QPointF end : {a, b}) {
    painter.drawLine(end - tick, end + tick);
    const double base = end == a ? line.from_m : line.to_m;
    painter.setPen(QPen(ink, 0.8 * k));
    painter.drawLine(face.at(base, 3.0 * k), face.at(base, (line.out_px + 5.0) * k));
    painter.setPen(QPen(ink, (line.strong ? 2.0 : 1.2) * k));
  }
  const QFont small = paint::sized(font, 0.95, true);
  const QFontMetricsF metrics(small);
  QRectF box(0, 0, metrics.horizontalAdvance(text) + 6 * k, metrics.height());
  // Along the wall where it runs across the sheet; beside the line where it runs up.
  const bool level = std::abs(face.along.x()) > 0.7;
  double aside = level ? box.height() / 2 + 2 * k : box.width() / 2 + 4 * k;
  // Words wider than their line stand a row farther out, beside no neighbour's.
  const double room = (line.to_m - line.from_m) * face.px_per_m;
  if (level && box.width() > room) aside += box.height();
  box.moveCenter((a + b) / 2 + aside * face.out);
  const QRectF sheet(QPointF(2, 2), sight.size - QSizeF(4, 4));
  box.moveLeft(
      std::clamp(box.left(), sheet.left(), std::max(sheet.left(), sheet.right() - box.width())));
  box.moveTop(
      std::clamp(box.top(), sheet.top(), std::max(sheet.top(), sheet.bottom() - box.height())));
  QColor paper = paint::colour(theme.paper);
  paper.setAlpha(225);
  painter.fillRect(box, paper);
  painter.setFont(small);
  painter.setPen(paint::colour(theme.ink));
  painter.drawText(box, Qt::AlignCenter, text);
}

}  // namespace

void paintSpan(QPainter& painter, const drawing::Theme& theme, const Sight& sight,
               const plan::Job& job, const WallSpan& span) {
  const auto face = widgetFace(sight, job, span.at);
  if (!face) return;
  const double k = sight.scale;
  const double deep = -tools::wallThickness_m(job, span.at) * face->px_per_m;
  const double least = span.width_m > 0.0 ? 0.0 : 2.5 * k / face->px_per_m;
  const double from = span.at.offset_m - least;
  const double to = span.at.offset_m + span.width_m + least;
  const QPolygonF body{face->at(from, 2 * k), face->at(to, 2 * k), face->at(to, deep - 2 * k),
                       face->at(from, deep - 2 * k)};
  const QColor ink = paint::colour(span.refused ? theme.warning_text : theme.selection);
  QColor wash = paint::colour(span.refused ? theme.paper : theme.selection_tint);
  wash.setAlpha(220);
  painter.setBrush(wash);
  painter.setPen(QPen(ink, 2.2 * k, span.refused ? Qt::DashLine : Qt::SolidLine));
  painter.drawPolygon(body);
  if (!span.refused) return;
  painter.setPen(QPen(ink, 2.2 * k));
  painter.drawLine(body[0], body[2]);
  painter.drawLine(body[1], body[3]);
}

void paintGaps(QPainter& painter, const drawing::Theme& theme, const QFont& font,
               const Sight& sight, const plan::Job& job, const WallSpan& span,
               const tools::WallGaps& gaps) {
  const auto face = widgetFace(sight, job, span.at);
  if (!face) return;
  const plan::DisplayUnits units = job.display_units;
  const double from = span.at.offset_m;
  const double to = from + span.width_m;
  const auto line = [&](GapLine gap) {
    paintGapLine(painter, theme, font, sight, *face, gap,
                 printedLength(gap.to_m - gap.from_m, units));
  };
  const double left = gaps.left ? gaps.left->gap_m : gaps.left_m;
  const double right = gaps.right ? gaps.right->gap_m : gaps.right_m;
  line({from - left, from, kNearRow_px, false});
  line({from, to, kNearRow_px, true});
  line({to, to + right, kNearRow_px, false});
  // A tape is held at the corner: that distance is always shown.
  if (gaps.left) line({0.0, from, kFarRow_px, false});
  if (gaps.right) line({to, to + gaps.right_m, kFarRow_px, false});
}

void paintStop(QPainter& painter, const drawing::Theme& theme, const Sight& sight,
               const plan::Job& job, const WallSpan& span, tools::StopKind kind,
               const std::vector<geometry::Segment>& guides) {
  const auto face = widgetFace(sight, job, span.at);
  if (!face) return;
  const double k = sight.scale;
  const QColor ink = paint::colour(theme.selection);
  painter.setPen(QPen(ink, 1.0 * k, Qt::DashLine));
  for (const geometry::Segment& guide : guides) {
    painter.drawLine(sight.widget(guide.a), sight.widget(guide.b));
  }
  const QPointF at = face->at(span.at.offset_m + span.width_m / 2, 12 * k);
  const double r = 6.0 * k;
  painter.setPen(QPen(ink, 2.0 * k));
  painter.setBrush(Qt::NoBrush);
  switch (kind) {
    case tools::StopKind::in_line:  // two strokes one behind the other
      for (const double x : {-3.0 * k, 3.0 * k}) {
        painter.drawLine(at + x * face->along - r * face->out,
                         at + x * face->along + r * face->out);
      }
      break;
    case tools::StopKind::middle:  // a cross lying down
      painter.drawLine(at - QPointF(r, r), at + QPointF(r, r));
      painter.drawLine(at - QPointF(r, -r), at + QPointF(r, -r));
      break;
    case tools::StopKind::grid:
    case tools::StopKind::none:
      break;  // the usual case: nothing to be said
  }
}

QPointF plateAnchor(const Sight& sight, const plan::Job& job, const WallSpan& span,
                    QPointF pointer) {
  const auto face = widgetFace(sight, job, span.at);
  if (!face) return pointer;
  const double k = sight.scale;
  // paintPlate() goes right and down from its anchor: only walls there need another one.
  if (face->out.y() > 0.5) return pointer - QPointF(0, 84 * k);
  if (face->out.x() > 0.5) return pointer - QPointF(340 * k, 0);
  return pointer;
}

QString spanText(const plan::Job& job, const WallSpan& span) {
  const QString from = printedLength(span.at.offset_m, job.display_units);
  if (!(span.width_m > 0.0)) return session::Session::tr("%1 from the left").arg(from);
  return session::Session::tr("%1 from the left, %2 wide")
      .arg(from, printedLength(span.width_m, job.display_units));
}

}  // namespace sumpwright::canvas
