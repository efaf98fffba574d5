#include "build/Levels.h"

namespace sumpwright::build {

GroundLine groundAlong(const rules::Site& site, const perimeter::Edge& edge) {
  return plan::groundAlong(site.job.house, site.perimeter.wall(edge));
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
