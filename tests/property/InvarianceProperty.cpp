// How a house is drawn does not change where its sump may go.

#include <numbers>

#include "property/Case.h"
#include "property/Moved.h"

namespace sumpwright::property {

namespace {

using siting::Stretch;
using siting::Study;

constexpr double kEitherStudy_m = 1e-6;  ///< of either study; so ends of both agree to twice this

/// Every stretch of `a` is found in `b`, up to its ends.
void expectFoundIn(const Study& a, const Study& b, const Moved& moved) {
  for (const auto& ring : a.stretches()) {
    for (const Stretch& stretch : ring) {
      if (stretch.length_m() < 5.0 * kEitherStudy_m) continue;
      const auto expected = renamed(findingsOf(a, stretch), moved);
      for (const double s :
           {stretch.from_m + 2.0 * kEitherStudy_m, stretch.from_m + 0.4321 * stretch.length_m(),
            stretch.to_m - 2.0 * kEitherStudy_m}) {
        const double there = moved.chainage(stretch.ring, s);
        ASSERT_EQ(findingsAt(b, stretch.ring, there), expected)
            << "ring " << stretch.ring << " at " << s << ", there " << there;
      }
    }
  }
}

/// The other way round: no stretch of `b` is missing in `a`.
void expectAsMany(const Study& a, const Study& b) {
  const auto count = [](const Study& study) {
    std::vector<double> lengths;
    for (const auto& run : study.runs()) {
      if (run.to_m - run.from_m > 5.0 * kEitherStudy_m) lengths.push_back(run.to_m - run.from_m);
    }
    std::sort(lengths.begin(), lengths.end());
    return lengths;
  };
  const auto runsOfA = count(a);
  const auto runsOfB = count(b);
  ASSERT_EQ(runsOfA.size(), runsOfB.size());
  for (std::size_t i = 0; i < runsOfA.size(); ++i) {
    EXPECT_NEAR(runsOfA[i], runsOfB[i], 2.0 * kEitherStudy_m);
  }
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(a.lengths_m()[i], b.lengths_m()[i], 1e-5);
  }
  ASSERT_EQ(a.best().size(), b.best().size());
}

void expectSame(const Case& c, const Moved& moved) {
  const auto before = study(c);
  ASSERT_TRUE(before);
  const auto after = study({c.seed, moved.job, c.sheet});
  ASSERT_TRUE(after);
  expectFoundIn(*before, *after, moved);
  expectAsMany(*before, *after);
  if (testing::Test::HasFailure()) {
    ADD_FAILURE() << "job: " << support::writeForReproduction(c.job, c.seed)
                  << "\nthe other drawing: "
                  << support::writeForReproduction(moved.job, c.seed + 1'000'000'000);
  }
}

constexpr int kCases = 40;

TEST(InvarianceProperty, TurnedAndMoved) {
  support::forEachSeed(kCases, [](std::uint64_t seed) {
    const Case c = makeCase(seed);
    support::Random random(~seed);
    expectSame(c, turnedAndMoved(c.job, random.uniform(0.0, 2.0 * std::numbers::pi),
                                 {random.uniform(-50.0, 50.0), random.uniform(-50.0, 50.0)}));
  });
}

TEST(InvarianceProperty, Mirrored) {
  support::forEachSeed(kCases, [](std::uint64_t seed) {
    const Case c = makeCase(seed);
    expectSame(c, mirrored(c.job));
  });
}

TEST(InvarianceProperty, BegunAtAnotherCorner) {
  support::forEachSeed(kCases, [](std::uint64_t seed) {
    const Case c = makeCase(seed);
    support::Random random(~seed);
    const int ring = random.between(0, static_cast<int>(c.job.plan.rings.size()) - 1);
    const auto corners = c.job.plan.rings[static_cast<std::size_t>(ring)].corners.size();
    expectSame(c, begunAt(c.job, ring, random.between(1, static_cast<int>(corners) - 1)));
  });
}

}  // namespace

}  // namespace sumpwright::property
