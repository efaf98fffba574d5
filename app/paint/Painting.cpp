#include "paint/Painting.h"

#include <QPaintEngine>
#include <QPainterPath>
#include <QPen>

#include "paint/Fonts.h"
#include "paint/QtVoice.h"

namespace sumpwright::paint {
namespace {

QColor colourOf(const drawing::Colour& c) { return {c.r, c.g, c.b, c.a}; }

class Brush {
 public:
  Brush(QPainter& painter, double units_per_mm)
      : m_painter(painter),
        m_units(units_per_mm),
        m_names_fonts(painter.paintEngine()->type() == QPaintEngine::SVG) {}

  void operator()(const drawing::Stroke& s) const {
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
  bool m_names_fonts;  ///< the file holds names of fonts, not the fonts
};

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
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setRenderHint(QPainter::TextAntialiasing);
  const Brush brush(painter, units_per_mm);
  for (const drawing::Item& item : list.items) std::visit(brush, item.shape);
  painter.restore();
}

}  // namespace sumpwright::paint
