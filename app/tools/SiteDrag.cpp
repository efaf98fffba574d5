#include "tools/SiteDrag.h"

#include <algorithm>

namespace sumpwright::tools {

namespace {

using geometry::distance;
using perimeter::Edge;

/// Distance along the edge of the point nearest to `target`.
double foot(const Edge& edge, Point target) {
  return std::clamp(geometry::dot(target - edge.from, edge.along), 0.0, edge.length_m);
}

std::size_t indexOf(const Perimeter& perimeter, Place place) {
  return static_cast<std::size_t>(perimeter.edgeAt(place).edge);
}

}  // namespace

Place slid(const Perimeter& perimeter, Place from, Point target) {
  const std::vector<Edge>& edges = perimeter.edges(from.ring);
  std::size_t i = indexOf(perimeter, from);
  double at = foot(edges[i], target);
  // Held at an edge's end, the slide goes on along the neighbour as long as that leads nearer.
  for (std::size_t steps = 0; steps < edges.size(); ++steps) {
    const bool at_start = at <= 0.0;
    if (!at_start && at < edges[i].length_m) break;
    const std::size_t next =
        at_start ? (i + edges.size() - 1) % edges.size() : (i + 1) % edges.size();
    const double there = foot(edges[next], target);
    const bool stays = at_start ? there >= edges[next].length_m : there <= 0.0;
    if (stays) break;
    i = next;
    at = there;
  }
  return perimeter.wrapped({from.ring, edges[i].start_m + at});
}

Place stepped(const Perimeter& perimeter, Place from, double by_m) {
  return perimeter.wrapped({from.ring, from.chainage_m + by_m});
}

SiteDrag SiteDrag::hold(const Perimeter& perimeter, Place at, Point pointer, double jump_m) {
  return SiteDrag(at, at, pointer - perimeter.pointAt(at), jump_m);
}

SiteDrag SiteDrag::press(const Perimeter& perimeter, Place before, Point pointer, double jump_m) {
  return SiteDrag(before, perimeter.nearest(pointer), {}, jump_m);
}

Place SiteDrag::move(const Perimeter& perimeter, Point pointer) {
  const Point target = pointer - m_rod;
  const Place along = slid(perimeter, m_place, target);
  const Place nearest = perimeter.nearest(target);
  const double stay = distance(perimeter.pointAt(along), target);
  const double leave = distance(perimeter.pointAt(nearest), target);
  m_place = leave + m_jump_m < stay ? nearest : along;
  return m_place;
}

}  // namespace sumpwright::tools
