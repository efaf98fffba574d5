#pragma once
// Which fan suits: every fan of a table on the same pipes and ground, ranked, each with its
// reasons. Watts alone say little about useful suction (laboratory tests of twelve fans, Belgian
// Building Research Institute 1999, abstract), so the duty point of each is solved.

#include <functional>
#include <span>
#include <string>
#include <vector>

#include "airflow/Duty.h"
#include "airflow/FanTable.h"

namespace sumpwright::airflow {

/// A place under the floor that has to be held: its suction is background + sum per_flow_j q_j.
struct WatchPoint {
  std::string name;                      ///< as reasons call it
  std::vector<double> per_flow_pa_s_m3;  ///< one for each leg: suction per unit flow of its sump
  base::Pressure background;
  base::Pressure needed;  ///< above nothing
};

struct FanChoiceOptions {
  DutyOptions system;             ///< every line gets the fan in question, at its line's speed
  std::vector<WatchPoint> watch;  ///< none, and no `held`: the fans are ranked by power alone
  /// Share of the floor that is held at a duty point of the system; none: not asked.
  std::function<double(const DutySummary&)> held;
  double held_needed = 0.0;  ///< of `held`
};

/// best first. suits: duty point found on the curve, no air flowing back, every watch point and the
/// needed share of the floor held, no pipe above the condensate limit.
enum class FanSuits { yes, noisy, no };

struct FanVerdict {
  std::size_t fan = 0;  ///< index into the fans given
  FanSuits suits = FanSuits::no;
  /// The weakest watch point: its suction as a share of what it needs, which point, how much.
  /// 1 and nothing without watch points; nothing where the duty point was not found.
  double least_share = 0.0;
  std::size_t weakest = 0;
  base::Pressure least;
  std::size_t which = 0;          ///< of the cases: the one that counts
  std::optional<double> held;     ///< share of the floor, where it was asked for
  std::optional<double> power_w;  ///< of all lines together; absent where a curve has none
  DutySummary duty;
  std::vector<base::Message> reasons;  ///< ids "airflow.choice.*", then the duty's remarks
};

struct FanChoice {
  std::vector<FanVerdict> ranked;
  base::Problems problems;  ///< of the options ("/watch/0/..."); then nothing is ranked
};

/// Ranked: those that suit, quiet before noisy, by power (unknown last); then the others by the
/// share of the floor they hold, to whole percent, by how near they come to what the weakest point
/// needs, and by power. Equals stay in the order given.
FanChoice chooseFan(std::span<const Fan> fans, const FanChoiceOptions& options);
/// The same on several answers to what nobody knows of the ground: each fan is judged by the one
/// where it holds least, the first of like ones. Without a case nothing is ranked.
FanChoice chooseFan(std::span<const Fan> fans, std::span<const FanChoiceOptions> cases);

}  // namespace sumpwright::airflow
