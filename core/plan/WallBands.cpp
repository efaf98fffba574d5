#include "plan/WallBands.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/Distance.h"
#include "plan/Checks.h"
#include "plan/OnWalls.h"
#include "plan/PlanGeometry.h"
#include "plan/WallThickness.h"

namespace sumpwright::plan {

namespace {

using geometry::Polygon;
using geometry::Segment;
using geometry::Vec;

constexpr double kOverhang_m = 0.001;  // contract (own figure)
constexpr double kNoTurn = 1e-6;       // sine of an angle nobody measures (own figure)
constexpr double kFurthestMitre =
    4.0;  // times the thickness: a very sharp corner is cut (own figure)

Polygon quad(const Segment& line, double to_left, double to_right) {
  const Vec side = geometry::left(directionOf(line));
  return {line.a - to_right * side, line.b - to_right * side, line.b + to_left * side,
          line.a + to_left * side};
}

/// What is missing between two bands where the line turns: on the side they turn away from.
/// `in`, `out`: thickness there of the band before and after.
void fillCorner(Vec u, Vec v, Point corner, double in, double out, Vec side_in, Vec side_out,
                std::vector<Polygon>& bands) {
  const double turn = geometry::cross(u, v);
  if (std::abs(turn) < kNoTurn || in <= 0.0 || out <= 0.0) return;
  const Point a = corner + in * side_in;
  const Point b = corner + out * side_out;
  const double t = geometry::cross(b - a, v) / turn;
  const Point mitre = a + t * u;
  const bool far = geometry::distance(mitre, corner) > kFurthestMitre * std::max(in, out);
  bands.push_back(far ? Polygon{corner, a, b} : Polygon{corner, a, mitre, b});
}

/// How far to lengthen a wall at `end`, running in direction `along`, so that it reaches past the
/// middle of the nearest other wall within reach; 0 where there is none.
class Reach {
 public:
  Reach(const Job& job, double reach_m) : m_job(job), m_reach(reach_m) {}

  double operator()(const InnerWall& wall, Point end, Vec along) const {
    double longest = 0.0;
    for (const InnerWall& other : m_job.plan.inner_walls) {
      if (&other == &wall) continue;
      for (std::size_t i = 1; i < other.line_m.size(); ++i) {
        const Segment line{other.line_m[i - 1], other.line_m[i]};
        longest = std::max(longest, to(line, other.thickness_m / 2.0, end, along));
      }
    }
    for (const Ring& ring : m_job.plan.rings) {
      for (std::size_t e = 0; e < edgeCount(ring) && e < ring.walls.size(); ++e) {
        const double thick = thicknessTaken_m(ring, e, m_job.house);
        const double away = geometry::distance(end, edgeOf(ring, e)) - thick;
        // One that ends right on the face goes into the wall too: two edges on one line are not
        // cut.
        if (std::abs(away) <= m_reach) longest = std::max(longest, std::max(0.0, away) + m_reach);
      }
    }
    return longest;
  }

 private:
  /// To the far face of a wall whose near face is within reach.
  double to(const Segment& line, double half, Point end, Vec along) const {
    if (geometry::distance(end, line) > half + m_reach) return 0.0;
    const Vec side = geometry::left(directionOf(line));
    const double toward = geometry::dot(along, side);
    if (std::abs(toward) < 0.3) return m_reach;  // runs on along it: own figure, some 17 degrees
    const double off = geometry::dot(line.a - end, side);
    return std::max(0.0, off / toward + half / std::abs(toward));
  }

  const Job& m_job;
  double m_reach;
};

void addBands(const InnerWall& wall, const Reach& reach, std::vector<Polygon>& bands) {
  std::vector<Point> line;
  for (const Point p : wall.line_m) {
    if (line.empty() || geometry::distance(line.back(), p) >= kShortestEdge_m) line.push_back(p);
  }
  const double half = wall.thickness_m / 2.0;
  if (line.size() < 2 || !(half > 0.0)) return;
  const Vec first = directionOf({line[1], line[0]});
  const Vec last = directionOf({line[line.size() - 2], line.back()});
  line.front() = line.front() + reach(wall, wall.line_m.front(), first) * first;
  line.back() = line.back() + reach(wall, wall.line_m.back(), last) * last;
  // A wall that comes back to its start has a corner there, too.
  const bool round = line.size() > 3 &&
                     geometry::distance(wall.line_m.front(), wall.line_m.back()) < kShortestEdge_m;
  for (std::size_t i = 1; i < line.size(); ++i) {
    bands.push_back(quad({line[i - 1], line[i]}, half, half));
    const bool at_end = i + 1 == line.size();
    if (at_end && !round) continue;
    const Vec u = directionOf({line[i - 1], line[i]});
    const Vec v = at_end ? directionOf({line[0], line[1]}) : directionOf({line[i], line[i + 1]});
    const double away = geometry::cross(u, v) > 0.0 ? -1.0 : 1.0;
    fillCorner(u, v, line[i], half, half, away * geometry::left(u), away * geometry::left(v),
               bands);
  }
}

}  // namespace

std::vector<Polygon> bandsOfRing(const Job& job, const Ring& ring) {
  std::vector<Polygon> bands;
  const std::size_t count = edgeCount(ring);
  for (std::size_t i = 0; i < count && i < ring.walls.size(); ++i) {
    const double thick = thicknessTaken_m(ring, i, job.house);
    bands.push_back(quad(edgeOf(ring, i), thick, kOverhang_m));
    const std::size_t next = (i + 1) % count;
    const Vec u = directionOf(edgeOf(ring, i));
    const Vec v = directionOf(edgeOf(ring, next));
    if (geometry::cross(u, v) >= 0.0 || next >= ring.walls.size()) continue;
    // The house is on the left: at a corner that stands in, the inner faces part.
    fillCorner(u, v, edgeOf(ring, next).a, thick, thicknessTaken_m(ring, next, job.house),
               geometry::left(u), geometry::left(v), bands);
  }
  return bands;
}

std::vector<Polygon> bandsOfInnerWalls(const Job& job, double reach_m) {
  std::vector<Polygon> bands;
  const Reach reach(job, reach_m);
  for (const InnerWall& wall : job.plan.inner_walls) addBands(wall, reach, bands);
  return bands;
}

}  // namespace sumpwright::plan
