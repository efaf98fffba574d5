// What the wall is. Edge 1 of the rectangle is chainage 10..18.
#include <gtest/gtest.h>

#include "core/rules/Judged.h"

namespace sumpwright::rules {

namespace {

using plan::Foundation;
using plan::OutsideGround;
using plan::Wall;
using support::PlanBuilder;

std::vector<FindingSpan> findings(const char* rule, const std::function<void(Wall&)>& change) {
  return Judged(PlanBuilder::rectangle().wall(1, change), rule).spans;
}

void expectWall(const std::vector<FindingSpan>& found, Weight weight) {
  ASSERT_EQ(found.size(), 1U);
  expectSpan(found[0], 10.0, 18.0, true);
  EXPECT_EQ(found[0].finding.weight, weight);
  EXPECT_EQ(found[0].finding.thing, "w0.1");
}

TEST(WallRule, PartyWallRefusesAndIsNeverWaived) {
  const auto found = findings("party-wall", [](Wall& w) { w.kind = plan::WallKind::party; });
  expectWall(found, Weight::binding);
  EXPECT_FALSE(found[0].finding.waivable.allowed);
  EXPECT_FALSE(found[0].finding.least_bad);
  EXPECT_FALSE(found[0].finding.distance_m);
}

TEST(WallRule, ADwarfWallIsRefusedLikeAPartyWall) {
  const auto found = findings("party-wall", [](Wall& w) { w.kind = plan::WallKind::dwarf; });
  expectWall(found, Weight::binding);
  EXPECT_EQ(found[0].finding.reason.find("value")->value,
            (std::variant<std::string, std::int64_t, base::Quantity, base::Message>(
                base::Message("value.dwarf"))));
}

TEST(WallRule, ObjectsInTheSheetsOwnWordsWhereItHasSome) {
  const auto found = [](plan::Foundation foundation) {
    return Judged(PlanBuilder::rectangle().wall(1, [&](Wall& w) { w.foundation = foundation; }),
                  "foundation", [](Rule& rule) { rule.reason = "this firm cores no such edge"; })
        .spans;
  };
  const auto raft = found(Foundation::raft_edge);
  expectWall(raft, Weight::binding);
  EXPECT_EQ(raft[0].finding.reason, base::plainText("this firm cores no such edge"));
  // They tell of an objection, not of what nobody knows.
  const auto unknown = found(Foundation::unknown);
  expectWall(unknown, Weight::unknown);
  EXPECT_EQ(unknown[0].finding.reason.id, "rule.wall.foundation-unknown");
}

TEST(WallRule, FoundationsThatACoreWouldHarm) {
  for (const auto f : {Foundation::raft_edge, Foundation::ground_beam, Foundation::insulated_raft,
                       Foundation::retaining}) {
    const auto found = findings("foundation", [&](Wall& w) { w.foundation = f; });
    expectWall(found, Weight::binding);
    EXPECT_EQ(found[0].finding.waivable.evidence, plan::Evidence::engineers_note);
  }
  for (const auto f : {Foundation::strip, Foundation::rubble}) {
    EXPECT_TRUE(findings("foundation", [&](Wall& w) { w.foundation = f; }).empty());
  }
  expectWall(findings("foundation", [](Wall& w) { w.foundation = Foundation::unknown; }),
             Weight::unknown);
}

TEST(WallRule, WorkingRoomOutside) {
  const auto depth = [](const char* rule, std::optional<double> free) {
    return findings(rule, [&](Wall& w) { w.free_depth_m = free; });
  };
  const auto tight = depth("free-depth", 0.85);
  expectWall(tight, Weight::binding);
  EXPECT_EQ(tight[0].finding.distance_m, 0.85);
  EXPECT_EQ(tight[0].finding.needed_m, 0.9);
  EXPECT_TRUE(depth("free-depth", 0.9).empty());  // equality is clear
  expectWall(depth("free-depth-tight", 1.0), Weight::advisory);
  EXPECT_TRUE(depth("free-depth-tight", 1.2).empty());
  expectWall(depth("free-depth", {}), Weight::unknown);
  EXPECT_TRUE(depth("free-depth-tight", {}).empty());  // said once is enough
}

TEST(WallRule, MarginOfWorkingRoomIsTheWallsOwn) {
  const Judged j(PlanBuilder::rectangle().wall(1, [](Wall& w) { w.free_depth_m = 2.5; }),
                 "free-depth");
  EXPECT_EQ(j.nearest(0, 12.0)->distance_m, 2.5);
  EXPECT_EQ(j.nearest(0, 12.0)->thing_index, -1);
  EXPECT_EQ(j.nearest(0, 4.0)->distance_m, 3.0);
}

TEST(WallRule, GroundThatIsNotTheClients) {
  for (const auto g :
       {OutsideGround::shared, OutsideGround::neighbour, OutsideGround::public_ground}) {
    const auto found = findings("outside-ground", [&](Wall& w) { w.ground = g; });
    expectWall(found, Weight::binding);
    EXPECT_EQ(found[0].finding.waivable.evidence, plan::Evidence::consent);
  }
  EXPECT_TRUE(findings("outside-ground", [](Wall& w) { w.ground = OutsideGround::own; }).empty());
  expectWall(findings("outside-ground", [](Wall& w) { w.ground = OutsideGround::unknown; }),
             Weight::unknown);
}

TEST(WallRule, FrontIsAdvisedAgainst) {
  const Judged j(PlanBuilder::rectangle(), "front");
  ASSERT_EQ(j.spans.size(), 1U);
  expectSpan(j.spans[0], 0.0, 10.0, true);
  EXPECT_EQ(j.spans[0].finding.weight, Weight::advisory);
}

}  // namespace

}  // namespace sumpwright::rules
