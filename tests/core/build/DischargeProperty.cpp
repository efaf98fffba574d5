// Exact spans of placed outlets beside rectangles in space that are sampled point by point.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "build/Discharge.h"
#include "build/RefusedZone.h"
#include "build/Run.h"
#include "core/build/Sites.h"
#include "geometry/Shapes.h"
#include "support/Seed.h"

namespace sumpwright::build {

namespace {

using rules::Weight;
using support::Random;

constexpr int kGrid = 60;  ///< samples across an opening, either way
constexpr double kHalfPipe = 0.055;

struct InSpace {
  double x, y, z;
};

double apart(const InSpace& a, const InSpace& b) {
  return std::sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y) +
                   (a.z - b.z) * (a.z - b.z));
}

/// Least distance from the upright axis over samples of the opening's rectangle, less the pipe in
/// plan: of each sample, that of the nearest place of the pipe's round edge.
double sampledDistance(const plan::Opening& o, const rules::Site& site, perimeter::Place at,
                       double z) {
  const geometry::Point p = site.perimeter.pointAt(at);
  const geometry::Segment face = site.perimeter.faceOf(o.at, o.width_m);
  double least = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= kGrid; ++i) {
    const geometry::Point f = geometry::lerp(face.a, face.b, static_cast<double>(i) / kGrid);
    const double plan = std::max(0.0, geometry::distance(p, f) - kHalfPipe);
    for (int j = 0; j <= kGrid; ++j) {
      const double h = *o.sill_m + (*o.head_m - *o.sill_m) * j / kGrid;
      least = std::min(least, apart({plan, 0.0, z}, {0.0, 0.0, h}));
    }
  }
  return least;
}

plan::Job jobWithWindows(Random& random) {
  plan::Job job = support::randomJob(random, {.courtyards = true, .all_looked_for = true});
  int n = 0;
  std::erase_if(job.plan.openings,
                [](const plan::Opening& o) { return o.kind != plan::OpeningKind::window; });
  for (plan::Opening& o : job.plan.openings) {
    o.id = "w" + std::to_string(n++);
    o.opens = plan::Opens::yes;
    o.storey = random.between(0, 1);
    o.sill_m = o.storey * 2.7 + random.uniform(0.0, 1.4);
    o.head_m = *o.sill_m + random.uniform(0.3, 1.5);
  }
  job.plan.outside.clear();
  job.house.eaves_m = random.uniform(2.3, 5.5);
  return job;
}

rules::Site randomSite(Random& random) {
  const plan::Job job = jobWithWindows(random);
  rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  std::erase_if(sheet.rules, [](const rules::Rule& r) { return r.id != "openings"; });
  sheet.rules[0].applies_to = {rules::Part::outlet};
  sheet.rules[0].needed_m->value = random.uniform(0.3, 3.5);
  sheet.gates.clear();
  rules::Site site = rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet,
                                     plan::OutletMode::riser, 0.127);
  site.pipe_od_m = 2.0 * kHalfPipe;
  site.run = rules::PlacedRun{};
  site.run->outlet_m = random.uniform(0.2, 6.0);
  site.run->shift_m = random.chance(0.5) ? 0.0 : random.uniform(-3.0, 3.0);
  return site;
}

bool inSpans(const std::vector<rules::FindingSpan>& spans, const std::string& thing,
             perimeter::Place at) {
  return std::any_of(spans.begin(), spans.end(), [&](const rules::FindingSpan& s) {
    return s.ring == at.ring && s.finding.thing == thing && at.chainage_m < s.to_m &&
           (at.chainage_m > s.from_m || (s.from_in && at.chainage_m == s.from_m));
  });
}

