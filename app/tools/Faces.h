#pragma once
// The faces of the walls as a tape meets them, and a place as it is taped: along a wall from a
// corner, and square off it. Plan metres; closed rings only.

#include <optional>
#include <vector>

#include "plan/Job.h"
#include "tools/Snap.h"

namespace sumpwright::tools {

/// Whether the place lies within the walls' outside face (a courtyard is outside).
bool isInside(const plan::Plan& plan, Point at);

/// A place on the outside face; nothing where no such wall is.
std::optional<Point> placeOnFace(const plan::Plan& plan, const plan::OnWall& at);

/// The face of one wall.
struct Face {
  int ring = 0;
  int edge = 0;
  Segment line;  ///< from the corner before to the corner after; inside: the inner corners
};

/// The outside faces, or the inner ones: each as thick as the wall, the house or
/// plan::thicknessTaken_m() says. An inner face that a thick neighbour leaves nothing of
/// is left out.
std::vector<Face> wallFaces(const plan::Job& job, bool inside);

/// How thick the wall of a face is, or is taken to be.
double faceThickness_m(const plan::Job& job, const Face& face);

/// A place by its nearest corner.
struct FromCorner {
  Face face;               ///< the wall at that corner nearer to the place
  bool from_start = true;  ///< whether the corner is the first of `face`
  Point corner;
  Vec along;  ///< unit, along the wall, towards the place
  Vec off;    ///< unit, square to it, towards the place
  double along_m = 0.0;
  double off_m = 0.0;  ///< both >= 0
};

/// Of the faces on the place's side of the walls; nothing where there are none.
std::optional<FromCorner> fromNearestCorner(const plan::Job& job, Point at);
Point placeAt(const FromCorner& from, double along_m, double off_m);

/// Lines from a place square to the two nearest walls, the second not in line with the first;
/// inner walls count for a place inside. Walls are met on the line of their face at most 0.5 m past
/// its ends (own figure: a tape hooked on a corner). Nearest first; fewer where there are fewer.
std::vector<Segment> toNearestWalls(const plan::Job& job, Point at);

/// All a pointer may mean on a plan: corners and faces of walls, ends of lines, corners of areas,
/// points; lines run on only from corners of walls; square to the house's first wall. Contract:
/// reach and grid as in Snap.h.
SnapField fieldOf(const plan::Job& job, double reach_m, double grid_m);

}  // namespace sumpwright::tools
