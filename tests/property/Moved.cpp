#include "property/Moved.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/Point.h"

namespace sumpwright::property {

using geometry::Point;
using plan::Job;
using plan::OnWall;
using plan::Ring;

namespace {

void everyPoint(Job& job, const std::function<Point(Point)>& change) {
  const auto all = [&](std::vector<Point>& points) {
    std::transform(points.begin(), points.end(), points.begin(), change);
  };
  plan::Plan& p = job.plan;
  for (auto& ring : p.rings) all(ring.corners);
  for (auto& s : p.services) all(s.run_m);
  for (auto& room : p.rooms) all(room.outline_m);
  for (auto& zone : p.floor_zones) all(zone.outline_m);
  for (auto& radiator : p.radiators) all(radiator.line_m);
  for (auto& pipe : p.heating_pipes) all(pipe.line_m);
  for (auto& thing : p.outside) all(thing.points_m);
  for (auto& wall : p.inner_walls) all(wall.line_m);
  for (auto& wall : p.rising_walls) all(wall.line_m);
  for (auto& fitting : p.fittings) fitting.at_m = change(fitting.at_m);
  for (auto& supply : p.supplies) supply.at_m = change(supply.at_m);
  for (auto& hole : p.test_holes) hole.at_m = change(hole.at_m);
}

/// Everything anchored to a wall, with its width.
void everyAnchor(Job& job, const std::function<void(OnWall&, double width)>& change) {
  for (auto& opening : job.plan.openings) change(opening.at, opening.width_m);
  for (auto& service : job.plan.services) {
    if (service.entry) change(*service.entry, 0.0);
  }
  for (auto& feature : job.plan.wall_features) change(feature.at, feature.width_m);
  for (auto& radiator : job.plan.radiators) {
    if (radiator.on) change(*radiator.on, radiator.width_m);
  }
}

double lengthOf(const Ring& ring, std::size_t edge) {
  return geometry::distance(ring.corners[edge], ring.corners[(edge + 1) % ring.corners.size()]);
}

double startOf(const Ring& ring, std::size_t edge) {
  double s = 0.0;
  for (std::size_t i = 0; i < edge; ++i) s += lengthOf(ring, i);
  return s;
}

/// Corner letters of the houses here stay short of ZZ.
std::string letters(std::size_t n) {
  const char last = static_cast<char>('A' + n % 26);
  return n < 26 ? std::string(1, last) : std::string(1, static_cast<char>('A' + n / 26 - 1)) + last;
}

std::size_t numberOf(const std::string& name) {
  std::size_t n = 0;
  for (const char c : name) n = 26 * n + static_cast<std::size_t>(c - 'A' + 1);
  return n - 1;
}

/// Corner ids through a renumbering of the corners of each ring.
std::function<std::string(const std::string&)> renaming(
    const Job& job, std::function<std::size_t(std::size_t ring, std::size_t corner)> number) {
  std::vector<std::size_t> sizes;
  for (const Ring& ring : job.plan.rings) sizes.push_back(ring.corners.size());
  return [sizes, number](const std::string& thing) {
    const std::string prefix = "corner.";
    if (!thing.starts_with(prefix)) return thing;
    std::size_t n = numberOf(thing.substr(prefix.size()));
    std::size_t before = 0;
    std::size_t ring = 0;
    for (; n >= sizes[ring]; ++ring) {
      n -= sizes[ring];
      before += sizes[ring];
    }
    return prefix + letters(before + number(ring, n));
  };
}

}  // namespace

Moved turnedAndMoved(const Job& job, double turn_rad, geometry::Vec by) {
  Moved moved;
  moved.job = job;
  const double c = std::cos(turn_rad);
  const double s = std::sin(turn_rad);
  everyPoint(moved.job, [&](Point p) {
    return Point{c * p.x - s * p.y + by.x, s * p.x + c * p.y + by.y};
  });
  moved.job.plan.north_deg -= turn_rad * 180.0 / std::numbers::pi;
  moved.chainage = [](int, double at) { return at; };
  moved.thing = [](const std::string& thing) { return thing; };
  return moved;
}

Moved mirrored(const Job& job) {
  Moved moved;
  moved.job = job;
  everyPoint(moved.job, [](Point p) { return Point{-p.x, p.y}; });
  // Corner 0 stays the first: corner k becomes corner (n - k) mod n, edge i edge n - 1 - i.
  for (Ring& ring : moved.job.plan.rings) {
    for (std::size_t i = 0; i < ring.walls.size(); ++i) {
      for (auto& g : ring.walls[i].ground_points) g.offset_m = lengthOf(ring, i) - g.offset_m;
    }
    std::reverse(ring.corners.begin() + 1, ring.corners.end());
    std::reverse(ring.walls.begin(), ring.walls.end());
  }
  const auto rings = job.plan.rings;
  everyAnchor(moved.job, [&](OnWall& at, double width) {
    const Ring& ring = rings[static_cast<std::size_t>(at.ring)];
    at.offset_m = lengthOf(ring, static_cast<std::size_t>(at.edge)) - at.offset_m - width;
    at.edge = static_cast<int>(ring.corners.size()) - 1 - at.edge;
  });
  moved.chainage = [rings](int ring, double s) {
    const Ring& r = rings[static_cast<std::size_t>(ring)];
    return startOf(r, r.corners.size()) - s;
  };
  moved.thing = renaming(job, [rings](std::size_t ring, std::size_t corner) {
    const std::size_t n = rings[ring].corners.size();
    return (n - corner) % n;
  });
  return moved;
}

Moved begunAt(const Job& job, int ring, int first) {
  Moved moved;
  moved.job = job;
  Ring& changed = moved.job.plan.rings[static_cast<std::size_t>(ring)];
  std::rotate(changed.corners.begin(), changed.corners.begin() + first, changed.corners.end());
  std::rotate(changed.walls.begin(), changed.walls.begin() + first, changed.walls.end());
  const int n = static_cast<int>(changed.corners.size());
  everyAnchor(moved.job, [&](OnWall& at, double) {
    if (at.ring == ring) at.edge = (at.edge - first + n) % n;
  });
  const Ring before = job.plan.rings[static_cast<std::size_t>(ring)];
  const double shift = startOf(before, static_cast<std::size_t>(first));
  const double length = startOf(before, before.corners.size());
  moved.chainage = [ring, shift, length](int of, double s) {
    if (of != ring) return s;
    return s < shift ? s - shift + length : s - shift;
  };
  moved.thing = renaming(job, [ring, first, n](std::size_t of, std::size_t corner) {
    if (static_cast<int>(of) != ring) return corner;
    return static_cast<std::size_t>((static_cast<int>(corner) - first + n) % n);
  });
  return moved;
}

support::TwinFindings renamed(const support::TwinFindings& findings, const Moved& moved) {
  support::TwinFindings result;
  for (support::TwinFinding f : findings) {
    f.thing = moved.thing(f.thing);
    result.insert(std::move(f));
  }
  return result;
}

}  // namespace sumpwright::property
