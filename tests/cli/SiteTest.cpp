#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "cli/Run.h"
#include "support/Golden.h"

namespace sumpwright::cli {
namespace {

using Json = nlohmann::ordered_json;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

std::vector<std::string> keysOf(const Json& object) {
  std::vector<std::string> keys;
  for (const auto& [key, value] : object.items()) keys.push_back(key);
  return keys;
}

/// The first keys of an object; more may follow.
std::vector<std::string> firstKeys(const Json& object, std::size_t count) {
  std::vector<std::string> keys = keysOf(object);
  keys.resize(std::min(keys.size(), count));
  return keys;
}

Json site(std::vector<std::string> args) {
  args.insert(args.begin(), {"site", "--json"});
  const Ran run = ran(args);
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.err, IsEmpty());
  return Json::parse(run.out);
}

TEST(SiteJson, KeysAndTheirOrder) {
  const Json report = site({data("sound"), "--at", "0:14"});
  EXPECT_THAT(firstKeys(report, 8), ElementsAre("format", "rule_sheet", "outlet_mode", "core_m",
                                                "rings", "best", "least_bad", "at"));
  EXPECT_EQ(report["format"], "sumpwright.site/1");
  EXPECT_EQ(report["rule_sheet"], "ie-practice");
  EXPECT_EQ(report["outlet_mode"], "low");
  EXPECT_EQ(report["core_m"], 0.127);
  EXPECT_THAT(keysOf(report["rings"][0]), ElementsAre("ring", "length_m", "stretches"));
  for (const Json& stretch : report["rings"][0]["stretches"]) {
    EXPECT_THAT(keysOf(stretch), ElementsAre("from_m", "to_m", "state", "findings"));
    for (const Json& finding : stretch["findings"]) {
      EXPECT_THAT(keysOf(finding),
                  ElementsAre("rule", "thing", "severity", "distance_m", "needed_m"));
    }
  }
  EXPECT_THAT(firstKeys(report["best"][0], 5),
              ElementsAre("ring", "chainage_m", "x_m", "y_m", "score"));
  EXPECT_THAT(firstKeys(report["at"], 11),
              ElementsAre("ring", "chainage_m", "x_m", "y_m", "state", "waived", "sentence",
                          "findings", "margins", "score", "parts"));
  for (const Json& margin : report["at"]["margins"]) {
    EXPECT_THAT(keysOf(margin),
                ElementsAre("rule", "thing", "distance_m", "needed_m", "margin_m", "close"));
  }
}

TEST(SiteJson, StretchesTileTheRing) {
  const Json ring = site({data("sound")})["rings"][0];
  EXPECT_DOUBLE_EQ(ring["length_m"], 36.0);  // 10 x 8 m
  double at = 0.0;
  for (const Json& stretch : ring["stretches"]) {
    EXPECT_EQ(stretch["from_m"].get<double>(), at);
    EXPECT_GT(stretch["to_m"].get<double>(), at);
    at = stretch["to_m"];
  }
  EXPECT_EQ(at, ring["length_m"].get<double>());
}

// The window stands on the rear wall from s = 22 to 23.2 (18 + 4.0, 1.2 wide); 1.5 m are needed
// from the edge of a pipe of 0.11 m: refused from 22 - 1.555 to 23.2 + 1.555.
TEST(SiteJson, RefusedByTheWindowWithinItsReach) {
  const Json ring = site({data("sound")})["rings"][0];
  double from = INFINITY;
  double to = -INFINITY;
  for (const Json& stretch : ring["stretches"]) {
    for (const Json& finding : stretch["findings"]) {
      if (finding["rule"] != "openings") continue;
      EXPECT_EQ(finding["thing"], "win");
      EXPECT_EQ(finding["severity"], "binding");
      EXPECT_EQ(finding["needed_m"], 1.5);
      EXPECT_EQ(stretch["state"], "refused");
      from = std::min(from, stretch["from_m"].get<double>());
      to = std::max(to, stretch["to_m"].get<double>());
    }
  }
  EXPECT_NEAR(from, 22.0 - 1.555, 1e-9);
  EXPECT_NEAR(to, 23.2 + 1.555, 1e-9);
}

TEST(SiteJson, NothingLookedForIsNeverClear) {
  const Json report = site({data("nothing-looked-for")});
  for (const Json& stretch : report["rings"][0]["stretches"]) {
    EXPECT_THAT(stretch["state"].get<std::string>(), ::testing::AnyOf("not-proven", "refused"));
  }
  EXPECT_THAT(report["best"], IsEmpty());
  EXPECT_FALSE(report["least_bad"].is_null());
  EXPECT_TRUE(report["at"].is_null());
}

TEST(SiteJson, ATimberFloorIsRefusedAllRound) {
  const Json report = site({data("floor-of-timber")});
  for (const Json& stretch : report["rings"][0]["stretches"])
    EXPECT_EQ(stretch["state"], "refused");
  EXPECT_TRUE(report["least_bad"]["ring"].is_null());
}

TEST(SiteJson, AWaiverNeverChangesAStretch) {
  const Json report = site({data("waived"), "--at", "0:22.9"});
  EXPECT_EQ(report["at"]["state"], "refused");
  for (const Json& stretch : report["rings"][0]["stretches"]) {
    if (stretch["from_m"] < 22.9 && stretch["to_m"] > 22.9) {
      EXPECT_EQ(stretch["state"], "refused");
    }
  }
}

TEST(SiteJson, TheEndOfTheRingIsItsStart) {
  const Json start = site({data("sound"), "--at", "0:0"});
  const Json end = site({data("sound"), "--at", "0:36"});
  EXPECT_EQ(start["at"], end["at"]);
  EXPECT_EQ(end["at"]["chainage_m"], 0.0);
}

// Floors refuse on either side of 0.03 m of the front and of the rear wall; the survey is taped,
// good to 0.02 m.
TEST(SiteJson, BestSaysWhetherItIsTooCloseToCall) {
  const Json wide = site({data("sound")});
  ASSERT_FALSE(wide["best"].empty());
  for (const Json& best : wide["best"]) EXPECT_EQ(best["close"], false);
  const Json narrow = site({data("narrow-stretch")});
  ASSERT_EQ(narrow["best"].size(), 2U);
  for (const Json& best : narrow["best"]) EXPECT_EQ(best["close"], true);
  EXPECT_THAT(ran({"site", data("narrow-stretch")}).out,
              HasSubstr(", too close to call: measure on site\n"));
}

TEST(SiteJson, NumbersAreWrittenInFull) {
  const Ran run = ran({"site", "--json", data("sound"), "--at", "0:14.123456789012345"});
  const double read = Json::parse(run.out)["at"]["chainage_m"];
  EXPECT_NEAR(read, 14.123456789012345, 1e-14);
  EXPECT_THAT(run.out, HasSubstr("14.1234567890123"));
}

TEST(SiteOptions, OverrideTheJob) {
  EXPECT_EQ(site({data("sound"), "--core", "112"})["core_m"], 0.112);
  EXPECT_EQ(site({data("sound"), "--rules", "us-practice"})["rule_sheet"], "us-practice");
  const Json riser = site({data("sound"), "--outlet", "riser"});
  EXPECT_EQ(riser["outlet_mode"], "riser");
  for (const Json& stretch : riser["rings"][0]["stretches"]) EXPECT_NE(stretch["state"], "clear");
}

TEST(SiteOptions, RulesFromAFile) {
  const std::string file = std::string(SUMPWRIGHT_SOURCE_DIR) + "/resources/rules/uk-practice.json";
  EXPECT_EQ(site({data("sound"), "--rules", file})["rule_sheet"], "uk-practice");
  const Ran absent = ran({"site", data("sound"), "--rules", "./absent.json"});
  EXPECT_EQ(absent.code, kUnusable);
  EXPECT_THAT(absent.err, HasSubstr("file.not-found"));
}

TEST(SiteOptions, AnUnknownSheetIsAnErrorNotTheDefault) {
  const Ran unknown = ran({"site", data("sound"), "--rules", "atlantis-practice"});
  EXPECT_EQ(unknown.code, kUnusable);
  EXPECT_THAT(unknown.out, IsEmpty());
  EXPECT_THAT(unknown.err, HasSubstr("file.sheet-unknown"));
  EXPECT_THAT(unknown.err, HasSubstr("ie-practice"));  // says what there is
}

TEST(SiteOptions, ARingThatIsNotThere) {
  const Ran run = ran({"site", data("sound"), "--at", "7:1"});
  EXPECT_EQ(run.code, kUnusable);
  EXPECT_THAT(run.out, IsEmpty());
  EXPECT_THAT(run.err, HasSubstr("cli.no-ring"));
}

TEST(SiteOptions, AChainageThatIsNotOnTheRing) {
  for (const char* place : {"0:36.001", "0:-0.001", "0:50", "0:1e300"}) {
    const Ran run = ran({"site", data("sound"), "--at", place});
    EXPECT_EQ(run.code, kUnusable) << place;
    EXPECT_THAT(run.out, IsEmpty());
    EXPECT_THAT(run.err, HasSubstr("cli.off-ring: There is no chainage "));
    EXPECT_THAT(run.err, HasSubstr("on ring 0: it is 36 m round"));
  }
}

TEST(SiteOptions, ACoreTooSmallForThePipe) {
  const Ran run = ran({"site", data("sound"), "--core", "100"});
  EXPECT_EQ(run.code, kUnsound);
  EXPECT_THAT(run.out, IsEmpty());
  EXPECT_THAT(run.err, HasSubstr("study.pipe-size: A pipe of 110 mm outside does not fit a core of "
                                 "100 mm."));
}

TEST(SiteRefuses, UnsoundAndUnreadableJobs) {
  const Ran unsound = ran({"site", data("opening-off-its-wall")});
  EXPECT_EQ(unsound.code, kUnsound);
  EXPECT_THAT(unsound.out, IsEmpty());
  EXPECT_THAT(portable(unsound.err),
              HasSubstr("sumpwright: opening-off-its-wall.sump.json: plan.opening.off-wall: "));
  EXPECT_THAT(unsound.err, HasSubstr("(/plan/openings/0"));
  const Ran unreadable = ran({"site", data("not-json")});
  EXPECT_EQ(unreadable.code, kUnusable);
  EXPECT_THAT(unreadable.out, IsEmpty());
}

class SiteText : public ::testing::TestWithParam<const char*> {};

TEST_P(SiteText, IsAsKept) {
  const std::string name = GetParam();
  const Ran run = ran({"site", data(name)});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.err, IsEmpty());
  EXPECT_THAT(run.out, ::testing::Not(HasSubstr("{")));
  support::expectGolden("cli/data/" + name + ".site.txt", run.out);
  const Ran at = ran({"site", data(name), "--at", "0:22.9"});
  EXPECT_EQ(at.code, kDone);
  support::expectGolden("cli/data/" + name + ".at.txt", at.out);
}

