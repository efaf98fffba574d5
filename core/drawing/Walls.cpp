// Outside walls as solids with their openings cut out; party walls hatched, since they go on next
// door.

#include <algorithm>

#include "drawing/Clip.h"
#include "drawing/Hatch.h"
#include "drawing/PlanContext.h"

namespace sumpwright::drawing {
namespace {

struct Span {
  double from_m;
  double to_m;
};

bool isParty(const PlanContext& c, const PageEdge& e) {
  return c.study.perimeter().wall(*e.edge).kind == plan::WallKind::party;
}

/// Ground-storey openings of a ring, as chainage; they lie within one edge each.
std::vector<Span> gapsOf(const PlanContext& c, int ring) {
  std::vector<Span> gaps;
  for (const plan::Opening& o : c.plan().openings) {
    if (o.at.ring != ring || o.storey != 0 || plan::isOfRoof(o.kind)) continue;
    const double from = c.study.perimeter().placeOf(o.at).chainage_m;
    gaps.push_back({from, from + o.width_m});
  }
  std::sort(gaps.begin(), gaps.end(), [](Span a, Span b) { return a.from_m < b.from_m; });
  return gaps;
}

/// Runs of solid wall of one kind: the ring less its openings, cut where the kind changes.
std::vector<Span> solids(const PlanContext& c, const PageRing& ring, bool party) {
  std::vector<Span> out;
  const auto add = [&](double from, double to) {
    if (to - from < 1e-6) return;
    if (!out.empty() && from - out.back().to_m < 1e-9) {
      out.back().to_m = to;
    } else {
      out.push_back({from, to});
    }
  };
  const std::vector<Span> gaps = gapsOf(c, ring.ring);
  for (const PageEdge& e : ring.edges) {
    if (isParty(c, e) != party) continue;
    double at = e.edge->start_m;
    for (const Span& gap : gaps) {
      if (gap.to_m <= at || gap.from_m >= e.edge->end_m()) continue;
      add(at, gap.from_m);
      at = gap.to_m;
    }
    add(at, e.edge->end_m());
  }
  // Join over chainage 0, so that the first corner is mitred like the others.
  const bool joins =
      out.size() > 1 && out.front().from_m < 1e-9 && ring.length_m - out.back().to_m < 1e-9;
  if (joins) {
    out.back().to_m = ring.length_m + out.front().to_m;
    out.erase(out.begin());
  }
  return out;
}

bool wholeRing(const Span& span, const PageRing& ring) {
  return span.to_m - span.from_m >= ring.length_m - 1e-9;
}

void paintSolid(Sketch& sketch, const PlanContext& c, const PageRing& ring, const Span& span) {
  if (wholeRing(span, ring)) {
    sketch.fill({ring.outside(), ring.inside()}, c.theme.wall);
    sketch.outline(ring.outside(), solid(c.theme.wall_edge, 1.1));
    return;
  }
  const auto body = ring.body(span.from_m, span.to_m);
  sketch.fill(body, c.theme.wall);
  sketch.outline(body, solid(c.theme.wall_edge, 0.6));
}

void paintParty(Sketch& sketch, const PlanContext& c, const PageRing& ring, const Span& span) {
  const auto body = ring.body(span.from_m, span.to_m);
  sketch.fill(body, c.theme.paper);
  for (const auto& line : hatch({clipped(body, grown(c.page, 2.0))}, {45.0, 0.9})) {
    sketch.line(line.a, line.b, solid(c.theme.wall, 1.0));
  }
  sketch.outline(body, solid(c.theme.wall_edge, 1.1));
}

/// Where a party wall ends the neighbour's wall goes on: a short broken piece beyond the band.
void paintStubs(Sketch& sketch, const PlanContext& c, const PageRing& ring) {
  const std::size_t n = ring.edges.size();
  for (std::size_t i = 0; i < n; ++i) {
    const PageEdge& before = ring.edges[i];
    const PageEdge& after = ring.edges[(i + 1) % n];
    if (isParty(c, before) == isParty(c, after)) continue;
    const PageEdge& own = isParty(c, before) ? after : before;
    if (std::abs(geometry::cross(before.along, after.along)) < 0.5) continue;
    const Vec on = isParty(c, before) ? -own.along : own.along;
    const Point corner = before.to;
    const Pen pen = dashed(c.theme.wall_edge, 1.1, {5.0, 2.5});
    for (double depth : {0.0, own.thick_mm}) {
      const Point start = corner - depth * own.out + (kBandFar_mm + 0.8) * on;
      sketch.line(start, start + 4.5 * on, pen);
    }
  }
}

}  // namespace

void paintWalls(Sketch& sketch, PlanContext& c) {
  sketch.tagged("wall");
  for (const PageRing& ring : c.rings) {
    for (const Span& span : solids(c, ring, true)) paintParty(sketch, c, ring, span);
    for (const Span& span : solids(c, ring, false)) paintSolid(sketch, c, ring, span);
    paintStubs(sketch, c, ring);
  }
}

}  // namespace sumpwright::drawing
