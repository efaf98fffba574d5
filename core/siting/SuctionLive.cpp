#include "siting/SuctionLive.h"

#include <algorithm>
#include <utility>

#include "suction/Presets.h"

namespace sumpwright::siting {

namespace {

std::optional<LiveField> solved(const SolvedCase& one, std::size_t which,
                                const std::vector<StudiedSump>& sumps, const SuctionSystem& system,
                                const suction::Target& target) {
  SolvedSumps together = solvedSumps(one.solver, sumps, system, one.ground, target);
  if (together.units.empty() || !together.duty.ok()) return std::nullopt;
  LiveField field;
  field.which = which;
  field.sumps = std::move(together.names);
  field.duty = std::move(together.duty);
  field.suction = std::move(together.suction);
  field.reach = together.reach;
  return field;
}

}  // namespace

base::Result<SuctionLive> SuctionLive::of(const Study& study, const SuctionSystem& system,
                                          const SuctionOptions& options) {
  if (!isSound(options.target)) {
    return base::Problem{base::Message("suction.target"), "", base::Gravity::unreadable};
  }
  auto data = std::make_shared<Data>();
  data->target = options.target;
  data->system = system;
  data->radius_m = suction::pitRadius_m(options.pit_m3);
  data->perimeter = std::make_shared<const perimeter::Perimeter>(study.perimeter());
  const TakenGround guess = takenGround(study, options);
  data->layered = guess.ranges.layered;
  data->fitted = guess.fitted;
  data->expected = expectedInTests(study, guess.ranges, options.pit_m3, options.cell_m);
  if (data->layered) {
    auto cases = solvedCases(study, guess, options);
    if (!cases) return cases.problems();
    data->cases = std::move(cases).value();
  }
  SuctionLive live;
  live.m_data = std::move(data);
  return live;
}

std::vector<StudiedSump> SuctionLive::sumpsOf(const plan::Design& design, const std::string& moved,
                                              std::optional<Place> place) const {
  std::vector<StudiedSump> sumps;
  for (plan::Sump sump : design.sumps) {
    if (place && sump.id == moved && sump.kind == plan::SumpKind::cored) {
      sump.ring = place->ring;
      sump.chainage_m = place->chainage_m;
    }
    if (auto studied = studiedSump(*m_data->perimeter, sump, m_data->radius_m)) {
      sumps.push_back(std::move(*studied));
    }
  }
  return sumps;
}

std::optional<base::Problem> SuctionLive::problemOf(const std::vector<StudiedSump>& sumps) {
  return pitsInOne(sumps);
}

std::optional<LiveField> SuctionLive::at(const std::vector<StudiedSump>& sumps) const {
  if (pitsInOne(sumps)) return std::nullopt;
  std::optional<LiveField> worst;
  for (std::size_t k = 0; k < m_data->cases.size(); ++k) {
    auto field = solved(m_data->cases[k], k, sumps, m_data->system, m_data->target);
    if (!field) continue;
    if (!worst || field->reach.floor < worst->reach.floor) worst = std::move(field);
  }
  return worst;
}

}  // namespace sumpwright::siting
