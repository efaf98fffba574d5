// The best ways through the network, by Boost.Graph.

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <cmath>
#include <limits>

#include "build/CableNetwork.h"

namespace sumpwright::build {

CableWays cableWays(const CableNetwork& net, const std::vector<CableStart>& starts) {
  struct Cost {
    double cost_m;
  };
  using Graph =
      boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property, Cost>;
  // One place more, from which every start is as far as it costs.
  const std::size_t before = net.nodes.size();
  Graph graph(before + 1);
  const auto isStart = [&](std::size_t node) {
    return std::any_of(starts.begin(), starts.end(),
                       [&](const CableStart& start) { return start.node == node; });
  };
  for (const CableLink& link : net.links) {
    // A fan in the roof space is an end: no cable goes up to it and down again.
    const bool roof = link.kind == CablePartKind::roof;
    if (!roof || isStart(link.a)) boost::add_edge(link.a, link.b, {link.cost_m}, graph);
    if (!roof || !isStart(link.a)) boost::add_edge(link.b, link.a, {link.cost_m}, graph);
  }
  for (const CableStart& start : starts) {
    boost::add_edge(before, start.node, {start.cost_m}, graph);
  }
  CableWays ways;
  ways.cost_m.assign(before + 1, std::numeric_limits<double>::infinity());
  std::vector<std::size_t> from(before + 1);
  const auto at = boost::get(boost::vertex_index, graph);
  boost::dijkstra_shortest_paths(
      graph, before,
      boost::weight_map(boost::get(&Cost::cost_m, graph))
          .distance_map(boost::make_iterator_property_map(ways.cost_m.begin(), at))
          .predecessor_map(boost::make_iterator_property_map(from.begin(), at))
          .distance_inf(std::numeric_limits<double>::infinity()));
  ways.cost_m.resize(before);
  ways.last_link.assign(before, net.links.size());
  // Of several links between the same two places the cheapest is the one that was taken.
  for (std::size_t i = 0; i < net.links.size(); ++i) {
    const CableLink& link = net.links[i];
    const auto take = [&](std::size_t a, std::size_t b) {
      if (from[b] != a || std::isinf(ways.cost_m[b])) return;
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
  while (last_link[node] < net.links.size()) {
    links.push_back(last_link[node]);
    node = net.across(last_link[node], node);
  }
  std::reverse(links.begin(), links.end());
  return links;
}

std::size_t CableWays::startOf(const CableNetwork& net, std::size_t node) const {
  while (last_link[node] < net.links.size()) node = net.across(last_link[node], node);
  return node;
}

}  // namespace sumpwright::build
