#pragma once
// Several sumps on one fan: they steal from each other, and the leaky leg wins.

#include <functional>
#include <string>
#include <vector>

#include "airflow/Duty.h"

namespace sumpwright::siting {

struct SharedLeg {
  std::string sump;
  base::Flow flow;                                              ///< with every valve open
  base::Pressure pit;                                           ///< with every valve open
  airflow::ValvePosition valve = airflow::ValvePosition::open;  ///< as trimmed
  base::Pressure trimmed;                                       ///< pit, with all valves as trimmed
};

struct SharedFan {
  std::vector<SharedLeg> legs;  ///< none: each sump has a fan of its own
  bool trims = false;  ///< trimming the valves holds more floor, by a hundredth of it (own figure)
  double held = 0.0;   ///< share of floor with every valve open
  double trimmed_held = 0.0;
  /// A leg each, then what trimming does and what a valve that stands open would.
  std::vector<base::Message> sentences;
};

/// Share of floor held at a duty point.
using HeldAt = std::function<double(const airflow::DutySummary&)>;

/// Of a duty whose legs have valves, all open. Trimmed: open, three quarters, half or a quarter
/// open as holds most floor, at least one leg open; up to four legs are searched (own figure), more
/// stay open.
SharedFan sharedFan(const airflow::DutyOptions& open, const HeldAt& held);

}  // namespace sumpwright::siting
