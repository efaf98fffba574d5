// Published and derived figures of wall, floor and drill against the drill section.

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>

#include "build/Figures.h"
#include "core/build/Sites.h"

namespace sumpwright::build {

namespace {

using nlohmann::json;

const json& sectionChecks() {
  static const json all = [] {
    std::ifstream file(SUMPWRIGHT_TESTS_DIR "/external/trade_checks.json");
    return json::parse(file);
  }();
  return all;
}

double metresOf(const json& row, const char* key) { return row[key].get<double>() / 1000.0; }

TEST(SectionChecks, PathAndDropOfAnAngledCore) {
  for (const json& row : sectionChecks()["core_paths"]) {
    SCOPED_TRACE(row.dump());
    BuildUp up = knownBuildUp();
    up.wall_m = metresOf(row, "wall_mm");
    SectionWish wish;
    wish.bore = {-0.4, fallOfDegrees(row["angle_deg"])};
    const DrillSection section = drillSection(up, wish);
    EXPECT_NEAR(1000.0 * section.path_m, row["path_mm"], row["tolerance_mm"]);
    EXPECT_NEAR(1000.0 * section.drop_m, row["drop_mm"], row["tolerance_mm"]);
  }
}

/// The worked build-up of the checks, its footing top at a height over the floor.
BuildUp workedBuildUp(double footing_top_m) {
  const json& row = sectionChecks()["floor_build_up"];
  BuildUp up = knownBuildUp(footing_top_m, footing_top_m);
  up.ground_m = -metresOf(row, "floor_above_ground_mm");
  up.screed_m = metresOf(row, "screed_mm");
  up.insulation_m = metresOf(row, "insulation_mm");
  up.slab_m = metresOf(row, "slab_mm");
  up.core_m = metresOf(row, "core_mm");
  up.hardcore_m = 0.0;  // the checks ask for slab and footing only
  return up;
}

TEST(SectionChecks, UndersideOfSlabAndCentreOfTheCore) {
  const json& row = sectionChecks()["floor_build_up"];
  const BuildUp up = workedBuildUp(-2.0);
  EXPECT_NEAR(1000.0 * (up.underside_m() - up.ground_m), row["underside_to_ground_mm"],
              row["tolerance_mm"]);
  EXPECT_DOUBLE_EQ(1000.0 * kCover_m, row["cover_mm"]);
  const FeasibleSet set(limitsOf(up, Start::below_ground, -2.0, 0.0));
  EXPECT_NEAR(1000.0 * (set.entries(0.0).high_m - up.ground_m), row["core_centre_to_ground_mm"],
              row["tolerance_mm"]);
}

TEST(SectionChecks, LevelCoreOverUsualFootings) {
  for (const json& row : sectionChecks()["footings_level_core"]) {
    SCOPED_TRACE(row.dump());
    const double top = -0.15 - metresOf(row, "footing_underside_below_ground_mm") +
                       metresOf(row, "footing_thick_mm");
    const BuildUp up = workedBuildUp(top);
    const auto ceiling = footingCeiling(limitsOf(up, Start::below_ground, top, 0.0), 0.0);
    ASSERT_TRUE(ceiling);
    EXPECT_NEAR(1000.0 * (ceiling->footing_top_m - top), row["spare_mm"], row["tolerance_mm"]);
    SectionWish level;
    level.least_fall = 0.0;
    level.bore.fall = 0.0;
    const DrillSection section = drillSection(up, level);
    if (row["spare_mm"].get<double>() > 0.0) {
      EXPECT_EQ(section.fit, Fit::fits);
    } else {
      ASSERT_EQ(section.fit, Fit::never);
      EXPECT_NEAR(1000.0 * section.clash->room_m, row["spare_mm"], row["tolerance_mm"]);
    }
  }
}

TEST(SectionChecks, RadiusOfThePit) {
  for (const json& row : sectionChecks()["pit_radii"]) {
    SCOPED_TRACE(row.dump());
    const Void made = voidOf(knownBuildUp(), row["litres"].get<double>(), 0.0);
    EXPECT_NEAR(1000.0 * made.radius_m, row["radius_mm"], row["tolerance_mm"]);
  }
}

TEST(SectionChecks, FiguresOfTheSectionAreThePublishedOnes) {
  const json& row = sectionChecks()["section_figures"];
  const BuildUp up = buildUpAt(siteOf(support::PlanBuilder::bare()), {0, 1.0});
  EXPECT_NEAR(up.dpc_m - up.ground_m, metresOf(row, "dpc_above_ground_mm"), 1e-12);
  EXPECT_NEAR(up.hardcore_m, metresOf(row, "hardcore_mm"), 1e-12);
  EXPECT_NEAR(100.0 * kLeastFall, row["least_fall_percent"], row["least_fall_tolerance"]);
  EXPECT_NEAR(degreesOfFall(kUsualFall), row["usual_fall_deg"], 1e-9);
  EXPECT_NEAR(degreesOfFall(kLeastFallAbove), row["least_fall_above_deg"], 1e-9);
  EXPECT_NEAR(degreesOfFall(kMostFall), row["most_fall_deg"], 1e-9);
}

}  // namespace

}  // namespace sumpwright::build
