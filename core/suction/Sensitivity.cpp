#include "suction/Sensitivity.h"

#include <cmath>

namespace sumpwright::suction {

namespace {

/// dA/dln(part) s.
std::vector<double> changeOf(const Network& network, const Scales& scales,
                             const std::vector<double>& suction, GroundPart part) {
  std::vector<double> flow(suction.size(), 0.0);
  if (part == GroundPart::leakage) {
    for (std::size_t c = 0; c < flow.size(); ++c) {
      flow[c] = leakageOf(network.cells[c], scales) * suction[c];
    }
    return flow;
  }
  for (const Joint& joint : network.joints) {
    const double c = conductanceOf(joint, scales);
    const double fill = joint.fill * scales.transmissivity;
    // c = f g / (f + g): dc/dln f = c^2 / f, and the rest of c is dc/dln g.
    const double by_fill = c * c / fill;
    const auto cell = static_cast<std::size_t>(joint.cell);
    if (part == GroundPart::transmissivity) flow[cell] += by_fill * suction[cell];
    if (part == GroundPart::joints) flow[cell] += (c - by_fill) * suction[cell];
  }
  for (const Link& link : network.links) {
    const double c = conductanceOf(link, scales);
    double by_fill = link.conduit ? 0.0 : c;
    if (!link.conduit && !std::isinf(link.wall)) {
      by_fill = c * c / (link.fill * scales.transmissivity);
    }
    double change = 0.0;
    if (part == GroundPart::transmissivity) change = by_fill;
    if (part == GroundPart::barriers && !link.conduit) change = c - by_fill;
    const auto a = static_cast<std::size_t>(link.a);
    const auto b = static_cast<std::size_t>(link.b);
    flow[a] += change * (suction[a] - suction[b]);
    flow[b] -= change * (suction[a] - suction[b]);
  }
  return flow;
}

}  // namespace

std::vector<double> sensitivity(const Network& network, const Factor& factor, const Scales& scales,
                                const std::vector<double>& suction, GroundPart part) {
  auto change = factor.solveFull(changeOf(network, scales, suction, part));
  for (double& value : change) value = -value;
  return change;
}

}  // namespace sumpwright::suction
