#include "rules/RuleSheetCheck.h"

#include <algorithm>
#include <array>
#include <functional>
#include <span>
#include <string_view>
#include <utility>

#include "rules/RuleSheetNames.h"

namespace sumpwright::rules {
namespace {

using base::Arg;
using Words = std::vector<std::string_view>;

void report(base::Problems& problems, std::string id, std::string pointer,
            std::vector<Arg> args = {}) {
  problems.push_back({base::Message(std::move(id), std::move(args)), std::move(pointer),
                      base::Gravity::unreadable});
}

template <class E>
Words wordsOf() {
  const auto names = plan::namesOf<E>();
  return {names.begin(), names.end()};
}

bool holds(const Words& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// The values a rule may name; empty where its kind names none.
Words allowedValues(const Rule& rule) {
  if (rule.kind == RuleKind::room_behind) return wordsOf<plan::RoomUse>();
  if (rule.kind == RuleKind::floor_behind) {
    Words words = wordsOf<plan::FloorKind>();
    words.emplace_back("sealed_oversite");
    return words;
  }
  if (rule.kind != RuleKind::wall) return {};
  switch (rule.attribute) {
    case WallAttribute::kind:
      return wordsOf<plan::WallKind>();
    case WallAttribute::elevation:
      return wordsOf<plan::Elevation>();
    case WallAttribute::foundation:
      return wordsOf<plan::Foundation>();
    case WallAttribute::ground:
      return wordsOf<plan::OutsideGround>();
    case WallAttribute::free_depth_m:
      return {};
  }
  return {};
}

/// The kind of rule that can look at a thing.
RuleKind kindFor(ThingKind thing) {
  switch (thing) {
    case ThingKind::radiator:
    case ThingKind::heating_pipe:
      return RuleKind::drill_line;
    case ThingKind::sink:
    case ThingKind::bath_fitting:
    case ThingKind::wc_fitting:
    case ThingKind::other_fitting:
      return RuleKind::fitting_behind;
    case ThingKind::jamb:
    case ThingKind::door_width:
    case ThingKind::corner:
    case ThingKind::wall_feature:
      return RuleKind::along_wall;
    default:
      return RuleKind::clearance;
  }
}

bool measuresThings(DischargeMeasure measure) {
  return measure == DischargeMeasure::jet || measure == DischargeMeasure::near ||
         measure == DischargeMeasure::over;
}

bool looksAtThings(const Rule& rule) {
  if (rule.kind == RuleKind::discharge) return measuresThings(rule.measure);
  return rule.kind == RuleKind::clearance || rule.kind == RuleKind::along_wall ||
         rule.kind == RuleKind::drill_line || rule.kind == RuleKind::fitting_behind;
}

void checkValues(const Rule& rule, const std::string& pointer, base::Problems& problems) {
  const Words allowed = allowedValues(rule);
  for (std::size_t i = 0; i < rule.values.size(); ++i) {
    if (!holds(allowed, rule.values[i])) {
      report(problems, "sheet.unknown-word", pointer + "/values/" + std::to_string(i),
             {base::text("word", rule.values[i])});
    }
  }
  const bool mustName =
      rule.kind == RuleKind::room_behind || (rule.kind == RuleKind::wall && !needsFigure(rule));
  if (mustName && rule.values.empty()) report(problems, "sheet.empty", pointer + "/values");
}

void checkThings(const Rule& rule, const std::string& pointer, base::Problems& problems) {
  for (std::size_t i = 0; i < rule.things.size(); ++i) {
    const RuleKind kind =
        rule.kind == RuleKind::discharge ? RuleKind::clearance : rule.kind;  // alike as to things
    if (!looksAtThings(rule) || kindFor(rule.things[i]) != kind) {
      report(problems, "sheet.wrong-thing", pointer + "/things/" + std::to_string(i),
             {base::text("thing", std::string(plan::nameOf(rule.things[i]))),
              base::text("kind", std::string(plan::nameOf(rule.kind)))});
    }
  }
  if (looksAtThings(rule) && rule.things.empty())
    report(problems, "sheet.empty", pointer + "/things");
}

/// How much one sump serves, or how long a cable may be: only of the kinds suction and supply,
/// which need a figure to be on.
void checkMost(const Rule& rule, const std::string& pointer, base::Problems& problems) {
  const bool area = rule.kind == RuleKind::suction;
  const bool length = area || rule.kind == RuleKind::supply;
  if (length && rule.enabled && !rule.most_m2 && !rule.most_m) {
    report(problems, "sheet.no-figure", pointer + (area ? "/most_m2" : "/most_m"),
           {base::text("rule", rule.id)});
  }
  if (!area && rule.most_m2) {
    report(problems, "sheet.unknown-key", pointer + "/most_m2", {base::text("key", "most_m2")});
  }
  if (!length && rule.most_m) {
    report(problems, "sheet.unknown-key", pointer + "/most_m", {base::text("key", "most_m")});
  }
}

/// Reports every element whose key was there before.
template <class T, class Key>
void reportRepeats(const std::vector<T>& list, const std::string& pointer, const char* member,
                   Key key, base::Problems& problems) {
  std::vector<std::string> seen;
  for (std::size_t i = 0; i < list.size(); ++i) {
    const std::string word(key(list[i]));
    if (std::find(seen.begin(), seen.end(), word) != seen.end()) {
      report(problems, "sheet.repeated", pointer + "/" + std::to_string(i) + "/" + member,
             {base::text("word", word)});
    }
    seen.push_back(word);
  }
}

void checkGates(const RuleSheet& sheet, base::Problems& problems) {
  static const Words kinds = {"openings", "gas",   "electricity",   "water",  "telecom",
                              "oil",      "drain", "flue_terminal", "heating"};
  for (std::size_t i = 0; i < sheet.gates.size(); ++i) {
    const Gate& gate = sheet.gates[i];
    const std::string pointer = "/gates/" + std::to_string(i);
    if (!holds(kinds, gate.looked_for)) {
      report(problems, "sheet.unknown-word", pointer + "/looked_for",
             {base::text("word", gate.looked_for)});
    }
    if (sheet.find(gate.rule) == nullptr) {
      report(problems, "sheet.no-such-rule", pointer + "/rule", {base::text("rule", gate.rule)});
    }
  }
}

}  // namespace

bool needsFigure(const Rule& rule) {
  const bool levels =
      rule.kind == RuleKind::discharge && rule.measure != DischargeMeasure::roof_space;
  return looksAtThings(rule) || levels ||
         (rule.kind == RuleKind::wall && rule.attribute == WallAttribute::free_depth_m);
}

/// What a measure is of: eaves and walls ask for the outlet alone, the rest of levels for one part.
bool speaksOfRightParts(const Rule& rule) {
  const auto speaks = [&](Part part) {
    return std::find(rule.applies_to.begin(), rule.applies_to.end(), part) != rule.applies_to.end();
  };
  switch (rule.measure) {
    case DischargeMeasure::above_eaves:
    case DischargeMeasure::under_eaves:
    case DischargeMeasure::below_roof:
    case DischargeMeasure::jet:
    case DischargeMeasure::enclosed:
      return rule.applies_to == std::vector{Part::outlet};
    case DischargeMeasure::above_ground:
      return rule.applies_to == std::vector{Part::outlet} ||
             rule.applies_to == std::vector{Part::fan};
    case DischargeMeasure::below_outlet:
    case DischargeMeasure::roof_space:
      return rule.applies_to == std::vector{Part::fan};
    case DischargeMeasure::near:
    case DischargeMeasure::over:
      break;
  }
  return !speaks(Part::hole) && !speaks(Part::dig);
}

void checkRule(const Rule& rule, const std::string& pointer, base::Problems& problems) {
  if (rule.id.empty()) report(problems, "sheet.empty", pointer + "/id");
  if (rule.title.empty()) report(problems, "sheet.empty", pointer + "/title");
  if (rule.applies_to.empty()) report(problems, "sheet.empty", pointer + "/applies_to");
  if (rule.enabled && needsFigure(rule) && !rule.needed_m) {
    report(problems, "sheet.no-figure", pointer + "/needed_m", {base::text("rule", rule.id)});
  }
  if (rule.kind == RuleKind::discharge && !rule.applies_to.empty() && !speaksOfRightParts(rule)) {
    report(problems, "sheet.wrong-part", pointer + "/applies_to", {base::text("rule", rule.id)});
  }
  checkMost(rule, pointer, problems);
  if (rule.in_height_m && rule.kind != RuleKind::drill_line) {
    report(problems, "sheet.unknown-key", pointer + "/in_height_m",
           {base::text("key", "in_height_m")});
  }
  if (rule.clear_below_m && rule.kind != RuleKind::clearance) {
    report(problems, "sheet.unknown-key", pointer + "/clear_below_m",
           {base::text("key", "clear_below_m")});
  }
  if (rule.unplaced_only && rule.kind != RuleKind::wall) {
    report(problems, "sheet.unknown-key", pointer + "/unplaced_only",
           {base::text("key", "unplaced_only")});
  }
  if (!rule.reason.empty() && needsFigure(rule)) {
    report(problems, "sheet.unknown-key", pointer + "/reason", {base::text("key", "reason")});
  }
  checkThings(rule, pointer, problems);
  checkValues(rule, pointer, problems);
}

void checkScorePart(const ScorePart& part, const std::string& pointer, base::Problems& problems) {
  if (!(part.weight > 0.0)) report(problems, "sheet.weight", pointer + "/weight");
  if (part.kind == PartKind::margin && (!part.full_at_m || !(part.full_at_m->value > 0.0))) {
    report(problems, "sheet.no-figure", pointer + "/full_at_m", {base::text("rule", part.title)});
  }
  if (part.none_at_m && (!part.full_at_m || part.none_at_m->value <= part.full_at_m->value)) {
    report(problems, "sheet.no-figure", pointer + "/full_at_m", {base::text("rule", part.title)});
  }
  const auto& full = part.full_at_share;
  if (full && !(full->value > 0.0 && full->value <= 1.0)) {
    report(problems, "sheet.out-of-range", pointer + "/full_at_share/value",
           {base::number("least", 0.0), base::number("most", 1.0)});
  }
  Words allowed;
  if (part.kind == PartKind::wall) allowed = wordsOf<plan::Elevation>();
  if (part.kind == PartKind::room) allowed = wordsOf<plan::RoomUse>();
  if (part.kind == PartKind::pipe) allowed = {"fits", "fits_if_footing"};
  if (!allowed.empty()) allowed.emplace_back("other");
  for (std::size_t i = 0; i < part.values.size(); ++i) {
    const ValueScore& score = part.values[i];
    const std::string place = pointer + "/values/" + std::to_string(i);
    if (!holds(allowed, score.value)) {
      report(problems, "sheet.unknown-word", place + "/value", {base::text("word", score.value)});
    }
    if (!(score.share >= 0.0 && score.share <= 1.0)) {
      report(problems, "sheet.out-of-range", place + "/share",
             {base::number("least", 0.0), base::number("most", 1.0)});
    }
  }
}

void checkSheet(const RuleSheet& sheet, base::Problems& problems) {
  if (sheet.id.empty()) report(problems, "sheet.empty", "/id");
  reportRepeats(
      sheet.rules, "/rules", "id", [](const Rule& r) { return r.id; }, problems);
  reportRepeats(
      sheet.gates, "/gates", "looked_for", [](const Gate& g) { return g.looked_for; }, problems);
  reportRepeats(
      sheet.score, "/score", "kind", [](const ScorePart& p) { return plan::nameOf(p.kind); },
      problems);
  reportRepeats(
      sheet.survey_accuracy, "/survey_accuracy", "method",
      [](const SurveyAccuracy& a) { return plan::nameOf(a.method); }, problems);
  checkGates(sheet, problems);
  const bool stated = std::any_of(
      sheet.survey_accuracy.begin(), sheet.survey_accuracy.end(),
      [](const SurveyAccuracy& a) { return a.method == plan::SurveyMethod::not_stated; });
  if (!stated) report(problems, "sheet.no-accuracy", "/survey_accuracy");
}

}  // namespace sumpwright::rules
