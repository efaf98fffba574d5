// A fix makes its problem go away and brings no unsound one.

#include <cmath>
#include <map>

#include "core/plan/EditChecks.h"
#include "core/plan/JobCases.h"
#include "geometry/Shapes.h"
#include "plan/Fixes.h"
#include "support/Listed.h"
#include "support/PlanBuilder.h"
#include "support/RandomPlan.h"
#include "support/Seed.h"

namespace sumpwright::plan {
namespace {

using support::PlanBuilder;

std::map<std::string, int> unsoundById(const Job& job) {
  std::map<std::string, int> counts;
  for (const base::Problem& p : checkJob(job)) {
    if (p.gravity == base::Gravity::unsound) ++counts[p.message.id];
  }
  return counts;
}

int timesOf(const Job& job, const std::string& id) {
  int count = 0;
  for (const base::Problem& p : checkJob(job)) count += p.message.id == id;
  return count;
}

void expectKeepsItsWord(const Job& job, const Fix& fix) {
  const std::string& id = fix.problem.message.id;
  EXPECT_LT(timesOf(fix.job, id), timesOf(job, id)) << id;
  const auto before = unsoundById(job);
  for (const auto& [name, count] : unsoundById(fix.job)) {
    const auto was = before.find(name);
    EXPECT_TRUE(was != before.end() && count <= was->second) << id << " brought " << name << "\n"
                                                             << support::listed(checkJob(fix.job));
  }
}

/// Ids that are offered a fix in the case made for them.
std::set<std::string> offeredIn(const std::vector<CheckCase>& cases) {
  std::set<std::string> ids;
  for (const CheckCase& c : cases) {
    for (const Fix& fix : fixesOf(c.job)) ids.insert(fix.problem.message.id);
  }
  return ids;
}

TEST(Fixes, EveryOneKeepsItsWord) {
  for (const CheckCase& c : checkCases()) {
    SCOPED_TRACE(c.id + " " + c.pointer);
    for (const Fix& fix : fixesOf(c.job)) expectKeepsItsWord(c.job, fix);
  }
}

TEST(Fixes, AreOfferedForTheseAndNoOthers) {
  EXPECT_EQ(offeredIn(checkCases()),
            (std::set<std::string>{
                "plan.courtyard.turned", "plan.dimension.no-thing", "plan.feature.off-wall",
                "plan.house.footing-reversed", "plan.id.empty", "plan.id.twice",
                "plan.inner-door.no-wall", "plan.inner-door.off-wall", "plan.looked.contradicted",
                "plan.opening.off-wall", "plan.radiator.off-wall", "plan.ring.short-edge",
                "plan.ring.turned", "plan.room.outside", "plan.service.off-wall",
                "plan.service.run-contradicted", "plan.sump.off-ring", "plan.waiver.no-sump",
                "plan.zone.outside"}));
}

TEST(Fixes, SwapCutBackAndClip) {
  const Job swapped = PlanBuilder::rectangle().window("w", 0, 1, 1).with([](Job& j) {
    j.plan.openings[0].sill_m = 2.4;
    j.plan.openings[0].head_m = 1.1;
  });
  ASSERT_EQ(fixesOf(swapped).size(), 1U);
  EXPECT_EQ(fixesOf(swapped)[0].job.plan.openings[0].head_m, 2.4);
  const geometry::Polygon west = {{0.35, 0.35}, {5, 0.35}, {5, 7.65}, {0.35, 7.65}};
  const geometry::Polygon east = {{4, 0.35}, {9.65, 0.35}, {9.65, 7.65}, {4, 7.65}};
  const Job rooms = PlanBuilder::rectangle()
                        .noRooms()
                        .room("a", RoomUse::hall, west)
                        .room("b", RoomUse::hall, east);
  ASSERT_EQ(fixesOf(rooms).size(), 1U);
  EXPECT_EQ(fixesOf(rooms)[0].job.plan.rooms[0].outline_m, west);
  EXPECT_NEAR(std::abs(geometry::signedArea(fixesOf(rooms)[0].job.plan.rooms[1].outline_m)),
              4.65 * 7.3, 1e-6);
  const Job out = PlanBuilder::rectangle().noZones().zone(
      "z", FloorKind::ground_bearing_slab, {{0.35, 0.35}, {12, 0.35}, {12, 7.65}, {0.35, 7.65}});
  ASSERT_EQ(fixesOf(out).size(), 1U);
  EXPECT_NEAR(std::abs(geometry::signedArea(fixesOf(out)[0].job.plan.floor_zones[0].outline_m)),
              9.65 * 7.3, 1e-6);
}

TEST(Fixes, NoneForAHouseWithoutProblems) {
  EXPECT_TRUE(fixesOf(PlanBuilder::rectangle()).empty());
  base::Problem p;
  p.message.id = "plan.opening.off-wall";
  p.pointer = "/plan/openings/7/offset_m";
  EXPECT_FALSE(fixFor(PlanBuilder::rectangle(), p));
}

TEST(Fixes, AnOpeningIsPushedOntoItsWall) {
  const auto fixed = [](double offset, double width) {
    const auto fixes = fixesOf(PlanBuilder::rectangle().window("w", 0, offset, width));
    EXPECT_EQ(fixes.size(), 1U);
    return fixes.empty() ? Opening{} : fixes[0].job.plan.openings[0];
  };
  EXPECT_NEAR(fixed(9.5, 1.2).at.offset_m, 8.8, 1e-12);
  EXPECT_EQ(fixed(-0.5, 1.2).at.offset_m, 0.0);
  const Job wide = PlanBuilder::rectangle().window("w", 0, 3.0, 12.0);
  EXPECT_EQ(timesOf(wide, "plan.opening.off-wall"), 1);
  EXPECT_TRUE(fixesOf(wide).empty()) << "its width was measured";
  const Job door = PlanBuilder::rectangle().innerWall("iw", {{4, 0.35}, {4, 3}}).with([](Job& j) {
    j.plan.inner_doors = {{"d", "iw", 0.1, 4.0}};
  });
  EXPECT_TRUE(fixesOf(door).empty());
}

TEST(Fixes, NoneThatWouldDropOneOfTwoPieces) {
  const Job two = PlanBuilder::rectangle()
                      .noRooms()
                      .room("cross", RoomUse::hall, {{4, 0.35}, {5, 0.35}, {5, 7.6}, {4, 7.6}})
                      .room("wide", RoomUse::living, {{1, 2}, {9, 2}, {9, 3}, {1, 3}});
  EXPECT_EQ(timesOf(two, "plan.room.overlap"), 1);
  EXPECT_TRUE(fixesOf(two).empty()) << "which of the two pieces is meant nobody knows";
}

TEST(Fixes, AFieldBookIsNotThrownAway) {
  const Job job = PlanBuilder::rectangle().with([](Job& j) {
    j.plan.rings[0].taped = {{90, 10}, {0, 8}};
  });
  EXPECT_EQ(timesOf(job, "plan.taped.count"), 1);
  EXPECT_TRUE(fixesOf(job).empty());
}

/// Spoils a sound house in one of the ways a slip of the hand would.
void spoil(support::Random& random, Job& job) {
  Plan& plan = job.plan;
  const auto at = [&](const auto& list) { return random.index(list.size()); };
  switch (random.between(0, 6)) {
    case 0:
      if (!plan.openings.empty())
        plan.openings[at(plan.openings)].at.offset_m += random.uniform(-9, 9);
      break;
    case 1:
      if (!plan.openings.empty()) plan.openings[at(plan.openings)].id = plan.rings[0].walls[0].id;
      break;
    case 2:
      if (!plan.rooms.empty()) {
        for (Point& p : plan.rooms[at(plan.rooms)].outline_m) p.x += 1.5;
      }
      break;
    case 3:
      if (!plan.radiators.empty()) plan.radiators[at(plan.radiators)].width_m = 40.0;
      break;
    case 4:
      job.looked_for.gas = Looked::looked_none;
      break;
    case 5:
      if (!plan.floor_zones.empty()) {
        for (Point& p : plan.floor_zones[at(plan.floor_zones)].outline_m) p.y -= 1.0;
      }
      break;
    default:
      if (!job.design.sumps.empty()) job.design.sumps[0].chainage_m += 500.0;
  }
}

TEST(Fixes, KeepTheirWordOnAnyHouse) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    support::Random random(seed);
    Job job = support::randomJob(random);
    for (int i = random.between(1, 4); i > 0; --i) spoil(random, job);
    for (int step = 0; step < 20; ++step) {
      const auto fixes = fixesOf(job);
      if (fixes.empty()) return;
      for (const Fix& fix : fixes) expectKeepsItsWord(job, fix);
      if (testing::Test::HasFailure()) return;
      job = fixes.front().job;
    }
    ADD_FAILURE() << "fixes go round in a circle";
  });
}

}  // namespace
}  // namespace sumpwright::plan
