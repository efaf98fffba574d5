#pragma once
// Lengths of rings and edges, and what to call things; no soundness asked. Internal to core/plan.

#include <optional>
#include <string>

#include "geometry/Point.h"
#include "plan/Plan.h"

namespace sumpwright::plan {

/// Edges there are: one per corner, one less while the ring is open; 0 for fewer than two corners.
std::size_t edgeCount(const Ring& ring);
/// Edge i; contract: i < edgeCount().
geometry::Segment edgeOf(const Ring& ring, std::size_t i);
double ringLength_m(const Ring& ring);
/// The edge `at` speaks of, or nothing where the plan has none such.
std::optional<geometry::Segment> edgeAt(const Plan& plan, const OnWall& at);
/// Chainages are sums of edge lengths; this much is rounding (own figure).
inline constexpr double kChainageRounding_m = 1e-9;
/// Whether the chainage lies on the ring, 0 and the length included.
bool onRing(const Plan& plan, int ring, double chainage_m);

double length_m(const geometry::Segment& segment);

/// The name, or the id where it has none.
template <class Thing>
const std::string& labelOf(const Thing& thing) {
  if constexpr (requires { thing.name; }) {
    if (!thing.name.empty()) return thing.name;
  }
  return thing.id;
}

}  // namespace sumpwright::plan
