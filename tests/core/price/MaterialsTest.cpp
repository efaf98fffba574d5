#include "core/price/Priced.h"
#include "price/Materials.h"
#include "price/Sources.h"

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

bool isAssumed(const Needs& needs, const std::string& item) {
  return std::any_of(needs.rows.begin(), needs.rows.end(),
                     [&](const Need& need) { return need.item == item && need.assumed; });
}

TEST(Materials, OfARunThatNobodyPlacedAreMarkedAndTold) {
  const auto riser = [](plan::Job& j) { j.design.outlet = plan::OutletMode::riser; };
  const Needs guessed = needsOfJob(withSocket().with(riser).job());
  EXPECT_TRUE(remarked(guessed.remarks, "price.assumed-run"));
  for (const char* item : {"pipe", "bend", "work_pipe"}) EXPECT_TRUE(isAssumed(guessed, item));
  EXPECT_FALSE(isAssumed(guessed, "fan"));
  const auto book = readPriceBook(resources::builtInPriceBooks()[0].text);
  const PricedQuote quote = priced(guessed, *book, {}).value();
  for (const PricedLine& line : quote.lines) {
    EXPECT_EQ(sourceOf(line).id == "price.from.assumed", line.assumed) << line.item;
  }
  const Needs placed = needsOfJob(withSocket()
                                      .with([](plan::Job& j) {
                                        j.design.sumps[0].discharge = plan::Discharge{0, 3.0, 3.0};
                                      })
                                      .job());
  const Needs stated = needsOfJob(withSocket()
                                      .with([](plan::Job& j) {
                                        j.design.pipe = {1.0, 0.5, 1, 0};
                                      })
                                      .job());
  for (const Needs* needs : {&placed, &stated}) {
    EXPECT_FALSE(remarked(needs->remarks, "price.assumed-run"));
    EXPECT_FALSE(remarked(needs->remarks, "price.assumed-low"));
    EXPECT_FALSE(isAssumed(*needs, "pipe"));
  }
}

/// It is settled where it goes, at the hole: only its length is the usual one. Not so of a pipe
/// from inside, which comes out nobody knows where.
TEST(Materials, ALowOutletAtItsHoleIsNotCalledOpen) {
  const Needs low = needsOfJob(withSocket().job());
  EXPECT_TRUE(remarked(low.remarks, "price.assumed-low"));
  EXPECT_FALSE(remarked(low.remarks, "price.assumed-run"));
  EXPECT_TRUE(isAssumed(low, "pipe"));
  const Needs inside = needsOfJob(withSocket()
                                      .with([](plan::Job& j) {
                                        j.design.sumps[0].kind = plan::SumpKind::internal;
                                        j.design.sumps[0].at_m = geometry::Point{3.0, 3.0};
                                      })
                                      .job());
  EXPECT_TRUE(remarked(inside.remarks, "price.assumed-run"));
  PricedQuote quote;
  quote.remarks = {base::Message("price.assumed-low"), base::Message("price.no-tax")};
  EXPECT_EQ(quote.toldToClient().size(), 1U);
}

/// The run of one sump says nothing of another's.
TEST(Materials, ASecondSumpHasTheUsualRunNotTheFirstOnes) {
  const auto metresOf = [](bool second) {
    PlanBuilder builder = withSocket().with([](plan::Job& j) {
      j.design.sumps[0].discharge = plan::Discharge{0, 3.0, 6.0};
    });
    if (second) builder.sump("s2", 0, 7.0);
    return std::stod(quantityOf(needsOfJob(builder.job()), "pipe"));
  };
  EXPECT_NEAR(metresOf(true) - metresOf(false), 1.1 * 1.5, 0.11);  // 1.0 m and 0.5 m, a tenth more
}

std::optional<base::Message> detailOf(const Needs& needs, const std::string& item) {
  for (const Need& need : needs.rows) {
    if (need.item == item) return need.detail;
  }
  ADD_FAILURE() << item;
  return std::nullopt;
}

TEST(Materials, SayWhatTheyAreBoughtBy) {
  const plan::Job job =
      withSocket().with([](plan::Job& j) { j.design.outlet = plan::OutletMode::riser; }).job();
  const Needs needs = needsOfJob(job);
  const auto study = siting::Study::of(job, support::builtInSheet("ie-practice"));
  const double pipe_mm = 1000.0 * study->site().pipe_od_m;
  for (const char* item :
       {"pipe", "bend", "coupler", "cowl", "mesh", "pipe_clip", "fan", "cover"}) {
    const auto detail = detailOf(needs, item);
    ASSERT_TRUE(detail.has_value()) << item;
    const base::Arg* pipe = detail->find("pipe");
    ASSERT_NE(pipe, nullptr) << item;
    EXPECT_NEAR(std::get<base::Quantity>(pipe->value).value, pipe_mm, 1e-9) << item;
  }
  EXPECT_EQ(detailOf(needs, "cable")->id, "price.detail.cable");
  EXPECT_EQ(detailOf(needs, "fan")->id, "price.detail.fan-invented");
}

