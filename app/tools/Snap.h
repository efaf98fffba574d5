#pragma once
// Where a pointer means to be: on a corner, on a line that runs square from the last wall or on
// from another corner, on an edge, on the grid. Plan points in metres; no camera and no window.

#include <optional>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::tools {

using geometry::Point;
using geometry::Segment;
using geometry::Vec;

enum class SnapKind { none, corner, crossing, square, extension, edge, grid };

struct Snapped {
  Point at;
  SnapKind kind = SnapKind::none;
  std::vector<Segment> guides;  ///< lines to show: each ends at `at`
  bool operator==(const Snapped&) const = default;
};

/// What there is to snap to.
struct SnapField {
  std::vector<Point> corners;
  std::vector<Point> places;  ///< as corners, but no lines run on from them
  std::vector<Segment> edges;
  std::optional<Point> from;  ///< start of what is being drawn
  /// Directions that count as square: this one and each 45 degrees from it; unit or not.
  Vec axis{1.0, 0.0};
  /// No snap moves the pointer further; <= 0: no snaps at all. Reach and grid: own figures.
  double reach_m = 0.15;
  double grid_m = 0.05;  ///< 0: none
};

/// Best first: a corner; the crossing of two lines; one line (square before extension), its length
/// from `from` or its corner brought to the grid; an edge; the grid; the pointer itself. Ties go to
/// the nearer, then to the earlier in the field. Deterministic.
Snapped snap(const SnapField& field, Point pointer);

}  // namespace sumpwright::tools
