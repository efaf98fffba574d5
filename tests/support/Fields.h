#pragma once
// Suction models by hand for tests of the field.

#include <cmath>
#include <numbers>
#include <optional>
#include <utility>
#include <vector>

#include "suction/Field.h"

namespace sumpwright::support {

using suction::Point;
using suction::Polygon;

inline Polygon box(double x0, double y0, double x1, double y1) {
  return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

/// Every edge of the outline with one conductance to the room.
inline suction::Region region(Polygon outline, double joint_m2_s_pa = 0.0) {
  suction::Region made;
  made.edges.assign(outline.size(), {joint_m2_s_pa});
  made.outline = std::move(outline);
  return made;
}

/// A regular polygon of the circle's area.
inline Polygon circle(Point middle, double radius_m, int corners = 720) {
  const double step = 2.0 * std::numbers::pi / corners;
  const double rim = radius_m * std::sqrt(step / std::sin(step));
  Polygon made;
  for (int k = 0; k < corners; ++k) {
    made.push_back({middle.x + rim * std::cos(step * k), middle.y + rim * std::sin(step * k)});
  }
  return made;
}

/// Turned about the origin, then moved.
struct Pose {
  double turn_rad = 0.0;
  geometry::Vec shift{};
  Point operator()(Point p) const {
    const double c = std::cos(turn_rad);
    const double s = std::sin(turn_rad);
    return Point{c * p.x - s * p.y, s * p.x + c * p.y} + shift;
  }
  Polygon operator()(const Polygon& ring) const {
    Polygon out;
    for (const Point p : ring) out.push_back((*this)(p));
    return out;
  }
};

/// Suction at a point for a flow through one sink.
struct OneSink {
  suction::FieldSolver solver;
  std::optional<suction::UnitField> unit;
  double flow_m3_s = 0.0;
  OneSink(const suction::SuctionModel& model, const suction::Sink& sink, double flow,
          const suction::FieldOptions& options)
      : solver(suction::FieldSolver::of(model, options)), flow_m3_s(flow) {
    if (solver.ok()) unit = solver.unit(sink);
  }
  bool ok() const { return unit.has_value(); }
  double at(Point p) const {
    const auto s = suction::sampleAt(solver.network(), unit->suction, p);
    return s ? flow_m3_s * *s : std::nan("");
  }
  double atPit() const { return flow_m3_s * unit->resistance_pa_s_m3; }
};

}  // namespace sumpwright::support
