#include <algorithm>
#include <unordered_set>

#include "geometry/Shapes.h"
#include "plan/Checks.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

/// Sizes the job states. What it leaves to its rule sheet is checked where that is known.
void checkSizes(const Design& design, ProblemList& problems) {
  const auto& core = design.core_mm;
  const auto& pipe = design.pipe_od_mm;
  if (core && (*core < kSmallestCore_mm || *core > kLargestCore_mm)) {
    problems.add("plan.core.size", "/design/core_mm",
                 {base::millimetres("core", *core), base::millimetres("least", kSmallestCore_mm),
                  base::millimetres("most", kLargestCore_mm)});
  }
  if (design.barrel_length_m && *design.barrel_length_m <= 0.0) {
    problems.add("plan.barrel.length", "/design/barrel_length_m",
                 {base::metres("barrel", *design.barrel_length_m)});
  }
  if (pipe && *pipe <= 0.0) {
    problems.add("plan.pipe.none", "/design/pipe_od_mm", {base::millimetres("pipe", *pipe)});
  } else if (pipe && core && *pipe > *core) {
    problems.add("plan.pipe.size", "/design/pipe_od_mm",
                 {base::millimetres("pipe", *pipe), base::millimetres("core", *core)});
  }
}

bool inHouse(const Plan& plan, const CheckedRings& rings, geometry::Point p) {
  return geometry::contains(plan.rings[0].corners, p) &&
         std::none_of(rings.courtyards.begin(), rings.courtyards.end(),
                      [&](std::size_t c) { return geometry::contains(plan.rings[c].corners, p); });
}

/// A standby sump's cap may stand outside; a sump dug inside may not.
void checkSump(const Plan& plan, const CheckedRings& rings, const Sump& sump,
               const std::string& pointer, ProblemList& problems) {
  const auto thing = base::text("sump", sump.id);
  if (sump.kind == SumpKind::cored) {
    if (onRing(plan, sump.ring, sump.chainage_m)) return;
    problems.add(
        "plan.sump.off-ring", at(pointer, "chainage_m"),
        {thing, base::count("ring", sump.ring), base::metres("chainage", sump.chainage_m)});
  } else if (!sump.at_m) {
    problems.add("plan.sump.no-point", at(pointer, "at_m"), {thing});
  } else if (sump.kind == SumpKind::internal && rings.outer_sound &&
             !inHouse(plan, rings, *sump.at_m)) {
    problems.add("plan.sump.outside", at(pointer, "at_m"), {thing});
  }
}

void checkWaiver(const Plan& plan, const Waiver& waiver,
                 const std::unordered_set<std::string>& sumps, const std::string& pointer,
                 ProblemList& problems) {
  const auto thing = base::text("waiver", waiver.id);
  if (!sumps.contains(waiver.sump)) {
    problems.add("plan.waiver.no-sump", at(pointer, "sump"),
                 {thing, base::text("sump", waiver.sump)});
  }
  if (waiver.rule.empty()) problems.add("plan.waiver.no-rule", at(pointer, "rule"), {thing});
  if (!onRing(plan, waiver.ring, waiver.chainage_m)) {
    problems.add(
        "plan.waiver.off-ring", at(pointer, "chainage_m"),
        {thing, base::count("ring", waiver.ring), base::metres("chainage", waiver.chainage_m)});
  }
  if (waiver.reason.empty()) problems.add("plan.waiver.no-reason", at(pointer, "reason"), {thing});
  if (waiver.name.empty()) problems.add("plan.waiver.no-name", at(pointer, "name"), {thing});
  if (waiver.date.empty()) problems.add("plan.waiver.no-date", at(pointer, "date"), {thing});
  checkDate(waiver.date, at(pointer, "date"), problems);
}

}  // namespace

void checkDesign(const Job& job, const CheckedRings& rings, ProblemList& problems) {
  const Design& design = job.design;
  checkSizes(design, problems);
  std::unordered_set<std::string> sumps;
  for (std::size_t i = 0; i < design.sumps.size(); ++i) {
    sumps.insert(design.sumps[i].id);
    checkSump(job.plan, rings, design.sumps[i], at("/design/sumps", i), problems);
    if (design.sumps[i].kind == SumpKind::cored) {
      checkBarrel(job, design.sumps[i], at("/design/sumps", i), problems);
    }
  }
  for (std::size_t i = 0; i < design.waivers.size(); ++i) {
    checkWaiver(job.plan, design.waivers[i], sumps, at("/design/waivers", i), problems);
  }
}

}  // namespace sumpwright::plan
