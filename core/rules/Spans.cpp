#include "rules/Spans.h"

#include <algorithm>

#include "rules/WallSays.h"

namespace sumpwright::rules {

std::vector<RingSpan> joinSpans(std::vector<RingSpan> spans) {
  std::erase_if(spans, [](const RingSpan& s) { return !(s.from_m < s.to_m); });
  std::sort(spans.begin(), spans.end(), [](const RingSpan& a, const RingSpan& b) {
    if (a.ring != b.ring) return a.ring < b.ring;
    return a.from_m != b.from_m ? a.from_m < b.from_m : a.from_in && !b.from_in;
  });
  std::vector<RingSpan> joined;
  for (const RingSpan& next : spans) {
    const bool continues =
        !joined.empty() && joined.back().ring == next.ring &&
        (next.from_m < joined.back().to_m || (next.from_m == joined.back().to_m && next.from_in));
    if (continues) {
      joined.back().to_m = std::max(joined.back().to_m, next.to_m);
    } else {
      joined.push_back(next);
    }
  }
  return joined;
}

std::vector<RingSpan> joinPieces(const std::vector<EdgePiece>& pieces) {
  std::vector<RingSpan> spans;
  for (const EdgePiece& piece : pieces) {
    const perimeter::Edge& e = *piece.edge;
    const geometry::Interval on = geometry::clip(piece.along, {0.0, e.length_m});
    if (on.empty()) continue;
    // The end of an edge is the next one's start, to the bit, so that spans meet there exactly.
    const double to = piece.along.to >= e.length_m ? e.end_m() : e.start_m + on.to;
    spans.push_back({e.ring, e.start_m + on.from, to, piece.along.from < 0.0});
  }
  return joinSpans(std::move(spans));
}

RingSpan wholeRing(const perimeter::Perimeter& perimeter, int ring) {
  return {ring, 0.0, perimeter.length_m(ring), true};
}

std::vector<RingSpan> allRings(const perimeter::Perimeter& perimeter) {
  std::vector<RingSpan> spans;
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    spans.push_back(wholeRing(perimeter, ring));
  }
  return spans;
}

std::vector<RingSpan> wrapRange(const perimeter::Perimeter& perimeter, const RingRange& range,
                                bool from_in) {
  const double length = perimeter.length_m(range.ring);
  const double extent = range.to_m - range.from_m;
  if (!(extent > 0.0)) return {};
  if (extent >= length) return {wholeRing(perimeter, range.ring)};
  const double from = perimeter.wrapped({range.ring, range.from_m}).chainage_m;
  // Take the end from the range itself where no wrapping is needed: no digit is lost.
  const double to = from == range.from_m ? range.to_m : from + extent;
  if (to <= length) return {{range.ring, from, to, from_in}};
  return {{range.ring, 0.0, to - length, true}, {range.ring, from, length, from_in}};
}

std::optional<PlacedHole> placedHole(const plan::Job& job, const std::string& sump) {
  for (const plan::Sump& one : job.design.sumps) {
    if (one.kind != plan::SumpKind::cored || (!sump.empty() && one.id != sump)) continue;
    if (!one.entry_m && !one.fall_deg) return std::nullopt;
    return PlacedHole{one.id, one.entry_m, one.fall_deg};
  }
  return std::nullopt;
}

double needed_m(const Rule& rule, const Site& site) {
  SUMPWRIGHT_REQUIRE(rule.needed_m.has_value());
  if (rule.in_height_m && site.hole && site.hole->entry_m) return rule.in_height_m->value;
  return rule.needed_m->value;
}

double reach_m(const Rule& rule, const Site& site) {
  SUMPWRIGHT_REQUIRE(rule.needed_m.has_value());
  return needed_m(rule, site) + halfWidth_m(rule, site).value_or(0.0) - kRounding_m;
}

