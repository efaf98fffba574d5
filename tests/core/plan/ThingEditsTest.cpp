// Verbs on things of every kind: what comes, what changes, what goes along.

#include <cmath>

#include "core/plan/EditChecks.h"
#include "plan/Dimensions.h"
#include "plan/ThingEdits.h"
#include "support/PlanBuilder.h"

namespace sumpwright::plan {
namespace {

using support::PlanBuilder;
using Corners = std::vector<Point>;

Job withPartition() {
  Job job = PlanBuilder::rectangle()
                .window("w", 0, 2.0, 1.2)
                .service("gas", ServiceKind::gas, 0, 6.0)
                .run("gas", {{6, 0}, {6, -5}})
                .innerWall("iw", {{5, 0.35}, {5, 7.65}});
  job.plan.inner_doors.push_back({"door", "iw", 1.0, 0.8});
  return job;
}

/// One of every kind, without an id.
std::vector<Thing> oneOfEach() {
  Opening o;
  o.at = {0, 1, 1.0};
  o.width_m = 1.0;
  Service s;
  s.entry = OnWall{0, 2, 1.0};
  Radiator r;
  r.on = OnWall{0, 3, 1.0};
  r.width_m = 0.8;
  WallFeature f;
  f.at = {0, 2, 4.0};
  Dimension d;
  d.from = {"w0.0", ThingEnd::start};
  d.to = {"w0.0", ThingEnd::end};
  const Corners line = {{1, 1}, {2, 1}};
  const Corners area = {{1, 1}, {2, 1}, {2, 2}};
  return {o,
          s,
          Room{"", "", RoomUse::hall, area},
          FloorZone{"", "", FloorKind::unknown, Oversite::unknown, false, area},
          InnerWall{"", line, 0.1, BelowFloor::unknown},
          InnerDoor{"", "iw", 2.0, 0.8},
          RisingWall{"", line, 0.2, {}},
          r,
          HeatingPipe{"", "", line},
          Supply{"", "", SupplyKind::socket, {1, 1}, YesNo::unknown, ""},
          Fitting{"", "", FittingKind::sink, {1, 1}},
          OutsideThing{"", "", OutsideKind::gully, {{1, -1}}},
          TestHole{"", "", {3, 3}},
          f,
          d,
          Appliance{"", "stove", true, "parlour"}};
}

TEST(AddThing, OfEveryKindGetsAnIdAndComesBackById) {
  Job job = withPartition();
  for (const Thing& thing : oneOfEach()) {
    const std::set<std::string> before = idsOf(job);
    const Job added = doneWell(addThing(job, thing));
    std::string id;
    for (const std::string& now : idsOf(added)) {
      if (!before.contains(now)) id = now;
    }
    const auto found = thingOf(added, id);
    ASSERT_TRUE(found) << thing.index();
    EXPECT_EQ(found->index(), thing.index());
    job = added;
  }
  EXPECT_EQ(std::variant_size_v<Thing>, oneOfEach().size());
}

TEST(RemoveThing, UndoesAddingOfEveryKind) {
  const Job job = withPartition();
  for (const Thing& thing : oneOfEach()) {
    const Job added = doneWell(addThing(job, thing));
    std::string id;
    for (const std::string& now : idsOf(added)) {
      if (!idsOf(job).contains(now)) id = now;
    }
    Job removed = doneWell(removeThing(added, id));
    removed.looked_for = job.looked_for;
    EXPECT_EQ(removed, job) << thing.index();
  }
}

TEST(AddThing, RefusesWhatCannotBe) {
  const Job job = withPartition();
  Opening o;
  o.id = "w";
  o.width_m = 1.0;
  EXPECT_EQ(problemIdOf(addThing(job, o)), "plan.id.twice");
  o.id = "w2";
  o.at.edge = 4;
  EXPECT_EQ(problemIdOf(addThing(job, o)), "plan.edit.no-edge");
  o.at = {0, 0, NAN};
  EXPECT_EQ(problemIdOf(addThing(job, o)), "plan.edit.not-a-place");
  o.at = {0, 0, 1};
  o.width_m = -1;
  EXPECT_EQ(problemIdOf(addThing(job, o)), "plan.edit.not-a-place");
  o.width_m = 1;
  o.name = "a\x01";
  EXPECT_EQ(problemIdOf(addThing(job, o)), "plan.edit.not-text");
  o.name = "a\xC3";
  EXPECT_EQ(problemIdOf(addThing(job, o)), "plan.edit.not-text");
  EXPECT_EQ(problemIdOf(addThing(job, InnerDoor{"", "nowhere", 0, 1})), "plan.edit.no-thing");
  Dimension d;
  d.from.thing = "w";
  d.to.thing = "nowhere";
  EXPECT_EQ(problemIdOf(addThing(job, d)), "plan.edit.no-thing");
  EXPECT_EQ(problemIdOf(addThing(job, TestHole{"", "", {0, 1e6}})), "plan.edit.not-a-place");
  EXPECT_EQ(problemIdOf(addThing(job, HeatingPipe{"", "", Corners(10'001)})), "plan.edit.too-many");
}

TEST(AddThing, WhatWasNotThereIsThereNow) {
  const Job job = PlanBuilder::rectangle();
  ASSERT_EQ(job.looked_for.gas, Looked::looked_none);
  Service gas;
  gas.kind = ServiceKind::gas;
  gas.entry = OnWall{0, 0, 1.0};
  const Job added = doneWell(addThing(job, gas));
  EXPECT_EQ(added.looked_for.gas, Looked::present);
  EXPECT_EQ(added.looked_for.water, Looked::looked_none);
  const Job removed = doneWell(removeThing(added, "gas-1"));
  EXPECT_EQ(removed.looked_for.gas, Looked::not_looked);
}

// One window drawn says nothing of the others: only a person can say that somebody looked.
TEST(AddThing, AnswersNothingThatWasNotAsked) {
  Service gas;
  gas.kind = ServiceKind::gas;
  gas.entry = OnWall{0, 0, 1.0};
  const Job bare = PlanBuilder::bare();
  ASSERT_EQ(bare.looked_for.gas, Looked::not_looked);
  EXPECT_EQ(doneWell(addThing(bare, gas)).looked_for, bare.looked_for);
}

TEST(ReplaceThing, TakesThePlaceOfTheOneOfThatKindAndId) {
  const Job job = withPartition();
  Opening o = job.plan.openings[0];
  o.opens = Opens::fixed;
  o.sill_m = 1.1;
  o.name = "stair window";
  const Job replaced = doneWell(replaceThing(job, o));
  EXPECT_EQ(replaced.plan.openings[0], o);
  EXPECT_EQ(doneWell(replaceThing(replaced, job.plan.openings[0])), job);
  EXPECT_EQ(problemIdOf(replaceThing(job, TestHole{"w", "", {1, 1}})), "plan.edit.no-thing");
}

TEST(RemoveThing, TakesWhatHangsOnIt) {
  Job job = withPartition();
  job.plan.dimensions.push_back({"d1", {"door"}, {"w0.0"}, 0.3});
  job.plan.dimensions.push_back({"d2", {"w0.0"}, {"w0.1"}, 0.3});
  Waiver w;
  w.id = "v";
  w.sump = "s";
  w.rule = "openings";
  w.thing = "w";
  w.reason = w.name = "invented";
  w.date = "2026-03-01";
  job = PlanBuilder::rectangle().with([&](Job& j) { j = job; }).sump("s", 0, 5.0).waiver(w).job();
  const Job walls = doneWell(removeThing(job, "iw"));
  EXPECT_TRUE(walls.plan.inner_doors.empty());
  ASSERT_EQ(walls.plan.dimensions.size(), 1U);
  EXPECT_EQ(walls.plan.dimensions[0].id, "d2");
  EXPECT_EQ(walls.design.waivers.size(), 1U);
  EXPECT_TRUE(doneWell(removeThing(job, "w")).design.waivers.empty());
  EXPECT_EQ(problemIdOf(removeThing(job, "w0.0")), "plan.edit.no-thing");
}

TEST(MoveThing, OnTheWallItGoesToTheNearestPlaceOfAny) {
  const Job job = withPartition();
  const Job along = doneWell(moveThing(job, "w", {1.5, 0.3}));
  EXPECT_EQ(along.plan.openings[0].at.edge, 0);
  EXPECT_NEAR(along.plan.openings[0].at.offset_m, 3.5, 1e-12);
  const Job past = doneWell(moveThing(job, "w", {-9.0, 0.0}));
  EXPECT_EQ(past.plan.openings[0].at.offset_m, 0.0);
  const Job round = doneWell(moveThing(job, "w", {7.4, 3.0}));  // to (10, 3): the east gable
  EXPECT_EQ(round.plan.openings[0].at.edge, 1);
  EXPECT_NEAR(round.plan.openings[0].at.offset_m, 2.4, 1e-12);
}

TEST(MoveThing, TheRunOfAServiceGoesWithItsEntry) {
  const Job moved = doneWell(moveThing(withPartition(), "gas", {1.0, 0.0}));
  EXPECT_NEAR(moved.plan.services[0].entry->offset_m, 7.0, 1e-12);
  EXPECT_EQ(moved.plan.services[0].run_m, (Corners{{7, 0}, {7, -5}}));
}

TEST(MoveThing, ADoorGoesAlongItsWallADimensionAside) {
  Job job = withPartition();
  job.plan.dimensions.push_back({"d", {"w0.0"}, {"w0.0", ThingEnd::end}, -0.5});
  EXPECT_NEAR(doneWell(moveThing(job, "door", {3, 0.5})).plan.inner_doors[0].offset_m, 1.5, 1e-12);
  EXPECT_NEAR(doneWell(moveThing(job, "door", {0, 50})).plan.inner_doors[0].offset_m, 6.5, 1e-12);
  EXPECT_NEAR(doneWell(moveThing(job, "d", {4, -0.2})).plan.dimensions[0].off_m, -0.7, 1e-12);
  EXPECT_EQ(
      problemIdOf(moveThing(doneWell(addThing(job, Appliance{"a", "", true, ""})), "a", {1, 1})),
      "plan.edit.no-point");
  EXPECT_EQ(problemIdOf(moveThing(job, "w", {NAN, 0})), "plan.edit.not-a-place");
}

TEST(Points, AreMovedPutInAndTakenOut) {
  const Job job = withPartition();
  const Job moved = doneWell(movePoint(job, "gas", 1, {7, -4}));
  EXPECT_EQ(moved.plan.services[0].run_m[1], (Point{7, -4}));
  const Job more = doneWell(insertPoint(job, "gas", 1, {6, -2}));
  EXPECT_EQ(more.plan.services[0].run_m, (Corners{{6, 0}, {6, -2}, {6, -5}}));
  EXPECT_EQ(doneWell(removePoint(more, "gas", 1)), job);
  EXPECT_EQ(doneWell(insertPoint(job, "gas", 2, {9, -5})).plan.services[0].run_m.back(),
            (Point{9, -5}));
  EXPECT_EQ(problemIdOf(removePoint(job, "gas", 0)), "plan.edit.too-few-points");
  EXPECT_EQ(problemIdOf(movePoint(job, "gas", 2, {0, 0})), "plan.edit.no-point");
  EXPECT_EQ(problemIdOf(insertPoint(job, "w", 0, {0, 0})), "plan.edit.no-point");
  EXPECT_EQ(problemIdOf(movePoint(job, "gas", 0, {0, 1e9})), "plan.edit.not-a-place");
}

TEST(CopyThing, UnderANewIdDoorsToo) {
  const Job job = withPartition();
  const Job copied = doneWell(copyThing(job, "iw", {2, 0}));
  ASSERT_EQ(copied.plan.inner_walls.size(), 2U);
  EXPECT_EQ(copied.plan.inner_walls[1].line_m, (Corners{{7, 0.35}, {7, 7.65}}));
  ASSERT_EQ(copied.plan.inner_doors.size(), 2U);
  EXPECT_EQ(copied.plan.inner_doors[1].wall, copied.plan.inner_walls[1].id);
  EXPECT_EQ(copied.plan.inner_doors[1].offset_m, 1.0);
  const Job window = doneWell(copyThing(job, "w", {3, 0}));
  EXPECT_NEAR(window.plan.openings[1].at.offset_m, 5.0, 1e-12);
}

TEST(PlaceOf, EndsAndMiddlesOfWhatAPlanHolds) {
  const Job job =
      PlanBuilder::rectangle().with([](Job& j) { j = withPartition(); }).sump("s", 0, 12.0).job();
  const auto at = [&](const char* id, ThingEnd end) { return placeOf(job, {id, end}); };
  EXPECT_EQ(at("w0.1", ThingEnd::start), (Point{10, 0}));
  EXPECT_EQ(at("w0.1", ThingEnd::end), (Point{10, 8}));
  EXPECT_EQ(at("w0.1", ThingEnd::middle), (Point{10, 4}));
  EXPECT_EQ(at("w", ThingEnd::start), (Point{2, 0}));
  EXPECT_EQ(at("w", ThingEnd::end), (Point{3.2, 0}));
  EXPECT_EQ(at("gas", ThingEnd::end), (Point{6, 0}));  // its entry
  EXPECT_EQ(at("s", ThingEnd::middle), (Point{10, 2}));
  EXPECT_EQ(at("iw", ThingEnd::middle), (Point{5, 4}));
  EXPECT_EQ(at("door", ThingEnd::end)->x, 5.0);
  EXPECT_NEAR(at("door", ThingEnd::end)->y, 2.15, 1e-12);
  EXPECT_FALSE(at("room", ThingEnd::start));
  EXPECT_EQ(at("room", ThingEnd::middle), (Point{5, 4}));
  EXPECT_FALSE(at("nothing", ThingEnd::start));
}

}  // namespace
}  // namespace sumpwright::plan