TEST(DischargeProperty, SpansAgreeWithSampledRectangles) {
  support::forEachSeed(150, [](std::uint64_t seed) {
    Random random(seed);
    const rules::Site site = randomSite(random);
    const rules::Rule& rule = site.sheet.rules[0];
    std::vector<rules::FindingSpan> spans;
    addRunSpans(rule, site, spans);
    for (int k = 0; k < 40; ++k) {
      const int ring = random.between(0, site.perimeter.ringCount() - 1);
      const perimeter::Place hole{ring, random.uniform(0.0, site.perimeter.length_m(ring))};
      const perimeter::Place outlet =
          site.perimeter.wrapped({ring, hole.chainage_m + site.run->shift_m});
      for (const plan::Opening& o : site.job.plan.openings) {
        const double sampled = sampledDistance(o, site, outlet, site.run->outlet_m);
        // The nearest sample is at most half a step off either way.
        const double off = 0.51 / kGrid * std::hypot(o.width_m, *o.head_m - *o.sill_m);
        if (std::abs(sampled - rule.needed_m->value) <= off) continue;
        EXPECT_EQ(inSpans(spans, o.id, hole), sampled < rule.needed_m->value)
            << o.id << " hole at " << hole.ring << ":" << hole.chainage_m << ", sampled " << sampled
            << " of " << rule.needed_m->value;
      }
    }
  });
}

TEST(DischargeProperty, EndsOfSpansAreExactlyFarEnough) {
  support::forEachSeed(150, [](std::uint64_t seed) {
    Random random(seed);
    const rules::Site site = randomSite(random);
    const rules::Rule& rule = site.sheet.rules[0];
    std::vector<rules::FindingSpan> spans;
    addRunSpans(rule, site, spans);
    for (const rules::FindingSpan& s : spans) {
      for (const double end : {s.from_m, s.to_m}) {
        if (end <= 0.0 || end >= site.perimeter.length_m(s.ring)) continue;
        const rules::Finding f = runFindingAt(rule, site, s.finding, {s.ring, end});
        EXPECT_NEAR(*f.distance_m, rule.needed_m->value, 1e-6) << s.finding.thing << " at " << end;
      }
      const rules::Finding middle =
          runFindingAt(rule, site, s.finding, {s.ring, 0.5 * (s.from_m + s.to_m)});
      EXPECT_GE(*middle.distance_m, *s.finding.distance_m - 1e-9);
    }
  });
}

/// Least over samples of all of the riser: up from the ground, along the walls, up again.
double sampledRiser(const plan::Opening& o, const rules::Site& site, perimeter::Place hole) {
  constexpr int kSteps = 80;
  const double cross = site.run->outlet_m - kCrossUnderOutlet_m;
  const double shift = site.run->shift_m;
  double least = std::numeric_limits<double>::infinity();
  const auto take = [&](double aside, double z) {
    const perimeter::Place at = site.perimeter.wrapped({hole.ring, hole.chainage_m + aside});
    const geometry::Point p = site.perimeter.pointAt(at);
    const geometry::Segment face = site.perimeter.faceOf(o.at, o.width_m);
    for (int i = 0; i <= 40; ++i) {
      const geometry::Point f = geometry::lerp(face.a, face.b, i / 40.0);
      const double plan = std::max(0.0, geometry::distance(p, f) - kHalfPipe);
      const double up = std::max({0.0, *o.sill_m - z, z - *o.head_m});
      least = std::min(least, std::hypot(plan, up));
    }
  };
  for (int i = 0; i <= kSteps; ++i) {
    const double t = static_cast<double>(i) / kSteps;
    take(0.0, -0.5 + t * (std::max(-0.5, cross) + 0.5));
    take(shift, cross + t * kCrossUnderOutlet_m);
    for (const double edge : {-kHalfPipe, kHalfPipe}) take(t * shift, cross + edge);
  }
  return least;
}

