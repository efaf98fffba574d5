// Reading of rule sheets: what is built in, and each thing that can be wrong with a firm's own.

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <nlohmann/json.hpp>
#include <regex>
#include <string>
#include <utility>
#include <vector>

#include "resources/BuiltIn.h"
#include "rules/RuleSheet.h"
#include "rules/RuleSheetCheck.h"

namespace sumpwright::rules {
namespace {

using Json = nlohmann::ordered_json;

std::string builtIn(std::string_view id) {
  for (const resources::BuiltInFile& file : resources::builtInRuleSheets()) {
    if (file.id == id) return std::string(file.text);
  }
  ADD_FAILURE() << "no built-in sheet " << id;
  return {};
}

RuleSheet sheetOf(std::string_view id) {
  auto sheet = readRuleSheet(builtIn(id));
  for (const base::Problem& p : sheet.problems()) {
    ADD_FAILURE() << id << " " << p.message.id << " at " << p.pointer;
  }
  return std::move(sheet).value();
}

/// "id pointer" of every problem, in order.
std::vector<std::string> problemsOf(const std::string& text) {
  std::vector<std::string> out;
  for (const base::Problem& p : readRuleSheet(text).problems()) {
    EXPECT_EQ(p.gravity, base::Gravity::unreadable);
    out.push_back(p.message.id + " " + p.pointer);
  }
  return out;
}

using Found = std::vector<std::string>;

/// Problems of the Irish sheet after a change to its JSON.
Found changed(const std::function<void(Json&)>& change) {
  Json json = Json::parse(builtIn("ie-practice"));
  change(json);
  return problemsOf(json.dump());
}

std::size_t indexOf(const Json& sheet, const std::string& rule) {
  for (std::size_t i = 0; i < sheet["rules"].size(); ++i) {
    if (sheet["rules"][i]["id"] == rule) return i;
  }
  ADD_FAILURE() << "no rule " << rule;
  return 0;
}

Json& ruleOf(Json& sheet, const std::string& rule) { return sheet["rules"][indexOf(sheet, rule)]; }

std::string pointerTo(const std::string& rule, const std::string& member) {
  return "/rules/" + std::to_string(indexOf(Json::parse(builtIn("ie-practice")), rule)) + member;
}

/// Problems of the Irish sheet after one member of one rule is set.
Found withMember(const std::string& rule, const char* member, const Json& value) {
  return changed([&](Json& sheet) { ruleOf(sheet, rule)[member] = value; });
}

TEST(RuleSheet, BuiltInSheetsReadAndAreNamedByTheirId) {
  std::vector<std::string> ids;
  for (const resources::BuiltInFile& file : resources::builtInRuleSheets()) {
    ids.emplace_back(file.id);
    EXPECT_EQ(sheetOf(file.id).id, file.id);
  }
  EXPECT_EQ(ids, (Found{"ie-practice", "uk-practice", "us-practice", "template"}));
}

TEST(RuleSheet, EveryFigureThatIsUsedHasASource) {
  for (const resources::BuiltInFile& file : resources::builtInRuleSheets()) {
    const RuleSheet sheet = sheetOf(file.id);
    std::vector<Source> sources = {sheet.corner_turn_deg.source, sheet.default_core_mm.source,
                                   sheet.default_pipe_od_mm.source, sheet.advisory_cost.source};
    for (const SurveyAccuracy& a : sheet.survey_accuracy) sources.push_back(a.accuracy_m.source);
    for (const ScorePart& part : sheet.score) {
      sources.push_back(part.source);
      if (part.full_at_m) sources.push_back(part.full_at_m->source);
      if (part.full_at_share) sources.push_back(part.full_at_share->source);
      if (part.none_at_m) sources.push_back(part.none_at_m->source);
    }
    for (const Rule& rule : sheet.rules) {
      sources.push_back(rule.source);
      if (rule.needed_m) sources.push_back(rule.needed_m->source);
      if (rule.most_m2) sources.push_back(rule.most_m2->source);
      if (rule.most_m) sources.push_back(rule.most_m->source);
      if (rule.waiver.not_within_m) sources.push_back(rule.waiver.not_within_m->source);
      EXPECT_TRUE(!rule.enabled || !needsFigure(rule) || rule.needed_m) << sheet.id << rule.id;
    }
    for (const PracticeLine& line : sheet.practice) sources.push_back(line.source);
    if (sheet.mains_volts) sources.push_back(sheet.mains_volts->source);
    for (const Source& source : sources) EXPECT_FALSE(source.text.empty()) << sheet.id;
  }
}

TEST(RuleSheet, PublishedSourcesNameAYearOrALivePage) {
  static const std::regex kDated("\\b(19|20)[0-9]{2}\\b|live page");
  for (const resources::BuiltInFile& file : resources::builtInRuleSheets()) {
    for (const Rule& rule : sheetOf(file.id).rules) {
      for (const Source* source : {&rule.source, rule.needed_m ? &rule.needed_m->source : nullptr,
                                   rule.most_m2 ? &rule.most_m2->source : nullptr,
                                   rule.most_m ? &rule.most_m->source : nullptr}) {
        if (source == nullptr || source->mark != Mark::published) continue;
        const bool dated = std::regex_search(source->text, kDated);
        EXPECT_TRUE(dated) << file.id << " " << rule.id << ": " << source->text;
      }
    }
  }
}

/// One line of the table the Irish sheet starts as.
struct Row {
  const char* rule;
  std::vector<Part> applies_to;
  double needed_m;  ///< below 0: no distance
  Mark mark;        ///< of the distance
  Severity severity;
  bool waivable;
  plan::Evidence evidence;
  bool least_bad;
};

TEST(RuleSheet, IrishSheetIsTheAgreedTable) {
  using enum Part;
  using E = plan::Evidence;
  constexpr auto binding = Severity::binding;
  constexpr auto advisory = Severity::advisory;
  constexpr auto preference = Severity::preference;
  const std::vector<Row> rows = {
      {"openings", {outlet, fan}, 1.5, Mark::common_practice, binding, true, E::reason, true},
      {"fixed-panes", {outlet, fan}, 1.5, Mark::own, advisory, false, E::reason, true},
      {"intake", {outlet, fan}, 3.0, Mark::own, binding, false, E::reason, false},
      {"jambs", {hole}, 0.15, Mark::common_practice, binding, true, E::reason, true},
      {"corners", {hole}, 0.3, Mark::common_practice, binding, true, E::reason, true},
      {"services", {hole, dig, void_}, 1.0, Mark::own, binding, true, E::locating_record, false},
      {"drains", {hole, dig, void_}, 0.5, Mark::own, binding, false, E::reason, false},
      {"flue", {outlet, fan, dig, riser}, 1.0, Mark::own, binding, false, E::reason, false},
      {"wet-room", {hole}, -1, Mark::own, binding, true, E::drains_located, false},
      {"kitchen-sink", {hole}, 1.0, Mark::own, advisory, false, E::reason, true},
      {"heating", {hole}, 0.3, Mark::own, binding, true, E::reason, true},
      {"floor-behind", {hole, void_}, -1, Mark::own, binding, false, E::reason, false},
      {"foundation", {hole}, -1, Mark::own, binding, true, E::engineers_note, false},
      {"party-wall", {hole, outlet, fan, riser}, -1, Mark::own, binding, false, E::reason, false},
      {"party-line", {hole}, 1.0, Mark::own, advisory, false, E::reason, true},
      {"free-depth", {dig}, 0.9, Mark::common_practice, binding, true, E::consent, false},
      {"free-depth-tight", {dig}, 1.2, Mark::common_practice, advisory, false, E::reason, true},
      {"outside-ground", {dig}, -1, Mark::own, binding, true, E::consent, true},
      {"hole", {hole}, -1, Mark::own, binding, true, E::engineers_note, false},
      {"sump-floor", {void_}, -1, Mark::own, advisory, false, E::reason, true},
      {"front", {hole, fan}, -1, Mark::own, advisory, false, E::reason, true},
      {"rear-or-gable", {hole}, -1, Mark::own, preference, false, E::reason, false},
      {"room-preference", {hole}, -1, Mark::own, preference, false, E::reason, false},
      {"outlet-above-ground", {outlet}, 0.3, Mark::own, binding, false, E::reason, false},
      {"outlet-above-eaves", {outlet}, 0.0, Mark::published, preference, false, E::reason, false},
      {"outlet-under-eaves", {outlet}, 1.0, Mark::own, binding, true, E::reason, true},
      {"discharge-jet", {outlet}, 3.0, Mark::own, advisory, false, E::reason, true},
      {"riser-before-opening", {riser}, 0.05, Mark::own, binding, false, E::reason, false},
      {"overhead-line", {riser, fan, outlet}, 1.0, Mark::own, binding, true, E::consent, false},
      {"fan-above-ground", {fan}, 0.15, Mark::own, binding, false, E::reason, false},
      {"fan-under-outlet", {fan}, 0.15, Mark::own, binding, false, E::reason, false},
      {"fan-roof-space", {fan}, -1, Mark::own, binding, false, E::reason, false},
      {"sitting-place", {outlet}, 3.0, Mark::own, advisory, false, E::reason, true},
      {"covered", {outlet, fan}, 0.5, Mark::own, binding, false, E::reason, false},
      {"over-path", {outlet}, 2.0, Mark::own, advisory, false, E::reason, true},
      {"fan-noise", {fan}, 3.0, Mark::own, advisory, false, E::reason, true},
      {"low-outlet-enclosed", {outlet}, 2.0, Mark::own, binding, false, E::reason, false},
  };
  const RuleSheet sheet = sheetOf("ie-practice");
  std::vector<std::string> enabled;
  for (const Rule& rule : sheet.rules) {
    if (rule.enabled) enabled.push_back(rule.id);
  }
  ASSERT_EQ(enabled.size(), rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Row& row = rows[i];
    SCOPED_TRACE(row.rule);
    ASSERT_EQ(enabled[i], row.rule);
    const Rule& rule = *sheet.find(row.rule);
    EXPECT_EQ(rule.applies_to, row.applies_to);
    EXPECT_EQ(rule.needed_m ? rule.needed_m->value : -1.0, row.needed_m);
    if (rule.needed_m) {
      EXPECT_EQ(rule.needed_m->source.mark, row.mark);
    }
    EXPECT_EQ(rule.severity, row.severity);
    EXPECT_EQ(rule.waiver.allowed, row.waivable);
    if (row.waivable) {
      EXPECT_EQ(rule.waiver.evidence, row.evidence);
    }
    EXPECT_EQ(rule.least_bad, row.least_bad);
    EXPECT_EQ(rule.path, PathKind::straight);
    EXPECT_EQ(rule.from, MeasuredFrom::edge);
  }
  EXPECT_EQ(sheet.find("services")->waiver.not_within_m->value, 0.5);
  EXPECT_TRUE(sheet.find("services")->waiver.only_located);
  // As summarised by housebuild.com, radon sumps (live page): 250 m2 and 15 m for one sump.
  EXPECT_EQ(sheet.find("sump-floor")->most_m2->value, 250.0);
  EXPECT_EQ(sheet.find("sump-floor")->most_m->value, 15.0);
}

TEST(RuleSheet, IrishSheetOnThingsValuesAndTheRest) {
  using enum ThingKind;
  const RuleSheet sheet = sheetOf("ie-practice");
  EXPECT_EQ(sheet.find("openings")->things,
            (std::vector{window, door, glazed_door, air_vent, soffit_vent, roof_window,
                         neighbour_opening}));
  EXPECT_EQ(sheet.find("services")->things, (std::vector{gas, electricity, telecom, oil}));
  EXPECT_EQ(sheet.find("drains")->things,
            (std::vector{water, drain, waste, gully, inspection_chamber, soakaway, septic_tank}));
  EXPECT_EQ(sheet.find("floor-behind")->values, (Found{"ground_bearing_slab", "sealed_oversite"}));
  for (const char* rule : {"floor-behind", "foundation", "free-depth", "outside-ground"}) {
    EXPECT_TRUE(sheet.find(rule)->unknown_gates) << rule;
  }
  EXPECT_EQ(sheet.gates.size(), 9U);
  EXPECT_EQ(sheet.default_core_mm.value, 127.0);
  EXPECT_EQ(sheet.corner_turn_deg.value, 10.0);
  EXPECT_EQ(sheet.accuracy_m(plan::SurveyMethod::map_outline), 0.75);
  EXPECT_EQ(sheet.accuracy_m(plan::SurveyMethod::not_stated),
            sheet.accuracy_m(plan::SurveyMethod::tape));
  double weights = 0.0;
  for (const ScorePart& part : sheet.score) weights += part.weight;
  EXPECT_EQ(weights, 100.0);
}

TEST(RuleSheet, PracticeIsOfItsOwnCountry) {
  const RuleSheet us = sheetOf("us-practice");
  EXPECT_NE(us.practiceOn("again")->text.find("two years"), std::string::npos);
  EXPECT_EQ(us.practiceOn("again")->source.mark, Mark::published);
  EXPECT_EQ(us.practiceOn("depths"), nullptr);  // none was found
  EXPECT_EQ(us.mains_volts->value, 120.0);
  const RuleSheet ie = sheetOf("ie-practice");
  EXPECT_NE(ie.practiceOn("again")->text.find("five years"), std::string::npos);
  EXPECT_EQ(ie.practiceOn("again")->source.mark, Mark::common_practice);
  EXPECT_EQ(ie.practiceOn("depths")->source.mark, Mark::from_memory);
  EXPECT_EQ(ie.practiceOn("sale"), nullptr);
  EXPECT_EQ(sheetOf("uk-practice").practiceOn("sale")->source.mark, Mark::from_memory);
  EXPECT_EQ(sheetOf("uk-practice").practiceOn("high")->source.mark, Mark::published);
  EXPECT_NE(ie.practiceOn("services")->source.text,
            sheetOf("uk-practice").practiceOn("services")->source.text);
  EXPECT_TRUE(sheetOf("template").practice.empty());
}

TEST(RuleSheet, GapsAreThereSwitchedOffAndEmpty) {
  for (const char* id : {"ie-practice", "uk-practice", "us-practice"}) {
    const RuleSheet sheet = sheetOf(id);
    for (const char* gap : {"boundary", "tank", "air-conditioner"}) {
      ASSERT_NE(sheet.find(gap), nullptr) << id << gap;
      EXPECT_FALSE(sheet.find(gap)->enabled) << id << gap;
      EXPECT_FALSE(sheet.find(gap)->needed_m) << id << gap;
    }
    EXPECT_FALSE(sheet.gaps.empty());
  }
}

TEST(RuleSheet, TemplateHoldsNoFigureAndAcceptsNoFloor) {
  const RuleSheet sheet = sheetOf("template");
  for (const Rule& rule : sheet.rules) {
    EXPECT_FALSE(rule.needed_m) << rule.id;
    EXPECT_EQ(rule.enabled, rule.id == "floor-behind") << rule.id;
  }
  EXPECT_TRUE(sheet.find("floor-behind")->values.empty());
  for (const Rule& rule : sheetOf("ie-practice").rules) {
    EXPECT_NE(sheet.find(rule.id), nullptr) << rule.id;
  }
}

TEST(RuleSheet, UkSheetDiffersFromTheIrishOnlyInSourcesAndNotes) {
  const RuleSheet ie = sheetOf("ie-practice");
  const RuleSheet uk = sheetOf("uk-practice");
  ASSERT_EQ(ie.rules.size(), uk.rules.size());
  for (std::size_t i = 0; i < ie.rules.size(); ++i) {
    Rule a = ie.rules[i];
    Rule b = uk.rules[i];
    if (a.needed_m && b.needed_m) a.needed_m->source = b.needed_m->source;
    if (a.waiver.not_within_m) a.waiver.not_within_m->source = b.waiver.not_within_m->source;
    if (a.most_m2 && b.most_m2) a.most_m2->source = b.most_m2->source;
    if (a.most_m && b.most_m) a.most_m->source = b.most_m->source;
    a.source = b.source;
    a.note = b.note;
    EXPECT_EQ(a, b) << a.id;
  }
  EXPECT_EQ(uk.find("openings")->needed_m->source.mark, Mark::published);
}

TEST(RuleSheet, MemberWithoutAWordTakesItsDefault) {
  const RuleSheet sheet = sheetOf("ie-practice");
  EXPECT_TRUE(sheet.find("front")->enabled);
  EXPECT_FALSE(sheet.find("front")->waiver.allowed);
  EXPECT_EQ(sheet.find("nothing of that name"), nullptr);
}

TEST(RuleSheetProblems, NotJsonSaysWhere) {
  const auto problems = readRuleSheet(R"({"format": })").problems();
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].message, base::Message("sheet.not-json", {base::count("byte", 12)}));
  EXPECT_EQ(problemsOf(""), Found{"sheet.not-json "});
  EXPECT_EQ(problemsOf(R"({"version": 1e999})"), Found{"sheet.not-json "});
  const auto after = readRuleSheet(std::string("{}\0{}", 5)).problems();
  ASSERT_EQ(after.size(), 1U);
  EXPECT_EQ(after[0].message, base::Message("sheet.not-json", {base::count("byte", 3)}));
  EXPECT_EQ(problemsOf("{\"format\": \"\xff\"}"), Found{"sheet.not-json "});
}

