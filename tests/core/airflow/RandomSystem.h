#pragma once
// Random sumps, pipes and fans for property tests.

#include "airflow/Duty.h"
#include "support/Seed.h"

namespace sumpwright::airflow {

struct SystemShape {
  int legs = 1;
  int lines = 1;
  bool leaks = true;
  bool only_fittings = false;  ///< pipes without length: every loss goes with the square
};

/// A fan by law or by points, between small and strong.
FanCurve randomCurve(support::Random& random);

/// Every line has a leg; a valve is never closed; the ground's [R] is positive definite.
DutyOptions randomSystem(support::Random& random, const SystemShape& shape);

}  // namespace sumpwright::airflow
