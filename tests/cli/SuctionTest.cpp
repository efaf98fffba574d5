#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>
#include <nlohmann/json.hpp>

#include "cli/Run.h"

namespace sumpwright::cli {
namespace {

using Report = nlohmann::ordered_json;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::StartsWith;

std::string sampleJob(const std::string& name) {
  return std::string(SUMPWRIGHT_SOURCE_DIR) + "/samples/" + name + ".sump.json";
}

/// A job of the tests' data with no sump in its design.
std::string withoutSump(const std::string& name, const QTemporaryDir& folder) {
  QFile from(QString::fromStdString(data(name)));
  EXPECT_TRUE(from.open(QIODevice::ReadOnly));
  Report job = Report::parse(from.readAll().toStdString());
  job["design"]["sumps"] = Report::array();
  job["design"].erase("waivers");
  const QString path = folder.filePath(QString::fromStdString(name + ".sump.json"));
  QFile to(path);
  EXPECT_TRUE(to.open(QIODevice::WriteOnly));
  to.write(QByteArray::fromStdString(job.dump()));
  return path.toStdString();
}

Report suctionOf(std::vector<std::string> args) {
  args.insert(args.begin(), {"suction", "--json"});
  const Ran run = ran(args);
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.err, IsEmpty());  // no progress where nobody looks
  return Report::parse(run.out);
}

TEST(SuctionText, PlacesByChanceWhereTheyAreAskedFor) {
  const Report report = suctionOf({"--places", sampleJob("bungalow")});
  ASSERT_FALSE(report["places"].empty());
  double last = 1.0;
  for (const Report& place : report["places"]) {
    const double whole = place["whole_floor"].get<double>();
    // Read between guesses at neighbouring places: the order of like ones may turn by the mean.
    EXPECT_LE(whole, last + 0.01);
    last = whole;
    EXPECT_GE(place["floor"].get<double>(), 0.0);
  }
  EXPECT_TRUE(suctionOf({sampleJob("bungalow")})["places"].is_null());
  const Ran run = ran({"suction", "--places", sampleJob("bungalow")});
  EXPECT_THAT(run.out, HasSubstr("\nBest places by chance of reaching the whole floor\n"));
}

TEST(SuctionText, SaysWhatAContractorNeedsAndThatItIsAPrediction) {
  const Ran run = ran({"suction", sampleJob("bungalow")});
  EXPECT_EQ(run.code, kDone);
  EXPECT_THAT(run.err, IsEmpty());
  EXPECT_THAT(run.out, StartsWith("Sump sump-1 at 0:30.90: clear\nFan: Demo fan, medium"));
  for (const char* said :
       {"\nPrediction: ", "likely", "On the middle guess", "in eight of ten guesses",
        "A second sump", "Rule of thumb", "\nAssumed\n",
        "like hardcore with fines: 1 × 10⁻¹⁰ to 1 × 10⁻⁸ m²", "no product",
        "No radon concentration is predicted: no published formula", "the re-test decides",
        "test for spillage", "locate the services"}) {
    EXPECT_THAT(run.out, HasSubstr(said));
  }
  EXPECT_THAT(run.out, Not(HasSubstr("{")));
}

TEST(SuctionFans, EachWithItsDutyItsShareAndItsCost) {
  const Report report = suctionOf({sampleJob("bungalow")});
  const Report& fans = report["fans"];
  ASSERT_EQ(fans.size(), 3U);
  int in_use = 0;
  for (const Report& fan : fans) {
    EXPECT_TRUE(fan["invented"].get<bool>());
    EXPECT_EQ(fan["table"], "demo-fans");
    EXPECT_EQ(fan["suits"] == "no", fan["floor"].get<double>() < 0.95) << fan["id"];
    ASSERT_EQ(fan["lines"].size(), 1U);
    EXPECT_GT(fan["energy_kwh_a"].get<double>(), 0.0);
    if (!fan["in_use"].get<bool>()) continue;
    ++in_use;
    EXPECT_EQ(fan["id"], report["fan"]["id"]);
    const auto worst = report["worst"].get<std::size_t>();
    EXPECT_EQ(fan["floor"], report["middle"][worst]["reach"]["floor"]);
    EXPECT_EQ(fan["power_w"], report["power_w"]);
  }
  EXPECT_EQ(in_use, 1);
  // Taken, another does what was said of it.
  for (const Report& fan : fans) {
    const Report taken = suctionOf({sampleJob("bungalow"), "--fan", fan["id"].get<std::string>()});
    const auto worst = taken["worst"].get<std::size_t>();
    EXPECT_EQ(fan["floor"], taken["middle"][worst]["reach"]["floor"]) << fan["id"];
  }
  const Ran run = ran({"suction", sampleJob("bungalow")});
  EXPECT_THAT(run.out, HasSubstr("\nWhich fan suits, on the middle guess\n"));
  EXPECT_THAT(run.out, HasSubstr("Demo fan, low suction (invented): "));
  EXPECT_THAT(run.out, HasSubstr(", in use: "));
  EXPECT_THAT(run.out, HasSubstr("kWh a year"));
}

TEST(SuctionFans, WithTwoFansEachLineSaysOfWhichSump) {
  QFile from(QString::fromStdString(sampleJob("bungalow")));
  ASSERT_TRUE(from.open(QIODevice::ReadOnly));
  Report job = Report::parse(from.readAll().toStdString());
  Report second = job["design"]["sumps"][0];
  second["id"] = "sump-2";
  second["chainage_m"] = 8.0;
  job["design"]["sumps"].push_back(second);
  job["design"]["shared_fan"] = false;
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("two.sump.json"));
  QFile to(path);
  ASSERT_TRUE(to.open(QIODevice::WriteOnly));
  to.write(QByteArray::fromStdString(job.dump()));
  to.close();
  const Ran run = ran({"suction", path.toStdString()});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.out, HasSubstr("Fan of sump sump-1: ≈ "));
  EXPECT_THAT(run.out, HasSubstr("Fan of sump sump-2: ≈ "));
  const Report report = suctionOf({path.toStdString()});
  EXPECT_EQ(report["middle"][0]["legs"][1]["sump"], "sump-2");
}

