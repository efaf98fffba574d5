#include "plan/SumpList.h"

#include <algorithm>

#include "plan/SuctionEdits.h"

namespace sumpwright::plan {

std::vector<NumberedSump> coredSumps(const Job& job) {
  std::vector<NumberedSump> cored;
  int number = 0;
  for (const Sump& sump : job.design.sumps) {
    ++number;
    if (sump.kind == SumpKind::cored) cored.push_back({number, sump.id});
  }
  return cored;
}

int neededNumber(const Job& job, const std::string& sump) {
  const std::vector<NumberedSump> cored = coredSumps(job);
  if (cored.size() < 2) return 0;
  for (const NumberedSump& one : cored) {
    if (one.id == sump) return one.number;
  }
  return 0;
}

std::string sumpWord(const Job& job, const std::string& sump) {
  const auto& sumps = job.design.sumps;
  const auto found =
      std::find_if(sumps.begin(), sumps.end(), [&](const Sump& one) { return one.id == sump; });
  return found == sumps.end() ? sump : std::to_string(found - sumps.begin() + 1);
}

bool hasPlacedSump(const Job& job) {
  const auto& sumps = job.design.sumps;
  return std::any_of(sumps.begin(), sumps.end(),
                     [](const Sump& sump) { return placeOf(sump).has_value(); });
}

}  // namespace sumpwright::plan
