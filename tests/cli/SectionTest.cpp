#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>
#include <nlohmann/json.hpp>

#include "cli/Run.h"

namespace sumpwright::cli {
namespace {

using SectionReport = nlohmann::ordered_json;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

std::string sectionSample(const std::string& name) {
  return std::string(SUMPWRIGHT_SOURCE_DIR) + "/samples/" + name + ".sump.json";
}

SectionReport sectionReport(std::vector<std::string> args) {
  args.insert(args.begin(), {"section", "--json"});
  const Ran run = ran(args);
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.err, IsEmpty());
  return SectionReport::parse(run.out);
}

TEST(SectionCommand, SaysHoleMarginsAssumptionsAndCautions) {
  const Ran run = ran({"section", sectionSample("bungalow")});
  EXPECT_EQ(run.code, kDone);
  for (const char* said :
       {"Drill section of sump-1 at 0:30.90", "core 127 mm", "Margins", "under slab and insulation",
        "Assumed", "[common_practice:", "trial pit", "Services located"}) {
    EXPECT_THAT(run.out, HasSubstr(said));
  }
  EXPECT_THAT(run.out, Not(HasSubstr("{")));
}

TEST(SectionCommand, JsonHoldsWhatTheTextTells) {
  const SectionReport report = sectionReport({sectionSample("bungalow")});
  EXPECT_EQ(report["format"], "sumpwright.section/1");
  EXPECT_EQ(report["sump"], "sump-1");
  EXPECT_EQ(report["fit"], "fits_if_footing");
  EXPECT_LT(report["footing_top_needed_m"].get<double>(), -0.4);
  EXPECT_LT(report["clash"]["room_m"].get<double>(), 0.0);
  EXPECT_EQ(report["build_up"]["core_m"], 0.127);
  EXPECT_FALSE(report["assumptions"].empty());
  for (const auto& row : report["assumptions"]) EXPECT_NE(row["source"], "");
}

TEST(SectionCommand, AtAndHoleCanBeGiven) {
  const SectionReport report = sectionReport(
      {sectionSample("bungalow"), "--at", "0:5", "--entry", "-0.2", "--fall", "3", "--pit", "20"});
  EXPECT_TRUE(report["sump"].is_null());
  EXPECT_NEAR(report["hole"]["fall_deg"].get<double>(), 3.0, 1e-9);
  EXPECT_EQ(report["hole"]["entry_m"], -0.2);
  EXPECT_NEAR(report["hole"]["hollow_m3"].get<double>(), 0.02, 1e-12);
  EXPECT_EQ(report["fit"], "never");
  EXPECT_EQ(report["verdict"]["id"], "section.verdict.wish-fails");
}

TEST(SectionCommand, DrawsToAFile) {
  QTemporaryDir folder;
  const std::string file = folder.filePath("section.svg").toStdString();
  const Ran run = ran({"section", sectionSample("bungalow"), "-o", file});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_EQ(run.out, file + "\n");
  QFile svg(QString::fromStdString(file));
  ASSERT_TRUE(svg.open(QIODevice::ReadOnly));
  EXPECT_THAT(svg.readAll().toStdString(), HasSubstr("hardcore"));
}

TEST(SectionCommand, RefusesWhatIsNotThere) {
  EXPECT_THAT(ran({"section", sectionSample("bungalow"), "--at", "7:1"}).err,
              HasSubstr("cli.no-ring"));
  const Ran run = ran({"section", sectionSample("bungalow"), "--sump", "nobody"});
  EXPECT_EQ(run.code, kUnusable);
  EXPECT_THAT(run.err, HasSubstr("cli.no-sump"));
  EXPECT_EQ(ran({"section", sectionSample("bungalow"), "-o", "section.txt"}).code, kUnusable);
  EXPECT_EQ(ran({"section", sectionSample("bungalow"), "--fall", "90"}).code, kUnusable);
}

TEST(SectionCommand, WithoutSumpOrPlaceItSaysWhatToGive) {
  const Ran run = ran({"section", sectionSample("hardly-surveyed")});
  EXPECT_EQ(run.code, kUnusable);
  EXPECT_THAT(run.err, HasSubstr("cli.no-place"));
  EXPECT_EQ(ran({"section", sectionSample("hardly-surveyed"), "--at", "0:1"}).code, kDone);
}

}  // namespace
}  // namespace sumpwright::cli
