#include "geometry/Areas.h"

#include <algorithm>
#include <boost/geometry/algorithms/area.hpp>
#include <boost/geometry/algorithms/correct.hpp>
#include <boost/geometry/algorithms/difference.hpp>
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
      Pieces rest;
      bg::difference(left, gone, rest);
      left = std::move(rest);
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
    Pieces both;
    bg::intersection(one, other, both);
    return facesOf(both);
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
