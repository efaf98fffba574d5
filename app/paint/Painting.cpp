#include "paint/Painting.h"

#include <QPaintEngine>
#include <QPainterPath>
#include <QPen>
#include <QSemaphore>
#include <QThreadPool>
#include <algorithm>
#include <cmath>

#include "paint/Fonts.h"
#include "paint/QtVoice.h"

namespace sumpwright::paint {
namespace {

constexpr double kThin_px = 2.7;          // own figure: the joint of a wider line has a shape
constexpr double kLeastPattern_px = 0.5;  // own figure: dashes this fine read as a line
constexpr double kSameLength_px = 1e-9;   // rounding

QColor colourOf(const drawing::Colour& c) { return {c.r, c.g, c.b, c.a}; }

class Brush {
 public:
  Brush(QPainter& painter, double units_per_mm)
      : m_painter(painter),
        m_units(units_per_mm),
        m_raster(painter.paintEngine()->type() == QPaintEngine::Raster),
        m_px_per_mm(units_per_mm * std::abs(painter.deviceTransform().m11())),
        m_names_fonts(painter.paintEngine()->type() == QPaintEngine::SVG) {}

  void operator()(const drawing::Stroke& s) const {
    if (isThin(s)) return thin(s);
    m_painter.setPen(penOf(s.pen));
    m_painter.setBrush(Qt::NoBrush);
    const QPolygonF points = polygonOf(s.points);
    if (s.closed) {
      m_painter.drawPolygon(points);
    } else if (points.size() == 2) {
      m_painter.drawLine(points[0], points[1]);
    } else {
      m_painter.drawPolyline(points);
    }
  }

  void operator()(const drawing::Fill& f) const {
    if (m_raster && f.rings.size() == 1 && isBox(f.rings.front())) {
      m_painter.fillRect(QRectF(pointOf(f.rings.front()[0]), pointOf(f.rings.front()[2])),
                         colourOf(f.colour));
      return;
    }
    QPainterPath path;
    path.setFillRule(Qt::OddEvenFill);
    for (const auto& ring : f.rings) {
      path.addPolygon(polygonOf(ring));
      path.closeSubpath();
    }
    m_painter.fillPath(path, colourOf(f.colour));
  }

  void operator()(const drawing::Arc& a) const {
    m_painter.setPen(a.pen.width_mm > 0.0 ? penOf(a.pen) : QPen(Qt::NoPen));
    m_painter.setBrush(a.filled ? QBrush(colourOf(a.fill)) : QBrush(Qt::NoBrush));
    const QPointF centre = pointOf(a.centre);
    const double r = a.radius_mm * m_units;
    if (a.sweep_deg >= 360.0 || a.sweep_deg <= -360.0) {
      m_painter.drawEllipse(centre, r, r);
      return;
    }
    const QRectF box(centre.x() - r, centre.y() - r, 2 * r, 2 * r);
    m_painter.drawArc(box, qRound(a.start_deg * 16.0), qRound(a.sweep_deg * 16.0));
  }

  void operator()(const drawing::Text& t) const {
    const double wanted = t.font.size_pt * 25.4 / 72.0 * m_units;
    QFont font = drawingFont(t.font);
    if (m_names_fonts) font.setFamilies(publicFamilies());
    font.setPointSizeF(wanted * 72.0 / m_painter.device()->logicalDpiY());
    m_painter.setFont(font);
    m_painter.setPen(colourOf(t.colour));
    const QString words = QString::fromStdString(t.text);
    const double width = widthOf(words, t.font) * m_units;
    const double shift = t.align == drawing::HAlign::left     ? 0.0
                         : t.align == drawing::HAlign::centre ? -width / 2.0
                                                              : -width;
    if (t.turn_deg == 0.0) {
      m_painter.drawText(pointOf(t.at) + QPointF(shift, 0.0), words);
      return;
    }
    m_painter.save();
    m_painter.translate(pointOf(t.at));
    m_painter.rotate(-t.turn_deg);
    m_painter.drawText(QPointF(shift, 0.0), words);
    m_painter.restore();
  }

 private:
  /// On screen most lines are too thin for the shape of a joint to be seen: drawn as single lines,
  /// which Qt rasters several times faster than a path (a dragged wall repaints hundreds).
  bool isThin(const drawing::Stroke& s) const {
    return m_raster && s.pen.colour.a == 255 && s.pen.cap == drawing::Cap::butt &&
           s.pen.width_mm * m_px_per_mm <= kThin_px && s.pen.width_mm > 0.0 &&
           s.pen.dash_mm.size() % 2 == 0 && (s.points.size() > 2 || !s.pen.dash_mm.empty());
  }

