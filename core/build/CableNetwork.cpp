#include "build/CableNetwork.h"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <cmath>
#include <limits>

#include "build/CableLines.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::build {

namespace {

using geometry::Point;

base::Message supplyLabel(const plan::Supply& supply) {
  return base::plainText(supply.name.empty() ? supply.id : supply.name);
}

double heightOf(const plan::Supply& supply, const CableFigures& figures) {
  return supply.kind == plan::SupplyKind::consumer_unit ? figures.board_m : figures.socket_m;
}

class Network {
 public:
  Network(const rules::Site& site, const CableAsk& ask)
      : m_site(site), m_ask(ask), m_lines(cableLines(site, ask.figures)) {}

  CableNetwork made() {
    m_net.head_assumed = m_lines.head_assumed;
    m_net.sill_assumed = m_lines.sill_assumed;
    m_net.dpc_m = m_lines.dpc_m;
    m_stops.resize(m_lines.lines.size());
    const Spot fan = m_lines.spotOnFace(m_ask.fan);
    addStop(fan);
    for (const plan::Supply& supply : m_site.job.plan.supplies) addSupply(supply);
    addBends();
    addCrossings();
    number();
    joinAlong();
    joinAcross();
    m_net.fan = nodeOf(fan);
    m_net.drop_m = std::abs(m_ask.fan_height_m - m_lines.run_outside_m);
    for (Wanted& one : m_wanted) {
      one.terminal.node = nodeOf(one.spot);
      m_net.terminals.push_back(one.terminal);
    }
    return std::move(m_net);
  }

 private:
  struct Wanted {
    CableTerminal terminal;
    Spot spot;
  };
  struct Across {
    Spot from;
    Spot to;
    double length_m;
  };

  void addStop(const Spot& spot) { m_stops[spot.line].push_back(spot.s_m); }

  void refuse(const plan::Supply& supply, const char* id) {
    m_net.none.push_back({supply.id, supplyLabel(supply), base::Message(id)});
  }

  void addSupply(const plan::Supply& supply) {
    const auto found = m_lines.spotOf(supply.at_m);
    if (found.state == Found::wet) return refuse(supply, "cable.no.wet");
    if (found.state == Found::nowhere) return refuse(supply, "cable.no.room");
    CableTerminal terminal{supply.id, 0, 0.0, found.outside};
    const double run = found.outside ? m_lines.run_outside_m : m_ask.figures.skirting_m;
    terminal.rise_m = std::abs(heightOf(supply, m_ask.figures) - run) + found.off_m;
    addStop(found.spot);
    m_wanted.push_back({terminal, found.spot});
  }

  /// Corners, jambs, and as near to them as is drilled.
  void addBends() {
    for (std::size_t k = 0; k < m_lines.lines.size(); ++k) {
      const CableLine& line = m_lines.lines[k];
      for (std::size_t i = 0; i < line.corners.size(); ++i) m_stops[k].push_back(line.starts_m[i]);
      for (const OverOpening& over : line.over) {
        m_stops[k].push_back(over.from_m);
        m_stops[k].push_back(over.to_m);
      }
      for (const CableRange& entry : line.entries) {
        m_stops[k].push_back(entry.from_m);
        m_stops[k].push_back(entry.to_m);
      }
    }
  }

  /// From every place that may be drilled to what it faces; both ends become places of their lines.
  void addCrossings() {
    const double off = m_ask.figures.from_corner_m;
    for (std::size_t k = 0; k < m_lines.lines.size(); ++k) {
      std::vector<double> tried = m_stops[k];
      for (const double s : m_stops[k]) {
        tried.push_back(s + off);
        tried.push_back(s - off);
      }
      for (const double s : tried) {
        const Spot from{k, m_lines.lines[k].wrapped(s)};
        if (!m_lines.mayDrill(from)) continue;
        const auto across = m_lines.facing(from);
        if (!across || !m_lines.mayDrill(across->spot)) continue;
        m_across.push_back({from, across->spot, across->distance_m});
      }
    }
    for (const Across& one : m_across) {
      addStop(one.from);
      addStop(one.to);
    }
  }

  void number() {
    for (std::size_t k = 0; k < m_stops.size(); ++k) {
      std::vector<double>& stops = m_stops[k];
      for (double& s : stops) s = m_lines.lines[k].wrapped(s);
      std::sort(stops.begin(), stops.end());
      stops.erase(std::unique(stops.begin(), stops.end(),
                              [](double a, double b) { return b - a < kSameSpot_m; }),
                  stops.end());
      m_first.push_back(m_net.nodes.size());
      for (const double s : stops) m_net.nodes.push_back(m_lines.lines[k].pointAt(s));
    }
  }

