#include "build/ZoneHeights.h"

#include <algorithm>

#include "build/Heights.h"
#include "build/OutletLevels.h"

namespace sumpwright::build {

namespace {

using geometry::Interval;
using geometry::Intervals;
using rules::DischargeMeasure;
using rules::Rule;
using rules::RuleKind;
using rules::Site;
using rules::Thing;

bool speaksOfOutlet(const Rule& rule) {
  return std::find(rule.applies_to.begin(), rule.applies_to.end(), rules::Part::outlet) !=
         rule.applies_to.end();
}

Need outletNeed(const Rule& rule) {
  Need need{rule.needed_m->value, std::nullopt};
  if (rule.clear_below_m) need.clear_below_m = rule.clear_below_m->value;
  return need;
}

}  // namespace

bool isMeant(const Rule& rule, rules::Weight weight) {
  if (!rule.enabled || rule.severity == rules::Severity::preference) return false;
  const bool measured =
      rule.needed_m && (rule.kind == RuleKind::clearance || rule.kind == RuleKind::discharge);
  if (!measured && rule.kind != RuleKind::wall) return false;
  return speaksOfOutlet(rule) && rules::weightOf(rule) == weight;
}

bool isOfThings(const Rule& rule) {
  return rule.kind == RuleKind::clearance || rule.measure == DischargeMeasure::near ||
         rule.measure == DischargeMeasure::over || rule.measure == DischargeMeasure::jet;
}

double halfOf(const Rule& rule, const Site& site) {
  return rule.from == rules::MeasuredFrom::centre ? 0.0 : site.pipe_od_m / 2.0;
}

std::optional<Interval> heightsFor(const Rule& rule, const Site& site, const Thing& thing,
                                   double in_plan_m) {
  const double half = halfOf(rule, site);
  const double needed = rule.needed_m->value - rules::kRounding_m;
  if (rule.kind == RuleKind::clearance || rule.measure == DischargeMeasure::near) {
    return heightsTooNear(in_plan_m, thing, half, outletNeed(rule));
  }
  Interval heights;
  if (rule.measure == DischargeMeasure::over && in_plan_m < half + needed) {
    heights = {thing.low_m, kEndless_m};
  }
  if (rule.measure == DischargeMeasure::jet && in_plan_m < half + kJetHalf_m) {
    heights = {thing.low_m - needed, thing.high_m};
  }
  if (heights.empty()) return std::nullopt;
  return heights;
}

double widest(const Rule& rule, const Site& site) {
  const bool jet = rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::jet;
  return halfOf(rule, site) + (jet ? kJetHalf_m : rule.needed_m->value - rules::kRounding_m);
}

bool isOfWallsRound(const Rule& rule) {
  return rule.kind == RuleKind::discharge && rule.measure == DischargeMeasure::enclosed;
}

Interval heightsBetweenWalls(std::optional<double> eaves_m) {
  return {-kEndless_m, eaves_m.value_or(kEndless_m)};
}

Intervals levelHeights(const Rule& rule, double ground_m, std::optional<double> eaves_m) {
  const double needed = rule.needed_m->value - rules::kRounding_m;
  switch (rule.measure) {
    case DischargeMeasure::above_ground:
      return {{-kEndless_m, ground_m + needed}};
    case DischargeMeasure::above_eaves:
      if (eaves_m) return {{-kEndless_m, *eaves_m + needed}};
      break;
    case DischargeMeasure::under_eaves:
      if (eaves_m) return {{*eaves_m - needed, *eaves_m}};
      break;
    case DischargeMeasure::below_roof:
      if (eaves_m) return {{-kEndless_m, std::min(*eaves_m, ground_m + needed)}};
      break;
    default:
      break;
  }
  return {};
}

}  // namespace sumpwright::build
