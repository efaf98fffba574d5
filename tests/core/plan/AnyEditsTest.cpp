// Any sequence of edits, whatever is asked: the plan holds together.

#include <algorithm>
#include <cmath>

#include "core/plan/EditChecks.h"
#include "plan/DesignEdits.h"
#include "plan/Fixes.h"
#include "plan/GapEdits.h"
#include "plan/OpeningEdits.h"
#include "plan/OutlineEdits.h"
#include "plan/RoomEdits.h"
#include "plan/SumpEdits.h"
#include "plan/TapeEdits.h"
#include "plan/ThingEdits.h"
#include "plan/WallEdits.h"
#include "plan/WholePlanEdits.h"
#include "support/PlanBuilder.h"
#include "support/Seed.h"

namespace sumpwright::plan {
namespace {

using support::PlanBuilder;
using support::Random;

class Hand {
 public:
  explicit Hand(Random& random) : m_random(random) {}

  base::Result<Job> edit(const Job& job) {
    switch (m_random.between(0, 28)) {
      case 0:
        return moveCorner(job, ring(job), index(job), somewhere());
      case 1:
        return moveWall(job, ring(job), index(job), m_random.uniform(-0.6, 0.6));
      case 2:
        return splitWall(job, ring(job), index(job), m_random.uniform(0, 5));
      case 3:
        return removeCorner(job, ring(job), index(job));
      case 4:
        return setWallLength(job, ring(job), index(job), m_random.uniform(1, 9));
      case 5:
        return straighten(job, ring(job), m_random.uniform(1, 20));
      case 6:
        return mirrorPlan(job);
      case 7:
        return turnPlan(job, m_random.chance(0.5) ? 90.0 : m_random.uniform(-200, 200));
      case 8:
        return roomsFromWalls(job);
      case 9:
        return floorZoneFromWalls(job);
      case 10:
        return addOpening(job, ring(job), index(job), side(), m_random.uniform(0, 4),
                          m_random.uniform(0.3, 2), Opening{});
      case 11:
        return repeatOpening(job, opening(job), m_random.between(1, 3), m_random.uniform(-3, 3));
      case 12:
        return alignOpening(job, opening(job), opening(job));
      case 13:
        return setOpeningWidth(job, opening(job), m_random.uniform(0.2, 2), side());
      case 14:
        return slideOpening(job, opening(job), {ring(job), index(job), m_random.uniform(-1, 9)});
      case 15:
        return moveThing(job, anyId(job), by());
      case 16:
        return removeThing(job, anyId(job));
      case 17:
        return copyThing(job, anyId(job), by());
      case 18:
        return movePoint(job, anyId(job), m_random.between(0, 4), somewhere());
      case 19:
        return insertPoint(job, anyId(job), m_random.between(0, 3), somewhere());
      case 20:
        return removePoint(job, anyId(job), m_random.between(0, 4));
      case 21:
        return addThing(job, newThing(job));
      case 22:
        if (m_random.chance(0.5)) {
          return setDischarge(job, "s", Discharge{ring(job), m_random.uniform(0, 40), 2.8});
        }
        return moveSump(job, "s", ring(job), m_random.uniform(0, 40));
      case 23:
        return addGap(job, risingWall(job), m_random.uniform(-1, 6), m_random.uniform(-1, 6));
      case 24:
        return fillGap(job, risingWall(job), m_random.uniform(0, 5));
      case 25:
        return addThing(job, Dimension{"", anyEnd(job), anyEnd(job), m_random.uniform(-2, 2)});
      case 26:
        return tapeCourtyard(job);
      case 27:
        return taped(job);
      default:
        return courtyardOrFix(job);
    }
  }

 private:
  /// The field book of the outer ring, while there is one.
  base::Result<Job> taped(const Job& job) {
    const std::size_t walls = job.plan.rings[0].taped.size();
    const auto any = static_cast<std::size_t>(m_random.between(0, static_cast<int>(walls)));
    const TapedWall wall{90.0 * m_random.between(0, 3), m_random.uniform(0.5, 9.0), true};
    switch (m_random.between(0, 5)) {
      case 0:
        return replaceTaped(job, 0, any, wall);
      case 1:
        return insertTaped(job, 0, any, wall);
      case 2:
        return removeTaped(job, 0, any);
      case 3:
        return reopenTaped(job, 0);
      case 4:
        return addTaped(job, 0, wall);
      default:
        return closeTaped(job, 0, static_cast<Sharing>(m_random.between(0, 2)));
    }
  }

  int ring(const Job& job) {
    return m_random.between(0, static_cast<int>(job.plan.rings.size()) - 1);
  }
  int index(const Job& job) {
    return m_random.between(0, std::max(0, static_cast<int>(job.plan.rings[0].corners.size()) - 1));
  }
  Side side() { return m_random.chance(0.5) ? Side::left : Side::right; }
  Point somewhere() { return {m_random.uniform(-2, 12), m_random.uniform(-2, 10)}; }
  geometry::Vec by() { return {m_random.uniform(-3, 3), m_random.uniform(-3, 3)}; }

