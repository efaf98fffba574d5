#include "geometry/Areas.h"

#include <algorithm>
#include <boost/geometry/algorithms/area.hpp>
#include <boost/geometry/algorithms/correct.hpp>
#include <boost/geometry/algorithms/difference.hpp>
#include <boost/geometry/algorithms/for_each.hpp>
#include <boost/geometry/algorithms/intersection.hpp>
#include <boost/geometry/algorithms/is_valid.hpp>
#include <boost/geometry/core/cs.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/geometry/geometries/register/point.hpp>
#include <boost/geometry/strategies/strategies.hpp>
#include <cmath>
#include <exception>

#include "geometry/Shapes.h"

BOOST_GEOMETRY_REGISTER_POINT_2D(sumpwright::geometry::Point, double, cs::cartesian, x, y)

namespace sumpwright::geometry {

namespace {

namespace bg = boost::geometry;
using Piece = bg::model::polygon<Point, false, false>;  // counter-clockwise, first not repeated
using Pieces = bg::model::multi_polygon<Piece>;

constexpr double kGrid = 1e6;         // to a metre: a micrometre (own figure)
constexpr double kStraight_m = 1e-5;  // a corner nearer to the line across it is none (own figure)
constexpr double kNothing_m2 = 1e-9;  // rounding
constexpr double kLost = 1e-6;        // share of an area that rounding may lose (own figure)

Piece pieceOf(const Polygon& polygon) {
  Piece piece;
  piece.outer().assign(polygon.begin(), polygon.end());
  bg::correct(piece);
  return piece;
}

Point onGrid(Point p) {
  // Adding 0 turns -0 into 0.
  return {std::round(p.x * kGrid) / kGrid + 0.0, std::round(p.y * kGrid) / kGrid + 0.0};
}

/// Whether the corner does not turn the way from `a` to `b`.
bool isIdle(Point a, Point corner, Point b) {
  const double across = distance(a, b);
  if (across < kStraight_m) return true;
  return std::abs(cross(b - a, corner - a)) / across < kStraight_m;
}

template <class Points>
Polygon tidied(const Points& points) {
  Polygon corners;
  for (const Point p : points) corners.push_back(onGrid(p));
  for (std::size_t i = 0; i < corners.size() && corners.size() >= 3;) {
    const std::size_t n = corners.size();
    if (isIdle(corners[(i + n - 1) % n], corners[i], corners[(i + 1) % n])) {
      corners.erase(corners.begin() + static_cast<std::ptrdiff_t>(i));
      i = i == 0 ? 0 : i - 1;
    } else {
      ++i;
    }
  }
  return corners;
}

std::vector<Face> facesOf(const Pieces& pieces) {
  std::vector<Face> faces;
  for (const Piece& piece : pieces) {
    Face face{tidied(piece.outer()), {}};
    if (face.outline.size() < 3) continue;
    for (const auto& hole : piece.inners()) {
      Polygon tidy = tidied(hole);
      if (tidy.size() >= 3) face.holes.push_back(std::move(tidy));
    }
    if (faceArea(face) > kNothing_m2) faces.push_back(std::move(face));
  }
  return faces;
}

/// What of one area lies outside and what inside another.
struct Split {
  Pieces outside;
  Pieces inside;
};

Point turned(Point p, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * p.x - s * p.y, s * p.x + c * p.y};
}

template <class Areas>
Areas turnedAll(Areas areas, double angle) {
  if (angle != 0.0) bg::for_each_point(areas, [=](Point& p) { p = turned(p, angle); });
  return areas;
}

/// Boost 1.74 now and then loses a whole area where two edges run within a millimetre of one
/// another. Both parts together must be the whole; where they are not, it is asked again with
/// everything turned, which gives it other numbers. Nothing where no angle helps.
std::optional<Split> split(const Pieces& area, const Piece& by) {
  constexpr double kAngles[] = {0.0, 0.37, 1.02, 1.83, 2.51, 0.71};  // any (own figures)
  const double whole = bg::area(area);
  for (const double angle : kAngles) {
    const Pieces a = turnedAll(area, angle);
    const Piece b = turnedAll(by, angle);
    Split parts;
    bg::difference(a, b, parts.outside);
    bg::intersection(a, b, parts.inside);
    const double lost = whole - bg::area(parts.outside) - bg::area(parts.inside);
    if (std::abs(lost) > kLost * (1.0 + whole)) continue;
    return Split{turnedAll(std::move(parts.outside), -angle),
                 turnedAll(std::move(parts.inside), -angle)};
  }
  return std::nullopt;
}

bool isArea(const Polygon& polygon) {
  return polygon.size() >= 3 && std::abs(signedArea(polygon)) > kNothing_m2;
}

}  // namespace

std::optional<std::vector<Face>> without(const Polygon& area, const std::vector<Polygon>& taken) {
  if (!isArea(area)) return std::vector<Face>{};
  try {
    Pieces left{pieceOf(area)};
    if (!bg::is_valid(left)) return std::nullopt;
    for (const Polygon& polygon : taken) {
      if (!isArea(polygon)) continue;
      const Piece gone = pieceOf(polygon);
      if (!bg::is_valid(gone)) return std::nullopt;
      auto parts = split(left, gone);
      if (!parts) return std::nullopt;
      left = std::move(parts->outside);
    }
    return facesOf(left);
  } catch (const std::exception&) {
    return std::nullopt;  // Boost refuses what rounding makes invalid
  }
}

std::optional<std::vector<Face>> common(const Polygon& a, const Polygon& b) {
  if (!isArea(a) || !isArea(b)) return std::vector<Face>{};
  try {
    const Piece one = pieceOf(a);
    const Piece other = pieceOf(b);
    if (!bg::is_valid(one) || !bg::is_valid(other)) return std::nullopt;
    const auto parts = split(Pieces{one}, other);
    if (!parts) return std::nullopt;
    return facesOf(parts->inside);
  } catch (const std::exception&) {
    return std::nullopt;
  }
}

double faceArea(const Face& face) {
  double area = std::abs(signedArea(face.outline));
  for (const Polygon& hole : face.holes) area -= std::abs(signedArea(hole));
  return area;
}

}  // namespace sumpwright::geometry
