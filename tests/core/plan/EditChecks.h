#pragma once
// What every verb's result must hold, whatever was asked of it.

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "plan/JobIds.h"
#include "plan/JobText.h"
#include "plan/PlanCheck.h"
#include "plan/PlanGeometry.h"
#include "plan/ThingParts.h"

namespace sumpwright::plan {

inline std::string problemIdOf(const base::Result<Job>& result) {
  return result.ok() ? "" : result.problems().front().message.id;
}

/// It can be saved and read back the same, ids are unique, what stands on a wall has a wall.
inline void expectHolds(const Job& job) {
  const auto read = readJob(writeJob(job));
  ASSERT_TRUE(read.ok()) << read.problems().front().message.id << ' '
                         << read.problems().front().pointer;
  EXPECT_EQ(read->job, job);
  std::set<std::string> ids;
  forEachId(job, [&](const std::string& id, const std::string& pointer, bool) {
    EXPECT_TRUE(ids.insert(id).second) << id << " at " << pointer;
  });
  Job copy = job;
  forEachThingList(copy, [&](auto& list) {
    for (auto& thing : list) {
      if (const OnWall* at = wallPlaceOf(thing)) {
        EXPECT_TRUE(edgeAt(job.plan, *at).has_value()) << thing.id;
      }
    }
  });
  for (const base::Problem& p : checkJob(job)) {
    EXPECT_NE(p.message.id, "plan.dimension.no-thing") << p.pointer;
    EXPECT_NE(p.message.id, "plan.inner-door.no-wall") << p.pointer;
    EXPECT_NE(p.message.id, "plan.waiver.no-sump") << p.pointer;
    EXPECT_NE(p.message.id, "plan.ground.off-wall") << p.pointer;
    EXPECT_NE(p.message.id, "plan.discharge.off-ring") << p.pointer;
    EXPECT_NE(p.message.id, "plan.test.no-hole") << p.pointer;
    EXPECT_NE(p.message.id, "plan.test.no-sump") << p.pointer;
    EXPECT_NE(p.message.id, "plan.sump.no-supply") << p.pointer;
  }
}

/// The job of a verb that must work, having looked at what it must hold.
inline Job doneWell(const base::Result<Job>& result) {
  EXPECT_TRUE(result.ok()) << problemIdOf(result);
  if (!result.ok()) return {};
  expectHolds(*result);
  return *result;
}

inline std::size_t unsoundIn(const Job& job) {
  std::size_t count = 0;
  for (const base::Problem& p : checkJob(job)) count += p.gravity == base::Gravity::unsound;
  return count;
}

}  // namespace sumpwright::plan