TEST(RuleSheetProblems, TooLarge) {
  EXPECT_EQ(problemsOf(std::string(kMaxSheetBytes + 1, ' ')), Found{"sheet.too-large "});
  EXPECT_EQ(problemsOf(std::string(kMaxSheetBytes, '[')), Found{"sheet.not-json "});
}

TEST(RuleSheetProblems, OtherFormatOrNewerVersionIsAllThatIsSaid) {
  EXPECT_EQ(problemsOf("[]"), Found{"sheet.not-a-sheet "});
  EXPECT_EQ(problemsOf(R"({"format": "sumpwright.job", "version": 1})"),
            Found{"sheet.not-a-sheet "});
  EXPECT_EQ(changed([](Json& s) {
              s["version"] = 2;
              s["rules"] = "new";
            }),
            Found{"sheet.version /version"});
  EXPECT_EQ(changed([](Json& s) { s["version"] = "1"; }), Found{"sheet.wrong-type /version"});
  EXPECT_EQ(changed([](Json& s) { s.erase("version"); }), Found{"sheet.missing-key "});
}

TEST(RuleSheetProblems, WrongTypeOfEachSort) {
  EXPECT_EQ(changed([](Json& s) { s["title"] = 5; }), Found{"sheet.wrong-type /title"});
  EXPECT_EQ(changed([](Json& s) { s["rules"] = 5; }), Found{"sheet.wrong-type /rules"});
  EXPECT_EQ(changed([](Json& s) { s["gaps"][0] = 5; }), Found{"sheet.wrong-type /gaps/0"});
  EXPECT_EQ(withMember("front", "enabled", "yes"),
            Found{"sheet.wrong-type " + pointerTo("front", "/enabled")});
  EXPECT_EQ(withMember("front", "severity", 1),
            Found{"sheet.wrong-type " + pointerTo("front", "/severity")});
  EXPECT_EQ(withMember("jambs", "needed_m", 0.15),
            Found{"sheet.wrong-type " + pointerTo("jambs", "/needed_m")});
}

