#include "suction/Contours.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <map>
#include <optional>
#include <utility>

#include "base/Contract.h"

namespace sumpwright::suction {

namespace {

using geometry::Segment;
using geometry::Vec;

constexpr double kSamePoint = 1e-6;                                       // cells
constexpr std::array<Vec, 4> kCorners{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}};  // counter-clockwise

/// Where along `line` a barrier crosses it, in [0, 1].
std::optional<double> crossingOf(const Segment& line, const Segment& wall) {
  const Vec u = line.b - line.a;
  const Vec w = wall.b - wall.a;
  const double turn = geometry::cross(u, w);
  if (turn == 0.0) return std::nullopt;
  const double t = geometry::cross(wall.a - line.a, w) / turn;
  const double s = geometry::cross(wall.a - line.a, u) / turn;
  if (t < 0.0 || t > 1.0 || s < 0.0 || s > 1.0) return std::nullopt;
  return t;
}

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

/// One square of centres: (i, j) to (i+1, j+1).
class Square {
 public:
  Square(const Network& network, const std::vector<double>& suction, int i, int j)
      : m_corner{i + 0.5, j + 0.5} {
    for (std::size_t k = 0; k < 4; ++k) {
      m_cells[k] =
          network.cellAt(i + static_cast<int>(kCorners[k].x), j + static_cast<int>(kCorners[k].y));
      if (m_cells[k] >= 0) m_values[k] = suction[static_cast<std::size_t>(m_cells[k])];
    }
    for (const Segment& wall : network.walls) {
      if (near(wall)) m_walls.push_back(wall);
    }
  }

  bool any() const {
    return std::any_of(m_cells.begin(), m_cells.end(), [](int c) { return c >= 0; });
  }

  void march(double level, Joiner& lines) const {
    std::array<bool, 4> done{};
    for (std::size_t k = 0; k < 4; ++k) {
      if (m_cells[k] < 0 || done[k]) continue;
      const std::array<bool, 4> side = joinedTo(k);
      for (std::size_t l = 0; l < 4; ++l) done[l] = done[l] || side[l];
      marchSide(level, side, lines);
    }
  }

 private:
  bool near(const Segment& wall) const {
    const double low_x = std::min(wall.a.x, wall.b.x);
    const double high_x = std::max(wall.a.x, wall.b.x);
    const double low_y = std::min(wall.a.y, wall.b.y);
    const double high_y = std::max(wall.a.y, wall.b.y);
    return low_x <= m_corner.x + 1.0 && high_x >= m_corner.x && low_y <= m_corner.y + 1.0 &&
           high_y >= m_corner.y;
  }

  Point at(std::size_t k) const { return m_corner + kCorners[k]; }

  bool walled(Point a, Point b) const {
    return std::any_of(m_walls.begin(), m_walls.end(), [&](const Segment& wall) {
      return crossingOf({a, b}, wall).has_value();
    });
  }

  /// The corners reached from one along the sides without crossing a barrier.
  std::array<bool, 4> joinedTo(std::size_t start) const {
    std::array<bool, 4> side{};
    side[start] = true;
    for (int round = 0; round < 3; ++round) {
      for (std::size_t k = 0; k < 4; ++k) {
        const std::size_t next = (k + 1) % 4;
        if (side[k] == side[next] || m_cells[k] < 0 || m_cells[next] < 0) continue;
        if (!walled(at(k), at(next))) side[k] = side[next] = true;
      }
    }
    return side;
  }

  /// Values with what is not on this side led on square to the barrier: the mean of the neighbours
  /// that are, else what lies across.
  std::array<double, 4> ledOn(const std::array<bool, 4>& side) const {
    std::array<double, 4> values = m_values;
    for (std::size_t k = 0; k < 4; ++k) {
      if (side[k]) continue;
      double sum = 0.0;
      int count = 0;
      for (const std::size_t next : {(k + 1) % 4, (k + 3) % 4}) {
        if (!side[next]) continue;
        sum += m_values[next];
        ++count;
      }
      values[k] = count > 0 ? sum / count : m_values[(k + 2) % 4];
    }
    return values;
  }

