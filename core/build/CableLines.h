#pragma once
// The lines a cable may run along, in plan: the outside faces, and the outlines of rooms without a
// bath or shower. Internal to core/build.
//
// A place on a line is its distance along it from its first corner, wrapped onto it.

#include <optional>
#include <string>
#include <vector>

#include "build/CableRoute.h"

namespace sumpwright::build {

inline constexpr double kSameSpot_m = 1e-6;  ///< rounding
/// Walls that face each other: cosine of 10 degrees (own figure).
inline constexpr double kFacing = 0.984807753012208;

/// Unit, from its start to its end; of a point, anything.
geometry::Vec wayOf(const geometry::Segment& side);

/// A stretch of a line in front of an opening, and what going over its head adds.
struct OverOpening {
  double from_m = 0.0;
  double to_m = 0.0;      ///< >= from_m; not past the line's end: one over it is two
  double detour_m = 0.0;  ///< 0: under the sill
  std::vector<std::string> things;
};

/// Several in one wall that are gone over without coming down between them.
struct OverSeveral {
  OverOpening all;           ///< from the first of them to the last
  double first_to_m = 0.0;   ///< end of the first
  double last_from_m = 0.0;  ///< start of the last
};

struct CableRange {
  double from_m = 0.0;
  double to_m = 0.0;
};

struct CableLine {
  CablePartKind kind = CablePartKind::skirting;  ///< outside or skirting
  bool wall_left = true;                         ///< the wall is to the left of the line as it runs
  std::vector<geometry::Point> corners;
  std::vector<double> starts_m;  ///< of each corner
  double length_m = 0.0;
  std::vector<OverOpening> over;     ///< in order, none over another
  std::vector<OverSeveral> several;  ///< of neighbours in `over`
  std::vector<CableRange> closed;    ///< no cable here: beside a bath; a party or dwarf wall
  std::vector<CableRange> entries;   ///< no drilling here: a service comes in

  double wrapped(double s_m) const;
  geometry::Point pointAt(double s_m) const;
  std::size_t sideAt(double s_m) const;  ///< index of the corner before
  geometry::Segment side(std::size_t i) const;
  /// Unit, from the cable into the wall.
  geometry::Vec intoWall(std::size_t side_index) const;
  const OverOpening* overAt(double s_m) const;  ///< strictly within
  bool isClosed(double s_m) const;
  bool isAtEntry(double s_m) const;
};

struct Spot {
  std::size_t line = 0;
  double s_m = 0.0;
};

enum class Found { on_line, wet, nowhere };

struct FoundSpot {
  Found state = Found::nowhere;
  Spot spot;
  double off_m = 0.0;  ///< the point's distance from the line
  bool outside = false;
  bool through = false;  ///< on an outside face, the point inside: through the wall there
};

struct Facing {
  Spot spot;
  double distance_m = 0.0;
};

struct CableLines {
  std::vector<CableLine> lines;  ///< rings first
  std::vector<geometry::Polygon> wet_rooms;
  double dpc_m = 0.0;          ///< known, else the highest that is taken for it
  double run_outside_m = 0.0;  ///< height of run and sleeve outside
  double thickest_m = 0.0;
  double from_corner_m = 0.0;
  bool head_assumed = false;
  bool sill_assumed = false;

  /// Within the outer faces, and in no courtyard.
  bool isIndoors(geometry::Point at) const;
  Spot spotOnFace(perimeter::Place place) const;
  FoundSpot spotOf(geometry::Point at) const;
  /// Neither within from_corner_m of a corner, nor in an opening (jambs included), a wet range or
  /// beside the entry of a service.
  bool mayDrill(const Spot& spot) const;
  /// Square through the wall: the nearest line, where that faces this one (within 10 degrees, own
  /// figure) and is not further off than the thickest wall.
  std::optional<Facing> facing(const Spot& spot) const;
};

/// CableLineMaker.cpp
CableLines cableLines(const rules::Site& site, const CableFigures& figures);

}  // namespace sumpwright::build
