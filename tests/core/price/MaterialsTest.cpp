#include "core/price/Priced.h"
#include "price/Materials.h"

namespace sumpwright::price {
namespace {

using support::PlanBuilder;

PlanBuilder withSocket() {
  return PlanBuilder::rectangle(10, 8)
      .sump("s1", 0, 3.0)
      .supply("socket", plan::SupplyKind::socket, {3.0, 0.4});
}

TEST(Materials, FollowTheStatedPipe) {
  const plan::Job job = withSocket()
                            .with([](plan::Job& j) {
                              j.design.pipe = {1.0, 4.0, 1, 3};
                              j.design.outlet = plan::OutletMode::riser;
                              j.design.silencer = plan::YesNo::yes;
                            })
                            .job();
  const Needs needs = needsOfJob(job);
  EXPECT_EQ(quantityOf(needs, "pipe"), "5.5");  // 5 m and a tenth
  EXPECT_EQ(quantityOf(needs, "bend"), "4");
  EXPECT_EQ(quantityOf(needs, "cowl"), "1");
  EXPECT_EQ(quantityOf(needs, "grille"), "");
  EXPECT_EQ(quantityOf(needs, "lagging"), "4");
  EXPECT_EQ(quantityOf(needs, "silencer"), "1");
  EXPECT_EQ(quantityOf(needs, "scaffold"), "1");
}

/// From the pit through the wall of 0.35 m and up to the outlet, once: the fan stands in it, not
/// beside it.
TEST(Materials, PipeOfAPlacedRunIsCountedOnce) {
  const auto needsAt = [](double outlet_m, std::optional<double> fan_m) {
    return needsOfJob(withSocket()
                          .with([&](plan::Job& j) {
                            plan::Sump& sump = j.design.sumps[0];
                            sump.entry_m = -0.4;
                            sump.discharge = plan::Discharge{0, 3.0, outlet_m};
                            sump.fan_height_m = fan_m;
                          })
                          .job());
  };
  const auto metres = [](const Needs& needs) { return std::stod(quantityOf(needs, "pipe")); };
  const double laid = 0.35 + 0.4 + 3.0;
  const double bought = metres(needsAt(3.0, std::nullopt));
  EXPECT_GE(bought, 1.1 * laid);
  EXPECT_LE(bought, 1.1 * (laid + 0.3));  // a little way into the hardcore, and the slope
  EXPECT_NEAR(metres(needsAt(3.0, 0.6)), bought, 0.051);
  EXPECT_NEAR(metres(needsAt(3.0, 2.0)), bought, 0.051);
  EXPECT_NEAR(metres(needsAt(4.0, std::nullopt)) - bought, 1.1, 0.11);  // to a tenth
}

TEST(Materials, CableIsThatOfTheRoute) {
  const Needs needs = needsOfJob(withSocket().job());
  EXPECT_NE(quantityOf(needs, "cable"), "");
  EXPECT_EQ(quantityOf(needs, "cable_sleeve"), "1");
  EXPECT_FALSE(remarked(needs.remarks, "price.no-cable"));
}

TEST(Materials, WithoutASupplyTheCableIsSaidToBeMissing) {
  const Needs needs = needsOfJob(PlanBuilder::rectangle(10, 8).sump("s1", 0, 3.0).job());
  EXPECT_EQ(quantityOf(needs, "cable"), "");
  EXPECT_EQ(quantityOf(needs, "isolator"), "1");
  EXPECT_TRUE(remarked(needs.remarks, "price.no-cable"));
}

TEST(Materials, OneFanForTwoSumpsHasABranchAndValves) {
  const auto two = [](bool shared) {
    return needsOfJob(withSocket()
                          .sump("s2", 0, 7.0)
                          .with([&](plan::Job& j) { j.design.shared_fan = shared; })
                          .job());
  };
  EXPECT_EQ(quantityOf(two(false), "fan"), "2");
  EXPECT_EQ(quantityOf(two(false), "tee"), "");
  EXPECT_EQ(quantityOf(two(true), "fan"), "1");
  EXPECT_EQ(quantityOf(two(true), "tee"), "1");
  EXPECT_EQ(quantityOf(two(true), "valve"), "2");
}

TEST(Materials, ASpurThatIsThereIsNotBought) {
  const auto spurs = [](plan::SupplyKind kind) {
    return quantityOf(needsOfJob(PlanBuilder::rectangle(10, 8)
                                     .sump("s1", 0, 3.0)
                                     .supply("supply", kind, {3.0, 0.4})
                                     .job()),
                      "spur");
  };
  EXPECT_EQ(spurs(plan::SupplyKind::socket), "1");
  EXPECT_EQ(spurs(plan::SupplyKind::consumer_unit), "1");
  EXPECT_EQ(spurs(plan::SupplyKind::fused_spur), "");
}

TEST(Materials, TheTrialPitIsAHoldPointAndCounted) {
  const Needs needs = needsOfJob(withSocket().job());
  EXPECT_TRUE(std::any_of(needs.rows.begin(), needs.rows.end(), [](const Need& need) {
    return need.item == "trial_pit" && need.kind == NeedKind::labour;
  }));
}

TEST(Materials, MoreThanCanBeReckonedIsSaidAndPricesNothing) {
  PlanBuilder many = withSocket();
  for (int k = 2; k <= 60; ++k) many.sump("s" + std::to_string(k), 0, 0.15 * k);
  const plan::Job job = many.with([](plan::Job& j) { j.design.pipe = {1e4, 1e4, 1, 1}; }).job();
  const Needs needs = needsOfJob(job);
  EXPECT_TRUE(needs.too_large);
  EXPECT_EQ(quantityOf(needs, "pipe"), "");
  const auto book = readPriceBook(resources::builtInPriceBooks()[0].text);
  EXPECT_EQ(priced(needs, *book, {}).problems()[0].message.id, "price.too-large");
}

TEST(Materials, NoSumpNothingToBuy) {
  const Needs needs = needsOfJob(PlanBuilder::rectangle(10, 8).job());
  EXPECT_TRUE(needs.rows.empty());
  EXPECT_TRUE(remarked(needs.remarks, "price.no-sump"));
}

TEST(Materials, EachItemOnceAndTheDemoBookHasAll) {
  const auto book = readPriceBook(resources::builtInPriceBooks()[0].text);
  const Needs needs = needsOfJob(withSocket()
                                     .sump("s2", 0, 7.0)
                                     .with([](plan::Job& j) {
                                       j.design.shared_fan = true;
                                       j.design.silencer = plan::YesNo::yes;
                                     })
                                     .job());
  for (const Need& need : needs.rows) {
    EXPECT_EQ(std::count_if(needs.rows.begin(), needs.rows.end(),
                            [&](const Need& n) { return n.item == need.item; }),
              1);
    const PriceItem* item = book->find(need.item);
    ASSERT_NE(item, nullptr) << need.item;
    EXPECT_EQ(item->unit, need.unit) << need.item;
    EXPECT_EQ(item->kind, need.kind) << need.item;
  }
}

}  // namespace
}  // namespace sumpwright::price
