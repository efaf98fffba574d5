#include "siting/SuctionLines.h"

#include <algorithm>
#include <limits>

#include "geometry/Distance.h"
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

/// Walls whose foundation stands free above the ground outside, by name.
std::string exposedWalls(const Study& study) {
  const auto model = suction::modelOf(study.job(), suction::Ground{});
  if (!model) return {};
  std::vector<std::pair<int, int>> walls;
  for (const suction::Region& region : model->regions) {
    for (const suction::Edge& edge : region.edges) {
      if (edge.outdoors_m2_s_pa > 0.0) walls.emplace_back(edge.ring, edge.wall);
    }
  }
  std::sort(walls.begin(), walls.end());
  walls.erase(std::unique(walls.begin(), walls.end()), walls.end());
  std::string names;
  for (const auto& [ring, wall] : walls) {
    const auto& edge = study.perimeter().edges(ring)[static_cast<std::size_t>(wall)];
    names += (names.empty() ? "" : ", ") + study.perimeter().cornerLetter(ring, edge.edge) + "-" +
             study.perimeter().cornerLetter(
                 ring, (edge.edge + 1) % static_cast<int>(study.perimeter().edges(ring).size()));
  }
  return names;
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
    if (!sump.place) continue;
    const double off = fromParty_m(study, study.perimeter().pointAt(*sump.place));
    lines.crew.push_back(
        Message(off < kFromParty_m ? "suction.line.party-near" : "suction.line.party-far",
                {base::text("sump", sump.id), base::metres("off", off),
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
  }
  if (answer.state == SuctionState::not_layered) {
    lines.crew.emplace_back("suction.line.no-layer");
  }
  if (const std::string walls = exposedWalls(study); !walls.empty()) {
    lines.crew.push_back(Message("suction.line.exposed", {base::text("walls", walls)}));
  }
  if (job.design.shared_fan && answer.sumps.size() > 1) {
    lines.crew.emplace_back("suction.line.shared");
  }
  return lines;
}

const SuctionPaperLines& suctionPaperLines(const SuctionAnswer& answer) { return answer.paper; }

}  // namespace sumpwright::siting
