#include "suction/Port.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "suction/Coverage.h"

namespace sumpwright::suction {

namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kDiscFrom = 3.0;  // cells: pits from here on are discs (measured, see tests)
constexpr double kClear = 2.0;  // cells about a bilinear sink free of edges and walls (own figure)
constexpr int kDiscCorners = 96;  // of the disc's outline: area kept, rim within 0.05 %
constexpr double kLeastInside =
    0.15;  // of a pit in the floor: less is a pit beside it (own figure)
constexpr double kWhole = 1.0 - 1e-9;

struct Around {
  const Network& network;
  /// Whether the fill joins two neighbouring cells without a barrier.
  bool joined(int a, int b, const geometry::Segment& link) const {
    return a >= 0 && b >= 0 && open(link);
  }
  bool open(const geometry::Segment& link) const {
    return std::none_of(network.walls.begin(), network.walls.end(), [&](const auto& wall) {
      const double sa = geometry::cross(wall.b - wall.a, link.a - wall.a);
      const double sb = geometry::cross(wall.b - wall.a, link.b - wall.a);
      const double ta = geometry::cross(link.b - link.a, wall.a - link.a);
      const double tb = geometry::cross(link.b - link.a, wall.b - link.a);
      return (sa > 0.0) != (sb > 0.0) && (ta > 0.0) != (tb > 0.0);
    });
  }
};

bool wholeCell(const Network& network, int i, int j) {
  const int cell = network.cellAt(i, j);
  if (cell < 0) return false;
  const double square = network.frame.h_m * network.frame.h_m;
  return network.cells[static_cast<std::size_t>(cell)].area_m2 > kWhole * square;
}

double distanceTo(const geometry::Segment& wall, Point p) {
  const geometry::Vec along = wall.b - wall.a;
  const double t =
      std::clamp(geometry::dot(p - wall.a, along) / geometry::dot(along, along), 0.0, 1.0);
  return geometry::distance(p, wall.a + t * along);
}

/// Whether the lattice about a place is whole, as the formula for r_eff asks.
bool isClear(const Network& network, Point p) {
  const int i0 = static_cast<int>(std::floor(p.x - kClear));
  const int j0 = static_cast<int>(std::floor(p.y - kClear));
  for (int j = j0; j <= static_cast<int>(std::floor(p.y + kClear)); ++j) {
    for (int i = i0; i <= static_cast<int>(std::floor(p.x + kClear)); ++i) {
      if (!wholeCell(network, i, j)) return false;
    }
  }
  return std::none_of(network.walls.begin(), network.walls.end(),
                      [&](const auto& wall) { return distanceTo(wall, p) < kClear; });
}

void setGround(const Network& network, int cell, Port& port) {
  const Cell& c = network.cells[static_cast<std::size_t>(cell)];
  port.fill = c.transmissivity_m3_s_pa;
  const double leakage = c.leak_ground_m3_s_pa / c.area_m2;
  port.leakage_length_m = leakage > 0.0 ? std::sqrt(port.fill / leakage) : 0.0;
}

Port bilinear(const Network& network, Point p, double radius_m) {
  const double u = p.x - 0.5;
  const double v = p.y - 0.5;
  const int i = static_cast<int>(std::floor(u));
  const int j = static_cast<int>(std::floor(v));
  const double alpha = u - i;
  const double beta = v - j;
  Port port;
  port.radius_m = radius_m;
  port.weights = {{network.cellAt(i, j), (1.0 - alpha) * (1.0 - beta)},
                  {network.cellAt(i + 1, j), alpha * (1.0 - beta)},
                  {network.cellAt(i, j + 1), (1.0 - alpha) * beta},
                  {network.cellAt(i + 1, j + 1), alpha * beta}};
  port.r_eff_m = network.frame.h_m * bilinearRadius(alpha, beta);
  setGround(network, port.weights.front().first, port);
  return port;
}

/// The disc's cells by area, as far as the fill reaches within it from the cell at its middle.
class Disc {
 public:
  Disc(const Network& network, Point p, double radius)
      : m_network(network),
        m_middle(p),
        m_i0(static_cast<int>(std::floor(p.x - radius)) - 1),
        m_j0(static_cast<int>(std::floor(p.y - radius)) - 1),
        m_size(static_cast<int>(std::ceil(2.0 * radius)) + 4),
        m_cover(m_size, m_size) {
    const double rim =
        radius * std::sqrt(2.0 * kPi / kDiscCorners / std::sin(2.0 * kPi / kDiscCorners));
    Polygon outline;
    for (int k = 0; k < kDiscCorners; ++k) {
      const double angle = 2.0 * kPi * k / kDiscCorners;
      outline.push_back({p.x - m_i0 + rim * std::cos(angle), p.y - m_j0 + rim * std::sin(angle)});
    }
    m_cover.add(outline, 1.0);
  }