  void thin(const drawing::Stroke& s) const {
    QPolygonF points = polygonOf(s.points);
    if (s.closed && points.size() > 1) points << points.front();
    const bool dashed = !s.pen.dash_mm.empty();
    QPen pen(colourOf(s.pen.colour), s.pen.width_mm * m_units);
    // A square cap covers half of a joint; the ends of the whole are drawn back by as much.
    pen.setCapStyle(dashed ? Qt::FlatCap : Qt::SquareCap);
    m_painter.setPen(pen);
    m_painter.drawLines(dashed ? dashesOf(points, s.pen)
                               : legsOf(points, s.closed ? 0.0 : pen.widthF() / 2.0));
  }

  static bool isBox(const std::vector<drawing::Point>& p) {
    if (p.size() != 4) return false;
    return (p[0].x == p[3].x && p[1].x == p[2].x && p[0].y == p[1].y && p[2].y == p[3].y) ||
           (p[0].x == p[1].x && p[2].x == p[3].x && p[0].y == p[3].y && p[1].y == p[2].y);
  }

  static QList<QLineF> legsOf(const QPolygonF& points, double back) {
    QList<QLineF> legs;
    legs.reserve(points.size());
    for (qsizetype i = 0; i + 1 < points.size(); ++i) legs << QLineF(points[i], points[i + 1]);
    if (legs.isEmpty() || back <= 0.0) return legs;
    QLineF& last = legs.back();
    last.setLength(std::max(0.0, last.length() - back));
    QLineF first(legs.front().p2(), legs.front().p1());
    first.setLength(std::max(0.0, first.length() - back));
    legs.front() = QLineF(first.p2(), first.p1());
    return legs;
  }

  /// The dashes of a pattern, laid along the legs one after the other.
  QList<QLineF> dashesOf(const QPolygonF& points, const drawing::Pen& pen) const {
    QList<double> parts;
    double whole = 0.0;
    for (const double part : pen.dash_mm) {
      parts << part * m_units;
      whole += parts.back();
    }
    QList<QLineF> dashes;
    if (whole <= kLeastPattern_px) return legsOf(points, 0.0);
    double into = std::fmod(pen.dash_offset_mm * m_units, whole);
    if (into < 0.0) into += whole;
    qsizetype part = 0;
    while (into >= parts[part]) {
      into -= parts[part];
      part = (part + 1) % parts.size();
    }
    for (qsizetype i = 0; i + 1 < points.size(); ++i) {
      const QLineF leg(points[i], points[i + 1]);
      const double length = leg.length();
      for (double at = 0.0; at < length;) {
        const double step = std::min(parts[part] - into, length - at);
        if (part % 2 == 0) {
          dashes << QLineF(leg.pointAt(at / length), leg.pointAt((at + step) / length));
        }
        at += step;
        into += step;
        if (into < parts[part] - kSameLength_px) continue;
        into = 0.0;
        part = (part + 1) % parts.size();
      }
    }
    return dashes;
  }

  QPointF pointOf(const drawing::Point& p) const { return {p.x * m_units, p.y * m_units}; }

  QPolygonF polygonOf(const std::vector<drawing::Point>& points) const {
    QPolygonF out;
    out.reserve(static_cast<qsizetype>(points.size()));
    for (const auto& p : points) out << pointOf(p);
    return out;
  }

  QPen penOf(const drawing::Pen& p) const {
    QPen pen(colourOf(p.colour), p.width_mm * m_units);
    pen.setCapStyle(p.cap == drawing::Cap::round    ? Qt::RoundCap
                    : p.cap == drawing::Cap::square ? Qt::SquareCap
                                                    : Qt::FlatCap);
    pen.setJoinStyle(p.cap == drawing::Cap::round ? Qt::RoundJoin : Qt::MiterJoin);
    if (!p.dash_mm.empty() && p.width_mm > 0.0) {
      QList<qreal> pattern;  // Qt counts dashes in pen widths
      for (double part : p.dash_mm) pattern << part / p.width_mm;
      pen.setDashPattern(pattern);
      pen.setDashOffset(p.dash_offset_mm / p.width_mm);
    }
    return pen;
  }

