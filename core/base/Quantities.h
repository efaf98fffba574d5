#pragma once
// Pressure and volume flow as types, so that Pa and m³/h cannot be taken for each other.
//
// A bare double comes in by a constructor that names its unit and goes out by a member that does.
// Differences, sums, multiples and ratios of one kind are of that kind or plain numbers; nothing
// else compiles. Values may be negative (air flowing back, pressure above the room's) and are taken
// as they are, not-a-number and infinite included: who reads input checks it.

#include <compare>

namespace sumpwright::base {

/// A pressure difference. In this program suction is positive: room less the place in question.
class Pressure {
 public:
  constexpr Pressure() = default;
  static constexpr Pressure ofPa(double value) { return Pressure(value); }
  constexpr double pa() const { return m_pa; }

  constexpr Pressure& operator+=(Pressure other) { return m_pa += other.m_pa, *this; }
  constexpr Pressure& operator-=(Pressure other) { return m_pa -= other.m_pa, *this; }
  friend constexpr Pressure operator+(Pressure a, Pressure b) { return Pressure(a.m_pa + b.m_pa); }
  friend constexpr Pressure operator-(Pressure a, Pressure b) { return Pressure(a.m_pa - b.m_pa); }
  friend constexpr Pressure operator-(Pressure a) { return Pressure(-a.m_pa); }
  friend constexpr Pressure operator*(double k, Pressure a) { return Pressure(k * a.m_pa); }
  friend constexpr double operator/(Pressure a, Pressure b) { return a.m_pa / b.m_pa; }
  constexpr auto operator<=>(const Pressure&) const = default;

 private:
  explicit constexpr Pressure(double value) : m_pa(value) {}
  double m_pa = 0.0;
};

/// A volume flow. Out of the ground and through the fan is positive.
class Flow {
 public:
  constexpr Flow() = default;
  static constexpr Flow ofM3PerS(double value) { return Flow(value); }
  static constexpr Flow ofM3PerH(double value) { return Flow(value / kSecondsPerHour); }
  constexpr double m3PerS() const { return m_m3_per_s; }
  constexpr double m3PerH() const { return m_m3_per_s * kSecondsPerHour; }

  constexpr Flow& operator+=(Flow other) { return m_m3_per_s += other.m_m3_per_s, *this; }
  constexpr Flow& operator-=(Flow other) { return m_m3_per_s -= other.m_m3_per_s, *this; }
  friend constexpr Flow operator+(Flow a, Flow b) { return Flow(a.m_m3_per_s + b.m_m3_per_s); }
  friend constexpr Flow operator-(Flow a, Flow b) { return Flow(a.m_m3_per_s - b.m_m3_per_s); }
  friend constexpr Flow operator-(Flow a) { return Flow(-a.m_m3_per_s); }
  friend constexpr Flow operator*(double k, Flow a) { return Flow(k * a.m_m3_per_s); }
  friend constexpr double operator/(Flow a, Flow b) { return a.m_m3_per_s / b.m_m3_per_s; }
  constexpr auto operator<=>(const Flow&) const = default;

 private:
  static constexpr double kSecondsPerHour = 3600.0;
  explicit constexpr Flow(double value) : m_m3_per_s(value) {}
  double m_m3_per_s = 0.0;
};

}  // namespace sumpwright::base
