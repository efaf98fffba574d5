#include "suction/Along.h"

#include <algorithm>
#include <cmath>

namespace sumpwright::suction {

namespace {

using geometry::Segment;
using geometry::Vec;

constexpr double kSameWay = 0.26;  // sine of 15 degrees
constexpr double kNothing = 1e-9;

/// Shares [from, to] of the way from one height to another at which it is within a band; empty:
/// from > to.
std::pair<double, double> withinBand(double start, double end, double within) {
  const double rise = end - start;
  if (std::abs(rise) < kNothing) return {std::abs(start) <= within ? 0.0 : 2.0, 1.0};
  const auto [low, high] = std::minmax({(-within - start) / rise, (within - start) / rise});
  return {std::max(0.0, low), std::min(1.0, high)};
}

}  // namespace

std::optional<Stretch> alongside(const Segment& line, const Segment& other, double within) {
  const double length = geometry::distance(line.a, line.b);
  const double other_length = geometry::distance(other.a, other.b);
  if (!(length > 0.0) || !(other_length > 0.0)) return std::nullopt;
  const Vec u = (1.0 / length) * (line.b - line.a);
  const Vec v = other.b - other.a;
  if (std::abs(geometry::cross(u, v)) > kSameWay * other_length) return std::nullopt;
  const double height = geometry::cross(u, other.a - line.a);
  const auto [from, to] = withinBand(height, height + geometry::cross(u, v), within);
  if (!(from < to)) return std::nullopt;
  const double start = geometry::dot(u, other.a - line.a);
  const double way = geometry::dot(u, v);
  const auto [low, high] = std::minmax({start + from * way, start + to * way});
  const Stretch common{std::max(0.0, low), std::min(length, high)};
  if (common.to_m - common.from_m < kNothing) return std::nullopt;
  return common;
}

}  // namespace sumpwright::suction
