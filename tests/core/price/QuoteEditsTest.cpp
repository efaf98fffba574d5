#include "core/price/Priced.h"
#include "price/QuoteEdits.h"
#include "price/Sources.h"

namespace sumpwright::price {
namespace {

/// An invented design: two fans, an hour of work, and a visit on offer.
Needs inventedNeeds() {
  Needs needs;
  needs.rows = {
      {"fan", NeedKind::material, base::plainText("Fan"), Decimal::of(2), PriceUnit::each},
      {"work_fan", NeedKind::labour, base::plainText("Fitting"), Decimal::of(1), PriceUnit::hour},
      {"visit", NeedKind::optional, base::plainText("Visit"), Decimal::of(1), PriceUnit::each}};
  return needs;
}

PriceBook inventedBook() {
  PriceBook book;
  book.id = "invented";
  book.title = "Invented";
  book.invented = true;
  book.currency = "EUR";
  book.items = {{"fan", "Fan", PriceUnit::each, *Decimal::parse("100.10")},
                {"work_fan", "Fitting", PriceUnit::hour, *Decimal::parse("50")},
                {"visit", "Visit", PriceUnit::each, *Decimal::parse("30")},
                {"tile", "Tiles", PriceUnit::square_metre, *Decimal::parse("9.995")}};
  return book;
}

plan::Quote named(plan::Quote quote) {
  for (std::size_t i = 0; i < quote.lines.size(); ++i) {
    if (quote.lines[i].id.empty()) quote.lines[i].id = "line-" + std::to_string(i);
  }
  return quote;
}

PricedQuote pricedBy(const plan::Quote& quote) {
  return priced(inventedNeeds(), inventedBook(), named(quote)).value();
}

PricedLine lineIn(const plan::Quote& quote, const std::string& item) {
  for (const PricedLine& line : pricedBy(quote).lines) {
    if (line.item == item) return line;
  }
  ADD_FAILURE() << item;
  return {};
}

TEST(QuoteEdits, APartIsChangedAndGivenUpAgain) {
  const plan::Quote none;
  plan::Quote quote = named(withPart(none, lineIn(none, "fan"), LinePart::quantity, "3"));
  EXPECT_EQ(pricedBy(quote).work.coins, 3 * 10010 + 5000);
  const PricedLine line = lineIn(quote, "fan");
  EXPECT_EQ(line.designed, Decimal::of(2));
  EXPECT_EQ(line.book_price, Decimal::parse("100.10"));
  EXPECT_EQ(partOf(quote, line, LinePart::quantity), "3");
  quote = withPart(quote, line, LinePart::unit_price, "90");
  EXPECT_EQ(pricedBy(quote).work.coins, 3 * 9000 + 5000);
  quote = withPart(quote, lineIn(quote, "fan"), LinePart::quantity, "");
  EXPECT_EQ(pricedBy(quote).work.coins, 2 * 9000 + 5000);
  quote = withPart(quote, lineIn(quote, "fan"), LinePart::unit_price, "");
  EXPECT_EQ(quote, none);  // a change that says nothing is none
  EXPECT_EQ(withPart(none, lineIn(none, "fan"), LinePart::text, ""), none);
}

TEST(QuoteEdits, TicksLeaveOutAndTakeUp) {
  const plan::Quote none;
  plan::Quote quote = named(withTick(none, lineIn(none, "fan"), false));
  EXPECT_EQ(lineIn(quote, "fan").state, LineState::left_out);
  EXPECT_EQ(withTick(quote, lineIn(quote, "fan"), true), none);
  quote = named(withTick(none, lineIn(none, "visit"), true));
  EXPECT_EQ(lineIn(quote, "visit").state, LineState::counted);
  EXPECT_EQ(withTick(quote, lineIn(quote, "visit"), false), none);
  // What else the job says of a line stays when it is put back.
  quote = named(withPart(none, lineIn(none, "fan"), LinePart::quantity, "3"));
  quote = withTick(quote, lineIn(quote, "fan"), false);
  quote = withTick(quote, lineIn(quote, "fan"), true);
  EXPECT_EQ(lineIn(quote, "fan").quantity, Decimal::of(3));
}

TEST(QuoteEdits, WordsAndFiguresOfAnOfferedLineDoNotTakeItUp) {
  const plan::Quote none;
  const PricedQuote before = pricedBy(none);
  plan::Quote quote = named(withPart(none, lineIn(none, "visit"), LinePart::text, "A visit more"));
  quote = withPart(quote, lineIn(quote, "visit"), LinePart::unit_price, "44");
  PricedLine line = lineIn(quote, "visit");
  EXPECT_EQ(line.state, LineState::optional);
  EXPECT_EQ(line.text, base::plainText("A visit more"));
  EXPECT_EQ(line.total, Money{4400});
  EXPECT_EQ(pricedBy(quote).work, before.work);
  quote = withTick(quote, line, true);
  EXPECT_EQ(lineIn(quote, "visit").state, LineState::counted);
  EXPECT_EQ(pricedBy(quote).work.coins, before.work.coins + 4400);
  // Offered again it keeps its words; without any it is the design's.
  quote = withTick(quote, lineIn(quote, "visit"), false);
  EXPECT_EQ(lineIn(quote, "visit").state, LineState::optional);
  EXPECT_EQ(lineIn(quote, "visit").text, base::plainText("A visit more"));
  quote = withPart(quote, lineIn(quote, "visit"), LinePart::text, "");
  quote = withPart(quote, lineIn(quote, "visit"), LinePart::unit_price, "");
  EXPECT_EQ(quote, none);
}

TEST(QuoteEdits, ALineOfTheJobsOwnHasAUnitAndIsBoughtUnlessItIsWorkOrADiscount) {
  const plan::Quote none;
  plan::Quote quote = named(withNewLine(none, "", "Skip for spoil"));
  EXPECT_EQ(pricedBy(quote).lines.back().unit, PriceUnit::each);
  quote = withUnit(quote, pricedBy(quote).lines.back(), PriceUnit::square_metre);
  const PricedLine skip = pricedBy(quote).lines.back();
  EXPECT_EQ(skip.unit, PriceUnit::square_metre);
  EXPECT_EQ(skip.kind, NeedKind::material);
  quote = named(withNewLine(quote, "", "Moving furniture", plan::QuoteKind::labour));
  EXPECT_EQ(pricedBy(quote).lines.back().unit, PriceUnit::hour);
  EXPECT_EQ(pricedBy(quote).lines.back().kind, NeedKind::labour);
  EXPECT_EQ(sourceOf(pricedBy(quote).lines.back()).id, "price.from.own-work");
  quote = named(withNewLine(quote, "", "Discount"));
  quote = withPart(quote, pricedBy(quote).lines.back(), LinePart::unit_price, "-5");
  std::vector<std::string> bought;
  for (const PricedLine& line : shoppingOf(pricedBy(quote)))
    bought.push_back(line.item.empty() ? line.change : line.item);
  EXPECT_EQ(bought, (std::vector<std::string>{"fan", "line-0"}));
  // The unit of an item is the book's.
  EXPECT_EQ(withUnit(none, lineIn(none, "fan"), PriceUnit::metre), none);
}

TEST(QuoteEdits, LinesAreAddedAndTakenOut) {
  const plan::Quote none;
  EXPECT_EQ(withNewLine(none, "", ""), none);
  plan::Quote quote = named(withNewLine(none, "tile", ""));
  EXPECT_EQ(lineIn(quote, "tile").designed, std::nullopt);
  EXPECT_EQ(lineIn(quote, "tile").total, Money{1000});  // 9.995 to the cent, away from zero
  quote = named(withNewLine(quote, "", "Own"));
  const PricedLine own = pricedBy(quote).lines.back();
  EXPECT_EQ(own.change, "line-1");
  quote = withPart(quote, own, LinePart::unit_price, "-5");
  EXPECT_EQ(pricedBy(quote).lines.back().total, Money{-500});
  quote = withTick(quote, own, false);
  EXPECT_EQ(pricedBy(quote).lines.back().state, LineState::left_out);
  quote = withoutChange(quote, own);
  EXPECT_EQ(withoutChange(quote, lineIn(quote, "tile")), none);
}

TEST(QuoteEdits, EveryLineSaysWhereItIsFrom) {
  const plan::Quote none;
  EXPECT_EQ(sourceOf(lineIn(none, "fan")).id, "price.from.each-fan");
  EXPECT_EQ(sourceOf(lineIn(none, "work_fan")).id, "price.from.hours");
  EXPECT_EQ(sourceOf(lineIn(none, "visit")).id, "price.from.offered");
  const plan::Quote quote = named(withNewLine(named(withNewLine(none, "tile", "")), "", "Own"));
  EXPECT_EQ(sourceOf(lineIn(quote, "tile")).id, "price.from.book");
  EXPECT_EQ(sourceOf(pricedBy(quote).lines.back()).id, "price.from.own");
}

TEST(Quote, ATotalWithLinesThatHaveNoPriceIsNoTotal) {
  PriceBook book = inventedBook();
  EXPECT_EQ(totalName(priced(inventedNeeds(), book, {}).value()), "total-without-tax");
  book.tax_percent = Decimal::of(20);
  EXPECT_EQ(totalName(priced(inventedNeeds(), book, {}).value()), "total");
  book.items.erase(book.items.begin());
  EXPECT_EQ(totalName(priced(inventedNeeds(), book, {}).value()), "incomplete");
  const std::string csv = quoteCsv(priced(inventedNeeds(), book, {}).value(),
                                   [](const base::Message& m) { return m.id; });
  EXPECT_NE(csv.find("total,,incomplete,"), std::string::npos) << csv;
  EXPECT_EQ(csv.find("total,,total,"), std::string::npos) << csv;
}

TEST(Quote, AMarginAboveTheWorkItselfIsAskedAbout) {
  const auto asked = [](const char* percent) {
    plan::Quote quote;
    quote.margin_percent = percent;
    return remarked(pricedBy(quote).remarks, "price.large-margin");
  };
  EXPECT_FALSE(asked("100"));
  EXPECT_TRUE(asked("100.5"));
  EXPECT_TRUE(asked("500"));
}

TEST(Quote, NumberIsTheJobsOrMadeOfDateAndJob) {
  plan::Job job;
  job.id = "job-4f2a";
  EXPECT_EQ(quoteNumber(job, "2026-06-02"), "20260602-job-4f2a");
  EXPECT_EQ(quoteNumber(job, ""), "job-4f2a");
  job.design.quote.date = "2026-03-31";
  EXPECT_EQ(quoteNumber(job, "2026-06-02"), "20260331-job-4f2a");
  job.design.quote.number = "Q 17";
  EXPECT_EQ(quoteNumber(job, "2026-06-02"), "Q 17");
  EXPECT_EQ(pricedBy(job.design.quote).number, "Q 17");
}

TEST(PriceBookText, AFigureTypedIsToldInWordsOfAWindow) {
  EXPECT_EQ(typedDecimal("12,5").problems()[0].message.id, "prices.typed");
  EXPECT_EQ(typedDecimal("-1").problems()[0].message.id, "prices.negative");
  EXPECT_EQ(typedDecimal("12.5")->text(), "12.5");
}

TEST(Rounding, BringsTheTotalToAMultiple) {
  PriceBook book = inventedBook();
  book.round_to = Decimal::of(5);
  const PricedQuote up = priced(inventedNeeds(), book, {}).value();
  EXPECT_EQ(up.net.coins, 25020);
  EXPECT_EQ(up.total.coins, 25000);
  EXPECT_EQ(up.rounding.coins, -20);
  book.round_to = Decimal::parse("0.05");
  EXPECT_EQ(priced(inventedNeeds(), book, {})->rounding.coins, 0);
  book.round_to.reset();
  EXPECT_EQ(priced(inventedNeeds(), book, {})->total.coins, 25020);
  // Half away from zero, on both sides.
  EXPECT_EQ(toMultiple({250}, Decimal::of(5), 2), Money{500});
  EXPECT_EQ(toMultiple({-250}, Decimal::of(5), 2), Money{-500});
  EXPECT_EQ(toMultiple({249}, Decimal::of(5), 2), Money{0});
  EXPECT_EQ(toMultiple({1}, *Decimal::parse("0.001"), 2), std::nullopt);
}

TEST(PriceBookText, IsReadAsTheBookItWasWrittenOf) {
  PriceBook book = inventedBook();
  book.note = "“Quotes”, \\ and a\nnew line";
  book.round_to = Decimal::parse("0.05");
  book.tax_percent = Decimal::parse("13.5");
  book.per_kwh = Decimal::parse("0.3125");
  const auto read = readPriceBook(priceBookText(book));
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(priceBookText(*read), priceBookText(book));
  EXPECT_EQ(read->note, book.note);
  EXPECT_EQ(read->round_to, book.round_to);
  EXPECT_EQ(read->tax_percent, book.tax_percent);
  EXPECT_EQ(read->margin_percent, std::nullopt);
  EXPECT_EQ(read->items.size(), book.items.size());
  EXPECT_EQ(read->find("tile")->price.text(), "9.995");
  EXPECT_TRUE(read->invented);
}

std::string problemOf(const std::string& more, std::string& place) {
  const auto read = readPriceBook(
      R"({"format": "sumpwright.prices", "version": 1, "id": "x", "title": "X", "currency": "EUR", )" +
      more + "}");
  const base::Problems problems = read.problems();
  place = problems.empty() ? "" : problems[0].pointer;
  return problems.empty() ? "" : problems[0].message.id;
}

TEST(PriceBookText, WhatIsSoldInWholeIsTakenWhole) {
  PriceBook book = inventedBook();
  book.items.push_back(
      {"rod", "Rod, invented", PriceUnit::metre, Decimal::of(2), {}, Decimal::of(3)});
  book.items.push_back(
      {"nail", "Nail, invented", PriceUnit::each, Decimal::of(1), {}, Decimal::of(100)});
  const auto reread = readPriceBook(priceBookText(book));
  ASSERT_TRUE(reread.ok());
  const auto lineOf = [&](const char* item, PriceUnit unit, const char* quantity) {
    Needs needs;
    needs.rows.push_back(
        {item, NeedKind::material, base::plainText(item), *Decimal::parse(quantity), unit});
    return priced(needs, *reread, {})->lines[0];
  };
  const auto packs = [&](const char* item, PriceUnit unit, const char* quantity) {
    return packCount(lineOf(item, unit, quantity));
  };
  EXPECT_EQ(packs("rod", PriceUnit::metre, "4.2"), 2);
  EXPECT_EQ(packs("rod", PriceUnit::metre, "6"), 2);
  EXPECT_EQ(packs("rod", PriceUnit::metre, "6.000001"), 3);
  EXPECT_EQ(packs("rod", PriceUnit::metre, "0"), 0);
  EXPECT_EQ(packs("nail", PriceUnit::each, "100"), 1);
  EXPECT_EQ(packs("nail", PriceUnit::each, "101"), 2);
  // By another unit than the book's its lengths say nothing; a thing without any is asked for so.
  EXPECT_EQ(packs("rod", PriceUnit::each, "4"), 0);
  EXPECT_EQ(packsOf(lineOf("tile", PriceUnit::each, "4")), std::nullopt);
  // The price is for the unit all the same.
  const PricedLine rod = lineOf("rod", PriceUnit::metre, "4.2");
  EXPECT_EQ(rod.total, Money{840});
  EXPECT_EQ(std::get<std::string>(packsOf(rod)->find("size")->value), "3 m");
}

TEST(PriceBookText, NegativePricesTwoCurrenciesAndOddRoundingHaveAPlace) {
  std::string place;
  EXPECT_EQ(problemOf(R"("items": [{"id": "a", "title": "A", "unit": "m", "price": "-1"}])", place),
            "prices.negative");
  EXPECT_EQ(place, "/items/0/price");
  EXPECT_EQ(problemOf(R"("items": [{"id": "a", "title": "A", "unit": "m", "price": "1",
                                    "currency": "GBP"}])",
                      place),
            "prices.two-currencies");
  EXPECT_EQ(place, "/items/0/currency");
  for (const char* step : {"0", "0.001", "0.015"}) {
    EXPECT_EQ(problemOf(R"("items": [], "round_to": ")" + std::string(step) + "\"", place),
              "prices.round")
        << step;
    EXPECT_EQ(place, "/round_to");
  }
  EXPECT_EQ(problemOf(R"("items": [], "round_to": "0.05")", place), "");
  EXPECT_EQ(problemOf(R"("items": [{"id": "a", "title": "A", "unit": "m", "price": "1",
                                    "sold_in": "0"}])",
                      place),
            "prices.sold-in");
  EXPECT_EQ(place, "/items/0/sold_in");
}

}  // namespace
}  // namespace sumpwright::price
