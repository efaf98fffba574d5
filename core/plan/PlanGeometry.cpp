#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

std::size_t edgeCount(const Ring& ring) {
  const std::size_t corners = ring.corners.size();
  if (corners < 2) return 0;
  return ring.closed ? corners : corners - 1;
}

geometry::Segment edgeOf(const Ring& ring, std::size_t i) {
  return {ring.corners[i], ring.corners[(i + 1) % ring.corners.size()]};
}

double ringLength_m(const Ring& ring) {
  double length = 0.0;
  for (std::size_t i = 0; i < edgeCount(ring); ++i) length += length_m(edgeOf(ring, i));
  return length;
}

std::optional<geometry::Segment> edgeAt(const Plan& plan, const OnWall& at) {
  if (at.ring < 0 || static_cast<std::size_t>(at.ring) >= plan.rings.size()) return std::nullopt;
  const Ring& ring = plan.rings[static_cast<std::size_t>(at.ring)];
  if (at.edge < 0 || static_cast<std::size_t>(at.edge) >= edgeCount(ring)) return std::nullopt;
  return edgeOf(ring, static_cast<std::size_t>(at.edge));
}

bool onRing(const Plan& plan, int ring, double chainage_m) {
  if (ring < 0 || static_cast<std::size_t>(ring) >= plan.rings.size()) return false;
  const double length = ringLength_m(plan.rings[static_cast<std::size_t>(ring)]);
  return length > 0.0 && chainage_m >= 0.0 && chainage_m <= length + kChainageRounding_m;
}

double length_m(const geometry::Segment& segment) {
  return geometry::distance(segment.a, segment.b);
}

}  // namespace sumpwright::plan