TEST(RuleSheetProblems, MissingKeyAndMissingSource) {
  EXPECT_EQ(changed([](Json& s) { s["rules"][0].erase("kind"); }),
            Found{"sheet.missing-key /rules/0"});
  EXPECT_EQ(changed([](Json& s) { s["rules"][0].erase("source"); }),
            Found{"sheet.no-source /rules/0"});
  EXPECT_EQ(changed([](Json& s) { s["rules"][0]["needed_m"].erase("source"); }),
            Found{"sheet.no-source /rules/0/needed_m"});
  EXPECT_EQ(changed([](Json& s) { s["rules"][0]["needed_m"]["source"]["text"] = ""; }),
            Found{"sheet.no-source /rules/0/needed_m/source"});
  EXPECT_EQ(changed([](Json& s) { s["default_core_mm"]["source"].erase("mark"); }),
            Found{"sheet.missing-key /default_core_mm/source"});
}

TEST(RuleSheetProblems, NewerVersionIsToldByItsNumber) {
  const auto problems =
      readRuleSheet(R"({"format": "sumpwright.rules", "version": 1e300})").problems();
  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].message, base::Message("sheet.version", {base::text("version", "1e+300"),
                                                                 base::count("known", 1)}));
}

TEST(RuleSheetProblems, AReasonIsForKindsWithoutADistance) {
  EXPECT_EQ(withMember("foundation", "reason", "no raft is cored"), Found{});
  EXPECT_EQ(withMember("openings", "reason", "too near"),
            Found{"sheet.unknown-key " + pointerTo("openings", "/reason")});
}

