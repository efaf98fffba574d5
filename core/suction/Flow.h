#pragma once
// What a fan does against the ground, as the field solver sees it. core/airflow knows fans and
// pipes; here they are a function.

#include <functional>
#include <vector>

namespace sumpwright::suction {

/// Resistance of the ground as one sump sees it: s_w = R Q + B Q^2.
struct Load {
  double resistance_pa_s_m3 = 0.0;
  double inertia_pa_s2_m6 = 0.0;
};

/// Flow a fan with its pipe draws from a load, m3/s, >= 0; falls as R or B grows.
using FlowOf = std::function<double(const Load&)>;

/// Flows of several sumps from [R], row by row, and each pit's B.
using FlowsOf = std::function<std::vector<double>(const std::vector<double>& matrix_pa_s_m3,
                                                  const std::vector<double>& inertias_pa_s2_m6)>;

/// B of a pit by its radius, Pa s2/m6.
using InertiaOf = std::function<double(double radius_m)>;

/// A fan that holds one suction at the pit whatever the flow: the positive root of R Q + B Q^2 = s.
FlowOf constantSuction(double suction_pa);

/// Flows of several sumps, each with a fan of its own, that see each other through the ground:
/// s_i = sum_j R_ij Q_j + B_i Q_i^2 = what fan i does at Q_i. By repeated substitution of
/// R_i = sum_j R_ij Q_j / Q_i, half way each time; settles for any falling fan curve on a symmetric
/// positive [R] in practice, and what it found is what it says. `matrix`: [R] row by row; as many
/// B as it has rows.
std::vector<double> flowsTogether(const std::vector<double>& matrix,
                                  const std::vector<double>& inertias_pa_s2_m6, const FlowOf& fan);

}  // namespace sumpwright::suction
