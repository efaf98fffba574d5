#include "suction/Network.h"

#include <algorithm>
#include <cmath>

#include "geometry/Shapes.h"
#include "suction/Coverage.h"
#include "suction/Cuts.h"

namespace sumpwright::suction {

namespace {

using geometry::Vec;

constexpr double kLeastPart = 1e-6;  // of a cell or of its side: less is not there (own figure)
constexpr double kNearEdge = 1e-3;   // cells: the fill up to a joint is never shorter (own figure)
constexpr double kInward = 1e-6;     // cells: an edge on a line of the grid belongs inside
constexpr double kBesideWall = 0.5;  // cells from a barrier to the fill beside it (derived)

Polygon gridOf(const Frame& frame, const Polygon& polygon) {
  Polygon out;
  for (const Point p : polygon) out.push_back(frame.toGrid(p));
  return out;
}

class NetworkMaker {
 public:
  NetworkMaker(const SuctionModel& model, double h_m, bool align) : m_model(model) {
    m_net.frame = frameOf(model, h_m, align);
  }

  Network made() {
    const Frame& frame = m_net.frame;
    Coverage all(frame.nx, frame.ny);
    Coverage own(frame.nx, frame.ny);
    for (const Region& region : m_model.regions) {
      cover(region, all);
      if (!region.neighbour) cover(region, own);
    }
    const Cuts cuts = cutsOf(m_model, frame);
    for (const AreaMove& move : cuts.moves) {
      moveArea(move, all);
      moveArea(move, own);
    }
    addCells(all, own);
    ground(all);
    addLinks(all, cuts);
    addSlits(cuts);
    for (const Region& region : m_model.regions) addEdges(region);
    for (const BarrierPiece& piece : cuts.pieces) addWallJoint(piece);
    for (const BarrierPiece& piece : cuts.pieces) m_net.walls.push_back({piece.a, piece.b});
    for (const Conduit& conduit : m_model.conduits) addConduit(conduit);
    return std::move(m_net);
  }

 private:
  void cover(const Region& region, Coverage& coverage) const {
    coverage.add(gridOf(m_net.frame, region.outline), 1.0);
    for (const Polygon& hole : region.holes) coverage.add(gridOf(m_net.frame, hole), -1.0);
  }

  /// In proportion to what there is, so that no area is made or lost.
  void moveArea(const AreaMove& move, Coverage& coverage) const {
    double& from = coverage.area[index(move.from_j * m_net.frame.nx + move.from_i)];
    double& to = coverage.area[index(move.to_j * m_net.frame.nx + move.to_i)];
    if (to < kLeastPart) return;
    const double area = std::min(move.area, 0.9) * std::min(from, 1.0);
    from -= area;
    to += area;
  }

  void addCells(const Coverage& all, const Coverage& own) {
    const Frame& frame = m_net.frame;
    const double square = frame.h_m * frame.h_m;
    m_net.at.assign(all.area.size(), -1);
    for (int j = 0; j < frame.ny; ++j) {
      for (int i = 0; i < frame.nx; ++i) {
        const std::size_t k = slotOf(i, j, frame.nx);
        if (all.area[k] < kLeastPart) continue;
        m_net.at[k] = static_cast<int>(m_net.cells.size());
        m_net.cells.push_back({i, j, all.area[k] * square, std::max(0.0, own.area[k]) * square});
      }
    }
  }

  /// Leakage by area; transmissivity the mean by area.
  void ground(const Coverage& all) {
    std::vector<double> zoned(all.area.size(), 0.0);
    std::vector<Layer> sums(m_model.zones.empty() ? 0 : all.area.size());
    for (const Zone& zone : m_model.zones) {
      Coverage part(m_net.frame.nx, m_net.frame.ny);
      part.add(gridOf(m_net.frame, zone.outline), 1.0);
      for (std::size_t k = 0; k < zoned.size(); ++k) {
        if (part.area[k] <= 0.0) continue;
        zoned[k] += part.area[k];
        addShare(sums[k], zone.layer, part.area[k]);
      }
    }
    for (Cell& cell : m_net.cells) {
      const std::size_t k = slotOf(cell.i, cell.j, m_net.frame.nx);
      const double share = std::min(1.0, zoned[k] / std::max(all.area[k], kLeastPart));
      Layer mean;
      addShare(mean, m_model.layer, 1.0 - share);
      if (zoned[k] > 0.0) addShare(mean, sums[k], share / zoned[k]);
      cell.transmissivity_m3_s_pa = mean.transmissivity_m3_s_pa;
      cell.leak_ground_m3_s_pa = mean.leak_ground_m_s_pa * cell.area_m2;
    }
  }

