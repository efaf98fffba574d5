// Words over a field: room names with a halo, contours' figures, test holes.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "drawing/FieldParts.h"
#include "geometry/Polylines.h"
#include "suction/Network.h"

namespace sumpwright::drawing {
namespace {

constexpr double kHalo_mm = 0.32;
constexpr double kHoleReach_mm = 2.5;
constexpr double kPlatePad_mm = 0.8;
constexpr double kShortest_mm = 9.0;  // a contour shorter than this goes without its figure

std::optional<std::size_t> classAt(const FieldSheet& sheet, const FieldShown& shown,
                                   const FieldPaint& paint, Point page) {
  if (!shown.field.has()) return std::nullopt;
  const int cell = shown.field.network->cellNear(toPlan(sheet.view, page));
  if (cell < 0) return std::nullopt;
  return paint.scale.classOf((*shown.field.values)[static_cast<std::size_t>(cell)]);
}

/// The words' outline: on screen round the letters, on paper a plate, since there each copy of a
/// word could be searched and copied as one.
void paintHalo(Sketch& sketch, const FieldSheet& sheet, const FieldName& name,
               const Colour& colour) {
  if (sheet.view.theme == ThemeName::paper) {
    const Box b = grown(name.box, 0.4);
    sketch.fill(roundedRectangle(b.left, b.top, b.width(), b.height(), 0.6), colour);
    return;
  }
  for (const Text& t : name.lines) {
    for (int k = 0; k < 8; ++k) {
      const double angle = k * std::numbers::pi / 4.0;
      sketch.text(t.at + kHalo_mm * Vec{std::cos(angle), std::sin(angle)}, t.text, t.font, colour,
                  t.align, t.turn_deg);
    }
  }
}

void paintNames(Sketch& sketch, const FieldSheet& sheet, const FieldShown& shown,
                const FieldPaint& paint) {
  for (const FieldName& name : sheet.names) {
    sketch.tagged(name.room);
    Colour ink = paint.theme.ink;
    if (const auto own = classAt(sheet, shown, paint, name.box.centre())) {
      // Two classes away from the words, so that these stand out even at a class's limit.
      const bool dark = moreReadable(paint.theme.ink, paint.theme.paper, {paint.of(*own)}) == ink;
      const bool toward_paper = dark;
      if (!dark) ink = paint.theme.paper;
      const Colour halo = stepFrom(paint.scale, *own, toward_paper ? -2 : 2);
      paintHalo(sketch, sheet, name, paint.stale ? drained(halo, paint.theme.paper) : halo);
    }
    for (const Text& t : name.lines) {
      sketch.text(t.at, t.text, t.font, ink, t.align, t.turn_deg);
    }
  }
}

struct Plate {
  std::string words;
  Font font;
  Colour ink;
  Box box;
};

Plate plateAt(const Voice& voice, const std::string& words, const Font& font, const Colour& ink,
              Point centre) {
  const double half = voice.width_mm(words, font) / 2.0 + kPlatePad_mm;
  return {words, font, ink, around(centre, half, voice.capHeight_mm(font) / 2.0 + kPlatePad_mm)};
}

void paintPlate(Sketch& sketch, const Voice& voice, const Plate& plate, const Colour& paper,
                const Pen& edge) {
  const Box& b = plate.box;
  const auto outline = roundedRectangle(b.left, b.top, b.width(), b.height(), 0.7);
  sketch.fill(outline, paper);
  if (edge.width_mm > 0.0) sketch.outline(outline, edge);
  sketch.text({b.centre().x, b.centre().y + voice.capHeight_mm(plate.font) / 2.0}, plate.words,
              plate.font, plate.ink, HAlign::centre);
}

class FieldLabeller {
 public:
  FieldLabeller(Sketch& sketch, const FieldSheet& sheet, const FieldPaint& paint,
                const Voice& voice)
      : m_sketch(sketch), m_sheet(sheet), m_paint(paint), m_voice(voice) {
    for (const FieldName& name : sheet.names) m_taken.take(grown(name.box, 0.4));
    for (const Box& box : sheet.taken) m_taken.take(box);
  }

