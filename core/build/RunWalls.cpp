#include "build/RunWalls.h"

#include <algorithm>
#include <utility>

#include "plan/KindNames.h"
#include "rules/RuleSheetNames.h"
#include "rules/WallSays.h"

namespace sumpwright::build {

namespace {

using perimeter::Edge;
using perimeter::Place;
using rules::Finding;
using rules::Part;
using rules::RingSpan;
using rules::Rule;
using rules::Site;
using rules::WallSays;

/// The wall, wider to either side by half a pipe. One that only just touches is off it.
std::vector<RingSpan> spansOfWall(const Site& site, const Edge& edge, double half_m) {
  const double wider = std::max(0.0, half_m - rules::kRounding_m);
  return rules::wrapRange(site.perimeter, {edge.ring, edge.start_m - wider, edge.end_m() + wider},
                          wider == 0.0);
}

bool areApart(const RingSpan& a, const RingSpan& b) {
  return a.ring != b.ring || a.to_m <= b.from_m || b.to_m <= a.from_m;
}

/// Whether a part above that hole meets those spans of one ring.
bool meets(const Site& site, const PlacedPart& part, Place hole,
           const std::vector<RingSpan>& spans) {
  if (part.isUpright()) {
    const double s = placeOfPart(site, hole, part).chainage_m;
    return std::any_of(spans.begin(), spans.end(),
                       [&](const RingSpan& span) { return rules::holds(span, s); });
  }
  for (const RingSpan& taken : takenUp(site, part, hole)) {
    for (const RingSpan& span : spans) {
      if (!areApart(taken, span)) return true;
    }
  }
  return false;
}

bool isJudgedWithHole(const Rule& rule, const PlacedPart& part) {
  const bool speaks_of_hole =
      std::any_of(rule.applies_to.begin(), rule.applies_to.end(),
                  [](Part p) { return p == Part::hole || p == Part::dig || p == Part::void_; });
  return speaks_of_hole && part.isUpright() && part.shift_m == 0.0;
}

base::Message reasonOf(const Rule& rule, const Site& site, const Edge& edge, Part part) {
  const base::Message what("part." + std::string(plan::nameOf(part)));
  return {
      "rule.run-wall",
      {base::phrase("part", what), base::phrase("reason", rules::wallReason(rule, site, edge))}};
}

/// The first part that is on the wall above that hole.
const PlacedPart* partOn(const Rule& rule, const Site& site, const std::vector<PlacedPart>& parts,
                         const Edge& edge, Place hole) {
  for (const PlacedPart& part : parts) {
    if (isJudgedWithHole(rule, part)) continue;
    if (meets(site, part, hole, spansOfWall(site, edge, part.body.half_m))) return &part;
  }
  return nullptr;
}

const Edge* edgeOfWall(const Site& site, const std::string& wall) {
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      if (site.perimeter.wall(edge).id == wall) return &edge;
    }
  }
  return nullptr;
}

void addEdge(const Rule& rule, const Site& site, const std::vector<PlacedPart>& parts,
             const Edge& edge, std::vector<rules::FindingSpan>& out) {
  std::vector<RingSpan> where;
  for (const PlacedPart& part : parts) {
    if (isJudgedWithHole(rule, part)) continue;
    for (const RingSpan& s : broughtBack(site, spansOfWall(site, edge, part.body.half_m),
                                         part.shift_m, part.to_shift_m)) {
      where.push_back(s);
    }
  }
  for (const RingSpan& span : rules::joinSpans(std::move(where))) {
    const Place middle{span.ring, 0.5 * (span.from_m + span.to_m)};
    const PlacedPart* part = partOn(rule, site, parts, edge, middle);
    const base::Message reason =
        reasonOf(rule, site, edge, part == nullptr ? rule.applies_to.front() : part->part);
    const std::size_t before = out.size();
    rules::addSpans(rule, site, -1, rules::wallFinding(rule, site, edge, reason), {span}, out);
    for (std::size_t i = before; i < out.size(); ++i) out[i].of_run = true;
  }
}

}  // namespace

void addRunWalls(const Rule& rule, const Site& site, std::vector<rules::FindingSpan>& out) {
  if (rule.unplaced_only) return;
  const std::vector<PlacedPart> parts = placedParts(rule, site);
  if (parts.empty()) return;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      if (rules::saysOf(rule, site.perimeter.wall(edge)) == WallSays::nothing) continue;
      addEdge(rule, site, parts, edge, out);
    }
  }
}

Finding runWallAt(const Rule& rule, const Site& site, Finding finding, Place hole) {
  const Edge* edge = edgeOfWall(site, finding.thing);
  if (edge == nullptr || !rule.reason.empty()) return finding;
  const std::vector<PlacedPart> parts = placedParts(rule, site);
  if (const PlacedPart* part = partOn(rule, site, parts, *edge, hole)) {
    finding.reason = reasonOf(rule, site, *edge, part->part);
  }
  return finding;
}

bool isOnRefused(const Rule& rule, const Site& site, const PlacedPart& part, Place hole) {
  return meets(site, part, hole, refusedWalls(rule, site, part.body.half_m));
}

std::vector<RingSpan> refusedWalls(const Rule& rule, const Site& site, double half_m) {
  if (rule.unplaced_only) return {};
  std::vector<RingSpan> walls;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      if (rules::saysOf(rule, site.perimeter.wall(edge)) != WallSays::objects) continue;
      for (const RingSpan& s : spansOfWall(site, edge, half_m)) walls.push_back(s);
    }
  }
  return rules::joinSpans(std::move(walls));
}

}  // namespace sumpwright::build
