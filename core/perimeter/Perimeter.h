#pragma once
// The outside face of the walls as rings of chainage.
//
// Chainage s of a ring runs in metres from its corner 0 along the outside face, with the house on
// the left, so it grows left to right for someone who stands outside and faces the wall. Ring 0 is
// the outer ring, then file order. s and s + length name the same place; results lie in
// [0, length). A corner belongs to the edge that starts there.

#include <string>
#include <vector>

#include "base/Result.h"
#include "geometry/Interval.h"
#include "geometry/Point.h"
#include "plan/Job.h"
#include "plan/WallThickness.h"

namespace sumpwright::perimeter {

using geometry::Point;
using geometry::Segment;
using geometry::Vec;

/// How far past the inner face the drill line is followed (own figure).
inline constexpr double kDrillBeyond_m = 0.20;

/// A position on the footprint.
struct Place {
  int ring = 0;
  double chainage_m = 0.0;
  bool operator==(const Place&) const = default;
};

struct Edge {
  int ring = 0;
  int edge = 0;
  Point from;
  Point to;
  double start_m = 0.0;  ///< chainage of `from`
  double length_m = 0.0;
  Vec along;              ///< unit, from -> to
  Vec inward;             ///< unit, into the house
  double turn_rad = 0.0;  ///< turn at `from`, > 0 to the left (a corner that stands out)
  double thickness_m = plan::kAssumedWallThickness_m;
  bool thickness_assumed = true;
  double end_m() const { return start_m + length_m; }
  geometry::Line line() const { return {from, along}; }  ///< parameter = chainage - start_m
  /// Outside face to kDrillBeyond_m past the inner face.
  double drillDepth_m() const { return thickness_m + kDrillBeyond_m; }
  Segment face() const { return {from, to}; }
};

/// A, B, ... Z, AA, ...: of the n-th corner, counted from 0.
std::string letterOfCorner(std::size_t n);

class Perimeter {
 public:
  /// Needs closed rings of three or more corners with no edge under 1 mm; else problems
  /// plan.ring.open, plan.ring.corners, plan.ring.short-edge with their places. (checkJob finds
  /// these too and more; this is the least that chainage needs.)
  static base::Result<Perimeter> of(const plan::Job& job);

  int ringCount() const { return static_cast<int>(m_rings.size()); }
  double length_m(int ring) const;
  const std::vector<Edge>& edges(int ring) const;
  const plan::Wall& wall(const Edge& edge) const;
  bool contains(Place place) const;  ///< the ring exists and the chainage is finite

  Place wrapped(Place place) const;  ///< chainage into [0, length)
  const Edge& edgeAt(Place place) const;
  Point pointAt(Place place) const;
  Place placeOf(const plan::OnWall& at, double further_m = 0.0) const;  ///< not clamped to the edge
  /// Segment on the outside face from `at` along `width_m`.
  Segment faceOf(const plan::OnWall& at, double width_m) const;
  /// Nearest place to a point, over all rings; the lowest ring and chainage where several are.
  Place nearest(Point point) const;
  /// Nearest place of one ring.
  Place nearestOn(int ring, Point point) const;
  /// Drill line at a place: outside face to drillDepth along the inward normal.
  Segment drillLine(Place place) const;
  /// Distance along the ring between two chainages, the shorter way round.
  double apart_m(int ring, double s1, double s2) const;

  /// Letter of the corner at the start of an edge: A, B, ... Z, AA, ...; courtyard corners go on
  /// after the outer ring's.
  std::string cornerLetter(int ring, int edge) const;
  /// Compass direction the wall faces, as one of eight: "north", "north-east", ...
  std::string compassSide(const Edge& edge) const;
  /// What to call the wall: its name, else message "wall.compass" {side}; as a phrase.
  base::Message wallLabel(const Edge& edge) const;

 private:
  struct RingData {
    std::vector<Edge> edges;
    std::vector<plan::Wall> walls;
    double length_m = 0.0;
  };
  std::vector<RingData> m_rings;
  double m_north_deg = 0.0;
};

}  // namespace sumpwright::perimeter
