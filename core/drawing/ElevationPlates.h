#pragma once
// The words of a run on the unrolled elevation: each of several places costs what it covers, the
// cheapest wins.

#include <string>
#include <vector>

#include "drawing/ElevationParts.h"
#include "drawing/MarkerLabels.h"

namespace sumpwright::drawing {

class ElevationPlates {
 public:
  /// Plates keep off `words`, and off openings as far as there is room.
  ElevationPlates(Sketch& sketch, const ElevationContext& c, const std::vector<Box>& words);

  void take(const Box& box) { m_taken.hard.take(box); }
  /// A line that had better not be covered.
  void takeLine(Point a, Point b) { m_taken.soft.takeLine(a, b); }
  /// Lines of words on a plate beside a spot, tied to it by a line; `side` is tried first. Left out
  /// where the page has no room for them.
  void plate(const std::vector<std::string>& lines, Point spot, int side,
             const Colour* colour = nullptr);
  void plate(const std::string& words, Point spot, int side, const Colour* colour = nullptr) {
    plate(std::vector{words}, spot, side, colour);
  }
  /// Words from there on, left out where something stands.
  void words(const std::string& text, Point left_middle);

 private:
  double cost(const Box& box, Point spot, int way) const;

  Sketch& m_sketch;
  const ElevationContext& m_c;
  Taken m_taken;
  std::vector<Box> m_words;
};

}  // namespace sumpwright::drawing