TEST(RuleSheetProblems, UnknownKeyIsPointedAtWithItsNameEscaped) {
  EXPECT_EQ(withMember("front", "neded_m", 1),
            Found{"sheet.unknown-key " + pointerTo("front", "/neded_m")});
  EXPECT_EQ(changed([](Json& s) { s["a/b~c"] = 1; }), Found{"sheet.unknown-key /a~1b~0c"});
}

TEST(RuleSheetProblems, UnknownWord) {
  EXPECT_EQ(withMember("front", "severity", "strict"),
            Found{"sheet.unknown-word " + pointerTo("front", "/severity")});
  EXPECT_EQ(withMember("openings", "things", {"window", "hatch"}),
            Found{"sheet.unknown-word " + pointerTo("openings", "/things/1")});
  EXPECT_EQ(withMember("wet-room", "values", {"bathroom", "sauna"}),
            Found{"sheet.unknown-word " + pointerTo("wet-room", "/values/1")});
  EXPECT_EQ(withMember("floor-behind", "values", {"concrete"}),
            Found{"sheet.unknown-word " + pointerTo("floor-behind", "/values/0")});
  EXPECT_EQ(withMember("foundation", "values", {"front"}),
            Found{"sheet.unknown-word " + pointerTo("foundation", "/values/0")});
  EXPECT_EQ(changed([](Json& s) { s["score"][2]["values"][0]["value"] = "side"; }),
            Found{"sheet.unknown-word /score/2/values/0/value"});
  EXPECT_EQ(changed([](Json& s) { s["gates"][0]["looked_for"] = "standby_pipe"; }),
            Found{"sheet.unknown-word /gates/0/looked_for"});
}

