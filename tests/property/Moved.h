#pragma once
// The same house drawn otherwise: turned, moved, mirrored, begun at another corner. Verdicts must
// follow the house.

#include <functional>
#include <string>

#include "plan/Job.h"
#include "support/SampledTwin.h"

namespace sumpwright::property {

/// A job and how the old one's places and corner names are found in it.
struct Moved {
  plan::Job job;
  std::function<double(int ring, double s)> chainage;
  std::function<std::string(const std::string& thing)> thing;
};

Moved turnedAndMoved(const plan::Job& job, double turn_rad, geometry::Vec by);
/// x -> -x. Rings are walked the other way round, so that the house stays on the left.
Moved mirrored(const plan::Job& job);
/// Ring `ring` begun at corner `first`.
Moved begunAt(const plan::Job& job, int ring, int first);

support::TwinFindings renamed(const support::TwinFindings& findings, const Moved& moved);

}  // namespace sumpwright::property
