#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <cerrno>
#include <cmath>

#include "plan/FloorLevels.h"
#include "suction/Chance.h"
#include "suction/Field.h"
#include "suction/ModelOf.h"
#include "suction/Port.h"
#include "suction/Workers.h"
#include "support/PlanBuilder.h"

namespace sumpwright::suction {

namespace {

using support::PlanBuilder;

ChanceOptions quick(int threads = 1) {
  ChanceOptions options;
  options.cell_m = 0.25;
  options.threads = threads;
  return options;
}

ChanceStudy studied(const plan::Job& job, plan::Fill fill, const ChanceOptions& options = quick()) {
  auto study = ChanceStudy::of(job, rangesOf(fill, job.house), options);
  EXPECT_TRUE(study);
  return *study;
}

const Sink kSump{{2.0, 2.0}, 0.3};

/// Cells of the guesses are coarser than those of the field: every pit that stands in the floor
/// there has an answer here. A semi-detached house of four cases, whole centimetres of its wall.
TEST(SuctionChance, APitOnFineCellsHasAnAnswerOnCoarseOnes) {
  PlanBuilder house = PlanBuilder::rectangle(9, 9);
  house.with([](plan::Job& job) {
    for (plan::Wall& wall : job.plan.rings[0].walls) wall.thickness_m = 0.36;
    job.plan.rings[0].walls[1].kind = plan::WallKind::party;
    job.plan.inner_walls.push_back({"iw", {{4.5, 0.36}, {4.5, 8.64}}, 0.1});
  });
  const plan::Job job = house.job();
  const auto perimeter = perimeter::Perimeter::of(job).value();
  const auto ranges = rangesOf(plan::Fill::graded, job.house);
  const auto model = modelOf(job, {});
  ASSERT_TRUE(model);
  const auto fine = FieldSolver::of(*model, {.cell_m = 0.1});
  ChanceOptions options = quick();
  options.cell_m = 0.2347;  // no multiple of anything here
  options.draws = 1;
  const auto chance = ChanceStudy::of(job, ranges, options);
  ASSERT_TRUE(chance);
  int asked = 0;
  for (int cm = 0; cm < 3600; cm += 5) {
    const Sink sink = sinkAt(perimeter, {0, 0.01 * cm}, 0.179);
    if (!portAt(fine.network(), sink.at, sink.radius_m)) continue;
    ++asked;
    EXPECT_TRUE(chance->ask({sink})) << "at " << cm << " cm";
  }
  EXPECT_GT(asked, 500);
}

TEST(SuctionPresets, RangesSayWhatIsKnown) {
  const plan::House house;
  const auto stone = rangesOf(plan::Fill::clean_stone, house);
  const auto unknown = rangesOf(plan::Fill::unknown, house);
  EXPECT_TRUE(stone.layered);
  EXPECT_FALSE(rangesOf(plan::Fill::none, house).layered);
  EXPECT_LT(unknown.permeability_m2.low, stone.permeability_m2.low);
  EXPECT_LT(unknown.permeability_m2.middle(), stone.permeability_m2.low);
  plan::House known;
  known.hardcore_m = 0.2;
  known.slab_m = 0.15;
  const auto ranges = rangesOf(plan::Fill::graded, known);
  EXPECT_NEAR(ranges.thickness_m.middle(), 0.2, 1e-12);
  EXPECT_EQ(ranges.slab_m, 0.15);
  // Not said: the slab of the drill section, whatever the house is built of.
  for (const auto build : {plan::BuildType::unknown, plan::BuildType::stone_rubble}) {
    known.build_type = build;
    known.slab_m = 0.12;
    EXPECT_EQ(rangesOf(plan::Fill::graded, known).slab_m, 0.12);
    known.slab_m.reset();
    EXPECT_EQ(rangesOf(plan::Fill::graded, known).slab_m, plan::floorLayers(known, nullptr).slab.m);
  }
}

TEST(SuctionPresets, DrawsFillTheirRangesEvenlyAndAlwaysAlike) {
  const auto ranges = rangesOf(plan::Fill::unknown, {});
  const auto draws = drawsOf(ranges, 64);
  ASSERT_EQ(draws.size(), 64U);
  EXPECT_EQ(draws, drawsOf(ranges, 64));
  EXPECT_NE(draws, drawsOf(ranges, 64, 2));
  std::vector<int> hits(64, 0);
  for (const Ground& ground : draws) {
    const double share = std::log(ground.permeability_m2 / ranges.permeability_m2.low) /
                         std::log(ranges.permeability_m2.high / ranges.permeability_m2.low);
    ++hits[static_cast<std::size_t>(share * 64.0)];
  }
  EXPECT_EQ(std::count(hits.begin(), hits.end(), 1), 64);
}

/// A network of the middle guess with factors on it is the network of the other guess.
TEST(SuctionPresets, ScalesTurnOneGroundIntoAnother) {
  const plan::Job job = PlanBuilder::rectangle(10, 8).with([](plan::Job& j) {
    j.plan.inner_walls.push_back({"w", {{5, 0}, {5, 8}}, 0.1, plan::BelowFloor::own_footing});
    j.house.ground_level_m = -0.6;
  });
  const auto ranges = rangesOf(plan::Fill::graded, job.house);
  const Ground base = ranges.middle();
  const Ground other = drawsOf(ranges, 8)[3];
  const FieldSolver scaled =
      FieldSolver::of(modelOf(job, base).value(), {.cell_m = 0.2}, scalesFrom(base, other));
  const FieldSolver itself = FieldSolver::of(modelOf(job, other).value(), {.cell_m = 0.2});
  ASSERT_TRUE(scaled.ok() && itself.ok());
  const auto a = scaled.unit(kSump);
  const auto b = itself.unit(kSump);
  EXPECT_NEAR(a->resistance_pa_s_m3 / b->resistance_pa_s_m3, 1.0, 1e-9);
  for (const Point p : {Point{8, 7}, Point{4, 6}}) {
    EXPECT_NEAR(
        *sampleAt(scaled.network(), a->suction, p) / *sampleAt(itself.network(), b->suction, p),
        1.0, 1e-9);
  }
}

TEST(SuctionChance, IsTheShareOfGuessesThatHold) {
  const plan::Job job = PlanBuilder::rectangle(10, 8);
  const ChanceStudy study = studied(job, plan::Fill::graded);
  const auto chance = study.ask({kSump});
  ASSERT_TRUE(chance);
  // One guess by hand.
  const Ground guess = study.draws()[5];
  const FieldSolver solver = FieldSolver::of(modelOf(job, guess).value(), {.cell_m = 0.25});
  const auto unit = solver.unit(kSump);
  const double flow =
      constantSuction(100.0)({unit->resistance_pa_s_m3, guess.inertia_pa_s2_m6(0.3)});
  const Reach reach = reachOf(solver.network(), superposed({*unit}, {flow}), {});
  EXPECT_NEAR(chance->floors[5], reach.floor, 1e-9);
  EXPECT_NEAR(chance->flows_m3_s[5] / flow, 1.0, 1e-9);
  double mean = 0.0;
  int whole = 0;
  for (const double floor : chance->floors) {
    mean += floor / 64.0;
    whole += floor >= kWholeFloor ? 1 : 0;
  }
  EXPECT_NEAR(chance->mean_floor, mean, 1e-12);
  EXPECT_NEAR(chance->whole_floor, whole / 64.0, 1e-12);
  for (const float share : chance->by_cell) {
    EXPECT_GE(share, 0.0F);
    EXPECT_LE(share, 1.0001F);
  }
  // Near the sump it is likelier than in the far corner.
  const auto at = [&](Point p) {
    return chance->by_cell[static_cast<std::size_t>(study.network().cellNear(p))];
  };
  EXPECT_GT(at({2.5, 2.0}), at({9.5, 7.5}));
}

TEST(SuctionChance, BetterGroundIsLikelierReached) {
  const plan::Job job = PlanBuilder::rectangle(10, 8);
  const double stone = studied(job, plan::Fill::clean_stone).ask({kSump})->mean_floor;
  const double graded = studied(job, plan::Fill::graded).ask({kSump})->mean_floor;
  EXPECT_GT(stone, graded);
}

TEST(SuctionChance, ThreadsChangeNothing) {
  const plan::Job job = PlanBuilder::lShape();
  const auto one = studied(job, plan::Fill::unknown, quick(1)).ask({kSump});
  const auto three = studied(job, plan::Fill::unknown, quick(3)).ask({kSump});
  EXPECT_EQ(one->by_cell, three->by_cell);
  EXPECT_EQ(one->floors, three->floors);
}

/// Unknown footings and a party wall: the worst of the answers counts, so no answer by itself says
/// less.
TEST(SuctionChance, TheWorseAnswerCounts) {
  const auto with = [](plan::BelowFloor below, bool party) {
    return PlanBuilder::rectangle(10, 8)
        .with([&](plan::Job& j) {
          j.plan.inner_walls.push_back({"w", {{5, 0}, {5, 8}}, 0.1, below});
          if (party) j.plan.rings[0].walls[1].kind = plan::WallKind::party;
        })
        .job();
  };
  const auto floors = [&](const plan::Job& job) {
    return studied(job, plan::Fill::graded).ask({kSump})->floors;
  };
  const ChanceStudy unknown = studied(with(plan::BelowFloor::unknown, true), plan::Fill::graded);
  EXPECT_EQ(unknown.summary().cases, 4);
  EXPECT_EQ(unknown.summary().factors, 4 * 64);
  const auto worst = unknown.ask({kSump})->floors;
  const auto stands = floors(with(plan::BelowFloor::own_footing, false));
  const auto none = floors(with(plan::BelowFloor::on_slab, false));
  for (std::size_t k = 0; k < worst.size(); ++k) {
    EXPECT_LE(worst[k], stands[k] + 0.02);
    EXPECT_LE(worst[k], none[k] + 0.02);
  }
}

TEST(SuctionChance, CanBeStoppedAndSaysHowFarItIs) {
  const plan::Job job = PlanBuilder::rectangle(10, 8);
  double last = 0.0;
  bool grew = true;
  const auto stopped =
      ChanceStudy::of(job, rangesOf(plan::Fill::graded, job.house), quick(2), [&](double done) {
        grew = grew && done > last;
        last = done;
        return done < 0.5;
      });
  EXPECT_TRUE(grew);
  EXPECT_LT(last, 0.75);
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.problems()[0].message.id, "suction.chance.stopped");
}

TEST(SuctionChance, StaysWithinMemoryByCoarserCells) {
  const plan::Job job = PlanBuilder::rectangle(20, 15);
  ChanceOptions options = quick();
  options.cell_m = 0.1;
  options.most_bytes = 40U * 1024U * 1024U;
  const ChanceStudy study = studied(job, plan::Fill::graded, options);
  EXPECT_TRUE(study.summary().coarser);
  EXPECT_LE(study.summary().bytes, options.most_bytes);
  EXPECT_GT(study.summary().bytes, options.most_bytes / 4);
}

/// A thread as a system gives it that has but one more to give.
class ScarceThread {
 public:
  ScarceThread(const std::function<void(std::size_t)>& run, std::size_t worker) {
    if (worker > 1) throw std::system_error(EAGAIN, std::generic_category());
    m_thread = std::jthread(run, worker);
  }

 private:
  std::jthread m_thread;
};

TEST(SuctionWorkers, WhereThreadsAreScarceFewerDoAllTheWork) {
  std::atomic<int> next{0};
  std::array<std::atomic<int>, 1000> done{};
  onWorkers<ScarceThread>(8, [&](std::size_t worker) {
    EXPECT_LT(worker, 2U);
    for (int k = next++; k < 1000; k = next++) ++done[static_cast<std::size_t>(k)];
  });
  EXPECT_TRUE(std::all_of(done.begin(), done.end(), [](const auto& n) { return n == 1; }));
  int calls = 0;
  onWorkers(0, [&](std::size_t worker) {
    EXPECT_EQ(worker, 0U);
    ++calls;
  });
  EXPECT_EQ(calls, 1) << "the caller at least";
}

TEST(SuctionChance, NoSumpInTheFloorNoAnswer) {
  const plan::Job job = PlanBuilder::rectangle(10, 8);
  EXPECT_FALSE(studied(job, plan::Fill::graded).ask({Sink{{-3, -3}, 0.3}}));
}

}  // namespace

}  // namespace sumpwright::suction