  /// The middle of the cell from which the weights spread.
  Point start() const {
    const int start = startCell();
    return start < 0 ? m_middle : centreOf(start);
  }

  /// Weights by area in cells, not yet summing to 1.
  Draw weights() const {
    const int start = startCell();
    if (start < 0) return {};
    std::vector<int> todo{start};
    std::vector<bool> seen(m_cover.area.size(), false);
    seen[static_cast<std::size_t>(start)] = true;
    Draw found;
    while (!todo.empty()) {
      const int k = todo.back();
      todo.pop_back();
      found.emplace_back(cellOf(k), shareOf(k));
      spread(k, seen, todo);
    }
    std::sort(found.begin(), found.end());
    return found;
  }

 private:
  int cellOf(int k) const { return m_network.cellAt(m_i0 + k % m_size, m_j0 + k / m_size); }
  /// Area of the disc in the cell, at most the cell's own.
  double shareOf(int k) const {
    const int cell = cellOf(k);
    if (cell < 0) return 0.0;
    const double square = m_network.frame.h_m * m_network.frame.h_m;
    const double whole = m_network.cells[static_cast<std::size_t>(cell)].area_m2 / square;
    return std::max(0.0, m_cover.area[static_cast<std::size_t>(k)]) * std::min(1.0, whole);
  }
  Point centreOf(int k) const {
    const int i = m_i0 + k % m_size;
    const int j = m_j0 + k / m_size;
    return {i + 0.5, j + 0.5};
  }

  /// The nearest to the middle, of those on its side of every wall if there is one.
  int startCell() const {
    int best = -1;
    double least = 0.0;
    for (int k = 0; k < m_size * m_size; ++k) {
      if (!(shareOf(k) > 0.0)) continue;
      double away = geometry::distance(centreOf(k), m_middle);
      if (!Around{m_network}.open({m_middle, centreOf(k)})) away += 2.0 * m_size;
      if (best < 0 || away < least) {
        best = k;
        least = away;
      }
    }
    return best;
  }

  void spread(int k, std::vector<bool>& seen, std::vector<int>& todo) const {
    for (const int step : {-1, 1, -m_size, m_size}) {
      const int next = k + step;
      if (next < 0 || next >= m_size * m_size || seen[static_cast<std::size_t>(next)]) continue;
      if (!(shareOf(next) > 0.0)) continue;
      if (!Around{m_network}.joined(cellOf(k), cellOf(next), {centreOf(k), centreOf(next)})) {
        continue;
      }
      seen[static_cast<std::size_t>(next)] = true;
      todo.push_back(next);
    }
  }

  const Network& m_network;
  Point m_middle;
  int m_i0;
  int m_j0;
  int m_size;
  Coverage m_cover;
};

/// Whether a wall parts a place from the middle of its cell, which stands for the other side.
bool isCellBeyondWall(const Network& network, Point p) {
  const int i = static_cast<int>(std::floor(p.x));
  const int j = static_cast<int>(std::floor(p.y));
  return network.cellAt(i, j) >= 0 && !Around{network}.open({p, {i + 0.5, j + 0.5}});
}

double areaOf(const Draw& weights) {
  double area = 0.0;
  for (const auto& [cell, share] : weights) area += share;
  return area;
}

}  // namespace