TEST(RuleSheetProblems, ThingThatTheKindCannotLookAt) {
  EXPECT_EQ(withMember("openings", "things", {"corner"}),
            Found{"sheet.wrong-thing " + pointerTo("openings", "/things/0")});
  EXPECT_EQ(withMember("corners", "things", {"window"}),
            Found{"sheet.wrong-thing " + pointerTo("corners", "/things/0")});
  EXPECT_EQ(withMember("heating", "things", {"sink"}),
            Found{"sheet.wrong-thing " + pointerTo("heating", "/things/0")});
  EXPECT_EQ(withMember("front", "things", {"window"}),
            Found{"sheet.wrong-thing " + pointerTo("front", "/things/0")});
}

// Heights are measured of one part: of another they would be judged in one way and not in the next.
TEST(RuleSheetProblems, PartThatTheMeasureIsNotOf) {
  EXPECT_EQ(withMember("outlet-above-eaves", "applies_to", {"fan"}),
            Found{"sheet.wrong-part " + pointerTo("outlet-above-eaves", "/applies_to")});
  EXPECT_EQ(withMember("outlet-above-ground", "applies_to", {"outlet", "fan"}),
            Found{"sheet.wrong-part " + pointerTo("outlet-above-ground", "/applies_to")});
  EXPECT_EQ(withMember("riser-before-opening", "applies_to", {"riser", "hole"}),
            Found{"sheet.wrong-part " + pointerTo("riser-before-opening", "/applies_to")});
  EXPECT_EQ(withMember("riser-before-opening", "applies_to", {"riser", "fan"}), Found{});
}