  void hole(const HoleMark& mark) {
    const Point p = toPage(m_sheet.view, mark.at_m);
    const Theme& t = m_paint.theme;
    const bool measured = mark.measured_pa.has_value();
    const bool stale = mark.stale || m_paint.stale;
    const Colour line = stale ? t.stale_line : t.ink;
    m_sketch.tagged(mark.id);
    for (const Vec& v : {Vec{1, 0}, Vec{-1, 0}, Vec{0, 1}, Vec{0, -1}}) {
      m_sketch.line(p + 1.0 * v, p + (kHoleReach_mm + 0.3) * v, solid(t.paper, 4.0));
      m_sketch.line(p + 1.25 * v, p + kHoleReach_mm * v, solid(line, 1.6));
    }
    m_sketch.disc(p, 1.75, t.paper);
    m_sketch.ring(p, 1.25, solid(line, 1.6), measured ? line : t.paper);
    m_taken.take(around(p, kHoleReach_mm, kHoleReach_mm));
  }

  /// When all signs stand: no value lies on another hole.
  void holeWords(const HoleMark& mark) {
    m_sketch.tagged(mark.id);
    if (mark.number > 0 || mark.measured_pa || mark.predicted_pa) {
      holeValue(mark, toPage(m_sheet.view, mark.at_m), mark.stale || m_paint.stale);
    }
  }

  void contours(const std::vector<PageContour>& all) {
    // The longest of each level first; the target before the others.
    std::vector<const PageContour*> order;
    for (const PageContour& one : all) order.push_back(&one);
    std::stable_sort(order.begin(), order.end(), [](const auto* a, const auto* b) {
      if (a->target != b->target) return a->target;
      return geometry::lengthOf(a->line) > geometry::lengthOf(b->line);
    });
    std::vector<double> done;
    for (const PageContour* one : order) {
      const bool again = std::find(done.begin(), done.end(), one->level) != done.end();
      if (again && !one->target) continue;
      if (contour(*one)) done.push_back(one->level);
    }
  }

 private:
  void holeValue(const HoleMark& mark, Point p, bool stale) {
    const Theme& t = m_paint.theme;
    const bool measured = mark.measured_pa.has_value();
    const std::string words = m_voice.say(wordsOf(mark));
    const Font font{type::body.size_pt, measured && !stale, !measured || stale};
    Plate plate = plateAt(m_voice, words, font, stale ? t.stale_text : t.ink, {});
    const Vec by = placeBeside(p, plate.box);
    plate.box = {plate.box.left + by.x, plate.box.top + by.y, plate.box.right + by.x,
                 plate.box.bottom + by.y};
    const Vec off = plate.box.centre() - p;
    if (std::abs(off.x) > plate.box.width() / 2.0 + 2.0 * kHoleReach_mm ||
        std::abs(off.y) > plate.box.height() / 2.0 + 2.0 * kHoleReach_mm) {
      const Vec along = unit(off);  // far off: a line says whose it is
      m_sketch.line(p + 1.75 * along, plate.box.centre(), solid(t.paper, 3.0));
      m_sketch.line(p + 1.75 * along, plate.box.centre(), solid(t.ink2, 1.0));
    }
    m_taken.take(plate.box);
    const bool firm = measured && !stale;
    paintPlate(m_sketch, m_voice, plate, t.raised,
               firm ? solid(t.ink, 1.6) : dashed(stale ? t.stale_line : t.ink2, 1.1, {3.0, 2.2}));
    if (measured && stale) wavy(plate.box);
  }

  /// "2: ≈ 3.4 Pa"; the number alone where nothing is known.
  static base::Message wordsOf(const HoleMark& mark) {
    std::optional<base::Message> value;
    if (mark.measured_pa) {
      value = pascalWords(*mark.measured_pa);
    } else if (mark.predicted_pa) {
      value = base::Message("drawing.field.predicted",
                            {base::phrase("value", pascalWords(*mark.predicted_pa))});
    }
    const base::Arg number = base::count("number", mark.number);
    if (!value) return base::Message("drawing.field.hole", {number});
    if (mark.number == 0) return *value;
    return base::Message("drawing.field.hole-value", {number, base::phrase("value", *value)});
  }

