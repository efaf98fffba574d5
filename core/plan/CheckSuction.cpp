// What is asked of suction, what the ground is taken to be, and readings.

#include <algorithm>
#include <array>
#include <set>

#include "geometry/Shapes.h"
#include "plan/Checks.h"
#include "plan/PlanGeometry.h"
#include "plan/SuctionEdits.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;
using base::Pressure;

void checkAsked(const SuctionFacts& suction, ProblemList& problems) {
  const auto above = [&](const std::optional<double>& value, const char* key) {
    if (!value || *value > 0.0) return;
    problems.add("plan.suction.none", at("/suction", key),
                 {base::pressure("suction", Pressure::ofPa(*value))});
  };
  above(suction.target_pa, "target_pa");
  above(suction.limit_pa, "limit_pa");
  if (suction.target_pa && suction.limit_pa && *suction.limit_pa > *suction.target_pa) {
    problems.add("plan.suction.limit-above-target", "/suction/limit_pa",
                 {base::pressure("limit", Pressure::ofPa(*suction.limit_pa)),
                  base::pressure("target", Pressure::ofPa(*suction.target_pa))});
  }
  checkPit(suction.pit_l, "/suction/pit_l", problems);
}

struct GuessedPart {
  const char* key;
  std::optional<Spread> GroundGuess::*part;
};

constexpr auto kGuessedParts =
    std::to_array<GuessedPart>({{"permeability_m2", &GroundGuess::permeability_m2},
                                {"fill_depth_m", &GroundGuess::fill_depth_m},
                                {"leakage_m_s_pa", &GroundGuess::leakage_m_s_pa},
                                {"joint_width_mm", &GroundGuess::joint_width_mm},
                                {"footing_m2_s_pa", &GroundGuess::footing_m2_s_pa},
                                {"exposed_m_s_pa", &GroundGuess::exposed_m_s_pa}});

/// Spans are taken on a logarithmic scale, so the low end is above nothing.
void checkGuess(const GroundGuess& ground, ProblemList& problems) {
  for (const GuessedPart& guessed : kGuessedParts) {
    const auto& spread = ground.*guessed.part;
    if (!spread || (spread->low > 0.0 && spread->low <= spread->high)) continue;
    problems.add("plan.ground.spread", at("/suction/ground", guessed.key),
                 {base::number("low", spread->low), base::number("high", spread->high)});
  }
}

void checkReading(const Plan& plan, const PressureTest& test, std::size_t index,
                  const std::string& pointer, ProblemList& problems) {
  const HoleReading& reading = test.readings[index];
  const auto& holes = plan.test_holes;
  const bool known = std::any_of(holes.begin(), holes.end(),
                                 [&](const TestHole& h) { return h.id == reading.hole; });
  if (!known) {
    problems.add("plan.test.no-hole", at(pointer, "hole"), {base::text("hole", reading.hole)});
  }
  const auto first = std::find_if(test.readings.begin(), test.readings.end(),
                                  [&](const HoleReading& r) { return r.hole == reading.hole; });
  if (known && first != test.readings.begin() + static_cast<std::ptrdiff_t>(index)) {
    problems.add("plan.test.hole-twice", at(pointer, "hole"), {base::text("hole", reading.hole)});
  }
  if (reading.sd_pa && !(*reading.sd_pa > 0.0)) {
    problems.add("plan.test.sd", at(pointer, "sd_pa"),
                 {base::pressure("sd", Pressure::ofPa(*reading.sd_pa))});
  }
  // No reason to study nothing of the job: what cannot be is left out of the fit.
  const bool over_pit = test.pit_pa && *test.pit_pa > 0.0 && reading.suction_pa > *test.pit_pa;
  if (const auto why = whyNotRead(reading.hole, reading.suction_pa, test.pit_pa)) {
    problems.add(Gravity::missing, why->id, at(pointer, "suction_pa"), why->args);
  } else if (over_pit) {
    problems.add(Gravity::missing, "plan.test.over-pit", at(pointer, "suction_pa"),
                 {base::text("hole", reading.hole),
                  base::pressure("suction", Pressure::ofPa(reading.suction_pa)),
                  base::pressure("pit", Pressure::ofPa(*test.pit_pa))});
  }
}

/// A sump draws from under the house: on its outside face or, stood inside, within it.
void checkStood(const Plan& plan, const PressureTest& test, const std::string& pointer,
                ProblemList& problems) {
  if (!test.stood || plan.rings.empty()) return;
  const SumpPlace& stood = *test.stood;
  const auto thing = base::text("test", test.id);
  if (!stood.at_m) {
    if (onRing(plan, stood.ring, stood.chainage_m)) return;
    problems.add(
        "plan.test.stood-off-ring", at(pointer, "chainage_m"),
        {thing, base::count("ring", stood.ring), base::metres("chainage", stood.chainage_m)});
    return;
  }
  const bool in_courtyard =
      std::any_of(plan.rings.begin() + 1, plan.rings.end(), [&](const Ring& ring) {
        return ring.closed && geometry::contains(ring.corners, *stood.at_m);
      });
  const Ring& outer = plan.rings[0];
  if (outer.closed && (in_courtyard || !geometry::contains(outer.corners, *stood.at_m))) {
    problems.add("plan.test.stood-outside", at(pointer, "at_m"), {thing});
  }
}

void checkTest(const Job& job, const PressureTest& test, const std::string& pointer,
               ProblemList& problems) {
  const auto thing = base::text("test", test.id);
  const auto& sumps = job.design.sumps;
  checkStood(job.plan, test, at(pointer, "stood"), problems);
  if (test.sump.empty() && !test.stood) {
    problems.add(Gravity::missing, "plan.test.sump-unknown", at(pointer, "sump"), {thing});
  } else if (!test.sump.empty() && std::none_of(sumps.begin(), sumps.end(),
                                                [&](const Sump& s) { return s.id == test.sump; })) {
    problems.add("plan.test.no-sump", at(pointer, "sump"), {thing, base::text("sump", test.sump)});
  }
  checkDate(test.date, at(pointer, "date"), problems);
  if (test.flow_m3_s && !(*test.flow_m3_s > 0.0)) {
    problems.add("plan.test.flow", at(pointer, "flow_m3_s"), {thing});
  } else if (!test.flow_m3_s) {
    problems.add(Gravity::missing, "plan.test.flow-unknown", at(pointer, "flow_m3_s"), {thing});
  }
  if (test.pit_pa && !(*test.pit_pa > 0.0)) {
    problems.add("plan.test.pit", at(pointer, "pit_pa"), {thing});
  }
  if (test.readings.empty()) {
    problems.add(Gravity::missing, "plan.test.no-readings", at(pointer, "readings"), {thing});
  }
  for (std::size_t i = 0; i < test.readings.size(); ++i) {
    checkReading(job.plan, test, i, at(at(pointer, "readings"), i), problems);
  }
}

}  // namespace

void checkPit(std::optional<double> pit_l, const std::string& pointer, ProblemList& problems) {
  if (!pit_l || (*pit_l >= kSmallestPit_l && *pit_l <= kLargestPit_l)) return;
  problems.add("plan.pit.size", pointer,
               {base::number("pit", *pit_l), base::number("least", kSmallestPit_l),
                base::number("most", kLargestPit_l)});
}

void checkSuction(const Job& job, ProblemList& problems) {
  checkAsked(job.suction, problems);
  checkGuess(job.suction.ground, problems);
  for (std::size_t i = 0; i < job.suction.tests.size(); ++i) {
    checkTest(job, job.suction.tests[i], at("/suction/tests", i), problems);
  }
}

}  // namespace sumpwright::plan
