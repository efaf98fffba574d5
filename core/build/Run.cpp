#include "build/Run.h"

#include <algorithm>
#include <cmath>

#include "base/Contract.h"
#include "build/DrillSection.h"
#include "build/Figures.h"
#include "build/Levels.h"

namespace sumpwright::build {

namespace {

using rules::Part;
using rules::PlacedRun;
using rules::RingSpan;
using rules::Site;

constexpr double kFoot_m = -0.5;  // own figure: a riser's, on ground that lies higher

/// The way from one chainage to another, the shorter round the ring; positive as chainage grows.
double shorterWay(double from, double to, double length) {
  const double ahead = std::fmod(std::fmod(to - from, length) + length, length);
  return ahead > length / 2.0 ? ahead - length : ahead;
}

double fanHeight(const Site& site, const plan::Sump& sump, const PlacedRun& run) {
  if (sump.fan_height_m) return *sump.fan_height_m;
  const double ground =
      groundAt(site, site.perimeter.wrapped({sump.ring, sump.chainage_m + fanShift_m(run)}));
  const double high = std::max(run.outlet_m - kFanUnderOutlet_m, 0.5 * (ground + run.outlet_m));
  if (run.fan_place != plan::FanPlace::outside_low) return high;
  return std::min(std::max(kLowFan_m, ground + kFanOverGround_m), high);
}

/// Riser from the ground up, then along the walls where the outlet is aside, and up again; its foot
/// is in the ground, where nothing of the rules stands beside it.
void addRiser(const PlacedRun& run, double half_m, std::vector<PlacedPart>& parts) {
  const double foot = run.foot_m;
  const double shift = run.shift_m;
  if (shift == 0.0) {
    parts.push_back({Part::riser, 0.0, 0.0, {foot, std::max(foot, run.outlet_m), half_m}});
    return;
  }
  const double cross = run.outlet_m - kCrossUnderOutlet_m;
  parts.push_back({Part::riser, 0.0, 0.0, {foot, std::max(foot, cross), half_m}});
  parts.push_back({Part::riser,
                   std::min(0.0, shift),
                   std::max(0.0, shift),
                   {cross - half_m, cross + half_m, half_m}});
  parts.push_back({Part::riser, shift, shift, {cross, run.outlet_m, half_m}});
}

/// The end of the last edge and the length are one place (rounding).
constexpr double kSameEnd_m = 1e-9;

/// Spans cut at chainage 0 made whole again: their ends then pass the ring's length.
void joinOverStart(const Site& site, std::vector<RingSpan>& spans) {
  for (RingSpan& last : spans) {
    const double length = site.perimeter.length_m(last.ring);
    if (last.to_m < length - kSameEnd_m || last.from_m == 0.0) continue;
    for (RingSpan& first : spans) {
      if (first.ring != last.ring || first.from_m != 0.0 || !first.from_in) continue;
      last.to_m = length + first.to_m;
      first.to_m = first.from_m;  // emptied
    }
  }
  std::erase_if(spans, [](const RingSpan& s) { return !(s.from_m < s.to_m); });
}

/// Of the wall that the outlet above that hole stands at; nothing where they are not known.
std::optional<double> eavesAtOutlet(const Site& site, const PlacedRun& run, perimeter::Place hole) {
  return eavesOf(site, site.perimeter.edgeAt(
                           site.perimeter.wrapped({hole.ring, hole.chainage_m + run.shift_m})));
}

/// Of the riser, what goes sideways and out.
double levelPipe_m(const Site& site, const PlacedRun& run, perimeter::Place hole) {
  const EavesPassed eaves = eavesPassed(site, run, hole);
  const double out = eaves.isAround() ? *eaves.out_m + site.pipe_od_m : 0.0;
  return std::abs(run.shift_m) + out;
}

/// How far over the eaves the outlet of a fan in the roof space ends: so much of the pipe stands in
/// the roof or above it. Of any other fan, and where no eaves are known, 0.
double overEaves_m(const Site& site, const PlacedRun& run, perimeter::Place hole) {
  if (run.fan_place != plan::FanPlace::roof_space) return 0.0;
  const auto eaves = eavesAtOutlet(site, run, hole);
  return eaves ? std::max(0.0, run.outlet_m - *eaves) : 0.0;
}

double lowestGround(const Site& site) {
  double lowest = kFoot_m;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : site.perimeter.edges(ring)) {
      for (const auto& point : groundAlong(site, edge).points) {
        lowest = std::min(lowest, point.level_m);
      }
    }
  }
  return lowest;
}

}  // namespace

