#include <gtest/gtest.h>

#include <type_traits>

#include "base/Message.h"
#include "base/Quantities.h"

namespace sumpwright::base {
namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
  a + b;
};

static_assert(!Addable<Pressure, Flow>);
static_assert(!Addable<Pressure, double>);
static_assert(!std::is_convertible_v<double, Flow>);
static_assert(Pressure::ofPa(3.0) + Pressure::ofPa(2.0) == Pressure::ofPa(5.0));
static_assert(Flow::ofM3PerH(3600.0).m3PerS() == 1.0);
static_assert(Pressure() == Pressure::ofPa(0.0));

TEST(AirQuantities, FlowIsTheSameInEitherUnit) {
  EXPECT_DOUBLE_EQ(Flow::ofM3PerS(0.05).m3PerH(), 180.0);
  EXPECT_DOUBLE_EQ(Flow::ofM3PerH(90.0).m3PerS(), 0.025);
}

TEST(AirQuantities, CountAndCompareAsNumbersDo) {
  Pressure sum = Pressure::ofPa(1.5);
  sum += Pressure::ofPa(2.0);
  sum -= Pressure::ofPa(4.0);
  EXPECT_EQ(sum, -Pressure::ofPa(0.5));
  EXPECT_LT(sum, Pressure());
  EXPECT_EQ(2.0 * Pressure::ofPa(3.0) - Pressure::ofPa(1.0), Pressure::ofPa(5.0));
  EXPECT_DOUBLE_EQ(Pressure::ofPa(3.0) / Pressure::ofPa(6.0), 0.5);
  Flow flow = Flow::ofM3PerS(2.0);
  flow += Flow::ofM3PerS(1.0);
  flow -= Flow::ofM3PerS(4.0);
  EXPECT_EQ(-flow, Flow::ofM3PerS(1.0));
  EXPECT_GT(2.0 * Flow::ofM3PerS(1.0), Flow::ofM3PerS(1.0) - flow - Flow::ofM3PerS(1.0));
  EXPECT_DOUBLE_EQ(Flow::ofM3PerS(3.0) / Flow::ofM3PerS(6.0), 0.5);
}

TEST(AirQuantities, MessagesCarryThemInTheirDisplayUnit) {
  EXPECT_EQ(pressure("p", Pressure::ofPa(5.0)).value,
            (Arg{"p", Quantity{5.0, Unit::pascal}}.value));
  const Arg q = flow("q", Flow::ofM3PerS(0.05));
  EXPECT_DOUBLE_EQ(std::get<Quantity>(q.value).value, 180.0);
  EXPECT_EQ(std::get<Quantity>(q.value).unit, Unit::cubicMetrePerHour);
}

}  // namespace
}  // namespace sumpwright::base
