#pragma once
// Small seeded houses drawn on squared paper: every face, jamb, entry and supply lies on a line of
// the grid, so that a search over the grid finds the very lengths of the house, not lengths near
// them. Square to the grid; rectangles, L-shapes and houses round a court; all invented.

#include <optional>
#include <string>
#include <vector>

#include "plan/Job.h"
#include "support/Seed.h"

namespace sumpwright::build {

inline constexpr double kSquare_m = 0.05;

struct GridPoint {
  int x = 0;
  int y = 0;
  bool operator==(const GridPoint&) const = default;
};

/// Squares from..to, the last not included.
struct GridRect {
  int x0 = 0;
  int y0 = 0;
  int x1 = 0;
  int y1 = 0;
  bool has(int x, int y) const { return x >= x0 && x < x1 && y >= y0 && y < y1; }
};

struct GridRoom {
  GridRect squares;
  bool drawn = true;
  bool wet = false;
  bool bath = false;  ///< wet because of a bath in it, whatever the room is called
};

/// Through a wall, from face to face.
struct GridOpening {
  std::string id;
  GridRect squares;
  bool window = false;
  std::optional<double> sill_m;
  std::optional<double> head_m;
};

struct GridSupply {
  std::string id;
  GridPoint at;  ///< on the face it hangs on
  bool board = false;
};

/// A corner to the next, the house on the left.
struct GridSide {
  int ring = 0;
  int edge = 0;
  GridPoint from;
  GridPoint to;
  int start = 0;  ///< squares along the ring from its first corner
};

struct LatticeHouse {
  int thickness = 6;  ///< of outside walls; inner walls are two squares thick
  std::vector<std::vector<GridPoint>> rings;
  std::vector<GridSide> sides;
  std::vector<GridRoom> rooms;
  std::vector<GridOpening> openings;  ///< in outside and inner walls
  std::vector<GridPoint> entries;     ///< of services, on outside faces
  std::vector<GridSupply> supplies;
  std::optional<GridPoint> shower;  ///< in no room that is drawn
  std::optional<std::size_t> party;
  double ground_m = -0.15;
  std::optional<double> dpc_m;
  plan::Job job;  ///< the same house
};

struct LatticeOptions {
  bool shower = false;
};

LatticeHouse latticeHouse(support::Random& random, const LatticeOptions& options = {});

}  // namespace sumpwright::build