TEST(RuleSheetProblems, EnabledDistanceRuleNeedsItsFigure) {
  EXPECT_EQ(withMember("openings", "needed_m", nullptr),
            Found{"sheet.no-figure " + pointerTo("openings", "/needed_m")});
  EXPECT_EQ(withMember("free-depth", "needed_m", nullptr),
            Found{"sheet.no-figure " + pointerTo("free-depth", "/needed_m")});
  EXPECT_EQ(withMember("boundary", "enabled", true),
            Found{"sheet.no-figure " + pointerTo("boundary", "/needed_m")});
  EXPECT_EQ(changed([](Json& s) { s["score"][1].erase("full_at_m"); }),
            Found{"sheet.no-figure /score/1/full_at_m"});
}

TEST(RuleSheetProblems, OnlyRulesOfWallsSpeakOfRunsNotPlaced) {
  EXPECT_EQ(changed([](Json& s) { ruleOf(s, "openings")["unplaced_only"] = true; }),
            Found{"sheet.unknown-key " + pointerTo("openings", "/unplaced_only")});
  EXPECT_EQ(changed([](Json& s) { ruleOf(s, "front")["unplaced_only"] = true; }), Found{});
}

TEST(RuleSheetProblems, OneSumpsFloorNeedsAFigureAndIsOfItsKindAlone) {
  EXPECT_EQ(changed([](Json& s) {
              ruleOf(s, "sump-floor").erase("most_m2");
              ruleOf(s, "sump-floor").erase("most_m");
            }),
            Found{"sheet.no-figure " + pointerTo("sump-floor", "/most_m2")});
  EXPECT_EQ(changed([](Json& s) { ruleOf(s, "sump-floor").erase("most_m2"); }), Found{});
  EXPECT_EQ(
      changed([](Json& s) { ruleOf(s, "front")["most_m"] = ruleOf(s, "sump-floor")["most_m"]; }),
      Found{"sheet.unknown-key " + pointerTo("front", "/most_m")});
  EXPECT_EQ(changed([](Json& s) { ruleOf(s, "cable")["enabled"] = true; }),
            Found{"sheet.no-figure " + pointerTo("cable", "/most_m")});
  EXPECT_EQ(changed([](Json& s) { s["score"][3]["none_at_m"]["value"] = 1.0; }),
            Found{"sheet.no-figure /score/3/full_at_m"});
  EXPECT_EQ(changed([](Json& s) { s["score"][0]["full_at_share"]["value"] = 1.5; }),
            Found{"sheet.out-of-range /score/0/full_at_share/value"});
}

