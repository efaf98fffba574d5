#include "drawing/ElevationPlates.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace sumpwright::drawing {
namespace {

constexpr double kLead_mm = 1.2;     // between two lines of a plate
constexpr double kOffPage = 1000.0;  // cost of a place that is none

const Font kPlateFont{type::second.size_pt, true, false};

/// Where the line to a plate ends.
Point nearEnd(const Box& plate, int way) {
  return {way > 0 ? plate.left : plate.right, plate.centre().y};
}

}  // namespace

ElevationPlates::ElevationPlates(Sketch& sketch, const ElevationContext& c,
                                 const std::vector<Box>& words)
    : m_sketch(sketch), m_c(c), m_words(words) {
  for (const Box& box : words) m_taken.hard.take(box);
  if (c.view.strip) return;
  for (const DrawnOpening& o : drawnOpenings(c)) m_taken.soft.take(o.box);
}

double ElevationPlates::cost(const Box& box, Point spot, int way) const {
  const Box page{m_c.view.label_mm, 0.3, m_c.view.width_mm - 0.3, m_c.namesMiddle() - 2.0};
  if (!holds(page, box)) return kOffPage;
  const Box with_edge = grown(box, 0.4);
  const Point end = nearEnd(box, way);
  const bool line_over_words = std::any_of(
      m_words.begin(), m_words.end(), [&](const Box& words) { return crosses(words, spot, end); });
  return (m_taken.hard.isFree(with_edge) ? 0.0 : 40.0) + (line_over_words ? 20.0 : 0.0) +
         std::min(6.0, 2.0 * m_taken.soft.clashes(with_edge)) +
         0.15 * geometry::distance(spot, end);
}

void ElevationPlates::plate(const std::vector<std::string>& lines, Point spot, int side,
                            const Colour* colour) {
  const double cap = m_c.voice.capHeight_mm(kPlateFont);
  double width = 0.0;
  for (const std::string& line : lines) {
    width = std::max(width, m_c.voice.width_mm(line, kPlateFont));
  }
  const double step = cap + kLead_mm;
  const double half_w = 0.5 * width + 1.6;
  const double half_h = 0.5 * (step * static_cast<double>(lines.size()) - kLead_mm) + 1.4;
  Box best{};
  double least = kOffPage;
  int away = 0;
  for (const double off : {6.0, 11.0, 17.0, 24.0}) {
    for (const int way : {side, -side}) {
      for (const double up : {0.0, -4.5, 4.5, -9.0, 9.0, -14.0, 14.0, -20.0}) {
        const Box box = around({spot.x + way * (off + half_w), spot.y + up}, half_w, half_h);
        const double here = cost(box, spot, way) + (way == side ? 0.0 : 0.5);
        if (here >= least) continue;
        least = here;
        best = box;
        away = way;
      }
    }
  }
  if (away == 0) return;
  take(best);
  m_words.push_back(best);
  const Theme& theme = m_c.theme;
  m_sketch.line(spot, nearEnd(best, away), solid(theme.ink2, 1.1));
  const auto box = roundedRectangle(best.left, best.top, best.width(), best.height(), 1.0);
  m_sketch.fill(box, theme.raised);
  m_sketch.outline(box, solid(theme.control_edge, 1.0));
  double base = best.top + 1.4 + cap;
  for (const std::string& line : lines) {
    m_sketch.text({best.centre().x, base}, line, kPlateFont,
                  colour == nullptr ? theme.ink : *colour, HAlign::centre);
    base += step;
  }
}

void ElevationPlates::words(const std::string& text, Point left_middle) {
  const double cap = m_c.voice.capHeight_mm(type::small);
  const double width = m_c.voice.width_mm(text, type::small);
  const Box box{left_middle.x - 0.4, left_middle.y - cap / 2.0 - 0.5, left_middle.x + width + 0.4,
                left_middle.y + cap / 2.0 + 0.7};
  if (!m_taken.hard.isFree(box) || box.right > m_c.view.width_mm) return;
  take(box);
  m_words.push_back(box);
  m_sketch.fill(rectangle(box.left, box.top, box.width(), box.height()), m_c.theme.room_dwelling);
  m_sketch.text({left_middle.x, left_middle.y + cap / 2.0}, text, type::small, m_c.theme.ink);
}

}  // namespace sumpwright::drawing
