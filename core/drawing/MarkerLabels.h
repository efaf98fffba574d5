#pragma once
// Where the words of a marker stand: each of several places costs what it covers, the cheapest
// wins.

#include "drawing/PlanContext.h"

namespace sumpwright::drawing {

/// What labels must not cover, and what they had better not.
struct Taken {
  Occupied hard;  ///< grip, tags, other labels
  Occupied soft;  ///< walls, bands, lines
};

/// On which side of the wall a label had better stand.
enum class Side { inside, outside };

/// Whose words they are: nearer to their own line than to any other, where there is such a place.
struct Beside {
  geometry::Segment own;
  std::vector<geometry::Segment> others;
};

/// Words that stand together, one line under the other.
using MarkerLabel = std::vector<Text>;

/// A line of a label before it has a place.
struct LabelLine {
  std::string text;
  Font font;
};

/// A label on one plate of paper, at the place that covers least; earlier tries win.
void plateLabel(Sketch& sketch, const PlanContext& c, Taken& taken, const Voice& voice,
                const std::vector<MarkerLabel>& tries, Side side = Side::outside,
                const Beside& beside = {});

/// Places on both sides along a line, from its middle outwards, nearest first.
std::vector<MarkerLabel> besideLine(Point a, Point b, const std::vector<LabelLine>& lines,
                                    const Colour& colour, const Voice& voice);

/// Places in the line itself, which stops for the words, where it is long enough; then beside it.
std::vector<MarkerLabel> inLine(Point a, Point b, const LabelLine& words, const Colour& colour,
                                const Voice& voice);

}  // namespace sumpwright::drawing