Weight weightOf(const Rule& rule) {
  SUMPWRIGHT_REQUIRE(rule.severity != Severity::preference);
  return rule.severity == Severity::binding ? Weight::binding : Weight::advisory;
}

Finding makeFinding(const Rule& rule, const Site& site, int thing_index, base::Message reason) {
  Finding f;
  f.rule = rule.id;
  f.weight = weightOf(rule);
  if (rule.needed_m) f.needed_m = needed_m(rule, site);
  f.reason = std::move(reason);
  f.least_bad = rule.least_bad;
  f.waivable.allowed = rule.waiver.allowed && rule.severity == Severity::binding;
  f.waivable.evidence = rule.waiver.evidence;
  if (rule.waiver.not_within_m) f.waivable.not_within_m = rule.waiver.not_within_m->value;
  if (thing_index < 0) return f;
  const Thing& thing = site.things[static_cast<std::size_t>(thing_index)];
  f.thing = thing.id;
  f.thing_label = thing.label;
  // What nobody has found cannot be waived: neither an unlocated thing nor an undrawn run.
  const bool found = thing.located && !thing.street_from;
  if (rule.waiver.only_located && !found) f.waivable.allowed = false;
  // A hole through a door or round a corner is none, whatever is said for it.
  const bool no_wall_there = thing.kind == ThingKind::door_width || thing.kind == ThingKind::corner;
  if (no_wall_there && !f.waivable.not_within_m) f.waivable.not_within_m = 0.0;
  return f;
}

void addSpans(const Rule& rule, const Site& site, int thing_index, Finding finding,
              const std::vector<RingSpan>& where, std::vector<FindingSpan>& out) {
  if (!rule.reason.empty() && finding.weight != Weight::unknown) {
    finding.reason = base::plainText(rule.reason);
  }
  for (const RingSpan& w : where) {
    out.push_back({w.ring, w.from_m, w.to_m, w.from_in, finding, site.indexOf(rule), thing_index});
  }
}

namespace {

void addUnknownEverywhere(const Rule& rule, const Site& site, const char* reason,
                          std::vector<FindingSpan>& out) {
  Finding f = makeFinding(rule, site, -1, base::Message(reason, {base::text("rule", rule.title)}));
  f.weight = Weight::unknown;
  f.waivable = {};
  f.needed_m.reset();
  addSpans(rule, site, -1, f, allRings(site.perimeter), out);
}

bool speaksOfSomeWall(const Rule& rule, const Site& site) {
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : site.perimeter.edges(ring)) {
      if (saysOf(rule, site.perimeter.wall(edge)) != WallSays::nothing) return true;
    }
  }
  return false;
}

/// Whether there is, or may be, what the rule keeps off: something drawn, or a kind that has to be
/// looked for. A rule on nothing has nothing to wait for.
bool mayMeetThings(const Rule& rule, const Site& site) {
  if (rule.kind == RuleKind::wall) return speaksOfSomeWall(rule, site);
  if (rule.kind != RuleKind::clearance) return true;
  if (!site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))].empty()) return true;
  const bool gated = std::any_of(site.sheet.gates.begin(), site.sheet.gates.end(),
                                 [&](const Gate& gate) { return gate.rule == rule.id; });
  return gated || std::any_of(site.later.begin(), site.later.end(), [&](const Thing& thing) {
           return std::find(rule.things.begin(), rule.things.end(), thing.kind) !=
                  rule.things.end();
         });
}

}  // namespace

bool addUnjudged(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (site.run && isAboutRun(rule) && !halfWidth_m(rule, site)) return true;  // judged in height
  const bool nothing = !halfWidth_m(rule, site);
  if (partlyUnjudged(rule, site) && mayMeetThings(rule, site)) {
    addUnknownEverywhere(rule, site, "rule.unjudged.riser", out);
  } else if (nothing && !isAboutRun(rule)) {
    addUnknownEverywhere(rule, site, "rule.unjudged.part", out);
  }
  return nothing;
}

}  // namespace sumpwright::rules
