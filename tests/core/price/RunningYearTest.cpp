#include <gtest/gtest.h>

#include "price/RunningYear.h"

namespace sumpwright::price {
namespace {

const base::Message* lineCalled(const std::vector<base::Message>& lines, const std::string& id) {
  for (const base::Message& one : lines) {
    if (one.id == id) return &one;
  }
  return nullptr;
}

Tariff at(const char* price) {
  Tariff tariff;
  tariff.per_kwh = Decimal::parse(price);
  tariff.currency = "EUR";
  tariff.from = PriceFrom::job;
  return tariff;
}

TEST(RunningYear, HeatOfSixtyCubicMetresAtHalfHouseAir) {
  // 0.34 x 60 x 0.5 x 2200 x 24 / 1000 = 538.56; with a fifth 215.424, with four fifths 861.696
  const RunningYear year = runningYear(60.0, {}, {}, {});
  EXPECT_NEAR(year.heat.middle.kwh, 538.56, 1e-9);
  EXPECT_NEAR(year.heat.low.kwh, 215.424, 1e-9);
  EXPECT_NEAR(year.heat.high.kwh, 861.696, 1e-9);
  EXPECT_TRUE(year.degree_days_assumed);
  EXPECT_TRUE(year.share_assumed);
  EXPECT_FALSE(year.heat.middle.cost);
  EXPECT_TRUE(lineCalled(year.lines, "running.no-power"));
  EXPECT_TRUE(lineCalled(year.lines, "running.heat"));
  EXPECT_FALSE(year.together);
  EXPECT_TRUE(lineCalled(year.how, "running.no-price"));
}

TEST(RunningYear, FanThatNeverStopsAndItsCost) {
  const RunningYear year = runningYear(60.0, 50.0, {}, at("0.30"));
  EXPECT_NEAR(year.fan->kwh, 438.0, 1e-9);       // 50 W x 8760 h
  EXPECT_EQ(year.fan->cost->coins, 131);         // 131.40
  EXPECT_EQ(year.heat.middle.cost->coins, 162);  // 539 kWh: 161.70
  EXPECT_EQ(year.together->middle.cost->coins, 131 + 162);
  EXPECT_NEAR(year.together->low.kwh, 438.0 + 215.424, 1e-9);
  EXPECT_TRUE(lineCalled(year.lines, "running.together-price"));
  EXPECT_TRUE(lineCalled(year.how, "running.heat-as-electricity"));
}

TEST(RunningYear, TakesTheJobsOwnFigures) {
  plan::Running own;
  own.degree_days = 3000.0;
  own.house_air = 0.25;
  Tariff tariff = at("0.3");
  tariff.heat_per_kwh = Decimal::parse("0.1");
  const RunningYear year = runningYear(100.0, 20.0, own, tariff);
  EXPECT_NEAR(year.heat.middle.kwh, 612.0, 1e-9);  // 0.34 x 100 x 0.25 x 3000 x 24 / 1000
  EXPECT_EQ(year.heat.low.kwh, year.heat.high.kwh);
  EXPECT_EQ(year.heat.middle.cost->coins, 61);  // 61.20
  EXPECT_TRUE(lineCalled(year.lines, "running.heat-stated-price"));
  EXPECT_TRUE(lineCalled(year.how, "running.heat-at"));
  const base::Message how = *lineCalled(year.how, "running.how");
  EXPECT_EQ(std::get<base::Message>(how.find("days")->value).id, "running.days");
  EXPECT_EQ(std::get<base::Message>(how.find("share")->value).id, "running.share");
}

TEST(RunningYear, NoHouseAirIsNoHeat) {
  plan::Running own;
  own.house_air = 0.0;
  EXPECT_EQ(runningYear(100.0, 20.0, own, at("1")).heat.high.cost->coins, 0);
}

TEST(Tariff, JobThenBookThenFirm) {
  PriceBook book;
  book.currency = "EUR";
  book.per_kwh = Decimal::parse("0.31");
  const Tariff firm = firmTariff(0.35, "EUR");
  plan::Running own;
  EXPECT_EQ(tariffOf(own, nullptr, firm), firm);
  EXPECT_EQ(firm.per_kwh->text(), "0.35");
  const Tariff from_book = tariffOf(own, &book, firm);
  EXPECT_EQ(from_book.per_kwh->text(), "0.31");
  EXPECT_EQ(from_book.from, PriceFrom::book);
  book.invented = true;
  // What the firm says of itself goes before what nobody says.
  EXPECT_EQ(tariffOf(own, &book, firm).from, PriceFrom::firm);
  EXPECT_EQ(tariffOf(own, &book, firm).per_kwh->text(), "0.35");
  EXPECT_EQ(tariffOf(own, &book).from, PriceFrom::invented_book);
  EXPECT_EQ(tariffOf(own, &book, firmTariff(0.35, "GBP")).from, PriceFrom::invented_book);
  own.per_kwh = "0.2";
  EXPECT_EQ(tariffOf(own, &book, firm).per_kwh->text(), "0.2");
  EXPECT_EQ(tariffOf(own, &book, firm).from, PriceFrom::job);
}

TEST(Tariff, AFirmsPriceInAnotherCurrencyIsNone) {
  PriceBook book;
  book.currency = "GBP";
  const Tariff tariff = tariffOf({}, &book, firmTariff(0.35, "EUR"));
  EXPECT_FALSE(tariff.per_kwh);
  EXPECT_EQ(tariff.currency, "GBP");
}

TEST(Tariff, APriceOfNothingIsNone) {
  EXPECT_FALSE(firmTariff(0.0, "EUR").per_kwh);
  EXPECT_FALSE(firmTariff({}, "EUR").per_kwh);
  EXPECT_FALSE(firmTariff(-1.0, "EUR").per_kwh);
}

TEST(RunningYear, CountsWithTheAirThatIsToldOfTheFan) {
  siting::SuctionAnswer answer;
  answer.state = siting::SuctionState::answered;
  answer.flow_m3_s.middle = 25.0 / 3600.0;  // of the guesses: another figure
  answer.middle.resize(1);
  answer.middle[0].duty.legs.resize(2);
  for (auto& leg : answer.middle[0].duty.legs) leg.total = base::Flow::ofM3PerH(12.0);
  EXPECT_NEAR(runningYear(answer, {}, {})->flow_m3_h, 24.0, 1e-9);
}

}  // namespace
}  // namespace sumpwright::price
