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

Point turned(Point p, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * p.x - s * p.y, s * p.x + c * p.y};
}

template <class Areas>
Areas turnedAll(Areas areas, double angle) {
  if (angle != 0.0) bg::for_each_point(areas, [=](Point& p) { p = onGrid(turned(p, angle)); });
  return areas;
}

/// The angle that lays the longest side along x; 0 where that is upright or level already.
double levelling(const Polygon& ring) {
  Vec longest;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Vec side = ring[(i + 1) % ring.size()] - ring[i];
    if (norm(side) > norm(longest)) longest = side;
  }
  return longest.x == 0.0 || longest.y == 0.0 ? 0.0 : -std::atan2(longest.y, longest.x);
}

/// What of an area lies outside and what inside another.
struct Split {
  Pieces outside;
  Pieces inside;
};

/// Nothing where the two do not make up the whole.
std::optional<Split> split(const Pieces& area, const Piece& by) {
  Split parts;
  bg::difference(area, by, parts.outside);
  bg::intersection(area, by, parts.inside);
  const double whole = bg::area(area);
  const double lost = whole - bg::area(parts.outside) - bg::area(parts.inside);
  if (std::abs(lost) > kLost * (1.0 + whole)) return std::nullopt;
  return parts;
}

/// Boost 1.74 now and then loses a whole area where two edges run within a millimetre of one
/// another, or all but coincide by rounding. So what it gives must make up the whole; where it does
/// not, everything is turned: first so that the longest side lies along x, where what all but
/// coincides does coincide once it is rounded, then anyhow. `work(angle)` gives nothing where it
/// did not do.
template <class Work>
std::optional<Pieces> atSomeAngle(const Polygon& area, const Work& work) {
  for (const double angle : {levelling(area), 0.0, 0.37, 1.02, 1.83, 2.51}) {  // any (own figures)
    if (std::optional<Pieces> done = work(angle)) return turnedAll(std::move(*done), -angle);
  }
  return std::nullopt;
}

std::optional<std::vector<Face>> facesOf(const std::optional<Pieces>& pieces) {
  if (!pieces) return std::nullopt;
  return facesOf(*pieces);
}

bool isArea(const Polygon& polygon) {
  return polygon.size() >= 3 && std::abs(signedArea(polygon)) > kNothing_m2;
}

}  // namespace

std::optional<std::vector<Face>> without(const Polygon& area, const std::vector<Polygon>& taken) {
  if (!isArea(area)) return std::vector<Face>{};
  try {
    const Piece whole = pieceOf(area);
    if (!bg::is_valid(whole)) return std::nullopt;
    std::vector<Piece> gone;
    for (const Polygon& polygon : taken) {
      if (!isArea(polygon)) continue;
      gone.push_back(pieceOf(polygon));
      if (!bg::is_valid(gone.back())) return std::nullopt;
    }
    return facesOf(atSomeAngle(area, [&](double angle) -> std::optional<Pieces> {
      Pieces left{turnedAll(whole, angle)};
      for (const Piece& piece : gone) {
        auto parts = split(left, turnedAll(piece, angle));
        if (!parts) return std::nullopt;
        left = std::move(parts->outside);
      }
      return left;
    }));
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
    return facesOf(atSomeAngle(a, [&](double angle) -> std::optional<Pieces> {
      auto parts = split(Pieces{turnedAll(one, angle)}, turnedAll(other, angle));
      if (!parts) return std::nullopt;
      return std::move(parts->inside);
    }));
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