  static void addShare(Layer& sum, const Layer& layer, double share) {
    sum.transmissivity_m3_s_pa += share * layer.transmissivity_m3_s_pa;
    sum.leak_ground_m_s_pa += share * layer.leak_ground_m_s_pa;
  }

  double between(int a, int b) const {
    return 2.0 * inSeries(m_net.cells[index(a)].transmissivity_m3_s_pa,
                          m_net.cells[index(b)].transmissivity_m3_s_pa);
  }
  static std::size_t index(int k) { return static_cast<std::size_t>(k); }

  void addLinks(const Coverage& all, const Cuts& cuts) {
    for (std::size_t c = 0; c < m_net.cells.size(); ++c) {
      const int i = m_net.cells[c].i;
      const int j = m_net.cells[c].j;
      const std::size_t k = slotOf(i, j, m_net.frame.nx);
      addLink(m_net.cellAt(i - 1, j), static_cast<int>(c), all.upright[k], cuts.upright[k]);
      addLink(m_net.cellAt(i, j - 1), static_cast<int>(c), all.level[k], cuts.level[k]);
    }
  }

  void addLink(int a, int b, double open, const SideCut& side) {
    if (a < 0 || b < 0 || open < kLeastPart) return;
    const double fill = std::min(open, 1.0) * (side.to - side.from) * between(a, b);
    if (!side.cut()) {
      m_net.links.push_back({a, b, fill * side.factor});
      return;
    }
    if (side.wall_m2_s_pa > 0.0) {
      m_net.links.push_back({a, b, fill, side.wall_m2_s_pa * std::min(open, 1.0)});
    }
    if (side.bypass > 0.0) m_net.links.push_back({a, b, fill * side.bypass});
  }

  void addSlits(const Cuts& cuts) {
    for (const Slit& slit : cuts.slits) {
      const int a = cellAtGrid(slit.middle - kBesideWall * slit.across);
      const int b = cellAtGrid(slit.middle + kBesideWall * slit.across);
      if (a >= 0 && b >= 0 && a != b) m_net.links.push_back({a, b, slit.share * between(a, b)});
    }
  }

  int cellAtGrid(Point p) const {
    return m_net.cellAt(static_cast<int>(std::floor(p.x)), static_cast<int>(std::floor(p.y)));
  }

  void addEdges(const Region& region) {
    addRing(region.outline, region.edges, region.neighbour, 1.0);
    for (std::size_t h = 0; h < region.holes.size(); ++h) {
      const bool known = h < region.hole_edges.size();
      addRing(region.holes[h], known ? region.hole_edges[h] : std::vector<Edge>{}, region.neighbour,
              -1.0);
    }
  }

  /// `inside` = +1: the region lies within the ring.
  void addRing(const Polygon& ring, const std::vector<Edge>& edges, bool neighbour, double inside) {
    const double turn = geometry::signedArea(ring) < 0.0 ? -inside : inside;
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const Edge edge = k < edges.size() ? edges[k] : Edge{};
      const Point a = m_net.frame.toGrid(ring[k]);
      const Point b = m_net.frame.toGrid(ring[(k + 1) % ring.size()]);
      const double length = geometry::distance(a, b);
      if (!(length > 0.0)) continue;
      const Vec inward = (turn / length) * geometry::left(b - a);
      const Vec nudge = kInward * inward;
      forEachCellPart(a + nudge, b + nudge, [&](const CellPart& part) {
        addEdgePart(part, a, inward, edge, !neighbour);
      });
    }
  }

  void addEdgePart(const CellPart& part, Point on_edge, Vec inward, const Edge& edge, bool own) {
    int cell = m_net.cellAt(part.i, part.j);
    if (cell < 0) {  // a corner too small to be a cell: its neighbour takes it
      cell = m_net.cellNear(m_net.frame.toPlan(geometry::lerp(part.from, part.to, 0.5)));
    }
    if (cell < 0) return;
    const double length = geometry::distance(part.from, part.to);
    const Cell& c = m_net.cells[index(cell)];
    const double away =
        std::max(kNearEdge, geometry::dot(Point{c.i + 0.5, c.j + 0.5} - on_edge, inward));
    const double length_m = length * m_net.frame.h_m;
    m_net.joints.push_back({cell, c.transmissivity_m3_s_pa * length / away,
                            edge.room_m2_s_pa * length_m, edge.outdoors_m2_s_pa * length_m,
                            length_m, edge.ring, edge.wall, own});
  }

