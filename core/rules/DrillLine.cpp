// Distance of heating from the drill line, in plan; in height where the hole's height is stated.
//
// A thing stands at all heights from its lowest on, and the hole falls into the house if at all. So
// the hole's own height at the outside face, its highest, is taken all along: the gap upright is
// one figure, and the places nearer than r are those nearer than sqrt(r^2 - gap^2) in plan. That
// errs toward refusing where the hole falls (derived).
//
// dist(drill line at s, T) < r  <=>  dist(P(s), T + {-v inward : 0 <= v <= depth}) < r, so a moving
// line against a fixed segment is a moving point against a parallelogram: convex, and exact.

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/Distance.h"
#include "rules/Spans.h"

namespace sumpwright::rules {

namespace {

using geometry::Polygon;
using geometry::Segment;
using perimeter::Edge;

std::vector<Segment> segmentsOf(const geometry::Polyline& line) {
  std::vector<Segment> segments;
  if (line.size() == 1) segments.push_back({line[0], line[0]});
  for (std::size_t i = 1; i < line.size(); ++i) segments.push_back({line[i - 1], line[i]});
  return segments;
}

Polygon swept(const Edge& edge, const Segment& s) {
  const geometry::Vec back = -edge.drillDepth_m() * edge.inward;
  return {s.a, s.b, s.b + back, s.a + back};
}

std::vector<RingSpan> nearDrill(const perimeter::Perimeter& perimeter, const Thing& thing,
                                double r) {
  std::vector<EdgePiece> pieces;
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    for (const Edge& edge : perimeter.edges(ring)) {
      for (const auto& shape : thing.shapes) {
        for (const Segment& s : segmentsOf(shape)) {
          for (const auto& i : geometry::withinArea(edge.line(), swept(edge, s), r)) {
            pieces.push_back({&edge, i});
          }
        }
      }
    }
  }
  return joinPieces(pieces);
}

/// How far the thing ends above the middle of the hole; 0 where heights are not asked.
double gapAbove_m(const Rule& rule, const Site& site, const Thing& thing) {
  if (!rule.in_height_m || !site.hole || !site.hole->entry_m || !std::isfinite(thing.low_m))
    return 0.0;
  return std::max(0.0, thing.low_m - *site.hole->entry_m);
}

void spans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (addUnjudged(rule, site, out)) return;
  for (const int i : site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))]) {
    const Thing& thing = site.things[static_cast<std::size_t>(i)];
    const double reach = reach_m(rule, site);
    const double gap = gapAbove_m(rule, site, thing);
    if (gap >= reach) continue;
    const Finding f = makeFinding(
        rule, site, i, base::Message("rule.too-near", {base::phrase("thing", thing.label)}));
    const double in_plan = gap > 0.0 ? std::sqrt(reach * reach - gap * gap) : reach;
    addSpans(rule, site, i, f, nearDrill(site.perimeter, thing, in_plan), out);
  }
}

double toDrill(const Segment& drill, const Thing& thing) {
  double closest = std::numeric_limits<double>::infinity();
  for (const auto& shape : thing.shapes) {
    closest = std::min(closest, geometry::distance(drill, shape));
  }
  return closest;
}

/// Over a stretch, each wall's part with its own direction of drilling; a corner where the stretch
/// only ends belongs to the wall beyond it.
double leastOver(const Site& site, const Thing& thing, int ring, double from, double to) {
  double closest = std::numeric_limits<double>::infinity();
  for (const Edge& e : site.perimeter.edges(ring)) {
    const double a = std::max(from, e.start_m);
    const double b = std::min(to, e.end_m());
    if (!(a < b)) continue;
    const Segment piece{e.line().at(a - e.start_m), e.line().at(b - e.start_m)};
    for (const auto& shape : thing.shapes) {
      for (const Segment& s : segmentsOf(shape)) {
        closest = std::min(closest, geometry::distanceToArea(piece, swept(e, s)));
      }
    }
  }
  return closest;
}

std::optional<double> least(const Rule& rule, const Site& site, const Thing& thing, int ring,
                            double from, double to) {
  const double closest = from < to ? leastOver(site, thing, ring, from, to)
                                   : toDrill(site.perimeter.drillLine({ring, from}), thing);
  return std::hypot(closest, gapAbove_m(rule, site, thing)) - halfWidth_m(rule, site).value_or(0.0);
}

std::optional<Nearest> nearest(const Rule& rule, const Site& site, perimeter::Place place) {
  const auto half = halfWidth_m(rule, site);
  if (!half) return std::nullopt;
  const Segment drill = site.perimeter.drillLine(place);
  return nearestOf(rule, site, [&](const Thing& thing) -> std::optional<double> {
    return std::hypot(toDrill(drill, thing), gapAbove_m(rule, site, thing)) - *half;
  });
}

}  // namespace

const RuleJudge kDrillLine{RuleKind::drill_line, spans, nearest, least};

}  // namespace sumpwright::rules
