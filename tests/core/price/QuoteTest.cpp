#include <boost/multiprecision/cpp_dec_float.hpp>

#include "core/price/Priced.h"
#include "price/Quote.h"

namespace sumpwright::price {
namespace {

using Hundred = boost::multiprecision::cpp_dec_float_100;

Need need(const char* item, NeedKind kind, int quantity) {
  return {item, kind, base::Message(std::string("price.item.") + item), Decimal::of(quantity),
          PriceUnit::each};
}

/// Invented: bends at 7.25, clips at 0.125, a scaffold at 380, pipe by the metre.
PriceBook smallBook() {
  PriceBook book;
  book.id = "small";
  book.currency = "EUR";
  const auto item = [&](const char* id, PriceUnit unit, const char* price) {
    book.items.push_back({id, id, unit, Decimal::parse(price).value()});
  };
  item("bend", PriceUnit::each, "7.25");
  item("cable_clip", PriceUnit::each, "0.125");
  item("scaffold", PriceUnit::each, "380");
  item("pipe", PriceUnit::metre, "9.4");
  return book;
}

Needs smallNeeds() {
  return {{need("bend", NeedKind::material, 3), need("cable_clip", NeedKind::material, 33),
           need("scaffold", NeedKind::optional, 1)},
          {}};
}

const PricedLine& lineFor(const PricedQuote& quote, const std::string& item) {
  return *std::find_if(quote.lines.begin(), quote.lines.end(),
                       [&](const PricedLine& line) { return line.item == item; });
}

PricedQuote pricedSmall(const plan::Quote& quote = {}) {
  return priced(smallNeeds(), smallBook(), quote).value();
}

plan::QuoteLine change(const char* item, const char* quantity, const char* price) {
  plan::QuoteLine line;
  line.item = item;
  line.quantity = quantity;
  line.unit_price = price;
  return line;
}

TEST(Quote, OptionalLinesAreOfferedNotCounted) {
  const PricedQuote quote = pricedSmall();
  EXPECT_EQ(quote.work.coins, 2175 + 413);  // 33 x 0.125 = 4.125, up
  EXPECT_EQ(lineFor(quote, "scaffold").state, LineState::optional);
  EXPECT_EQ(lineFor(quote, "scaffold").total->coins, 38000);
  EXPECT_EQ(quote.total, quote.work);
  EXPECT_TRUE(remarked(quote.remarks, "price.no-tax"));
}

TEST(Quote, TheJobsLineReplacesTakesUpAndLeavesOut) {
  plan::Quote changes;
  changes.lines = {change("bend", "2", ""), change("scaffold", "", "350.5"),
                   change("cable_clip", "", "")};
  changes.lines[2].left_out = true;
  const PricedQuote quote = pricedSmall(changes);
  EXPECT_EQ(lineFor(quote, "bend").total->coins, 1450);
  EXPECT_TRUE(lineFor(quote, "bend").changed);
  EXPECT_EQ(lineFor(quote, "scaffold").state, LineState::counted);
  EXPECT_EQ(quote.work.coins, 1450 + 35050);
  for (const PricedLine& line : shoppingOf(quote)) EXPECT_NE(line.item, "cable_clip");
}

TEST(Quote, MarginThenProvisionalSumThenTax) {
  plan::Quote changes;
  changes.margin_percent = "12.5";
  changes.provisional = "100";
  changes.tax_percent = "13.5";
  const PricedQuote quote = pricedSmall(changes);
  EXPECT_EQ(quote.margin.coins, 324);  // 25.88 x 12.5 % = 3.235
  EXPECT_EQ(quote.net.coins, 2588 + 324 + 10000);
  EXPECT_EQ(quote.tax.coins, 1743);  // 129.12 x 13.5 % = 17.4312
  EXPECT_EQ(quote.total.coins, 12912 + 1743);
  EXPECT_FALSE(remarked(quote.remarks, "price.no-tax"));
}

TEST(Quote, AnItemWithoutAPriceIsInNoTotalAndTold) {
  Needs needs = smallNeeds();
  needs.rows.push_back(need("fan", NeedKind::material, 1));
  needs.rows.push_back(need("pipe", NeedKind::material, 4));  // the book has it by the metre
  const auto quote = priced(needs, smallBook(), {});
  EXPECT_EQ(quote->unpriced(), 2U);
  EXPECT_EQ(quote->work.coins, 2588);
  EXPECT_TRUE(remarked(quote->remarks, "price.unpriced"));
  EXPECT_TRUE(remarked(quote->remarks, "price.other-unit"));
}

TEST(Quote, OwnLinesAndDiscounts) {
  plan::Quote changes;
  changes.lines = {change("", "", "-5"), change("pipe", "1.5", "")};
  changes.lines[0].text = "Neighbour's discount";
  const PricedQuote quote = pricedSmall(changes);
  EXPECT_EQ(quote.work.coins, 2588 - 500 + 1410);
}

TEST(Quote, WhatDoesNotFitIsAProblem) {
  plan::Quote changes;
  changes.lines = {change("bend", "999999999999", "999999999999")};
  EXPECT_EQ(priced(smallNeeds(), smallBook(), changes).problems()[0].message.id, "price.too-large");
}

TEST(Quote, ALineOfTheBookIsOfItsKind) {
  PriceBook book = smallBook();
  book.items.push_back(
      {"scaffolds", "Scaffold", PriceUnit::each, Decimal::of(380), NeedKind::optional});
  plan::Quote changes;
  changes.lines = {change("scaffolds", "1", ""), change("pipe", "2", "")};
  const PricedQuote quote = priced(smallNeeds(), book, changes).value();
  EXPECT_EQ(lineFor(quote, "scaffolds").state, LineState::counted);
  const auto bought = shoppingOf(quote);
  const auto buys = [&](const char* item) {
    return std::any_of(bought.begin(), bought.end(),
                       [&](const PricedLine& line) { return line.item == item; });
  };
  EXPECT_TRUE(buys("pipe"));
  EXPECT_FALSE(buys("scaffolds"));
}

TEST(Quote, HoldsSoManyDays) {
  EXPECT_EQ(daysAfter("2026-01-31", 30), "2026-03-02");
  EXPECT_EQ(daysAfter("2028-02-28", 1), "2028-02-29");
  EXPECT_EQ(daysAfter("2026-02-30", 1), "");
  EXPECT_EQ(daysAfter("soon", 1), "");
}

TEST(QuoteCsv, KeepsCommasQuotesAndTakesTheEdgeOffFormulas) {
  plan::Quote changes;
  changes.lines = {change("", "1", "-5"), change("", "1", "2")};
  changes.lines[0].text = "=1+1";
  changes.lines[1].text = "Frame, 4\" wide";
  const auto say = [](const base::Message& message) {
    const base::Arg* text = message.find("text");
    return text == nullptr ? message.id : std::get<std::string>(text->value);
  };
  const std::string csv = quoteCsv(pricedSmall(changes), say);
  EXPECT_NE(csv.find("material,counted,,'=1+1,1,each,-5,-5.00,-5.00,\r\n"), std::string::npos)
      << csv;
  EXPECT_NE(csv.find(",\"Frame, 4\"\" wide\",1,each,2,2.00,2.00,\r\n"), std::string::npos) << csv;
  EXPECT_NE(csv.find("total,,total-without-tax,"), std::string::npos);
  EXPECT_NE(csv.find(",380.00,,\r\n"), std::string::npos) << csv;  // offered: not counted
  EXPECT_EQ(csv.find("\n\n"), std::string::npos);
  EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), std::count(csv.begin(), csv.end(), '\r'));
}

