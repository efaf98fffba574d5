#pragma once
// Boxes on the page: where a label stands, what is taken already, what lies in view.

#include <vector>

#include "drawing/DrawList.h"
#include "drawing/Voice.h"

namespace sumpwright::drawing {

struct Box {
  double left = 0.0;
  double top = 0.0;
  double right = 0.0;
  double bottom = 0.0;
  double width() const { return right - left; }
  double height() const { return bottom - top; }
  Point centre() const { return {(left + right) / 2.0, (top + bottom) / 2.0}; }
};

Box around(Point centre, double half_width, double half_height);
Box grown(const Box& box, double by);
Box join(const Box& a, const Box& b);
bool overlap(const Box& a, const Box& b);
bool holds(const Box& outer, const Box& inner);
bool holds(const Box& box, Point p);
Box boxOf(const std::vector<Point>& points);
/// From a little above the capitals to the descenders, about any turn.
Box boxOf(const Text& text, const Voice& voice);
/// Of any shape, half the line width taken in.
Box boxOf(const Shape& shape, const Voice& voice);
/// Of every text of a list.
std::vector<Box> wordsOf(const DrawList& list, const Voice& voice);
/// Length of the segment that runs through the box.
bool crosses(const Box& box, Point a, Point b);

/// What stands where already; labels ask before they settle.
class Occupied {
 public:
  void take(const Box& box) { m_boxes.push_back(box); }
  void takeLine(Point a, Point b);
  bool isFree(const Box& box) const;
  /// Number of taken boxes that overlap.
  int clashes(const Box& box) const;

 private:
  std::vector<Box> m_boxes;
};

}  // namespace sumpwright::drawing
