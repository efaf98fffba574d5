#pragma once
// Where the plates of services stand on a drawing, for hit tests.

#include <string>
#include <vector>

#include "drawing/PlanDrawing.h"

namespace sumpwright::drawing {

struct ServiceSpot {
  std::string service;  ///< id
  Point tip_m;          ///< on the outside face, in the plan
  Point plate_m;        ///< middle of the plate, in the plan
};

/// Of services with an entry, as planBase() draws them.
std::vector<ServiceSpot> serviceSpots(const siting::Study& study, const PlanView& view);
/// The same as outlineDrawing() draws them.
std::vector<ServiceSpot> serviceSpots(const plan::Job& job, const PlanView& view);

}  // namespace sumpwright::drawing
