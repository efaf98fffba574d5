#include "files/import/Outline.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::files {

namespace {

using base::Message;
using geometry::Point;
using geometry::Polygon;

/// Corners in a row that may be left out as straight: bounds the time for lines drawn dot by dot.
constexpr std::size_t kMostIdle = 100;
/// Told apart; further ones are counted together.
constexpr std::size_t kMostReasons = 40;
/// Looked at for crossings, which takes the square of their corners in time.
constexpr std::size_t kMostLookedAt = 500;

bool allNear(const Polygon& points, std::size_t from, std::size_t to, const geometry::Segment& s) {
  for (std::size_t i = from; i < to; ++i) {
    if (geometry::distance(points[i], s) > kCornerTolerance_m) return false;
  }
  return true;
}

Polygon withoutRepeatedCorners(const Polygon& ring) {
  Polygon kept;
  for (const Point p : ring) {
    if (kept.empty() || distance(kept.back(), p) > kCornerTolerance_m) kept.push_back(p);
  }
  while (kept.size() > 1 && distance(kept.front(), kept.back()) <= kCornerTolerance_m) {
    kept.pop_back();
  }
  return kept;
}

double longestSideOfBox(const Polygon& ring) {
  const auto [left, right] =
      std::minmax_element(ring.begin(), ring.end(), [](Point a, Point b) { return a.x < b.x; });
  const auto [low, high] =
      std::minmax_element(ring.begin(), ring.end(), [](Point a, Point b) { return a.y < b.y; });
  return std::max(right->x - left->x, high->y - low->y);
}

bool finiteRing(const Polygon& ring) {
  return std::all_of(ring.begin(), ring.end(),
                     [](Point p) { return std::isfinite(p.x) && std::isfinite(p.y); });
}

void turnTo(Polygon& ring, bool counter_clockwise) {
  if ((geometry::signedArea(ring) > 0) != counter_clockwise) std::reverse(ring.begin(), ring.end());
}

/// Why a ring cannot be the outer one, but for crossings; an empty id where it can.
Message reasonAgainst(const Polygon& ring) {
  if (ring.size() < 3) return Message("import.ring.no-area");
  if (ring.size() > kMostCorners) {
    return {"import.ring.many-corners",
            {base::count("most", static_cast<std::int64_t>(kMostCorners))}};
  }
  if (longestSideOfBox(ring) > kLargestOutline_m) {
    return {"import.ring.large", {base::metres("most", kLargestOutline_m)}};
  }
  if (std::abs(geometry::signedArea(ring)) < kSmallestOutline_m2) {
    return Message("import.ring.small",
                   {{"least", base::Quantity{kSmallestOutline_m2, base::Unit::squareMetre}}});
  }
  return {};
}

void roundTo(Polygon& ring) {
  for (Point& p : ring) {
    p = {std::round(p.x / kOutlineGrid_m) * kOutlineGrid_m,
         std::round(p.y / kOutlineGrid_m) * kOutlineGrid_m};
  }
}

void moveBy(Polygon& ring, geometry::Vec by) {
  for (Point& p : ring) p = p + by;
  roundTo(ring);  // what subtracting left behind the last digit
}

/// Puts the first outline's lower left corner at {0, 0}.
void moveToCorner(ImportedOutlines& imported) {
  if (imported.outlines.empty()) return;
  Point low = imported.outlines.front().outer.front();
  for (const Point p : imported.outlines.front().outer) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
  }
  for (Outline& outline : imported.outlines) {
    moveBy(outline.outer, Point{} - low);
    for (Polygon& hole : outline.holes) moveBy(hole, Point{} - low);
  }
  imported.origin = low;
}

/// Whether a hole lies within the outline: two square centimetres beyond are rounding.
bool liesWithin(const Polygon& hole, const Polygon& outer) {
  constexpr double kRounding_m2 = 2e-4;
  return geometry::areaOutside(hole, outer) < kRounding_m2;
}

std::optional<std::size_t> smallestAround(const std::vector<Outline>& outlines, std::size_t i) {
  for (std::size_t j = i; j-- > 0;) {
    if (geometry::contains(outlines[j].outer, outlines[i].outer.front())) return j;
  }
  return std::nullopt;
}

}  // namespace

