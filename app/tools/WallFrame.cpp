#include "tools/WallFrame.h"

#include <algorithm>
#include <cmath>

#include "plan/WallThickness.h"

namespace sumpwright::tools {

namespace {

using geometry::Point;
using geometry::Segment;
using geometry::Vec;

// An inner wall does not meet the wall it starts on (own figure).
constexpr double kOffWall_m = 0.02;
constexpr double kSameLine = 1e-9;  // sine of an angle that is rounding (own figure)
// Times the thicker wall: at a sharper corner the faces stay as long as the wall (own figure).
constexpr double kFurthestMeeting = 4.0;

/// Distance along a ray to a segment; nothing where it does not meet it.
std::optional<double> rayTo(Point from, Vec along, const Segment& s) {
  const Vec side = s.b - s.a;
  const double sine = geometry::cross(along, side);
  if (std::abs(sine) < kSameLine) return std::nullopt;
  const double t = geometry::cross(s.a - from, side) / sine;
  const double u = geometry::cross(s.a - from, along) / sine;
  if (t < kOffWall_m || u < -kSameLine || u > 1.0 + kSameLine) return std::nullopt;
  return t;
}

Segment innerFace(const WallFrame& wall) {
  return {wall.at(0.0, wall.thickness_m), wall.at(wall.length_m, wall.thickness_m)};
}

/// Where the inner faces of two walls that follow each other meet: past their ends at a corner that
/// juts into the house. Else the end of the first.
Point meetingOf(const WallFrame& before, const WallFrame& after) {
  const Segment one = innerFace(before);
  const double turn = geometry::cross(before.along, after.along);
  if (std::abs(turn) < kSameLine) return one.b;
  const double t = geometry::cross(innerFace(after).a - one.b, after.along) / turn;
  const double most = kFurthestMeeting * std::max(before.thickness_m, after.thickness_m);
  return std::abs(t) > most ? one.b : one.b + t * before.along;
}

/// The inner faces of a ring, each from where it meets the one before to where it meets the next.
void addFacesOf(const plan::Job& job, int ring, std::vector<Segment>& faces) {
  const int count = static_cast<int>(job.plan.rings[static_cast<std::size_t>(ring)].corners.size());
  for (int i = 0; i < count; ++i) {
    const auto wall = wallFrame(job, ring, i);
    if (!wall) continue;
    Segment face = innerFace(*wall);
    const auto before = wallFrame(job, ring, (i + count - 1) % count);
    const auto after = wallFrame(job, ring, (i + 1) % count);
    if (before) face.a = meetingOf(*before, *wall);
    if (after) face.b = meetingOf(*wall, *after);
    faces.push_back(face);
  }
}

/// The inner faces of the outside walls and the middle lines of the inner ones.
std::vector<Segment> facesInside(const plan::Job& job) {
  std::vector<Segment> faces;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    addFacesOf(job, static_cast<int>(r), faces);
  }
  for (const plan::InnerWall& wall : job.plan.inner_walls) {
    for (std::size_t i = 0; i + 1 < wall.line_m.size(); ++i) {
      faces.push_back({wall.line_m[i], wall.line_m[i + 1]});
    }
  }
  return faces;
}

}  // namespace

std::optional<WallFrame> wallFrame(const plan::Job& job, int ring, int edge) {
  if (ring < 0 || static_cast<std::size_t>(ring) >= job.plan.rings.size()) return std::nullopt;
  const plan::Ring& r = job.plan.rings[static_cast<std::size_t>(ring)];
  const auto i = static_cast<std::size_t>(edge);
  const std::size_t walls = r.closed || r.corners.empty() ? r.corners.size() : r.corners.size() - 1;
  if (edge < 0 || i >= walls || i >= r.walls.size()) return std::nullopt;
  WallFrame frame;
  frame.ring = ring;
  frame.edge = edge;
  frame.face = {r.corners[i], r.corners[(i + 1) % r.corners.size()]};
  frame.length_m = geometry::distance(frame.face.a, frame.face.b);
  if (frame.length_m <= 0.0) return std::nullopt;
  frame.along = (1.0 / frame.length_m) * (frame.face.b - frame.face.a);
  frame.inward = geometry::left(frame.along);
  frame.thickness_m = plan::thicknessTaken_m(r, i, job.house);
  return frame;
}

std::optional<double> reachInside(const plan::Job& job, Point from, Vec along) {
  std::optional<double> reach;
  for (const Segment& face : facesInside(job)) {
    const auto t = rayTo(from, along, face);
    if (t && (!reach || *t < *reach)) reach = t;
  }
  return reach;
}

}  // namespace sumpwright::tools