std::string randomDecimal(support::Random& random, int most) {
  return Decimal::ofMillionths(random.between(0, most)).text();
}

std::int64_t halfUp(const Hundred& coins) {
  return static_cast<std::int64_t>(boost::multiprecision::trunc(coins + Hundred(0.5)));
}

/// Totals reckoned a second time, from the printed texts, by decimals of a hundred digits.
TEST(QuoteProperty, TotalsAgreeWithASecondReckoning) {
  support::forEachSeed(200, [](std::uint64_t seed) {
    support::Random random(seed);
    plan::Quote changes;
    changes.margin_percent = randomDecimal(random, 40'000'000);
    changes.tax_percent = randomDecimal(random, 30'000'000);
    changes.provisional = randomDecimal(random, 900'000'000);
    for (int i = random.between(1, 20); i > 0; --i) {
      changes.lines.push_back(change("", randomDecimal(random, 50'000'000).c_str(),
                                     randomDecimal(random, 900'000'000).c_str()));
      changes.lines.back().left_out = random.chance(0.2);
    }
    const PricedQuote quote = pricedSmall(changes);
    std::int64_t work = 0;
    for (const PricedLine& line : quote.lines) {
      if (line.state != LineState::counted) continue;
      work += halfUp(Hundred(line.quantity.text()) * Hundred(line.unit_price->text()) * 100);
    }
    const std::int64_t margin = halfUp(Hundred(work) * Hundred(changes.margin_percent) / 100);
    const std::int64_t net = work + margin + halfUp(Hundred(changes.provisional) * 100);
    const std::int64_t tax = halfUp(Hundred(net) * Hundred(changes.tax_percent) / 100);
    EXPECT_EQ(quote.work.coins, work);
    EXPECT_EQ(quote.net.coins, net);
    EXPECT_EQ(quote.total.coins, net + tax);
  });
}