/// Ids put together at run time have their sentence too.
TEST(SuctionText, SaysNoIdInBrackets) {
  for (const char* fill : {"clean_stone", "graded", "none", "unknown"}) {
    const Ran run = ran({"suction", sampleJob("mid-terrace"), "--fill", fill});
    EXPECT_EQ(run.code, kDone) << run.err;
    EXPECT_THAT(run.out, HasSubstr("Under the slab lies "));
    EXPECT_THAT(run.out, Not(HasSubstr("[suction.")));
  }
}

TEST(SuctionJson, KeysAndTheirOrder) {
  const Report report = suctionOf({sampleJob("bungalow")});
  std::vector<std::string> keys;
  for (const auto& [key, value] : report.items()) keys.push_back(key);
  EXPECT_THAT(keys, ElementsAre("format", "prediction", "state", "verdict", "fill", "target_pa",
                                "limit_pa", "fan", "sumps", "middle", "worst", "chance", "power_w",
                                "energy_kwh_a", "running", "second", "rule_of_thumb", "remarks",
                                "assumptions", "measured", "expected", "fitted", "leak",
                                "shared_fan", "lines", "cautions", "places", "fans"));
  EXPECT_EQ(report["format"], "sumpwright.suction/1");
  EXPECT_EQ(report["prediction"], true);
  EXPECT_EQ(report["state"], "answered");
  EXPECT_EQ(report["fill"], "graded");
  EXPECT_EQ(report["target_pa"], 5.0);
  EXPECT_EQ(report["limit_pa"], 1.0);
  EXPECT_EQ(report["fan"]["invented"], true);
  EXPECT_EQ(report["chance"]["draws"], 64);
  EXPECT_LT(report["middle"][0]["field"]["balance"].get<double>(), 1e-9);
  for (const char* share : {"whole_floor", "mean_floor", "likely_floor"}) {
    EXPECT_GE(report["chance"][share].get<double>(), 0.0);
    EXPECT_LE(report["chance"][share].get<double>(), 1.0);
  }
  EXPECT_EQ(report["rule_of_thumb"]["applies"], false);
  EXPECT_TRUE(report["rule_of_thumb"]["held"].is_null());
}

