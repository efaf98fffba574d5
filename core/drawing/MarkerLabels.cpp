#include "drawing/MarkerLabels.h"

#include <cmath>
#include <limits>

namespace sumpwright::drawing {
namespace {

double labelCost(const PlanContext& c, const Taken& taken, const Box& box, Side side) {
  if (!holds(c.page, box)) return 100.0;
  return (taken.hard.isFree(box) ? 0.0 : 12.0) + (taken.soft.isFree(box) ? 0.0 : 2.0) +
         (c.inHouse(box.centre()) == (side == Side::inside) ? 0.0 : 2.5);
}

}  // namespace

void plateText(Sketch& sketch, const PlanContext& c, Taken& taken, const Voice& voice,
               const std::vector<Text>& tries, Side side) {
  const Text* chosen = &tries.front();
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < tries.size(); ++i) {
    const double here = labelCost(c, taken, grown(boxOf(tries[i], voice), 0.3), side) +
                        0.05 * static_cast<double>(i);
    if (here < least) {
      least = here;
      chosen = &tries[i];
    }
  }
  const Box plate = grown(boxOf(*chosen, voice), 0.35);
  const bool indoors = c.inHouse(plate.centre());
  sketch.fill(roundedRectangle(plate.left, plate.top, plate.width(), plate.height(), 0.5),
              indoors ? c.theme.room_dwelling : c.theme.paper);
  sketch.text(chosen->at, chosen->text, chosen->font, chosen->colour, chosen->align,
              chosen->turn_deg);
  taken.hard.take(plate);
}

std::vector<Text> besideLine(Point a, Point b, const std::string& words, const Font& font,
                             const Colour& colour, const Voice& voice) {
  std::vector<Text> tries;
  const Vec along = unit(b - a);
  const double cap = voice.capHeight_mm(font);
  const double half = voice.width_mm(words, font) / 2.0;
  for (double share : {0.5, 0.35, 0.65, 0.2, 0.8, 1.0}) {
    for (double away : {1.0, -1.0, 1.8, -1.8, 2.6, -2.6}) {
      const Vec n = geometry::left(along);
      // Far enough that the level words clear the slant line.
      const double reach = std::abs(n.x) * half + std::abs(n.y) * cap / 2.0 + 0.9;
      const Point p = geometry::lerp(a, b, share) + away * reach * n;
      tries.push_back({{p.x, p.y + cap / 2.0}, words, font, colour, HAlign::centre, 0.0});
    }
  }
  return tries;
}

}  // namespace sumpwright::drawing
