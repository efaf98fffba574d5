#include "suction/Frame.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace sumpwright::suction {

namespace {

using geometry::Segment;
using geometry::Vec;

constexpr double kSameDirection_rad =
    0.002;                      // runs along the grid, within 2 mm a metre (own figure)
constexpr double kSnap = 0.05;  // cells: lies on a line of the grid (own figure)

std::vector<Segment> linesOf(const SuctionModel& model) {
  std::vector<Segment> lines;
  const auto add = [&lines](const Polygon& ring, bool closed) {
    for (std::size_t i = 0; i + (closed ? 0 : 1) < ring.size(); ++i) {
      const Segment line{ring[i], ring[(i + 1) % ring.size()]};
      if (geometry::distance(line.a, line.b) > 0.0) lines.push_back(line);
    }
  };
  for (const Region& region : model.regions) {
    add(region.outline, true);
    for (const Polygon& hole : region.holes) add(hole, true);
  }
  for (const Barrier& barrier : model.barriers) add(barrier.line, false);
  return lines;
}

/// Turn from `from` to `to` as a quarter turn sees it: (-pi/4, pi/4].
double quarterTurn(double from, double to) {
  const double quarter = std::numbers::pi / 2.0;
  return (to - from) - quarter * std::round((to - from) / quarter);
}

double directionOfLine(const Segment& line) {
  return std::atan2(line.b.y - line.a.y, line.b.x - line.a.x);
}

/// The direction along or across which most length runs, in (-pi/4, pi/4].
double mainDirection(const std::vector<Segment>& lines) {
  double best = 0.0;
  double most = -1.0;
  for (const Segment& candidate : lines) {
    const double direction = directionOfLine(candidate);
    double length = 0.0;
    for (const Segment& line : lines) {
      if (std::abs(quarterTurn(direction, directionOfLine(line))) < kSameDirection_rad) {
        length += geometry::distance(line.a, line.b);
      }
    }
    if (length > most + 1e-9) {
      most = length;
      best = quarterTurn(0.0, direction);
    }
  }
  return best;
}

/// Positions across an axis, in cells, of the lines that run along it, with their lengths.
using Tracks = std::vector<std::pair<double, double>>;

/// The shift in [0, 1) that puts the most length on lines of the grid.
double bestShift(const Tracks& tracks) {
  double best = tracks.empty() ? 0.0 : tracks.front().first;
  double most = -1.0;
  for (const auto& candidate : tracks) {
    double length = 0.0;
    for (const auto& track : tracks) {
      const double off = track.first - candidate.first;
      const double away = std::abs(off - std::round(off));
      length += track.second * std::max(0.0, 1.0 - away / kSnap);
    }
    if (length > most + 1e-9) {
      most = length;
      best = candidate.first;
    }
  }
  return best - std::floor(best);
}

Vec axisOf(double angle) {
  // A grid that runs with the plan is exactly so.
  return angle == 0.0 ? Vec{1.0, 0.0} : Vec{std::cos(angle), std::sin(angle)};
}

struct Box {
  Point low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  Point high{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
  void add(Point p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
};

}  // namespace

Point Frame::toGrid(Point plan) const {
  const Vec v = plan - origin;
  return {geometry::dot(v, axis) / h_m, geometry::cross(axis, v) / h_m};
}

Point Frame::toPlan(Point grid) const {
  return origin + (grid.x * h_m) * axis + (grid.y * h_m) * geometry::left(axis);
}

Frame frameOf(const SuctionModel& model, double h_m, bool align) {
  Frame frame;
  frame.h_m = h_m;
  const std::vector<Segment> lines = linesOf(model);
  if (align) frame.axis = axisOf(mainDirection(lines));
  Box box;
  for (const Region& region : model.regions) {
    for (const Point p : region.outline) box.add(frame.toGrid(p));
  }
  Point start = box.low;
  if (align) {
    Tracks upright;
    Tracks level;
    const double direction = std::atan2(frame.axis.y, frame.axis.x);
    for (const Segment& line : lines) {
      if (std::abs(quarterTurn(direction, directionOfLine(line))) > kSameDirection_rad) continue;
      const Point a = frame.toGrid(line.a);
      const Point b = frame.toGrid(line.b);
      const double length = std::abs(a.x - b.x) + std::abs(a.y - b.y);
      if (std::abs(a.x - b.x) < std::abs(a.y - b.y)) {
        upright.emplace_back(0.5 * (a.x + b.x), length);
      } else {
        level.emplace_back(0.5 * (a.y + b.y), length);
      }
    }
    const Vec shift{bestShift(upright), bestShift(level)};
    start = {std::floor(box.low.x - shift.x + kSnap) + shift.x,
             std::floor(box.low.y - shift.y + kSnap) + shift.y};
  }
  start = start - Vec{1.0, 1.0};
  frame.nx = static_cast<int>(std::ceil(box.high.x - start.x)) + 1;
  frame.ny = static_cast<int>(std::ceil(box.high.y - start.y)) + 1;
  frame.origin = frame.toPlan(start);
  return frame;
}

}  // namespace sumpwright::suction
