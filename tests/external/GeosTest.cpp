// Where clearance rules leave the wall free, against GEOS (libgeos, C API; the version is printed):
// things grown by GEOSBuffer, taken from the wall line by GEOSDifference.
//
// GEOS draws a circle of radius r as a polygon whose corners lie on it, q to a quarter, so its
// buffer holds every place nearer than r cos(pi / (4 q)) and none further than r. The wall it
// leaves free is therefore at least what is exact for r and at most what is exact for
// r cos(pi / (4 q)) (derived). Each piece of a polyline is grown by itself: GEOS simplifies the
// line it grows, by up to a hundredth of r, which a single piece has nothing for.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <numbers>

#include "external/Geos.h"
#include "geometry/Interval.h"
#include "plan/JobText.h"
#include "rules/Judge.h"
#include "support/PlanBuilder.h"
#include "support/RandomPlan.h"
#include "support/Seed.h"

namespace sumpwright::external {

namespace {

using rules::FindingSpan;
using rules::Rule;
using rules::Site;

constexpr int kQuarterSegments = 64;
/// GEOS joins corners of a buffer nearer than a millionth of r (OffsetSegmentGenerator,
/// CURVE_VERTEX_SNAP_DISTANCE_FACTOR, GEOS 3.11).
constexpr double kSnap = 1e-6;
/// Of all lengths: two ends of a micrometre, GEOS's and ours.
constexpr double kLength_m = 2e-6;

double shrunk(double r) {
  return r * (std::cos(std::numbers::pi / (4.0 * kQuarterSegments)) - kSnap);
}

Site siteOf(const plan::Job& job, const rules::RuleSheet& sheet) {
  return rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet, job.design.outlet,
                         job.design.core_mm.value_or(sheet.default_core_mm.value) / 1000.0);
}

bool compared(const Rule& rule, const Site& site) {
  return rule.kind == rules::RuleKind::clearance && rule.enabled &&
         rule.severity != rules::Severity::preference && rule.path == rules::PathKind::straight &&
         rules::halfWidth_m(rule, site);
}

/// Wall of a ring that the rule leaves free, were its reach `reach`.
double exactFree(const Site& site, const Rule& rule, int ring, double reach) {
  Site other = site;
  Rule& changed = other.sheet.rules[static_cast<std::size_t>(site.indexOf(rule))];
  changed.needed_m->value = reach - *rules::halfWidth_m(rule, site);
  std::vector<FindingSpan> spans;
  rules::kClearance.spans(changed, other, spans);
  geometry::Intervals refused;
  for (const FindingSpan& s : spans) {
    if (s.ring == ring && s.thing_index >= 0) refused.push_back({s.from_m, s.to_m});
  }
  double free = site.perimeter.length_m(ring);
  for (const auto& i : geometry::unite(std::move(refused))) free -= i.length();
  return free;
}

void addGrown(const Geos& geos, const rules::Thing& thing, double r,
              std::vector<Geos::Shape>& out) {
  for (const geometry::Polyline& shape : thing.shapes) {
    geometry::Polyline line = shape;
    if (thing.area) {
      out.push_back(geos.polygon(shape));
      line.push_back(shape.front());
    }
    if (line.size() == 1) out.push_back(geos.buffer(geos.point(line[0]), r, kQuarterSegments));
    for (std::size_t i = 1; i < line.size(); ++i) {
      out.push_back(geos.buffer(geos.line({line[i - 1], line[i]}), r, kQuarterSegments));
    }
  }
}

double geosFree(const Geos& geos, const Site& site, const Rule& rule, int ring, double reach) {
  std::vector<Geos::Shape> grown;
  for (const int i : site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))]) {
    addGrown(geos, site.things[static_cast<std::size_t>(i)], reach, grown);
  }
  geometry::Polygon corners;
  for (const auto& edge : site.perimeter.edges(ring)) corners.push_back(edge.from);
  const auto wall = geos.outline(corners);
  return geos.length(grown.empty() ? wall : geos.difference(wall, geos.unite(grown)));
}

struct Tally {
  int compared = 0;
  double widest_m = 0.0;  ///< largest difference of two lengths
};

void compare(const Geos& geos, const Site& site, Tally& tally) {
  for (const Rule& rule : site.sheet.rules) {
    if (!compared(rule, site)) continue;
    const double reach = rule.needed_m->value + *rules::halfWidth_m(rule, site);
    for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
      const double exact = exactFree(site, rule, ring, reach);
      const double most = exactFree(site, rule, ring, shrunk(reach));
      const double geosSays = geosFree(geos, site, rule, ring, reach);
      ASSERT_GE(geosSays, exact - kLength_m) << rule.id << " on ring " << ring;
      ASSERT_LE(geosSays, most + kLength_m) << rule.id << " on ring " << ring;
      tally.widest_m = std::max(tally.widest_m, std::abs(geosSays - exact));
      ++tally.compared;
    }
  }
}

void print(const Tally& tally) {
  std::printf("GEOS %s: %d lengths compared, widest difference %.3g m\n", Geos::version().c_str(),
              tally.compared, tally.widest_m);
}

TEST(GeosTest, FreeWallOfRandomPlans) {
  const Geos geos;
  Tally tally;
  support::forEachSeed(1000, [&](std::uint64_t seed) {
    support::Random random(seed);
    const plan::Job job = support::randomJob(random);
    compare(geos, siteOf(job, support::randomSheet(random)), tally);
    if (testing::Test::HasFailure()) {
      ADD_FAILURE() << "job: " << support::writeForReproduction(job, seed);
    }
  });
  print(tally);
  EXPECT_GT(tally.compared, 0);
}

std::vector<std::filesystem::path> samples() {
  std::vector<std::filesystem::path> found;
  for (const auto& entry : std::filesystem::directory_iterator(SUMPWRIGHT_SAMPLES_DIR)) {
    if (entry.path().string().ends_with(".sump.json")) found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

TEST(GeosTest, FreeWallOfTheSamples) {
  const Geos geos;
  Tally tally;
  ASSERT_FALSE(samples().empty());
  for (const auto& path : samples()) {
    SCOPED_TRACE(path.string());
    std::ifstream in(path);
    const auto read = plan::readJob(std::string(std::istreambuf_iterator<char>(in), {}));
    ASSERT_TRUE(read);
    for (const char* sheet : {"ie-practice", "uk-practice"}) {
      const int before = tally.compared;
      compare(geos, siteOf(read->job, support::builtInSheet(sheet)), tally);
      EXPECT_GT(tally.compared, before) << sheet;
    }
  }
  print(tally);
}

/// The bound is tight enough to see a millimetre.
TEST(GeosTest, SeesAMillimetre) {
  const Geos geos;
  const Site site = siteOf(support::PlanBuilder::rectangle().window("w", 0, 4.0, 1.2),
                           support::builtInSheet("ie-practice"));
  const Rule& rule = *site.sheet.find("openings");
  const double geosSays = geosFree(geos, site, rule, 0, 1.555);
  EXPECT_GT(exactFree(site, rule, 0, 1.554), geosSays + kLength_m);
  EXPECT_GT(geosSays, exactFree(site, rule, 0, 1.556) + kLength_m);
  EXPECT_LT(exactFree(site, rule, 0, shrunk(1.556)), geosSays - kLength_m);
}

}  // namespace

}  // namespace sumpwright::external
