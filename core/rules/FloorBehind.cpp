// The floor under the inner end of the drill line: a core belongs under a slab on the ground.

#include <algorithm>

#include "plan/FloorLevels.h"
#include "plan/KindNames.h"
#include "rules/Spans.h"

namespace sumpwright::rules {

namespace {

using plan::FloorZone;

/// What the sheet's list of accepted floors is asked about.
std::string floorClass(const FloorZone& zone) {
  const bool suspended = plan::isSuspended(zone.kind);
  if (suspended && zone.oversite == plan::Oversite::sealed) return "sealed_oversite";
  if (suspended && zone.oversite == plan::Oversite::unknown) return "unknown";
  return std::string(plan::nameOf(zone.kind));
}

base::Message zoneLabel(const FloorZone& zone) {
  if (!zone.name.empty()) return base::Message("thing.named", {base::text("name", zone.name)});
  return base::Message("floor." + std::string(plan::nameOf(zone.kind)));
}

std::vector<RingSpan> whereBehind(const Site& site, const std::string* zone) {
  std::vector<RingSpan> spans;
  for (std::size_t ring = 0; ring < site.zones_behind.size(); ++ring) {
    for (const auto& edge : site.zones_behind[ring]) {
      for (const perimeter::Span& s : edge) {
        if (zone != nullptr && s.id != *zone) continue;
        spans.push_back({static_cast<int>(ring), s.from_m, s.to_m, s.from_in});
      }
    }
  }
  return joinSpans(std::move(spans));
}

/// Rings less the spans: where no zone is drawn. Two zones that share an outline meet in a single
/// place, which is no gap.
std::vector<RingSpan> uncovered(const Site& site) {
  std::vector<RingSpan> gaps;
  const auto covered = whereBehind(site, nullptr);
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    double from = 0.0;
    for (const RingSpan& s : covered) {
      if (s.ring != ring) continue;
      if (s.from_m > from) gaps.push_back({ring, from, s.from_m, true});
      from = std::max(from, s.to_m);
    }
    const double end = site.perimeter.length_m(ring);
    if (from < end) gaps.push_back({ring, from, end, true});
  }
  return gaps;
}

Finding unknownFinding(const Rule& rule, const Site& site, const char* reason) {
  Finding f = makeFinding(rule, site, -1, base::Message(reason));
  f.weight = Weight::unknown;
  f.waivable = {};
  return f;
}

void addZone(const Rule& rule, const Site& site, const FloorZone& zone,
             std::vector<FindingSpan>& out) {
  const std::string kind = floorClass(zone);
  const bool accepted =
      std::find(rule.values.begin(), rule.values.end(), kind) != rule.values.end();
  if (accepted || (kind == "unknown" && !rule.unknown_gates)) return;
  const base::Message floor("floor." + std::string(plan::nameOf(zone.kind)));
  Finding f = kind == "unknown"
                  ? unknownFinding(rule, site,
                                   zone.kind == plan::FloorKind::unknown ? "rule.floor-unknown"
                                                                         : "rule.oversite-unknown")
                  : makeFinding(rule, site, -1, base::Message("rule.floor"));
  f.reason.args.push_back(base::phrase("floor", floor));
  f.thing = zone.id;
  f.thing_label = zoneLabel(zone);
  addSpans(rule, site, -1, f, whereBehind(site, &zone.id), out);
}

void spans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (addUnjudged(rule, site, out)) return;
  for (const FloorZone& zone : site.job.plan.floor_zones) addZone(rule, site, zone, out);
  if (!rule.unknown_gates) return;
  addSpans(rule, site, -1, unknownFinding(rule, site, "rule.floor-not-drawn"), uncovered(site),
           out);
}

std::optional<Nearest> nearest(const Rule&, const Site&, perimeter::Place) { return std::nullopt; }

std::optional<double> least(const Rule&, const Site&, const Thing&, int, double, double) {
  return std::nullopt;
}

}  // namespace

const RuleJudge kFloorBehind{RuleKind::floor_behind, spans, nearest, least};

}  // namespace sumpwright::rules
