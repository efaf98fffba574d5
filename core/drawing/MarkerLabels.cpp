#include "drawing/MarkerLabels.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace sumpwright::drawing {
namespace {

double labelCost(const PlanContext& c, const Taken& taken, const Box& box, Side side) {
  if (!holds(c.page, box)) return 100.0;
  const int covered = taken.soft.clashes(box);
  return (taken.hard.isFree(box) ? 0.0 : 12.0) +
         (covered == 0 ? 0.0 : std::min(6.0, 1.6 + 0.4 * covered)) +
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
  const Vec along = unit(b - a);
  const Vec n = geometry::left(along);
  const double length = geometry::distance(a, b);
  const double cap = voice.capHeight_mm(font);
  const double half = voice.width_mm(words, font) / 2.0;
  // Far enough that the level words clear the slant line.
  const double reach = std::abs(n.x) * half + std::abs(n.y) * cap / 2.0 + 0.9;
  std::vector<std::pair<double, Text>> tries;  // by how far from the line's middle
  // Along the line, and past its ends where it is short.
  std::vector<double> asides{0.0};
  for (double share : {0.15, 0.3, 0.5}) {
    asides.push_back(share * length);
    asides.push_back(-share * length);
  }
  for (double past : {4.0, 8.0, 12.0}) {
    asides.push_back(length / 2.0 + past);
    asides.push_back(-length / 2.0 - past);
  }
  const Point middle = geometry::lerp(a, b, 0.5);
  for (double aside : asides) {
    for (double further : {0.0, 1.5, 3.0, 5.0, 7.0}) {
      for (double side : {1.0, -1.0}) {
        const Point p = middle + aside * along + side * (reach + further) * n;
        tries.push_back({further + 0.5 * std::abs(aside),
                         {{p.x, p.y + cap / 2.0}, words, font, colour, HAlign::centre, 0.0}});
      }
    }
  }
  std::stable_sort(tries.begin(), tries.end(),
                   [](const auto& x, const auto& y) { return x.first < y.first; });
  std::vector<Text> out;
  for (auto& [away, text] : tries) out.push_back(std::move(text));
  return out;
}

std::vector<Text> inLine(Point a, Point b, const std::string& words, const Font& font,
                         const Colour& colour, const Voice& voice) {
  std::vector<Text> tries;
  const Vec along = unit(b - a);
  const double cap = voice.capHeight_mm(font);
  const double half = voice.width_mm(words, font) / 2.0;
  // As much of the line as level words take away, and a piece left at each end.
  const double needed = std::min(half / std::max(1e-6, std::abs(along.x)),
                                 cap / 2.0 / std::max(1e-6, std::abs(along.y))) +
                        2.2;
  const double length = geometry::distance(a, b);
  for (double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
    if (std::min(share, 1.0 - share) * length < needed) continue;
    const Point p = geometry::lerp(a, b, share);
    tries.push_back({{p.x, p.y + cap / 2.0}, words, font, colour, HAlign::centre, 0.0});
  }
  for (const Text& beside : besideLine(a, b, words, font, colour, voice)) tries.push_back(beside);
  return tries;
}

}  // namespace sumpwright::drawing