Polygon withoutIdleCorners(const Polygon& ring) {
  const Polygon all = withoutRepeatedCorners(ring);
  const std::size_t n = all.size();
  // From the lowest corner on, the leftmost of those: no straight side runs through it.
  const auto lowest = std::min_element(all.begin(), all.end(), [](Point a, Point b) {
    return std::pair(a.y, a.x) < std::pair(b.y, b.x);
  });
  const auto start = static_cast<std::size_t>(lowest - all.begin());
  Polygon turned = all;
  std::rotate(turned.begin(), turned.begin() + (lowest - all.begin()), turned.end());
  std::vector<std::size_t> kept;  // in `turned`
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t last = kept.empty() ? 0 : kept.back();
    const bool is_idle = i > 0 && i - last <= kMostIdle &&
                         allNear(turned, last + 1, i + 1, {turned[last], turned[(i + 1) % n]});
    if (!is_idle) kept.push_back(i);
  }
  if (kept.size() < 3) return {};
  // In the order of the file again, which is the order someone drew it in.
  for (std::size_t& i : kept) i = (i + start) % n;
  std::sort(kept.begin(), kept.end());
  Polygon result;
  for (const std::size_t i : kept) result.push_back(all[i]);
  return result;
}

void OutlineList::leaveOut(const Message& reason, std::int64_t n) {
  if (n <= 0) return;
  auto known = std::find(m_reasons.begin(), m_reasons.end(), reason);
  if (known == m_reasons.end() && m_reasons.size() >= kMostReasons) {
    const Message others("import.others");
    known = std::find(m_reasons.begin(), m_reasons.end(), others);
    if (known == m_reasons.end()) {
      m_counts.push_back(0);
      known = m_reasons.insert(known, others);
    }
  }
  if (known == m_reasons.end()) {
    m_reasons.push_back(reason);
    m_counts.push_back(n);
  } else {
    m_counts[static_cast<std::size_t>(known - m_reasons.begin())] += n;
  }
}

void OutlineList::add(const Polygon& outer, const std::vector<Polygon>& holes,
                      const std::string& name) {
  if (!finiteRing(outer)) return leaveOut(Message("import.ring.no-area"));
  Outline outline{withoutIdleCorners(outer), {}, name, 0.0, {}};
  const Message reason = reasonAgainst(outline.outer);
  if (!reason.id.empty()) return leaveOut(reason);
  turnTo(outline.outer, true);
  roundTo(outline.outer);
  outline.area_m2 = geometry::signedArea(outline.outer);
  for (const Polygon& hole : holes) {
    if (outline.holes.size() == kMostHoles) {
      leaveOut(
          {"import.ring.many-holes", {base::count("most", static_cast<std::int64_t>(kMostHoles))}});
      continue;
    }
    Polygon clean = finiteRing(hole) ? withoutIdleCorners(hole) : Polygon{};
    if (clean.size() < 3 || clean.size() > kMostCorners) {
      leaveOut(Message("import.ring.hole"));
      continue;
    }
    turnTo(clean, false);
    roundTo(clean);
    outline.holes.push_back(std::move(clean));
  }
  m_found.push_back(std::move(outline));
}

ImportedOutlines OutlineList::finish() && {
  const auto larger = [](const Outline& a, const Outline& b) { return a.area_m2 > b.area_m2; };
  std::stable_sort(m_found.begin(), m_found.end(), larger);
  ImportedOutlines result;
  std::size_t looked_at = 0;
  for (Outline& outline : m_found) {
    if (result.outlines.size() == kMostOutlines || ++looked_at > kMostLookedAt) {
      leaveOut(
          {"import.ring.many", {base::count("most", static_cast<std::int64_t>(kMostOutlines))}});
      continue;
    }
    if (geometry::firstSelfContact(outline.outer)) {
      leaveOut(Message("import.ring.crosses-itself"));
      continue;
    }
    const auto unusable = [&](const Polygon& hole) {
      return geometry::firstSelfContact(hole) || !liesWithin(hole, outline.outer);
    };
    leaveOut(Message("import.ring.hole"),
             static_cast<std::int64_t>(std::erase_if(outline.holes, unusable)));
    for (const Polygon& hole : outline.holes) outline.area_m2 += geometry::signedArea(hole);
    result.outlines.push_back(std::move(outline));
  }
  std::stable_sort(result.outlines.begin(), result.outlines.end(), larger);
  for (std::size_t i = 0; i < result.outlines.size(); ++i) {
    result.outlines[i].within = smallestAround(result.outlines, i);
  }
  moveToCorner(result);
  for (std::size_t i = 0; i < m_reasons.size(); ++i) {
    m_reasons[i].args.push_back(base::count("n", m_counts[i]));
  }
  result.left_out = std::move(m_reasons);
  return result;
}

}  // namespace sumpwright::files
