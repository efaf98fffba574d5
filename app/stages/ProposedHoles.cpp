#include "stages/ProposedHoles.h"

#include <algorithm>

#include "geometry/Distance.h"

namespace sumpwright::stages {

namespace {

struct Drawing {
  suction::Sink sink;
  double flow_m3_s = 0.0;
};

/// The chosen sump, else the first that draws: each leg has a flow of its own.
std::optional<Drawing> drawingNow(const session::Session& session, const siting::SuctionLive& live,
                                  const siting::LiveField& field) {
  const auto sumps = live.sumpsOf(session.job().design, session.sump(), session.place());
  std::optional<Drawing> drawing;
  for (std::size_t k = 0; k < std::min(field.sumps.size(), field.duty.legs.size()); ++k) {
    const auto sump = std::find_if(sumps.begin(), sumps.end(), [&](const siting::StudiedSump& s) {
      return s.id == field.sumps[k];
    });
    if (sump == sumps.end()) continue;
    if (drawing && sump->id != session.sump()) continue;
    drawing = Drawing{sump->sink, field.duty.legs[k].ground.m3PerS()};
  }
  return drawing;
}

int roomAt(const plan::Plan& plan, geometry::Point at) {
  for (std::size_t k = 0; k < plan.rooms.size(); ++k) {
    if (geometry::distanceToArea(at, plan.rooms[k].outline_m) <= 0.0) return static_cast<int>(k);
  }
  return -1;
}

}  // namespace

HolesAsked proposedHoles(const session::Session& session, const session::SuctionDesk& desk,
                         int count) {
  HolesAsked asked;
  const siting::SuctionLive* live = desk.live();
  if (live == nullptr || !desk.field()) return asked;
  const auto drawing = drawingNow(session, *live, *desk.field());
  if (!drawing) return asked;
  const plan::Job& job = session.job();
  suction::HoleOptions options;
  options.count = count;
  options.room_of = [&](geometry::Point at) { return roomAt(job.plan, at); };
  for (const plan::TestHole& hole : job.plan.test_holes) options.there.push_back(hole.at_m);
  const auto may = [&](geometry::Point at) {
    const auto reason = suction::noDrill(job, at);
    if (reason) {
      asked.forbidden = reason;
      asked.there = at;
    }
    return !reason;
  };
  asked.holes = suction::proposeHoles(live->cases()[desk.field()->which].solver, drawing->sink,
                                      drawing->flow_m3_s, options, may);
  return asked;
}

}  // namespace sumpwright::stages
