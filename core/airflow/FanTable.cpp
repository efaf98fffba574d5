#include "airflow/FanTable.h"

#include <algorithm>
#include <cstdint>
#include <initializer_list>
#include <nlohmann/json.hpp>
#include <optional>
#include <utility>

#include "base/Pointer.h"

namespace sumpwright::airflow {

namespace {

using Json = nlohmann::json;
using base::Arg;
using base::Flow;
using base::Pressure;

constexpr int kFanVersion = 1;
constexpr const char* kFanFormat = "sumpwright.fans";

/// An object of the file: its members by key, what is wrong with them, and the keys nobody knows.
class FanNode {
 public:
  FanNode(const Json& json, std::string pointer, base::Problems& problems,
          std::initializer_list<std::string_view> keys)
      : m_json(json), m_pointer(std::move(pointer)), m_problems(problems) {
    if (!json.is_object()) {
      wrongType("", "fans.type.object");
      return;
    }
    for (const auto& [key, value] : json.items()) {
      if (std::find(keys.begin(), keys.end(), key) == keys.end())
        report("fans.unknown-key", "/" + base::pointerStep(key), {base::text("key", key)});
    }
  }

  const std::string& pointer() const { return m_pointer; }
  base::Problems& problems() const { return m_problems; }

  void report(std::string id, const std::string& place, std::vector<Arg> args = {}) const {
    m_problems.push_back({base::Message(std::move(id), std::move(args)), m_pointer + place,
                          base::Gravity::unreadable});
  }
  void wrongType(const std::string& place, const char* expected) const {
    report("fans.wrong-type", place, {base::phrase("expected", base::Message(expected))});
  }

  const Json* find(const char* key) const {
    if (!m_json.is_object()) return nullptr;
    const auto found = m_json.find(key);
    return found == m_json.end() ? nullptr : &*found;
  }
  const Json* need(const char* key) const {
    const Json* found = find(key);
    if (found == nullptr && m_json.is_object())
      report("fans.missing-key", "", {base::text("key", key)});
    return found;
  }

  std::string text(const char* key, bool needed = true) const {
    const Json* value = needed ? need(key) : find(key);
    if (value == nullptr) return {};
    if (!value->is_string()) return wrongType(at(key), "fans.type.text"), std::string();
    auto out = value->get<std::string>();
    if (needed && out.empty()) report("fans.empty", at(key));
    return out;
  }
  std::optional<double> number(const char* key, bool needed = true) const {
    const Json* value = needed ? need(key) : find(key);
    if (value == nullptr) return std::nullopt;
    if (!value->is_number()) return wrongType(at(key), "fans.type.number"), std::nullopt;
    return value->get<double>();
  }
  const Json* list(const char* key) const {
    const Json* value = need(key);
    if (value == nullptr || value->is_array()) return value;
    return wrongType(at(key), "fans.type.list"), nullptr;
  }

  static std::string at(const char* key) { return std::string("/") + key; }

