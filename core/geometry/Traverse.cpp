#include "geometry/Traverse.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace sumpwright::geometry {

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kClosed_m = 1e-6;  // own figure: nobody tapes to a micrometre
constexpr int kRounds = 50;         // own figure: it settles in under ten

/// Exactly along an axis at whole quarters, so that a house of right angles closes without
/// rounding.
Vec direction(double bearing_deg) {
  const double turned = std::fmod(std::fmod(bearing_deg, 360.0) + 360.0, 360.0);
  if (turned == 0.0) return {0.0, 1.0};
  if (turned == 90.0) return {1.0, 0.0};
  if (turned == 180.0) return {0.0, -1.0};
  if (turned == 270.0) return {-1.0, 0.0};
  return {std::sin(turned * kDegree), std::cos(turned * kDegree)};
}

Vec gapOf(const std::vector<Leg>& legs) {
  Vec sum;
  for (const Leg& leg : legs) sum = sum + walked(leg);
  return -sum;
}

/// Variances of a leg's length and bearing (radians).
std::pair<double, double> variances(const Leg& leg, const Precision& p) {
  const double growing = p.length_per_root_m * p.length_per_root_m * leg.length_m;
  const double length = leg.length_held ? 0.0 : p.length_m * p.length_m + growing;
  const double turn = leg.bearing_held ? 0.0 : p.bearing_deg * kDegree;
  return {length, turn * turn};
}

/// A symmetric two by two matrix.
struct Normal {
  double xx = 0.0, xy = 0.0, yy = 0.0;
  void add(double weight, Vec v) {
    xx += weight * v.x * v.x;
    xy += weight * v.x * v.y;
    yy += weight * v.y * v.y;
  }
  std::optional<Vec> solve(Vec right) const {
    const double det = xx * yy - xy * xy;
    if (!(det > 1e-12 * (xx + yy) * (xx + yy))) return std::nullopt;
    return Vec{(yy * right.x - xy * right.y) / det, (xx * right.y - xy * right.x) / det};
  }
};

/// The same number with two neighbouring digits changed over, in centimetres.
std::vector<double> transpositions(double length_m) {
  std::vector<double> found;
  const long centimetres = std::lround(length_m * 100.0);
  for (long unit = 1; unit * 10 <= centimetres * 10 && unit < 100'000; unit *= 10) {
    const long low = centimetres / unit % 10;
    const long high = centimetres / (unit * 10) % 10;
    if (low == high) continue;
    found.push_back(static_cast<double>(centimetres + (low - high) * unit * 9) / 100.0);
  }
  return found;
}

}  // namespace

Vec walked(const Leg& leg) { return leg.length_m * direction(leg.bearing_deg); }

std::vector<Point> corners(Point start, const std::vector<Leg>& legs) {
  std::vector<Point> all{start};
  for (const Leg& leg : legs) all.push_back(all.back() + walked(leg));
  return all;
}

Closing closingOf(const std::vector<Leg>& legs) {
  Closing c;
  c.gap = gapOf(legs);
  c.gap_m = norm(c.gap);
  for (const Leg& leg : legs) c.round_m += leg.length_m;
  if (c.gap_m < kClosed_m) return c;
  const double bearing = std::atan2(c.gap.x, c.gap.y) / kDegree;
  c.bearing_deg = bearing < 0.0 ? bearing + 360.0 : bearing;
  c.one_in = c.round_m / c.gap_m;
  return c;
}

std::vector<Point> closedByCompassRule(Point start, const std::vector<Leg>& legs) {
  std::vector<Point> all = corners(start, legs);
  const Closing closing = closingOf(legs);
  if (!(closing.round_m > 0.0)) return all;
  double run = 0.0;
  for (std::size_t i = 0; i < legs.size(); ++i) {
    run += legs[i].length_m;
    all[i + 1] = all[i + 1] + (run / closing.round_m) * closing.gap;
  }
  return all;
}

// The changes v of the observations with the least sum of v²/variance that move the end by the gap
// g: v = variance · Bᵀ λ with (B · variance · Bᵀ) λ = g, where B's columns say how the end moves
// with a length (along the leg) and with a bearing (square to it, clockwise, times the length).
// Bearings make it curved, so B is taken anew where the last round led; changes always count from
// what was taped.
std::optional<std::vector<Leg>> closedByLeastSquares(const std::vector<Leg>& legs,
                                                     const Precision& precision) {
  std::vector<Leg> now = legs;
  for (int round = 0; round < kRounds; ++round) {
    Normal normal;
    Vec target = gapOf(now);
    for (std::size_t i = 0; i < legs.size(); ++i) {
      const auto [length, turn] = variances(legs[i], precision);
      const Vec along = direction(now[i].bearing_deg);
      const Vec across = now[i].length_m * -left(along);
      normal.add(length, along);
      normal.add(turn, across);
      // What this leg was changed so far is given back: λ makes all of the change.
      target = target + (now[i].length_m - legs[i].length_m) * along +
               ((now[i].bearing_deg - legs[i].bearing_deg) * kDegree) * across;
    }
    const std::optional<Vec> lambda = normal.solve(target);
    if (!lambda) return std::nullopt;
    for (std::size_t i = 0; i < legs.size(); ++i) {
      const auto [length, turn] = variances(legs[i], precision);
      const Vec along = direction(now[i].bearing_deg);
      const Vec across = now[i].length_m * -left(along);
      now[i].length_m = legs[i].length_m + length * dot(along, *lambda);
      now[i].bearing_deg = legs[i].bearing_deg + turn * dot(across, *lambda) / kDegree;
    }
    if (norm(gapOf(now)) < kClosed_m * 1e-3) return now;
  }
  return std::nullopt;
}

std::vector<Misread> misreadsThatExplain(const std::vector<Leg>& legs, double accuracy_m) {
  std::vector<Misread> found;
  const Vec gap = gapOf(legs);
  if (norm(gap) <= accuracy_m) return found;
  const auto consider = [&](std::size_t i, MisreadKind kind, double length_m) {
    if (!(length_m > 0.0)) return;
    const Vec left_over = gap - (length_m - legs[i].length_m) * direction(legs[i].bearing_deg);
    if (norm(left_over) <= accuracy_m) found.push_back({i, kind, length_m, norm(left_over)});
  };
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const double length = legs[i].length_m;
    for (const double other : transpositions(length)) consider(i, MisreadKind::transposed, other);
    for (const double slip : std::array{0.1, 1.0, 10.0}) {
      consider(i, MisreadKind::slip, length + slip);
      consider(i, MisreadKind::slip, length - slip);
    }
  }
  std::stable_sort(found.begin(), found.end(), [](const Misread& a, const Misread& b) {
    return std::pair(a.left_m, a.kind) < std::pair(b.left_m, b.kind);
  });
  return found;
}

}  // namespace sumpwright::geometry
