#pragma once
// Money and quantities, exactly: whole numbers of the least coin and of millionths. No sum passes
// through binary floating point.
//
// Rounding, everywhere: to the least coin, half away from zero (0.125 becomes 0.13, -0.125 becomes
// -0.13); each line, the margin and the tax once each, sums never.

#include <compare>
#include <cstdint>
#include <optional>
#include <string>

namespace sumpwright::price {

/// A decimal number of up to 12 digits and 6 more after the point.
class Decimal {
 public:
  static constexpr std::int64_t kOne = 1'000'000;

  Decimal() = default;
  static Decimal ofMillionths(std::int64_t millionths) { return Decimal(millionths); }
  static Decimal of(int whole) { return Decimal(kOne * whole); }
  /// As plan::isDecimal() takes it; nothing else.
  static std::optional<Decimal> parse(const std::string& text);
  /// The next tenth up of a measure (12.34 m become 12.4; what is only rounding above a tenth does
  /// not count). Contract: finite, 0 to a million.
  static Decimal upToTenth(double measure);

  std::int64_t millionths() const { return m_millionths; }
  /// "12.5": no zeros at the end but for `least` digits after the point; no grouping.
  std::string text(int least = 0) const;
  bool operator==(const Decimal&) const = default;
  auto operator<=>(const Decimal&) const = default;

 private:
  explicit Decimal(std::int64_t millionths) : m_millionths(millionths) {}
  std::int64_t m_millionths = 0;
};

/// An amount in the least coin of a currency.
struct Money {
  std::int64_t coins = 0;
  bool operator==(const Money&) const = default;
};

/// Most digits a currency has after the point (ISO 4217, from memory).
inline constexpr int kMostMinorDigits = 4;

/// Nothing in the next three where the amount does not fit.
std::optional<Money> times(Decimal quantity, Decimal unit_price, int minor_digits);
std::optional<Money> percentOf(Money amount, Decimal percent);
std::optional<Money> sum(Money a, Money b);
/// amount x part / whole, nothing where the whole is. Also nothing where it does not fit.
std::optional<Money> shareOf(Money amount, Money part, Money whole);

/// The nearest multiple of a step, half away from zero. Nothing where it does not fit, or where the
/// step is less than the least coin.
std::optional<Money> toMultiple(Money amount, Decimal step, int minor_digits);

/// "1234.50", "-0.05"; without a point where the currency has no minor digits.
std::string moneyText(Money amount, int minor_digits);

}  // namespace sumpwright::price
