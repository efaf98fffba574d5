#include "suction/LevelAreas.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>

#include "base/Contract.h"
#include "suction/Coverage.h"
#include "suction/Square.h"

namespace sumpwright::suction {

namespace {

using geometry::Vec;

/// A point of an outline: a centre of the grid, or where a side to the next centre is crossed.
using Node = std::uint32_t;
enum class NodeKind : Node { centre, level_side, upright_side };

struct Leg {
  Node from;
  Node to;
};

enum class SquareKind : std::uint8_t { off_floor, plain, parted };

struct DrawnSquare {
  Node square;
  double low;  ///< of its corners
  double high;
  std::array<bool, 4> bounds;  ///< sides across which nothing is traced
  bool isBound() const { return bounds[0] || bounds[1] || bounds[2] || bounds[3]; }
};

/// Outlines of what is above a level, by marching squares; only what no two squares share is kept.
class AreaTracer {
 public:
  AreaTracer(const Network& network, const std::vector<double>& values)
      : m_network(network),
        m_given(values),
        m_columns(network.frame.nx + 2),
        m_rows(network.frame.ny + 2) {
    takeValues();
    takeSquares();
  }

  LevelArea areaAbove(double level) {
    LevelArea area{level, {}};
    m_level = level;
    m_legs.clear();
    for (const DrawnSquare& one : m_drawn) {
      if (one.high < level || (one.low >= level && !one.isBound())) continue;
      march(one);
    }
    join(area.rings);
    std::vector<Polygon> pieces;
    for (const Square& square : m_parted) square.areasAbove(level, pieces);
    for (Polygon& piece : pieces) area.rings.push_back(std::move(piece));
    for (Polygon& ring : area.rings) {
      for (Point& p : ring) p = m_network.frame.toPlan(p);
    }
    return area;
  }

 private:
  /// Points are cells with one more on each side: point (i, j) is the centre of cell (i-1, j-1).
  Node pointAt(int i, int j) const { return static_cast<Node>(j * m_columns + i); }
  int column(Node point) const { return static_cast<int>(point) % m_columns; }
  int row(Node point) const { return static_cast<int>(point) / m_columns; }
  static Node nodeOf(Node point, NodeKind kind) { return 3 * point + static_cast<Node>(kind); }

  /// Values of cells; beyond the floor that of the cells beside it.
  void takeValues() {
    m_values.assign(static_cast<std::size_t>(m_columns) * static_cast<std::size_t>(m_rows), 0.0);
    for (int j = 0; j < m_rows; ++j) {
      for (int i = 0; i < m_columns; ++i) m_values[pointAt(i, j)] = valueAt(i - 1, j - 1);
    }
  }

  double valueAt(int i, int j) const {
    constexpr std::array<std::array<Vec, 4>, 2> kBeside{
        {{{{1, 0}, {-1, 0}, {0, 1}, {0, -1}}}, {{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}}}}};
    if (const int cell = m_network.cellAt(i, j); cell >= 0) {
      return m_given[static_cast<std::size_t>(cell)];
    }
    for (const auto& beside : kBeside) {
      double sum = 0.0;
      int count = 0;
      for (const Vec by : beside) {
        const int cell = m_network.cellAt(i + static_cast<int>(by.x), j + static_cast<int>(by.y));
        if (cell < 0) continue;
        sum += m_given[static_cast<std::size_t>(cell)];
        ++count;
      }
      if (count > 0) return sum / count;
    }
    return 0.0;
  }

  bool isOwn(int i, int j) const {
    const int cell = m_network.cellAt(i, j);
    return cell >= 0 && m_network.cells[static_cast<std::size_t>(cell)].own_m2 > 0.0;
  }

  void takeSquares() {
    m_kinds.assign(m_values.size(), SquareKind::off_floor);
    for (int j = 0; j + 1 < m_rows; ++j) {
      for (int i = 0; i + 1 < m_columns; ++i) {
        if (isOwn(i - 1, j - 1) || isOwn(i, j - 1) || isOwn(i - 1, j) || isOwn(i, j)) {
          m_kinds[pointAt(i, j)] = SquareKind::plain;
        }
      }
    }
    takeParted();
    for (Node square = 0; square < m_kinds.size(); ++square) {
      if (m_kinds[square] == SquareKind::plain) m_drawn.push_back(drawnOf(square));
    }
  }

