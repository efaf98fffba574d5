#include "plan/FollowInside.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/Shapes.h"
#include "plan/EditProblem.h"
#include "plan/LinesInside.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/WallThickness.h"

namespace sumpwright::plan {

namespace {

using geometry::Segment;
using geometry::Vec;

constexpr double kOnFace_m = 0.05;    // contract (own figure)
constexpr double kStraightOn = 1e-6;  // sine of an angle nobody measures (own figure)

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

/// An inner face that goes square across.
struct FaceAcross {
  Segment was;       ///< from inner corner to inner corner
  double from_m;     ///< how far it reaches along itself, the ends of the wall outside included:
  double to_m;       ///< beyond a corner it runs on within the wall beside it
  Vec across;        ///< of the face
  Vec first_corner;  ///< of its inner corners
  Vec last_corner;
};

FaceAcross acrossOf(const Job& before, const Job& job, std::size_t r, std::size_t edge) {
  const Ring& ring = job.plan.rings[r];
  const Ring& old = before.plan.rings[r];
  const Segment was = innerFace(before, old, edge);
  const Segment is = innerFace(job, ring, edge);
  const Segment outside = edgeOf(ring, edge);
  const Vec along = directionOf(outside);
  const double a = geometry::dot(outside.a - was.a, along);
  const double b = geometry::dot(outside.b - was.a, along);
  const double thicker =
      thicknessTaken_m(ring, edge, job.house) - thicknessTaken_m(old, edge, before.house);
  return {was,
          std::min(a, 0.0),
          std::max(b, geometry::dot(was.b - was.a, along)),
          thicker * geometry::left(along),
          is.a - was.a,
          is.b - was.b};
}

bool isOn(const FaceAcross& face, Vec along, Point p) {
  const double u = geometry::dot(p - face.was.a, along);
  const double off = geometry::dot(p - face.was.a, geometry::left(along));
  return std::abs(off) <= kOnFace_m && u >= face.from_m && u <= face.to_m;
}

/// The first outline that was in order before and is turned over or folded now.
template <class Things>
const typename Things::value_type* firstSpoilt(const Things& before, const Things& now) {
  for (std::size_t i = 0; i < now.size(); ++i) {
    const auto& was = before[i].outline_m;
    const auto& is = now[i].outline_m;
    if (was == is || geometry::firstSelfContact(was)) continue;
    const bool over = (geometry::signedArea(was) > 0.0) != (geometry::signedArea(is) > 0.0);
    if (over || geometry::firstSelfContact(is)) return &now[i];
  }
  return nullptr;
}

template <class Thing>
base::Problem noSpaceLeft(const Thing& thing) {
  return editProblem("plan.edit.no-space-left", {base::text("thing", labelOf(thing))});
}

}  // namespace

void followWall(Job& job, const Segment& outside_face, double thickness_m, Vec shift) {
  const Vec along = directionOf(outside_face);
  const Vec inward = geometry::left(along);
  const double length = length_m(outside_face);
  moveInside(job, [&](Point p) {
    const Vec from = p - outside_face.a;
    const double u = geometry::dot(from, along);
    const bool on_face = std::abs(geometry::dot(from, inward) - thickness_m) <= kOnFace_m;
    return on_face && u > -kOnFace_m && u < length + kOnFace_m ? p + shift : p;
  });
}

std::optional<base::Problem> followThickness(Job& job, const Job& before) {
  std::vector<FaceAcross> moved;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const Ring& ring = job.plan.rings[r];
    if (!isWhole(ring)) continue;
    for (std::size_t e = 0; e < ring.corners.size(); ++e) {
      const FaceAcross face = acrossOf(before, job, r, e);
      if (face.first_corner != Vec{} || face.last_corner != Vec{}) moved.push_back(face);
    }
  }
  if (moved.empty()) return std::nullopt;
  moveInside(job, [&](Point p) {
    for (const FaceAcross& face : moved) {
      if (isAt(p, face.was.a)) return p + face.first_corner;
      if (isAt(p, face.was.b)) return p + face.last_corner;
    }
    for (const FaceAcross& face : moved) {
      if (isOn(face, directionOf(face.was), p)) return p + face.across;
    }
    return p;
  });
  if (const auto* room = firstSpoilt(before.plan.rooms, job.plan.rooms)) return noSpaceLeft(*room);
  const auto* zone = firstSpoilt(before.plan.floor_zones, job.plan.floor_zones);
  if (zone != nullptr) return noSpaceLeft(*zone);
  return std::nullopt;
}

void followCorner(Job& job, const Ring& before, const Ring& after, std::size_t corner) {
  const std::size_t prior = edgeBefore(before, corner);
  const MovedFace in{innerFace(job, before, prior), innerFace(job, after, prior), false};
  const MovedFace out{innerFace(job, before, corner), innerFace(job, after, corner), true};
  moveInside(job, [&](Point p) {
    if (const auto to = movedOn(in, p)) return *to;
    return movedOn(out, p).value_or(p);
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
  moveInside(job, [&](Point p) { return to(p).value_or(p); });
}

}  // namespace sumpwright::plan
