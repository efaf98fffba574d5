#include "rules/RuleSheet.h"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>

#include "base/Pointer.h"
#include "rules/RuleSheetCheck.h"
#include "rules/RuleSheetNames.h"

namespace sumpwright::rules {
namespace {

using Json = nlohmann::json;
using base::Arg;

constexpr int kSheetVersion = 1;
constexpr const char* kSheetFormat = "sumpwright.rules";

/// A JSON value, where it stands, and where its problems go.
struct Node {
  const Json& json;
  std::string pointer;
  base::Problems& problems;

  void report(std::string id, std::vector<Arg> args = {}) const {
    problems.push_back(
        {base::Message(std::move(id), std::move(args)), pointer, base::Gravity::unreadable});
  }
  void wrongType(const char* expected) const {
    report("sheet.wrong-type", {base::phrase("expected", base::Message(expected))});
  }
  Node child(const std::string& step, const Json& value) const {
    return {value, pointer + "/" + step, problems};
  }
};

void read(const Node& node, std::string& out) {
  if (!node.json.is_string()) return node.wrongType("sheet.type.text");
  out = node.json.get<std::string>();
}

void read(const Node& node, bool& out) {
  if (!node.json.is_boolean()) return node.wrongType("sheet.type.yes-no");
  out = node.json.get<bool>();
}

void read(const Node& node, double& out) {
  if (!node.json.is_number()) return node.wrongType("sheet.type.number");
  out = node.json.get<double>();
}

template <class E>
requires std::is_enum_v<E>
void read(const Node& node, E& out) {
  if (!node.json.is_string()) return node.wrongType("sheet.type.text");
  const auto word = node.json.get<std::string>();
  if (const auto value = plan::valueOf<E>(word))
    out = *value;
  else
    node.report("sheet.unknown-word", {base::text("word", word)});
}

// Structs are read by the functions further down, which these find by argument type.
void read(const Node& node, Source& out);
void read(const Node& node, Figure& out);
void read(const Node& node, WaiverRule& out);
void read(const Node& node, Rule& out);
void read(const Node& node, Gate& out);
void read(const Node& node, ValueScore& out);
void read(const Node& node, ScorePart& out);
void read(const Node& node, SurveyAccuracy& out);
void read(const Node& node, SheetGap& out);
void read(const Node& node, PracticeLine& out);

template <class T>
void read(const Node& node, std::optional<T>& out) {
  if (node.json.is_null()) return;
  read(node, out.emplace());
}

template <class T>
void read(const Node& node, std::vector<T>& out) {
  if (!node.json.is_array()) return node.wrongType("sheet.type.list");
  out.resize(node.json.size());
  for (std::size_t i = 0; i < out.size(); ++i) {
    read(node.child(std::to_string(i), node.json[i]), out[i]);
  }
}

/// The members of one object: needed ones, optional ones, and at the end those nobody asked for.
class Fields {
 public:
  explicit Fields(const Node& node) : m_node(node) {
    if (!node.json.is_object()) node.wrongType("sheet.type.object");
  }

  template <class T>
  Fields& need(const char* key, T& out) {
    if (!take(key, out) && m_node.json.is_object()) missing(key);
    return *this;
  }
  template <class T>
  Fields& may(const char* key, T& out) {
    take(key, out);
    return *this;
  }
  /// A misspelt key would be a rule that silently does nothing, so every unknown one is reported.
  void end() const {
    if (!m_node.json.is_object()) return;
    for (const auto& [key, value] : m_node.json.items()) {
      if (std::find(m_known.begin(), m_known.end(), key) == m_known.end()) {
        m_node.child(base::pointerStep(key), value)
            .report("sheet.unknown-key", {base::text("key", key)});
      }
    }
  }

 private:
  template <class T>
  bool take(const char* key, T& out) {
    m_known.emplace_back(key);
    if (!m_node.json.is_object()) return false;
    const auto found = m_node.json.find(key);
    if (found == m_node.json.end()) return false;
    read(m_node.child(key, *found), out);
    return true;
  }
  void missing(const char* key) const {
    if (std::string_view(key) == "source")
      m_node.report("sheet.no-source");
    else
      m_node.report("sheet.missing-key", {base::text("key", key)});
  }