  DrawnSquare drawnOf(Node square) const {
    DrawnSquare drawn{square, m_values[square], m_values[square], {}};
    for (const Node corner : cornersOf(square)) {
      drawn.low = std::min(drawn.low, m_values[corner]);
      drawn.high = std::max(drawn.high, m_values[corner]);
    }
    for (std::size_t k = 0; k < 4; ++k) drawn.bounds[k] = isBound(square, k);
    return drawn;
  }

  void takeParted() {
    m_seen.assign(m_values.size(), false);
    for (const geometry::Segment& wall : m_network.walls) {
      const Vec half{0.5, 0.5};  // squares lie half a cell on
      forEachCellPart(wall.a + half, wall.b + half, [&](const CellPart& part) {
        for (int dj = -1; dj <= 1; ++dj) {
          for (int di = -1; di <= 1; ++di) takeIfParted(part.i + di, part.j + dj);
        }
      });
    }
  }

  void takeIfParted(int i, int j) {
    if (i < 0 || j < 0 || i + 1 >= m_columns || j + 1 >= m_rows || m_seen[pointAt(i, j)]) return;
    m_seen[pointAt(i, j)] = true;
    SquareKind& kind = m_kinds[pointAt(i, j)];
    if (kind != SquareKind::plain) return;
    Square square(m_network, m_given, i - 1, j - 1);
    if (!square.parted()) return;
    kind = SquareKind::parted;
    m_parted.push_back(std::move(square));
  }

  /// The centres round a square, counter-clockwise, and the sides between them.
  std::array<Node, 4> cornersOf(Node square) const {
    const Node up = static_cast<Node>(m_columns);
    return {square, square + 1, square + 1 + up, square + up};
  }
  std::array<Node, 4> sidesOf(Node square) const {
    return {nodeOf(square, NodeKind::level_side), nodeOf(square + 1, NodeKind::upright_side),
            nodeOf(square + static_cast<Node>(m_columns), NodeKind::level_side),
            nodeOf(square, NodeKind::upright_side)};
  }

  bool isPlain(int i, int j) const {
    return i >= 0 && j >= 0 && i < m_columns && j < m_rows &&
           m_kinds[pointAt(i, j)] == SquareKind::plain;
  }
  /// Whether the next square across a side is not traced, so that the side bounds the area.
  bool isBound(Node square, std::size_t side) const {
    constexpr std::array<std::array<int, 2>, 4> kAcross{{{0, -1}, {1, 0}, {0, 1}, {-1, 0}}};
    return !isPlain(column(square) + kAcross[side][0], row(square) + kAcross[side][1]);
  }

  void march(const DrawnSquare& one) {
    const std::array<Node, 4> corners = cornersOf(one.square);
    const std::array<Node, 4> sides = sidesOf(one.square);
    std::array<bool, 4> above{};
    int count = 0;
    for (std::size_t k = 0; k < 4; ++k) {
      above[k] = m_values[corners[k]] >= m_level;
      count += above[k] ? 1 : 0;
    }
    for (std::size_t k = 0; k < 4; ++k) {
      const std::size_t next = (k + 1) % 4;
      if ((!above[k] && !above[next]) || !one.bounds[k]) continue;
      m_legs.push_back({above[k] ? nodeOf(corners[k], NodeKind::centre) : sides[k],
                        above[next] ? nodeOf(corners[next], NodeKind::centre) : sides[k]});
    }
    if (count < 4) cross(corners, sides, above);
  }

