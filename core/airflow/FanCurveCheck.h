#pragma once
// What keeps figures from being a fan curve; see FanCurve.h for the ids.

#include <string>
#include <vector>

#include "airflow/FanCurve.h"
#include "base/Problem.h"

namespace sumpwright::airflow {

base::Problems curveProblems(const std::vector<CurvePoint>& points, const std::string& pointer);
base::Problems curveProblems(const CurveLaw& law, const std::string& pointer);

/// fans.number at /density_kg_m3 outside 0.5 to 2 (own figures: no air of this trade).
void checkDensity(double density_kg_m3, const std::string& pointer, base::Problems& problems);

}  // namespace sumpwright::airflow
