#include <nlohmann/json.hpp>

#include "cli/Suction.h"
#include "plan/KindNames.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

using SuctionRow = nlohmann::ordered_json;

const char* stateWord(siting::SuctionState state) {
  switch (state) {
    case siting::SuctionState::answered:
      return "answered";
    case siting::SuctionState::not_layered:
      return "not-layered";
    default:
      return "off-floor";
  }
}

SuctionRow known(const std::optional<double>& value) {
  return value ? SuctionRow(*value) : SuctionRow();
}

struct SuctionWriter {
  const siting::Study& study;
  const siting::SuctionAnswer& answer;

  std::string say(const base::Message& message) const {
    return words::say(message, study.job().display_units);
  }

  SuctionRow said(const std::vector<base::Message>& messages) const {
    SuctionRow rows = SuctionRow::array();
    for (const base::Message& one : messages)
      rows.push_back({{"id", one.id}, {"sentence", say(one)}});
    return rows;
  }

  SuctionRow sumps() const {
    SuctionRow rows = SuctionRow::array();
    for (const siting::StudiedSump& sump : answer.sumps) {
      SuctionRow row{{"id", sump.id.empty() ? SuctionRow() : SuctionRow(sump.id)},
                     {"ring", {}},
                     {"chainage_m", {}},
                     {"state", {}}};
      if (sump.place) {
        row["ring"] = sump.place->ring;
        row["chainage_m"] = sump.place->chainage_m;
        row["state"] = rules::stateName(study.assess(*sump.place, sump.id).state);
      }
      row["x_m"] = sump.sink.at.x;
      row["y_m"] = sump.sink.at.y;
      row["pit_radius_m"] = sump.sink.radius_m;
      rows.push_back(std::move(row));
    }
    return rows;
  }

  static SuctionRow reach(const suction::Reach& r) {
    return {{"floor", r.floor},
            {"floor_limit", r.floor_limit},
            {"joint", r.joint},
            {"joint_limit", r.joint_limit},
            {"floor_m2", r.floor_m2},
            {"joint_m", r.joint_m},
            {"least_pa", r.least.suction_pa},
            {"least_x_m", r.least.at.x},
            {"least_y_m", r.least.at.y}};
  }

  SuctionRow legs(const airflow::DutySummary& duty) const {
    SuctionRow rows = SuctionRow::array();
    for (std::size_t k = 0; k < duty.legs.size(); ++k) {
      const airflow::LegDuty& leg = duty.legs[k];
      const std::string& id = answer.sumps[k].id;
      rows.push_back({{"flow_m3_s", leg.ground.m3PerS()},
                      {"leak_m3_s", leg.leak.m3PerS()},
                      {"pit_pa", leg.pit.pa()},
                      {"speed_m_s", leg.speed_m_s},
                      {"sump", id.empty() ? SuctionRow() : SuctionRow(id)}});
    }
    return rows;
  }

  SuctionRow middle() const {
    SuctionRow rows = SuctionRow::array();
    for (const siting::MiddleCase& one : answer.middle) {
      rows.push_back({{"case", one.label.id.empty() ? SuctionRow() : SuctionRow(say(one.label))},
                      {"unknown_walls_stand", one.choices.unknown_walls_stand},
                      {"party_open", one.choices.party_open},
                      {"trenches_open", one.choices.trenches_open},
                      {"reach", reach(one.reach)},
                      {"legs", legs(one.duty)},
                      {"field",
                       {{"cells", one.field.cells},
                        {"cell_m", one.field.cell_m},
                        {"coarser", one.field.coarser},
                        {"nnz", one.field.fill},
                        {"factor_ms", one.field.factor_ms},
                        {"balance", one.field.balance}}},
                      {"sentence", say(one.sentence)}});
    }
    return rows;
  }

  static SuctionRow band(const siting::Band& b) {
    return {{"low", b.low}, {"middle", b.middle}, {"high", b.high}};
  }

  SuctionRow chance() const {
    return {{"draws", answer.draws},
            {"whole_floor", answer.whole_floor},
            {"mean_floor", answer.mean_floor},
            {"likely_floor", answer.likely_floor},
            {"least",
             {{"chance", answer.least_likely.suction_pa},
              {"x_m", answer.least_likely.at.x},
              {"y_m", answer.least_likely.at.y},
              {"where", say(answer.least_where)}}},
            {"flow_m3_s", band(answer.flow_m3_s)},
            {"pit_pa", answer.pit_pa ? band(*answer.pit_pa) : SuctionRow()},
            {"cells", answer.chance.cells},
            {"cell_m", answer.chance.cell_m},
            {"coarser", answer.chance.coarser},
            {"factors", answer.chance.factors},
            {"build_ms", answer.chance.build_ms}};
  }

