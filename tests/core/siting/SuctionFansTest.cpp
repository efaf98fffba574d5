// Which fan suits a house, on what a study counts with. Houses and fans are invented.

#include <gmock/gmock.h>

#include "core/siting/Studied.h"
#include "siting/SuctionStudy.h"

namespace sumpwright::siting {
namespace {

using support::PlanBuilder;
using testing::IsEmpty;

airflow::Fan inventedFan(const char* id, double shut_off_pa, double free_flow_m3_h, double watts) {
  airflow::CurveLaw law;
  law.shut_off = base::Pressure::ofPa(shut_off_pa);
  law.free_flow = base::Flow::ofM3PerH(free_flow_m3_h);
  law.power_at_shut_off_w = watts;
  law.power_at_free_flow_w = watts;
  return {id, id, "", {base::Mark::own, "invented"}, airflow::FanCurve::byLaw(law).value()};
}

struct Fans {
  airflow::Fan low = inventedFan("low", 150.0, 200.0, 20.0);
  airflow::Fan middle = inventedFan("middle", 400.0, 300.0, 50.0);
  airflow::Fan high = inventedFan("high", 1200.0, 300.0, 110.0);
};

SuctionAnswer askedWith(const plan::Job& job, const airflow::Fan& fan,
                        std::vector<OfferedFan> offered, plan::Fill fill = plan::Fill::graded) {
  SuctionOptions options;
  if (job.design.sumps.empty()) options.at = Place{0, 3.0};
  options.fill = fill;
  options.cell_m = 0.25;
  options.threads = 1;
  options.propose_second = false;
  options.fans = std::move(offered);
  const Study study = studied(job);
  auto answer = studySuction(study, usualSystem(study.site(), fan, false), options);
  EXPECT_TRUE(answer) << answer.problems()[0].message.id;
  return std::move(answer).value();
}

const FanOffer& offerOf(const SuctionAnswer& answer, const std::string& id) {
  const auto found = std::find_if(answer.fans.begin(), answer.fans.end(),
                                  [&](const FanOffer& one) { return one.id == id; });
  EXPECT_NE(found, answer.fans.end()) << id;
  return *found;
}

/// Walls of unknown footing and two sumps: what an offer says is what the study says once that fan
/// is taken.
TEST(SuctionFans, AnOfferIsWhatTheStudySaysWithThatFan) {
  const Fans fans;
  const std::vector<OfferedFan> offered{
      {fans.low, "demo", true}, {fans.middle, "demo", true}, {fans.high, "own", false}};
  for (const bool shared : {false, true}) {
    plan::Job job = PlanBuilder::rectangle(14, 7).sump("s", 0, 3.0).with([](plan::Job& j) {
      j.plan.inner_walls.push_back({"w", {{7, 0.35}, {7, 5}}, 0.1, plan::BelowFloor::unknown});
    });
    plan::Sump other = job.design.sumps[0];
    other.id = "t";
    other.chainage_m = 12.0;
    job.design.sumps.push_back(other);
    job.design.shared_fan = shared;
    const SuctionAnswer here = askedWith(job, fans.middle, offered);
    ASSERT_EQ(here.fans.size(), 3U);
    for (const airflow::Fan& fan : {fans.low, fans.middle, fans.high}) {
      const SuctionAnswer taken = askedWith(job, fan, {});
      EXPECT_THAT(taken.fans, IsEmpty()) << "none was offered";
      const MiddleCase& worst = taken.middle[taken.worst];
      const FanOffer& offer = offerOf(here, fan.id);
      EXPECT_EQ(offer.verdict.held, worst.reach.floor) << fan.id << shared;
      EXPECT_EQ(offer.verdict.duty.lines, worst.duty.lines) << fan.id << shared;
      EXPECT_EQ(offer.verdict.power_w, taken.power_w) << fan.id;
      EXPECT_EQ(offer.taken, fan.id == "middle");
    }
    EXPECT_TRUE(offerOf(here, "low").invented);
    EXPECT_FALSE(offerOf(here, "high").invented);
    EXPECT_EQ(offerOf(here, "high").table, "own");
  }
}

TEST(SuctionFans, TheFanInUseIsAmongThemThoughItWasNotOffered) {
  const Fans fans;
  const SuctionAnswer answer =
      askedWith(PlanBuilder::lShape(), fans.middle, {{fans.low, "demo", true}});
  ASSERT_EQ(answer.fans.size(), 2U);
  EXPECT_TRUE(offerOf(answer, "middle").taken);
  EXPECT_EQ(offerOf(answer, "middle").table, "");
  // Of the same name, but another curve: not the one in use.
  airflow::Fan other = fans.high;
  other.id = other.title = "middle";
  other.source.text = "another table";
  EXPECT_EQ(askedWith(PlanBuilder::lShape(), fans.middle, {{other, "own", false}}).fans.size(), 2U);
}

TEST(SuctionFans, OfThoseThatHoldTheFloorTheOneOfLeastPowerIsFirst) {
  const Fans fans;
  const std::vector<OfferedFan> offered{
      {fans.high, "", false}, {fans.middle, "", false}, {fans.low, "", false}};
  const SuctionAnswer tight = askedWith(PlanBuilder::lShape(), fans.low, offered);
  for (std::size_t k = 1; k < tight.fans.size(); ++k) {
    EXPECT_LE(tight.fans[k - 1].verdict.suits, tight.fans[k].verdict.suits);
  }
  for (const FanOffer& one : tight.fans) {
    EXPECT_EQ(one.verdict.suits == airflow::FanSuits::no, *one.verdict.held < 0.95) << one.id;
  }
  EXPECT_GT(*offerOf(tight, "high").verdict.held, *offerOf(tight, "low").verdict.held);
}

TEST(SuctionFans, NoneWithoutALayer) {
  const Fans fans;
  EXPECT_THAT(
      askedWith(PlanBuilder::lShape(), fans.low, {{fans.low, "", false}}, plan::Fill::none).fans,
      IsEmpty());
}

}  // namespace
}  // namespace sumpwright::siting
