#include "tools/Faces.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "plan/WallThickness.h"

namespace sumpwright::tools {

namespace {

constexpr double kHook_m = 0.5;      // own figure; see toNearestWalls
constexpr double kInLine = 0.26;     // sine of 15 degrees: nearer to parallel adds nothing (own)
constexpr double kNothing_m = 1e-6;  // rounding

Vec wayFrom(Point a, Point b) {
  const double length = geometry::distance(a, b);
  return length > 0.0 ? (1.0 / length) * (b - a) : Vec{1.0, 0.0};
}

bool isRound(const plan::Ring& ring) { return ring.closed && ring.corners.size() >= 3; }

/// Where the inner faces of two walls that meet at `corner` meet; square off the corner where they
/// run on in one line.
Point innerCorner(Point corner, Vec before, double before_m, Vec after, double after_m) {
  const double sine = geometry::cross(before, after);
  if (std::abs(sine) < 1e-6) return corner + std::max(before_m, after_m) * geometry::left(after);
  const Point a = corner + before_m * geometry::left(before);
  const Point b = corner + after_m * geometry::left(after);
  return a + (geometry::cross(b - a, after) / sine) * before;
}

void addFaces(const plan::Job& job, int r, bool inside, std::vector<Face>& faces) {
  const plan::Ring& ring = job.plan.rings[static_cast<std::size_t>(r)];
  const std::size_t n = ring.corners.size();
  const auto way = [&](std::size_t i) {
    return wayFrom(ring.corners[i % n], ring.corners[(i + 1) % n]);
  };
  const auto cornerAt = [&](std::size_t i) {
    if (!inside) return ring.corners[i];
    const std::size_t before = (i + n - 1) % n;
    return innerCorner(ring.corners[i], way(before),
                       plan::thicknessTaken_m(ring, before, job.house), way(i),
                       plan::thicknessTaken_m(ring, i, job.house));
  };
  for (std::size_t i = 0; i < n; ++i) {
    const Segment line{cornerAt(i), cornerAt((i + 1) % n)};
    if (geometry::dot(line.b - line.a, way(i)) <= kNothing_m) continue;
    faces.push_back({r, static_cast<int>(i), line});
  }
}

/// Foot of the square from a point on the line of a face; nothing where it lies far past its ends.
std::optional<Point> footOn(const Segment& face, Point at) {
  const Vec along = wayFrom(face.a, face.b);
  const double t = geometry::dot(at - face.a, along);
  if (t < -kHook_m || t > geometry::distance(face.a, face.b) + kHook_m) return std::nullopt;
  return face.a + t * along;
}

/// Both faces of the inner walls.
void addInnerWalls(const plan::Plan& plan, std::vector<Segment>& lines) {
  for (const plan::InnerWall& wall : plan.inner_walls) {
    for (std::size_t i = 0; i + 1 < wall.line_m.size(); ++i) {
      const Vec across =
          (wall.thickness_m / 2.0) * geometry::left(wayFrom(wall.line_m[i], wall.line_m[i + 1]));
      lines.push_back({wall.line_m[i] + across, wall.line_m[i + 1] + across});
      lines.push_back({wall.line_m[i] - across, wall.line_m[i + 1] - across});
    }
  }
}

void addLine(SnapField& field, const std::vector<Point>& line, bool closed) {
  field.places.insert(field.places.end(), line.begin(), line.end());
  for (std::size_t i = 0; i + 1 < line.size(); ++i) field.edges.push_back({line[i], line[i + 1]});
  if (closed && line.size() > 2) field.edges.push_back({line.back(), line.front()});
}

void addThings(SnapField& field, const plan::Plan& plan) {
  for (const auto& t : plan.inner_walls) addLine(field, t.line_m, false);
  for (const auto& t : plan.rising_walls) addLine(field, t.line_m, false);
  for (const auto& t : plan.heating_pipes) addLine(field, t.line_m, false);
  for (const auto& t : plan.services) addLine(field, t.run_m, false);
  for (const auto& t : plan.rooms) addLine(field, t.outline_m, true);
  for (const auto& t : plan.floor_zones) addLine(field, t.outline_m, true);
  for (const auto& t : plan.outside) addLine(field, t.points_m, false);
  for (const auto& t : plan.supplies) field.places.push_back(t.at_m);
  for (const auto& t : plan.fittings) field.places.push_back(t.at_m);
  for (const auto& t : plan.test_holes) field.places.push_back(t.at_m);
}

/// Where services come through the walls.
void addEntries(SnapField& field, const plan::Plan& plan) {
  for (const plan::Service& s : plan.services) {
    if (s.entry) {
      if (const auto at = placeOnFace(plan, *s.entry)) field.places.push_back(*at);
    }
  }
}

}  // namespace

bool isInside(const plan::Plan& plan, Point at) {
  if (plan.rings.empty() || !geometry::contains(plan.rings.front().corners, at)) return false;
  return std::none_of(plan.rings.begin() + 1, plan.rings.end(), [&](const plan::Ring& court) {
    return geometry::contains(court.corners, at);
  });
}

std::optional<Point> placeOnFace(const plan::Plan& plan, const plan::OnWall& at) {
  if (at.ring < 0 || static_cast<std::size_t>(at.ring) >= plan.rings.size()) return std::nullopt;
  const auto& corners = plan.rings[static_cast<std::size_t>(at.ring)].corners;
  const auto i = static_cast<std::size_t>(at.edge);
  if (at.edge < 0 || i >= corners.size()) return std::nullopt;
  return corners[i] + at.offset_m * wayFrom(corners[i], corners[(i + 1) % corners.size()]);
}

std::vector<Face> wallFaces(const plan::Job& job, bool inside) {
  std::vector<Face> faces;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    if (isRound(job.plan.rings[r])) addFaces(job, static_cast<int>(r), inside, faces);
  }
  return faces;
}

