// The cable along the wall, against a route at every place. Houses are invented.

#include <gtest/gtest.h>

#include <cmath>

#include "build/CableAlong.h"
#include "core/build/CableLength.h"
#include "core/build/Sites.h"
#include "plan/RoomEdits.h"
#include "support/Seed.h"

namespace sumpwright::build {

namespace {

using support::PlanBuilder;

plan::Job withSocket() {
  return PlanBuilder::lShape().supply("s", plan::SupplyKind::socket, {3.0, 0.5});
}

TEST(CableAlong, ReadsBetweenRoutesHalfAMetreApart) {
  const rules::Site site = siteOf(withSocket());
  const CableAlong along = CableAlong::of(site);
  support::Random random(support::baseSeed());
  for (int k = 0; k < 40; ++k) {
    CableAsk ask;
    ask.fan = {0, random.uniform(0.0, site.perimeter.length_m(0))};
    const auto there = cableLength_m(site, ask);
    const auto read = along.length_m(ask.fan);
    ASSERT_EQ(there.has_value(), read.has_value()) << ask.fan.chainage_m;
    if (there) {
      EXPECT_NEAR(*read, *there, 0.5 * kCableStep_m) << ask.fan.chainage_m;
    }
  }
}

TEST(CableAlong, EveryFanInOneNetworkIsAsFarAsAlone) {
  support::forEachSeed(40, [](std::uint64_t seed) {
    support::Random random(seed);
    plan::Job job = support::randomJob(random);
    if (const auto roomed = plan::roomsFromWalls(job)) job = *roomed;
    const rules::Site site = siteOf(job);
    CableAsk ask;
    ask.fan_place = random.oneOf<plan::FanPlace>(
        {plan::FanPlace::outside_low, plan::FanPlace::outside_high, plan::FanPlace::roof_space});
    ask.fan_height_m = random.uniform(0.4, 6.0);
    ask.figures.per_drilling_m = std::sqrt(0.2);  // no two ways cost the same
    if (!job.plan.supplies.empty() && random.chance(0.3)) ask.wish = job.plan.supplies.back().id;
    const double shift = random.chance(0.5) ? 0.0 : random.uniform(-3.0, 3.0);
    const CableAlong along = CableAlong::of(site, ask, shift);
    for (std::size_t k = 0; k < along.nodes().size(); k += 3) {
      const CableAlong::Node& node = along.nodes()[k];
      ask.fan = site.perimeter.wrapped({node.ring, node.chainage_m + shift});
      const auto there = cableLength_m(site, ask);
      ASSERT_EQ(there.has_value(), node.length_m.has_value()) << node.chainage_m;
      if (!there) continue;
      EXPECT_NEAR(*there, *node.length_m, 2e-5) << node.chainage_m;
    }
  });
}

TEST(CableAlong, TheRuleObjectsWhereTheCableIsTooLong) {
  const rules::Site site = siteOf(withSocket());
  rules::Site judged = site;
  std::vector<rules::FindingSpan> out;
  for (rules::Rule& rule : judged.sheet.rules) {
    if (rule.kind != rules::RuleKind::supply) continue;
    rule.enabled = true;
    rule.most_m = rules::Figure{8.0, {base::Mark::own, "test"}};
    kSupply.spans(rule, judged, out);
  }
  ASSERT_FALSE(out.empty());
  const CableAlong along = CableAlong::of(site);
  for (double s = 0.033; s < site.perimeter.length_m(0); s += 0.1) {
    const double length = *along.length_m({0, s});
    if (std::abs(length - 8.0) < 1e-3) continue;
    bool held = false;
    for (const rules::FindingSpan& span : out) held = held || (span.from_m < s && s < span.to_m);
    EXPECT_EQ(held, length > 8.0) << s;
  }
  EXPECT_EQ(out[0].finding.reason.id, "rule.supply-far");
  EXPECT_EQ(out[0].finding.weight, rules::Weight::advisory);
}

rules::Site judgedSite(const plan::Job& job, double most_m, rules::Severity severity,
                       bool gates = false) {
  rules::Site site = siteOf(job);
  for (rules::Rule& rule : site.sheet.rules) {
    if (rule.kind != rules::RuleKind::supply) continue;
    rule.enabled = true;
    rule.severity = severity;
    rule.unknown_gates = gates;
    rule.most_m = rules::Figure{most_m, {base::Mark::own, "test"}};
  }
  return site;
}

std::vector<rules::FindingSpan> cableFindings(const rules::Site& site) {
  std::vector<rules::FindingSpan> out;
  kSupply.spans(*site.sheet.find("cable"), site, out);
  return out;
}

TEST(CableAlong, TheRuleIsNotProvenWithoutASupplyAndObjectsWhereNoneCanBeReached) {
  using rules::Severity;
  const plan::Job none = PlanBuilder::rectangle();
  const auto gated = cableFindings(judgedSite(none, 3.0, Severity::binding));
  ASSERT_EQ(gated.size(), 1U);
  EXPECT_EQ(gated[0].finding.weight, rules::Weight::unknown);
  EXPECT_EQ(gated[0].finding.reason.id, "rule.supply-none");
  EXPECT_TRUE(cableFindings(judgedSite(none, 3.0, Severity::advisory)).empty());
  EXPECT_EQ(cableFindings(judgedSite(none, 3.0, Severity::advisory, true)).size(), 1U);

  const plan::Job wet = PlanBuilder::rectangle()
                            .noRooms()
                            .room("bath", plan::RoomUse::bathroom,
                                  {{0.35, 0.35}, {9.65, 0.35}, {9.65, 7.65}, {0.35, 7.65}})
                            .supply("s", plan::SupplyKind::socket, {3.0, 0.5});
  const auto refused = cableFindings(judgedSite(wet, 300.0, Severity::binding));
  ASSERT_EQ(refused.size(), 1U);
  EXPECT_EQ(refused[0].finding.weight, rules::Weight::binding);
  EXPECT_EQ(refused[0].finding.reason.id, "rule.supply-no-way");
  EXPECT_EQ(refused[0].from_m, 0.0);
  EXPECT_TRUE(refused[0].from_in);
  EXPECT_EQ(refused[0].to_m, siteOf(wet).perimeter.length_m(0));
}

/// By the cable that the score and the papers tell of: the sump's own fan, and its supply.
TEST(CableAlong, TheRuleJudgesTheSumpsOwnCable) {
  plan::Job job = PlanBuilder::rectangle()
                      .supply("near", plan::SupplyKind::socket, {3.0, 0.5})
                      .supply("far", plan::SupplyKind::socket, {9.5, 7.5})
                      .sump("s", 0, 3.0);
  const auto refused = [](const plan::Job& of) {
    const rules::Site site = judgedSite(of, 6.0, rules::Severity::binding);
    const auto found = cableFindings(site);
    return std::any_of(found.begin(), found.end(), [](const rules::FindingSpan& span) {
      return span.from_m < 3.0 && 3.0 < span.to_m;
    });
  };
  EXPECT_FALSE(refused(job));
  plan::Job wished = job;
  wished.design.sumps[0].supply = "far";
  EXPECT_TRUE(refused(wished));
  plan::Job high = job;
  high.design.sumps[0].fan_place = plan::FanPlace::outside_high;
  high.design.sumps[0].fan_height_m = 6.0;
  EXPECT_TRUE(refused(high));
}

TEST(CableAlong, WithoutASupplyThereIsNone) {
  const rules::Site site = siteOf(PlanBuilder::rectangle());
  EXPECT_FALSE(CableAlong::of(site).length_m({0, 5.0}));
}

}  // namespace

}  // namespace sumpwright::build
