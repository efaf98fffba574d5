#pragma once
// An invented oblong house for tests of what stands on walls: 10 m by 8 m, its south wall (edge 0)
// from the origin to the east.

#include <gtest/gtest.h>

#include "plan/OpeningEdits.h"
#include "plan/ThingEdits.h"
#include "plan/WallEdits.h"

namespace sumpwright::tools {

inline plan::Job wallHouse() {
  plan::Job job;
  job.id = "walls";
  job.house.wall_thickness_m = 0.3;
  return plan::rectangleHouse(job, 10.0, 8.0).value();
}

/// With a window (and its id) on a wall.
inline plan::Job withWindow(const plan::Job& job, const std::string& id, int edge, double offset_m,
                            double width_m, int storey = 0) {
  plan::Opening window;
  window.id = id;
  window.storey = storey;
  auto with = plan::addOpening(job, 0, edge, plan::Side::left, offset_m, width_m, window);
  EXPECT_TRUE(with.ok());
  return with ? std::move(with).value() : job;
}

}  // namespace sumpwright::tools
