#include "build/OutletLevels.h"

#include <algorithm>

#include "base/Contract.h"
#include "build/Levels.h"
#include "build/Run.h"

namespace sumpwright::build {

namespace {

using base::Message;
using perimeter::Edge;
using rules::DischargeMeasure;
using rules::RingSpan;
using rules::Rule;
using rules::Site;

bool needsEaves(const Rule& rule) {
  return rule.measure != DischargeMeasure::above_ground &&
         rule.measure != DischargeMeasure::below_outlet;
}

bool speaksOfPart(const Rule& rule, rules::Part part) {
  return std::find(rule.applies_to.begin(), rule.applies_to.end(), part) != rule.applies_to.end();
}

/// Levels are asked of the outlet, or of the fan where the rule speaks of no outlet.
bool isOfFan(const Rule& rule) {
  return speaksOfPart(rule, rules::Part::fan) && !speaksOfPart(rule, rules::Part::outlet);
}

/// A fan in the roof space stands at no height that is known.
bool isSilent(const Rule& rule, const Site& site) {
  return isOfFan(rule) && site.run->fan_place == plan::FanPlace::roof_space;
}

double heightOf(const Rule& rule, const Site& site) {
  return isOfFan(rule) ? site.run->fan_m : site.run->outlet_m;
}

/// A rule on what ends below the eaves has nothing to say of what ends above.
bool speaksOf(const Rule& rule, double outlet_m, double eaves_m) {
  if (rule.measure == DischargeMeasure::under_eaves ||
      rule.measure == DischargeMeasure::below_roof) {
    return outlet_m < eaves_m;
  }
  return true;
}

Message levelReason(const Rule& rule, double distance_m) {
  const std::vector<base::Arg> args{base::metres("distance", distance_m),
                                    base::metres("needed", rule.needed_m->value)};
  switch (rule.measure) {
    case DischargeMeasure::above_eaves:
      return {distance_m < 0.0 ? "rule.outlet-below-eaves" : "rule.outlet-above-eaves", args};
    case DischargeMeasure::under_eaves:
      return {"rule.outlet-under-eaves", args};
    case DischargeMeasure::below_roof:
      return {"rule.outlet-below-roof", args};
    case DischargeMeasure::below_outlet:
      return {distance_m < 0.0 ? "rule.fan-over-outlet" : "rule.fan-under-outlet", args};
    default:
      if (isOfFan(rule)) {
        return {distance_m < 0.0 ? "rule.fan-in-ground" : "rule.fan-above-ground", args};
      }
      return {distance_m < 0.0 ? "rule.outlet-in-ground" : "rule.outlet-above-ground", args};
  }
}

/// The outlet's height over the ground is linear between two places: where it is under `needed`.
geometry::Interval lowBetween(double from, double to, double height_from, double height_to,
                              double needed) {
  const bool low_from = height_from < needed;
  const bool low_to = height_to < needed;
  if (!low_from && !low_to) return {};
  if (low_from && low_to) return {from, to};
  const double t = (needed - height_from) / (height_to - height_from);
  const double at = from + t * (to - from);
  return low_from ? geometry::Interval{from, at} : geometry::Interval{at, to};
}

/// The least height over the ground between two places along an edge, its kinks among them.
double leastOverGround(const GroundLine& ground, const std::vector<double>& kinks, double height_m,
                       double from, double to) {
  double least = std::min(height_m - ground.at(from), height_m - ground.at(to));
  for (const double kink : kinks) {
    if (kink > from && kink < to) least = std::min(least, height_m - ground.at(kink));
  }
  return least;
}

/// Ends of the pieces over which the ground along an edge is straight.
std::vector<double> kinksOf(const GroundLine& ground, double length_m) {
  std::vector<double> kinks{0.0, length_m};
  for (const auto& p : ground.points) {
    if (p.along_m > 0.0 && p.along_m < length_m) kinks.push_back(p.along_m);
  }
  std::sort(kinks.begin(), kinks.end());
  return kinks;
}

void addLowOverGround(const Rule& rule, const Site& site, const Edge& edge,
                      std::vector<LevelSpan>& out) {
  const GroundLine ground = groundAlong(site, edge);
  const std::vector<double> kinks = kinksOf(ground, edge.length_m);
  std::vector<rules::EdgePiece> pieces;
  const double height = heightOf(rule, site);
  for (std::size_t i = 1; i < kinks.size(); ++i) {
    const double from = kinks[i - 1];
    const double to = kinks[i];
    const double h1 = height - ground.at(from);
    const double h2 = height - ground.at(to);
    geometry::Interval low =
        lowBetween(from, to, h1, h2, rule.needed_m->value - rules::kRounding_m);
    if (low.empty()) continue;
    // A piece that begins low holds its first place.
    if (low.from == 0.0) low.from = -1.0;
    const bool goes_on = !pieces.empty() && pieces.back().along.to == low.from;
    if (goes_on && h1 < rule.needed_m->value - rules::kRounding_m) {
      pieces.back().along.to = low.to;
    } else {
      pieces.push_back({&edge, low});
    }
  }
  const std::vector<RingSpan> spans = rules::joinPieces(pieces);
  for (const RingSpan& span : spans) {
    const double least = leastOverGround(ground, kinks, height, span.from_m - edge.start_m,
                                         span.to_m - edge.start_m);
    if (!out.empty() && out.back().where.ring == span.ring &&
        out.back().where.to_m == span.from_m && span.from_in && !out.back().unknown) {
      out.back().where.to_m = span.to_m;
      out.back().distance_m = std::min(*out.back().distance_m, least);
      out.back().reason = levelReason(rule, *out.back().distance_m);
      continue;
    }
    out.push_back({span, false, least, levelReason(rule, least)});
  }
}

void addAgainstEaves(const Rule& rule, const Site& site, const Edge& edge,
                     std::vector<LevelSpan>& out) {
  const RingSpan whole{edge.ring, edge.start_m, edge.end_m(), true};
  const auto eaves = eavesOf(site, edge);
  if (!eaves) {
    if (rule.unknown_gates) {
      out.push_back({whole, true, std::nullopt, Message("rule.eaves-unknown")});
    }
    return;
  }
  if (!speaksOf(rule, site.run->outlet_m, *eaves)) return;
  if (rule.measure == DischargeMeasure::below_roof) {
    addLowOverGround(rule, site, edge, out);
    return;
  }
  const bool up = rule.measure == DischargeMeasure::above_eaves;
  const double distance = up ? site.run->outlet_m - *eaves : *eaves - site.run->outlet_m;
  if (distance < rule.needed_m->value - rules::kRounding_m) {
    out.push_back({whole, false, distance, levelReason(rule, distance)});
  }
}

/// One answer all round: both go along with the hole.
void addUnderOutlet(const Rule& rule, const Site& site, std::vector<LevelSpan>& out) {
  const double distance = site.run->outlet_m - heightOf(rule, site);
  if (!(distance < rule.needed_m->value - rules::kRounding_m)) return;
  for (const RingSpan& ring : rules::allRings(site.perimeter)) {
    out.push_back({ring, false, distance, levelReason(rule, distance)});
  }
}

}  // namespace

double levelShift_m(const Rule& rule, const rules::PlacedRun& run) {
  return isOfFan(rule) ? fanShift_m(run) : run.shift_m;
}

std::optional<double> jetReach_m(const rules::Thing& thing, const Upright& mouth, double needed_m) {
  const bool above = thing.high_m > mouth.high_m;
  const bool begins = thing.low_m - mouth.high_m < needed_m - rules::kRounding_m;
  if (!above || !begins) return std::nullopt;
  return mouth.half_m + kJetHalf_m;
}

OutletLevel levelAt(const Rule& rule, const Site& site, perimeter::Place at) {
  SUMPWRIGHT_REQUIRE(site.run.has_value());
  const Edge& edge = site.perimeter.edgeAt(at);
  const double z = heightOf(rule, site);
  const auto eaves = eavesOf(site, edge);
  OutletLevel level;
  level.of = Message(isOfFan(rule) ? "level.ground-fan" : "level.ground");
  if (isSilent(rule, site)) return level;
  if (needsEaves(rule)) {
    level.reason = Message("rule.eaves-unknown");
    if (!eaves || !speaksOf(rule, z, *eaves)) return level;
    if (rule.measure != DischargeMeasure::below_roof) level.of = Message("level.eaves");
  }
  switch (rule.measure) {
    case DischargeMeasure::above_eaves:
      level.distance_m = z - *eaves;
      break;
    case DischargeMeasure::under_eaves:
      level.distance_m = *eaves - z;
      break;
    case DischargeMeasure::below_outlet:
      level.of = Message("level.outlet");
      level.distance_m = site.run->outlet_m - z;
      break;
    default:
      level.distance_m = z - groundAt(site, at);
  }
  level.reason = levelReason(rule, *level.distance_m);
  return level;
}

std::vector<LevelSpan> levelSpans(const Rule& rule, const Site& site) {
  SUMPWRIGHT_REQUIRE(site.run.has_value());
  std::vector<LevelSpan> spans;
  if (isSilent(rule, site)) return spans;
  if (rule.measure == DischargeMeasure::below_outlet) {
    addUnderOutlet(rule, site, spans);
    return spans;
  }
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      if (needsEaves(rule)) {
        addAgainstEaves(rule, site, edge, spans);
      } else {
        addLowOverGround(rule, site, edge, spans);
      }
    }
  }
  return spans;
}

std::vector<RingSpan> belowEavesSpans(const Site& site) {
  std::vector<RingSpan> spans;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      if (endsBelowEaves(site, edge)) spans.push_back({ring, edge.start_m, edge.end_m(), true});
    }
  }
  return rules::joinSpans(std::move(spans));
}

std::vector<RingSpan> commonSpans(const std::vector<RingSpan>& a, const std::vector<RingSpan>& b) {
  std::vector<RingSpan> common;
  for (const RingSpan& i : a) {
    for (const RingSpan& j : b) {
      if (i.ring != j.ring) continue;
      const RingSpan& later = i.from_m > j.from_m ? i : j;
      const bool both_in = i.from_m == j.from_m ? i.from_in && j.from_in : later.from_in;
      const RingSpan both{i.ring, later.from_m, std::min(i.to_m, j.to_m), both_in};
      if (both.from_m < both.to_m) common.push_back(both);
    }
  }
  return rules::joinSpans(std::move(common));
}

}  // namespace sumpwright::build
