// Distances of a placed discharge in space beside those of CGAL, which takes each opening for two
// triangles.

#include <CGAL/Simple_cartesian.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "build/Discharge.h"
#include "build/Heights.h"
#include "build/RefusedZone.h"
#include "build/Run.h"
#include "core/build/Sites.h"
#include "support/Seed.h"

namespace sumpwright::build {

namespace {

using Space = CGAL::Simple_cartesian<double>;

/// From the axis of the outlet to the opening's rectangle.
double cgalDistance(const plan::Opening& o, const rules::Site& site, perimeter::Place outlet,
                    double z) {
  const geometry::Point p = site.perimeter.pointAt(outlet);
  const geometry::Segment face = site.perimeter.faceOf(o.at, o.width_m);
  const auto corner = [](geometry::Point at, double h) { return Space::Point_3(at.x, at.y, h); };
  const Space::Point_3 mouth = corner(p, z);
  const Space::Point_3 a = corner(face.a, *o.sill_m);
  const Space::Point_3 b = corner(face.b, *o.sill_m);
  const Space::Point_3 c = corner(face.b, *o.head_m);
  const Space::Point_3 d = corner(face.a, *o.head_m);
  return std::sqrt(std::min(CGAL::squared_distance(mouth, Space::Triangle_3(a, b, c)),
                            CGAL::squared_distance(mouth, Space::Triangle_3(a, c, d))));
}

/// Windows of two storeys with the axis of the outlet measured from.
rules::Site windowedSite(support::Random& random) {
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
  rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  std::erase_if(sheet.rules, [](const rules::Rule& r) { return r.id != "openings"; });
  sheet.rules[0].applies_to = {rules::Part::outlet};
  sheet.rules[0].from = rules::MeasuredFrom::centre;
  sheet.rules[0].clear_below_m.reset();
  sheet.rules[0].needed_m->value = random.uniform(0.3, 4.0);
  sheet.gates.clear();
  rules::Site site = rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet,
                                     plan::OutletMode::riser, 0.127);
  site.run = rules::PlacedRun{};
  site.run->outlet_m = random.uniform(0.0, 7.0);
  site.run->shift_m = random.chance(0.5) ? 0.0 : random.uniform(-3.0, 3.0);
  return site;
}

TEST(Cgal, NearestOpeningIsAsFar) {
  int compared = 0;
  support::forEachSeed(300, [&](std::uint64_t seed) {
    support::Random random(seed);
    const rules::Site site = windowedSite(random);
    const double z = site.run->outlet_m;
    for (int k = 0; k < 20; ++k) {
      const int ring = random.between(0, site.perimeter.ringCount() - 1);
      const perimeter::Place hole{ring, random.uniform(0.0, site.perimeter.length_m(ring))};
      const perimeter::Place outlet =
          site.perimeter.wrapped({ring, hole.chainage_m + site.run->shift_m});
      double least = std::numeric_limits<double>::infinity();
      for (const plan::Opening& o : site.job.plan.openings) {
        least = std::min(least, cgalDistance(o, site, outlet, z));
      }
      const auto nearest = nearestOfRun(site.sheet.rules[0], site, hole);
      ASSERT_EQ(nearest.has_value(), std::isfinite(least));
      if (!nearest) continue;
      EXPECT_NEAR(nearest->distance_m, least, 1e-9)
          << nearest->thing << " from " << ring << ":" << hole.chainage_m;
      ++compared;
    }
  });
  EXPECT_GT(compared, 1000);
}

TEST(Cgal, RefusedSpansEndJustFarEnough) {
  int ends = 0;
  support::forEachSeed(150, [&](std::uint64_t seed) {
    support::Random random(seed);
    const rules::Site site = windowedSite(random);
    std::vector<rules::FindingSpan> spans;
    addRunSpans(site.sheet.rules[0], site, spans);
    for (const rules::FindingSpan& span : spans) {
      const auto o =
          std::find_if(site.job.plan.openings.begin(), site.job.plan.openings.end(),
                       [&](const plan::Opening& one) { return one.id == span.finding.thing; });
      ASSERT_NE(o, site.job.plan.openings.end());
      for (const double end : {span.from_m, span.to_m}) {
        if (end <= 0.0 || end >= site.perimeter.length_m(span.ring)) continue;
        const perimeter::Place outlet =
            site.perimeter.wrapped({span.ring, end + site.run->shift_m});
        EXPECT_NEAR(cgalDistance(*o, site, outlet, site.run->outlet_m),
                    site.sheet.rules[0].needed_m->value, 1e-6)
            << o->id << " at " << end;
        ++ends;
      }
    }
  });
  EXPECT_GT(ends, 100);
}

}  // namespace

}  // namespace sumpwright::build
