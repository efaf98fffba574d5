#include "airflow/FanCurveCheck.h"

#include <cstdint>
#include <utility>

namespace sumpwright::airflow {

namespace {

// Own figures: ten times what any fan of this trade does.
constexpr double kMostFlow_m3_h = 1e4;
constexpr double kMostPressure_pa = 1e5;
constexpr double kMostPower_W = 1e4;

struct Report {
  const std::string& pointer;
  base::Problems& problems;

  void add(const char* id, const std::string& place, std::vector<base::Arg> args) const {
    problems.push_back(
        {base::Message(id, std::move(args)), pointer + place, base::Gravity::unreadable});
  }
  /// Not a number is within no bounds.
  void bounds(double value, double least, double most, const std::string& place) const {
    if (value >= least && value <= most) return;
    add("fans.number", place, {base::number("least", least), base::number("most", most)});
  }
};

std::string pointAt(std::size_t i) { return "/points/" + std::to_string(i); }

void checkNumbers(const std::vector<CurvePoint>& points, const Report& report) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    report.bounds(points[i].flow.m3PerH(), 0.0, kMostFlow_m3_h, pointAt(i) + "/flow_m3_h");
    report.bounds(points[i].pressure.pa(), 0.0, kMostPressure_pa, pointAt(i) + "/pressure_pa");
    if (points[i].power_w)
      report.bounds(*points[i].power_w, 0.0, kMostPower_W, pointAt(i) + "/power_w");
  }
}

void checkOrder(const std::vector<CurvePoint>& points, const Report& report) {
  for (std::size_t i = 1; i < points.size(); ++i) {
    const CurvePoint& before = points[i - 1];
    const CurvePoint& point = points[i];
    if (point.flow <= before.flow) {
      report.add("fans.points.flow-order", pointAt(i) + "/flow_m3_h",
                 {base::flow("flow", point.flow), base::flow("before", before.flow)});
    } else if (point.pressure >= before.pressure) {
      report.add(
          "fans.points.not-falling", pointAt(i) + "/pressure_pa",
          {base::pressure("pressure", point.pressure), base::flow("flow", point.flow),
           base::pressure("before", before.pressure), base::flow("before_flow", before.flow)});
    }
    if (point.power_w.has_value() != before.power_w.has_value())
      report.add("fans.points.power-missing", pointAt(i), {});
  }
}

}  // namespace

base::Problems curveProblems(const std::vector<CurvePoint>& points, const std::string& pointer) {
  base::Problems problems;
  const Report report{pointer, problems};
  const auto given = static_cast<std::int64_t>(points.size());
  if (points.size() < kFewestPoints) {
    report.add("fans.points.few", "/points",
               {base::count("given", given), base::count("least", std::int64_t{kFewestPoints})});
  }
  if (points.size() > kMostPoints) {
    report.add("fans.points.many", "/points",
               {base::count("given", given), base::count("most", std::int64_t{kMostPoints})});
    return problems;
  }
  checkNumbers(points, report);
  if (problems.empty()) checkOrder(points, report);
  return problems;
}

base::Problems curveProblems(const CurveLaw& law, const std::string& pointer) {
  base::Problems problems;
  const Report report{pointer, problems};
  report.bounds(law.shut_off.pa(), 1e-3, kMostPressure_pa, "/law/shut_off_pa");
  report.bounds(law.free_flow.m3PerH(), 1e-3, kMostFlow_m3_h, "/law/free_flow_m3_h");
  report.bounds(law.exponent, 1.0, 10.0, "/law/exponent");
  if (law.power_at_shut_off_w)
    report.bounds(*law.power_at_shut_off_w, 0.0, kMostPower_W, "/law/power_shut_off_w");
  if (law.power_at_free_flow_w)
    report.bounds(*law.power_at_free_flow_w, 0.0, kMostPower_W, "/law/power_free_flow_w");
  if (law.power_at_shut_off_w.has_value() != law.power_at_free_flow_w.has_value())
    report.add("fans.points.power-missing", "/law", {});
  return problems;
}

void checkDensity(double density_kg_m3, const std::string& pointer, base::Problems& problems) {
  Report{pointer, problems}.bounds(density_kg_m3, 0.5, 2.0, "/density_kg_m3");
}

}  // namespace sumpwright::airflow