// A riser, and the US sheet with either outlet: what is unknown all round stands once on top, and
// the text says why no place is proposed and what to do.
TEST(SiteTextOfOutlets, IsAsKept) {
  const std::vector<std::pair<std::string, std::vector<std::string>>> runs{
      {"riser", {"--outlet", "riser"}},
      {"us-low", {"--rules", "us-practice"}},
      {"us-riser", {"--rules", "us-practice", "--outlet", "riser"}}};
  for (const auto& [name, options] : runs) {
    std::vector<std::string> args{"site", data("sound")};
    args.insert(args.end(), options.begin(), options.end());
    const Ran run = ran(args);
    EXPECT_EQ(run.code, kDone) << run.err;
    EXPECT_THAT(run.err, IsEmpty());
    support::expectGolden("cli/data/sound." + name + ".txt", run.out);
  }
}

INSTANTIATE_TEST_SUITE_P(Jobs, SiteText,
                         ::testing::Values("sound", "imperial", "nothing-looked-for",
                                           "floor-of-timber", "waived"),
                         [](const auto& each) {
                           std::string name = each.param;
                           std::replace(name.begin(), name.end(), '-', '_');
                           return name;
                         });

TEST(SiteJson, ReachWhereItIsAskedFor) {
  const Json bare = site({data("sound"), "--at", "0:14"});
  EXPECT_TRUE(bare["reach"].is_null());
  EXPECT_FALSE(bare["at"]["parts"][0]["judged"]);
  const Json report = site({"--reach", data("sound"), "--at", "0:14"});
  const Json& reach = report["reach"];
  EXPECT_THAT(keysOf(reach),
              ElementsAre("prediction", "state", "fill", "target_pa", "cases", "cell_m", "coarser",
                          "solved", "miss", "jumps", "middle_ms", "weak", "curve"));
  EXPECT_EQ(reach["state"], "computed");
  EXPECT_LE(reach["miss"].get<double>(), 0.02);
  ASSERT_GT(reach["curve"].size(), 100U);
  EXPECT_EQ(reach["curve"][0]["at_weak_pa"].size(), reach["weak"].size());
  const Json& part = report["at"]["parts"][0];
  EXPECT_EQ(part["kind"], "reach");
  EXPECT_TRUE(part["judged"]);
  EXPECT_THAT(part["reason"].get<std::string>(), HasSubstr("predicted: "));
  EXPECT_FALSE(report["best"][0]["floor"].is_null());
}

TEST(SiteText, ReachSaysTheTimeItTookAndThatItIsAPrediction) {
  const Ran run = ran({"site", "--reach", data("sound")});
  EXPECT_EQ(run.code, kDone);
  EXPECT_THAT(run.out, HasSubstr("Reach along the wall, a prediction on the middle guess"));
  EXPECT_THAT(run.out, HasSubstr(" places solved in "));
  EXPECT_THAT(run.out, HasSubstr(" ms, cells of 0.10 m"));
  const Ran bad = ran({"site", "--reach", "--fan", "no-such", data("sound")});
  EXPECT_EQ(bad.code, kUnusable);
  EXPECT_THAT(bad.err, HasSubstr("cli.no-fan"));
}

}  // namespace
}  // namespace sumpwright::cli
