#include <nlohmann/json.hpp>

#include "cli/RunJson.h"
#include "cli/Site.h"
#include "plan/KindNames.h"
#include "rules/RuleSheetNames.h"
#include "siting/ReachAlong.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

using Json = nlohmann::ordered_json;

Json orNull(const std::optional<double>& value) { return value ? Json(*value) : Json(); }
Json orNull(const std::string& text) { return text.empty() ? Json() : Json(text); }

struct Writer {
  const siting::Study& study;

  std::string say(const base::Message& message) const {
    return words::say(message, study.job().display_units);
  }

  Json finding(const rules::Finding& f) const {
    return {{"rule", f.rule},
            {"thing", orNull(f.thing)},
            {"severity", rules::weightName(f.weight)},
            {"distance_m", orNull(f.distance_m)},
            {"needed_m", orNull(f.needed_m)}};
  }

  /// With its words, where one place is told of and length does not matter.
  Json toldFinding(const rules::Finding& f) const {
    Json row = finding(f);
    row["reason"] = say(f.reason);
    row["waivable"] = f.waivable.allowed;
    return row;
  }

  template <class Finding>
  Json list(const std::vector<rules::Finding>& findings, Finding one) const {
    Json rows = Json::array();
    for (const rules::Finding& f : findings) rows.push_back((this->*one)(f));
    return rows;
  }

  Json stretch(const siting::Stretch& s) const {
    return {{"from_m", s.from_m},
            {"to_m", s.to_m},
            {"state", rules::stateName(s.state)},
            {"findings", list(study.findingsOf(s), &Writer::finding)}};
  }

  Json rings() const {
    Json rows = Json::array();
    for (int ring = 0; ring < study.perimeter().ringCount(); ++ring) {
      Json stretches = Json::array();
      for (const siting::Stretch& s : study.stretches()[static_cast<std::size_t>(ring)]) {
        stretches.push_back(stretch(s));
      }
      rows.push_back({{"ring", ring},
                      {"length_m", study.perimeter().length_m(ring)},
                      {"stretches", std::move(stretches)}});
    }
    return rows;
  }

  static Json place(siting::Place place, geometry::Point point) {
    return {
        {"ring", place.ring}, {"chainage_m", place.chainage_m}, {"x_m", point.x}, {"y_m", point.y}};
  }

  Json best() const {
    Json rows = Json::array();
    for (const siting::BestPlace& b : study.best()) {
      Json row = place(b.place, b.point);
      row["score"] = b.score;
      row["state"] = rules::stateName(b.run.state);
      row["from_m"] = b.run.from_m;
      row["to_m"] = b.run.to_m;
      row["close"] = b.close;
      row["floor"] = orNull(b.floor);
      rows.push_back(std::move(row));
    }
    return rows;
  }

  Json leastBad() const {
    if (!study.leastBad()) return {};
    const siting::LeastBad& least = *study.leastBad();
    Json row = least.place ? place(*least.place, least.point)
                           : Json{{"ring", {}}, {"chainage_m", {}}, {"x_m", {}}, {"y_m", {}}};
    row["state"] = least.place ? Json(rules::stateName(least.state)) : Json();
    row["changes"] = list(least.changes, &Writer::toldFinding);
    row["advice"] = say(least.advice);
    return row;
  }

  Json margins(const siting::Assessment& a) const {
    Json rows = Json::array();
    for (const rules::Margin& m : a.margins) {
      rows.push_back({{"rule", m.rule},
                      {"thing", orNull(m.thing)},
                      {"distance_m", m.distance_m},
                      {"needed_m", m.needed_m},
                      {"margin_m", m.margin_m},
                      {"close", m.close}});
    }
    return rows;
  }

  Json parts(const siting::Score& score) const {
    Json rows = Json::array();
    for (const siting::ScoredPart& p : score.parts) {
      rows.push_back({{"kind", plan::nameOf(p.kind)},
                      {"title", p.title},
                      {"points", p.judged ? Json(p.points) : Json()},
                      {"weight", p.weight},
                      {"judged", p.judged},
                      {"reason", say(p.reason)}});
    }
    return rows;
  }

