#include "session/FreshId.h"

#include <set>

namespace sumpwright::session {

namespace {

template <class List>
void collect(const List& list, std::set<std::string>& ids) {
  for (const auto& part : list) ids.insert(part.id);
}

std::set<std::string> idsOf(const plan::Job& job) {
  std::set<std::string> ids;
  const plan::Plan& p = job.plan;
  for (const plan::Ring& ring : p.rings) collect(ring.walls, ids);
  collect(p.openings, ids);
  collect(p.services, ids);
  collect(p.rooms, ids);
  collect(p.floor_zones, ids);
  collect(p.inner_walls, ids);
  collect(p.inner_doors, ids);
  collect(p.rising_walls, ids);
  collect(p.radiators, ids);
  collect(p.heating_pipes, ids);
  collect(p.supplies, ids);
  collect(p.fittings, ids);
  collect(p.outside, ids);
  collect(p.test_holes, ids);
  collect(job.house.appliances, ids);
  collect(job.design.sumps, ids);
  collect(job.design.waivers, ids);
  return ids;
}

}  // namespace

std::string freshId(const plan::Job& job, const std::string& stem) {
  const std::set<std::string> ids = idsOf(job);
  for (int n = 1;; ++n) {
    std::string id = stem + "-" + std::to_string(n);
    if (!ids.contains(id)) return id;
  }
}

}  // namespace sumpwright::session
