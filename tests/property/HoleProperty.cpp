// What the drill section says of a place beside what the verdict says: nobody reads "Clear" of a
// place where nothing is cored, nor of one accepted that the section still stops.

#include "build/DrillSection.h"
#include "property/Case.h"

namespace sumpwright::property {

namespace {

/// Floors and grounds at any depth, all kinds of foundation, and sheets that leave rules out, but
/// not the one about the hole.
Case deepCase(std::uint64_t seed) {
  Case c = makeCase(seed);
  support::Random random(seed + 7);
  for (plan::FloorZone& zone : c.job.plan.floor_zones) {
    if (random.chance(0.5)) zone.level_m = random.uniform(-2.0, 0.2);
  }
  if (random.chance(0.5)) c.job.house.ground_level_m = random.uniform(-0.6, 1.4);
  for (plan::Ring& ring : c.job.plan.rings) {
    for (plan::Wall& wall : ring.walls) {
      if (random.chance(0.3)) wall.ground_level_m = random.uniform(-0.6, 1.4);
      if (random.chance(0.3)) wall.foundation = plan::Foundation::raft_edge;
    }
  }
  for (rules::Rule& rule : c.sheet.rules) {
    const bool says = rule.kind == rules::RuleKind::floor_behind ||
                      rule.attribute == rules::WallAttribute::foundation || rule.id == "party-wall";
    if (says && random.chance(0.5)) rule.enabled = false;
    if (rule.kind != rules::RuleKind::section) continue;
    rule.enabled = true;
    rule.severity = rules::Severity::binding;
  }
  return c;
}

perimeter::Place randomPlace(const siting::Study& study, support::Random& random) {
  const int ring = random.between(0, study.perimeter().ringCount() - 1);
  return {ring, random.uniform(0.0, study.perimeter().length_m(ring))};
}

TEST(HoleProperty, NothingIsClearWhereNothingIsCored) {
  int houses = 0;
  int stopped = 0;
  int deep = 0;
  support::forEachSeed(60, [&](std::uint64_t seed) {
    ++houses;
    const Case c = deepCase(seed);
    const auto made = study(c);
    ASSERT_TRUE(made);
    support::Random random(seed + 1);
    for (int i = 0; i < 40; ++i) {
      const perimeter::Place place = randomPlace(*made, random);
      const build::DrillSection section = build::drillSection(made->site(), place, {});
      if (!section.stopped) continue;
      ++stopped;
      if (section.verdict.id == "section.none.deep") ++deep;
      EXPECT_GE(made->stateAt(place), rules::State::not_proven)
          << section.verdict.id << " at " << place.ring << ':' << place.chainage_m;
    }
    for (const siting::BestPlace& best : made->best()) {
      EXPECT_FALSE(build::drillSection(made->site(), best.place, {}).stopped);
    }
    if (testing::Test::HasFailure()) {
      ADD_FAILURE() << "job: " << support::writeForReproduction(c.job, seed);
    }
  });
  EXPECT_GT(stopped, 3 * houses);  // enough of them, however many are tried
  EXPECT_GT(3 * deep, houses);
}

/// The same house with a waiver for all that is refused at its sump and may be waived.
plan::Job allAccepted(const siting::Study& study, const plan::Sump& sump) {
  plan::Job job = study.job();
  job.design.waivers.clear();
  for (const rules::Finding& f : study.assess({sump.ring, sump.chainage_m}, sump.id).findings) {
    if (!f.waivable.allowed) continue;
    job.design.waivers.push_back({"w" + std::to_string(job.design.waivers.size()), sump.id, f.rule,
                                  f.thing, sump.ring, sump.chainage_m, f.waivable.evidence, "seen",
                                  "A. Tester (invented)", "2026-03-02", false});
  }
  return job;
}

TEST(HoleProperty, WhatIsAcceptedIsNotStoppedByItsSection) {
  int houses = 0;
  int accepted = 0;
  int on_waiver = 0;
  support::forEachSeed(120, [&](std::uint64_t seed) {
    ++houses;
    Case c = deepCase(seed);
    c.sheet.gates.clear();
    c.job.design.outlet = plan::OutletMode::low;
    for (rules::Rule& rule : c.sheet.rules) rule.unknown_gates = false;
    c.job.design.sumps.clear();
    const auto bare = study(c);
    ASSERT_TRUE(bare);
    support::Random random(seed + 1);
    for (int i = 0; i < 6; ++i) {
      const perimeter::Place place = randomPlace(*bare, random);
      plan::Sump sump;
      sump.id = "s1";
      sump.ring = place.ring;
      sump.chainage_m = place.chainage_m;
      c.job.design.sumps = {sump};
      const auto refused = study(c);
      ASSERT_TRUE(refused);
      const auto made = study({seed, allAccepted(*refused, sump), c.sheet});
      ASSERT_TRUE(made);
      if (!made->assess(place, "s1").waived) continue;
      ++accepted;
      const build::DrillSection section =
          build::drillSection(made->site(), place, build::wishOf(made->job(), sump));
      EXPECT_FALSE(section.stopped) << section.verdict.id;
      if (section.on_waiver) ++on_waiver;
    }
  });
  EXPECT_GT(6 * accepted, houses);  // enough of them, however many are tried
  EXPECT_GT(24 * on_waiver, houses);
}

}  // namespace

}  // namespace sumpwright::property
