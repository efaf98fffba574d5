#include "session/FreshId.h"

#include <set>

#include "plan/JobIds.h"

namespace sumpwright::session {

std::string freshId(const plan::Job& job, const std::string& stem) {
  const std::set<std::string> ids = plan::idsOf(job);
  for (int n = 1;; ++n) {
    std::string id = stem + "-" + std::to_string(n);
    if (!ids.contains(id)) return id;
  }
}

}  // namespace sumpwright::session
