#include "suction/Flow.h"

#include <algorithm>
#include <cmath>

#include "base/Contract.h"

namespace sumpwright::suction {

namespace {

constexpr int kMostRounds = 200;
constexpr double kSettled = 1e-10;  // change of a flow, relative

}  // namespace

FlowOf constantSuction(double suction_pa) {
  return [suction_pa](const Load& load) {
    const double r = load.resistance_pa_s_m3;
    const double root = std::sqrt(r * r + 4.0 * load.inertia_pa_s2_m6 * suction_pa);
    return 2.0 * suction_pa / (r + root);  // no difference of like numbers
  };
}

std::vector<double> flowsTogether(const std::vector<double>& matrix,
                                  const std::vector<double>& inertias_pa_s2_m6, const FlowOf& fan) {
  const std::size_t n = inertias_pa_s2_m6.size();
  SUMPWRIGHT_REQUIRE(n * n == matrix.size());
  std::vector<double> flows;
  for (std::size_t i = 0; i < n; ++i)
    flows.push_back(fan({matrix[i * n + i], inertias_pa_s2_m6[i]}));
  for (int round = 0; round < kMostRounds; ++round) {
    double change = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
      if (!(flows[i] > 0.0)) continue;
      double seen = 0.0;
      for (std::size_t j = 0; j < n; ++j) seen += matrix[i * n + j] * flows[j] / flows[i];
      const double next = 0.5 * (flows[i] + fan({seen, inertias_pa_s2_m6[i]}));
      change = std::max(change, std::abs(next / flows[i] - 1.0));
      flows[i] = next;
    }
    if (change < kSettled) break;
  }
  return flows;
}

}  // namespace sumpwright::suction