  /// Right of the cross-hair, else left, above, below and aslant, then further off: the first free,
  /// else the first in the page.
  Vec placeBeside(Point p, const Box& box) const {
    const double x = kHoleReach_mm + box.width() / 2.0 + 0.6;
    const double y = kHoleReach_mm + box.height() / 2.0 + 0.6;
    std::vector<Vec> tries;
    for (const double far : {1.0, 1.8, 2.8}) {
      for (const Vec& v : std::array<Vec, 8>{
               {{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}}}) {
        tries.push_back({far * x * v.x, (far == 1.0 ? 1.0 : 1.6 * far) * y * v.y});
      }
    }
    const Box page{0.0, 0.0, m_sheet.view.width_mm, m_sheet.view.height_mm};
    const auto moved = [&](Vec v) {
      const Point middle = p + v;
      return around(middle, box.width() / 2.0, box.height() / 2.0);
    };
    for (const Vec v : tries) {
      if (holds(page, moved(v)) && m_taken.isFree(moved(v))) return (p + v) - Point{};
    }
    for (const Vec v : tries) {
      if (holds(page, moved(v))) return (p + v) - Point{};
    }
    return (p + tries[0]) - Point{};
  }

  /// What an old plan said is underlined so.
  void wavy(const Box& box) {
    std::vector<Point> line;
    const double y = box.bottom + 0.7;
    int k = 0;
    for (double x = box.left + 0.6; x <= box.right - 0.6; x += 0.6, ++k) {
      line.push_back({x, y + (k % 2 == 0 ? 0.3 : -0.3)});
    }
    m_sketch.path(line, solid(m_paint.theme.stale_line, 1.1));
  }

  bool contour(const PageContour& one) {
    std::vector<Point> line = one.line;
    if (one.closed && !line.empty()) line.push_back(line.front());
    const double length = geometry::lengthOf(line);
    if (length < kShortest_mm) return false;
    const Theme& t = m_paint.theme;
    const std::string words = m_voice.say(one.target ? targetWords(m_paint.kind, one.level)
                                                     : levelWords(m_paint.kind, one.level));
    const Font font = one.target ? type::strong : type::second;
    for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78, 0.15, 0.85}) {
      const Plate plate = plateAt(m_voice, words, font, m_paint.stale ? t.stale_text : t.ink,
                                  geometry::pointAlong(line, share * length));
      const Box page{0.0, 0.0, m_sheet.view.width_mm, m_sheet.view.height_mm};
      if (!holds(page, plate.box) || !m_taken.isFree(plate.box)) continue;
      m_taken.take(grown(plate.box, 0.8));
      Pen none;
      none.width_mm = 0.0;
      m_sketch.tagged(one.target ? "target-label" : "contour-label");
      paintPlate(m_sketch, m_voice, plate, t.raised, one.target ? solid(t.ink, 1.4) : none);
      return true;
    }
    return false;
  }

  Sketch& m_sketch;
  const FieldSheet& m_sheet;
  const FieldPaint& m_paint;
  const Voice& m_voice;
  Occupied m_taken;
};

}  // namespace

void paintFieldLabels(Sketch& sketch, const FieldSheet& sheet, const FieldShown& shown,
                      const FieldPaint& paint, const std::vector<PageContour>& contours,
                      const std::vector<HoleMark>& holes, const Voice& voice) {
  paintNames(sketch, sheet, shown, paint);
  FieldLabeller labeller(sketch, sheet, paint, voice);
  for (const HoleMark& hole : holes) labeller.hole(hole);
  for (const HoleMark& hole : holes) labeller.holeWords(hole);
  labeller.contours(contours);
}

}  // namespace sumpwright::drawing
