#include "drawing/Measure.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::drawing {
namespace {

using geometry::Point;
using geometry::Segment;

const rules::Thing* thingOf(const siting::Study& study, const rules::Rule& rule,
                            const std::string& id) {
  const rules::Site& site = study.site();
  for (int i : site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))]) {
    const rules::Thing& t = site.things[static_cast<std::size_t>(i)];
    if (t.id == id) return &t;
  }
  return nullptr;
}

geometry::Polyline outlineOf(const rules::Thing& t, const geometry::Polyline& shape) {
  geometry::Polyline line = shape;
  if (t.area && !line.empty()) line.push_back(line.front());
  return line;
}

/// Nearest pair of a segment and a polyline: an end of one lies in it, unless they cross.
struct Pair {
  Point on_segment;
  Point on_line;
  double distance = std::numeric_limits<double>::infinity();
  void offer(Point a, Point b) {
    const double d = geometry::distance(a, b);
    if (d < distance) *this = {a, b, d};
  }
};

Pair nearestPair(const Segment& s, const geometry::Polyline& line) {
  Pair best;
  for (Point end : {s.a, s.b}) best.offer(end, geometry::nearest(end, line));
  for (Point corner : line) best.offer(geometry::nearest(corner, s), corner);
  return best;
}

bool alongWall(const siting::Study& study, perimeter::Place place, const rules::Thing& t,
               Measure& m) {
  const double length = study.perimeter().length_m(place.ring);
  double least = std::numeric_limits<double>::infinity();
  for (const rules::RingRange& r : t.ranges) {
    if (r.ring != place.ring) continue;
    for (double shift : {-length, 0.0, length}) {
      const double s = place.chainage_m;
      const double to = std::clamp(s, r.from_m + shift, r.to_m + shift);
      if (std::abs(to - s) >= least) continue;
      least = std::abs(to - s);
      m.on_wall = true;
      m.from_s_m = s + std::copysign(std::min(m.half_m, least), to - s);
      m.to_s_m = to;
    }
  }
  return m.on_wall;
}

bool inPlan(const siting::Study& study, perimeter::Place place, const rules::Rule& rule,
            const rules::Thing& t, Measure& m) {
  const Point at = study.perimeter().pointAt(place);
  const Segment reach = rule.kind == rules::RuleKind::drill_line
                            ? study.perimeter().drillLine(place)
                            : Segment{at, at};
  Pair best;
  for (const auto& shape : t.shapes) {
    const Pair pair = nearestPair(reach, outlineOf(t, shape));
    if (pair.distance < best.distance) best = pair;
  }
  if (!(best.distance < std::numeric_limits<double>::infinity())) return false;
  m.centre = best.on_segment;
  m.to = best.on_line;
  const double share = best.distance > 0.0 ? std::min(1.0, m.half_m / best.distance) : 1.0;
  m.from = geometry::lerp(m.centre, m.to, share);
  return true;
}

}  // namespace

std::optional<Measure> measureOf(const siting::Study& study, perimeter::Place place,
                                 const std::string& rule_id, const std::string& thing_id) {
  const rules::Rule* rule = study.sheet().find(rule_id);
  if (rule == nullptr) return std::nullopt;
  const rules::Thing* thing = thingOf(study, *rule, thing_id);
  if (thing == nullptr) return std::nullopt;
  Measure m;
  m.thing = thing_id;
  m.half_m = rules::halfWidth_m(*rule, study.site()).value_or(0.0);
  const perimeter::Place here = study.perimeter().wrapped(place);
  const bool drawn = rule->kind == rules::RuleKind::along_wall
                         ? alongWall(study, here, *thing, m)
                         : inPlan(study, here, *rule, *thing, m);
  return drawn ? std::optional(m) : std::nullopt;
}

std::vector<Measure> measuresToShow(const siting::Study& study, const siting::Assessment& a) {
  std::vector<Measure> out;
  const auto add = [&](const std::string& rule, const std::string& thing, double distance,
                       double needed, bool refused) {
    auto m = measureOf(study, a.place, rule, thing);
    if (!m || out.size() >= 2) return;
    m->distance_m = distance;
    m->needed_m = needed;
    m->refused = refused;
    out.push_back(*m);
  };
  for (const siting::Finding& f : a.findings) {
    if (f.distance_m && f.needed_m && f.weight != rules::Weight::unknown) {
      add(f.rule, f.thing, *f.distance_m, *f.needed_m, f.weight == rules::Weight::binding);
    }
  }
  if (!out.empty() || a.margins.empty()) return out;
  const auto least = std::min_element(
      a.margins.begin(), a.margins.end(),
      [](const siting::Margin& x, const siting::Margin& y) { return x.margin_m < y.margin_m; });
  add(least->rule, least->thing, least->distance_m, least->needed_m, false);
  return out;
}

}  // namespace sumpwright::drawing
