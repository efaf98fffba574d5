#include "files/import/LineJoin.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <optional>
#include <set>
#include <unordered_map>
#include <utility>

namespace sumpwright::files {

namespace {

using geometry::Point;
using geometry::Vec;

/// Finds the place an end belongs to: looks in the cell it falls into, and those around.
class Places {
 public:
  explicit Places(double tolerance) : m_tolerance(tolerance) {}
  std::size_t of(Point p);
  const std::vector<Point>& points() const { return m_points; }

 private:
  struct CellHash {
    std::size_t operator()(const std::pair<double, double>& cell) const {
      return std::hash<double>()(cell.first) * 31 + std::hash<double>()(cell.second);
    }
  };
  double m_tolerance;
  std::vector<Point> m_points;
  // Cells as whole doubles: no number is too large for them.
  std::unordered_map<std::pair<double, double>, std::vector<std::size_t>, CellHash> m_cells;
};

std::size_t Places::of(Point p) {
  const double column = std::floor(p.x / m_tolerance);
  const double row = std::floor(p.y / m_tolerance);
  for (int i = -1; i <= 1; ++i) {
    for (int j = -1; j <= 1; ++j) {
      const auto cell = m_cells.find({column + i, row + j});
      if (cell == m_cells.end()) continue;
      for (const std::size_t place : cell->second) {
        if (distance(m_points[place], p) <= m_tolerance) return place;
      }
    }
  }
  m_points.push_back(p);
  m_cells[{column, row}].push_back(m_points.size() - 1);
  return m_points.size() - 1;
}

/// Places and which of them lines join.
struct Net {
  std::vector<Point> points;
  std::vector<std::vector<std::size_t>> next;  ///< of each place, without repeats
  std::size_t lines = 0;
};

Net netOf(const std::vector<geometry::Segment>& lines, double tolerance) {
  Places places(tolerance);
  std::set<std::pair<std::size_t, std::size_t>> pairs;
  for (const geometry::Segment& line : lines) {
    const std::size_t a = places.of(line.a);
    const std::size_t b = places.of(line.b);
    if (a != b) pairs.insert(std::minmax(a, b));
  }
  Net net{places.points(), {}, pairs.size()};
  net.next.resize(net.points.size());
  for (const auto& [a, b] : pairs) {
    net.next[a].push_back(b);
    net.next[b].push_back(a);
  }
  return net;
}

/// Takes away lines that end in the open, again and again; how many.
std::size_t prune(Net& net) {
  std::vector<std::size_t> ends;
  for (std::size_t i = 0; i < net.next.size(); ++i) {
    if (net.next[i].size() == 1) ends.push_back(i);
  }
  std::size_t taken = 0;
  while (!ends.empty()) {
    const std::size_t end = ends.back();
    ends.pop_back();
    if (net.next[end].size() != 1) continue;
    const std::size_t other = net.next[end].front();
    net.next[end].clear();
    std::erase(net.next[other], end);
    ++taken;
    if (net.next[other].size() == 1) ends.push_back(other);
  }
  return taken;
}

/// The next place of an outline walked with the outside at the right hand: the first line to be met
/// turning counter-clockwise from `back`, the way one came.
std::size_t rightmost(const Net& net, std::size_t at, Vec back, std::optional<std::size_t> from) {
  std::size_t best = net.next[at].front();
  double least = std::numbers::pi * 4;
  for (const std::size_t to : net.next[at]) {
    const Vec way = net.points[to] - net.points[at];
    double turn = std::atan2(cross(back, way), dot(back, way));
    if (turn < 0) turn += 2 * std::numbers::pi;
    if (from && to == *from) turn = 2 * std::numbers::pi;  // back again only where nothing else is
    if (turn < least) {
      least = turn;
      best = to;
    }
  }
  return best;
}

/// Once round the outside of what hangs together with `start`, its lowest place.
std::vector<std::size_t> walkRound(const Net& net, std::size_t start) {
  const std::size_t first = rightmost(net, start, {0, -1}, std::nullopt);
  std::vector<std::size_t> walk{start};
  std::size_t before = start;
  std::size_t at = first;
  // No line is walked more than once each way.
  for (std::size_t steps = 0; steps < 2 * net.lines; ++steps) {
    const std::size_t to = rightmost(net, at, net.points[before] - net.points[at], before);
    if (at == start && to == first) break;
    walk.push_back(at);
    before = std::exchange(at, to);
  }
  return walk;
}

/// Cuts a walk where it comes back to a place; loops of two are bridges, walked there and back.
void addLoops(const Net& net, const std::vector<std::size_t>& walk, JoinedLines& joined,
              std::size_t& lines_used) {
  std::unordered_map<std::size_t, std::size_t> position;
  std::vector<std::size_t> open;
  const auto close = [&](std::size_t from) {
    if (open.size() - from < 3) return;
    geometry::Polygon ring;
    for (std::size_t i = from; i < open.size(); ++i) ring.push_back(net.points[open[i]]);
    lines_used += ring.size();
    joined.rings.push_back(std::move(ring));
  };
  for (const std::size_t place : walk) {
    const auto known = position.find(place);
    if (known == position.end()) {
      position[place] = open.size();
      open.push_back(place);
      continue;
    }
    const std::size_t from = known->second;
    close(from);
    for (std::size_t i = from + 1; i < open.size(); ++i) position.erase(open[i]);
    open.resize(from + 1);
  }
  close(0);
}

/// For each group of places that hang together, its lowest (leftmost of those).
std::vector<std::size_t> lowestOfGroups(const Net& net) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < net.points.size(); ++i) {
    if (!net.next[i].empty()) order.push_back(i);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::pair(net.points[a].y, net.points[a].x) <
           std::pair(net.points[b].y, net.points[b].x);
  });
  std::vector<bool> seen(net.points.size(), false);
  std::vector<std::size_t> lowest;
  for (const std::size_t start : order) {
    if (seen[start]) continue;
    lowest.push_back(start);
    std::vector<std::size_t> todo{start};
    seen[start] = true;
    while (!todo.empty()) {
      const std::size_t at = todo.back();
      todo.pop_back();
      for (const std::size_t to : net.next[at]) {
        if (!seen[to]) todo.push_back(to);
        seen[to] = true;
      }
    }
  }
  return lowest;
}

}  // namespace

JoinedLines joinLines(const std::vector<geometry::Segment>& lines, double tolerance) {
  JoinedLines joined;
  Net net = netOf(lines, tolerance);
  joined.loose = prune(net);
  std::size_t used = 0;
  for (const std::size_t start : lowestOfGroups(net)) {
    addLoops(net, walkRound(net, start), joined, used);
  }
  const std::size_t left = net.lines - joined.loose;
  joined.inner = left > used ? left - used : 0;
  return joined;
}

}  // namespace sumpwright::files