  SuctionRow second() const {
    if (!answer.second) return {};
    const siting::SecondSump& s = *answer.second;
    return {{"ring", s.place.ring},
            {"chainage_m", s.place.chainage_m},
            {"x_m", s.point.x},
            {"y_m", s.point.y},
            {"state", rules::stateName(s.state)},
            {"helps", s.helps},
            {"whole_floor", s.whole_floor},
            {"mean_floor", s.mean_floor},
            {"reach", reach(s.reach)},
            {"sentence", say(s.sentence)}};
  }

  SuctionRow places() const {
    if (!answer.along) return {};
    SuctionRow rows = SuctionRow::array();
    for (const siting::BestPlace& b : placesByChance(study, answer)) {
      rows.push_back({{"ring", b.place.ring},
                      {"chainage_m", b.place.chainage_m},
                      {"x_m", b.point.x},
                      {"y_m", b.point.y},
                      {"state", rules::stateName(b.run.state)},
                      {"whole_floor", known(b.chance)},
                      {"floor", known(b.floor)},
                      {"score", b.score}});
    }
    return rows;
  }

  SuctionRow thumb() const {
    if (answer.thumb.sentence.id.empty()) return {};
    return {{"applies", answer.thumb.applies},
            {"held", answer.thumb.applies ? SuctionRow(answer.thumb.held) : SuctionRow()},
            {"area_m2", answer.thumb.area_m2},
            {"farthest_m", known(answer.thumb.farthest_m)},
            {"sentence", say(answer.thumb.sentence)},
            {"mark", base::kMarkNames[static_cast<std::size_t>(answer.thumb.source.mark)]},
            {"source", answer.thumb.source.text}};
  }

  SuctionRow leak() const {
    if (!answer.leak) return {};
    return {{"reach", reach(answer.leak->reach)},
            {"legs", legs(answer.leak->duty)},
            {"sentence", say(answer.leak->sentence)}};
  }

  SuctionRow assumptions() const {
    SuctionRow rows = SuctionRow::array();
    for (const siting::Assumption& one : answer.assumptions) {
      rows.push_back({{"id", one.what.id},
                      {"sentence", say(one.what)},
                      {"mark", base::kMarkNames[static_cast<std::size_t>(one.source.mark)]},
                      {"source", one.source.text}});
    }
    return rows;
  }
};

}  // namespace

nlohmann::ordered_json suctionJson(const siting::Study& study, const siting::SuctionSystem& system,
                                   const siting::SuctionAnswer& answer,
                                   const std::optional<price::RunningYear>& year) {
  const SuctionWriter writer{study, answer};
  const bool has = answer.state == siting::SuctionState::answered;
  return {
      {"format", "sumpwright.suction/1"},
      {"prediction", true},
      {"state", stateWord(answer.state)},
      {"verdict", {{"id", answer.verdict.id}, {"sentence", writer.say(answer.verdict)}}},
      {"fill", plan::nameOf(answer.fill)},
      {"target_pa", answer.target.design_pa},
      {"limit_pa", answer.target.limit_pa},
      {"fan", {{"id", system.fan.id}, {"title", system.fan.title}, {"invented", system.invented}}},
      {"sumps", writer.sumps()},
      {"middle", has ? writer.middle() : SuctionRow::array()},
      {"worst", has ? SuctionRow(answer.worst) : SuctionRow()},
      {"chance", has ? writer.chance() : SuctionRow()},
      {"power_w", known(answer.power_w)},
      {"energy_kwh_a", answer.power_w ? SuctionRow(answer.running.energy_kwh) : SuctionRow()},
      {"running", runningJson(study, year)},
      {"second", writer.second()},
      {"rule_of_thumb", has ? writer.thumb() : SuctionRow()},
      {"remarks", writer.said(answer.remarks)},
      {"assumptions", writer.assumptions()},
      {"measured", measuredJson(study)},
      {"expected", expectedJson(answer)},
      {"fitted", fittedJson(study, answer)},
      {"leak", writer.leak()},
      {"shared_fan", sharedFanJson(study, answer)},
      {"lines", paperLinesJson(study, answer)},
      {"cautions", writer.said(answer.cautions)},
      {"places", writer.places()},
      {"fans", fansJson(study, answer, year)}};
}

}  // namespace sumpwright::cli
