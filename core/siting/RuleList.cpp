#include "siting/RuleList.h"

#include <array>

#include "base/Contract.h"
#include "build/CableAlong.h"
#include "build/Discharge.h"
#include "build/SectionAlong.h"
#include "suction/SumpPerArea.h"

namespace sumpwright::siting {

// The rule book. A new kind of rule is one file in rules/ (or, for later parts, in suction/ or
// build/) and one line here.
std::span<const rules::RuleJudge* const> allJudges() {
  static constexpr std::array<const rules::RuleJudge*, 11> kAll{
      &rules::kClearance,  &rules::kAlongWall,     &rules::kDrillLine,   &rules::kWallRule,
      &rules::kRoomBehind, &rules::kFittingBehind, &rules::kFloorBehind, &build::kDrillSection,
      &build::kSupply,     &suction::kSumpPerArea, &build::kDischarge};
  return kAll;
}

const rules::RuleJudge& judgeOf(rules::RuleKind kind) {
  for (const rules::RuleJudge* judge : allJudges()) {
    if (judge->kind == kind) return *judge;
  }
  constexpr bool kEveryKindHasAJudge = false;  // or it would have been found above
  SUMPWRIGHT_REQUIRE(kEveryKindHasAJudge);
  return *allJudges().front();
}

}  // namespace sumpwright::siting
