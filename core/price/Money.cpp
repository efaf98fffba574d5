#include "price/Money.h"

#include <boost/multiprecision/cpp_int.hpp>
#include <cmath>
#include <limits>

#include "base/Contract.h"
#include "plan/Quote.h"

namespace sumpwright::price {

namespace {

using Wide = boost::multiprecision::int256_t;

constexpr int kDecimalDigits = 6;

Wide tenTo(int power) {
  Wide out = 1;
  for (int i = 0; i < power; ++i) out *= 10;
  return out;
}

/// value / divisor, half away from zero.
std::optional<Money> rounded(const Wide& value, const Wide& divisor) {
  const Wide half = divisor / 2;
  const Wide out = value < 0 ? Wide(-((-value + half) / divisor)) : Wide((value + half) / divisor);
  if (out > std::numeric_limits<std::int64_t>::max() ||
      out < std::numeric_limits<std::int64_t>::min()) {
    return std::nullopt;
  }
  return Money{static_cast<std::int64_t>(out)};
}

/// Digits of a whole number with a point before the last `after` of them.
std::string pointed(std::int64_t value, int after) {
  const Wide size = value < 0 ? Wide(-Wide(value)) : Wide(value);
  std::string digits = size.str();
  const auto least = static_cast<std::size_t>(after) + 1;
  if (digits.size() < least) digits.insert(0, least - digits.size(), '0');
  if (after > 0) digits.insert(digits.size() - static_cast<std::size_t>(after), ".");
  return (value < 0 ? "-" : "") + digits;
}

}  // namespace

std::optional<Decimal> Decimal::parse(const std::string& text) {
  if (!plan::isDecimal(text)) return std::nullopt;
  std::int64_t value = 0;
  int after = -1;  // digits after the point, once it was met
  for (const char c : text) {
    if (c == '.') after = 0;
    if (c < '0' || c > '9') continue;
    value = 10 * value + (c - '0');
    if (after >= 0) ++after;
  }
  for (int i = after < 0 ? 0 : after; i < kDecimalDigits; ++i) value *= 10;
  return Decimal(text.front() == '-' ? -value : value);
}

Decimal Decimal::upToTenth(double measure) {
  constexpr double kMost = 1e6;
  constexpr double kRounding = 1e-6;
  SUMPWRIGHT_REQUIRE(measure >= 0.0 && measure <= kMost);
  return Decimal(static_cast<std::int64_t>(std::ceil(10.0 * measure - kRounding)) * (kOne / 10));
}

std::string Decimal::text(int least) const {
  SUMPWRIGHT_REQUIRE(least >= 0 && least <= kDecimalDigits);
  std::string out = pointed(m_millionths, kDecimalDigits);
  const std::size_t shortest = out.size() - static_cast<std::size_t>(kDecimalDigits - least);
  while (out.size() > shortest && out.back() == '0') out.pop_back();
  if (out.ends_with('.')) out.pop_back();
  return out;
}

std::optional<Money> times(Decimal quantity, Decimal unit_price, int minor_digits) {
  SUMPWRIGHT_REQUIRE(minor_digits >= 0 && minor_digits <= kMostMinorDigits);
  const Wide product = Wide(quantity.millionths()) * Wide(unit_price.millionths());
  return rounded(product, tenTo(2 * kDecimalDigits - minor_digits));
}

std::optional<Money> percentOf(Money amount, Decimal percent) {
  return rounded(Wide(amount.coins) * Wide(percent.millionths()), tenTo(kDecimalDigits + 2));
}

std::optional<Money> sum(Money a, Money b) { return rounded(Wide(a.coins) + Wide(b.coins), 1); }

std::optional<Money> toMultiple(Money amount, Decimal step, int minor_digits) {
  const auto coins = times(Decimal::of(1), step, minor_digits);
  if (!coins || coins->coins <= 0) return std::nullopt;
  const auto steps = rounded(Wide(amount.coins), Wide(coins->coins));
  return steps ? rounded(Wide(steps->coins) * Wide(coins->coins), 1) : std::nullopt;
}

std::optional<Money> shareOf(Money amount, Money part, Money whole) {
  if (whole.coins == 0) return std::nullopt;
  const Wide product = Wide(amount.coins) * Wide(part.coins);
  return whole.coins < 0 ? rounded(Wide(-product), Wide(-Wide(whole.coins)))
                         : rounded(product, Wide(whole.coins));
}

std::string moneyText(Money amount, int minor_digits) {
  return pointed(amount.coins, minor_digits);
}

}  // namespace sumpwright::price