 private:
  const Json& m_json;
  std::string m_pointer;
  base::Problems& m_problems;
};

base::Source readSource(const FanNode& fan) {
  base::Source out;
  const Json* json = fan.find("source");
  if (json == nullptr) return fan.report("fans.no-source", ""), out;
  const FanNode node(*json, fan.pointer() + "/source", fan.problems(), {"mark", "text"});
  const std::string mark = node.text("mark");
  out.text = node.text("text");
  for (std::size_t i = 0; i < base::kMarkNames.size(); ++i) {
    if (base::kMarkNames.at(i) != mark) continue;
    out.mark = static_cast<base::Mark>(i);
    return out;
  }
  if (!mark.empty()) node.report("fans.unknown-word", "/mark", {base::text("word", mark)});
  return out;
}

CurvePoint readPoint(const FanNode& node) {
  CurvePoint out;
  out.flow = Flow::ofM3PerH(node.number("flow_m3_h").value_or(0.0));
  out.pressure = Pressure::ofPa(node.number("pressure_pa").value_or(0.0));
  out.power_w = node.number("power_w", false);
  return out;
}

base::Result<FanCurve> readPoints(const FanNode& fan, double density) {
  const Json* rows = fan.list("points");
  std::vector<CurvePoint> points;
  const std::size_t before = fan.problems().size();
  // One more than may be is enough to say that there are too many.
  const std::size_t read = rows == nullptr ? 0 : std::min(rows->size(), kMostPoints + 1);
  for (std::size_t i = 0; i < read; ++i) {
    points.push_back(readPoint(FanNode((*rows)[i], fan.pointer() + "/points/" + std::to_string(i),
                                       fan.problems(), {"flow_m3_h", "pressure_pa", "power_w"})));
  }
  if (rows == nullptr || fan.problems().size() != before) return FanCurve();
  return FanCurve::through(std::move(points), density, fan.pointer());
}

base::Result<FanCurve> readLaw(const FanNode& fan, const Json& json, double density) {
  const std::size_t before = fan.problems().size();
  const FanNode node(
      json, fan.pointer() + "/law", fan.problems(),
      {"shut_off_pa", "free_flow_m3_h", "exponent", "power_shut_off_w", "power_free_flow_w"});
  CurveLaw law;
  law.shut_off = Pressure::ofPa(node.number("shut_off_pa").value_or(0.0));
  law.free_flow = Flow::ofM3PerH(node.number("free_flow_m3_h").value_or(0.0));
  law.exponent = node.number("exponent").value_or(0.0);
  law.power_at_shut_off_w = node.number("power_shut_off_w", false);
  law.power_at_free_flow_w = node.number("power_free_flow_w", false);
  if (fan.problems().size() != before) return FanCurve();
  return FanCurve::byLaw(law, density, fan.pointer());
}

Fan readFan(const FanNode& node) {
  Fan fan;
  fan.id = node.text("id");
  fan.title = node.text("title");
  fan.note = node.text("note", false);
  fan.source = readSource(node);
  const double density = node.number("density_kg_m3", false).value_or(kFanDensity_kg_m3);
  const Json* law = node.find("law");
  if ((law == nullptr) == (node.find("points") == nullptr)) {
    node.report("fans.points-or-law", "");
    return fan;
  }
  const auto curve = law == nullptr ? readPoints(node, density) : readLaw(node, *law, density);
  if (curve.ok()) {
    fan.curve = *curve;
  } else {
    for (const base::Problem& problem : curve.problems()) node.problems().push_back(problem);
  }
  return fan;
}

void readFans(const FanNode& root, FanTable& table) {
  const Json* rows = root.list("fans");
  if (rows == nullptr) return;
  if (rows->empty()) root.report("fans.empty", "/fans");
  if (rows->size() > kMostFans) {
    root.report("fans.too-many", "/fans",
                {base::count("given", static_cast<std::int64_t>(rows->size())),
                 base::count("most", std::int64_t{kMostFans})});
    return;
  }
  for (std::size_t i = 0; i < rows->size(); ++i) {
    const std::string place = root.pointer() + "/fans/" + std::to_string(i);
    Fan fan = readFan(FanNode((*rows)[i], place, root.problems(),
                              {"id", "title", "note", "source", "density_kg_m3", "points", "law"}));
    if (table.find(fan.id) != nullptr && !fan.id.empty())
      root.report("fans.repeated", "/fans/" + std::to_string(i) + "/id",
                  {base::text("word", fan.id)});
    table.fans.push_back(std::move(fan));
  }
}

FanTable readTable(const Json& json, base::Problems& problems) {
  const FanNode root(json, "", problems,
                     {"format", "version", "id", "title", "note", "invented", "fans"});
  FanTable table;
  table.id = root.text("id");
  table.title = root.text("title");
  table.note = root.text("note", false);
  if (const Json* invented = root.find("invented")) {
    if (invented->is_boolean())
      table.invented = invented->get<bool>();
    else
      root.wrongType("/invented", "fans.type.yes-no");
  }
  readFans(root, table);
  return table;
}

base::Problem unreadableFans(std::string id, std::vector<Arg> args, std::string pointer = "") {
  return {base::Message(std::move(id), std::move(args)), std::move(pointer),
          base::Gravity::unreadable};
}

/// Some other file, or a table of a later program: only that is said of it then.
std::optional<base::Problem> notThisFormat(const Json& json) {
  if (!json.is_object() || json.value("format", Json()) != kFanFormat)
    return unreadableFans("fans.not-a-table", {base::text("format", kFanFormat)});
  const Json version = json.value("version", Json());
  if (version.is_number() && version == kFanVersion) return std::nullopt;
  return unreadableFans(
      "fans.version",
      {base::text("version", version.is_null() ? "" : version.dump(-1, ' ', true)),
       base::count("known", kFanVersion)},
      "/version");
}

}  // namespace

const Fan* FanTable::find(std::string_view fanId) const {
  const auto found =
      std::find_if(fans.begin(), fans.end(), [&](const Fan& fan) { return fan.id == fanId; });
  return found == fans.end() ? nullptr : &*found;
}

base::Result<FanTable> readFanTable(std::string_view text) {
  if (text.size() > kMostFanBytes) {
    return unreadableFans("fans.too-large",
                          {base::count("bytes", static_cast<std::int64_t>(text.size())),
                           base::count("limit", std::int64_t{kMostFanBytes})});
  }
  // The parser takes a NUL for the end of the text: what follows it would be lost unseen.
  if (const auto nul = text.find('\0'); nul != std::string_view::npos)
    return unreadableFans("fans.not-json",
                          {base::count("byte", static_cast<std::int64_t>(nul) + 1)});
  Json json;
  try {
    json = Json::parse(text);
  } catch (const Json::parse_error& error) {
    return unreadableFans("fans.not-json",
                          {base::count("byte", static_cast<std::int64_t>(error.byte))});
  } catch (const Json::out_of_range&) {  // a number no double holds
    return unreadableFans("fans.not-json", {base::count("byte", 0)});
  }
  if (auto problem = notThisFormat(json)) return *problem;
  base::Problems problems;
  FanTable table = readTable(json, problems);
  if (!problems.empty()) return problems;
  return table;
}

}  // namespace sumpwright::airflow
