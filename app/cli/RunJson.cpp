#include "cli/RunJson.h"

#include <nlohmann/json.hpp>

#include "build/CableRoute.h"
#include "build/DrillSection.h"
#include "build/Levels.h"
#include "build/Run.h"
#include "plan/KindNames.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

using RunRow = nlohmann::ordered_json;

std::string saidIn(const siting::Study& study, const base::Message& message) {
  return words::say(message, study.job().display_units);
}

RunRow partsOf(const build::CableRoute& route) {
  RunRow rows = RunRow::array();
  for (const build::CablePart& part : route.parts) {
    rows.push_back({{"kind", build::cablePartName(part.kind)},
                    {"length_m", part.length_m},
                    {"over", part.things}});
  }
  return rows;
}

RunRow routeOf(const siting::Study& study, const build::CableRoute& route) {
  RunRow remarks = RunRow::array();
  for (const base::Message& remark : route.remarks) remarks.push_back(saidIn(study, remark));
  return {{"supply", route.supply},
          {"kind", plan::nameOf(route.kind)},
          {"length_m", route.length_m},
          {"to_buy_m", route.to_buy_m},
          {"sleeves", route.sleeves},
          {"drillings", route.drillings},
          {"over_openings", route.over_openings},
          {"drop_v", route.drop_v},
          {"drop_percent", route.drop_percent},
          {"parts", partsOf(route)},
          {"remarks", std::move(remarks)}};
}

RunRow cableOf(const siting::Study& study, const build::CableAsk& ask) {
  const build::CableAnswer answer = build::cableRoutes(study.site(), ask);
  RunRow others = RunRow::array();
  for (std::size_t i = 0; i < answer.routes.size(); ++i) {
    if (i != answer.chosen) others.push_back(routeOf(study, answer.routes[i]));
  }
  RunRow none = RunRow::array();
  for (const build::NoCable& one : answer.none) {
    none.push_back({{"supply", one.supply}, {"reason", saidIn(study, one.reason)}});
  }
  return {{"sentence", saidIn(study, answer.sentence)},
          {"route", answer.chosen ? routeOf(study, answer.routes[*answer.chosen]) : RunRow()},
          {"others", std::move(others)},
          {"no_way", std::move(none)}};
}

RunRow sectionOf(const siting::Study& study, siting::Place hole, const build::SectionWish& wish) {
  const build::DrillSection section = build::drillSection(study.site(), hole, wish);
  RunRow row{{"fit", build::fitName(section.fit)}, {"sentence", saidIn(study, section.verdict)}};
  row["entry_m"] = section.bore ? RunRow(section.bore->entry_m) : RunRow();
  row["fall_deg"] = section.bore ? RunRow(build::degreesOfFall(section.bore->fall)) : RunRow();
  row["dig_m"] = section.bore ? RunRow(section.dig_m) : RunRow();
  row["footing_top_needed_m"] = section.footing_top_m ? RunRow(*section.footing_top_m) : RunRow();
  return row;
}

RunRow pipeOf(const build::CountedPipe& pipe) {
  return {{"before_m", pipe.before_m},
          {"after_m", pipe.after_m},
          {"bends_before", pipe.bends_before},
          {"bends_after", pipe.bends_after},
          {"exposed_m", pipe.exposed_m}};
}

RunRow dischargeOf(const siting::Study& study, const plan::Sump& sump, siting::Place hole) {
  const auto run = build::placedRun(study.site(), sump);
  if (!run) return {};
  const siting::Place outlet =
      study.perimeter().wrapped({hole.ring, hole.chainage_m + run->shift_m});
  const auto eaves = build::eavesOf(study.site(), study.perimeter().edgeAt(outlet));
  return {{"ring", outlet.ring},
          {"chainage_m", outlet.chainage_m},
          {"height_m", run->outlet_m},
          {"above_ground_m", run->outlet_m - build::groundAt(study.site(), outlet)},
          {"above_eaves_m", eaves ? RunRow(run->outlet_m - *eaves) : RunRow()},
          {"fan_place", plan::nameOf(run->fan_place)},
          {"fan_height_m", run->fan_m},
          {"fan_height_assumed", run->fan_assumed},
          {"pipe", pipeOf(*build::countedPipe(study.site(), sump, hole))}};
}

}  // namespace

void addRun(const siting::Study& study, const plan::Sump& sump, siting::Place hole, RunRow& row) {
  row["discharge"] = dischargeOf(study, sump, hole);
  row["section"] = sectionOf(study, hole, build::wishOf(study.job(), sump));
  row["cable"] = cableOf(study, build::cableAskOf(study.site(), sump, hole));
}

void addPlaceRun(const siting::Study& study, siting::Place hole, RunRow& row) {
  row["section"] = sectionOf(study, hole, {{}, study.job().suction.pit_l});
  build::CableAsk ask;
  ask.fan = hole;
  row["cable"] = cableOf(study, ask);
}

}  // namespace sumpwright::cli
