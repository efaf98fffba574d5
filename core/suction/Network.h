#pragma once
// A model on its grid: cells joined by conductances, five-point finite volumes with cut cells.
//
// A cell's leakage is taken over the part of it that lies inside, a link's conductance is T times
// the open part of the side between the cells; values stay at the grid's centres. Edges and walls
// are in series with the fill up to them. All conductances are m3/(s Pa), so that
//
//   sum over links c (s_a - s_b) + (leaks of a) s_a = flow drawn from a.
//
// Knows no sump: moving it changes nothing here.

#include <cstddef>
#include <limits>
#include <vector>

#include "suction/Frame.h"
#include "suction/Model.h"

namespace sumpwright::suction {

struct Cell {
  int i = 0;
  int j = 0;
  double area_m2 = 0.0;  ///< inside; next door too
  double own_m2 = 0.0;   ///< of it, not next door
  double transmissivity_m3_s_pa = 0.0;
  double leak_ground_m3_s_pa = 0.0;
};

struct Link {
  int a = 0;
  int b = 0;
  double fill = 0.0;  ///< of the fill between the centres
  double wall =
      std::numeric_limits<double>::infinity();  ///< of a barrier across it; infinite: none
  bool conduit = false;                         ///< not part of the fill
};

/// A part of a joint: fill up to it, and the joint in series.
struct Joint {
  int cell = 0;
  double fill = 0.0;
  double room = 0.0;
  double outdoors = 0.0;
  double length_m = 0.0;
  int ring = -1;  ///< of the plan, as Edge; -1: along a barrier
  int wall = -1;
  bool own = true;
};

/// Factors on parts of the ground; the grid stays as it is.
struct Scales {
  double transmissivity = 1.0;
  double leakage = 1.0;
  double edges = 1.0;     ///< joints, to the room
  double outdoors = 1.0;  ///< foundation walls, to outdoors
  double barriers = 1.0;  ///< conductance of barriers; conduits keep theirs
  bool operator==(const Scales&) const = default;
};

struct Network {
  Frame frame;
  std::vector<Cell> cells;
  std::vector<int> at;  ///< cell at j * nx + i, or -1
  std::vector<Link> links;
  std::vector<Joint> joints;
  std::vector<geometry::Segment>
      walls;  ///< barriers as they stand, grid coordinates, ends made good

  int cellAt(int i, int j) const;
  /// The cell that holds a point of the plan, else the nearest within two cells; -1: none.
  int cellNear(Point plan) const;
  Point centre(int cell) const;  ///< in plan
  double ownArea_m2() const;
  double ownJoint_m() const;
};

/// 1/(1/a + 1/b); 0 where one is 0, the other where one is infinite.
double inSeries(double a, double b);

/// Contract: checkModel() found nothing; h_m > 0.
Network networkOf(const SuctionModel& model, double h_m, bool align);

}  // namespace sumpwright::suction
