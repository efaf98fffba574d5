#include "drawing/OutlineWalls.h"

#include <cmath>

#include "geometry/Shapes.h"
#include "plan/WallThickness.h"

namespace sumpwright::drawing {

namespace {

// Sine of the turn below which faces are not brought to meet (own figure).
constexpr double kLeastTurn = 0.05;
// Times the thickest wall: a sharp corner is not drawn to a spike (own figure).
constexpr double kLongestMitre = 4.0;

std::size_t wallCount(const plan::Ring& ring) {
  if (ring.corners.size() < 2) return 0;
  return ring.closed ? ring.corners.size() : ring.corners.size() - 1;
}

/// Inner faces of two walls that follow each other end where they meet.
void mitre(OutlineWall& before, OutlineWall& after, double longest_mm) {
  const double turn = geometry::cross(before.along, after.along);
  if (std::abs(turn) < kLeastTurn) return;
  const double t = geometry::cross(after.inner_from - before.inner_from, after.along) / turn;
  const Point meeting = before.inner_from + t * before.along;
  if (geometry::distance(meeting, before.to) > longest_mm) return;
  before.inner_to = meeting;
  after.inner_from = meeting;
}

}  // namespace

bool houseOnLeft(const plan::Ring& ring, bool outer) {
  const bool counter_clockwise =
      ring.corners.size() < 3 || geometry::signedArea(ring.corners) >= 0.0;
  return counter_clockwise == outer || ring.corners.size() < 3;
}

OutlineWall outlineWall(const geometry::Segment& face, double thickness_m, bool house_left,
                        const SheetContext& c) {
  OutlineWall wall;
  wall.from = c.at(face.a);
  wall.to = c.at(face.b);
  wall.along = unit(wall.to - wall.from);
  // The page's y runs down, so its left is the plan's right.
  wall.out = house_left ? geometry::left(wall.along) : -geometry::left(wall.along);
  const Vec in = -c.mm(thickness_m) * wall.out;
  wall.inner_from = wall.from + in;
  wall.inner_to = wall.to + in;
  wall.length_m = geometry::distance(face.a, face.b);
  return wall;
}

std::vector<OutlineWall> outlineWalls(const plan::Job& job, const plan::Ring& ring, bool outer,
                                      const SheetContext& c) {
  std::vector<OutlineWall> walls;
  const bool house_left = houseOnLeft(ring, outer);
  const std::size_t count = wallCount(ring);
  double thickest_m = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    const double thickness = plan::thicknessTaken_m(ring, i, job.house);
    thickest_m = std::max(thickest_m, thickness);
    walls.push_back(outlineWall({ring.corners[i], ring.corners[(i + 1) % ring.corners.size()]},
                                thickness, house_left, c));
    walls.back().party = i < ring.walls.size() && ring.walls[i].kind == plan::WallKind::party;
  }
  const std::size_t joints = ring.closed ? count : count == 0 ? 0 : count - 1;
  for (std::size_t i = 0; i < joints; ++i) {
    mitre(walls[i], walls[(i + 1) % count], kLongestMitre * c.mm(thickest_m));
  }
  return walls;
}

}  // namespace sumpwright::drawing