plan::Quote withMargin(const char* percent, plan::MarginShown shown) {
  plan::Quote quote;
  quote.margin_percent = percent;
  quote.margin_shown = shown;
  return quote;
}

TEST(Quote, MarginWithinTheLinesLosesNoCoin) {
  support::forEachSeed(200, [](std::uint64_t seed) {
    support::Random random(seed);
    plan::Quote changes = withMargin("17.3", plan::MarginShown::in_lines);
    for (int k = 0; k < 12; ++k) {
      plan::QuoteLine line =
          change("", "1", (std::to_string(random.between(-200, 5000)) + ".37").c_str());
      line.text = "own";
      changes.lines.push_back(line);
    }
    const PricedQuote quote = pricedSmall(changes);
    plan::Quote apart = changes;
    apart.margin_shown = plan::MarginShown::own_line;
    EXPECT_EQ(quote.total, pricedSmall(apart).total);
    std::int64_t shown = 0;
    double bearing = 0.0;
    for (const PricedLine& line : quote.lines) {
      if (line.state == LineState::counted && line.total->coins > 0)
        bearing += static_cast<double>(line.total->coins);
    }
    for (const PricedLine& line : quote.lines) {
      if (line.state != LineState::counted) continue;
      shown += line.shown->coins;
      // A discount stands as it was given; each other has its own share but for rounding.
      const auto total = static_cast<double>(line.total->coins);
      const double share = total > 0.0 ? static_cast<double>(quote.margin.coins) / bearing : 0.0;
      EXPECT_NEAR(static_cast<double>(line.shown->coins), (1.0 + share) * total, 1.01);
    }
    EXPECT_EQ(shown, quote.work.coins + quote.margin.coins);
    EXPECT_EQ(workShown(quote).coins, shown);
  });
}

TEST(Quote, ADiscountIsShownAsItWasGivenAlsoWithTheMarginInTheLines) {
  plan::Quote terms = withMargin("12.5", plan::MarginShown::in_lines);
  plan::QuoteLine discount = change("", "1", "-20");
  discount.text = "for a neighbour";
  terms.lines.push_back(discount);
  const PricedQuote quote = pricedSmall(terms);
  EXPECT_EQ(quote.lines.back().shown->coins, -2000);
  EXPECT_FALSE(remarked(quote.remarks, "price.negative-total"));
  terms.lines.back().unit_price = "-2000";
  EXPECT_TRUE(remarked(pricedSmall(terms).remarks, "price.negative-total"));
}

