#include "plan/RunningEdits.h"

#include "plan/CheckedEdit.h"
#include "plan/Checks.h"

namespace sumpwright::plan {

base::Result<Job> setRunning(const Job& job, const Running& running) {
  Job result = job;
  result.design.running = running;
  return checkedAt(std::move(result), "/design/running", [](const Job& changed, auto& problems) {
    checkRunning(changed.design.running, problems);
  });
}

}  // namespace sumpwright::plan