TEST(DischargeProperty, AWayAsideAgreesWithItsSamples) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    Random random(seed);
    rules::Site site = randomSite(random);
    site.sheet.rules[0].applies_to = {rules::Part::riser};
    site.sheet.rules[0].needed_m->value = random.uniform(0.1, 1.2);
    site.run->shift_m = random.uniform(-6.0, 6.0);
    const rules::Rule& rule = site.sheet.rules[0];
    std::vector<rules::FindingSpan> spans;
    addRunSpans(rule, site, spans);
    for (int k = 0; k < 20; ++k) {
      const int ring = random.between(0, site.perimeter.ringCount() - 1);
      const perimeter::Place hole{ring, random.uniform(0.0, site.perimeter.length_m(ring))};
      for (const plan::Opening& o : site.job.plan.openings) {
        const double sampled = sampledRiser(o, site, hole);
        // Half a step of the opening and of each part of the riser.
        const double off = 0.51 * (o.width_m / 40 + 7.0 / 80);
        if (std::abs(sampled - rule.needed_m->value) <= off) continue;
        EXPECT_EQ(inSpans(spans, o.id, hole), sampled < rule.needed_m->value)
            << o.id << " hole at " << ring << ":" << hole.chainage_m << ", sampled " << sampled
            << " of " << rule.needed_m->value;
      }
    }
  });
}

// Heights at a chainage, chainages at a height: the same zone from two sides.
TEST(DischargeProperty, HeightsAndChainagesTellTheSame) {
  support::forEachSeed(150, [](std::uint64_t seed) {
    Random random(seed);
    rules::Site site = randomSite(random);
    site.sheet.rules.push_back(*support::builtInSheet("ie-practice").find("party-wall"));
    const double z = site.run->outlet_m;
    const auto spans = chainagesObjected(site, z, Weight::binding);
    for (int k = 0; k < 60; ++k) {
      const int ring = random.between(0, site.perimeter.ringCount() - 1);
      const double s = random.uniform(0.0, site.perimeter.length_m(ring));
      const auto heights = heightsObjected(site, {ring, s}, Weight::binding);
      const bool by_height = std::any_of(heights.begin(), heights.end(),
                                         [&](const auto& i) { return z > i.from && z < i.to; });
      const bool by_chainage = std::any_of(spans.begin(), spans.end(), [&](const auto& i) {
        return i.ring == ring && s > i.from_m && s < i.to_m;
      });
      EXPECT_EQ(by_height, by_chainage) << ring << ":" << s << " at " << z;
    }
  });
}

/// A house with all its things under a whole sheet as it is shipped.
rules::Site wholeSite(Random& random) {
  plan::Job job = support::randomJob(random, {.courtyards = true, .all_looked_for = true});
  if (random.chance(0.6)) job.house.eaves_m = random.uniform(2.3, 5.5);
  for (plan::Opening& o : job.plan.openings) {
    o.sill_m = random.uniform(0.0, 3.5);
    o.head_m = *o.sill_m + random.uniform(0.3, 1.5);
  }
  const auto sheet = support::builtInSheet(
      random.oneOf<std::string>({"ie-practice", "uk-practice", "us-practice"}));
  return rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet, plan::OutletMode::riser,
                         0.127);
}

bool isIn(const geometry::Intervals& heights, double z) {
  return std::any_of(heights.begin(), heights.end(),
                     [&](const auto& i) { return z > i.from && z < i.to; });
}

bool isNearEnd(const geometry::Intervals& heights, double z) {
  return std::any_of(heights.begin(), heights.end(), [&](const auto& i) {
    return std::abs(z - i.from) < 1e-6 || std::abs(z - i.to) < 1e-6;
  });
}

/// Rules whose findings hold at a place of the hole with that weight.
std::vector<const rules::Rule*> found(const rules::Site& site, perimeter::Place at, Weight weight) {
  std::vector<const rules::Rule*> rules;
  for (const rules::Rule& rule : site.sheet.rules) {
    if (!rule.enabled || rule.severity == rules::Severity::preference) continue;
    std::vector<rules::FindingSpan> spans;
    addRunSpans(rule, site, spans);
    // Straight above a hole the wall is judged with the hole.
    if (rule.kind == rules::RuleKind::wall) rules::kWallRule.spans(rule, site, spans);
    const bool here = std::any_of(spans.begin(), spans.end(), [&](const rules::FindingSpan& s) {
      return s.ring == at.ring && s.finding.weight == weight && rules::holds(s, at.chainage_m);
    });
    if (here) rules.push_back(&rule);
  }
  return rules;
}

