#pragma once
// Single lines joined end to end into closed outlines.

#include <cstddef>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::files {

struct JoinedLines {
  std::vector<geometry::Polygon> rings;  ///< closed; counter-clockwise but for rounding
  std::size_t loose = 0;                 ///< lines that lead nowhere: an end that meets no other
  std::size_t inner = 0;                 ///< lines within an outline, or bridges between two
};

/// Ends at most `tolerance` apart are one place (the first of them; same unit as the lines, > 0).
/// Lines drawn twice count once, lines of no length not at all. Lines that hang together give their
/// outer outline; where that comes back to a place it has been at, the loops are outlines of their
/// own. Lines that cross or touch between their ends do not meet there. Time: lines times the
/// logarithm of lines. Coordinates finite.
JoinedLines joinLines(const std::vector<geometry::Segment>& lines, double tolerance);

}  // namespace sumpwright::files
