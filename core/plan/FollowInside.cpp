#include "plan/FollowInside.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/WallThickness.h"

namespace sumpwright::plan {

namespace {

using geometry::Segment;
using geometry::Vec;

constexpr double kOnFace_m = 0.05;    // contract (own figure)
constexpr double kStraightOn = 1e-6;  // sine of an angle nobody measures (own figure)

void forEachLineInside(Job& job, const std::function<void(std::vector<Point>&)>& visit) {
  for (Room& r : job.plan.rooms) visit(r.outline_m);
  for (FloorZone& z : job.plan.floor_zones) visit(z.outline_m);
  for (InnerWall& w : job.plan.inner_walls) visit(w.line_m);
  for (RisingWall& w : job.plan.rising_walls) visit(w.line_m);
}

std::size_t edgeBefore(const Ring& ring, std::size_t i) {
  return (i + ring.corners.size() - 1) % ring.corners.size();
}

/// The edge's inner face as a line, as long as its outer one.
Segment faceLine(const Job& job, const Ring& ring, std::size_t edge) {
  const Segment outside = edgeOf(ring, edge);
  const Vec in = thicknessTaken_m(ring, edge, job.house) * geometry::left(directionOf(outside));
  return {outside.a + in, outside.b + in};
}

/// Where the inner faces of the two edges at a corner meet.
Point innerCorner(const Job& job, const Ring& ring, std::size_t corner) {
  const Segment in = faceLine(job, ring, edgeBefore(ring, corner));
  const Segment out = faceLine(job, ring, corner);
  const Vec u = directionOf(in);
  const Vec v = directionOf(out);
  const double turn = geometry::cross(u, v);
  if (std::abs(turn) < kStraightOn) return out.a;
  return in.b + geometry::cross(out.a - in.b, v) / turn * u;
}

/// An edge's inner face from inner corner to inner corner.
Segment innerFace(const Job& job, const Ring& ring, std::size_t edge) {
  return {innerCorner(job, ring, edge), innerCorner(job, ring, (edge + 1) % ring.corners.size())};
}

bool isAt(Point p, Point place) { return geometry::distance(p, place) <= kOnFace_m; }

/// How far along the face a place on it lies; nothing where it lies elsewhere.
std::optional<double> alongFace(const Segment& face, Point p) {
  const Vec along = directionOf(face);
  const double u = geometry::dot(p - face.a, along);
  const double off = geometry::dot(p - face.a, geometry::left(along));
  if (std::abs(off) > kOnFace_m || u < 0.0 || u > length_m(face)) return std::nullopt;
  return u;
}

Point onFace(const Segment& face, double along_m) {
  return face.a + std::clamp(along_m, 0.0, length_m(face)) * directionOf(face);
}

/// Closed, with a length to each edge and a wall to it.
bool isWhole(const Ring& ring) {
  constexpr std::size_t kTriangle = 3;
  if (!ring.closed || ring.corners.size() < kTriangle) return false;
  for (std::size_t e = 0; e < ring.corners.size(); ++e) {
    if (!(length_m(edgeOf(ring, e)) > 0.0)) return false;
  }
  return true;
}

struct MovedFace {
  Segment was;
  Segment is;
  bool from_end = false;  ///< distances are kept from its end, not its beginning
};

std::optional<Point> movedOn(const MovedFace& face, Point p) {
  if (isAt(p, face.was.a)) return face.is.a;
  if (isAt(p, face.was.b)) return face.is.b;
  const auto u = alongFace(face.was, p);
  if (!u) return std::nullopt;
  return onFace(face.is, face.from_end ? *u + length_m(face.is) - length_m(face.was) : *u);
}

}  // namespace

void followWall(Job& job, const Segment& outside_face, double thickness_m, Vec shift) {
  const Vec along = directionOf(outside_face);
  const Vec inward = geometry::left(along);
  const double length = length_m(outside_face);
  forEachLineInside(job, [&](std::vector<Point>& points) {
    for (Point& p : points) {
      const Vec from = p - outside_face.a;
      const double u = geometry::dot(from, along);
      const bool on_face = std::abs(geometry::dot(from, inward) - thickness_m) <= kOnFace_m;
      if (on_face && u > -kOnFace_m && u < length + kOnFace_m) p = p + shift;
    }
  });
}

void followThickness(Job& job, const Job& before) {
  std::vector<MovedFace> moved;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const Ring& ring = job.plan.rings[r];
    if (!isWhole(ring)) continue;
    for (std::size_t e = 0; e < ring.corners.size(); ++e) {
      const MovedFace face{innerFace(before, before.plan.rings[r], e), innerFace(job, ring, e)};
      if (face.was.a != face.is.a || face.was.b != face.is.b) moved.push_back(face);
    }
  }
  if (moved.empty()) return;
  const auto to = [&](Point p) {
    for (const MovedFace& face : moved) {
      if (isAt(p, face.was.a)) return face.is.a;
      if (isAt(p, face.was.b)) return face.is.b;
    }
    for (const MovedFace& face : moved) {
      if (alongFace(face.was, p)) {
        return onFace(face.is, geometry::dot(p - face.is.a, directionOf(face.is)));
      }
    }
    return p;
  };
  forEachLineInside(job, [&](std::vector<Point>& points) {
    for (Point& p : points) p = to(p);
  });
}

void followCorner(Job& job, const Ring& before, const Ring& after, std::size_t corner) {
  const std::size_t prior = edgeBefore(before, corner);
  const MovedFace in{innerFace(job, before, prior), innerFace(job, after, prior), false};
  const MovedFace out{innerFace(job, before, corner), innerFace(job, after, corner), true};
  forEachLineInside(job, [&](std::vector<Point>& points) {
    for (Point& p : points) {
      if (const auto to = movedOn(in, p)) {
        p = *to;
      } else if (const auto also = movedOn(out, p)) {
        p = *also;
      }
    }
  });
}

void followRemoved(Job& job, const Ring& before, const Ring& after, std::size_t gone,
                   std::size_t across) {
  const Segment in = innerFace(job, before, edgeBefore(before, gone));
  const Segment out = innerFace(job, before, gone);
  const Segment face = innerFace(job, after, across);
  const Vec along = directionOf(face);
  const auto to = [&](Point p) -> std::optional<Point> {
    if (isAt(p, in.a)) return face.a;
    if (isAt(p, out.b)) return face.b;
    if (!isAt(p, in.b) && !alongFace(in, p) && !alongFace(out, p)) return std::nullopt;
    return onFace(face, geometry::dot(p - face.a, along));
  };
  constexpr std::size_t kTriangle = 3;
  const auto drop = [&](std::vector<Point>& outline) {
    if (outline.size() > kTriangle) {
      std::erase_if(outline, [&](Point p) { return isAt(p, in.b); });
    }
  };
  for (Room& r : job.plan.rooms) drop(r.outline_m);
  for (FloorZone& z : job.plan.floor_zones) drop(z.outline_m);
  forEachLineInside(job, [&](std::vector<Point>& points) {
    for (Point& p : points) p = to(p).value_or(p);
  });
}

}  // namespace sumpwright::plan