// The zone that is drawn and proposed by beside what the whole sheet finds at an outlet there.
TEST(DischargeProperty, TheZoneIsWhatTheSheetFinds) {
  int in = 0;
  int out = 0;
  int walled = 0;
  support::forEachSeed(90, [&](std::uint64_t seed) {
    Random random(seed);
    rules::Site site = wholeSite(random);
    for (const Weight weight : {Weight::binding, Weight::advisory}) {
      const double z = random.uniform(0.2, 7.0);
      const auto spans = chainagesObjected(site, z, weight);
      rules::Site placed = site;
      placed.run = rules::PlacedRun{};
      placed.run->outlet_m = z;
      for (int k = 0; k < 12; ++k) {
        const int ring = random.between(0, site.perimeter.ringCount() - 1);
        const perimeter::Place at{ring, random.uniform(0.0, site.perimeter.length_m(ring))};
        const auto heights = heightsObjected(site, at, weight);
        if (isNearEnd(heights, z)) continue;
        // A pipe that reaches over the end of its wall: the hole's own finding ends at the corner.
        const perimeter::Edge& edge = site.perimeter.edgeAt(at);
        if (std::min(at.chainage_m - edge.start_m, edge.end_m() - at.chainage_m) < 0.06) continue;
        const bool by_height = isIn(heights, z);
        const bool by_chainage = std::any_of(spans.begin(), spans.end(), [&](const auto& s) {
          return s.ring == ring && rules::holds(s, at.chainage_m);
        });
        EXPECT_EQ(by_height, by_chainage)
            << site.sheet.id << ' ' << ring << ':' << at.chainage_m << " at " << z;
        const auto rules = found(placed, at, weight);
        (by_height ? in : out) += 1;
        if (by_height) {
          EXPECT_FALSE(rules.empty()) << ring << ':' << at.chainage_m << " at " << z;
        }
        for (const rules::Rule* rule : rules) {
          if (rule->measure == rules::DischargeMeasure::enclosed) ++walled;
          const bool of_outlet = rule->applies_to == std::vector{rules::Part::outlet};
          EXPECT_TRUE(by_height || !of_outlet)
              << rule->id << ' ' << ring << ':' << at.chainage_m << " at " << z;
        }
      }
    }
    if (testing::Test::HasFailure()) ADD_FAILURE() << "seed " << seed;
  });
  EXPECT_GT(in, 100);
  EXPECT_GT(out, 100);
  EXPECT_GT(walled, 10);
}

// Outlines as they are drawn cover just the heights.
TEST(DischargeProperty, OutlinesCoverTheZone) {
  constexpr double kTolerance = 0.001;
  support::forEachSeed(40, [](std::uint64_t seed) {
    Random random(seed);
    const rules::Site site = wholeSite(random);
    for (int k = 0; k < 12; ++k) {
      const int ring = random.between(0, site.perimeter.ringCount() - 1);
      const perimeter::Place at{ring, random.uniform(0.0, site.perimeter.length_m(ring))};
      const double z = random.uniform(-0.5, 7.0);
      const perimeter::Edge& edge = site.perimeter.edgeAt(at);
      const double s = at.chainage_m;
      if (s - edge.start_m < 0.01 || edge.end_m() - s < 0.01) continue;
      // A zone may end upright: the place has to be as clear of it, or as deep in it, to all sides.
      bool same = true;
      const bool by_height = isIn(heightsObjected(site, at, Weight::binding), z);
      for (const double dx : {-0.005, 0.005}) {
        const auto beside = heightsObjected(site, {ring, s + dx}, Weight::binding);
        for (const double dz : {-0.005, 0.005}) same = same && isIn(beside, z + dz) == by_height;
      }
      if (!same) continue;
      const auto outlines = zoneOutlines(site, edge, Weight::binding, -2.0, 9.0, kTolerance);
      const bool drawn = std::any_of(outlines.begin(), outlines.end(), [&](const auto& one) {
        return geometry::contains(one.outline, {s, z});
      });
      EXPECT_EQ(drawn, by_height) << site.sheet.id << ' ' << ring << ':' << s << " at " << z;
    }
    if (testing::Test::HasFailure()) ADD_FAILURE() << "seed " << seed;
  });
}

}  // namespace

}  // namespace sumpwright::build