TEST(Quote, WhatIsOfferedWithoutAPriceIsTold) {
  PriceBook book = smallBook();
  std::erase_if(book.items, [](const PriceItem& item) { return item.id == "scaffold"; });
  const PricedQuote quote = priced(smallNeeds(), book, {}).value();
  EXPECT_TRUE(remarked(quote.remarks, "price.unpriced-offer"));
  EXPECT_EQ(quote.unpriced(), 0U);  // the sum is whole
  book.items.push_back({"scaffold", "scaffold", PriceUnit::hour, Decimal::of(40)});
  EXPECT_TRUE(remarked(priced(smallNeeds(), book, {}).value().remarks, "price.other-unit-offer"));
  plan::Quote without;
  without.lines.push_back(change("scaffold", "", ""));
  without.lines.back().left_out = true;
  EXPECT_FALSE(
      remarked(priced(smallNeeds(), book, without).value().remarks, "price.other-unit-offer"));
}

TEST(Quote, NoSumStandsTwice) {
  const auto names = [](const plan::Quote& terms) {
    std::string out;
    for (const TotalLine& line : totalsOf(pricedSmall(terms))) out += std::string(line.name) + ' ';
    return out;
  };
  EXPECT_EQ(names({}), "total-without-tax ");
  EXPECT_EQ(names(withMargin("10", plan::MarginShown::own_line)), "work margin total-without-tax ");
  plan::Quote taxed;
  taxed.tax_percent = "13.5";
  EXPECT_EQ(names(taxed), "work tax total ");
  taxed.margin_percent = "10";
  EXPECT_EQ(names(taxed), "work margin net tax total ");
}

TEST(Quote, WithoutADateItsDaysAreCountedFromThePaper) {
  plan::Quote terms;
  terms.valid_days = 30;
  EXPECT_TRUE(remarked(pricedSmall(terms).remarks, "price.expiry-from-print"));
  EXPECT_FALSE(remarked(pricedSmall(terms).remarks, "price.no-expiry"));
  EXPECT_TRUE(remarked(pricedSmall().remarks, "price.no-expiry"));
}

TEST(Quote, MarginWithinTheLinesShowsInWhatIsOfferedToo) {
  const PricedQuote quote = pricedSmall(withMargin("10", plan::MarginShown::in_lines));
  EXPECT_TRUE(quote.margin_in_lines);
  EXPECT_EQ(lineFor(quote, "scaffold").shown->coins, 41800);
  EXPECT_EQ(lineFor(quote, "scaffold").total->coins, 38000);
}

TEST(Quote, TheBookSaysHowAMarginIsShownUnlessTheJobDoes) {
  PriceBook book = smallBook();
  book.margin_shown = plan::MarginShown::in_lines;
  const auto shown = [&](plan::MarginShown job) {
    return priced(smallNeeds(), book, withMargin("10", job)).value().margin_in_lines;
  };
  EXPECT_TRUE(shown(plan::MarginShown::as_book));
  EXPECT_FALSE(shown(plan::MarginShown::own_line));
  EXPECT_FALSE(pricedSmall(withMargin("10", plan::MarginShown::as_book)).margin_in_lines);
  EXPECT_FALSE(priced(smallNeeds(), book, {}).value().margin_in_lines);  // no margin, none within
}

TEST(Quote, MarginWithinTheLinesIsInNoRowOfTheCsv) {
  const auto say = [](const base::Message& m) { return m.id; };
  const std::string csv = quoteCsv(pricedSmall(withMargin("10", plan::MarginShown::in_lines)), say);
  EXPECT_EQ(csv.find("price.total.margin"), std::string::npos);
  EXPECT_NE(csv.find("material,counted,bend,price.item.bend,3,each,,23.9"), std::string::npos)
      << csv;
}

}  // namespace
}  // namespace sumpwright::price
