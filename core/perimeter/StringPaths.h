#pragma once
// Distances as a stretched string lies: round the house in plan, never through it. Metres.
//
// The string starts at a point on the outside face. A shortest way among polygons is straight but
// for bends at corners that stand out (Lozano-Perez and Wesley 1979, from memory). Its last leg
// either ends at the point of the thing nearest to where the leg begins, or could be drawn tighter
// until it touches a corner (derived), so a thing's nearest points are all that has to be seen.
// Along a wall, what can be seen from a corner changes only where a sight line passes another
// corner. So the places nearer than r are found in closed form, as for straight distances, and ends
// are as right as those of geometry/Interval.h, but for 1 nm where two ways of the string meet.
//
// A courtyard cannot be left in plan: from it nothing outside is reached, and the other way round.
// What lies inside the house (a drawn run under the floor) has no string round it and is measured
// straight. Built for one perimeter; a value to share; total.

#include <vector>

#include "geometry/Interval.h"
#include "perimeter/Perimeter.h"

namespace sumpwright::perimeter {

/// A thing's shapes, and how far it is by string from every corner that stands out.
struct StringTarget {
  std::vector<Segment> segments;
  std::vector<bool> indoors;             ///< of each segment: some of it is inside the house
  std::vector<geometry::Polygon> areas;  ///< no distance inside them
  std::vector<double> from_corner_m;
};

class StringPaths {
 public:
  explicit StringPaths(const Perimeter& perimeter);

  /// `shapes`: one point, a polyline, or the corners of an area each.
  StringTarget targetOf(const std::vector<geometry::Polyline>& shapes, bool area) const;

  /// Places of an edge nearer than r, by parameter along it, within it. Empty for r <= 0, but for
  /// what lies inside an area.
  geometry::Intervals within(const Edge& edge, const StringTarget& target, double r) const;
  /// +inf where no string reaches.
  double distance(Place place, const StringTarget& target) const;
  /// The least over chainages [from, to] of one ring, 0 <= from <= to <= length.
  double least(int ring, double from_m, double to_m, const StringTarget& target) const;

  /// Whether the straight line between two points keeps out of the house; it may run along a wall.
  bool isFree(Point a, Point b) const;

 private:
  struct Seen {
    int ring = 0;
    int edge = 0;
    geometry::Intervals where;  ///< parts of the edge seen from a corner, by parameter
  };
  void takeCorners();
  void joinCorners();
  bool isInside(Point p) const;
  bool isIndoors(const Segment& s) const;
  double straightTo(Point p, const StringTarget& target) const;
  geometry::Intervals seenFrom(Point p, const Edge& edge) const;
  geometry::Intervals seenDirectly(const Edge& edge, const Segment& s,
                                   geometry::Interval window) const;
  double leastOn(const Edge& edge, geometry::Interval piece, const StringTarget& target) const;

  Perimeter m_perimeter;
  std::vector<geometry::Polygon> m_rings;
  std::vector<Point> m_all;      ///< corners
  std::vector<Point> m_corners;  ///< that stand out
  std::vector<std::vector<double>> m_between_m;
  std::vector<std::vector<Seen>> m_seen;  ///< by corner
};

}  // namespace sumpwright::perimeter
