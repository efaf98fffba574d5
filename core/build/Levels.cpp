#include "build/Levels.h"

#include <algorithm>

#include "plan/Assumed.h"

namespace sumpwright::build {

double GroundLine::at(double along_m) const {
  if (along_m <= points.front().along_m) return points.front().level_m;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const At& a = points[i - 1];
    const At& b = points[i];
    if (along_m > b.along_m) continue;
    const double t = (along_m - a.along_m) / (b.along_m - a.along_m);
    return a.level_m + t * (b.level_m - a.level_m);
  }
  return points.back().level_m;
}

GroundLine groundAlong(const rules::Site& site, const perimeter::Edge& edge) {
  const plan::Wall& wall = site.perimeter.wall(edge);
  GroundLine line;
  for (const plan::GroundPoint& p : wall.ground_points) {
    line.points.push_back({p.offset_m, p.level_m});
  }
  std::stable_sort(line.points.begin(), line.points.end(),
                   [](const auto& a, const auto& b) { return a.along_m < b.along_m; });
  if (!line.points.empty()) return line;
  const auto& level = wall.ground_level_m ? wall.ground_level_m : site.job.house.ground_level_m;
  line.assumed = !level;
  line.points.push_back({0.0, level.value_or(plan::kAssumedGround_m)});
  return line;
}

double groundAt(const rules::Site& site, perimeter::Place place) {
  const perimeter::Edge& edge = site.perimeter.edgeAt(place);
  return groundAlong(site, edge).at(site.perimeter.wrapped(place).chainage_m - edge.start_m);
}

std::optional<double> eavesOf(const rules::Site& site, const perimeter::Edge& edge) {
  const plan::Wall& wall = site.perimeter.wall(edge);
  return wall.eaves_m ? wall.eaves_m : site.job.house.eaves_m;
}

}  // namespace sumpwright::build