  /// The joint of slab and wall, on both sides.
  void addWallJoint(const BarrierPiece& piece) {
    const Barrier& barrier = m_model.barriers[piece.barrier];
    const double length = geometry::distance(piece.a, piece.b);
    if (!(length > 0.0)) return;
    const Vec across = (1.0 / length) * geometry::left(piece.b - piece.a);
    forEachCellPart(piece.a, piece.b, [&](const CellPart& part) {
      const Point middle = geometry::lerp(part.from, part.to, 0.5);
      const double cells = geometry::distance(part.from, part.to);
      for (const double side : {-kBesideWall, kBesideWall}) {
        const int cell = cellAtGrid(middle + side * across);
        if (cell < 0) continue;
        const Cell& c = m_net.cells[index(cell)];
        const double length_m = cells * m_net.frame.h_m;
        m_net.joints.push_back({cell, c.transmissivity_m3_s_pa * cells / kBesideWall,
                                barrier.joint_m2_s_pa * length_m, 0.0, length_m, -1, -1,
                                c.own_m2 > 0.0});
      }
    });
  }

  /// From cell to cell along the line, by the distance between the middles of its parts in them.
  void addConduit(const Conduit& conduit) {
    std::vector<std::pair<int, double>> stations;
    double s = 0.0;
    for (std::size_t k = 1; k < conduit.line.size(); ++k) {
      const Point a = m_net.frame.toGrid(conduit.line[k - 1]);
      const Point b = m_net.frame.toGrid(conduit.line[k]);
      forEachCellPart(a, b, [&](const CellPart& part) {
        const double length = geometry::distance(part.from, part.to) * m_net.frame.h_m;
        const int cell = m_net.cellAt(part.i, part.j);
        if (cell >= 0) stations.emplace_back(cell, s + 0.5 * length);
        s += length;
      });
    }
    if (stations.size() < 2) return;
    if (conduit.sealed) stations = {stations.front(), stations.back()};
    for (std::size_t k = 1; k < stations.size(); ++k) {
      const double apart = std::max(stations[k].second - stations[k - 1].second, 1e-9);
      const auto [a, b] = std::minmax(stations[k - 1].first, stations[k].first);
      if (a == b || !(conduit.conveyance_m4_s_pa > 0.0)) continue;
      m_net.links.push_back({a, b, conduit.conveyance_m4_s_pa / apart,
                             std::numeric_limits<double>::infinity(), true});
    }
  }

  const SuctionModel& m_model;
  Network m_net;
};

}  // namespace

int Network::cellAt(int i, int j) const {
  if (i < 0 || i >= frame.nx || j < 0 || j >= frame.ny) return -1;
  return at[slotOf(i, j, frame.nx)];
}

int Network::cellNear(Point plan) const {
  const Point p = frame.toGrid(plan);
  const int i = static_cast<int>(std::floor(p.x));
  const int j = static_cast<int>(std::floor(p.y));
  if (const int cell = cellAt(i, j); cell >= 0) return cell;
  int best = -1;
  double least = std::numeric_limits<double>::infinity();
  for (int dj = -2; dj <= 2; ++dj) {
    for (int di = -2; di <= 2; ++di) {
      const int cell = cellAt(i + di, j + dj);
      const double away = geometry::distance(p, Point{i + di + 0.5, j + dj + 0.5});
      if (cell < 0 || away >= least) continue;
      least = away;
      best = cell;
    }
  }
  return best;
}

Point Network::centre(int cell) const {
  const Cell& c = cells[static_cast<std::size_t>(cell)];
  return frame.toPlan({c.i + 0.5, c.j + 0.5});
}

double Network::ownArea_m2() const {
  double area = 0.0;
  for (const Cell& cell : cells) area += cell.own_m2;
  return area;
}

double Network::ownJoint_m() const {
  double length = 0.0;
  for (const Joint& joint : joints) length += joint.own ? joint.length_m : 0.0;
  return length;
}

double inSeries(double a, double b) {
  if (std::isinf(a)) return b;
  if (std::isinf(b)) return a;
  return a + b > 0.0 ? a * b / (a + b) : 0.0;
}

Network networkOf(const SuctionModel& model, double h_m, bool align) {
  return NetworkMaker(model, h_m, align).made();
}

}  // namespace sumpwright::suction
