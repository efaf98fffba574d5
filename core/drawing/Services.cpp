// Services: tags at their entries, buried runs with their sign, names on paper.

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "drawing/Beyond.h"
#include "drawing/PlanContext.h"
#include "drawing/Signs.h"
#include "geometry/Distance.h"

namespace sumpwright::drawing {
namespace {

constexpr double kTagOut_mm = 8.0;         // from the wall to the middle of the plate
constexpr double kShortestSigned_m = 3.0;  // a longer run carries its sign (own figure)
constexpr double kRoom_mm =
    kBandFar_mm + kPlateHalf_mm + 0.4;  // from any wall face, clear of bands

Box plateBox(Point centre) { return around(centre, kPlateHalf_mm + 0.5, kPlateHalf_mm + 0.5); }

bool clearOfWalls(const PlanContext& c, Point centre) {
  return std::all_of(c.rings.begin(), c.rings.end(), [&](const PageRing& ring) {
    auto outline = ring.outside();
    outline.push_back(outline.front());
    return geometry::distance(centre, outline) >= kRoom_mm;
  });
}

/// Chambers, gullies and the like: a tag had better not stand on one.
std::vector<Box> thingsOutside(const PlanContext& c) {
  std::vector<Box> out;
  for (const plan::OutsideThing& t : c.plan().outside) {
    if (isLine(t) || t.kind == plan::OutsideKind::deck || t.kind == plan::OutsideKind::carport ||
        t.points_m.empty())
      continue;
    out.push_back(t.points_m.size() == 1 ? around(c.at(t.points_m.front()), 3.0, 2.3)
                                         : boxOf(c.at(t.points_m)));
  }
  return out;
}

/// The first place for a plate that meets neither a wall's band, nor another plate, nor the edge.
Point placeTag(const PlanContext& c, Point tip, Vec out, const std::vector<ServiceTag>& placed) {
  const Vec along = geometry::left(out);
  const Point usual = tip + kTagOut_mm * out;
  const auto things = thingsOutside(c);
  for (bool over_things : {false, true}) {
    for (double further : {0.0, 6.0, 12.0}) {
      for (double aside : {0.0, 6.0, -6.0, 12.0, -12.0, 18.0, -18.0}) {
        const Point centre = usual + further * out + aside * along;
        const Box box = plateBox(centre);
        const bool taken = std::any_of(placed.begin(), placed.end(), [&](const ServiceTag& tag) {
          return overlap(box, plateBox(tag.centre));
        });
        const bool covers = std::any_of(things.begin(), things.end(),
                                        [&](const Box& thing) { return overlap(box, thing); });
        if (!taken && (over_things || !covers) && holds(c.page, box) && !c.inHouse(centre) &&
            clearOfWalls(c, centre)) {
          return centre;
        }
      }
    }
  }
  return usual;
}

void entry(Sketch& sketch, const PlanContext& c, const ServiceTag& tag) {
  const Colour colour = c.theme.service(tag.service->kind);
  const Point root = tag.tip + 6.0 * kPx * tag.out;  // the stem leaves the wall square
  const std::vector<Point> stem{tag.tip + 0.4 * tag.out, root, tag.centre};
  sketch.path(stem, solid(c.theme.paper, 6.0));
  sketch.path(stem, solid(colour, 2.4));
  const Vec across = geometry::left(tag.out);
  const std::vector<Point> head{tag.tip, root + across, root - across};
  sketch.fill(head, colour);
  sketch.outline(head, solid(c.theme.paper, 0.8));
  servicePlate(sketch, c.theme, tag.service->kind, tag.centre);
}

/// The middle of the longest piece of a polyline, and that piece's length.
std::pair<Point, double> longestPiece(const std::vector<Point>& line) {
  Point middle;
  double best = 0.0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double length = geometry::distance(line[i], line[i + 1]);
    if (length > best) {
      best = length;
      middle = geometry::lerp(line[i], line[i + 1], 0.5);
    }
  }
  return {middle, best};
}

void buriedRun(Sketch& sketch, PlanContext& c, const plan::Service& s) {
  const Colour colour = c.theme.service(s.kind);
  const auto line = c.at(s.run_m);
  sketch.path(line, dashed(colour, 1.5, {6.0, 3.5}));
  breakMarks(sketch, c, line, colour);
  for (std::size_t i = 0; i + 1 < line.size(); ++i) c.occupied.takeLine(line[i], line[i + 1]);
  const auto [middle, length] = longestPiece(line);
  if (length < c.mm(kShortestSigned_m) || length < 12.0 || !holds(c.page, middle)) return;
  sketch.fill(rectangle(middle.x - 2.2, middle.y - 2.0, 4.4, 4.0),
              c.inHouse(middle) ? c.theme.room_dwelling : c.theme.paper);
  serviceSign(sketch, s.kind, colour, middle, 0.85);
  c.occupied.take(around(middle, 2.4, 2.2));
}

std::array<Text, 6> nameTries(const PlanContext& c, const ServiceTag& tag, const Voice& voice) {
  const std::string word = serviceWord(*tag.service, voice);
  const double cap = voice.capHeight_mm(type::small);
  const double off = kPlateHalf_mm + 0.9;
  const Point p = tag.centre;
  return {{
      {{p.x + off, p.y + cap / 2}, word, type::small, c.theme.ink, HAlign::left, 0.0},
      {{p.x - off, p.y + cap / 2}, word, type::small, c.theme.ink, HAlign::right, 0.0},
      {{p.x, p.y + off + cap}, word, type::small, c.theme.ink, HAlign::centre, 0.0},
      {{p.x, p.y - off}, word, type::small, c.theme.ink, HAlign::centre, 0.0},
      {{p.x + cap / 2, p.y - off}, word, type::small, c.theme.ink, HAlign::left, 90.0},
      {{p.x + cap / 2, p.y + off}, word, type::small, c.theme.ink, HAlign::right, 90.0},
  }};
}

/// What a name there would cover; nothing where it may not stand at all.
std::optional<int> nameClashes(const PlanContext& c, const Box& box) {
  if (!holds(c.page, box) || !c.labels.isFree(box) || !c.bands.isFree(box)) return std::nullopt;
  return c.occupied.clashes(box) + c.dimensions.clashes(box);
}

Box nameBox(const Text& text, const Voice& voice) { return grown(boxOf(text, voice), 0.3); }

/// How many places are wholly free for its name.
int choices(const PlanContext& c, const ServiceTag& tag, const Voice& voice) {
  const auto tries = nameTries(c, tag, voice);
  return static_cast<int>(std::count_if(tries.begin(), tries.end(), [&](const Text& text) {
    return nameClashes(c, nameBox(text, voice)) == 0;
  }));
}

void nameTag(Sketch& sketch, PlanContext& c, const ServiceTag& tag, const Voice& voice) {
  const auto tries = nameTries(c, tag, voice);
  // The first that is free, else the one that covers least.
  const Text* best = nullptr;
  int least = 0;
  for (const Text& text : tries) {
    const auto clashes = nameClashes(c, nameBox(text, voice));
    if (!clashes || (best != nullptr && *clashes >= least)) continue;
    best = &text;
    least = *clashes;
  }
  if (best == nullptr) return;
  const Box box = nameBox(*best, voice);
  sketch.fill(rectangle(box.left, box.top, box.width(), box.height()), c.theme.paper);
  sketch.text(best->at, best->text, best->font, best->colour, best->align, best->turn_deg);
  c.labels.take(box);
}

}  // namespace

