#include <map>

#include "plan/Checks.h"
#include "plan/JobIds.h"

namespace sumpwright::plan {

void checkIds(const Job& job, ProblemList& problems) {
  if (job.id.empty()) problems.add("plan.id.empty", "/id");
  std::map<std::string, std::string> first;
  forEachId(job, [&](const std::string& id, const std::string& thing, bool) {
    const std::string pointer = at(thing, "id");
    if (id.empty()) {
      problems.add("plan.id.empty", pointer);
      return;
    }
    const auto [known, isNew] = first.emplace(id, pointer);
    if (isNew) return;
    problems.add("plan.id.twice", pointer,
                 {base::text("id", id), base::text("first", known->second)});
  });
}

}  // namespace sumpwright::plan