double bilinearRadius(double alpha, double beta) {
  const double wa[2] = {1.0 - alpha, alpha};
  const double wb[2] = {1.0 - beta, beta};
  double sum = 0.0;
  for (int k = 0; k < 4; ++k) {
    for (int l = 0; l < 4; ++l) {
      const bool dx = (k & 1) != (l & 1);
      const bool dy = (k & 2) != (l & 2);
      const double a = dx && dy ? 1.0 / kPi : (dx || dy ? 0.25 : 0.0);
      sum += wa[k & 1] * wb[k >> 1] * wa[l & 1] * wb[l >> 1] * a;
    }
  }
  return kPeaceman * std::exp(2.0 * kPi * sum);
}

std::optional<Port> portAt(const Network& network, Point plan, double radius_m) {
  if (!(radius_m > 0.0)) return std::nullopt;
  const Point p = network.frame.toGrid(plan);
  const double radius = radius_m / network.frame.h_m;
  if (radius < kDiscFrom && isClear(network, p)) return bilinear(network, p, radius_m);
  Port port;
  port.kind = PortKind::disc;
  port.radius_m = radius_m;
  // A pit smaller than a cell's circle cannot be told from it.
  const double drawn = std::max(radius, 0.5);
  const double whole = kPi * drawn * drawn;
  const Disc disc(network, p, drawn);
  port.weights = disc.weights();
  if (areaOf(port.weights) < kLeastInside * whole && isCellBeyondWall(network, p)) {
    // Its own side has too little of its cell: it is moved to the next one there.
    port.weights = Disc(network, disc.start(), drawn).weights();
  }
  const double area = areaOf(port.weights);
  port.inside = std::min(1.0, area / whole);
  if (port.inside < kLeastInside) return std::nullopt;
  for (auto& [cell, share] : port.weights) share /= area;
  const auto most =
      std::max_element(port.weights.begin(), port.weights.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  setGround(network, most->first, port);
  return port;
}

std::optional<Port> portNear(const Network& network, Point plan, double radius_m) {
  if (auto port = portAt(network, plan, radius_m)) return port;
  const Point p = network.frame.toGrid(plan);
  std::vector<Point> middles;
  for (int dj = -2; dj <= 2; ++dj) {
    for (int di = -2; di <= 2; ++di) {
      const int i = static_cast<int>(std::floor(p.x)) + di;
      const int j = static_cast<int>(std::floor(p.y)) + dj;
      const Point middle{i + 0.5, j + 0.5};
      if (network.cellAt(i, j) >= 0 && Around{network}.open({p, middle})) middles.push_back(middle);
    }
  }
  std::stable_sort(middles.begin(), middles.end(), [&](Point a, Point b) {
    return geometry::distance(p, a) < geometry::distance(p, b);
  });
  for (const Point& middle : middles) {
    if (auto port = portAt(network, network.frame.toPlan(middle), radius_m)) return port;
  }
  return std::nullopt;
}

double readAt(const Port& port, const std::vector<double>& suction) {
  double sum = 0.0;
  for (const auto& [cell, weight] : port.weights) {
    sum += weight * suction[static_cast<std::size_t>(cell)];
  }
  return sum;
}

double ownTerm(const Port& port, const Scales& scales) {
  const double t = port.fill * scales.transmissivity;
  if (port.kind == PortKind::disc) return -1.0 / (8.0 * kPi * t * port.inside);
  const double lambda = port.leakage_length_m * std::sqrt(scales.transmissivity / scales.leakage);
  if (!(lambda > 0.0)) return std::log(port.r_eff_m / port.radius_m) / (2.0 * kPi * t);
  return (std::cyl_bessel_k(0.0, port.radius_m / lambda) -
          std::cyl_bessel_k(0.0, port.r_eff_m / lambda)) /
         (2.0 * kPi * t);
}

}  // namespace sumpwright::suction
