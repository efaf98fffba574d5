#include "geometry/Homography.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/Contract.h"

namespace sumpwright::geometry {

namespace {

using Matrix3 = std::array<double, 9>;  // row by row

// Contract of properQuad.
constexpr double kFlattestCorner = 1e-6;
constexpr double kSmallestQuad = 1e-6;
constexpr double kFarthest = 1e9;
constexpr double kRadPerDegree = std::numbers::pi / 180.0;

bool finite(Point p) { return std::isfinite(p.x) && std::isfinite(p.y); }

/// False for what is not a number, too.
bool inReach(Point p) { return std::abs(p.x) <= kFarthest && std::abs(p.y) <= kFarthest; }

Matrix3 product(const Matrix3& a, const Matrix3& b) {
  Matrix3 c{};
  for (std::size_t row = 0; row < 3; ++row) {
    for (std::size_t column = 0; column < 3; ++column) {
      for (std::size_t k = 0; k < 3; ++k) c[3 * row + column] += a[3 * row + k] * b[3 * k + column];
    }
  }
  return c;
}

/// The inverse times the determinant: as good as the inverse where only ratios count.
Matrix3 adjugate(const Matrix3& m) {
  return {m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
          m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
          m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]};
}

Point middleOf(const Quad& quad) {
  return {(quad[0].x + quad[1].x + quad[2].x + quad[3].x) / 4,
          (quad[0].y + quad[1].y + quad[2].y + quad[3].y) / 4};
}

double longestIn(const Quad& quad) {
  double longest = 0.0;
  for (const Point p : quad) {
    for (const Point q : quad) longest = std::max(longest, distance(p, q));
  }
  return longest;
}

/// To the middle of the quad, and to its size.
struct Normalised {
  Point middle;
  double size = 1.0;
  Point operator()(Point p) const { return {(p.x - middle.x) / size, (p.y - middle.y) / size}; }
  Matrix3 there() const { return {1, 0, -middle.x, 0, 1, -middle.y, 0, 0, size}; }
  Matrix3 back() const { return {size, 0, middle.x, 0, size, middle.y, 0, 0, 1}; }
};

/// Twice the area of a, b, c.
double twiceArea(Point a, Point b, Point c) { return cross(b - a, c - a); }

/// Takes (1,0,0), (0,1,0), (0,0,1) and (1,1,1) to the corners: the first three as columns, each
/// weighted so that their sum is the fourth. By Cramer's rule the weights are areas.
Matrix3 frameOf(const Quad& q) {
  const double a = twiceArea(q[3], q[1], q[2]);
  const double b = twiceArea(q[0], q[3], q[2]);
  const double c = twiceArea(q[0], q[1], q[3]);
  return {a * q[0].x, b * q[1].x, c * q[2].x, a * q[0].y, b * q[1].y, c * q[2].y, a, b, c};
}

Vec turned(Vec v, double turn_deg) {
  const double cosine = std::cos(turn_deg * kRadPerDegree);
  const double sine = std::sin(turn_deg * kRadPerDegree);
  return {cosine * v.x - sine * v.y, sine * v.x + cosine * v.y};
}

/// Into (-180, 180].
double halfTurns(double degrees) {
  const double rest = std::remainder(degrees, 360.0);
  return rest <= -180.0 ? rest + 360.0 : rest;
}

}  // namespace

bool properQuad(const Quad& quad) {
  if (!std::all_of(quad.begin(), quad.end(), inReach)) return false;
  const double size = longestIn(quad);
  if (size < kSmallestQuad || size > kFarthest) return false;
  int turns = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const double turn = twiceArea(quad[i], quad[(i + 1) % 4], quad[(i + 2) % 4]);
    if (std::abs(turn) / 2 <= kFlattestCorner * size * size) return false;
    turns += turn > 0 ? 1 : -1;
  }
  // Four turns the same way: convex, and once round, since each is less than half a turn.
  return std::abs(turns) == 4;
}

std::optional<Homography> Homography::between(const Quad& from, const Quad& to) {
  if (!properQuad(from) || !properQuad(to)) return std::nullopt;
  const Normalised source{middleOf(from), longestIn(from)};
  const Normalised target{middleOf(to), longestIn(to)};
  Quad f;
  Quad t;
  std::transform(from.begin(), from.end(), f.begin(), source);
  std::transform(to.begin(), to.end(), t.begin(), target);
  const Matrix3 core = product(frameOf(t), adjugate(frameOf(f)));
  Matrix3 rows = product(target.back(), product(core, source.there()));
  // The middle of a convex quad lies within it, and what lies within goes within: not to infinity.
  const double w = rows[6] * source.middle.x + rows[7] * source.middle.y + rows[8];
  SUMPWRIGHT_REQUIRE(w != 0.0);
  for (double& value : rows) value /= w;
  return Homography(rows);
}

double Homography::depth(Point p) const { return m_rows[6] * p.x + m_rows[7] * p.y + m_rows[8]; }

std::optional<Point> Homography::at(Point p) const {
  const double w = depth(p);
  if (!(w > 0.0)) return std::nullopt;
  const Point q{(m_rows[0] * p.x + m_rows[1] * p.y + m_rows[2]) / w,
                (m_rows[3] * p.x + m_rows[4] * p.y + m_rows[5]) / w};
  if (!finite(q)) return std::nullopt;
  return q;
}

Homography Homography::inverse() const {
  Rows rows = adjugate(m_rows);
  const double determinant = m_rows[0] * rows[0] + m_rows[1] * rows[3] + m_rows[2] * rows[6];
  SUMPWRIGHT_REQUIRE(std::isfinite(determinant) && determinant != 0.0);
  for (double& value : rows) value /= determinant;
  return Homography(rows);
}

Homography Homography::then(const Homography& next) const {
  return Homography(product(next.m_rows, m_rows));
}

Point Similarity::at(Point p) const {
  return Point{} + shift + scale * turned(p - Point{}, turn_deg);
}

Similarity Similarity::inverse() const {
  const double back_deg = halfTurns(-turn_deg);
  return {1 / scale, back_deg, (-1 / scale) * turned(shift, back_deg)};
}

std::optional<Similarity> similarity(Point a, Point b, Point to_a, double length,
                                     double direction_deg) {
  const double drawn = distance(a, b);
  if (!finite(a) || !finite(b) || !finite(to_a) || !std::isfinite(drawn)) return std::nullopt;
  if (!std::isfinite(length) || !std::isfinite(direction_deg)) return std::nullopt;
  if (!(length > 0) || !std::isfinite(length / drawn)) return std::nullopt;
  const double drawn_deg = std::atan2(b.y - a.y, b.x - a.x) / kRadPerDegree;
  Similarity map{length / drawn, halfTurns(direction_deg - drawn_deg), {}};
  map.shift = to_a - map.at(a);
  return map;
}

std::optional<Similarity> similarity(Point a, Point b, Point to_a, double length) {
  return similarity(a, b, to_a, length, std::atan2(b.y - a.y, b.x - a.x) / kRadPerDegree);
}

}  // namespace sumpwright::geometry
