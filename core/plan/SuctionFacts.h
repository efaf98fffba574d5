#pragma once
// What is known of suction under the floor: what is asked for, what the ground is taken to be, and
// what was measured in test holes. Suction in Pa, positive below the room's pressure.

#include <optional>
#include <string>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::plan {

/// Suction asked for, and the least that counts as held, where the job states none (own figures).
inline constexpr double kUsualTarget_pa = 5.0;
inline constexpr double kUsualLimit_pa = 1.0;

/// Low and high end of a figure nobody knows exactly; even on a logarithmic scale between them.
struct Spread {
  double low = 0.0;
  double high = 0.0;
  bool operator==(const Spread&) const = default;
};

/// Each replaces what the house's fill stands for.
struct GroundGuess {
  std::optional<Spread> permeability_m2;
  std::optional<Spread> fill_depth_m;
  std::optional<Spread> leakage_m_s_pa;   ///< up through the ground, flow per area and Pa
  std::optional<Spread> joint_width_mm;   ///< between slab and wall
  std::optional<Spread> footing_m2_s_pa;  ///< through inner walls on their own footing
  std::optional<Spread> exposed_m_s_pa;   ///< through rising walls to the open air
  bool operator==(const GroundGuess&) const = default;
};

struct HoleReading {
  std::string hole;  ///< id of a test hole of the plan
  double suction_pa = 0.0;
  std::optional<double> sd_pa;  ///< standard deviation; not stated: the program's own figure
  bool operator==(const HoleReading&) const = default;
};

/// Where a sump stood, as a Sump says its place.
struct SumpPlace {
  int ring = 0;
  double chainage_m = 0.0;
  std::optional<geometry::Point> at_m;  ///< stated: this point and no place on the outside face
  bool operator==(const SumpPlace&) const = default;
};

/// One run of a test fan, and what was read in the holes while it ran.
struct PressureTest {
  std::string id;
  std::string date;  ///< ISO 8601
  std::string sump;  ///< id of the sump it drew from
  std::string fan;   ///< in words
  std::optional<double> flow_m3_s;
  std::optional<double> pit_pa;
  std::vector<HoleReading> readings;
  std::string notes;
  /// Where its sump stood while it ran, whatever became of the sump; not stated: where it stands.
  std::optional<SumpPlace> stood;
  bool operator==(const PressureTest&) const = default;
};

struct SuctionFacts {
  std::optional<double> target_pa;  ///< not stated, as the next two: the program's own figures
  std::optional<double> limit_pa;   ///< below it nothing is held
  std::optional<double> pit_l;      ///< volume of a pit that states none
  GroundGuess ground;
  std::vector<PressureTest> tests;
  bool use_tests = true;  ///< predict with the ground fitted to the tests
  bool operator==(const SuctionFacts&) const = default;
};

}  // namespace sumpwright::plan
