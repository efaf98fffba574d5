#include <algorithm>
#include <nlohmann/json.hpp>
#include <utility>

#include "plan/FieldReader.h"
#include "plan/JobIds.h"
#include "plan/JobText.h"
#include "plan/JobTree.h"
#include "plan/PlanCheck.h"

namespace sumpwright::plan {

namespace {

/// Readings outside are asked about, not refused (own figures: a slipped digit is likelier than a
/// home above 5000 or below outdoor air).
constexpr double kReadingHigh_bq_m3 = 5000.0;
constexpr double kReadingLow_bq_m3 = 5.0;

/// Whether the file is a job of this version; else nothing more of it is looked at.
bool isOurs(const Tree& tree, ProblemList& problems) {
  const Json& root = *tree.root;
  if (!root.is_object()) {
    addWrongType(problems, "", "job.kind.object");
    return false;
  }
  const auto format = root.find("format");
  const auto version = root.find("version");
  if (format == root.end()) problems.add("job.key.missing", "", {base::text("key", "format")});
  if (version == root.end()) problems.add("job.key.missing", "", {base::text("key", "version")});
  if (format == root.end() || version == root.end()) return false;
  if (*format != kJobFormat) {
    problems.add("job.format", "/format");
    return false;
  }
  if (!version->is_number()) {
    addWrongType(problems, "/version", "job.kind.whole-number");
    return false;
  }
  const double number = version->get<double>();
  if (number == kJobVersion) return true;
  if (number > kJobVersion) {
    addNewerVersion(tree.version, problems);
  } else {
    problems.add(
        "job.version.unknown", "/version",
        {base::text("version", shortened(tree.version)), base::count("known", kJobVersion)});
  }
  return false;
}

void checkReading(const Json& record, const std::string& pointer, ProblemList& problems,
                  ProblemList& notes) {
  const auto value = record.find("value_bq_m3");
  if (value == record.end()) return;
  if (!value->is_number()) {
    addWrongType(problems, at(pointer, "value_bq_m3"), "job.kind.number");
    return;
  }
  const double reading = value->get<double>();
  if (reading >= kReadingLow_bq_m3 && reading <= kReadingHigh_bq_m3) return;
  notes.add("job.reading.confirm", at(pointer, "value_bq_m3"),
            {base::number("value", reading), base::number("low", kReadingLow_bq_m3),
             base::number("high", kReadingHigh_bq_m3)});
}

/// The lists that this version keeps as they are.
void checkRecords(const Json& root, ProblemList& problems, ProblemList& notes) {
  for (const char* key : {"readings", "works", "retest"}) {
    const auto list = root.find(key);
    if (list == root.end()) continue;
    const std::string pointer = at("", key);
    if (!list->is_array()) {
      addWrongType(problems, pointer, "job.kind.list");
      continue;
    }
    for (std::size_t i = 0; i < list->size(); ++i) {
      if ((*list)[i].is_object()) {
        checkReading((*list)[i], at(pointer, i), problems, notes);
      } else {
        addWrongType(problems, at(pointer, i), "job.kind.object");
      }
    }
  }
  const auto copy = root.find("rule_sheet_copy");
  if (copy != root.end() && !copy->is_object()) {
    addWrongType(problems, "/rule_sheet_copy", "job.kind.object");
  }
}

/// Walls may be left out, all of a ring or the last of an open one; those then stand with nothing
/// known of them.
void fillWalls(const Json& root, Job& job, ProblemList& problems) {
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    Ring& ring = job.plan.rings[r];
    const std::size_t edges = ring.corners.size();
    const std::size_t walls = ring.walls.size();
    const bool left_out = !root["plan"]["rings"][r].contains("walls");
    const bool last_left_out = !ring.closed && walls + 1 == edges;
    if (!left_out && !last_left_out && walls != edges) {
      problems.add("job.walls.count", at("/plan/rings", r) + "/walls",
                   {base::count("walls", static_cast<std::int64_t>(walls)),
                    base::count("edges", static_cast<std::int64_t>(edges))});
    }
    ring.walls.resize(edges);
  }
}

/// Gives ids to walls that state none; an empty id written out stays empty, for the check to find.
std::vector<std::vector<std::string>> giveWallIds(const Json& root, Job& job) {
  const std::set<std::string> taken = idsOf(job);
  std::vector<std::vector<std::string>> given(job.plan.rings.size());
  for (std::size_t r = 0; r < given.size(); ++r) {
    const Json& ring = root["plan"]["rings"][r];
    const auto stated = ring.find("walls");
    std::vector<Wall>& walls = job.plan.rings[r].walls;
    given[r].resize(walls.size());
    for (std::size_t e = 0; e < walls.size(); ++e) {
      if (stated != ring.end() && e < stated->size() && (*stated)[e].contains("id")) continue;
      walls[e].id = given[r][e] = givenWallId(r, e, taken);
    }
  }
  return given;
}

}  // namespace

base::Result<ReadJob> readJob(std::string_view text) {
  ProblemList problems(base::Gravity::unreadable);
  const Tree tree = readTree(text, problems);
  if (tree.root == nullptr || !isOurs(tree, problems)) return problems.take();

  const Json& root = *tree.root;
  ProblemList notes(base::Gravity::missing);
  Job job;
  FieldReader(problems, notes)
      .object(root, "", job,
              {"format", "version", "readings", "works", "retest", "rule_sheet_copy"});
  checkRecords(root, problems, notes);
  if (problems.empty()) fillWalls(root, job, problems);
  const auto placeOf = [&](const std::string& pointer) { return placeIn(root, pointer); };
  if (!problems.empty()) return problems.takeSorted(placeOf);

  ReadJob result;
  auto document = std::make_shared<JobSource::Document>();
  document->root = tree.root;
  document->given_wall_ids = giveWallIds(root, job);
  result.source.m_document = std::move(document);
  problems.add(checkJob(job));
  problems.add(notes.take());
  result.problems = problems.takeSorted(placeOf);
  result.job = std::move(job);
  return result;
}

}  // namespace sumpwright::plan
