#pragma once
// The little of GEOS's C API (reentrant part) that checks and benches need, with owners that free.
// Where GEOS fails, std::runtime_error with its message ends the check.

#define GEOS_USE_ONLY_R_API
#include <geos_c.h>

#include <memory>
#include <string>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::external {

class Geos {
 public:
  using Shape = std::shared_ptr<GEOSGeometry>;

  Geos();
  ~Geos();
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;

  static std::string version() { return GEOSversion(); }

  Shape point(geometry::Point p) const;
  Shape line(const geometry::Polyline& points) const;
  Shape polygon(const geometry::Polygon& corners) const;
  /// Closed line along an outline.
  Shape outline(const geometry::Polygon& corners) const;
  /// Round caps and joins; circles as polygons of 4 x quarterSegments sides with corners on them.
  Shape buffer(const Shape& shape, double r, int quarterSegments) const;
  Shape unite(const std::vector<Shape>& shapes) const;
  Shape difference(const Shape& a, const Shape& b) const;
  Shape intersection(const Shape& a, const Shape& b) const;
  double length(const Shape& shape) const;

 private:
  Shape own(GEOSGeometry* shape) const;
  GEOSCoordSequence* sequence(const geometry::Polyline& points, bool close) const;
  GEOSContextHandle_t m_context;
  std::unique_ptr<std::string> m_error;
};

}  // namespace sumpwright::external