std::optional<PlacedRun> placedRun(const Site& site, const plan::Sump& sump) {
  if (sump.kind != plan::SumpKind::cored || !sump.discharge) return std::nullopt;
  if (sump.discharge->ring != sump.ring || !site.perimeter.contains({sump.ring, sump.chainage_m})) {
    return std::nullopt;
  }
  PlacedRun run;
  run.sump = sump.id;
  run.outlet_m = sump.discharge->height_m;
  run.shift_m =
      shorterWay(sump.chainage_m, sump.discharge->chainage_m, site.perimeter.length_m(sump.ring));
  run.fan_place = sump.fan_place;
  run.fan_assumed = !sump.fan_height_m;
  run.fan_m = fanHeight(site, sump, run);
  run.foot_m = lowestGround(site);
  return run;
}

std::optional<PlacedRun> placedRun(const Site& site, const std::string& sump) {
  for (const plan::Sump& s : site.job.design.sumps) {
    if (!sump.empty() && s.id != sump) continue;
    if (auto run = placedRun(site, s)) return run;
  }
  return std::nullopt;
}

plan::OutletMode outletModeOf(const Site& site, const plan::Sump& sump) {
  const auto run = placedRun(site, sump);
  if (!run) return site.outlet;
  const perimeter::Place outlet =
      site.perimeter.wrapped({sump.ring, sump.chainage_m + run->shift_m});
  return run->outlet_m - groundAt(site, outlet) > kOverHeads_m ? plan::OutletMode::riser
                                                               : plan::OutletMode::low;
}

std::vector<PlacedPart> placedParts(const rules::Rule& rule, const Site& site) {
  SUMPWRIGHT_REQUIRE(site.run.has_value());
  const PlacedRun& run = *site.run;
  const double half = rule.from == rules::MeasuredFrom::centre ? 0.0 : site.pipe_od_m / 2.0;
  std::vector<PlacedPart> parts;
  for (const Part part : rule.applies_to) {
    if (part == Part::outlet) {
      parts.push_back({part, run.shift_m, run.shift_m, {run.outlet_m, run.outlet_m, half}});
    } else if (part == Part::fan && run.fan_place != plan::FanPlace::roof_space) {
      const double shift = fanShift_m(run);
      parts.push_back({part, shift, shift, {run.fan_m, run.fan_m, half}});
    } else if (part == Part::riser) {
      addRiser(run, half, parts);
    }
  }
  return parts;
}

double fanShift_m(const PlacedRun& run) {
  return run.fan_place == plan::FanPlace::outside_low ? 0.0 : run.shift_m;
}

std::vector<RingSpan> broughtBack(const Site& site, std::vector<RingSpan> spans, double shift_m,
                                  double to_shift_m) {
  if (shift_m == 0.0 && to_shift_m == 0.0) return spans;
  joinOverStart(site, spans);
  std::vector<RingSpan> back;
  for (const RingSpan& s : spans) {
    if (s.from_m == 0.0 && s.to_m >= site.perimeter.length_m(s.ring) - kSameEnd_m) {
      back.push_back(rules::wholeRing(site.perimeter, s.ring));
      continue;
    }
    const rules::RingRange moved{s.ring, s.from_m - to_shift_m, s.to_m - shift_m};
    for (const RingSpan& w : rules::wrapRange(site.perimeter, moved, s.from_in)) back.push_back(w);
  }
  return back;
}

