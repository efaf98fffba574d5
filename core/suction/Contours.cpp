#include "suction/Contours.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <optional>
#include <utility>

#include "base/Contract.h"
#include "suction/Square.h"

namespace sumpwright::suction {

namespace {

using geometry::Segment;
constexpr double kSamePoint = 1e-6;  // cells

/// Segments found so far, to be joined where their ends meet.
class Joiner {
 public:
  void add(Point from, Point to) {
    if (geometry::distance(from, to) < kSamePoint) return;
    m_starts.emplace(keyOf(from), m_parts.size());
    m_parts.push_back({from, to});
  }

  std::vector<Contour> joined(double level_pa, const Frame& frame) {
    m_used.assign(m_parts.size(), false);
    std::vector<Contour> contours;
    // Lines that begin somewhere first, so that none is begun in its middle.
    std::map<Key, int> ends;
    for (const Segment& part : m_parts) ++ends[keyOf(part.b)];
    for (std::size_t k = 0; k < m_parts.size(); ++k) {
      if (!m_used[k] && ends.find(keyOf(m_parts[k].a)) == ends.end()) {
        contours.push_back(follow(k, level_pa, frame));
      }
    }
    for (std::size_t k = 0; k < m_parts.size(); ++k) {
      if (!m_used[k]) contours.push_back(follow(k, level_pa, frame));
    }
    return contours;
  }

 private:
  using Key = std::pair<std::int64_t, std::int64_t>;
  static Key keyOf(Point p) {
    return {std::llround(p.x / kSamePoint), std::llround(p.y / kSamePoint)};
  }

  Contour follow(std::size_t part, double level_pa, const Frame& frame) {
    Contour contour{level_pa};
    const Point start = m_parts[part].a;
    contour.line.push_back(frame.toPlan(start));
    std::optional<std::size_t> next = part;
    Point end = start;
    while (next) {
      m_used[*next] = true;
      end = m_parts[*next].b;
      contour.line.push_back(frame.toPlan(end));
      next = startingAt(end);
    }
    if (keyOf(end) == keyOf(start) && contour.line.size() > 3) {
      contour.closed = true;
      contour.line.pop_back();
    }
    return contour;
  }

  std::optional<std::size_t> startingAt(Point p) const {
    const auto [first, last] = m_starts.equal_range(keyOf(p));
    for (auto it = first; it != last; ++it) {
      if (!m_used[it->second]) return it->second;
    }
    return std::nullopt;
  }

  std::vector<Segment> m_parts;
  std::multimap<Key, std::size_t> m_starts;
  std::vector<bool> m_used;
};

}  // namespace

std::vector<Contour> contoursOf(const Network& network, const std::vector<double>& suction,
                                const std::vector<double>& levels_pa) {
  SUMPWRIGHT_REQUIRE(suction.size() == network.cells.size());
  std::vector<double> levels = levels_pa;
  std::sort(levels.begin(), levels.end());
  std::vector<Joiner> lines(levels.size());
  std::vector<Segment> found;
  for (int j = -1; j < network.frame.ny; ++j) {
    for (int i = -1; i < network.frame.nx; ++i) {
      const Square square(network, suction, i, j);
      if (!square.any()) continue;
      for (std::size_t k = 0; k < levels.size(); ++k) {
        found.clear();
        square.march(levels[k], found);
        for (const Segment& part : found) lines[k].add(part.a, part.b);
      }
    }
  }
  std::vector<Contour> contours;
  for (std::size_t k = 0; k < levels.size(); ++k) {
    const auto joined = lines[k].joined(levels[k], network.frame);
    contours.insert(contours.end(), joined.begin(), joined.end());
  }
  return contours;
}

}  // namespace sumpwright::suction