  void cross(const std::array<Node, 4>& corners, const std::array<Node, 4>& sides,
             const std::array<bool, 4>& above) {
    std::array<Node, 2> ins{};
    std::array<Node, 2> outs{};
    std::size_t in = 0;
    std::size_t out = 0;
    for (std::size_t k = 0; k < 4; ++k) {
      const std::size_t next = (k + 1) % 4;
      if (!above[k] && above[next]) ins[in++] = sides[k];
      if (above[k] && !above[next]) outs[out++] = sides[k];
    }
    if (in == 1) {
      m_legs.push_back({outs[0], ins[0]});
      return;
    }
    // As the lines do at a saddle.
    double sum = 0.0;
    for (const Node corner : corners) sum += m_values[corner];
    const std::size_t other = (0.25 * sum >= m_level) == !above[0] ? 1 : 0;
    m_legs.push_back({outs[0], ins[other]});
    m_legs.push_back({outs[1], ins[1 - other]});
  }

  Point placeOf(Node node) const {
    const Node point = node / 3;
    const Point centre{column(point) - 0.5, row(point) - 0.5};
    const auto kind = static_cast<NodeKind>(node % 3);
    if (kind == NodeKind::centre) return centre;
    const bool level = kind == NodeKind::level_side;
    const double a = m_values[point];
    const double b = m_values[point + (level ? 1U : static_cast<Node>(m_columns))];
    const double share = (m_level - a) / (b - a);
    return centre + (level ? Vec{share, 0.0} : Vec{0.0, share});
  }

  /// Legs end to end, until none is left. Each node has as many that lead to it as from it.
  void join(std::vector<Polygon>& rings) {
    std::sort(m_legs.begin(), m_legs.end(),
              [](const Leg& a, const Leg& b) { return a.from < b.from; });
    m_used.assign(m_legs.size(), false);
    for (std::size_t k = 0; k < m_legs.size(); ++k) {
      if (m_used[k]) continue;
      Polygon ring = follow(k);
      if (ring.size() > 2) rings.push_back(std::move(ring));
    }
  }

  Polygon follow(std::size_t first) {
    Polygon ring;
    std::optional<std::size_t> next = first;
    while (next) {
      m_used[*next] = true;
      add(ring, placeOf(m_legs[*next].from));
      next = unusedFrom(m_legs[*next].to);
    }
    return ring;
  }

  /// Corners on a straight line along the grid are left out.
  static void add(Polygon& ring, Point p) {
    if (ring.size() > 1) {
      const Point before = ring[ring.size() - 2];
      const bool straight = (before.x == ring.back().x && p.x == before.x) ||
                            (before.y == ring.back().y && p.y == before.y);
      if (straight) ring.pop_back();
    }
    ring.push_back(p);
  }

  std::optional<std::size_t> unusedFrom(Node node) const {
    auto leg = std::lower_bound(m_legs.begin(), m_legs.end(), node,
                                [](const Leg& a, Node b) { return a.from < b; });
    for (; leg != m_legs.end() && leg->from == node; ++leg) {
      const auto at = static_cast<std::size_t>(std::distance(m_legs.begin(), leg));
      if (!m_used[at]) return at;
    }
    return std::nullopt;
  }

  const Network& m_network;
  const std::vector<double>& m_given;
  int m_columns;
  int m_rows;
  std::vector<double> m_values;      ///< by point
  std::vector<SquareKind> m_kinds;   ///< by the square's first point
  std::vector<DrawnSquare> m_drawn;  ///< plain squares
  std::vector<bool> m_seen;          ///< squares beside walls, looked at
  std::vector<Square> m_parted;
  double m_level = 0.0;
  std::vector<Leg> m_legs;
  std::vector<bool> m_used;
};

}  // namespace

std::vector<LevelArea> areasAbove(const Network& network, const std::vector<double>& values,
                                  std::vector<double> levels) {
  SUMPWRIGHT_REQUIRE(values.size() == network.cells.size());
  std::sort(levels.begin(), levels.end());
  AreaTracer tracer(network, values);
  std::vector<LevelArea> areas;
  areas.reserve(levels.size());
  for (const double level : levels) areas.push_back(tracer.areaAbove(level));
  return areas;
}

}  // namespace sumpwright::suction