std::vector<RingSpan> takenUp(const Site& site, const PlacedPart& part, perimeter::Place hole) {
  const double s = site.perimeter.wrapped(hole).chainage_m;
  return rules::wrapRange(site.perimeter, {hole.ring, s + part.shift_m, s + part.to_shift_m}, true);
}

perimeter::Place placeOfPart(const Site& site, perimeter::Place hole, const PlacedPart& part) {
  if (part.shift_m == 0.0) return site.perimeter.wrapped(hole);
  return site.perimeter.wrapped({hole.ring, hole.chainage_m + part.shift_m});
}

EavesPassed eavesPassed(const Site& site, const PlacedRun& run, perimeter::Place hole) {
  const auto eaves = eavesAtOutlet(site, run, hole);
  const bool roof = run.fan_place == plan::FanPlace::roof_space;
  return {!roof && eaves && run.outlet_m >= *eaves, site.job.house.eaves_overhang_m};
}

int bendsOutside(const Site& site, const PlacedRun& run, perimeter::Place hole) {
  const double shift_m = run.shift_m;
  const int round_eaves = eavesPassed(site, run, hole).isAround() ? 2 : 0;
  if (shift_m == 0.0) return 1 + round_eaves;
  const double length = site.perimeter.length_m(hole.ring);
  const double s = site.perimeter.wrapped(hole).chainage_m;
  const double from = std::min(s, s + shift_m);
  const double to = std::max(s, s + shift_m);
  int corners = 0;
  for (const perimeter::Edge& e : site.perimeter.edges(hole.ring)) {
    for (const double round : {-length, 0.0, length}) {
      if (e.start_m + round > from && e.start_m + round < to) ++corners;
    }
  }
  return 3 + corners + round_eaves;
}

double exposedLength_m(const Site& site, const PlacedRun& run, perimeter::Place hole) {
  const double top = run.outlet_m - overEaves_m(site, run, hole);
  return std::max(0.0, top - groundAt(site, hole)) + levelPipe_m(site, run, hole);
}

std::optional<CountedPipe> countedPipe(const Site& site, const plan::Sump& sump,
                                       perimeter::Place hole) {
  const auto run = placedRun(site, sump);
  if (!run) return std::nullopt;
  const DrillSection section = drillSection(site, hole, wishOf(site.job, sump));
  const double fall = section.bore ? section.bore->fall : 0.0;
  const double entry = section.bore ? section.bore->entry_m : groundAt(site, hole);
  const double through = (section.up.wall_m + kPastInner_m) * std::sqrt(1.0 + fall * fall);
  const int bends = bendsOutside(site, *run, hole);
  CountedPipe pipe;
  pipe.before_m = through + std::max(0.0, run->fan_m - entry);
  pipe.after_m = std::max(0.0, run->outlet_m - std::max(run->fan_m, entry));
  const bool low = run->fan_place == plan::FanPlace::outside_low;
  (low ? pipe.after_m : pipe.before_m) += levelPipe_m(site, *run, hole);
  pipe.bends_before = low ? 1 : bends;
  pipe.bends_after = bends - pipe.bends_before;
  if (run->fan_place == plan::FanPlace::roof_space) {
    pipe.before_m += kIntoRoof_m;
    pipe.bends_before += kRoofBends;
    pipe.in_roof_m = kIntoRoof_m + overEaves_m(site, *run, hole);
  }
  pipe.exposed_m = exposedLength_m(site, *run, hole);
  return pipe;
}

bool endsBelowEaves(const Site& site, const perimeter::Edge& edge) {
  SUMPWRIGHT_REQUIRE(site.run.has_value());
  const auto eaves = eavesOf(site, edge);
  return !eaves || site.run->outlet_m < *eaves;
}

}  // namespace sumpwright::build
