#include "build/CableAlong.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "rules/Spans.h"

namespace sumpwright::build {

namespace {

using base::Message;
using perimeter::Edge;
using rules::FindingSpan;
using rules::Rule;
using rules::Site;

constexpr double kHairOff_m = 1e-6;  // the very end of a wall belongs to the next

bool onOneWall(const CableAlong::Node& a, const CableAlong::Node& b) {
  return a.ring == b.ring && a.edge == b.edge;
}

/// The part between two nodes that is longer than `most`, if any.
std::optional<rules::RingSpan> longPart(const CableAlong::Node& a, const CableAlong::Node& b,
                                        double most) {
  if (!onOneWall(a, b) || !a.length_m || !b.length_m) return std::nullopt;
  const bool low = *a.length_m > most;
  const bool high = *b.length_m > most;
  if (!low && !high) return std::nullopt;
  double from = a.chainage_m;
  double to = b.chainage_m;
  if (low != high) {
    const double share = (most - *a.length_m) / (*b.length_m - *a.length_m);
    (low ? to : from) = a.chainage_m + share * (b.chainage_m - a.chainage_m);
  }
  return rules::RingSpan{a.ring, from, to, low};
}

void supplySpans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (!rule.most_m || site.job.plan.supplies.empty()) return;
  const CableAlong along = CableAlong::of(site);
  std::vector<rules::RingSpan> where;
  for (std::size_t k = 1; k < along.nodes().size(); ++k) {
    if (const auto part = longPart(along.nodes()[k - 1], along.nodes()[k], rule.most_m->value)) {
      where.push_back(*part);
    }
  }
  // Walls meet within a hair of their corner.
  for (rules::RingSpan& span : where) {
    for (const Edge& edge : site.perimeter.edges(span.ring)) {
      if (std::abs(span.from_m - edge.start_m) <= 2.0 * kHairOff_m) span.from_m = edge.start_m;
      if (std::abs(span.to_m - edge.end_m()) <= 2.0 * kHairOff_m) span.to_m = edge.end_m();
    }
  }
  const Message reason("rule.supply-far", {base::metres("most", rule.most_m->value)});
  rules::addSpans(rule, site, -1, rules::makeFinding(rule, site, -1, reason),
                  rules::joinSpans(std::move(where)), out);
}

std::optional<rules::Nearest> supplyNearest(const Rule&, const Site&, perimeter::Place) {
  return std::nullopt;
}

std::optional<double> supplyLeast(const Rule&, const Site&, const rules::Thing&, int, double,
                                  double) {
  return std::nullopt;
}

}  // namespace

CableAlong CableAlong::of(const Site& site, const CableAsk& ask) {
  CableAlong along;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      const int steps = std::max(1, static_cast<int>(std::ceil(edge.length_m / kCableStep_m)));
      for (int k = 0; k <= steps; ++k) {
        const double off = std::clamp(edge.length_m * k / steps, kHairOff_m,
                                      std::max(kHairOff_m, edge.length_m - kHairOff_m));
        CableAsk there = ask;
        there.fan = {ring, edge.start_m + off};
        along.m_nodes.push_back(
            {ring, edge.edge, there.fan.chainage_m, cableLength_m(site, there)});
      }
    }
  }
  return along;
}

std::optional<double> CableAlong::length_m(perimeter::Place place) const {
  const auto after = std::lower_bound(
      m_nodes.begin(), m_nodes.end(), place, [](const Node& node, perimeter::Place p) {
        return std::pair(node.ring, node.chainage_m) < std::pair(p.ring, p.chainage_m);
      });
  if (after == m_nodes.end()) return m_nodes.empty() ? std::nullopt : m_nodes.back().length_m;
  if (after == m_nodes.begin() || !onOneWall(*(after - 1), *after)) return after->length_m;
  const Node& a = *(after - 1);
  const Node& b = *after;
  if (!a.length_m || !b.length_m) return std::nullopt;
  const double share = (place.chainage_m - a.chainage_m) / (b.chainage_m - a.chainage_m);
  return *a.length_m + share * (*b.length_m - *a.length_m);
}

const rules::RuleJudge kSupply{rules::RuleKind::supply, supplySpans, supplyNearest, supplyLeast};

}  // namespace sumpwright::build