TEST(Materials, BackerGoesRoundTheHoleInBothLeavesAndEachOutletHasAMesh) {
  const Needs needs =
      needsOfJob(withSocket().with([](plan::Job& j) { j.design.core_mm = 200.0; }).job());
  EXPECT_EQ(quantityOf(needs, "backer"), "1.3");  // 2 x pi x 0.2 m, to the next tenth (derived)
  EXPECT_EQ(quantityOf(needs, "mesh"), "1");
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

/// A leg without the fan has no pipe after it: its own two figures stated, nothing of it is
/// guessed.
TEST(Materials, OfALegWithoutTheFanOnlyItsOwnPipeHasToBeStated) {
  const auto needsOf = [](std::optional<int> bends_before) {
    return needsOfJob(withSocket()
                          .sump("s2", 0, 7.0)
                          .with([&](plan::Job& j) {
                            j.design.shared_fan = true;
                            j.design.pipe.before_m = 1.0;
                            j.design.pipe.bends_before = bends_before;
                            j.design.sumps[0].discharge = plan::Discharge{0, 3.0, 3.0};
                          })
                          .job());
  };
  EXPECT_FALSE(remarked(needsOf(1).remarks, "price.assumed-low"));
  EXPECT_TRUE(remarked(needsOf(std::nullopt).remarks, "price.assumed-low"));
}

TEST(Materials, ACowlIsOfferedAndBoughtOnceItIsTakenUp) {
  const Needs needs = needsOfJob(withSocket()
                                     .with([](plan::Job& j) {
                                       j.design.sumps[0].discharge = plan::Discharge{0, 3.0, 3.0};
                                     })
                                     .job());
  const auto book = readPriceBook(resources::builtInPriceBooks()[0].text);
  const auto buys = [&](const plan::Quote& quote) {
    const auto list = shoppingOf(priced(needs, *book, quote).value());
    return std::any_of(list.begin(), list.end(),
                       [](const PricedLine& line) { return line.item == "cowl"; });
  };
  plan::Quote quote;
  EXPECT_FALSE(buys(quote));
  plan::QuoteLine line;
  line.id = "l1";
  line.item = "cowl";
  quote.lines = {line};
  EXPECT_TRUE(buys(quote));
  quote.lines[0].left_out = true;
  EXPECT_FALSE(buys(quote));
  quote.lines[0].left_out = false;
  quote.lines[0].item = "scaffold";  // taken up, and nothing to carry home
  const auto list = shoppingOf(priced(needs, *book, quote).value());
  EXPECT_TRUE(std::none_of(list.begin(), list.end(),
                           [](const PricedLine& one) { return one.item == "scaffold"; }));
}

TEST(Materials, AFanInTheRoofSpaceTakesARooferAndLaggingThere) {
  const auto needsWith = [](plan::FanPlace place) {
    return needsOfJob(withSocket()
                          .with([&](plan::Job& j) {
                            j.house.eaves_m = 2.5;
                            j.house.eaves_overhang_m = 0.0;
                            j.design.sumps[0].fan_place = place;
                            j.design.sumps[0].discharge = plan::Discharge{0, 3.0, 4.0};
                          })
                          .job());
  };
  const Needs high = needsWith(plan::FanPlace::outside_high);
  const Needs roof = needsWith(plan::FanPlace::roof_space);
  EXPECT_EQ(quantityOf(high, "roof_pass"), "");
  EXPECT_EQ(quantityOf(roof, "roof_pass"), "1");
  const auto of = [](const Needs& needs, const char* item) {
    return std::stod(quantityOf(needs, item));
  };
  EXPECT_EQ(of(roof, "bend"), of(high, "bend") + 2.0);
  EXPECT_NEAR(of(roof, "pipe"), of(high, "pipe") + 1.1 * 1.0, 0.11);  // 1.0 m into the roof
  EXPECT_NEAR(of(roof, "lagging"), of(high, "lagging") + 1.0, 0.11);
  EXPECT_EQ(quantityOf(roof, "round_eaves"), "");
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
