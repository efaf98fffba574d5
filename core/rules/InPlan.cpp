#include "rules/InPlan.h"

#include <algorithm>
#include <limits>

#include "geometry/Distance.h"

namespace sumpwright::rules {

namespace {

double straightTo(const Thing& thing, geometry::Point p) {
  double least = std::numeric_limits<double>::infinity();
  for (const auto& shape : thing.shapes) {
    least = std::min(
        least, thing.area ? geometry::distanceToArea(p, shape) : geometry::distance(p, shape));
  }
  return least;
}

double straightTo(const Thing& thing, const geometry::Segment& s) {
  double least = std::numeric_limits<double>::infinity();
  for (const auto& shape : thing.shapes) {
    least = std::min(
        least, thing.area ? geometry::distanceToArea(s, shape) : geometry::distance(s, shape));
  }
  return least;
}

bool isString(const Site& site, PathKind path) {
  return path == PathKind::string && site.strings != nullptr;
}

/// As prepared by makeSite(), else made now.
perimeter::StringTarget stringTo(const Site& site, const Thing& thing) {
  if (thing.string) return *thing.string;
  return site.strings->targetOf(thing.shapes, thing.area);
}

}  // namespace

geometry::Intervals nearAlong(const Site& site, const perimeter::Edge& edge, const Thing& thing,
                              PathKind path, double r) {
  if (isString(site, path)) return site.strings->within(edge, stringTo(site, thing), r);
  geometry::Intervals found;
  for (const geometry::Polyline& shape : thing.shapes) {
    const auto part = thing.area ? geometry::withinArea(edge.line(), shape, r)
                                 : geometry::within(edge.line(), shape, r);
    found.insert(found.end(), part.begin(), part.end());
  }
  return geometry::unite(std::move(found));
}

std::vector<RingSpan> nearWalls(const Site& site, const Thing& thing, PathKind path, double r) {
  std::vector<EdgePiece> pieces;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : site.perimeter.edges(ring)) {
      for (const geometry::Interval& i : nearAlong(site, edge, thing, path, r)) {
        pieces.push_back({&edge, i});
      }
    }
  }
  return joinPieces(pieces);
}

double distanceInPlan(const Site& site, const Thing& thing, PathKind path, perimeter::Place place) {
  if (isString(site, path)) return site.strings->distance(place, stringTo(site, thing));
  return straightTo(thing, site.perimeter.pointAt(place));
}

double leastInPlan(const Site& site, const Thing& thing, PathKind path, int ring, double from_m,
                   double to_m) {
  if (isString(site, path)) {
    return site.strings->least(ring, from_m, to_m, stringTo(site, thing));
  }
  double closest = std::numeric_limits<double>::infinity();
  for (const perimeter::Edge& e : site.perimeter.edges(ring)) {
    const double a = std::max(from_m, e.start_m);
    const double b = std::min(to_m, e.end_m());
    if (a > b) continue;
    const geometry::Segment piece{e.line().at(a - e.start_m), e.line().at(b - e.start_m)};
    closest = std::min(closest, straightTo(thing, piece));
  }
  return closest;
}

}  // namespace sumpwright::rules
