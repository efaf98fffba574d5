#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "price/PriceBook.h"
#include "resources/BuiltIn.h"

namespace sumpwright::price {
namespace {

using ::testing::ElementsAre;

std::vector<std::string> bookProblems(const std::string& text) {
  std::vector<std::string> out;
  for (const base::Problem& problem : readPriceBook(text).problems())
    out.push_back(problem.message.id + problem.pointer);
  return out;
}

std::string bookWith(const std::string& rest) {
  return R"({"format": "sumpwright.prices", "version": 1, "id": "own", "title": "Own", )" + rest +
         "}";
}

TEST(PriceBook, TheBuiltInOneReadsAndSaysThatItIsInvented) {
  for (const resources::BuiltInFile& file : resources::builtInPriceBooks()) {
    const auto book = readPriceBook(file.text);
    ASSERT_TRUE(book.ok());
    EXPECT_EQ(book->id, file.id);
    EXPECT_TRUE(book->invented);
    EXPECT_FALSE(book->tax_percent) << "a rate is the firm's to state";
    EXPECT_EQ(book->find("cable_clip")->price.text(), "0.125");
    EXPECT_EQ(book->find("nothing"), nullptr);
  }
}

TEST(PriceBook, EveryMistakeIsToldAtItsPlace) {
  EXPECT_THAT(bookProblems("{"), ElementsAre("prices.not-json"));
  EXPECT_THAT(bookProblems("[]"), ElementsAre("prices.not-a-book"));
  EXPECT_THAT(bookProblems(R"({"format": "sumpwright.prices", "version": 2})"),
              ElementsAre("prices.version/version"));
  EXPECT_THAT(bookProblems(bookWith(R"("currency": "eur", "minor_digits": 9, "items": [
      {"id": "a", "title": "A", "unit": "each", "price": 1.5},
      {"id": "a", "title": "A", "unit": "mile", "price": "-1"}, 3], "colour": "")")),
              ElementsAre("prices.unknown-key/colour", "prices.not-currency/currency",
                          "prices.minor-digits/minor_digits", "prices.wrong-type/items/0/price",
                          "prices.negative/items/1/price", "prices.unknown-word/items/1/unit",
                          "prices.repeated/items/1/id", "prices.wrong-type/items/2"));
  EXPECT_THAT(bookProblems(bookWith(R"("currency": "EUR")")), ElementsAre("prices.missing-key"));
}

TEST(PriceBook, RatesAreDecimalTextAndMayBeMissing) {
  const auto book = readPriceBook(
      bookWith(R"("currency": "EUR", "items": [], "tax_percent": "13.5", "per_kwh": "0.3012")"));
  ASSERT_TRUE(book.ok());
  EXPECT_EQ(book->tax_percent->text(), "13.5");
  EXPECT_EQ(book->per_kwh->text(), "0.3012");
  EXPECT_FALSE(book->margin_percent);
}

}  // namespace
}  // namespace sumpwright::price
