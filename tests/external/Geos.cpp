#include "external/Geos.h"

#include <stdexcept>

namespace sumpwright::external {

namespace {

void keepError(const char* message, void* kept) { *static_cast<std::string*>(kept) = message; }

}  // namespace

Geos::Geos() : m_context(GEOS_init_r()), m_error(std::make_unique<std::string>()) {
  GEOSContext_setErrorMessageHandler_r(m_context, keepError, m_error.get());
}

Geos::~Geos() { GEOS_finish_r(m_context); }

Geos::Shape Geos::own(GEOSGeometry* shape) const {
  if (shape == nullptr) throw std::runtime_error("GEOS: " + *m_error);
  const auto context = m_context;
  return {shape, [context](GEOSGeometry* g) { GEOSGeom_destroy_r(context, g); }};
}

GEOSCoordSequence* Geos::sequence(const geometry::Polyline& points, bool close) const {
  const auto size = static_cast<unsigned>(points.size() + (close ? 1 : 0));
  GEOSCoordSequence* seq = GEOSCoordSeq_create_r(m_context, size, 2);
  for (unsigned i = 0; i < size; ++i) {
    const geometry::Point p = points[i % points.size()];
    GEOSCoordSeq_setXY_r(m_context, seq, i, p.x, p.y);
  }
  return seq;
}

Geos::Shape Geos::point(geometry::Point p) const {
  return own(GEOSGeom_createPointFromXY_r(m_context, p.x, p.y));
}

Geos::Shape Geos::line(const geometry::Polyline& points) const {
  return own(GEOSGeom_createLineString_r(m_context, sequence(points, false)));
}

Geos::Shape Geos::outline(const geometry::Polygon& corners) const {
  return own(GEOSGeom_createLineString_r(m_context, sequence(corners, true)));
}

Geos::Shape Geos::polygon(const geometry::Polygon& corners) const {
  GEOSGeometry* ring = GEOSGeom_createLinearRing_r(m_context, sequence(corners, true));
  return own(GEOSGeom_createPolygon_r(m_context, ring, nullptr, 0));
}

Geos::Shape Geos::buffer(const Shape& shape, double r, int quarterSegments) const {
  return own(GEOSBuffer_r(m_context, shape.get(), r, quarterSegments));
}

Geos::Shape Geos::unite(const std::vector<Shape>& shapes) const {
  std::vector<GEOSGeometry*> parts;
  for (const Shape& s : shapes) parts.push_back(GEOSGeom_clone_r(m_context, s.get()));
  const Shape all = own(GEOSGeom_createCollection_r(
      m_context, GEOS_GEOMETRYCOLLECTION, parts.data(), static_cast<unsigned>(parts.size())));
  return own(GEOSUnaryUnion_r(m_context, all.get()));
}

Geos::Shape Geos::difference(const Shape& a, const Shape& b) const {
  return own(GEOSDifference_r(m_context, a.get(), b.get()));
}

Geos::Shape Geos::intersection(const Shape& a, const Shape& b) const {
  return own(GEOSIntersection_r(m_context, a.get(), b.get()));
}

double Geos::length(const Shape& shape) const {
  double length = 0.0;
  GEOSLength_r(m_context, shape.get(), &length);
  return length;
}

}  // namespace sumpwright::external