TEST(RuleSheetProblems, EmptyLists) {
  const Json none = Json::array();
  EXPECT_EQ(withMember("front", "applies_to", none),
            Found{"sheet.empty " + pointerTo("front", "/applies_to")});
  EXPECT_EQ(withMember("openings", "things", none),
            Found{"sheet.empty " + pointerTo("openings", "/things")});
  EXPECT_EQ(withMember("front", "values", none),
            Found{"sheet.empty " + pointerTo("front", "/values")});
  EXPECT_EQ(withMember("front", "title", ""), Found{"sheet.empty " + pointerTo("front", "/title")});
}

TEST(RuleSheetProblems, NumbersOutOfRange) {
  EXPECT_EQ(changed([](Json& s) { s["rules"][0]["needed_m"]["value"] = -0.1; }),
            Found{"sheet.out-of-range /rules/0/needed_m/value"});
  EXPECT_EQ(changed([](Json& s) { s["rules"][0]["needed_m"]["value"] = 1500; }),
            Found{"sheet.out-of-range /rules/0/needed_m/value"});
  EXPECT_EQ(changed([](Json& s) { s["score"][2]["values"][0]["share"] = 1.01; }),
            Found{"sheet.out-of-range /score/2/values/0/share"});
  EXPECT_EQ(changed([](Json& s) { s["score"][0]["weight"] = 0; }),
            Found{"sheet.weight /score/0/weight"});
  EXPECT_EQ(changed([](Json& s) { s["score"][0]["weight"] = -35; }),
            Found{"sheet.weight /score/0/weight"});
}

TEST(RuleSheetProblems, RepeatedAndDangling) {
  EXPECT_EQ(changed([](Json& s) { s["rules"][1]["id"] = s["rules"][0]["id"]; }),
            Found{"sheet.repeated /rules/1/id"});
  EXPECT_EQ(changed([](Json& s) { s["gates"][1]["looked_for"] = "openings"; }),
            Found{"sheet.repeated /gates/1/looked_for"});
  EXPECT_EQ(changed([](Json& s) { s["score"][1]["kind"] = "reach"; }),
            Found{"sheet.repeated /score/1/kind"});
  EXPECT_EQ(changed([](Json& s) { s["gates"][0]["rule"] = "windows"; }),
            Found{"sheet.no-such-rule /gates/0/rule"});
}

TEST(RuleSheetProblems, AccuracyOfAnUnstatedSurveyIsNeeded) {
  EXPECT_EQ(changed([](Json& s) { s["survey_accuracy"].erase(s["survey_accuracy"].size() - 1); }),
            Found{"sheet.no-accuracy /survey_accuracy"});
}

TEST(RuleSheetProblems, AllAreGivenAtOnce) {
  EXPECT_EQ(changed([](Json& s) {
              s["title"] = 5;
              s["rules"][0]["needed_m"]["value"] = "far";
              s["rules"][1]["severity"] = "strict";
              s["rules"][2].erase("source");
            }),
            (Found{"sheet.wrong-type /title", "sheet.wrong-type /rules/0/needed_m/value",
                   "sheet.unknown-word /rules/1/severity", "sheet.no-source /rules/2"}));
}

}  // namespace
}  // namespace sumpwright::rules
