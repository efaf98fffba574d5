#include <algorithm>

#include "geometry/Shapes.h"
#include "plan/Checks.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

std::string pointerToRing(std::size_t ring) { return at("/plan/rings", ring); }

bool checkEdges(const Ring& ring, const std::string& pointer, ProblemList& problems) {
  bool sound = true;
  for (std::size_t i = 0; i < edgeCount(ring); ++i) {
    const double length = length_m(edgeOf(ring, i));
    if (length >= kShortestEdge_m) continue;
    sound = false;
    problems.add("plan.ring.short-edge", at(pointer + "/corners_m", i),
                 {base::millimetres("length", 1000.0 * length),
                  base::millimetres("least", 1000.0 * kShortestEdge_m)});
  }
  return sound;
}

/// Crossings of an open ring are only asked for once it is closed: its last edge is not there yet.
bool checkShape(const Ring& ring, bool outer, const std::string& pointer, ProblemList& problems) {
  if (const auto contact = geometry::firstSelfContact(ring.corners)) {
    problems.add("plan.ring.self-contact", pointer + "/corners_m",
                 {base::metres("x", contact->x), base::metres("y", contact->y)});
    return false;
  }
  if ((geometry::signedArea(ring.corners) > 0.0) == outer) return true;
  problems.add(outer ? "plan.ring.turned" : "plan.courtyard.turned", pointer + "/corners_m");
  return false;
}

bool checkRing(const Ring& ring, std::size_t index, ProblemList& problems) {
  const std::string pointer = pointerToRing(index);
  if (!ring.closed) {
    problems.add("plan.ring.open", pointer + "/closed");
    checkEdges(ring, pointer, problems);
    return false;
  }
  if (ring.corners.size() < 3) {
    problems.add("plan.ring.corners", pointer + "/corners_m",
                 {base::count("corners", static_cast<std::int64_t>(ring.corners.size()))});
    return false;
  }
  const bool edges = checkEdges(ring, pointer, problems);
  return checkShape(ring, index == 0, pointer, problems) && edges;
}

bool outlinesMeet(const Ring& a, const Ring& b) {
  if (geometry::boxesApart(a.corners, b.corners)) return false;
  for (std::size_t i = 0; i < edgeCount(a); ++i) {
    const geometry::Segment edge = edgeOf(a, i);
    for (std::size_t j = 0; j < edgeCount(b); ++j) {
      if (geometry::meet(edge, edgeOf(b, j))) return true;
    }
  }
  return false;
}

/// Of two simple rings whose outlines do not meet, one lies wholly inside the other or they are
/// apart; one corner tells.
bool liesInside(const Ring& inner, const Ring& outer) {
  return geometry::contains(outer.corners, inner.corners.front());
}

void checkCourtyards(const Plan& plan, CheckedRings& checked, ProblemList& problems) {
  std::vector<std::size_t> sound;
  for (const std::size_t c : checked.courtyards) {
    const Ring& court = plan.rings[c];
    if (checked.outer_sound &&
        (outlinesMeet(court, plan.rings[0]) || !liesInside(court, plan.rings[0]))) {
      problems.add("plan.courtyard.outside", pointerToRing(c));
      continue;
    }
    const auto clashes = [&](std::size_t other) {
      const Ring& ring = plan.rings[other];
      return outlinesMeet(court, ring) || liesInside(court, ring) || liesInside(ring, court);
    };
    const auto clash = std::find_if(sound.begin(), sound.end(), clashes);
    if (clash != sound.end()) {
      problems.add("plan.courtyard.overlap", pointerToRing(c),
                   {base::count("other", static_cast<std::int64_t>(*clash))});
      continue;
    }
    sound.push_back(c);
  }
  checked.courtyards = sound;
}

}  // namespace

CheckedRings checkRings(const Plan& plan, ProblemList& problems) {
  CheckedRings checked;
  if (plan.rings.empty()) problems.add("plan.ring.none", "/plan/rings");
  for (std::size_t r = 0; r < plan.rings.size(); ++r) {
    if (!checkRing(plan.rings[r], r, problems)) continue;
    if (r == 0) {
      checked.outer_sound = true;
    } else {
      checked.courtyards.push_back(r);
    }
  }
  checkCourtyards(plan, checked, problems);
  return checked;
}

}  // namespace sumpwright::plan