  std::size_t nodeOf(const Spot& spot) const {
    const std::vector<double>& stops = m_stops[spot.line];
    const auto at = std::lower_bound(stops.begin(), stops.end(), spot.s_m - kSameSpot_m);
    const std::size_t i = at == stops.end() ? 0 : static_cast<std::size_t>(at - stops.begin());
    return m_first[spot.line] + i;
  }

  void joinAlong() {
    for (std::size_t k = 0; k < m_stops.size(); ++k) {
      const CableLine& line = m_lines.lines[k];
      const std::vector<double>& stops = m_stops[k];
      for (std::size_t i = 0; i < stops.size(); ++i) {
        const std::size_t next = (i + 1) % stops.size();
        const double to = next == 0 ? stops[0] + line.length_m : stops[next];
        const double middle = line.wrapped((stops[i] + to) / 2.0);
        if (line.isWet(middle)) continue;
        CableLink link{m_first[k] + i, m_first[k] + next, to - stops[i], 0.0, line.kind, {}};
        if (const OverOpening* over = line.overAt(middle);
            over != nullptr && over->detour_m > 0.0) {
          link.kind = CablePartKind::over_opening;
          link.thing = over->thing;
          link.length_m += over->detour_m;
        }
        link.cost_m = link.length_m;
        m_net.links.push_back(std::move(link));
      }
    }
  }

  void joinAcross() {
    for (const Across& one : m_across) {
      const bool sleeve = m_lines.lines[one.from.line].kind == CablePartKind::outside ||
                          m_lines.lines[one.to.line].kind == CablePartKind::outside;
      CableLink link{nodeOf(one.from),
                     nodeOf(one.to),
                     one.length_m,
                     one.length_m,
                     sleeve ? CablePartKind::sleeve : CablePartKind::drilling,
                     {}};
      // Down from the sleeve to the skirting inside.
      if (sleeve) link.length_m += std::abs(m_lines.run_outside_m - m_ask.figures.skirting_m);
      link.cost_m = link.length_m + m_ask.figures.per_drilling_m;
      m_net.links.push_back(std::move(link));
    }
  }

  const rules::Site& m_site;
  const CableAsk& m_ask;
  CableLines m_lines;
  CableNetwork m_net;
  std::vector<std::vector<double>> m_stops;  ///< by line
  std::vector<std::size_t> m_first;          ///< node of the first stop, by line
  std::vector<Across> m_across;
  std::vector<Wanted> m_wanted;
};

}  // namespace

CableNetwork cableNetwork(const rules::Site& site, const CableAsk& ask) {
  return Network(site, ask).made();
}

CableWays cableWays(const CableNetwork& net) {
  struct Cost {
    double cost_m;
  };
  using Graph =
      boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property, Cost>;
  Graph graph(net.nodes.size());
  for (const CableLink& link : net.links) boost::add_edge(link.a, link.b, {link.cost_m}, graph);
  CableWays ways;
  ways.cost_m.assign(net.nodes.size(), std::numeric_limits<double>::infinity());
  ways.last_link.assign(net.nodes.size(), net.links.size());
  if (net.nodes.empty()) return ways;
  std::vector<std::size_t> from(net.nodes.size());
  const auto at = boost::get(boost::vertex_index, graph);
  boost::dijkstra_shortest_paths(
      graph, net.fan,
      boost::weight_map(boost::get(&Cost::cost_m, graph))
          .distance_map(boost::make_iterator_property_map(ways.cost_m.begin(), at))
          .predecessor_map(boost::make_iterator_property_map(from.begin(), at))
          .distance_inf(std::numeric_limits<double>::infinity()));
  // Of several links between the same two places the cheapest is the one that was taken.
  for (std::size_t i = 0; i < net.links.size(); ++i) {
    const CableLink& link = net.links[i];
    const auto take = [&](std::size_t a, std::size_t b) {
      if (b == net.fan || from[b] != a || std::isinf(ways.cost_m[b])) return;
      std::size_t& last = ways.last_link[b];
      if (last == net.links.size() || net.links[last].cost_m > link.cost_m) last = i;
    };
    take(link.a, link.b);
    take(link.b, link.a);
  }
  return ways;
}

std::vector<std::size_t> CableWays::linksTo(const CableNetwork& net, std::size_t node) const {
  std::vector<std::size_t> links;
  while (node != net.fan && last_link[node] < net.links.size()) {
    const std::size_t link = last_link[node];
    links.push_back(link);
    node = net.links[link].a == node ? net.links[link].b : net.links[link].a;
  }
  std::reverse(links.begin(), links.end());
  return links;
}

}  // namespace sumpwright::build
