// Exact stretches of random houses against the sampled twin, which judges single points.

#include <algorithm>
#include <cmath>

#include "property/Case.h"

namespace sumpwright::property {

namespace {

using siting::Stretch;
using siting::Study;
using support::SampledTwin;
using support::TwinFindings;

constexpr double kExact_m = 1e-6;  ///< ends are right to this
constexpr double kApart_m = 2e-6;  ///< samples nearer than this to an end are not asked about
constexpr int kManyRays = 20001;   ///< where a few rays may have missed a sliver of a room

/// Twin and study agree at s, as far as the twin can tell.
testing::AssertionResult agrees(const SampledTwin& twin, const TwinFindings& exact, int ring,
                                double s) {
  const TwinFindings sampled = twin.at(ring, s);
  if (sampled == exact) return testing::AssertionSuccess();
  const TwinFindings closely = twin.at(ring, s, kManyRays);
  if (closely == exact) return testing::AssertionSuccess();
  return testing::AssertionFailure() << "ring " << ring << " at " << s << ": exact "
                                     << toText(exact) << "\nsampled " << toText(closely);
}

void checkTiling(const Study& study) {
  const auto& rings = study.stretches();
  ASSERT_EQ(rings.size(), static_cast<std::size_t>(study.perimeter().ringCount()));
  for (std::size_t r = 0; r < rings.size(); ++r) {
    const auto& ring = rings[r];
    ASSERT_FALSE(ring.empty());
    EXPECT_EQ(ring.front().from_m, 0.0);
    EXPECT_EQ(ring.back().to_m, study.perimeter().length_m(static_cast<int>(r)));
    for (std::size_t i = 0; i < ring.size(); ++i) {
      EXPECT_LT(ring[i].from_m, ring[i].to_m);
      EXPECT_EQ(ring[i].ring, static_cast<int>(r));
      if (i == 0) continue;
      EXPECT_EQ(ring[i].from_m, ring[i - 1].to_m) << "gap or overlap";
      EXPECT_NE(findingsOf(study, ring[i]), findingsOf(study, ring[i - 1]))
          << "not merged at " << ring[i].from_m;
    }
  }
}

siting::State worst(const TwinFindings& findings) {
  siting::State state = siting::State::clear;
  for (const auto& f : findings) {
    state = std::max(state, f.weight == rules::Weight::binding   ? siting::State::refused
                            : f.weight == rules::Weight::unknown ? siting::State::not_proven
                                                                 : siting::State::advised_against);
  }
  return state;
}

/// Every stretch is what the twin says a micrometre inside either end and in between: so each end
/// is right to a micrometre, and nothing in between was missed.
void checkStretch(const Study& study, const SampledTwin& twin, const Stretch& stretch, int inner) {
  const TwinFindings exact = findingsOf(study, stretch);
  EXPECT_EQ(stretch.state, worst(exact));
  if (stretch.length_m() < 2.5 * kExact_m) return;
  ASSERT_TRUE(agrees(twin, exact, stretch.ring, stretch.from_m + kExact_m));
  ASSERT_TRUE(agrees(twin, exact, stretch.ring, stretch.to_m - kExact_m));
  for (int i = 0; i < inner; ++i) {
    // Not the middle: a rule that keeps off a corner by as much either way has the corner there,
    // where the drill line may run along an outline.
    const double s = stretch.from_m + stretch.length_m() * (i + 0.4321) / inner;
    ASSERT_TRUE(agrees(twin, exact, stretch.ring, s));
    ASSERT_EQ(findingsAt(study, stretch.ring, s), exact) << "assessed at " << s;
    ASSERT_EQ(study.stateAt({stretch.ring, s}), stretch.state);
  }
}

TEST(StretchesProperty, TileEachRingAndAgreeWithSamples) {
  support::forEachSeed(120, [](std::uint64_t seed) {
    const Case c = makeCase(seed);
    const auto made = study(c);
    ASSERT_TRUE(made);
    const SampledTwin twin = twinOf(*made);
    checkTiling(*made);
    for (const auto& ring : made->stretches()) {
      for (const Stretch& stretch : ring) {
        const int inner = std::clamp(static_cast<int>(stretch.length_m() / 0.1), 1, 12);
        checkStretch(*made, twin, stretch, inner);
        if (testing::Test::HasFatalFailure()) break;
      }
    }
    if (testing::Test::HasFailure()) {
      ADD_FAILURE() << "job: " << support::writeForReproduction(c.job, seed);
    }
  });
}

/// Whether the exact spans of (rule, thing) hold a chainage.
bool exactHolds(const Study& study, const rules::Rule& rule, const std::string& thing, int ring,
                double s) {
  return std::any_of(study.spans().begin(), study.spans().end(), [&](const auto& span) {
    return span.ring == ring && span.thing_index >= 0 && span.finding.rule == rule.id &&
           span.finding.thing == thing && span.from_m < s && s < span.to_m;
  });
}

double nearestEnd(const Study& study, const rules::Rule& rule, const std::string& thing, int ring,
                  double s) {
  double least = 1e9;
  for (const auto& span : study.spans()) {
    if (span.ring != ring || span.finding.rule != rule.id || span.finding.thing != thing) continue;
    least = std::min({least, std::abs(span.from_m - s), std::abs(span.to_m - s)});
  }
  return least;
}

/// Walks a ring; wherever the twin's predicate "distance < needed" changes between two samples,
/// bisects to the change and asks for an exact end there.
void checkEnds(const Study& study, const SampledTwin& twin, const rules::Rule& rule, int ring,
               double step) {
  const double length = twin.length_m(ring);
  const auto refusedAt = [&](const std::string& thing, double s) {
    const auto all = twin.distances(rule, ring, s);
    const auto found = all.find(thing);
    return found != all.end() && found->second < rule.needed_m->value;
  };
  std::map<std::string, bool> before;
  for (const auto& [id, d] : twin.distances(rule, ring, 0.0)) before[id] = refusedAt(id, 0.0);
  for (double low = 0.0; low + step < length; low += step) {
    for (const auto& [id, distance] : twin.distances(rule, ring, low + step)) {
      const bool now = distance < rule.needed_m->value;
      const bool then = std::exchange(before[id], now);
      if (now == then) continue;
      double a = low;
      double b = low + step;
      while (b - a > 1e-9) {
        const double middle = 0.5 * (a + b);
        (refusedAt(id, middle) == then ? a : b) = middle;
      }
      EXPECT_LE(nearestEnd(study, rule, id, ring, 0.5 * (a + b)), kExact_m)
          << rule.id << " of " << id << " changes at " << a << " on ring " << ring;
      EXPECT_EQ(exactHolds(study, rule, id, ring, a - kApart_m), then);
      EXPECT_EQ(exactHolds(study, rule, id, ring, b + kApart_m), now);
    }
  }
}

bool hasEnds(const rules::Rule& rule) {
  using rules::RuleKind;
  return rule.enabled && rule.severity != rules::Severity::preference &&
         (rule.kind == RuleKind::clearance || rule.kind == RuleKind::along_wall ||
          rule.kind == RuleKind::drill_line);
}

TEST(StretchesProperty, EndsAreWhereBisectionFindsThem) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    const Case c = makeCase(seed);
    const auto made = study(c);
    ASSERT_TRUE(made);
    const SampledTwin twin = twinOf(*made);
    for (const rules::Rule& rule : made->sheet().rules) {
      if (!hasEnds(rule)) continue;
      for (int ring = 0; ring < made->perimeter().ringCount(); ++ring) {
        checkEnds(*made, twin, rule, ring, 0.037);
      }
    }
    if (testing::Test::HasFailure()) {
      ADD_FAILURE() << "job: " << support::writeForReproduction(c.job, seed);
    }
  });
}