/// Readings are measured; a ground fitted to them is not, nor is what was predicted for them.
TEST(SuctionJson, MeasuredPredictedAndFittedStandApart) {
  const Report report = suctionOf({sampleJob("semi-detached")});
  const Report& test = report["measured"][0];
  EXPECT_EQ(test["readings"].size(), report["fitted"]["holes"].size());
  EXPECT_FALSE(test.contains("lambda_m"));
  EXPECT_GT(report["fitted"]["lambda_m"]["value"].get<double>(), 0.0);
  ASSERT_EQ(report["expected"].size(), 1U);
  EXPECT_EQ(report["expected"][0]["flow_m3_s"], test["flow_m3_s"]);
  EXPECT_EQ(report["expected"][0]["holes"].size(), test["readings"].size());
  const std::string text = ran({"suction", sampleJob("semi-detached")}).out;
  const auto measured = text.find("\nWhat was measured\n");
  const auto expected = text.find("\nWhat was predicted for that, before it was measured\n");
  const auto fitted = text.find("\nThe ground fitted to it\n");
  ASSERT_NE(measured, std::string::npos);
  ASSERT_NE(expected, std::string::npos);
  ASSERT_NE(fitted, std::string::npos);
  EXPECT_LT(measured, expected);
  EXPECT_LT(expected, fitted);
  EXPECT_GT(text.find("Fitted: "), fitted);
}

TEST(SuctionJson, BothAnswersOfAPartyWall) {
  const Report report = suctionOf({sampleJob("mid-terrace"), "--fill", "graded"});
  std::vector<bool> open;
  for (const Report& one : report["middle"]) open.push_back(one["party_open"]);
  EXPECT_THAT(open, ::testing::Contains(true));
  EXPECT_THAT(open, ::testing::Contains(false));
  EXPECT_LT(report["worst"].get<std::size_t>(), report["middle"].size());
}

TEST(SuctionOptions, NoHardcoreNoFigure) {
  const Report report = suctionOf({sampleJob("bungalow"), "--fill", "none"});
  EXPECT_EQ(report["state"], "not-layered");
  EXPECT_EQ(report["verdict"]["id"], "suction.verdict.not-layered");
  EXPECT_THAT(report["middle"], IsEmpty());
  EXPECT_TRUE(report["chance"].is_null());
  EXPECT_THAT(ran({"suction", sampleJob("bungalow"), "--fill", "none"}).out,
              HasSubstr("strong temporary fan"));
}

TEST(SuctionOptions, ChangeWhatIsAskedFor) {
  const Report usual = suctionOf({sampleJob("bungalow")});
  const Report eased = suctionOf({sampleJob("bungalow"), "--target", "2", "--limit", "0.5"});
  EXPECT_EQ(eased["target_pa"], 2.0);
  EXPECT_GT(eased["chance"]["mean_floor"].get<double>(),
            usual["chance"]["mean_floor"].get<double>());
  const Report stone = suctionOf({sampleJob("bungalow"), "--fill", "clean_stone"});
  EXPECT_GT(stone["chance"]["mean_floor"].get<double>(),
            usual["chance"]["mean_floor"].get<double>());
  const Report elsewhere = suctionOf({sampleJob("bungalow"), "--at", "0:14.14"});
  EXPECT_TRUE(elsewhere["sumps"][0]["id"].is_null());
  EXPECT_EQ(elsewhere["sumps"][0]["chainage_m"], 14.14);
  EXPECT_EQ(suctionOf({sampleJob("bungalow"), "--draws", "80"})["chance"]["draws"], 80);
}

TEST(SuctionOptions, FansByIdAndFile) {
  EXPECT_EQ(suctionOf({sampleJob("bungalow"), "--fan", "demo-high"})["fan"]["id"], "demo-high");
  const std::string file = std::string(SUMPWRIGHT_SOURCE_DIR) + "/resources/fans/demo-fans.json";
  EXPECT_EQ(suctionOf({sampleJob("bungalow"), "--fan", file + "#demo-low"})["fan"]["id"],
            "demo-low");
  for (const auto& [fan, id] : std::vector<std::pair<std::string, std::string>>{
           {"no-such-fan", "cli.no-fan: There is no fan “no-such-fan”; there are: demo-low"},
           {file, "cli.which-fan: "},
           {file + "#other", "cli.no-fan: "},
           {"./absent.json", "file.not-found"}}) {
    const Ran run = ran({"suction", sampleJob("bungalow"), "--fan", fan});
    EXPECT_EQ(run.code, kUnusable) << fan;
    EXPECT_THAT(run.out, IsEmpty());
    EXPECT_THAT(run.err, HasSubstr(id));
  }
}