std::vector<ServiceTag> serviceTags(const PlanContext& c) {
  std::vector<ServiceTag> tags;
  for (const plan::Service& service : c.plan().services) {
    if (!service.entry) continue;
    const PageRing& ring = c.rings[static_cast<std::size_t>(service.entry->ring)];
    const PageEdge& edge = ring.edges[static_cast<std::size_t>(service.entry->edge)];
    ServiceTag tag{&service, edge.at(c.mm(service.entry->offset_m)), {}, edge.out};
    tag.centre = placeTag(c, tag.tip, tag.out, tags);
    tags.push_back(tag);
  }
  return tags;
}

std::string serviceWord(const plan::Service& service, const Voice& voice) {
  static constexpr std::array kWords = {"drawing.service.gas",     "drawing.service.electricity",
                                        "drawing.service.telecom", "drawing.service.oil",
                                        "drawing.service.water",   "drawing.service.drain",
                                        "drawing.service.waste"};
  return voice.say(base::Message(kWords[static_cast<std::size_t>(service.kind)]));
}

void paintServices(Sketch& sketch, PlanContext& c) {
  for (const plan::Service& s : c.plan().services) {
    sketch.tagged(s.id);
    if (s.run == plan::RunKnown::drawn) buriedRun(sketch, c, s);
  }
  for (const ServiceTag& tag : serviceTags(c)) {
    entry(sketch.tagged(tag.service->id), c, tag);
    c.occupied.take(plateBox(tag.centre));
    c.labels.take(plateBox(tag.centre));
    c.occupied.takeLine(tag.tip, tag.centre);
  }
}

void paintServiceNames(Sketch& sketch, PlanContext& c, const Voice& voice) {
  if (!c.onPaper()) return;
  // Those with the least choice first, so that the others leave them their place.
  auto tags = serviceTags(c);
  while (!tags.empty()) {
    const auto next = std::min_element(tags.begin(), tags.end(), [&](const auto& a, const auto& b) {
      const auto rank = [&](const ServiceTag& tag) {
        const double width = voice.width_mm(serviceWord(*tag.service, voice), type::small);
        return std::pair(choices(c, tag, voice), -width);
      };
      return rank(a) < rank(b);
    });
    nameTag(sketch.tagged(next->service->id), c, *next, voice);
    tags.erase(next);
  }
}

}  // namespace sumpwright::drawing
