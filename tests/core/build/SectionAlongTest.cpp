// The section along the wall against a section at every place. Houses are invented.

#include <gtest/gtest.h>

#include <cmath>

#include "build/SectionAlong.h"
#include "core/build/Sites.h"
#include "support/Seed.h"

namespace sumpwright::build {

namespace {

using support::PlanBuilder;

/// All that decides is known; ground 150 mm below the floor, footing top at -0.75.
plan::Job measuredHouse() {
  return PlanBuilder::rectangle(12.0, 8.0).with([](plan::Job& j) {
    j.house.screed_m = 0.065;
    j.house.insulation_m = 0.1;
    j.house.slab_m = 0.15;
    j.house.ground_level_m = -0.15;
    j.house.dpc_height_m = 0.0;
    j.house.barrier = plan::Barrier::none;
    j.house.footing_top_low_m = -0.75;
    j.house.footing_top_high_m = -0.75;
    j.house.hardcore_m = 0.15;
  });
}

plan::Job sloping(double from_m, double to_m) {
  plan::Job job = measuredHouse();
  job.plan.rings[0].walls[0].ground_points = {{1.0, from_m, plan::GroundSurface::soil},
                                              {11.0, to_m, plan::GroundSurface::soil}};
  return job;
}

void expectAsEachPlace(const plan::Job& job, support::Random& random,
                       const std::optional<rules::PlacedHole>& hole = std::nullopt) {
  rules::Site site = siteOf(job);
  site.hole = hole;
  SectionWish wish;
  if (hole) wish.bore.entry_m = hole->entry_m;
  if (hole && hole->fall_deg) wish.bore.fall = fallOfDegrees(*hole->fall_deg);
  const SectionAlong along = SectionAlong::of(site);
  for (int k = 0; k < 60; ++k) {
    const perimeter::Place place{0, random.uniform(0.0, site.perimeter.length_m(0))};
    const DrillSection there = drillSection(site, place, wish);
    const SectionPiece& piece = along.at(place);
    SCOPED_TRACE(place.chainage_m);
    EXPECT_LE(piece.from_m, place.chainage_m);
    EXPECT_LE(place.chainage_m, piece.to_m);
    const bool at_end =
        std::min(place.chainage_m - piece.from_m, piece.to_m - place.chainage_m) < 1e-5;
    if (at_end) continue;
    EXPECT_EQ(piece.fit, there.fit);
    EXPECT_EQ(piece.stated_fails.has_value(),
              there.fit == Fit::never && there.verdict.id.starts_with("section.verdict.wish-"));
    const SectionNode node = along.read(place);
    EXPECT_NEAR(node.dig_m, std::max(0.0, there.dig_m), 0.04);  // bends within a step
    if (there.fit == Fit::fits_if_footing) {
      EXPECT_NEAR(*node.footing_top_m, *there.footing_top_m, 0.02);
    }
  }
}

TEST(SectionAlong, SaysWhatASectionThereSays) {
  support::Random random(support::baseSeed());
  expectAsEachPlace(measuredHouse(), random);
  expectAsEachPlace(PlanBuilder::rectangle(), random);
  for (int k = 0; k < 12; ++k) {
    expectAsEachPlace(sloping(random.uniform(-1.6, 0.4), random.uniform(-1.6, 0.4)), random);
  }
}

TEST(SectionAlong, TilesTheWallAndFollowsTheFloor) {
  const rules::Site site = siteOf(PlanBuilder::rectangle().noZones().zone(
      "timber", plan::FloorKind::suspended_timber, {{0, 0}, {5, 0}, {5, 8}, {0, 8}}));
  const SectionAlong along = SectionAlong::of(site);
  double at = 0.0;
  for (const SectionPiece& piece : along.pieces()) {
    EXPECT_NEAR(piece.from_m, at, 1e-9);
    at = piece.to_m;
  }
  EXPECT_NEAR(at, 36.0, 1e-9);
  EXPECT_EQ(along.at({0, 2.0}).fit, Fit::not_cored);
  EXPECT_NE(along.at({0, 7.0}).fit, Fit::not_cored);
}

std::vector<rules::FindingSpan> judgedHole(const plan::Job& job, bool gates = false) {
  rules::Site site = siteOf(job);
  for (rules::Rule& rule : site.sheet.rules) {
    if (rule.kind == rules::RuleKind::section) rule.unknown_gates = gates;
  }
  std::vector<rules::FindingSpan> out;
  kDrillSection.spans(*site.sheet.find("hole"), site, out);
  return out;
}

std::optional<rules::Finding> findingAt(const std::vector<rules::FindingSpan>& spans, double s) {
  for (const rules::FindingSpan& span : spans) {
    if (span.from_m <= s && s < span.to_m) return span.finding;
  }
  return std::nullopt;
}

std::optional<rules::Finding> judgedAt(const plan::Job& job, double s,
                                       const std::vector<std::string>& off = {}) {
  rules::Site site = siteOf(job);
  for (rules::Rule& rule : site.sheet.rules) {
    if (std::find(off.begin(), off.end(), rule.id) != off.end()) rule.enabled = false;
  }
  std::vector<rules::FindingSpan> out;
  kDrillSection.spans(*site.sheet.find("hole"), site, out);
  return findingAt(out, s);
}

TEST(SectionAlong, RefusesAFloorTooDeepWhichNoOtherRuleLooksAt) {
  plan::Job job = measuredHouse();
  job.plan.floor_zones.at(0).level_m = -1.5;
  const auto deep = judgedAt(job, 6.0);
  ASSERT_TRUE(deep);
  EXPECT_EQ(deep->reason.id, "rule.no-core.deep");
  EXPECT_EQ(deep->weight, rules::Weight::binding);
  EXPECT_TRUE(deep->waivable.allowed);
  job.house.ground_level_m.reset();  // now a guess decides
  job.plan.rings[0].walls[0].ground_level_m.reset();
  const auto assumed = judgedAt(job, 6.0);
  ASSERT_TRUE(assumed);
  EXPECT_EQ(assumed->reason.id, "rule.no-core.deep-assumed");
  EXPECT_EQ(assumed->weight, rules::Weight::unknown);
  EXPECT_FALSE(assumed->waivable.allowed);
}

/// What keeps all holes away is said by the rule that is there for it, or else by this one.
TEST(SectionAlong, SaysItselfWhatASheetWithoutTheOtherRulesLeavesOut) {
  plan::Job raft = measuredHouse();
  raft.plan.rings[0].walls[0].foundation = plan::Foundation::raft_edge;
  EXPECT_FALSE(judgedAt(raft, 6.0));
  const auto edge = judgedAt(raft, 6.0, {"foundation"});
  ASSERT_TRUE(edge);
  EXPECT_EQ(edge->reason.id, "rule.no-core.foundation");
  EXPECT_TRUE(edge->waivable.allowed);
  plan::Job timber = measuredHouse();
  timber.plan.floor_zones.at(0).kind = plan::FloorKind::suspended_timber;
  timber.plan.floor_zones.at(0).oversite = plan::Oversite::open;
  EXPECT_FALSE(judgedAt(timber, 6.0));
  const auto floor = judgedAt(timber, 6.0, {"floor-behind"});
  ASSERT_TRUE(floor);
  EXPECT_EQ(floor->reason.id, "rule.no-core.timber");
  EXPECT_EQ(floor->weight, rules::Weight::binding);
  EXPECT_FALSE(floor->waivable.allowed) << "no note puts fill under it";
  timber.plan.floor_zones.at(0).oversite = plan::Oversite::unknown;
  EXPECT_EQ(judgedAt(timber, 6.0, {"floor-behind"})->weight, rules::Weight::unknown);
  plan::Job party = measuredHouse();
  party.plan.rings[0].walls[0].kind = plan::WallKind::party;
  EXPECT_FALSE(judgedAt(party, 6.0));
  EXPECT_EQ(judgedAt(party, 6.0, {"party-wall"})->reason.id, "rule.no-core.party");
}

/// An accepted foundation leaves the hole to be judged: so it is judged from the start.
TEST(SectionAlong, JudgesTheHoleBehindAFoundationThatAnotherRuleRefuses) {
  plan::Job raft = measuredHouse();
  raft.plan.rings[0].walls[0].foundation = plan::Foundation::raft_edge;
  raft.house.footing_top_low_m = raft.house.footing_top_high_m = -0.30;
  const auto never = judgedAt(raft, 6.0);
  ASSERT_TRUE(never);
  EXPECT_EQ(never->reason.id, "rule.section-never");
  EXPECT_EQ(SectionAlong::of(siteOf(raft)).at({0, 6.0}).fit, Fit::not_cored);
}

TEST(SectionAlong, ObjectsOnlyWhereNoHoleFitsAndRefusesOnlyOnWhatIsKnown) {
  EXPECT_TRUE(judgedHole(measuredHouse()).empty());
  plan::Job shallow = measuredHouse();
  shallow.house.footing_top_low_m = shallow.house.footing_top_high_m = -0.30;
  const auto refused = findingAt(judgedHole(shallow), 6.0);
  ASSERT_TRUE(refused);
  EXPECT_EQ(refused->weight, rules::Weight::binding);
  EXPECT_EQ(refused->reason.id, "rule.section-never");
  EXPECT_EQ(refused->thing, shallow.plan.rings[0].walls[0].id);
  // By the corner no floor is drawn behind the wall.
  EXPECT_EQ(findingAt(judgedHole(shallow), 0.1)->weight, rules::Weight::unknown);
  shallow.house.slab_m.reset();
  const auto assumed = findingAt(judgedHole(shallow), 6.0);
  ASSERT_TRUE(assumed);
  EXPECT_EQ(assumed->weight, rules::Weight::unknown);
  EXPECT_EQ(assumed->reason.id, "rule.section-assumed");
}

/// A hole keeps the height and fall that were set for it, and is judged by them along the wall.
TEST(SectionAlong, AHoleThatWasSetIsJudgedAsItIsSet) {
  support::Random random(7);
  for (const double entry : {-0.2, -0.4, -0.5, -0.7}) {
    for (const std::optional<double> fall : {std::optional<double>(), std::optional(3.0)}) {
      SCOPED_TRACE(entry);
      expectAsEachPlace(sloping(-0.15, -0.6), random, rules::PlacedHole{"s", entry, fall});
    }
  }
  rules::Site site = siteOf(measuredHouse());
  site.hole = rules::PlacedHole{"s", -0.3, 3.0};
  const SectionAlong along = SectionAlong::of(site);
  EXPECT_EQ(along.at({0, 3.0}).fit, Fit::never);
  EXPECT_TRUE(along.at({0, 3.0}).stated_fails);
  std::vector<rules::FindingSpan> out;
  kDrillSection.spans(*site.sheet.find("hole"), site, out);
  const auto found = findingAt(out, 3.0);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->reason.id, "rule.section-stated");
  EXPECT_EQ(found->weight, rules::Weight::binding);
}

TEST(SectionAlong, RubbleIsAdvisedAgainstThoughAHoleFits) {
  plan::Job job = measuredHouse();
  EXPECT_FALSE(findingAt(judgedHole(job), 6.0));
  job.plan.rings[0].walls[0].foundation = plan::Foundation::rubble;
  const auto advised = findingAt(judgedHole(job), 6.0);
  ASSERT_TRUE(advised);
  EXPECT_EQ(advised->weight, rules::Weight::advisory);
  EXPECT_EQ(advised->reason.id, "rule.section-rubble");
  const DrillSection section = drillSection(siteOf(job), {0, 6.0}, {});
  EXPECT_TRUE(std::any_of(section.notes.begin(), section.notes.end(),
                          [](const base::Message& m) { return m.id == "section.note.rubble"; }));
}

TEST(SectionAlong, AFootingTopNobodyKnowsGatesOnlyWhereTheSheetSaysSo) {
  plan::Job job = measuredHouse();
  job.house.footing_top_low_m = -0.75;
  job.house.footing_top_high_m = -0.35;
  EXPECT_TRUE(judgedHole(job).empty());
  const auto gated = judgedHole(job, true);
  ASSERT_FALSE(gated.empty());
  EXPECT_EQ(gated[0].finding.weight, rules::Weight::unknown);
  EXPECT_EQ(gated[0].finding.reason.id, "rule.section-footing");
}

}  // namespace

}  // namespace sumpwright::build
