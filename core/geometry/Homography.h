#pragma once
// Maps of the plane onto itself: projective, as a photograph of a flat plan is, and similar, as a
// plan drawn to scale is. Frames are the caller's (pixels with y down, metres with y up); nothing
// here depends on which way y runs.

#include <array>
#include <optional>

#include "geometry/Point.h"

namespace sumpwright::geometry {

/// Four corners in order round the outline, either way.
using Quad = std::array<Point, 4>;

/// Whether four corners make a proper quad: finite, convex in the order given, and no three in a
/// line or nearly so: each corner lies off the line of its neighbours by a triangle of more than
/// 1e-6 of the square of the longest side or diagonal (own figure: a corner of a photograph 4000
/// pixels wide must stand out by more than about 0.01 pixel). Its size is from 1e-6 to 1e9, and it
/// lies within 1e9 of the origin (own figures: beyond, doubles no longer carry the result).
bool properQuad(const Quad& quad);

/// A projective map: (x, y) to (u/w, v/w) with (u, v, w) = M (x, y, 1).
class Homography {
 public:
  /// The identity.
  Homography() = default;

  /// The map that takes each corner of `from` to that of `to`. Nothing unless both are proper quads
  /// (they may run opposite ways round). Exact for four points up to rounding: within 1e-12 of the
  /// size of `to` and its distance from the origin. By the projective frame of four points, in
  /// coordinates moved and scaled to their middle (R. Hartley and A. Zisserman, Multiple View
  /// Geometry in Computer Vision, 2nd ed. 2004, sections 2.3 and 4.4.4; from memory).
  static std::optional<Homography> between(const Quad& from, const Quad& to);

  /// Where p goes. Nothing on the line that goes to infinity, or beyond it as seen from the quad
  /// the map was made of: nothing there is in the photograph.
  std::optional<Point> at(Point p) const;

  /// How far off the line that goes to infinity p is: 1 at the middle of the four corners the map
  /// was made of, falling evenly to 0 at the line, < 0 beyond. The inverse has at the image of p
  /// one over the depth of p.
  double depth(Point p) const;

  /// The way back.
  Homography inverse() const;
  /// First this, then `next`. The depth of the whole is that of this times that of next.
  Homography then(const Homography& next) const;

 private:
  using Rows = std::array<double, 9>;
  explicit Homography(const Rows& rows) : m_rows(rows) {}

  Rows m_rows{1, 0, 0, 0, 1, 0, 0, 0, 1};
};

/// p goes to shift + scale * (p turned by turn_deg counter-clockwise, x towards y).
struct Similarity {
  double scale = 1.0;     ///< > 0
  double turn_deg = 0.0;  ///< (-180, 180]
  Vec shift;
  Point at(Point p) const;
  Similarity inverse() const;
};

/// The similarity that takes a to `to_a` and puts b at `length` from there, in the direction
/// `direction_deg` (counter-clockwise from x): a plan to scale by two of its points and the true
/// length between them. Nothing where a and b coincide, the length is not positive, or a number is
/// not finite.
std::optional<Similarity> similarity(Point a, Point b, Point to_a, double length,
                                     double direction_deg);
/// The same, turned as it is: only moved and scaled.
std::optional<Similarity> similarity(Point a, Point b, Point to_a, double length);

}  // namespace sumpwright::geometry