  QPainter& m_painter;
  double m_units;
  bool m_raster;
  double m_px_per_mm;  ///< on the device
  bool m_names_fonts;  ///< the file holds names of fonts, not the fonts
};

/// How far a shape reaches down the page, mm; wide rather than narrow.
struct Reach {
  double top = 0.0;
  double bottom = 0.0;
};

Reach reachOf(const std::vector<drawing::Point>& points, double beyond) {
  if (points.empty()) return {};
  const auto [top, bottom] = std::minmax_element(
      points.begin(), points.end(), [](const auto& a, const auto& b) { return a.y < b.y; });
  return {top->y - beyond, bottom->y + beyond};
}

/// A mitre reaches at most this many line widths beyond the corner: Qt's limit is 2, and half the
/// line stands on either side.
constexpr double kMitre = 3.0;

Reach reachOf(const drawing::Item& item) {
  if (const auto* s = std::get_if<drawing::Stroke>(&item.shape)) {
    return reachOf(s->points, kMitre * s->pen.width_mm);
  }
  if (const auto* a = std::get_if<drawing::Arc>(&item.shape)) {
    return reachOf({a->centre}, a->radius_mm + a->pen.width_mm);
  }
  if (const auto* f = std::get_if<drawing::Fill>(&item.shape)) {
    Reach all = f->rings.empty() ? Reach{} : reachOf(f->rings.front(), 0.0);
    for (const auto& ring : f->rings) {
      const Reach one = reachOf(ring, 0.0);
      all = {std::min(all.top, one.top), std::max(all.bottom, one.bottom)};
    }
    return all;
  }
  const auto& t = std::get<drawing::Text>(item.shape);
  // No letter is wider or taller than twice its size; a turned text reaches as far as it is long.
  const double size = 2.0 * t.font.size_pt * 25.4 / 72.0;
  const double length = t.turn_deg == 0.0 ? 1.0 : static_cast<double>(t.text.size() + 1);
  return reachOf({t.at}, size * length);
}

void paintItems(QPainter& painter, const drawing::DrawList& list, double units_per_mm,
                const Reach* within) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setRenderHint(QPainter::TextAntialiasing);
  const Brush brush(painter, units_per_mm);
  const bool raster = painter.paintEngine()->type() == QPaintEngine::Raster;
  bool smooth = true;
  for (const drawing::Item& item : list.items) {
    if (within != nullptr) {
      const Reach reach = reachOf(item);
      if (reach.bottom < within->top || reach.top > within->bottom) continue;
    }
    // The grid runs along the pixels: without smoothing it is crisp, and soon done.
    const bool wanted = !raster || item.tag != "grid";
    if (wanted != smooth) painter.setRenderHint(QPainter::Antialiasing, wanted);
    smooth = wanted;
    std::visit(brush, item.shape);
  }
  painter.restore();
}

}  // namespace

QFont drawingFont(const drawing::Font& font) {
  QFont out;
  out.setFamilies(drawingFamilies());
  out.setBold(font.bold);
  out.setItalic(font.italic);
  out.setHintingPreference(QFont::PreferNoHinting);
  return out;
}

void paintDrawList(QPainter& painter, const drawing::DrawList& list, double units_per_mm) {
  paintItems(painter, list, units_per_mm, nullptr);
}

void paintOn(QImage& picture, const drawing::DrawList& list, double units_per_mm) {
  uchar* const bits = picture.bits();
  const double ratio = picture.devicePixelRatio();
  const auto band = [&, bits, ratio](int from, int to) {
    QImage rows(bits + from * picture.bytesPerLine(), picture.width(), to - from,
                picture.bytesPerLine(), picture.format());
    rows.setDevicePixelRatio(ratio);
    QPainter painter(&rows);
    painter.translate(0.0, -from / ratio);
    const double mm = 1.0 / (ratio * units_per_mm);
    const Reach reach{(from - 1) * mm, (to + 1) * mm};
    paintItems(painter, list, units_per_mm, &reach);
  };
  const int middle = picture.height() / 2;
  QSemaphore done;
  const bool shared = QThreadPool::globalInstance()->tryStart([&] {
    band(0, middle);
    done.release();
  });
  if (!shared) band(0, middle);
  band(middle, picture.height());
  if (shared) done.acquire();
}

}  // namespace sumpwright::paint
