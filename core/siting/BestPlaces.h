#pragma once

#include "siting/Study.h"

namespace sumpwright::siting {

/// The part of a run where a place may be put: its ends drawn in by the accuracy, or its middle
/// when it is shorter than twice that.
struct Inset {
  double from_m = 0.0;
  double to_m = 0.0;
};
Inset insetOf(const Run& run, double accuracy_m);

/// The state of the runs that may be jumped to: clear; where nothing is clear, advised against.
State allowedState(const Study& study);

std::vector<BestPlace> bestPlaces(const Study& study);
LeastBad leastBadPlace(const Study& study);

}  // namespace sumpwright::siting
