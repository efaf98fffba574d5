#include "dossier/Sheet.h"

#include <algorithm>
#include <utility>

#include "plan/DesignEdits.h"
#include "siting/DesignCheck.h"

namespace sumpwright::dossier {
namespace {

const plan::Sump* sumpOf(const plan::Design& design, const std::string& id) {
  for (const plan::Sump& sump : design.sumps) {
    if (id.empty() ? sump.kind == plan::SumpKind::cored : sump.id == id) return &sump;
  }
  return nullptr;
}

}  // namespace

Sheet::Sheet(const siting::Study& s, const drawing::Voice& voice, const ClientPlanOptions& o)
    : study(s), options(o), desk{voice, drawing::theme(drawing::ThemeName::paper)} {
  width_mm = sheetSize(o.size).width_mm;
  height_mm = sheetSize(o.size).height_mm;
  if (o.landscape) std::swap(width_mm, height_mm);
  const plan::Sump* asked = sumpOf(job().design, o.sump);
  asked_inside = asked != nullptr && asked->kind != plan::SumpKind::cored;
  if (asked == nullptr || asked_inside) return;
  sump = asked;
  const perimeter::Place place{asked->ring, asked->chainage_m};
  assessment = study.assess(place, asked->id);
  ties = drawing::tiesOf(study, place);
  for (const plan::Waiver& waiver : job().design.waivers) {
    if (waiver.sump == asked->id) waivers.push_back(waiver);
  }
  std::stable_partition(waivers.begin(), waivers.end(),
                        [&](const plan::Waiver& w) { return holds(w); });
}

const siting::SuctionAnswer* Sheet::answer() const {
  const auto& outlook = options.outlook;
  if (options.suction == Suction::left_out || !outlook || !outlook->why_not.empty()) return nullptr;
  if (job().design.sumps.empty()) return nullptr;
  return &outlook->answer;
}

bool Sheet::isLeftBehind(const plan::Waiver& waiver) const {
  return sump == nullptr || !plan::waiverHolds(waiver, sump->ring, sump->chainage_m,
                                               study.perimeter().length_m(sump->ring));
}

bool Sheet::holds(const plan::Waiver& waiver) const {
  return !isLeftBehind(waiver) && !siting::waiverProblem(study, waiver);
}

std::string Sheet::ruleTitle(const std::string& id) const {
  const rules::Rule* found = rule(id);
  return found != nullptr ? found->title : desk.say("drawing.lane.discharge");
}

bool Sheet::isOwn(const std::string& rule_id) const {
  const rules::Rule* found = rule(rule_id);
  return found != nullptr && found->needed_m && found->needed_m->source.mark == rules::Mark::own;
}

}  // namespace sumpwright::dossier
