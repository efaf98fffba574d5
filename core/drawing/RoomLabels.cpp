// Names and areas of rooms, where they fit.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "drawing/PlanContext.h"
#include "geometry/Shapes.h"

namespace sumpwright::drawing {
namespace {

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

/// Centred on the origin; moved to its place later.
Label labelOf(const PlanContext& c, const Voice& voice, const std::vector<std::string>& name,
              const Font& name_font, const std::string& area, double turn_deg) {
  const double name_step = leading_mm(name_font);
  const double area_step = area.empty() ? 0.0 : leading_mm(type::second);
  const double cap = voice.capHeight_mm(name_font);
  const double height = cap + name_step * static_cast<double>(name.size() - 1) + area_step;
  double down = -height / 2.0 + cap;
  Label label;
  const auto put = [&](const std::string& words, const Font& font, const Colour& colour) {
    const Vec shift = turn_deg == 0.0 ? Vec{0.0, down} : Vec{down, 0.0};
    label.texts.push_back({Point{} + shift, words, font, colour, HAlign::centre, turn_deg});
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

/// Best first: whole and level; then broken; then small; then upright; then without the area.
std::vector<Label> candidates(const PlanContext& c, const Voice& voice, const std::string& name,
                              const std::string& area) {
  std::vector<Label> out;
  for (const std::string& under : {area, std::string()}) {
    for (double turn : {0.0, 90.0}) {
      for (const Font& font : {type::room, Font{type::second.size_pt, true, false}}) {
        const double whole = voice.width_mm(name, font);
        for (double width : {whole + 1.0, 0.7 * whole}) {
          const auto lines = wrap(voice, name, font, width);
          if (!brokenAtSpaces(lines, name) || (width < whole && lines.size() < 2)) continue;
          out.push_back(labelOf(c, voice, lines, font, under, turn));
        }
      }
    }
    if (area.empty()) break;
  }
  return out;
}

Label moved(Label label, Vec by) {
  for (Text& text : label.texts) text.at = text.at + by;
  label.box = {label.box.left + by.x, label.box.top + by.y, label.box.right + by.x,
               label.box.bottom + by.y};
  return label;
}

std::optional<Label> findLabel(const PlanContext& c, const std::vector<Label>& labels,
                               const std::vector<Point>& room, Point middle, bool over_swings) {
  static const std::vector<Vec> kShifts = shifts();
  const Box bounds = boxOf(room);
  for (const Label& label : labels) {
    if (label.box.width() > bounds.width() || label.box.height() > bounds.height()) continue;
    for (const Vec& shift : kShifts) {
      const Vec by = (middle - Point{}) + shift;
      const Box box{label.box.left + by.x, label.box.top + by.y, label.box.right + by.x,
                    label.box.bottom + by.y};
      if (holds(bounds, box) && c.occupied.isFree(box) && (over_swings || c.swings.isFree(box)) &&
          within(room, box)) {
        return moved(label, by);
      }
    }
  }
  return std::nullopt;
}

/// Where it covers least that is drawn in the room: a room without a name is worse than a basin
/// behind one. Never over other words or the walls.
std::optional<Label> leastCovering(const PlanContext& c, const std::vector<Label>& labels,
                                   const std::vector<Point>& room, Point middle) {
  constexpr int kMost = 3;
  std::optional<Label> best;
  int least = kMost + 1;
  for (const Label& label : labels) {
    for (const Vec& shift : shifts()) {
      const Label tried = moved(label, (middle - Point{}) + shift);
      const int covered = c.occupied.clashes(tried.box);
      if (covered >= least || !c.labels.isFree(tried.box) || !within(room, tried.box)) continue;
      least = covered;
      best = tried;
    }
  }
  return best;
}

}  // namespace

std::vector<RoomName> placedRoomNames(PlanContext& c, const Voice& voice, bool with_area) {
  std::vector<RoomName> names;
  if (c.view.mm_per_m < kNameScale) return names;
  for (const plan::Room& room : c.plan().rooms) {
    const std::string name = room.name.empty() ? voice.say(useWord(room.use)) : room.name;
    const base::Quantity m2{std::abs(geometry::signedArea(room.outline_m)),
                            base::Unit::squareMetre};
    const std::string area = c.view.mm_per_m < kAreaScale || !with_area
                                 ? std::string()
                                 : voice.say(base::Message("drawing.area", {{"area", m2}}));
    if (name.empty()) continue;
    const auto labels = candidates(c, voice, name, area);
    const auto outline = c.at(room.outline_m);
    const Point middle = c.at(geometry::labelPoint(room.outline_m));  // to 5 cm of house, not page
    auto label = findLabel(c, labels, outline, middle, false);
    if (!label) label = findLabel(c, labels, outline, middle, true);
    if (!label && c.onPaper()) label = leastCovering(c, labels, outline, middle);
    if (!label) continue;
    c.occupied.take(label->box);
    names.push_back({&room, label->texts, label->box});
  }
  return names;
}

void paintRoomLabels(Sketch& sketch, PlanContext& c, const Voice& voice) {
  for (const RoomName& name : placedRoomNames(c, voice, true)) {
    sketch.tagged(name.room->id);
    // Pipes, joists and broken lines stop short of the words.
    const Box b = grown(name.box, 0.5);
    sketch.fill(rectangle(b.left, b.top, b.width(), b.height()), c.theme.room(name.room->use));
    for (const Text& t : name.texts) {
      sketch.text(t.at, t.text, t.font, t.colour, t.align, t.turn_deg);
    }
  }
}

}  // namespace sumpwright::drawing
