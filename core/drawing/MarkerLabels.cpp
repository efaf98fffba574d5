#include "drawing/MarkerLabels.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "geometry/Distance.h"

namespace sumpwright::drawing {
namespace {

double labelCost(const PlanContext& c, const Taken& taken, const Box& box, Side side) {
  if (!holds(c.page, box)) return 100.0;
  const int covered = taken.soft.clashes(box);
  return (taken.hard.isFree(box) ? 0.0 : 40.0) +
         (covered == 0 ? 0.0 : std::min(6.0, 1.6 + 0.4 * covered)) +
         (c.inHouse(box.centre()) == (side == Side::inside) ? 0.0 : 2.5);
}

double away(const Box& box, const geometry::Segment& line) {
  return geometry::distanceToArea(
      line,
      {{box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}});
}

/// Words nearer to another's line would be read as the other's.
double strayCost(const Box& box, const Beside& beside) {
  const double own = away(box, beside.own);
  double sum = 0.0;
  for (const geometry::Segment& other : beside.others) sum += away(box, other) <= own ? 8.0 : 0.0;
  return sum;
}

Box boxOfLabel(const MarkerLabel& label, const Voice& voice) {
  Box box = boxOf(label.front(), voice);
  for (const Text& line : label) box = join(box, boxOf(line, voice));
  return box;
}

constexpr double kLabelLead_mm = 1.2;  // between the capitals of a line and the line above

double labelHeight_mm(const std::vector<LabelLine>& lines, const Voice& voice) {
  double sum = -kLabelLead_mm;
  for (const LabelLine& line : lines) sum += kLabelLead_mm + voice.capHeight_mm(line.font);
  return sum;
}

double labelWidth_mm(const std::vector<LabelLine>& lines, const Voice& voice) {
  double most = 0.0;
  for (const LabelLine& line : lines) most = std::max(most, voice.width_mm(line.text, line.font));
  return most;
}

MarkerLabel linesAt(Point centre, const std::vector<LabelLine>& lines, const Colour& colour,
                    const Voice& voice) {
  MarkerLabel label;
  double y = centre.y - labelHeight_mm(lines, voice) / 2.0;
  for (const LabelLine& line : lines) {
    y += voice.capHeight_mm(line.font);
    label.push_back({{centre.x, y}, line.text, line.font, colour, HAlign::centre, 0.0});
    y += kLabelLead_mm;
  }
  return label;
}

}  // namespace

void plateLabel(Sketch& sketch, const PlanContext& c, Taken& taken, const Voice& voice,
                const std::vector<MarkerLabel>& tries, Side side, const Beside& beside) {
  const MarkerLabel* chosen = &tries.front();
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < tries.size(); ++i) {
    const Box box = grown(boxOfLabel(tries[i], voice), 0.3);
    const double here =
        labelCost(c, taken, box, side) + strayCost(box, beside) + 0.05 * static_cast<double>(i);
    if (here < least) {
      least = here;
      chosen = &tries[i];
    }
  }
  const Box plate = grown(boxOfLabel(*chosen, voice), 0.35);
  const bool indoors = c.inHouse(plate.centre());
  sketch.fill(roundedRectangle(plate.left, plate.top, plate.width(), plate.height(), 0.5),
              indoors ? c.theme.room_dwelling : c.theme.paper);
  for (const Text& line : *chosen) {
    sketch.text(line.at, line.text, line.font, line.colour, line.align, line.turn_deg);
  }
  taken.hard.take(plate);
}

std::vector<MarkerLabel> besideLine(Point a, Point b, const std::vector<LabelLine>& lines,
                                    const Colour& colour, const Voice& voice) {
  const double length = geometry::distance(a, b);
  // About a point (the hole is on the thing) as about a level line: else all tries are one.
  const Vec along = length > 1e-6 ? unit(b - a) : Vec{1.0, 0.0};
  const Vec n = geometry::left(along);
  // Far enough that the level words clear the slant line.
  const double reach = std::abs(n.x) * labelWidth_mm(lines, voice) / 2.0 +
                       std::abs(n.y) * labelHeight_mm(lines, voice) / 2.0 + 0.9;
  std::vector<std::pair<double, MarkerLabel>> tries;  // by how far from the line's middle
  // Along the line, and past its ends where it is short.
  std::vector<double> asides{0.0};
  for (double share : {0.15, 0.3, 0.5}) {
    asides.push_back(share * length);
    asides.push_back(-share * length);
  }
  for (double past : {4.0, 8.0, 12.0, 16.0}) {
    asides.push_back(length / 2.0 + past);
    asides.push_back(-length / 2.0 - past);
  }
  const Point middle = geometry::lerp(a, b, 0.5);
  for (double aside : asides) {
    for (double further : {0.0, 1.5, 3.0, 5.0, 7.0, 10.0, 14.0, 18.0}) {
      for (double side : {1.0, -1.0}) {
        const Point p = middle + aside * along + side * (reach + further) * n;
        tries.emplace_back(further + 0.5 * std::abs(aside), linesAt(p, lines, colour, voice));
      }
    }
  }
  std::stable_sort(tries.begin(), tries.end(),
                   [](const auto& x, const auto& y) { return x.first < y.first; });
  std::vector<MarkerLabel> out;
  for (auto& [how_far, label] : tries) out.push_back(std::move(label));
  return out;
}

std::vector<MarkerLabel> inLine(Point a, Point b, const LabelLine& words, const Colour& colour,
                                const Voice& voice) {
  std::vector<MarkerLabel> tries;
  const Vec along = unit(b - a);
  const double cap = voice.capHeight_mm(words.font);
  const double half = voice.width_mm(words.text, words.font) / 2.0;
  // As much of the line as level words take away, and a piece left at each end.
  const double needed = std::min(half / std::max(1e-6, std::abs(along.x)),
                                 cap / 2.0 / std::max(1e-6, std::abs(along.y))) +
                        2.2;
  const double length = geometry::distance(a, b);
  for (double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
    if (std::min(share, 1.0 - share) * length < needed) continue;
    tries.push_back(linesAt(geometry::lerp(a, b, share), {words}, colour, voice));
  }
  for (const MarkerLabel& beside : besideLine(a, b, {words}, colour, voice))
    tries.push_back(beside);
  return tries;
}

}  // namespace sumpwright::drawing