TEST(SuctionGrid, IsPlainData) {
  const QTemporaryDir folder;
  const std::string path = folder.filePath("grid.csv").toStdString();
  const Ran run = ran({"suction", sampleJob("bungalow"), "--grid", path});
  EXPECT_EQ(run.code, kDone) << run.err;
  QFile file(QString::fromStdString(path));
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  EXPECT_EQ(file.readLine().toStdString(), "x_m,y_m,suction_pa,chance\n");
  int rows = 0;
  while (!file.atEnd()) {
    const QList<QByteArray> row = file.readLine().trimmed().split(',');
    ASSERT_EQ(row.size(), 4);
    for (const QByteArray& cell : row) {
      bool is_number = false;
      cell.toDouble(&is_number);
      ASSERT_TRUE(is_number) << cell.toStdString();
    }
    ASSERT_GE(row[3].toDouble(), 0.0);
    ASSERT_LE(row[3].toDouble(), 1.0);
    ++rows;
  }
  EXPECT_GT(rows, 1000);
  const Ran nowhere = ran({"suction", sampleJob("bungalow"), "--grid", "/absent/grid.csv"});
  EXPECT_EQ(nowhere.code, kUnusable);
  EXPECT_THAT(nowhere.out, IsEmpty());
  EXPECT_THAT(nowhere.err, HasSubstr("file.not-writable"));
}

TEST(SuctionPlace, TheBestWhereNoneIsDrawnElseOneMustBeGiven) {
  const QTemporaryDir folder;
  const Ran best = ran({"suction", withoutSump("sound", folder)});
  EXPECT_EQ(best.code, kDone) << best.err;
  EXPECT_THAT(best.out, HasSubstr("the best place by the rules is taken"));
  const std::string unproven = withoutSump("nothing-looked-for", folder);
  const Ran none = ran({"suction", unproven});
  EXPECT_EQ(none.code, kUnusable);
  EXPECT_THAT(none.out, IsEmpty());
  EXPECT_THAT(none.err, HasSubstr("suction.no-place: "));
  EXPECT_EQ(ran({"suction", unproven, "--at", "0:14"}).code, kDone);
  const Ran drawn = ran({"suction", sampleJob("nothing-clear")});
  EXPECT_EQ(drawn.code, kDone);  // a place that is refused is no error
  EXPECT_THAT(drawn.out, HasSubstr(": refused\n"));
  const Ran off = ran({"suction", data("sound"), "--at", "7:1"});
  EXPECT_EQ(off.code, kUnusable);
  EXPECT_THAT(off.err, HasSubstr("cli.no-ring"));
}

TEST(SuctionRefuses, UnsoundUnreadableAndWrongUse) {
  const Ran unsound = ran({"suction", data("opening-off-its-wall")});
  EXPECT_EQ(unsound.code, kUnsound);
  EXPECT_THAT(unsound.out, IsEmpty());
  EXPECT_EQ(ran({"suction", data("not-json")}).code, kUnusable);
  const Ran upside_down = ran({"suction", sampleJob("bungalow"), "--target", "1", "--limit", "5"});
  EXPECT_EQ(upside_down.code, kUnusable);
  EXPECT_THAT(upside_down.err, HasSubstr("suction.target: "));
  for (const auto& wrong : std::vector<std::vector<std::string>>{
           {"--draws", "8"}, {"--target", "0"}, {"--fill", "gravel"}, {"--at", "14"}}) {
    const Ran run = ran({"suction", sampleJob("bungalow"), wrong[0], wrong[1]});
    EXPECT_EQ(run.code, kUnusable) << wrong[0];
    EXPECT_THAT(run.out, IsEmpty());
    EXPECT_THAT(run.err, HasSubstr("cli.usage"));
  }
}

}  // namespace
}  // namespace sumpwright::cli
