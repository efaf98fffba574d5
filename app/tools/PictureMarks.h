#pragma once
// Marks that the pointer sets on a picture under the plan: the two points of a known length, the
// four corners of a known rectangle. No camera, no window and no picture: points are those of
// whatever frame the caller draws in, lengths and reach too.

#include <array>
#include <cstddef>
#include <optional>

#include "geometry/Homography.h"
#include "geometry/Point.h"

namespace sumpwright::tools {

/// Two points and what is between them. The first press sets the first point, the drag from it or
/// the next press the second; after that each can be taken hold of again.
class TwoPoints {
 public:
  /// Takes hold of a point within `reach`, or sets one that is missing. Nothing happens (false) on
  /// a press elsewhere once both stand.
  bool press(geometry::Point at, double reach);
  /// The held point goes there.
  void drag(geometry::Point at);
  void release(double reach);
  /// Moves the point set or held last; false where there is none.
  bool nudge(geometry::Vec by);
  void clear() { *this = {}; }

  bool isHeld() const { return m_held.has_value(); }
  std::optional<geometry::Point> first() const { return m_points[0]; }
  std::optional<geometry::Point> second() const { return m_points[1]; }
  /// Both points, when they are apart.
  std::optional<geometry::Segment> line() const;
  /// The point in hand or set last, for keys and for its mark: 0, 1.
  std::size_t current() const { return m_current; }

 private:
  std::optional<geometry::Point> m_points[2];
  std::optional<std::size_t> m_held;
  std::size_t m_current = 0;
};

/// Four corners in order round a rectangle seen at a slant; the first stays the first.
class FourCorners {
 public:
  explicit FourCorners(const geometry::Quad& corners) : m_corners(corners) {}

  bool press(geometry::Point at, double reach);
  void drag(geometry::Point at);
  void release() { m_held.reset(); }
  void nudge(geometry::Vec by);
  /// The next corner round is taken in hand, or the one before.
  void step(int by);
  /// Puts the corners back, as they were before a drag that was given up.
  void put(const geometry::Quad& corners) { m_corners = corners; }

  bool isHeld() const { return m_held.has_value(); }
  const geometry::Quad& corners() const { return m_corners; }
  std::size_t current() const { return m_current; }
  /// Whether they can be the picture of a rectangle: convex, in order, no three in a line.
  bool isProper() const { return geometry::properQuad(m_corners); }

 private:
  geometry::Quad m_corners;
  std::optional<std::size_t> m_held;
  std::size_t m_current = 0;
};

}  // namespace sumpwright::tools
