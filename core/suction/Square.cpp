#include "suction/Square.h"

#include <algorithm>
#include <limits>

namespace sumpwright::suction {

namespace {

using geometry::Segment;
using geometry::Vec;

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

/// > 0 to the left of the wall.
double besideWall(const Segment& wall, Point p) {
  return geometry::cross(wall.b - wall.a, p - wall.a);
}

/// The part of a polygon on that side of a straight line.
Polygon cutAt(const Polygon& polygon, const Segment& wall, bool left) {
  Polygon kept;
  for (std::size_t k = 0; k < polygon.size(); ++k) {
    const Point a = polygon[k];
    const Point b = polygon[(k + 1) % polygon.size()];
    const double da = (left ? 1.0 : -1.0) * besideWall(wall, a);
    const double db = (left ? 1.0 : -1.0) * besideWall(wall, b);
    if (da >= 0.0) kept.push_back(a);
    if ((da < 0.0) != (db < 0.0)) kept.push_back(geometry::lerp(a, b, da / (da - db)));
  }
  return kept;
}

}  // namespace

Square::Square(const Network& network, const std::vector<double>& suction, int i, int j)
    : m_corner{i + 0.5, j + 0.5},
      m_low(std::numeric_limits<double>::infinity()),
      m_high(-std::numeric_limits<double>::infinity()) {
  for (std::size_t k = 0; k < 4; ++k) {
    m_cells[k] =
        network.cellAt(i + static_cast<int>(kCorners[k].x), j + static_cast<int>(kCorners[k].y));
    if (m_cells[k] < 0) continue;
    m_values[k] = suction[static_cast<std::size_t>(m_cells[k])];
    m_low = std::min(m_low, m_values[k]);
    m_high = std::max(m_high, m_values[k]);
  }
  if (!any()) return;
  for (const Segment& wall : network.walls) {
    if (near(wall)) m_walls.push_back(wall);
  }
}

bool Square::any() const {
  return std::any_of(m_cells.begin(), m_cells.end(), [](int c) { return c >= 0; });
}

bool Square::near(const Segment& wall) const {
  const double low_x = std::min(wall.a.x, wall.b.x);
  const double high_x = std::max(wall.a.x, wall.b.x);
  const double low_y = std::min(wall.a.y, wall.b.y);
  const double high_y = std::max(wall.a.y, wall.b.y);
  return low_x <= m_corner.x + 1.0 && high_x >= m_corner.x && low_y <= m_corner.y + 1.0 &&
         high_y >= m_corner.y;
}

bool Square::walled(Point a, Point b) const {
  return std::any_of(m_walls.begin(), m_walls.end(), [&](const Segment& wall) {
    return crossingOf({a, b}, wall).has_value();
  });
}

/// The corners reached from one along the sides without crossing a barrier.
Square::Side Square::joinedTo(std::size_t start) const {
  Side side{};
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

std::vector<Square::Side> Square::sides() const {
  std::vector<Side> all;
  Side done{};
  for (std::size_t k = 0; k < 4; ++k) {
    if (m_cells[k] < 0 || done[k]) continue;
    all.push_back(joinedTo(k));
    for (std::size_t l = 0; l < 4; ++l) done[l] = done[l] || all.back()[l];
  }
  return all;
}

std::vector<Segment> Square::partingWalls(const Side& side) const {
  std::vector<Segment> parting;
  for (const Segment& wall : m_walls) {
    for (std::size_t k = 0; k < 4; ++k) {
      const std::size_t next = (k + 1) % 4;
      if (side[k] == side[next] || !crossingOf({at(k), at(next)}, wall)) continue;
      parting.push_back(wall);
      break;
    }
  }
  return parting;
}

bool Square::parted() const {
  if (m_walls.empty()) return false;
  const std::vector<Side> all = sides();
  if (all.size() < 2) return false;
  for (const Side& side : all) {
    for (const Segment& wall : partingWalls(side)) {
      bool left = false;
      bool right = false;
      for (std::size_t k = 0; k < 4; ++k) {
        if (side[k]) (besideWall(wall, at(k)) > 0.0 ? left : right) = true;
      }
      if (left && right) return false;
    }
  }
  return true;
}

/// Values with what is not on this side led on square to the barrier: the mean of the neighbours
/// that are, else what lies across.
std::array<double, 4> Square::ledOn(const Side& side) const {
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

void Square::march(double level, std::vector<Segment>& lines) const {
  if (m_low >= level || m_high < level) return;  // what is led on lies between
  for (const Side& side : sides()) marchSide(level, side, lines);
}

void Square::marchSide(double level, const Side& side, std::vector<Segment>& lines) const {
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
Point Square::crossing(std::size_t k, std::size_t next, const std::array<double, 4>& values,
                       double level) const {
  const bool turned = kCorners[next].x < kCorners[k].x || kCorners[next].y < kCorners[k].y;
  const std::size_t a = turned ? next : k;
  const std::size_t b = turned ? k : next;
  return geometry::lerp(at(a), at(b), (level - values[a]) / (values[b] - values[a]));
}

/// Cut where barriers stand; only what lies on this side is kept.
void Square::emit(Point from, Point to, const Side& side, bool whole,
                  std::vector<Segment>& lines) const {
  if (whole && m_walls.empty()) {
    lines.push_back({from, to});
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
    lines.push_back({geometry::lerp(from, to, cuts[c - 1]), geometry::lerp(from, to, cuts[c])});
  }
}

bool Square::seen(Point p, const Side& side) const {
  for (std::size_t k = 0; k < 4; ++k) {
    if (side[k] && !walled(p, at(k))) return true;
  }
  return false;
}

void Square::areasAbove(double level, std::vector<Polygon>& areas) const {
  for (const Side& side : sides()) {
    const std::array<double, 4> values = ledOn(side);
    Polygon above;
    for (std::size_t k = 0; k < 4; ++k) {
      const std::size_t next = (k + 1) % 4;
      if (values[k] >= level) above.push_back(at(k));
      if ((values[k] >= level) != (values[next] >= level)) {
        above.push_back(crossing(k, next, values, level));
      }
    }
    for (const Segment& wall : partingWalls(side)) {
      const auto first = static_cast<std::size_t>(
          std::distance(side.begin(), std::find(side.begin(), side.end(), true)));
      above = cutAt(above, wall, besideWall(wall, at(first)) > 0.0);
    }
    if (above.size() > 2) areas.push_back(std::move(above));
  }
}

}  // namespace sumpwright::suction
