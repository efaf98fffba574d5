#include "core/build/CableLattice.h"

#include <algorithm>
#include <array>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <cmath>
#include <limits>
#include <set>
#include <tuple>

namespace sumpwright::build {

namespace {

enum class Square { air, wall, room, wet };

constexpr int kMargin = 2;
constexpr std::array<GridPoint, 4> kWays{{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};

GridPoint operator+(GridPoint a, GridPoint b) { return {a.x + b.x, a.y + b.y}; }

/// A grid line one square long on a face.
struct FaceBit {
  bool on_face = false;
  bool outside = false;
  int opening = -1;
  bool closed = false;
};

class Lattice {
 public:
  Lattice(const LatticeHouse& house, const LatticeFigures& figures)
      : m_house(house), m_figures(figures) {
    fill();
    const double dpc = house.dpc_m.value_or(house.ground_m + 0.15);
    m_outside_m = std::max({figures.lowest_sleeve_m, dpc + figures.above_dpc_m,
                            house.ground_m + figures.above_ground_m});
    joinFaces();
    joinRows();
    joinWalls();
  }

  std::map<std::string, std::optional<double>> costs(const LatticeFan& fan) {
    const std::size_t start = fan.in_roof ? inRoof(fan) : node(fan.at, kLow);
    const double drop = fan.in_roof ? 0.0 : std::abs(fan.height_m - m_outside_m);
    std::vector<double> far(boost::num_vertices(m_graph));
    const auto index = boost::get(boost::vertex_index, m_graph);
    boost::dijkstra_shortest_paths(
        m_graph, start,
        boost::weight_map(boost::get(boost::edge_weight, m_graph))
            .distance_map(boost::make_iterator_property_map(far.begin(), index))
            .distance_inf(std::numeric_limits<double>::infinity()));
    std::map<std::string, std::optional<double>> found;
    for (const GridSupply& supply : m_house.supplies) {
      std::optional<double>& cost = found[supply.id];
      const auto at = m_nodes.find({supply.at.x, supply.at.y, kLow});
      if (at == m_nodes.end() || std::isinf(far[at->second])) continue;
      const double run = isOutside(supply.at) ? m_outside_m : m_figures.skirting_m;
      const double height = supply.board ? m_figures.board_m : m_figures.socket_m;
      cost = drop + far[at->second] + std::abs(height - run);
    }
    return found;
  }

 private:
  using Graph =
      boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property,
                            boost::property<boost::edge_weight_t, double>>;
  static constexpr int kLow = -1;  // the run's own height; else the opening that is gone over

  // Squares.

  Square& square(int x, int y) {
    return m_squares[static_cast<std::size_t>((y + kMargin) * m_width + x + kMargin)];
  }
  Square square(int x, int y) const {
    return m_squares[static_cast<std::size_t>((y + kMargin) * m_width + x + kMargin)];
  }
  static bool isFree(Square s) { return s == Square::air || s == Square::room; }

  void fill() {
    for (const GridPoint p : m_house.rings[0]) {
      m_width = std::max(m_width, p.x + 2 * kMargin);
      m_height = std::max(m_height, p.y + 2 * kMargin);
    }
    m_squares.assign(static_cast<std::size_t>(m_width * m_height), Square::air);
    for (int y = -kMargin; y < m_height - kMargin; ++y) {
      for (int x = -kMargin; x < m_width - kMargin; ++x) {
        if (isInHouse(x, y)) square(x, y) = Square::wall;
      }
    }
    for (const GridRoom& room : m_house.rooms) {
      const Square kind = !room.drawn ? Square::wall : room.wet ? Square::wet : Square::room;
      const GridRect& r = room.squares;
      for (int y = r.y0; y < r.y1; ++y) {
        for (int x = r.x0; x < r.x1; ++x) square(x, y) = kind;
      }
    }
  }

  /// Upright sides to the right of it: an odd number.
  bool isInHouse(int x, int y) const {
    bool in = false;
    for (const auto& ring : m_house.rings) {
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const GridPoint a = ring[i];
        const GridPoint b = ring[(i + 1) % ring.size()];
        if (a.x == b.x && a.x > x && std::min(a.y, b.y) <= y && y < std::max(a.y, b.y)) in = !in;
      }
    }
    return in;
  }

  // Faces.

  /// The squares on either side of the grid line from a place.
  std::array<GridPoint, 2> beside(GridPoint p, GridPoint way) const {
    const GridPoint q{p.x + std::min(way.x, 0), p.y + std::min(way.y, 0)};
    if (way.x != 0) return {{{q.x, q.y - 1}, {q.x, q.y}}};
    return {{{q.x - 1, q.y}, {q.x, q.y}}};
  }

  bool holds(GridPoint p) const {
    return p.x > -kMargin && p.y > -kMargin && p.x < m_width - kMargin && p.y < m_height - kMargin;
  }

  FaceBit bit(GridPoint p, GridPoint way) const {
    FaceBit found;
    if (!holds(p) || !holds(p + way)) return found;
    const auto squares = beside(p, way);
    const Square a = square(squares[0].x, squares[0].y);
    const Square b = square(squares[1].x, squares[1].y);
    if (isFree(a) == isFree(b)) return found;
    const GridPoint solid = isFree(a) ? squares[1] : squares[0];
    found.on_face = true;
    found.outside = a == Square::air || b == Square::air;
    for (std::size_t k = 0; k < m_house.openings.size(); ++k) {
      if (m_house.openings[k].squares.has(solid.x, solid.y)) found.opening = static_cast<int>(k);
    }
    found.closed = found.outside ? isParty(p, way) : isBesideShower(p, way);
    return found;
  }

  bool isParty(GridPoint p, GridPoint way) const {
    if (!m_house.party) return false;
    const GridSide& side = m_house.sides[*m_house.party];
    const auto on = [&](GridPoint q) {
      return (q.x == side.from.x && q.x == side.to.x) || (q.y == side.from.y && q.y == side.to.y);
    };
    return on(p) && on(p + way);
  }

  bool isBesideShower(GridPoint p, GridPoint way) const {
    if (!m_house.shower) return false;
    const double x = p.x + 0.5 * way.x - m_house.shower->x;
    const double y = p.y + 0.5 * way.y - m_house.shower->y;
    return kSquare_m * std::hypot(x, y) < m_figures.wet_m;
  }

  bool isOutside(GridPoint p) const {
    return std::any_of(kWays.begin(), kWays.end(), [&](GridPoint w) { return bit(p, w).outside; });
  }

  // The graph.

  std::size_t node(GridPoint p, int level) {
    const auto [at, fresh] = m_nodes.try_emplace({p.x, p.y, level}, m_nodes.size());
    while (boost::num_vertices(m_graph) < m_nodes.size()) boost::add_vertex(m_graph);
    return at->second;
  }

  void join(std::size_t a, std::size_t b, double cost) {
    boost::add_edge(a, b, cost, m_graph);
    boost::add_edge(b, a, cost, m_graph);
  }

  /// How much higher than the run it must go at an opening; nothing under the sill.
  double climb(const GridOpening& o, double run) const {
    const bool under = o.window && o.sill_m.value_or(m_figures.sill_m) >= run + 0.0999999;
    const double head = o.head_m.value_or(m_figures.door_head_m) + m_figures.over_head_m;
    return under ? 0.0 : std::max(0.0, head - run);
  }

  void joinFaces() {
    for (int y = 0; y < m_height - kMargin; ++y) {
      for (int x = 0; x < m_width - kMargin; ++x) {
        joinBit({x, y}, {1, 0});
        joinBit({x, y}, {0, 1});
      }
    }
  }

  void joinBit(GridPoint p, GridPoint way) {
    const FaceBit here = bit(p, way);
    if (!here.on_face) return;
    const GridPoint q = p + way;
    const std::size_t a = node(p, kLow);
    const std::size_t b = node(q, kLow);
    if (here.closed) return;
    if (here.opening < 0) return join(a, b, kSquare_m);
    const double run = here.outside ? m_outside_m : m_figures.skirting_m;
    const double up = climb(m_house.openings[static_cast<std::size_t>(here.opening)], run);
    const std::size_t over_a = node(p, here.opening);
    const std::size_t over_b = node(q, here.opening);
    join(a, over_a, up);
    join(b, over_b, up);
    join(over_a, over_b, kSquare_m);
  }

  /// Over openings in one straight face that are near to each other: along at the height of any of
  /// their heads, gaps between them included, where that is over the head below.
  void joinRows() {
    for (int y = 0; y < m_height - kMargin; ++y) {
      for (int x = 0; x < m_width - kMargin; ++x) {
        joinRowFrom({x, y}, {1, 0});
        joinRowFrom({x, y}, {0, 1});
      }
    }
  }

  /// One square of a row, and how high its opening's head makes a cable go; 0 between openings.
  struct RowBit {
    GridPoint p;
    double up = 0.0;
  };

  void joinRowFrom(GridPoint p, GridPoint way) {
    const int first = bit(p, way).opening;
    if (first < 0 || bit(p, {-way.x, -way.y}).opening == first) return;
    std::vector<RowBit> row;
    std::size_t last = 0;  // squares up to the last opening
    for (GridPoint q = p; row.size() - last <= static_cast<std::size_t>(m_figures.stays_up);
         q = q + way) {
      const FaceBit here = bit(q, way);
      if (!here.on_face || here.closed || isFree(squareOn(q, way)) != isFree(squareOn(p, way))) {
        break;
      }
      const double run = here.outside ? m_outside_m : m_figures.skirting_m;
      const bool over = here.opening >= 0;
      row.push_back(
          {q, over ? climb(m_house.openings[static_cast<std::size_t>(here.opening)], run) : 0.0});
      if (over && !(row.back().up > 0.0)) break;
      if (over) last = row.size();
    }
    row.resize(last);
    std::set<double> heights;
    for (const RowBit& at : row) heights.insert(at.up);
    for (const double height : heights) {
      if (height > 0.0) joinRow(row, height, way);
    }
  }

  Square squareOn(GridPoint p, GridPoint way) const {
    const GridPoint s = beside(p, way)[1];
    return square(s.x, s.y);
  }

  void joinRow(const std::vector<RowBit>& row, double height, GridPoint way) {
    // Not round a corner: a row along x shares no place with one along y.
    const int level = (way.x != 0 ? 10'000 : 20'000) + static_cast<int>(std::lround(1000 * height));
    for (const RowBit& at : row) {
      if (at.up > height + 1e-9) return;
      const GridPoint q = at.p + way;
      join(node(at.p, level), node(q, level), kSquare_m);
      if (!(at.up > 0.0)) continue;
      join(node(at.p, kLow), node(at.p, level), height);
      join(node(q, kLow), node(q, level), height);
    }
  }

  // Through walls.

  /// The way into the wall, if it is drilled here: on a straight face, a square or more from
  /// corners and jambs, not beside an entry.
  std::optional<GridPoint> intoWall(GridPoint p) const {
    for (std::size_t k = 0; k < 2; ++k) {
      const FaceBit before = bit(p, kWays[k + 2]);
      const FaceBit after = bit(p, kWays[k]);
      if (!before.on_face || !after.on_face) continue;
      if (before.opening >= 0 || after.opening >= 0 || (before.closed && after.closed)) return {};
      if (after.outside && isAtEntry(p)) return {};
      const auto squares = beside(p, kWays[k]);
      const bool first_free = isFree(square(squares[0].x, squares[0].y));
      // squares[0] lies below a level line, left of an upright one.
      const GridPoint up = k == 0 ? GridPoint{0, 1} : GridPoint{1, 0};
      return first_free ? up : GridPoint{-up.x, -up.y};
    }
    return {};
  }

  bool isAtEntry(GridPoint p) const {
    return std::any_of(m_house.entries.begin(), m_house.entries.end(), [&](GridPoint e) {
      return std::abs(e.x - p.x) + std::abs(e.y - p.y) < m_figures.off_entry;
    });
  }

  void joinWalls() {
    const auto low = m_nodes;
    for (const auto& [key, at] : low) {
      const auto [x, y, level] = key;
      if (level != kLow) continue;
      const auto into = intoWall({x, y});
      if (into) drill({x, y}, *into);
    }
  }

  void drill(GridPoint from, GridPoint into) {
    GridPoint p = from;
    for (int far = 1; far <= m_figures.thickest; ++far) {
      for (const GridPoint s : beside(p, into)) {
        if (square(s.x, s.y) != Square::wall) return;
      }
      p = p + into;
      if (m_nodes.count({p.x, p.y, kLow}) == 0) continue;
      const auto back = intoWall(p);
      if (!back || !(*back == GridPoint{-into.x, -into.y})) return;
      const bool sleeve = isOutside(from) || isOutside(p);
      const double down = sleeve ? std::abs(m_outside_m - m_figures.skirting_m) : 0.0;
      boost::add_edge(node(from, kLow), node(p, kLow),
                      kSquare_m * far + down + m_figures.per_drilling_m, m_graph);
      return;
    }
  }

  // Through the roof space.

  std::size_t inRoof(const LatticeFan& fan) {
    const std::size_t start = boost::add_vertex(m_graph);
    const double descent = std::max(0.0, fan.height_m - m_figures.skirting_m);
    for (const auto& [key, at] : m_nodes) {
      const auto [x, y, level] = key;
      const GridPoint p{x, y};
      if (level != kLow || isOutside(p) || !intoWall(p) || !isUnderRoof(fan.at, p)) continue;
      boost::add_edge(start, at, kSquare_m * std::hypot(x - fan.at.x, y - fan.at.y) + descent,
                      m_graph);
    }
    return start;
  }

  bool isUnderRoof(GridPoint a, GridPoint b) const {
    const int steps = 8 * (std::abs(a.x - b.x) + std::abs(a.y - b.y));
    for (int i = 1; i < steps; ++i) {
      const double t = static_cast<double>(i) / steps;
      const auto x = static_cast<int>(std::floor(a.x + t * (b.x - a.x)));
      const auto y = static_cast<int>(std::floor(a.y + t * (b.y - a.y)));
      if (square(x, y) == Square::air) return false;
    }
    return true;
  }

  const LatticeHouse& m_house;
  const LatticeFigures& m_figures;
  int m_width = 0;
  int m_height = 0;
  std::vector<Square> m_squares;
  double m_outside_m = 0.0;
  std::map<std::tuple<int, int, int>, std::size_t> m_nodes;
  Graph m_graph;
};

}  // namespace

std::map<std::string, std::optional<double>> latticeCosts(const LatticeHouse& house,
                                                          const LatticeFan& fan,
                                                          const LatticeFigures& figures) {
  return Lattice(house, figures).costs(fan);
}

}  // namespace sumpwright::build
