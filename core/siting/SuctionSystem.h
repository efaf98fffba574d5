#pragma once
// The fan and the pipe that a suction study counts with, and what had to be assumed of them.

#include <string>
#include <vector>

#include "airflow/Duty.h"
#include "airflow/FanTable.h"
#include "base/Source.h"
#include "build/Run.h"
#include "rules/Judge.h"
#include "suction/Flow.h"

namespace sumpwright::siting {

/// Volume of the pit: a bucket, 12 l (common practice: 10 to 15 l).
inline constexpr double kPit_m3 = 0.012;

/// A figure nobody has measured, to be changed by whoever knows better.
struct Assumption {
  base::Message what;
  base::Source source;
};

/// What hangs on each sump: every sump has a fan and a pipe of its own, or all one fan.
struct SuctionSystem {
  airflow::Fan fan;
  bool invented = false;  ///< a demo class, no product
  double speed = 1.0;     ///< share of the curve's speed
  bool shared = false;    ///< several sumps on one fan, each leg with an open valve
  bool one_fan = false;   ///< so they are, or will be once there is a second
  /// The gap round the pipe as it is counted: open all round where it is said not to be sealed,
  /// else sealed.
  airflow::Annulus annulus;
  plan::AnnulusSeal seal = plan::AnnulusSeal::unknown;
  airflow::Pipe before;  ///< pit to fan, with its inlet; on one fan: pit to where the legs join
  airflow::Pipe after;   ///< fan to open air, with its exit
  airflow::Air air;
  std::vector<Assumption> assumptions;
};

/// The fan's speed, the pipe and the seal that the design says. Lengths and bends that it does not
/// state are counted from the run of the site, where one is placed (build::countedPipe()); else
/// they are own figures and said to be: low outlet 1 m with one bend before the fan and 0.5 m
/// after it; riser 5 m with two bends after it. Bore: outside diameter less twice 3.2 mm (sizes of
/// EN 1401, from memory). The gap round the pipe is as deep as an inner leaf, 0.10 m (own figure).
SuctionSystem usualSystem(const rules::Site& site, airflow::Fan fan, bool invented);
/// The same with a pipe that was counted elsewhere, or none.
SuctionSystem systemWith(const rules::Site& site, airflow::Fan fan, bool invented,
                         const std::optional<build::CountedPipe>& drawn);

/// What is taken for a sump's pipe that nobody has placed (own figures), with what the job states
/// of it; all after the fan in the open.
build::CountedPipe usualPipe(const rules::Site& site, plan::OutletMode outlet);

/// The duty equations of sumps that see each other through the ground: [R] row by row, Pa s/m3, and
/// each pit's B. Contract: as many of each as sumps.
airflow::DutyOptions dutyOptions(const SuctionSystem& system, const std::vector<std::string>& sumps,
                                 const std::vector<double>& matrix_pa_s_m3,
                                 const std::vector<double>& inertias_pa_s2_m6);

/// The same with the gap round every pipe open all round.
SuctionSystem leaking(const SuctionSystem& system);

/// solveDuty() of one sump, as the field solver asks for it; 0 where there is no duty point.
/// Thread-safe.
suction::FlowOf flowOf(const SuctionSystem& system);
/// Of several sumps on one fan, also of those that are only thought of; nothing where each has a
/// fan of its own. Thread-safe.
suction::FlowsOf flowsOf(const SuctionSystem& system);

/// Suction left in the pit when so much air comes out of the ground: the fan's pressure less what
/// the pipes take, what leaks in beside the pipe counted.
base::Pressure pitSuctionAt(const SuctionSystem& system, base::Flow flow);

}  // namespace sumpwright::siting
