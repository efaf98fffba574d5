// Floors: room colours, the broken lines of wet rooms, floors that are no ground slab; room names.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "drawing/Clip.h"
#include "drawing/Hatch.h"
#include "drawing/PlanContext.h"
#include "geometry/Shapes.h"

namespace sumpwright::drawing {
namespace {

bool isWet(plan::RoomUse use) {
  return use == plan::RoomUse::bathroom || use == plan::RoomUse::shower || use == plan::RoomUse::wc;
}

void wetLines(Sketch& sketch, const PlanContext& c, const std::vector<Point>& room) {
  for (const auto& line : hatch({clipped(room, c.page)}, {0.0, 1.75})) {
    Pen pen = dashed(c.theme.wet_lines, 1.0, {9.0, 5.0});
    // Every other row half a dash on, and all of them in step with the page.
    const double pattern = 14.0 * kPx;
    const bool odd = std::fmod(std::abs(std::round(line.a.y / 1.75)), 2.0) == 1.0;
    pen.dash_offset_mm =
        std::fmod(std::fmod(line.a.x + (odd ? pattern / 2 : 0.0), pattern) + pattern, pattern);
    sketch.line(line.a, line.b, pen);
  }
}

/// Suspended floors carry their own fine lines: paired for concrete beams, broken for joists.
void floorMarks(Sketch& sketch, const PlanContext& c, const plan::FloorZone& zone) {
  const std::vector<Point> area = clipped(c.at(zone.outline_m), c.page);
  if (zone.kind == plan::FloorKind::suspended_timber) {
    for (const auto& line : hatch({area}, {90.0, 2.9})) {
      sketch.line(line.a, line.b, dashed(c.theme.hairline, 1.1, {9.0, 3.0}));
    }
  }
  if (zone.kind == plan::FloorKind::suspended_concrete) {
    for (const auto& line : hatch({area}, {0.0, 4.4})) {
      sketch.line(line.a, line.b, solid(c.theme.hairline, 1.1));
      const Vec pair{0.0, 1.0};
      sketch.line(line.a + pair, line.b + pair, solid(c.theme.hairline, 1.1));
    }
  }
}

base::Message useWord(plan::RoomUse use) {
  static constexpr std::array kWords = {
      "drawing.room.unknown", "drawing.room.living",   "drawing.room.bedroom",
      "drawing.room.kitchen", "drawing.room.dining",   "drawing.room.hall",
      "drawing.room.stairs",  "drawing.room.bathroom", "drawing.room.shower",
      "drawing.room.wc",      "drawing.room.utility",  "drawing.room.store",
      "drawing.room.garage",  "drawing.room.office"};
  return base::Message(kWords[static_cast<std::size_t>(use)]);
}

/// A room's label as it would stand: one or two lines of name, the area below, level or upright.
struct Label {
  std::vector<Text> texts;
  Box box;
};

Label labelAt(const PlanContext& c, const Voice& voice, Point centre,
              const std::vector<std::string>& name, const Font& name_font, const std::string& area,
              double turn_deg) {
  const double name_step = leading_mm(name_font);
  const double area_step = area.empty() ? 0.0 : leading_mm(type::second);
  const double cap = voice.capHeight_mm(name_font);
  const double height = cap + name_step * static_cast<double>(name.size() - 1) + area_step;
  double down = -height / 2.0 + cap;
  Label label;
  const auto put = [&](const std::string& words, const Font& font, const Colour& colour) {
    const Vec shift = turn_deg == 0.0 ? Vec{0.0, down} : Vec{down, 0.0};
    label.texts.push_back({centre + shift, words, font, colour, HAlign::centre, turn_deg});
  };
  for (const std::string& line : name) {
    put(line, name_font, c.theme.ink);
    down += name_step;
  }
  if (!area.empty()) {
    down += area_step - name_step;
    put(area, type::second, c.theme.ink2);
  }
  label.box = boxOf(label.texts.front(), voice);
  for (const Text& text : label.texts) label.box = join(label.box, boxOf(text, voice));
  return label;
}

bool within(const std::vector<Point>& room, const Box& box) {
  const Box wide = grown(box, 0.6);
  const std::array<Point, 8> points = {{{wide.left, wide.top},
                                        {wide.right, wide.top},
                                        {wide.right, wide.bottom},
                                        {wide.left, wide.bottom},
                                        {wide.centre().x, wide.top},
                                        {wide.centre().x, wide.bottom},
                                        {wide.left, wide.centre().y},
                                        {wide.right, wide.centre().y}}};
  return std::all_of(points.begin(), points.end(),
                     [&](Point p) { return geometry::contains(room, p); });
}

/// Places to try, nearest to the room's middle first.
std::vector<Vec> shifts() {
  std::vector<Vec> out;
  for (int y = -8; y <= 8; ++y) {
    for (int x = -8; x <= 8; ++x) out.push_back({x * 1.5, y * 1.5});
  }
  std::stable_sort(out.begin(), out.end(),
                   [](Vec a, Vec b) { return geometry::norm(a) < geometry::norm(b); });
  return out;
}

/// Names break between words only.
bool brokenAtSpaces(const std::vector<std::string>& lines, const std::string& name) {
  std::string joined;
  for (const std::string& line : lines) joined += (joined.empty() ? "" : " ") + line;
  return !lines.empty() && joined == name;
}

std::optional<Label> findLabel(const PlanContext& c, bool over_swings, const Voice& voice,
                               const std::vector<Point>& room, const std::string& name,
                               const std::string& area) {
  const Point middle = geometry::labelPoint(room);
  static const std::vector<Vec> kShifts = shifts();
  // Best first: whole and level; then broken; then small; then upright; then without the area.
  for (const std::string& under : {area, std::string()}) {
    for (double turn : {0.0, 90.0}) {
      for (const Font& font : {type::room, Font{type::second.size_pt, true, false}}) {
        for (double width : {1000.0, voice.width_mm(name, font) * 0.7}) {
          const auto lines = wrap(voice, name, font, width);
          if (!brokenAtSpaces(lines, name) || (width < 1000.0 && lines.size() < 2)) continue;
          for (const Vec& shift : kShifts) {
            Label label = labelAt(c, voice, middle + shift, lines, font, under, turn);
            if (within(room, label.box) && c.occupied.isFree(label.box) &&
                (over_swings || c.swings.isFree(label.box))) {
              return label;
            }
          }
        }
      }
    }
    if (area.empty()) break;
  }
  return std::nullopt;
}

}  // namespace

bool PlanContext::inHouse(Point point) const {
  for (const PageRing& ring : rings) {
    if (geometry::contains(ring.outside(), point) != (ring.ring == 0)) return false;
  }
  return true;
}

void paintFloor(Sketch& sketch, PlanContext& c) {
  sketch.tagged("floor");
  std::vector<std::vector<Point>> faces;
  for (const PageRing& ring : c.rings) faces.push_back(ring.outside());
  sketch.fill(faces, c.theme.room_hall);
  for (const plan::Room& room : c.plan().rooms) {
    sketch.tagged(room.id);
    const std::vector<Point> outline = c.at(room.outline_m);
    sketch.fill(outline, c.theme.room(room.use));
    if (isWet(room.use) && c.view.mm_per_m >= kAreaScale) wetLines(sketch, c, outline);
  }
  for (const plan::FloorZone& zone : c.plan().floor_zones) {
    sketch.tagged(zone.id);
    floorMarks(sketch, c, zone);
  }
}

void paintRoomLabels(Sketch& sketch, PlanContext& c, const Voice& voice) {
  if (c.view.mm_per_m < kNameScale) return;
  for (const plan::Room& room : c.plan().rooms) {
    const std::string name = room.name.empty() ? voice.say(useWord(room.use)) : room.name;
    const base::Quantity m2{std::abs(geometry::signedArea(room.outline_m)),
                            base::Unit::squareMetre};
    const std::string area = c.view.mm_per_m < kAreaScale
                                 ? std::string()
                                 : voice.say(base::Message("drawing.area", {{"area", m2}}));
    if (name.empty()) continue;
    auto label = findLabel(c, false, voice, c.at(room.outline_m), name, area);
    if (!label) label = findLabel(c, true, voice, c.at(room.outline_m), name, area);
    if (!label) continue;
    sketch.tagged(room.id);
    // Pipes, joists and broken lines stop short of the words.
    const Box b = grown(label->box, 0.5);
    sketch.fill(rectangle(b.left, b.top, b.width(), b.height()), c.theme.room(room.use));
    for (const Text& t : label->texts) {
      sketch.text(t.at, t.text, t.font, t.colour, t.align, t.turn_deg);
    }
    c.occupied.take(label->box);
  }
}

}  // namespace sumpwright::drawing