  void marchSide(double level, const std::array<bool, 4>& side, Joiner& lines) const {
    const std::array<double, 4> values = ledOn(side);
    const bool whole = side[0] && side[1] && side[2] && side[3];
    std::vector<Point> ins;   // where the outline of the square rises through the level
    std::vector<Point> outs;  // and falls
    for (std::size_t k = 0; k < 4; ++k) {
      const std::size_t next = (k + 1) % 4;
      const bool from = values[k] >= level;
      const bool to = values[next] >= level;
      if (from == to) continue;
      (to ? ins : outs).push_back(crossing(k, next, values, level));
    }
    if (ins.empty()) return;
    // With the square on the left of its outline, what is above lies on the left of out -> in.
    if (ins.size() == 1) {
      emit(outs[0], ins[0], side, whole, lines);
      return;
    }
    const double mean = 0.25 * (values[0] + values[1] + values[2] + values[3]);
    const bool first_rises = values[0] < level;
    const bool swap = (mean >= level) == first_rises;
    emit(outs[0], ins[swap ? 1 : 0], side, whole, lines);
    emit(outs[1], ins[swap ? 0 : 1], side, whole, lines);
  }

  /// The same bits from both squares that share the side.
  Point crossing(std::size_t k, std::size_t next, const std::array<double, 4>& values,
                 double level) const {
    const bool turned = kCorners[next].x < kCorners[k].x || kCorners[next].y < kCorners[k].y;
    const std::size_t a = turned ? next : k;
    const std::size_t b = turned ? k : next;
    return geometry::lerp(at(a), at(b), (level - values[a]) / (values[b] - values[a]));
  }

  /// Cut where barriers stand; only what lies on this side is kept.
  void emit(Point from, Point to, const std::array<bool, 4>& side, bool whole,
            Joiner& lines) const {
    if (whole && m_walls.empty()) {
      lines.add(from, to);
      return;
    }
    std::vector<double> cuts{0.0, 1.0};
    for (const Segment& wall : m_walls) {
      if (const auto t = crossingOf({from, to}, wall)) cuts.push_back(*t);
    }
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t c = 1; c < cuts.size(); ++c) {
      const Point middle = geometry::lerp(from, to, 0.5 * (cuts[c - 1] + cuts[c]));
      if (!seen(middle, side)) continue;
      lines.add(geometry::lerp(from, to, cuts[c - 1]), geometry::lerp(from, to, cuts[c]));
    }
  }

  bool seen(Point p, const std::array<bool, 4>& side) const {
    for (std::size_t k = 0; k < 4; ++k) {
      if (side[k] && !walled(p, at(k))) return true;
    }
    return false;
  }

  Point m_corner;
  std::array<int, 4> m_cells{-1, -1, -1, -1};
  std::array<double, 4> m_values{};
  std::vector<Segment> m_walls;
};

}  // namespace

std::vector<Contour> contoursOf(const Network& network, const std::vector<double>& suction,
                                const std::vector<double>& levels_pa) {
  SUMPWRIGHT_REQUIRE(suction.size() == network.cells.size());
  std::vector<double> levels = levels_pa;
  std::sort(levels.begin(), levels.end());
  std::vector<Joiner> lines(levels.size());
  for (int j = -1; j < network.frame.ny; ++j) {
    for (int i = -1; i < network.frame.nx; ++i) {
      const Square square(network, suction, i, j);
      if (!square.any()) continue;
      for (std::size_t k = 0; k < levels.size(); ++k) square.march(levels[k], lines[k]);
    }
  }
  std::vector<Contour> contours;
  for (std::size_t k = 0; k < levels.size(); ++k) {
    const auto found = lines[k].joined(levels[k], network.frame);
    contours.insert(contours.end(), found.begin(), found.end());
  }
  return contours;
}

std::vector<PaintedCell> paintedCells(const Network& network, const std::vector<double>& suction) {
  SUMPWRIGHT_REQUIRE(suction.size() == network.cells.size());
  std::vector<PaintedCell> painted;
  for (std::size_t c = 0; c < suction.size(); ++c) {
    const Cell& cell = network.cells[c];
    if (!(cell.own_m2 > 0.0)) continue;
    PaintedCell one{{}, suction[c]};
    for (const Vec corner : kCorners) {
      one.corners.push_back(network.frame.toPlan(Point{1.0 * cell.i, 1.0 * cell.j} + corner));
    }
    painted.push_back(std::move(one));
  }
  return painted;
}

}  // namespace sumpwright::suction
