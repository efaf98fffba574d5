#include "build/CableAlong.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "build/CableNetwork.h"
#include "build/Run.h"
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

/// Ways from the supplies to all fans, those of one kind at a time: the wish, then what is no
/// consumer unit, then consumer units.
class Outward {
 public:
  Outward(const Site& site, const CableAsk& ask, const CableNetwork& net)
      : m_site(site), m_net(net), m_per_drilling_m(ask.figures.per_drilling_m) {
    add([&](const plan::Supply& s) { return s.id == ask.wish; });
    add([](const plan::Supply& s) { return s.kind != plan::SupplyKind::consumer_unit; });
    add([](const plan::Supply& s) { return s.kind == plan::SupplyKind::consumer_unit; });
  }

  std::optional<double> length_m(std::size_t fan) const {
    for (const Ways& ways : m_ways) {
      if (std::isinf(ways.ways.cost_m[fan])) continue;
      double length = m_net.drop_m + restAt(ways, ways.ways.startOf(m_net, fan));
      for (const std::size_t link : ways.ways.linksTo(m_net, fan)) {
        length += m_net.links[link].length_m;
      }
      return length;
    }
    return std::nullopt;
  }

 private:
  struct Ways {
    std::vector<const CableTerminal*> terminals;
    CableWays ways;
  };

  template <class Meant>
  void add(const Meant& meant) {
    std::vector<CableStart> starts;
    Ways ways;
    for (const CableTerminal& terminal : m_net.terminals) {
      for (const plan::Supply& supply : m_site.job.plan.supplies) {
        if (supply.id != terminal.supply || !meant(supply)) continue;
        starts.push_back({terminal.node, terminal.cost_m(m_per_drilling_m)});
        ways.terminals.push_back(&terminal);
      }
    }
    if (starts.empty()) return;
    ways.ways = cableWays(m_net, starts);
    m_ways.push_back(std::move(ways));
  }

  /// From the run to the supply that is cheapest at a node.
  double restAt(const Ways& ways, std::size_t node) const {
    const CableTerminal* best = nullptr;
    for (const CableTerminal* one : ways.terminals) {
      if (one->node != node) continue;
      const bool first = best == nullptr;
      if (first || one->cost_m(m_per_drilling_m) < best->cost_m(m_per_drilling_m)) best = one;
    }
    return best->rise_m + best->through_m;
  }

  const Site& m_site;
  const CableNetwork& m_net;
  double m_per_drilling_m;
  std::vector<Ways> m_ways;
};

/// Walls meet within a hair of their corner.
void meetAtCorners(const Site& site, std::vector<rules::RingSpan>& where) {
  for (rules::RingSpan& span : where) {
    for (const Edge& edge : site.perimeter.edges(span.ring)) {
      if (std::abs(span.from_m - edge.start_m) <= 2.0 * kHairOff_m) {
        span.from_m = edge.start_m;
        span.from_in = true;
      }
      if (std::abs(span.to_m - edge.end_m()) <= 2.0 * kHairOff_m) span.to_m = edge.end_m();
    }
  }
}

void addObjection(const Rule& rule, const Site& site, const Message& reason,
                  std::vector<rules::RingSpan> where, std::vector<FindingSpan>& out) {
  meetAtCorners(site, where);
  rules::addSpans(rule, site, -1, rules::makeFinding(rule, site, -1, reason),
                  rules::joinSpans(std::move(where)), out);
}

/// Nobody drew a supply: not proven, where the rule may refuse or asks for it.
void addNoSupply(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (rule.severity != rules::Severity::binding && !rule.unknown_gates) return;
  rules::Finding f = rules::makeFinding(rule, site, -1, Message("rule.supply-none"));
  f.weight = rules::Weight::unknown;
  f.waivable = {};
  rules::addSpans(rule, site, -1, f, rules::allRings(site.perimeter), out);
}

void supplySpans(const Rule& rule, const Site& site, std::vector<FindingSpan>& out) {
  if (!rule.most_m) return;
  if (site.job.plan.supplies.empty()) return addNoSupply(rule, site, out);
  const Wiring wiring = wiringOf(site, site.sump);
  const CableAlong along = CableAlong::of(site, wiring.ask, wiring.shift_m);
  std::vector<rules::RingSpan> far;
  std::vector<rules::RingSpan> no_way;
  for (std::size_t k = 1; k < along.nodes().size(); ++k) {
    const CableAlong::Node& a = along.nodes()[k - 1];
    const CableAlong::Node& b = along.nodes()[k];
    if (!onOneWall(a, b)) continue;
    if (!a.length_m || !b.length_m) {
      no_way.push_back({a.ring, a.chainage_m, b.chainage_m, true});
    } else if (const auto part = longPart(a, b, rule.most_m->value)) {
      far.push_back(*part);
    }
  }
  addObjection(rule, site, Message("rule.supply-far", {base::metres("most", rule.most_m->value)}),
               std::move(far), out);
  addObjection(rule, site, Message("rule.supply-no-way"), std::move(no_way), out);
}

std::optional<rules::Nearest> supplyNearest(const Rule&, const Site&, perimeter::Place) {
  return std::nullopt;
}

std::optional<double> supplyLeast(const Rule&, const Site&, const rules::Thing&, int, double,
                                  double) {
  return std::nullopt;
}

}  // namespace

Wiring wiringOf(const Site& site, const std::string& sump) {
  const std::string& id = sump.empty() && site.run ? site.run->sump : sump;
  for (const plan::Sump& one : site.job.design.sumps) {
    if (one.kind != plan::SumpKind::cored || (!id.empty() && one.id != id)) continue;
    const perimeter::Place hole{one.ring, one.chainage_m};
    if (!site.perimeter.contains(hole)) continue;
    Wiring wiring{cableAskOf(site, one, hole), 0.0};
    wiring.ask.fan = {};
    if (const auto run = placedRun(site, one)) wiring.shift_m = fanShift_m(*run);
    return wiring;
  }
  return {};
}

CableAlong CableAlong::of(const Site& site, const CableAsk& ask, double shift_m) {
  CableAlong along;
  std::vector<perimeter::Place> fans;
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    for (const Edge& edge : site.perimeter.edges(ring)) {
      const int steps = std::max(1, static_cast<int>(std::ceil(edge.length_m / kCableStep_m)));
      for (int k = 0; k <= steps; ++k) {
        const double off = std::clamp(edge.length_m * k / steps, kHairOff_m,
                                      std::max(kHairOff_m, edge.length_m - kHairOff_m));
        along.m_nodes.push_back({ring, edge.edge, edge.start_m + off, std::nullopt});
        fans.push_back(site.perimeter.wrapped({ring, edge.start_m + off + shift_m}));
      }
    }
  }
  const CableNetwork net = cableNetwork(site, ask, fans);
  const Outward outward(site, ask, net);
  for (std::size_t k = 0; k < fans.size(); ++k) {
    along.m_nodes[k].length_m = outward.length_m(net.fans[k]);
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
