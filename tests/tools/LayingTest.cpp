#include <gtest/gtest.h>

#include "support/PlanBuilder.h"
#include "support/Seed.h"
#include "tools/Laying.h"

namespace sumpwright::tools {
namespace {

using plan::OutsideKind;
using support::PlanBuilder;

plan::OutsideThing outsideOf(OutsideKind kind) { return {"", "", kind, {}}; }

Laying laying(const plan::Job& job, LayModel model) {
  Laying lay(job, std::move(model));
  lay.look(0.15, 0.05);
  return lay;
}

void expectNear(Point got, Point want) {
  EXPECT_NEAR(got.x, want.x, 1e-9);
  EXPECT_NEAR(got.y, want.y, 1e-9);
}

TEST(Laying, AClickLaysAGullyOnTheGrid) {
  Laying lay = laying(PlanBuilder::rectangle(), outsideOf(OutsideKind::gully));
  EXPECT_EQ(lay.shape(), LayShape::point);
  EXPECT_TRUE(lay.click({1.223, -0.431}));
  const auto job = lay.finished();
  ASSERT_TRUE(job.ok());
  ASSERT_EQ(job->plan.outside.size(), 1U);
  EXPECT_EQ(job->plan.outside.front().id, "gully-1");
  expectNear(job->plan.outside.front().points_m.front(), {1.2, -0.45});
}

TEST(Laying, TypedDistancesFromTheNearestCornerWin) {
  Laying lay = laying(PlanBuilder::rectangle(),
                      plan::Supply{"", "", plan::SupplyKind::socket, {}, plan::YesNo::unknown, ""});
  lay.move({9.0, 0.6});
  lay.setText("1.23, 0.11");
  EXPECT_EQ(lay.enter(), Laying::Typed::done);
  const auto job = lay.finished();
  ASSERT_TRUE(job.ok());
  expectNear(job->plan.supplies.front().at_m, {9.65 - 1.23, 0.35 + 0.11});
}

TEST(Laying, WhatCannotBeReadIsNoPlace) {
  Laying lay = laying(PlanBuilder::rectangle(), plan::TestHole{});
  lay.move({3, 3});
  lay.setText("1.20");
  EXPECT_EQ(lay.enter(), Laying::Typed::unread);
  EXPECT_TRUE(lay.points().empty());
}

TEST(Laying, ALineTakesClicksTypedLegsAndBackspace) {
  Laying lay = laying(PlanBuilder::rectangle(), outsideOf(OutsideKind::path));
  EXPECT_FALSE(lay.click({0.0, -2.0}));
  lay.move({3.0, -2.02});  // square to the start: the leg goes straight
  lay.setText("4.21");
  EXPECT_EQ(lay.enter(), Laying::Typed::taken);
  expectNear(lay.points().back(), {4.21, -2.0});
  lay.setText("l 1.5");  // left of the last leg
  EXPECT_EQ(lay.enter(), Laying::Typed::taken);
  expectNear(lay.points().back(), {4.21, -0.5});
  EXPECT_TRUE(lay.back());
  ASSERT_EQ(lay.points().size(), 2U);
  EXPECT_TRUE(lay.click({4.21, -2.0}));  // the last point again: it ends there
  const auto job = lay.finished();
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(job->plan.outside.front().points_m.size(), 2U);
}

TEST(Laying, ALineOfOnePointIsRefusedAndNothingIsLost) {
  Laying lay = laying(PlanBuilder::rectangle(), plan::HeatingPipe{});
  EXPECT_FALSE(lay.click({3, 3}));
  const auto job = lay.finished();
  ASSERT_FALSE(job.ok());
  EXPECT_EQ(job.problems().front().message.id, "lay.few");
  EXPECT_EQ(lay.points().size(), 1U);
}

TEST(Laying, AnAreaClosesOnItsFirstPointAndIsWalkedAnticlockwise) {
  Laying lay = laying(PlanBuilder::bare(), plan::Room{});
  EXPECT_FALSE(lay.click({2, 2}));
  EXPECT_FALSE(lay.click({2, 4}));
  EXPECT_FALSE(lay.click({5, 4}));
  EXPECT_FALSE(lay.click({5, 2}));
  EXPECT_TRUE(lay.click({2.05, 2.02}));
  const auto job = lay.finished();
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(job->plan.rooms.front().outline_m,
            (std::vector<Point>{{5, 2}, {5, 4}, {2, 4}, {2, 2}}));
}

TEST(Laying, ARectangleIsPulledOpenAndTypedSidesWin) {
  Laying lay = laying(PlanBuilder::bare(), plan::FloorZone{});
  lay.pullRectangle({5, 5}, {3.03, 4.02});
  EXPECT_EQ(lay.points().size(), 4U);
  lay.setText("2.4 x 1.2");
  lay.pullRectangle({5, 5}, {3.03, 4.02});  // to the left and down, as the pointer went
  const auto job = lay.finished();
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(job->plan.floor_zones.front().outline_m,
            (std::vector<Point>{{5, 5}, {2.6, 5}, {2.6, 3.8}, {5, 3.8}}));
}

TEST(Laying, ARectangleOfNoWidthIsNone) {
  Laying lay = laying(PlanBuilder::bare(), plan::Room{});
  lay.pullRectangle({5, 5}, {5, 3});
  const auto room = lay.finished();
  ASSERT_FALSE(room.ok());
  EXPECT_EQ(room.problems().front().message.id, "lay.few");
  Laying tank =
      laying(PlanBuilder::bare(), plan::OutsideThing{"", "", plan::OutsideKind::tank, {}});
  tank.pullRectangle({-5, -5}, {-5, -5});  // back where it was pressed: a lid
  const auto lid = tank.finished();
  ASSERT_TRUE(lid.ok());
  EXPECT_EQ(lid->plan.outside.back().points_m.size(), 1U);
}

TEST(Laying, SidesTypedAfterOneClickMakeTheRectangle) {
  Laying lay = laying(PlanBuilder::bare(), plan::Room{});
  EXPECT_FALSE(lay.click({2, 2}));
  lay.move({2.5, 2.5});
  lay.setText("3 x 2");
  EXPECT_EQ(lay.enter(), Laying::Typed::done);
  EXPECT_EQ(lay.points(), (std::vector<Point>{{2, 2}, {5, 2}, {5, 4}, {2, 4}}));
}

TEST(Laying, AHouseAndItsCourtyardBeginAsRectangles) {
  Laying house = laying(plan::Job{}, LayOutline{});
  house.pullRectangle({0, 0}, {12.4, 8.6});
  const auto built = house.finished();
  ASSERT_TRUE(built.ok());
  ASSERT_EQ(built->plan.rings.size(), 1U);
  Laying court = laying(*built, LayCourtyard{});
  court.pullRectangle({4, 3}, {7, 5});
  const auto both = court.finished();
  ASSERT_TRUE(both.ok());
  ASSERT_EQ(both->plan.rings.size(), 2U);
  EXPECT_TRUE(both->plan.rings[1].closed);
  EXPECT_FALSE(laying(*built, LayOutline{}).finished().ok());  // nothing drawn: too few
}

TEST(Laying, ARunGoesToTheEntryOfItsKindThatHasNone) {
  const plan::Job job =
      PlanBuilder::rectangle().service("gas-1", plan::ServiceKind::gas, 0, 2.0).runUnknown("gas-1");
  plan::Service gas;
  gas.kind = plan::ServiceKind::gas;
  Laying lay = laying(job, gas);
  lay.click({2.0, -5.0});
  lay.click({2.05, -0.05});  // snaps to the entry; drawn towards the house
  const auto laid = lay.finished();
  ASSERT_TRUE(laid.ok());
  ASSERT_EQ(laid->plan.services.size(), 1U);
  const plan::Service& run = laid->plan.services.front();
  EXPECT_EQ(run.run, plan::RunKnown::drawn);
  EXPECT_EQ(run.run_m, (std::vector<Point>{{2, 0}, {2, -5}}));  // from the wall outwards
}

TEST(Laying, ARunThatEndsOnAWallComesInThere) {
  plan::Service drain;
  drain.kind = plan::ServiceKind::drain;
  Laying lay = laying(PlanBuilder::rectangle(), drain);
  lay.click({6.0, 0.0});
  lay.click({6.0, -3.0});
  const auto laid = lay.finished();
  ASSERT_TRUE(laid.ok());
  ASSERT_EQ(laid->plan.services.size(), 1U);
  ASSERT_TRUE(laid->plan.services.front().entry.has_value());
  EXPECT_NEAR(laid->plan.services.front().entry->offset_m, 6.0, 1e-9);
}

TEST(Laying, ARunClearOfTheWallsHasNoEntry) {
  Laying lay = laying(PlanBuilder::rectangle(), plan::Service{});
  lay.click({-2.0, -3.0});
  lay.click({12.0, -3.0});
  const auto laid = lay.finished();
  ASSERT_TRUE(laid.ok());
  EXPECT_FALSE(laid->plan.services.front().entry.has_value());
}

TEST(Laying, WhatHasNoPlaceOfItsOwnIsNotLaid) {
  EXPECT_FALSE(shapeOf(LayModel(plan::Opening{})).has_value());
  EXPECT_FALSE(shapeOf(LayModel(plan::Appliance{})).has_value());
  EXPECT_FALSE(shapeOf(LayModel(plan::Dimension{})).has_value());
  EXPECT_EQ(shapeOf(LayModel(plan::RisingWall{})), LayShape::line);
}

TEST(Laying, AnySequenceOfHandsEndsInAJobOrAReason) {
  const std::vector<LayModel> models{plan::Room{},
                                     plan::InnerWall{},
                                     plan::Service{},
                                     plan::Fitting{},
                                     outsideOf(OutsideKind::tank),
                                     plan::Radiator{},
                                     LayCourtyard{}};
  const std::vector<std::string> texts{"", "1.2", "l 2", "2 x 1", "1.2, 0.3", "zzz", "1,900"};
  support::forEachSeed(40, [&](std::uint64_t seed) {
    support::Random random(seed);
    const plan::Job before = PlanBuilder::lShape();
    Laying lay = laying(before, models[random.index(models.size())]);
    const auto somewhere = [&] { return Point{random.uniform(-3, 12), random.uniform(-3, 10)}; };
    for (int i = 0; i < 12; ++i) {
      switch (random.between(0, 4)) {
        case 0:
          lay.move(somewhere());
          break;
        case 1:
          lay.click(somewhere());
          break;
        case 2:
          lay.back();
          break;
        case 3:
          lay.setText(texts[random.index(texts.size())]);
          lay.enter();
          break;
        default:
          if (lay.shape() == LayShape::area) lay.pullRectangle(somewhere(), somewhere());
      }
    }
    const auto job = lay.finished();
    if (!job.ok()) {
      EXPECT_FALSE(job.problems().front().message.id.empty());
    } else {
      EXPECT_FALSE(*job == before);
    }
  });
}

}  // namespace
}  // namespace sumpwright::tools
