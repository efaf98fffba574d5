#include <nlohmann/json.hpp>
#include <utility>

#include "plan/FieldWriter.h"
#include "plan/JobIds.h"
#include "plan/JobText.h"
#include "plan/JobTree.h"

namespace sumpwright::plan {

Json laidOver(const Json* before, std::vector<Member> members) {
  Json result = Json::object();
  auto& out = result.get_ref<Json::object_t&>();
  std::unordered_map<std::string_view, Member*> byKey;
  for (Member& member : members) byKey.emplace(member.key, &member);
  if (before != nullptr) {
    for (const auto& item : before->items()) {
      const auto known = byKey.find(item.key());
      if (known == byKey.end()) {
        out.emplace_back(item.key(), item.value());
      } else if (known->second->value) {
        out.emplace_back(item.key(), std::move(*known->second->value));
        known->second->value.reset();
      }
    }
  }
  for (Member& member : members) {
    if (member.value) out.emplace_back(std::string(member.key), std::move(*member.value));
  }
  return result;
}

namespace {

Json* memberOf(Json& object, const char* key) {
  const auto it = object.find(key);
  return it == object.end() ? nullptr : &*it;
}

Json* ringsOf(Json& root) {
  Json* plan = memberOf(root, "plan");
  return plan == nullptr ? nullptr : memberOf(*plan, "rings");
}

// Walls that stated no id were given one on reading. Writing gives the same ids to the source, so
// that walls find their source by id like everything else, and takes them out again after.

/// Walls and ids the source ring left out are put in; `given` by edge.
void stampRing(Json& ring, const std::vector<std::string>& given) {
  if (memberOf(ring, "walls") == nullptr) ring["walls"] = Json::array();
  Json& walls = ring["walls"];
  while (walls.size() < given.size()) walls.push_back(Json::object());
  for (std::size_t e = 0; e < given.size(); ++e) {
    if (!given[e].empty()) walls[e]["id"] = given[e];
  }
}

/// How many walls a source ring states, or nothing where the key is left out.
std::optional<std::size_t> wallsIn(const Json& ring) {
  const auto walls = ring.find("walls");
  if (walls == ring.end()) return std::nullopt;
  return walls->size();
}

/// Takes out of a written ring what reading would put back the same.
void unstampRing(Json& ring, const Ring& now, std::optional<std::size_t> sourceWalls,
                 const std::set<std::string>& regained) {
  Json* walls = memberOf(ring, "walls");
  if (walls == nullptr) return;
  bool bareWalls = true;
  for (Json& wall : *walls) {
    const std::string* id = idIn(&wall);
    if (id != nullptr && regained.contains(*id)) wall.erase("id");
    bareWalls = bareWalls && wall.empty();
  }
  if (!sourceWalls && bareWalls) {
    ring.erase("walls");
    return;
  }
  // The last wall of an open ring may be left out.
  const bool lastLeftOut = !now.closed && sourceWalls && *sourceWalls + 1 == walls->size();
  if (lastLeftOut && walls->back().empty()) walls->erase(walls->size() - 1);
}

/// Ids that reading would give the same again if they were left out. `given`: the only ones that
/// may be, where there is a source.
std::set<std::string> regainedIds(const Job& job, const std::set<std::string>* given) {
  std::set<std::string> taken = idsOf(job);
  struct Candidate {
    std::size_t ring;
    std::size_t edge;
    const std::string* id;
  };
  std::vector<Candidate> candidates;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const std::vector<Wall>& walls = job.plan.rings[r].walls;
    for (std::size_t e = 0; e < walls.size(); ++e) {
      const std::string& id = walls[e].id;
      if (!looksGiven(id, r, e) || (given != nullptr && !given->contains(id))) continue;
      candidates.push_back({r, e, &id});
      taken.erase(id);
    }
  }
  std::set<std::string> regained;
  for (const Candidate& c : candidates) {
    if (givenWallId(c.ring, c.edge, taken) == *c.id) regained.insert(*c.id);
  }
  return regained;
}

Json newRoot() {
  Json root = Json::object();
  root["format"] = kJobFormat;
  root["version"] = kJobVersion;
  return root;
}

}  // namespace

std::string writeJob(const Job& job, const JobSource& source) {
  const JobSource::Document& document = *source.m_document;
  const bool isNew = document.root == nullptr;
  Json before = isNew ? newRoot() : *document.root;
  std::vector<std::optional<std::size_t>> sourceWalls;
  std::set<std::string> given;
  Json* sourceRings = ringsOf(before);
  for (std::size_t r = 0; r < document.given_wall_ids.size(); ++r) {
    sourceWalls.push_back(wallsIn((*sourceRings)[r]));
    stampRing((*sourceRings)[r], document.given_wall_ids[r]);
    given.insert(document.given_wall_ids[r].begin(), document.given_wall_ids[r].end());
  }
  Json root = written(job, &before);

  const std::set<std::string> regained = regainedIds(job, isNew ? nullptr : &given);
  Json* rings = ringsOf(root);
  sourceWalls.resize(job.plan.rings.size());
  for (std::size_t r = 0; rings != nullptr && r < rings->size(); ++r) {
    unstampRing((*rings)[r], job.plan.rings[r], sourceWalls[r], regained);
  }
  return layOut(root);
}

std::string embeddedRuleSheet(const JobSource& source) {
  const auto& root = source.m_document->root;
  if (root == nullptr || !root->contains("rule_sheet_copy")) return {};
  return layOut((*root)["rule_sheet_copy"]);
}

JobSource::JobSource() : m_document(std::make_shared<const Document>()) {}
JobSource::JobSource(const JobSource&) = default;
// Moving copies the shared document: a source moved from still holds one, as every source must.
// NOLINTNEXTLINE(performance-move-constructor-init)
JobSource::JobSource(JobSource&& other) noexcept : m_document(other.m_document) {}
JobSource& JobSource::operator=(const JobSource&) = default;
JobSource& JobSource::operator=(JobSource&& other) noexcept {
  m_document = other.m_document;
  return *this;
}
JobSource::~JobSource() = default;

}  // namespace sumpwright::plan
