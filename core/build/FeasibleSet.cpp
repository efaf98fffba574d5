#include "build/FeasibleSet.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "build/Figures.h"

namespace sumpwright::build {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

Curve curveOf(const Limit& limit) { return {limit.a, limit.b, limit.k}; }

/// c h + curve of the upper and of the lower limit: h cancels.
Curve roomBetween(const Limit& upper, const Limit& lower) {
  return {upper.a + lower.a, upper.b + lower.b, upper.k + lower.k};
}

double nearestIn(Falls range, double t) { return std::clamp(t, range.from, range.to); }

}  // namespace

FeasibleSet::FeasibleSet(std::vector<Limit> limits) : m_limits(std::move(limits)) {
  std::vector<Curve> falls;
  for (const Limit& limit : m_limits) {
    if (limit.c < 0.0) m_uppers.push_back(limit);
    if (limit.c > 0.0) m_lowers.push_back(limit);
    if (limit.c == 0.0) falls.push_back(curveOf(limit));
  }
  for (const Limit& upper : m_uppers) {
    for (const Limit& lower : m_lowers) m_rooms.push_back(roomBetween(upper, lower));
  }
  m_falls = notBelow(falls, 0.0, {0.0, kMostFall});
}

std::optional<Falls> FeasibleSet::falls(double spare_m) const {
  if (!m_falls) return std::nullopt;
  return notBelow(m_rooms, 2.0 * spare_m, *m_falls);
}

bool FeasibleSet::contains(Bore bore) const {
  return std::all_of(m_limits.begin(), m_limits.end(),
                     [&](const Limit& limit) { return limit.keptBy(bore.entry_m, bore.fall); });
}

FeasibleSet::Entries FeasibleSet::entries(double fall) const {
  Entries found{-kInfinity, kInfinity, LimitKind::footing, LimitKind::slab};
  for (const Limit& upper : m_uppers) {
    const double high = upper.slack(0.0, fall);
    if (high < found.high_m) found.high_m = high, found.upper = upper.kind;
  }
  for (const Limit& lower : m_lowers) {
    const double low = -lower.slack(0.0, fall);
    if (low > found.low_m) found.low_m = low, found.lower = lower.kind;
  }
  return found;
}

std::optional<Bore> FeasibleSet::best(const BoreWish& wish, const FallWish& falls) const {
  if (wish.entry_m && wish.fall) return Bore{*wish.entry_m, *wish.fall};
  if (wish.fall) return bestAtFall(*wish.fall);
  if (!m_falls) return std::nullopt;
  return wish.entry_m ? bestAtEntry(*wish.entry_m, falls) : bestFree(falls);
}

/// `spare`: to either side of the hole, over the fall.
double FeasibleSet::bestFall(const std::vector<Curve>& spare, const FallWish& falls) const {
  const double gentlest = m_falls->from;
  const Falls sure{std::clamp(falls.sure, gentlest, m_falls->to), m_falls->to};
  if (const auto roomy = notBelow(spare, kWander_m, sure)) return nearestIn(*roomy, falls.usual);
  std::vector<Curve> shares = spare;
  for (Curve& c : shares) c = {c.a / kWander_m, c.b / kWander_m, c.k / kWander_m};
  if (const double way = sure.from - gentlest; way > 0.0) {
    shares.push_back({-gentlest / way, 1.0 / way, 0.0});
  }
  return peakOf(shares, *m_falls).t;
}

Bore FeasibleSet::bestFree(const FallWish& falls) const {
  std::vector<Curve> spare = m_rooms;
  for (Curve& c : spare) c = {0.5 * c.a, 0.5 * c.b, 0.5 * c.k};
  return bestAtFall(bestFall(spare, falls));
}

Bore FeasibleSet::bestAtFall(double fall) const {
  const Entries range = entries(fall);
  const double spare = std::min(0.5 * (range.high_m - range.low_m), kEnough_m);
  return {range.high_m - spare, fall};
}

Bore FeasibleSet::bestAtEntry(double entry_m, const FallWish& falls) const {
  std::vector<Curve> spare;
  for (const Limit& limit : m_limits) {
    if (limit.c != 0.0) spare.push_back({limit.a + limit.c * entry_m, limit.b, limit.k});
  }
  return {entry_m, bestFall(spare, falls)};
}

Tightest FeasibleSet::tightest(double fall) const {
  const Entries range = entries(fall);
  return {range.upper, range.lower, range.high_m - range.low_m};
}

std::optional<Ceiling> footingCeiling(const std::vector<Limit>& limits, double usual_fall,
                                      double least_fall) {
  std::vector<Limit> others;
  std::optional<Limit> footing;
  for (const Limit& limit : limits) {
    if (limit.kind == LimitKind::footing) {
      footing = limit;
    } else {
      others.push_back(limit);
    }
  }
  if (!footing) return std::nullopt;
  const FeasibleSet set(others);
  auto falls = set.falls();
  if (!falls || falls->to < least_fall) return std::nullopt;
  falls->from = std::max(falls->from, least_fall);
  footing->a = 0.0;  // its top at floor level: the room left is the top that just fits
  std::vector<Curve> curves;
  for (const Limit& limit : others) {
    if (limit.c < 0.0) curves.push_back(roomBetween(limit, *footing));
  }
  const Peak peak = peakOf(curves, *falls);
  // Where a gentler or steeper fall leaves as much room, the usual one.
  const double fall =
      nearestIn(notBelow(curves, peak.value, *falls).value_or(Falls{peak.t, peak.t}), usual_fall);
  return Ceiling{peak.value, {set.entries(fall).high_m, fall}};
}

}  // namespace sumpwright::build
