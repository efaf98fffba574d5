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

/// A text on a plate of paper, at the place that covers least; earlier tries win.
void plateText(Sketch& sketch, const PlanContext& c, Taken& taken, const Voice& voice,
               const std::vector<Text>& tries, Side side = Side::outside);

/// Places on both sides along a line, from its middle outwards, nearest first.
std::vector<Text> besideLine(Point a, Point b, const std::string& words, const Font& font,
                             const Colour& colour, const Voice& voice);

/// Places in the line itself, which stops for the words, where it is long enough; then beside it.
std::vector<Text> inLine(Point a, Point b, const std::string& words, const Font& font,
                         const Colour& colour, const Voice& voice);

}  // namespace sumpwright::drawing
