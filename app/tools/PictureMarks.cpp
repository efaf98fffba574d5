#include "tools/PictureMarks.h"

#include <algorithm>

namespace sumpwright::tools {

using geometry::Point;
using geometry::Vec;

bool TwoPoints::press(Point at, double reach) {
  for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
    if (m_points[i] && geometry::distance(*m_points[i], at) <= reach) {
      m_held = m_current = i;
      return true;
    }
  }
  if (m_points[0] && m_points[1]) return false;
  m_held = m_current = m_points[0] ? 1 : 0;
  m_points[*m_held] = at;
  return true;
}

void TwoPoints::drag(Point at) {
  if (!m_held) return;
  // A drag from the first point draws the line: its other end goes with the pointer.
  if (*m_held == 0 && !m_points[1]) m_held = m_current = 1;
  m_points[*m_held] = at;
}

void TwoPoints::release(double reach) {
  m_held.reset();
  // A press without a way is one point, not a line of no length.
  if (!m_points[0] || !m_points[1]) return;
  if (geometry::distance(*m_points[0], *m_points[1]) > reach) return;
  m_points[1].reset();
  m_current = 0;
}

bool TwoPoints::nudge(Vec by) {
  auto& point = m_points[m_current];
  if (!point) return false;
  point = *point + by;
  return true;
}

std::optional<geometry::Segment> TwoPoints::line() const {
  if (!m_points[0] || !m_points[1] || *m_points[0] == *m_points[1]) return std::nullopt;
  return geometry::Segment{*m_points[0], *m_points[1]};
}

bool FourCorners::press(Point at, double reach) {
  const auto off = [&](Point p) { return geometry::distance(p, at); };
  const auto nearest = std::min_element(m_corners.begin(), m_corners.end(),
                                        [&](Point a, Point b) { return off(a) < off(b); });
  if (off(*nearest) > reach) return false;
  m_held = m_current = static_cast<std::size_t>(nearest - m_corners.begin());
  return true;
}

void FourCorners::drag(Point at) {
  if (m_held) m_corners[*m_held] = at;
}

void FourCorners::nudge(Vec by) { m_corners[m_current] = m_corners[m_current] + by; }

void FourCorners::step(int by) {
  const int count = static_cast<int>(m_corners.size());
  m_current =
      static_cast<std::size_t>(((static_cast<int>(m_current) + by) % count + count) % count);
}

}  // namespace sumpwright::tools
