#include "build/Enclosure.h"

#include <algorithm>
#include <cmath>

namespace sumpwright::build {

namespace {

using geometry::Interval;
using geometry::Intervals;
using perimeter::Edge;
using rules::RingSpan;
using rules::Site;

/// A look along the wall is taken this far off it, so as not to run along its own face (own
/// figure).
constexpr double kOff_m = 0.05;

/// A corner between two enclosed walls is enclosed as well: spans reach this far over it
/// (rounding).
constexpr double kCorner_m = 1e-9;

/// Another wall, seen from an edge: along it, and straight out from it.
struct Across {
  double along1 = 0.0, out1 = 0.0;
  double along2 = 0.0, out2 = 0.0;
};

std::vector<Across> wallsSeenFrom(const Site& site, const Edge& edge) {
  std::vector<Across> seen;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& other : site.perimeter.edges(ring)) {
      if (other.ring == edge.ring && other.edge == edge.edge) continue;
      const geometry::Vec a = other.from - edge.from;
      const geometry::Vec b = other.to - edge.from;
      seen.push_back({geometry::dot(a, edge.along), -geometry::dot(a, edge.inward),
                      geometry::dot(b, edge.along), -geometry::dot(b, edge.inward)});
    }
  }
  return seen;
}

/// Where `out` as it runs straight from one end to the other lies in (0, most).
Interval facing(const Across& w, double most) {
  constexpr double kUpright_m = 1e-7;  // rounding: seen from its end, it faces nothing
  if (std::abs(w.along1 - w.along2) < kUpright_m) return {};
  const double slope = (w.out2 - w.out1) / (w.along2 - w.along1);
  Interval where{std::min(w.along1, w.along2) - kCorner_m,
                 std::max(w.along1, w.along2) + kCorner_m};
  for (const double level : {0.0, most}) {
    const bool above = level == 0.0;  // keep what is over 0, and what is under the most
    if (slope == 0.0) {
      if (above ? w.out1 <= level : w.out1 >= level) return {};
      continue;
    }
    const double at = w.along1 + (level - w.out1) / slope;
    if ((slope > 0.0) == above) {
      where.from = std::max(where.from, at);
    } else {
      where.to = std::min(where.to, at);
    }
  }
  return where;
}

Intervals facingWithin(const std::vector<Across>& walls, double most) {
  Intervals found;
  for (const Across& w : walls) {
    const Interval i = facing(w, most);
    if (!i.empty()) found.push_back(i);
  }
  return geometry::unite(std::move(found));
}

/// Where a look along the wall, to the left (-1) or right (+1), meets another within kEnclosing_m.
Intervals besideWithin(const std::vector<Across>& walls, int side) {
  Intervals found;
  for (const Across& w : walls) {
    const bool crosses = (w.out1 > kOff_m) != (w.out2 > kOff_m);
    if (!crosses) continue;
    const double at = w.along1 + (kOff_m - w.out1) / (w.out2 - w.out1) * (w.along2 - w.along1);
    found.push_back(side < 0 ? Interval{at - kCorner_m, at + kEnclosing_m}
                             : Interval{at - kEnclosing_m, at + kCorner_m});
  }
  return geometry::unite(std::move(found));
}

void addBoth(const Intervals& a, const Intervals& b, Intervals& out) {
  for (const Interval& i : a) {
    for (const Interval& j : b) {
      const Interval both = geometry::clip(i, j);
      if (!both.empty()) out.push_back(both);
    }
  }
}

Intervals threeSides(const std::vector<Across>& walls) {
  const Intervals left = besideWithin(walls, -1);
  const Intervals right = besideWithin(walls, +1);
  const Intervals front = facingWithin(walls, kEnclosing_m);
  Intervals found;
  addBoth(left, right, found);
  addBoth(left, front, found);
  addBoth(right, front, found);
  return geometry::unite(std::move(found));
}

/// Without the slivers that reaching over a corner leaves on the wall beside it.
Intervals withoutSlivers(const Edge& edge, Intervals found) {
  constexpr double kSliver_m = 1e-6;
  std::erase_if(found, [&](const Interval& i) {
    return geometry::clip(i, {0.0, edge.length_m}).length() <= kSliver_m;
  });
  return found;
}

Intervals wholeWall(const Edge& edge) { return {{-1.0, edge.length_m + 1.0}}; }

Intervals enclosedOn(const Site& site, const Edge& edge) {
  if (edge.ring > 0) return wholeWall(edge);
  return withoutSlivers(edge, threeSides(wallsSeenFrom(site, edge)));
}

Intervals passageOn(const Site& site, const Edge& edge, double narrower_than_m) {
  const auto& free = site.perimeter.wall(edge).free_depth_m;
  if (free && *free < narrower_than_m) return wholeWall(edge);
  return withoutSlivers(edge, facingWithin(wallsSeenFrom(site, edge), narrower_than_m));
}

void addPieces(const Edge& edge, const Intervals& found, std::vector<rules::EdgePiece>& pieces) {
  for (const Interval& i : found) pieces.push_back({&edge, i});
}

}  // namespace

std::vector<RingSpan> enclosedSpans(const Site& site) {
  std::vector<rules::EdgePiece> pieces;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      addPieces(edge, enclosedOn(site, edge), pieces);
    }
  }
  return rules::joinPieces(pieces);
}

std::vector<RingSpan> passageSpans(const Site& site, double narrower_than_m) {
  std::vector<rules::EdgePiece> pieces;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      addPieces(edge, passageOn(site, edge, narrower_than_m), pieces);
    }
  }
  return rules::joinPieces(pieces);
}

Intervals betweenWalls(const Site& site, const Edge& edge, double narrower_than_m) {
  Intervals found = enclosedOn(site, edge);
  for (const Interval& i : passageOn(site, edge, narrower_than_m)) found.push_back(i);
  return geometry::unite(std::move(found));
}

bool isBetweenWalls(const Site& site, perimeter::Place place, double narrower_than_m) {
  const perimeter::Place at = site.perimeter.wrapped(place);
  const Edge& edge = site.perimeter.edgeAt(at);
  const double along = at.chainage_m - edge.start_m;
  const Intervals found = betweenWalls(site, edge, narrower_than_m);
  return std::any_of(found.begin(), found.end(),
                     [&](const Interval& i) { return along > i.from && along < i.to; });
}

}  // namespace sumpwright::build
