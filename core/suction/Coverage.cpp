#include "suction/Coverage.h"

#include <algorithm>
#include <cmath>

#include "geometry/Shapes.h"

namespace sumpwright::suction {

namespace {

using geometry::Point;

/// Parameters where a -> b meets whole numbers of one coordinate.
void addMeets(double a, double b, std::vector<double>& at) {
  const double low = std::min(a, b);
  const double high = std::max(a, b);
  for (double line = std::floor(low) + 1.0; line < high; line += 1.0) {
    at.push_back((line - a) / (b - a));
  }
}

class Walk {
 public:
  Walk(Coverage& coverage, double sign) : m_coverage(coverage), m_sign(sign) {}

  void edge(Point a, Point b) {
    forEachCellPart(a, b, [this](const CellPart& part) { areaLeftOf(part); });
    meets(a, b, m_coverage.nx, [this](int i, double y, double sign) { below(i, y, sign); });
    meets({a.y, a.x}, {b.y, b.x}, m_coverage.ny,
          [this](int j, double x, double sign) { before(j, x, -sign); });
  }

 private:
  /// Area of a cell within the polygon is the sum over edges of the integral of clamp(x - i, 0, 1)
  /// dy: full for the cells before the edge.
  void areaLeftOf(const CellPart& part) {
    if (part.j < 0 || part.j >= m_coverage.ny) return;
    const double dy = m_sign * (part.to.y - part.from.y);
    double* row = &m_coverage.area[slotOf(0, part.j, m_coverage.nx)];
    const int full = std::clamp(part.i, 0, m_coverage.nx);
    for (int i = 0; i < full; ++i) row[i] += dy;
    if (part.i >= 0 && part.i < m_coverage.nx) {
      row[part.i] += dy * (0.5 * (part.from.x + part.to.x) - part.i);
    }
  }

  /// visit(line, the other coordinate there, +1 where the first coordinate falls).
  template <class Visit>
  void meets(Point a, Point b, int count, Visit visit) {
    const double low = std::min(a.x, b.x);
    const double high = std::max(a.x, b.x);
    for (int i = std::max(0, static_cast<int>(std::ceil(low))); i < high && i < count; ++i) {
      const double t = (i - a.x) / (b.x - a.x);
      visit(i, a.y + t * (b.y - a.y), b.x < a.x ? 1.0 : -1.0);
    }
  }

  void below(int i, double y, double sign) {
    const int top = std::clamp(static_cast<int>(std::ceil(y)), 0, m_coverage.ny);
    for (int j = 0; j < top; ++j) {
      m_coverage.upright[index(i, j)] += m_sign * sign * std::min(1.0, y - j);
    }
  }
  void before(int j, double x, double sign) {
    const int end = std::clamp(static_cast<int>(std::ceil(x)), 0, m_coverage.nx);
    for (int i = 0; i < end; ++i) {
      m_coverage.level[index(i, j)] += m_sign * sign * std::min(1.0, x - i);
    }
  }
  std::size_t index(int i, int j) const { return slotOf(i, j, m_coverage.nx); }

  Coverage& m_coverage;
  double m_sign;
};

}  // namespace

void forEachCellPart(Point a, Point b, const std::function<void(const CellPart&)>& visit) {
  std::vector<double> at{0.0, 1.0};
  addMeets(a.x, b.x, at);
  addMeets(a.y, b.y, at);
  std::sort(at.begin(), at.end());
  for (std::size_t k = 1; k < at.size(); ++k) {
    if (at[k] <= at[k - 1]) continue;
    const Point from = geometry::lerp(a, b, at[k - 1]);
    const Point to = geometry::lerp(a, b, at[k]);
    const Point middle = geometry::lerp(from, to, 0.5);
    visit(
        {static_cast<int>(std::floor(middle.x)), static_cast<int>(std::floor(middle.y)), from, to});
  }
}

Coverage::Coverage(int columns, int rows)
    : nx(columns), ny(rows), area(slotOf(0, rows, columns), 0.0), upright(area), level(area) {}

void Coverage::add(const geometry::Polygon& polygon, double sign) {
  const double turn = geometry::signedArea(polygon) < 0.0 ? -1.0 : 1.0;
  Walk walk(*this, sign * turn);
  for (std::size_t k = 0; k < polygon.size(); ++k) {
    walk.edge(polygon[k], polygon[(k + 1) % polygon.size()]);
  }
}

}  // namespace sumpwright::suction