  std::string opening(const Job& job) {
    return job.plan.openings.empty()
               ? "none"
               : job.plan.openings[m_random.index(job.plan.openings.size())].id;
  }

  std::string anyId(const Job& job) {
    std::vector<std::string> ids;
    forEachThingList(job, [&](const auto& list) {
      for (const auto& thing : list) ids.push_back(thing.id);
    });
    return ids.empty() || m_random.chance(0.02) ? "none" : m_random.oneOf(ids);
  }

  std::string risingWall(const Job& job) {
    return job.plan.rising_walls.empty()
               ? "none"
               : job.plan.rising_walls[m_random.index(job.plan.rising_walls.size())].id;
  }

  DimensionEnd anyEnd(const Job& job) {
    return {anyId(job), static_cast<ThingEnd>(m_random.between(0, 2))};
  }

  /// Two walls of a courtyard from somewhere, closed by a third.
  base::Result<Job> tapeCourtyard(const Job& job) {
    const int ring = static_cast<int>(job.plan.rings.size());
    auto begun = addTaped(job, ring, {m_random.uniform(0, 360), 1.5, false}, somewhere());
    if (begun) begun = addTaped(*begun, ring, {m_random.uniform(0, 360), 1.2, false});
    return begun ? closeTaped(*begun, ring, Sharing::not_shared) : begun;
  }

  Thing newThing(const Job& job) {
    switch (m_random.between(0, 7)) {
      case 6:
        return RisingWall{"", {somewhere(), somewhere(), somewhere()}, 0.1, {}};
      case 0:
        return InnerWall{"", {somewhere(), somewhere()}, 0.1, BelowFloor::unknown};
      case 1:
        return InnerDoor{"", anyId(job), m_random.uniform(0, 2), 0.8};
      case 2:
        return Dimension{"", {anyId(job)}, {"w0.0", ThingEnd::end}, 0.5};
      case 3:
        return WallFeature{"", "", WallFeatureKind::pier, {0, index(job), 0.5}, 0.3};
      case 4:
        return OutsideThing{"", "", OutsideKind::septic_tank, {somewhere(), somewhere()}};
      case 5: {
        Service s;
        s.entry = OnWall{0, index(job), m_random.uniform(0, 3)};
        return s;
      }
      default:
        return Appliance{"", "stove", m_random.chance(0.5), ""};
    }
  }

  base::Result<Job> courtyardOrFix(const Job& job) {
    if (job.plan.rings.size() > 1) return removeRing(job, 1);
    if (m_random.chance(0.5)) return addCourtyard(job, {{2, 2}, {4, 2}, {4, 4}, {2, 4}});
    const auto fixes = fixesOf(job);
    if (fixes.empty()) return job;
    return fixes[m_random.index(fixes.size())].job;
  }

  Random& m_random;
};

Job start() {
  return PlanBuilder::lShape()
      .window("a", 0, 2.0, 1.2)
      .door("b", 1, 1.0)
      .service("gas", ServiceKind::gas, 5, 2.0)
      .run("gas", {{0, 6}, {-4, 6}})
      .radiator("r", 4, 1.0, 1.0)
      .innerWall("iw", {{5, 0.35}, {5, 7.65}})
      .sump("s", 0, 6.0)
      .with([](Job& j) {
        j.plan.inner_doors.push_back({"d", "iw", 1.0, 0.8});
        j.plan.dimensions.push_back({"dim", {"a"}, {"s"}, 0.4});
        j.plan.rings[0].walls[0].ground_points = {{1.0, -0.2}};
      })
      .job();
}

/// The same house with its field book, as it would be right after taping.
Job startTaped() {
  Job job = start();
  job.plan.rings[0].taped = {{90, 10.0, true}, {0, 5.0, true},   {270, 4.0, true},
                             {0, 3.0, true},   {270, 6.0, true}, {180, 8.0, true}};
  job.plan.rings[0].shared_by = Sharing::compass_rule;
  return job;
}

void twoHundredFrom(const Job& first, int least) {
  support::forEachSeed(30, [&](std::uint64_t seed) {
    Random random(seed);
    Hand hand(random);
    Job job = first;
    int done = 0;
    for (int i = 0; i < 200 && !testing::Test::HasFailure(); ++i) {
      const Job before = job;
      const auto edited = hand.edit(job);
      EXPECT_EQ(job, before);  // a verb leaves the job it was given alone: undo is that job
      if (!edited) continue;
      ++done;
      job = *edited;
      expectHolds(job);
    }
    EXPECT_GT(done, least);
  });
}

TEST(AnyEdits, TwoHundredOfThemHoldThePlanTogether) { twoHundredFrom(start(), 60); }

TEST(AnyEdits, TwoHundredOnATapedHouse) { twoHundredFrom(startTaped(), 40); }

}  // namespace
}  // namespace sumpwright::plan
