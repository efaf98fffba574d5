#include "siting/SuctionLines.h"

#include <algorithm>
#include <limits>
#include <set>

#include "geometry/Distance.h"
#include "plan/SumpList.h"
#include "siting/SuctionStudy.h"
#include "suction/Fit.h"
#include "suction/ModelOf.h"

namespace sumpwright::siting {

namespace {

using base::Message;

bool isInternal(const plan::Sump& sump) { return sump.kind == plan::SumpKind::internal; }

bool hasInternal(const plan::Job& job) {
  return std::any_of(job.design.sumps.begin(), job.design.sumps.end(), isInternal);
}

/// What of the foundation stands free above the ground outside.
struct StandingFree {
  std::set<std::pair<int, int>> walls;  ///< ring and edge
  double length_m = 0.0;
  double mean_m = 0.0;  ///< height
};

void addFree(const geometry::Polygon& ring, const std::vector<suction::Edge>& edges,
             StandingFree& free) {
  for (std::size_t k = 0; k < edges.size(); ++k) {
    const double height = edges[k].outdoors_m2_s_pa;
    if (!(height > 0.0)) continue;
    const double length = geometry::distance(ring[k], ring[(k + 1) % ring.size()]);
    free.walls.emplace(edges[k].ring, edges[k].wall);
    free.mean_m = (free.mean_m * free.length_m + height * length) / (free.length_m + length);
    free.length_m += length;
  }
}

StandingFree standingFree(const plan::Job& job) {
  suction::Ground ground;
  ground.exposed_m_s_pa = 1.0;  // an edge's conductance to outdoors is its height then
  StandingFree free;
  const auto model = suction::modelOf(job, ground);
  if (!model) return free;
  for (const suction::Region& region : model->regions) {
    addFree(region.outline, region.edges, free);
    for (std::size_t h = 0; h < region.hole_edges.size(); ++h) {
      addFree(region.holes[h], region.hole_edges[h], free);
    }
  }
  return free;
}

void addExposed(const Study& study, SuctionPaperLines& lines) {
  const StandingFree free = standingFree(study.job());
  if (free.walls.empty()) return;
  std::string names;
  for (const auto& [ring, wall] : free.walls) {
    const auto count = static_cast<int>(study.perimeter().edges(ring).size());
    names += (names.empty() ? "" : ", ") + study.perimeter().cornerLetter(ring, wall) + "-" +
             study.perimeter().cornerLetter(ring, (wall + 1) % count);
  }
  lines.crew.push_back(Message("suction.line.exposed",
                               {base::text("walls", names), base::metres("length", free.length_m),
                                base::metres("height", free.mean_m)}));
}

/// Distance from a point to the nearest party wall's outside face.
double fromParty_m(const Study& study, geometry::Point at) {
  double least = std::numeric_limits<double>::infinity();
  const auto& rings = study.job().plan.rings;
  for (int ring = 0; ring < study.perimeter().ringCount(); ++ring) {
    for (const auto& edge : study.perimeter().edges(ring)) {
      const auto& walls = rings[static_cast<std::size_t>(ring)].walls;
      if (walls[static_cast<std::size_t>(edge.edge)].kind != plan::WallKind::party) continue;
      least = std::min(least, geometry::distance(at, edge.face()));
    }
  }
  return least;
}

void addNeighbour(const Study& study, const SuctionAnswer& answer, SuctionPaperLines& lines) {
  if (!suction::mayGoOnNextDoor(study.job().plan)) return;
  lines.client.emplace_back("suction.line.neighbour");
  for (const StudiedSump& sump : answer.sumps) {
    const geometry::Point at = sump.place ? study.perimeter().pointAt(*sump.place) : sump.sink.at;
    const double off = fromParty_m(study, at);
    lines.crew.push_back(
        Message(off < kFromParty_m ? "suction.line.party-near" : "suction.line.party-far",
                {base::text("sump", plan::sumpWord(study.job(), sump.id)), base::metres("off", off),
                 base::metres("least", kFromParty_m)}));
  }
}

void addHoles(const plan::Job& job, SuctionPaperLines& lines) {
  if (job.plan.test_holes.empty()) return;
  lines.client.emplace_back("suction.line.holes-consent");
  lines.crew.emplace_back("suction.line.holes-where");
  for (const plan::TestHole& hole : job.plan.test_holes) {
    const auto reason = suction::noDrill(job, hole.at_m);
    if (!reason) continue;
    lines.crew.push_back(Message("suction.line.hole-not-there",
                                 {base::text("hole", hole.name.empty() ? hole.id : hole.name),
                                  base::phrase("reason", *reason)}));
  }
  lines.crew.emplace_back("suction.line.holes-patch");
}

/// A pit inside is dug where a hole might be drilled, no more.
void addNotDug(const plan::Job& job, SuctionPaperLines& lines) {
  for (const plan::Sump& sump : job.design.sumps) {
    if (!isInternal(sump) || !sump.at_m) continue;
    const auto reason = suction::noDrill(job, *sump.at_m);
    if (!reason) continue;
    lines.crew.push_back(Message(
        "suction.line.internal-not-there",
        {base::text("sump", plan::sumpWord(job, sump.id)), base::phrase("reason", *reason)}));
  }
}

}  // namespace

SuctionPaperLines linesOf(const Study& study, const SuctionAnswer& answer) {
  const plan::Job& job = study.job();
  SuctionPaperLines lines;
  const bool cored = std::any_of(answer.sumps.begin(), answer.sumps.end(),
                                 [](const StudiedSump& s) { return s.place.has_value(); });
  if (cored) lines.crew.emplace_back("suction.line.annulus");
  addNeighbour(study, answer, lines);
  addHoles(job, lines);
  if (hasInternal(job)) {
    lines.client.emplace_back("suction.line.internal-client");
    lines.crew.emplace_back("suction.line.internal");
    addNotDug(job, lines);
  }
  if (answer.state == SuctionState::not_layered) {
    lines.crew.emplace_back("suction.line.no-layer");
  }
  addExposed(study, lines);
  if (job.design.shared_fan && answer.sumps.size() > 1) {
    lines.crew.emplace_back("suction.line.shared");
  }
  return lines;
}

const SuctionPaperLines& suctionPaperLines(const SuctionAnswer& answer) { return answer.paper; }

}  // namespace sumpwright::siting