double faceThickness_m(const plan::Job& job, const Face& face) {
  const plan::Ring& ring = job.plan.rings[static_cast<std::size_t>(face.ring)];
  return plan::thicknessTaken_m(ring, static_cast<std::size_t>(face.edge), job.house);
}

std::optional<FromCorner> fromNearestCorner(const plan::Job& job, Point at) {
  std::optional<FromCorner> best;
  double nearest_corner = std::numeric_limits<double>::infinity();
  double nearest_wall = 0.0;
  for (const Face& face : wallFaces(job, isInside(job.plan, at))) {
    for (const bool start : {true, false}) {
      const Point corner = start ? face.line.a : face.line.b;
      const double to_corner = geometry::distance(corner, at);
      const double to_wall = geometry::distance(at, face.line);
      if (to_corner > nearest_corner + kNothing_m) continue;
      if (to_corner > nearest_corner - kNothing_m && best && to_wall >= nearest_wall) continue;
      nearest_corner = to_corner;
      nearest_wall = to_wall;
      best = FromCorner{face, start, corner, {}, {}, 0.0, 0.0};
    }
  }
  if (!best) return std::nullopt;
  best->along = wayFrom(best->face.line.a, best->face.line.b);
  if (geometry::dot(at - best->corner, best->along) < 0.0) best->along = -best->along;
  best->off = geometry::left(best->along);
  if (geometry::dot(at - best->corner, best->off) < 0.0) best->off = -best->off;
  best->along_m = geometry::dot(at - best->corner, best->along);
  best->off_m = geometry::dot(at - best->corner, best->off);
  return best;
}

Point placeAt(const FromCorner& from, double along_m, double off_m) {
  return from.corner + along_m * from.along + off_m * from.off;
}

std::vector<Segment> toNearestWalls(const plan::Job& job, Point at) {
  const bool inside = isInside(job.plan, at);
  std::vector<Segment> walls;
  for (const Face& face : wallFaces(job, inside)) walls.push_back(face.line);
  if (inside) addInnerWalls(job.plan, walls);
  std::vector<Segment> lines;
  for (const Segment& wall : walls) {
    const auto foot = footOn(wall, at);
    if (foot && geometry::distance(at, *foot) > kNothing_m) lines.push_back({at, *foot});
  }
  std::stable_sort(lines.begin(), lines.end(), [](const Segment& a, const Segment& b) {
    return geometry::distance(a.a, a.b) < geometry::distance(b.a, b.b);
  });
  if (lines.empty()) return {};
  const Vec first = wayFrom(lines.front().a, lines.front().b);
  const auto second = std::find_if(lines.begin() + 1, lines.end(), [&](const Segment& s) {
    return std::abs(geometry::cross(first, wayFrom(s.a, s.b))) > kInLine;
  });
  if (second == lines.end()) return {lines.front()};
  return {lines.front(), *second};
}

SnapField fieldOf(const plan::Job& job, double reach_m, double grid_m) {
  SnapField field;
  field.reach_m = reach_m;
  field.grid_m = grid_m;
  for (const bool inside : {false, true}) {
    for (const Face& face : wallFaces(job, inside)) {
      field.corners.push_back(face.line.a);
      field.edges.push_back(face.line);
    }
  }
  addThings(field, job.plan);
  addEntries(field, job.plan);
  if (!field.edges.empty()) field.axis = field.edges.front().b - field.edges.front().a;
  return field;
}

}  // namespace sumpwright::tools
