#include "tools/AlongMark.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/Distance.h"

namespace sumpwright::tools {

namespace {

Vec wayOf(const Segment& s) {
  const double length = geometry::distance(s.a, s.b);
  return length > 0.0 ? (1.0 / length) * (s.b - s.a) : Vec{1.0, 0.0};
}

double toGrid(double metres, double grid_m) {
  return grid_m > 0.0 ? std::round(metres / grid_m) * grid_m : metres;
}

/// Square across from a corner of the plan, if one is near; else on the grid.
double offsetNear(const plan::Plan& plan, const Segment& wall, double offset_m, double reach_m,
                  double grid_m) {
  const double length = geometry::distance(wall.a, wall.b);
  double best = toGrid(offset_m, grid_m);
  double nearest = reach_m / 2.0;  // own figure: the grid is wanted more often
  for (const plan::Ring& ring : plan.rings) {
    for (const Point corner : ring.corners) {
      const double across = geometry::dot(corner - wall.a, wayOf(wall));
      if (across <= 0.0 || across >= length || std::abs(across - offset_m) >= nearest) continue;
      nearest = std::abs(across - offset_m);
      best = across;
    }
  }
  return std::clamp(best, 0.0, length);
}

double lengthOf(const std::vector<Point>& line) {
  double length = 0.0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    length += geometry::distance(line[i], line[i + 1]);
  }
  return length;
}

/// Distance along a line of the place on it that is nearest.
double alongNearest(const std::vector<Point>& line, Point p) {
  double before = 0.0;
  double best = 0.0;
  double nearest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Segment part{line[i], line[i + 1]};
    const Point foot = geometry::nearest(p, part);
    if (geometry::distance(p, foot) < nearest) {
      nearest = geometry::distance(p, foot);
      best = before + geometry::distance(part.a, foot);
    }
    before += geometry::distance(part.a, part.b);
  }
  return best;
}

Point pointAlong(const std::vector<Point>& line, double along_m) {
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double length = geometry::distance(line[i], line[i + 1]);
    if (along_m <= length || i + 2 == line.size()) {
      return line[i] + along_m * wayOf({line[i], line[i + 1]});
    }
    along_m -= length;
  }
  return line.empty() ? Point{} : line.front();
}

RisingMark markOn(const plan::RisingWall& wall, double along_m) {
  const double along = std::clamp(along_m, 0.0, lengthOf(wall.line_m));
  return {wall.id, along, pointAlong(wall.line_m, along)};
}

}  // namespace

std::optional<WallMark> wallMarkAt(const plan::Job& job, Point pointer, double reach_m,
                                   double grid_m) {
  std::optional<WallMark> best;
  double nearest = std::numeric_limits<double>::infinity();
  for (const Face& face : wallFaces(job, false)) {
    const Vec along = wayOf(face.line);
    const double u = geometry::dot(pointer - face.line.a, along);
    const double in = geometry::cross(along, pointer - face.line.a);
    const double thick = faceThickness_m(job, face);
    const double off = std::max({0.0, -in, in - thick});
    if (u < 0.0 || u > geometry::distance(face.line.a, face.line.b)) continue;
    if (off > reach_m || off >= nearest) continue;
    nearest = off;
    best = withOffset({face.ring, face.edge, 0.0, face.line, face.line.a},
                      offsetNear(job.plan, face.line, u, reach_m, grid_m));
  }
  return best;
}

std::optional<WallMark> withOffset(const WallMark& mark, double offset_m) {
  if (!(offset_m >= 0.0) || offset_m > geometry::distance(mark.wall.a, mark.wall.b)) {
    return std::nullopt;
  }
  WallMark moved = mark;
  moved.offset_m = offset_m;
  moved.at = mark.wall.a + offset_m * wayOf(mark.wall);
  return moved;
}

std::optional<RisingMark> risingMarkAt(const plan::Job& job, Point pointer, double reach_m,
                                       double grid_m) {
  const plan::RisingWall* best = nullptr;
  double nearest = std::numeric_limits<double>::infinity();
  for (const plan::RisingWall& wall : job.plan.rising_walls) {
    if (wall.line_m.size() < 2) continue;
    const double away = geometry::distance(pointer, wall.line_m) - wall.thickness_m / 2.0;
    if (away > reach_m || away >= nearest) continue;
    nearest = away;
    best = &wall;
  }
  if (best == nullptr) return std::nullopt;
  return markOn(*best, toGrid(alongNearest(best->line_m, pointer), grid_m));
}

RisingMark withAlong(const plan::Job& job, const RisingMark& mark, double along_m) {
  for (const plan::RisingWall& wall : job.plan.rising_walls) {
    if (wall.id == mark.wall) return markOn(wall, along_m);
  }
  return mark;
}

}  // namespace sumpwright::tools
