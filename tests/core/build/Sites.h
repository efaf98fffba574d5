#pragma once
// Sites and build-ups for tests of the section. Invented.

#include "build/DrillSection.h"
#include "support/PlanBuilder.h"
#include "support/RandomPlan.h"

namespace sumpwright::build {

inline rules::Site siteOf(const plan::Job& job) {
  const rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  return rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet, job.design.outlet,
                         job.design.core_mm.value_or(sheet.default_core_mm.value) / 1000.0);
}

/// Floor 150 mm above the ground, 65 screed, 100 insulation, 150 slab, 150 hardcore, wall of
/// 350 mm, core 127 mm; everything known.
inline BuildUp knownBuildUp(double footing_low = -0.75, double footing_high = -0.75) {
  BuildUp up;
  up.wall_m = 0.35;
  up.leaves = {{plan::LayerKind::block, 0.0, 0.1},
               {plan::LayerKind::cavity, 0.1, 0.25},
               {plan::LayerKind::block, 0.25, 0.35}};
  up.screed_m = 0.065;
  up.insulation_m = 0.100;
  up.slab_m = 0.150;
  up.hardcore_m = 0.150;
  up.fill = plan::Fill::clean_stone;
  up.ground_m = -0.15;
  up.dpc_m = 0.0;
  up.barrier = plan::Barrier::none;
  up.footing_low_m = footing_low;
  up.footing_high_m = footing_high;
  up.footing_known = true;
  up.core_m = 0.127;
  up.pipe_od_m = 0.110;
  up.barrel_m = 0.40;
  return up;
}

inline const Margin* marginOf(const DrillSection& section, LimitKind kind) {
  for (const Margin& margin : section.margins) {
    if (margin.kind == kind) return &margin;
  }
  return nullptr;
}

}  // namespace sumpwright::build
