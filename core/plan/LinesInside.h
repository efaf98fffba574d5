#pragma once
// Moving what is drawn inside the house point by point. Internal to core/plan.

#include <functional>

#include "plan/Job.h"

namespace sumpwright::plan {

/// Every point of rooms, floor zones, inner and rising walls, heating pipes and radiators drawn by
/// a line goes to `to(point)`. A radiator keeps its length: where one end alone went, it slides.
/// Doors in inner walls and gaps in rising walls stay where they are, square onto their wall where
/// that shifted or turned; nothing keeps them on a wall that became too short (checkJob() says so).
void moveInside(Job& job, const std::function<Point(Point)>& to);

}  // namespace sumpwright::plan