  Json at(const siting::Assessment& a) const {
    Json row = place(a.place, a.point);
    row["state"] = rules::stateName(a.state);
    row["waived"] = a.waived;
    row["sentence"] = say(a.sentence);
    row["findings"] = list(a.findings, &Writer::toldFinding);
    row["margins"] = margins(a);
    row["score"] = a.score.total;
    row["parts"] = parts(a.score);
    row["close"] = a.close;
    row["advisory_cost"] = a.score.advisory_cost;
    row["score_complete"] = a.score.complete;
    row["rooms_behind"] = a.rooms_behind;
    row["thickness_assumed"] = a.thickness_assumed;
    addPlaceRun(study, a.place, row);
    return row;
  }

  /// The cored ones, each where the design has it.
  Json sumps() const {
    Json rows = Json::array();
    for (const plan::Sump& sump : study.job().design.sumps) {
      const siting::Place where{sump.ring, sump.chainage_m};
      if (sump.kind != plan::SumpKind::cored || !study.perimeter().contains(where)) continue;
      const siting::Assessment a = study.assess(where, sump.id);
      Json row{{"id", sump.id}};
      row.update(place(a.place, a.point));
      row["state"] = rules::stateName(a.state);
      row["waived"] = a.waived;
      row["sentence"] = say(a.sentence);
      row["score"] = a.score.total;
      addRun(study, sump, a.place, row);
      rows.push_back(std::move(row));
    }
    return rows;
  }

  static Json curvePlace(const siting::ReachPlace& p) {
    return {{"ring", p.place.ring},
            {"chainage_m", p.place.chainage_m},
            {"floor", p.read.on_floor ? Json(p.read.floor) : Json()},
            {"flow_m3_s", p.read.on_floor ? Json(p.read.flow_m3_s) : Json()},
            {"at_weak_pa", p.at_weak_pa}};
  }

  Json reach() const {
    if (study.reach() == nullptr) return {};
    const siting::ReachAlong& along = *study.reach();
    const siting::ReachSummary& r = along.summary();
    Json weak = Json::array();
    for (const geometry::Point p : along.weak()) weak.push_back({{"x_m", p.x}, {"y_m", p.y}});
    Json curve = Json::array();
    for (const siting::ReachPlace& p : along.places()) curve.push_back(curvePlace(p));
    return {{"prediction", true},
            {"state", along.computed() ? "computed" : "not-layered"},
            {"fill", plan::nameOf(r.fill)},
            {"target_pa", r.target.design_pa},
            {"cases", r.cases},
            {"cell_m", r.cell_m},
            {"coarser", r.coarser},
            {"solved", r.solved},
            {"miss", r.miss},
            {"jumps", r.jumps},
            {"middle_ms", r.middle_ms},
            {"weak", std::move(weak)},
            {"curve", std::move(curve)}};
  }

  Json unjudged() const {
    Json rows = Json::array();
    for (const siting::Unjudged& u : study.unjudged()) {
      rows.push_back({{"rule", u.rule}, {"thing", orNull(u.thing)}, {"reason", say(u.reason)}});
    }
    return rows;
  }
};

}  // namespace

Json siteJson(const siting::Study& study, const std::optional<siting::Assessment>& at) {
  const Writer writer{study};
  return {{"format", "sumpwright.site/1"},
          {"rule_sheet", study.sheet().id},
          {"outlet_mode", plan::nameOf(study.site().outlet)},
          {"core_m", study.site().core_m},
          {"rings", writer.rings()},
          {"best", writer.best()},
          {"least_bad", writer.leastBad()},
          {"at", at ? writer.at(*at) : Json()},
          {"sumps", writer.sumps()},
          {"unjudged", writer.unjudged()},
          {"accuracy_m", study.accuracy_m()},
          {"reach", writer.reach()}};
}

}  // namespace sumpwright::cli