  const Node& m_node;
  std::vector<std::string> m_known;
};

/// No problem since: what a value means is only checked where it was read whole.
bool cleanSince(const Node& node, std::size_t before) { return node.problems.size() == before; }

void read(const Node& node, Source& out) {
  const std::size_t before = node.problems.size();
  Fields(node).need("mark", out.mark).need("text", out.text).end();
  if (cleanSince(node, before) && out.text.empty()) node.report("sheet.no-source");
}

void read(const Node& node, Figure& out) {
  const std::size_t before = node.problems.size();
  Fields(node).need("value", out.value).need("source", out.source).end();
  constexpr double kMost =
      1000.0;  // own figure: nothing a sheet measures in m, mm or degrees is more
  if (cleanSince(node, before) && !(out.value >= 0.0 && out.value <= kMost)) {
    node.child("value", node.json["value"])
        .report("sheet.out-of-range", {base::number("least", 0.0), base::number("most", kMost)});
  }
}

void read(const Node& node, WaiverRule& out) {
  Fields(node)
      .need("allowed", out.allowed)
      .may("evidence", out.evidence)
      .may("not_within_m", out.not_within_m)
      .may("only_located", out.only_located)
      .end();
}

void read(const Node& node, Rule& out) {
  const std::size_t before = node.problems.size();
  Fields(node)
      .need("id", out.id)
      .need("title", out.title)
      .need("kind", out.kind)
      .may("enabled", out.enabled)
      .need("severity", out.severity)
      .need("applies_to", out.applies_to)
      .may("things", out.things)
      .may("needed_m", out.needed_m)
      .may("in_height_m", out.in_height_m)
      .may("most_m2", out.most_m2)
      .may("most_m", out.most_m)
      .may("path", out.path)
      .may("from", out.from)
      .may("measure", out.measure)
      .may("clear_below_m", out.clear_below_m)
      .may("attribute", out.attribute)
      .may("values", out.values)
      .may("unknown_gates", out.unknown_gates)
      .may("unplaced_only", out.unplaced_only)
      .may("waiver", out.waiver)
      .may("least_bad", out.least_bad)
      .may("reason", out.reason)
      .need("source", out.source)
      .may("note", out.note)
      .end();
  if (cleanSince(node, before)) checkRule(out, node.pointer, node.problems);
}

void read(const Node& node, Gate& out) {
  Fields(node)
      .need("looked_for", out.looked_for)
      .need("rule", out.rule)
      .may("least_bad", out.least_bad)
      .end();
}

void read(const Node& node, ValueScore& out) {
  Fields(node).need("value", out.value).need("share", out.share).end();
}

void read(const Node& node, ScorePart& out) {
  const std::size_t before = node.problems.size();
  Fields(node)
      .need("kind", out.kind)
      .need("title", out.title)
      .need("weight", out.weight)
      .may("full_at_m", out.full_at_m)
      .may("none_at_m", out.none_at_m)
      .may("full_at_share", out.full_at_share)
      .may("values", out.values)
      .need("source", out.source)
      .end();
  if (cleanSince(node, before)) checkScorePart(out, node.pointer, node.problems);
}

void read(const Node& node, SurveyAccuracy& out) {
  Fields(node).need("method", out.method).need("accuracy_m", out.accuracy_m).end();
}

void read(const Node& node, SheetGap& out) {
  Fields(node).need("what", out.what).need("note", out.note).end();
}

void read(const Node& node, PracticeLine& out) {
  Fields(node).need("about", out.about).need("text", out.text).need("source", out.source).end();
}

void read(const Node& node, RuleSheet& out) {
  std::string format;              // checked by ofThisFormat()
  double version = kSheetVersion;  // checked by ofThisFormat()
  Fields(node)
      .need("format", format)
      .need("version", version)
      .need("id", out.id)
      .need("title", out.title)
      .need("jurisdiction", out.jurisdiction)
      .may("note", out.note)
      .need("corner_turn_deg", out.corner_turn_deg)
      .need("default_core_mm", out.default_core_mm)
      .need("default_pipe_od_mm", out.default_pipe_od_mm)
      .need("survey_accuracy", out.survey_accuracy)
      .need("rules", out.rules)
      .need("gates", out.gates)
      .need("score", out.score)
      .need("advisory_cost", out.advisory_cost)
      .may("gaps", out.gaps)
      .may("practice", out.practice)
      .may("mains_volts", out.mains_volts)
      .end();
}

/// Some other file, or a sheet of a later program that may use words unknown here: only that is
/// said of it then.
bool ofThisFormat(const Node& node) {
  if (!node.json.is_object() || node.json.value("format", Json()) != kSheetFormat) {
    node.report("sheet.not-a-sheet", {base::text("format", kSheetFormat)});
    return false;
  }
  const auto version = node.json.find("version");
  if (version == node.json.end() || !version->is_number() || *version == kSheetVersion) return true;
  node.child("version", *version)
      .report("sheet.version",
              {base::text("version", version->dump()), base::count("known", kSheetVersion)});
  return false;
}

base::Problem unreadable(std::string id, std::vector<Arg> args) {
  return {base::Message(std::move(id), std::move(args)), "", base::Gravity::unreadable};
}

}  // namespace

const Rule* RuleSheet::find(std::string_view ruleId) const {
  const auto found =
      std::find_if(rules.begin(), rules.end(), [&](const Rule& r) { return r.id == ruleId; });
  return found == rules.end() ? nullptr : &*found;
}

const PracticeLine* RuleSheet::practiceOn(std::string_view about) const {
  const auto found = std::find_if(practice.begin(), practice.end(),
                                  [&](const PracticeLine& line) { return line.about == about; });
  return found == practice.end() ? nullptr : &*found;
}

double RuleSheet::accuracy_m(plan::SurveyMethod method) const {
  for (const plan::SurveyMethod wanted : {method, plan::SurveyMethod::not_stated}) {
    for (const SurveyAccuracy& row : survey_accuracy) {
      if (row.method == wanted) return row.accuracy_m.value;
    }
  }
  return 0.0;
}

base::Result<RuleSheet> readRuleSheet(std::string_view text) {
  if (text.size() > kMaxSheetBytes) {
    return unreadable("sheet.too-large",
                      {base::count("bytes", static_cast<std::int64_t>(text.size())),
                       base::count("limit", static_cast<std::int64_t>(kMaxSheetBytes))});
  }
  // The parser takes a NUL for the end of the text: what follows it would be lost unseen.
  if (const auto nul = text.find('\0'); nul != std::string_view::npos) {
    return unreadable("sheet.not-json", {base::count("byte", static_cast<std::int64_t>(nul) + 1)});
  }
  Json json;
  try {
    json = Json::parse(text);
  } catch (const Json::parse_error& error) {
    return unreadable("sheet.not-json",
                      {base::count("byte", static_cast<std::int64_t>(error.byte))});
  } catch (const Json::out_of_range&) {  // a number no double holds
    return unreadable("sheet.not-json", {base::count("byte", 0)});
  }
  base::Problems problems;
  RuleSheet sheet;
  const Node root{json, "", problems};
  if (ofThisFormat(root)) read(root, sheet);
  if (problems.empty()) checkSheet(sheet, problems);
  if (!problems.empty()) return problems;
  return sheet;
}

}  // namespace sumpwright::rules
