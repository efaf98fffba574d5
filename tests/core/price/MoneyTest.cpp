#include <gtest/gtest.h>

#include <boost/multiprecision/cpp_dec_float.hpp>

#include "price/Money.h"
#include "support/Seed.h"

namespace sumpwright::price {
namespace {

using Exact = boost::multiprecision::cpp_dec_float_100;

Decimal decimal(const std::string& text) { return Decimal::parse(text).value(); }

TEST(Decimal, ReadsAndWritesEveryDigit) {
  for (const char* text : {"0", "1", "12.5", "-0.000001", "999999999999.999999", "0.1"})
    EXPECT_EQ(decimal(text).text(), text);
  EXPECT_EQ(decimal("012.500").text(), "12.5");
  EXPECT_EQ(decimal("12.5").text(2), "12.50");
  EXPECT_EQ(decimal("12").text(2), "12.00");
  EXPECT_EQ(decimal("0.125").text(2), "0.125");
  for (const char* text : {"", ".5", "1.", "1,5", "1e3", "+1", " 1", "1.0000001", "1000000000000"})
    EXPECT_FALSE(Decimal::parse(text)) << text;
}

TEST(Decimal, MeasuresGoUpToTheNextTenth) {
  EXPECT_EQ(Decimal::upToTenth(0.0).text(), "0");
  EXPECT_EQ(Decimal::upToTenth(12.34).text(), "12.4");
  EXPECT_EQ(Decimal::upToTenth(0.1 + 0.2).text(), "0.3");  // 0.30000000000000004
}

TEST(Money, RoundsHalfAwayFromZero) {
  EXPECT_EQ(times(decimal("1"), decimal("0.125"), 2)->coins, 13);
  EXPECT_EQ(times(decimal("1"), decimal("-0.125"), 2)->coins, -13);
  EXPECT_EQ(times(decimal("1"), decimal("0.124999"), 2)->coins, 12);
  EXPECT_EQ(times(decimal("3"), decimal("0.5"), 0)->coins, 2);
  EXPECT_EQ(percentOf(Money{10}, decimal("5"))->coins, 1);
  EXPECT_EQ(percentOf(Money{-10}, decimal("5"))->coins, -1);
  // 1.005 has no exact double: 100.49999... would give 1.00.
  EXPECT_EQ(times(decimal("1"), decimal("1.005"), 2)->coins, 101);
}

TEST(Money, IsWrittenWithItsDigits) {
  EXPECT_EQ(moneyText(Money{123450}, 2), "1234.50");
  EXPECT_EQ(moneyText(Money{-5}, 2), "-0.05");
  EXPECT_EQ(moneyText(Money{0}, 2), "0.00");
  EXPECT_EQ(moneyText(Money{7}, 0), "7");
  EXPECT_EQ(moneyText(Money{7}, 3), "0.007");
}

TEST(Money, WhatDoesNotFitIsNothing) {
  const Decimal most = decimal("999999999999.999999");
  EXPECT_FALSE(times(most, most, 2));
  EXPECT_FALSE(sum(Money{INT64_MAX}, Money{1}));
  EXPECT_FALSE(sum(Money{INT64_MIN}, Money{-1}));
  EXPECT_TRUE(times(most, decimal("1"), 2));
}

/// Beside a library's decimal floating point of a hundred digits.
TEST(MoneyProperty, AgreesWithDecimalsOfAHundredDigits) {
  support::forEachSeed(500, [](std::uint64_t seed) {
    support::Random random(seed);
    const auto quantity = Decimal::ofMillionths(random.between(0, 1'000'000'000));
    const auto price = Decimal::ofMillionths(random.between(-1'000'000'000, 1'000'000'000));
    const int digits = random.between(0, kMostMinorDigits);
    const Exact exact = Exact(quantity.text()) * Exact(price.text()) *
                        boost::multiprecision::pow(Exact(10), digits);
    const Exact half = exact < 0 ? Exact(-0.5) : Exact(0.5);
    EXPECT_EQ(times(quantity, price, digits)->coins,
              static_cast<std::int64_t>(boost::multiprecision::trunc(exact + half)))
        << quantity.text() << " x " << price.text();
  });
}

}  // namespace
}  // namespace sumpwright::price
