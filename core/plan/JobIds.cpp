#include "plan/JobIds.h"

#include "plan/EditProblem.h"
#include "plan/PlanCheck.h"

namespace sumpwright::plan {

namespace {

std::string plainWallId(std::size_t ring, std::size_t edge) {
  return "w" + std::to_string(ring) + "." + std::to_string(edge);
}

}  // namespace

std::set<std::string> idsOf(const Job& job) {
  std::set<std::string> ids;
  forEachId(job, [&](const std::string& id, const std::string&, bool) { ids.insert(id); });
  return ids;
}

std::optional<base::Problem> unfitId(const Job& job, const std::string& id) {
  if (id.empty()) return editProblem("plan.id.empty");
  std::optional<base::Problem> found;
  forEachId(job, [&](const std::string& taken, const std::string& pointer, bool) {
    if (found || taken != id) return;
    found = editProblem("plan.id.twice",
                        {base::text("id", id), base::text("first", at(pointer, "id"))});
  });
  return found;
}

std::string givenWallId(std::size_t ring, std::size_t edge, const std::set<std::string>& taken) {
  std::string id = plainWallId(ring, edge);
  while (taken.contains(id)) id += "_";
  return id;
}

bool looksGiven(const std::string& id, std::size_t ring, std::size_t edge) {
  const std::string plain = plainWallId(ring, edge);
  return id.starts_with(plain) && id.find_first_not_of('_', plain.size()) == std::string::npos;
}

std::string thingAt(const Job& job, const std::string& pointer) {
  std::string found;
  forEachId(job, [&](const std::string& id, const std::string& at, bool) {
    const bool inside =
        pointer.starts_with(at) && (pointer.size() == at.size() || pointer[at.size()] == '/');
    if (inside) found = id;
  });
  return found;
}

}  // namespace sumpwright::plan
