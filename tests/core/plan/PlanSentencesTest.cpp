// Every problem a job can have is thrown by a case, and its sentence finds all it speaks of.

#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "core/plan/JobCases.h"
#include "plan/DesignEdits.h"
#include "plan/Fixes.h"
#include "plan/GapEdits.h"
#include "plan/JobText.h"
#include "plan/OpeningEdits.h"
#include "plan/OutlineEdits.h"
#include "plan/PlanCheck.h"
#include "plan/RoomEdits.h"
#include "plan/SuctionEdits.h"
#include "plan/SumpEdits.h"
#include "plan/ThingEdits.h"
#include "plan/WallEdits.h"
#include "words/Sentences.h"
#include "words/Words.h"

namespace sumpwright::plan {
namespace {

void addEdits(base::Problems& all) {
  const auto add = [&](const base::Result<Job>& result) {
    const base::Problems more = result.problems();
    all.insert(all.end(), more.begin(), more.end());
  };
  const Job house = support::PlanBuilder::rectangle().window("w", 0, 2.0, 2.0);
  const Job court = support::PlanBuilder::courtyard();
  const HeatingPipe pipe{"p", "", {{1, 1}, {2, 1}}};
  add(removeThing(house, "x"));
  add(movePoint(house, "w", 0, {1, 1}));
  add(addThing(house, Room{"", "a\x01", RoomUse::hall, {}}));
  add(addThing(house, HeatingPipe{"", "", std::vector<Point>(10'001)}));
  add(removePoint(*addThing(house, pipe), "p", 0));
  add(placeOpening(house, "w", 0, 0, Side::left, 9.0));
  add(rectangleHouse(house, 10, 8));
  add(removeRing(court, 0));
  add(roomsFromWalls(Job{}));
  Job risen = house;
  risen.plan.rising_walls.push_back({"rw", {{3.0, 0.5}, {3.0, 5.0}}, 0.1, {}});
  add(fillGap(risen, "rw", 1.0));
  add(floorZoneFromWalls(house));
  add(removePressureTest(house, "x"));
  add(moveSumpInside(support::PlanBuilder::rectangle().sump("s", 0, 1), "s", SumpKind::internal,
                     {2, 2}));
}

/// What fixes say, as if it were a problem.
void addFixes(base::Problems& all) {
  std::vector<Job> jobs;
  for (const CheckCase& c : checkCases()) jobs.push_back(c.job);
  jobs.push_back(support::PlanBuilder::rectangle().window("w", 0, 1, 1).with([](Job& j) {
    j.plan.openings[0].sill_m = 9.0;
  }));
  jobs.push_back(support::PlanBuilder::rectangle()
                     .noRooms()
                     .room("a", RoomUse::hall, {{1, 1}, {5, 1}, {5, 5}, {1, 5}})
                     .room("b", RoomUse::hall, {{4, 1}, {8, 1}, {8, 5}, {4, 5}}));
  for (const Job& job : jobs) {
    for (const Fix& fix : fixesOf(job)) all.push_back({fix.says, "", base::Gravity::missing});
  }
}

base::Problems allProblems() {
  base::Problems all;
  const auto add = [&](const base::Problems& more) {
    all.insert(all.end(), more.begin(), more.end());
  };
  for (const ReadCase& c : unreadableCases()) add(readJob(c.text).problems());
  for (const ReadCase& c : notedCases()) add(readJob(c.text)->problems);
  for (const CheckCase& c : checkCases()) add(checkJob(c.job));
  std::string keys;
  for (int i = 0; i < 1100; ++i) keys += ",\"k" + std::to_string(i) + "\":0";
  add(readJob(jobText(keys))->problems);
  Job job = support::PlanBuilder::rectangle().sump("s", 0, 1);
  add(removeSump(job, "x").problems());
  add(withdrawWaiver(job, "x").problems());
  add(setTarget(job, {}, 20.0).problems());
  job.design.sumps[0].kind = SumpKind::standby;
  add(moveSump(job, "s", 0, 1).problems());
  const Job house = support::PlanBuilder::rectangle().window("w", 0, 2.0, 2.0);
  add(moveCorner(house, 0, 9, {0, 0}).problems());
  add(moveWall(house, 0, 9, 1.0).problems());
  add(moveWall(house, 0, 0, 1e9).problems());
  add(splitWall(house, 0, 0, 3.0).problems());
  add(removeCorner(support::PlanBuilder::outline({{0, 0}, {9, 0}, {0, 9}}), 0, 0).problems());
  add(setTarget(house, {}, 20.0).problems());
  Wall thick = house.plan.rings[0].walls[0];
  thick.thickness_m = 9.0;  // more than the house is deep: nothing is left of its room
  add(setWall(house, 0, 0, thick).problems());
  addEdits(all);
  addFixes(all);
  return all;
}

TEST(PlanSentences, EveryProblemIsSaidInFull) {
  const std::regex unfilled("\\{[a-z_]+[:}]");
  for (const base::Problem& p : allProblems()) {
    ASSERT_TRUE(words::hasSentence(p.message.id)) << p.message.id;
    const std::string said = words::say(p.message, words::Units::metric);
    EXPECT_FALSE(std::regex_search(said, unfilled)) << said;
    EXPECT_TRUE(said.ends_with('.')) << said;
  }
}

TEST(PlanSentences, EverySentenceOfAProblemHasACase) {
  std::set<std::string> thrown;
  for (const base::Problem& p : allProblems()) {
    thrown.insert(p.message.id);
    for (const base::Arg& arg : p.message.args) {
      if (const auto* phrase = std::get_if<base::Message>(&arg.value)) thrown.insert(phrase->id);
    }
  }
  for (const words::Sentence& s : words::planSentences()) {
    EXPECT_TRUE(thrown.contains(std::string(s.id))) << "no case for " << s.id;
  }
}

}  // namespace
}  // namespace sumpwright::plan
