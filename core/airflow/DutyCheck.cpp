#include "airflow/DutyCheck.h"

#include <Eigen/Cholesky>
#include <cmath>
#include <string>
#include <utility>

namespace sumpwright::airflow {

namespace {

constexpr std::size_t kMostLegs = 50;

struct DutyReport {
  base::Problems& problems;
  void add(const char* id, std::string pointer, std::vector<base::Arg> args = {}) const {
    problems.push_back(
        {base::Message(id, std::move(args)), std::move(pointer), base::Gravity::unsound});
  }
  void bounds(double value, double least, double most, const std::string& pointer) const {
    if (value >= least && value <= most) return;
    add("airflow.input.number", pointer,
        {base::number("least", least), base::number("most", most)});
  }
};

// Own figures: far beyond any floor, so that a slip of units is caught and nothing overflows.
constexpr double kMostSystemPressure_pa = 1e5;
constexpr double kMostInertia = 1e12;

void checkLeg(const Leg& leg, std::size_t lines, const std::string& at, const DutyReport& report) {
  if (leg.line >= lines) report.add("airflow.input.line", at + "/line");
  if (!plausible(leg.pipe)) report.add("airflow.input.pipe", at + "/pipe");
  if (!plausible(leg.annulus)) report.add("airflow.input.annulus", at + "/annulus");
  report.bounds(leg.inertia_pa_s2_m6, 0.0, kMostInertia, at + "/inertia_pa_s2_m6");
  report.bounds(leg.background.pa(), -kMostSystemPressure_pa, kMostSystemPressure_pa,
                at + "/background");
}

void checkCount(std::size_t count, const char* pointer, const DutyReport& report) {
  if (count >= 1 && count <= kMostLegs) return;
  report.add("airflow.input.count", pointer,
             {base::count("given", static_cast<std::int64_t>(count)),
              base::count("most", std::int64_t{kMostLegs})});
}

void checkGround(const DutyOptions& options, const DutyReport& report) {
  const std::size_t n = options.legs.size();
  if (options.ground_pa_s_m3.size() != n * n) {
    report.add("airflow.input.ground-size", "/ground_pa_s_m3",
               {base::count("given", static_cast<std::int64_t>(options.ground_pa_s_m3.size())),
                base::count("needed", static_cast<std::int64_t>(n * n))});
    return;
  }
  // A matrix need not be symmetric to be positive definite: its symmetric part is.
  const auto size = static_cast<Eigen::Index>(n);
  using Rows = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  const Eigen::Map<const Rows> r(options.ground_pa_s_m3.data(), size, size);
  const Eigen::MatrixXd both = 0.5 * (r + r.transpose());
  const bool sound =
      both.allFinite() && both.cwiseAbs().maxCoeff() <= 1e12 && both.llt().info() == Eigen::Success;
  if (!sound) report.add("airflow.input.ground", "/ground_pa_s_m3");
}

}  // namespace

base::Problems dutyProblems(const DutyOptions& options) {
  base::Problems problems;
  const DutyReport report{problems};
  checkCount(options.legs.size(), "/legs", report);
  checkCount(options.lines.size(), "/lines", report);
  if (!problems.empty()) return problems;
  for (std::size_t i = 0; i < options.legs.size(); ++i)
    checkLeg(options.legs[i], options.lines.size(), "/legs/" + std::to_string(i), report);
  for (std::size_t i = 0; i < options.lines.size(); ++i) {
    const std::string at = "/lines/" + std::to_string(i);
    if (!plausible(options.lines[i].pipe)) report.add("airflow.input.pipe", at + "/pipe");
    report.bounds(options.lines[i].speed, 0.01, 10.0, at + "/speed");
  }
  if (!plausible(options.air)) report.add("airflow.input.air", "/air");
  report.bounds(options.house.pa(), -kMostSystemPressure_pa, kMostSystemPressure_pa, "/house");
  report.bounds(options.tolerance.pa(), 1e-10, 1.0, "/tolerance");
  report.bounds(options.max_iterations, 1, 10000, "/max_iterations");
  report.bounds(options.limits.noise_m_s, 0.0, 1000.0, "/limits/noise_m_s");
  report.bounds(options.limits.condensate_m_s, 0.0, 1000.0, "/limits/condensate_m_s");
  checkGround(options, report);
  return problems;
}

}  // namespace sumpwright::airflow