/// The twin's least distance over a stretch lies above the exact one by no more than half a step:
/// walking ds along a wall changes no straight distance by more than ds.
void checkLeast(const Study& study, const SampledTwin& twin, const Stretch& stretch) {
  constexpr int kSteps = 40;
  for (const rules::Finding& f : study.findingsOf(stretch)) {
    if (!f.distance_m || f.weight == rules::Weight::unknown) continue;
    const rules::Rule& rule = *study.sheet().find(f.rule);
    if (!hasEnds(rule)) continue;
    double least = 1e9;
    for (int i = 0; i <= kSteps; ++i) {
      const double s = stretch.from_m + stretch.length_m() * (i + 0.0) / kSteps;
      const double inside = std::clamp(s, stretch.from_m + 1e-9,
                                       std::max(stretch.from_m + 1e-9, stretch.to_m - 1e-9));
      const auto all = twin.distances(rule, stretch.ring, inside);
      if (all.contains(f.thing)) least = std::min(least, all.at(f.thing));
    }
    EXPECT_LE(*f.distance_m, least + 1e-8) << f.rule << " " << f.thing;
    EXPECT_GE(*f.distance_m, least - stretch.length_m() / kSteps - 1e-8)
        << f.rule << " " << f.thing << " from " << stretch.from_m;
    EXPECT_LT(*f.distance_m, *f.needed_m);
  }
}

TEST(StretchesProperty, DistancesAreTheLeastOfTheStretch) {
  support::forEachSeed(40, [](std::uint64_t seed) {
    const Case c = makeCase(seed);
    const auto made = study(c);
    ASSERT_TRUE(made);
    const SampledTwin twin = twinOf(*made);
    for (const auto& ring : made->stretches()) {
      for (const Stretch& stretch : ring) checkLeast(*made, twin, stretch);
    }
    if (testing::Test::HasFailure()) {
      ADD_FAILURE() << "job: " << support::writeForReproduction(c.job, seed);
    }
  });
}

TEST(StretchesProperty, MarginsAreThoseOfTheNearestThing) {
  support::forEachSeed(40, [](std::uint64_t seed) {
    const Case c = makeCase(seed);
    const auto made = study(c);
    ASSERT_TRUE(made);
    const SampledTwin twin = twinOf(*made);
    support::Random random(seed + 1);
    for (int i = 0; i < 25; ++i) {
      const int ring = random.between(0, made->perimeter().ringCount() - 1);
      const double s = random.uniform(0.0, made->perimeter().length_m(ring));
      const auto assessed = made->assess({ring, s});
      for (const rules::Margin& m : assessed.margins) {
        const rules::Rule& rule = *made->sheet().find(m.rule);
        if (!hasEnds(rule)) continue;
        double least = 1e9;
        for (const auto& [id, d] : twin.distances(rule, ring, s)) least = std::min(least, d);
        ASSERT_NEAR(m.distance_m, least, 1e-9) << m.rule;
        ASSERT_DOUBLE_EQ(m.margin_m, m.distance_m - m.needed_m);
      }
    }
  });
}

}  // namespace

}  // namespace sumpwright::property
