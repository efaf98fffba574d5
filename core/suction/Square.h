#pragma once
// One square between four centres of the grid, cut by the barriers that cross it: what lines and
// areas of equal suction are made of. Grid coordinates (Frame.h). Internal to core/suction.

#include <array>
#include <optional>
#include <vector>

#include "suction/Network.h"

namespace sumpwright::suction {

/// Corners of a square, counter-clockwise.
inline constexpr std::array<geometry::Vec, 4> kCorners{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}};

/// The square of the centres of cells (i, j) to (i+1, j+1). A side is the corners that reach one
/// another without crossing a barrier; what lies across is led on from this side.
class Square {
 public:
  Square(const Network& network, const std::vector<double>& suction, int i, int j);

  /// Whether any corner is a cell.
  bool any() const;
  /// Whether barriers part the corners, so that each side can be told by straight cuts.
  bool parted() const;
  /// The line of a level on each side, what is above to its left.
  void march(double level, std::vector<geometry::Segment>& lines) const;
  /// What is at or above the level, each side for itself; contract: parted().
  void areasAbove(double level, std::vector<Polygon>& areas) const;

 private:
  using Side = std::array<bool, 4>;
  bool near(const geometry::Segment& wall) const;
  Point at(std::size_t k) const { return m_corner + kCorners[k]; }
  bool walled(Point a, Point b) const;
  Side joinedTo(std::size_t start) const;
  /// The sides, each once.
  std::vector<Side> sides() const;
  /// The barriers that part this side from the others.
  std::vector<geometry::Segment> partingWalls(const Side& side) const;
  std::array<double, 4> ledOn(const Side& side) const;
  void marchSide(double level, const Side& side, std::vector<geometry::Segment>& lines) const;
  Point crossing(std::size_t k, std::size_t next, const std::array<double, 4>& values,
                 double level) const;
  void emit(Point from, Point to, const Side& side, bool whole,
            std::vector<geometry::Segment>& lines) const;
  bool seen(Point p, const Side& side) const;

  Point m_corner;
  std::array<int, 4> m_cells{-1, -1, -1, -1};
  std::array<double, 4> m_values{};
  double m_low = 0.0;
  double m_high = 0.0;
  std::vector<geometry::Segment> m_walls;
};

}  // namespace sumpwright::suction
