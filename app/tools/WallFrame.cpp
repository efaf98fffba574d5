#include "tools/WallFrame.h"

#include <algorithm>
#include <cmath>

#include "perimeter/Perimeter.h"

namespace sumpwright::tools {

namespace {

using geometry::Point;
using geometry::Segment;
using geometry::Vec;

constexpr double kOffWall_m =
    0.02;  // own figure: an inner wall does not meet the wall it starts on

/// Distance along a ray to a segment; nothing where it does not meet it.
std::optional<double> rayTo(Point from, Vec along, const Segment& s) {
  const Vec side = s.b - s.a;
  const double sine = geometry::cross(along, side);
  if (std::abs(sine) < 1e-9) return std::nullopt;
  const double t = geometry::cross(s.a - from, side) / sine;
  const double u = geometry::cross(s.a - from, along) / sine;
  if (t < kOffWall_m || u < -1e-9 || u > 1.0 + 1e-9) return std::nullopt;
  return t;
}

/// The inner faces of the outside walls and the middle lines of the inner ones.
std::vector<Segment> facesInside(const plan::Job& job) {
  std::vector<Segment> faces;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    for (std::size_t i = 0; i < job.plan.rings[r].corners.size(); ++i) {
      const auto frame = wallFrame(job, static_cast<int>(r), static_cast<int>(i));
      if (!frame) continue;
      faces.push_back(
          {frame->at(0.0, frame->thickness_m), frame->at(frame->length_m, frame->thickness_m)});
    }
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
  frame.thickness_m = r.walls[i].thickness_m.value_or(
      job.house.wall_thickness_m.value_or(perimeter::kAssumedWallThickness_m));
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
