// Usage, help and exit codes.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QByteArray>
#include <QtGlobal>

#include "cli/Display.h"
#include "cli/Run.h"

namespace sumpwright::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::StartsWith;

TEST(CommandLine, WithoutASubcommandTheWindowIsWanted) {
  EXPECT_EQ(ran({}).code, -1);
  const Ran window = ran({"house.sump.json"});
  EXPECT_EQ(window.code, -1);
  EXPECT_EQ(window.job, "house.sump.json");
  EXPECT_THAT(window.out + window.err, IsEmpty());
}

TEST(CommandLine, HelpTellsExitCodes) {
  const Ran help = ran({"--help"});
  EXPECT_EQ(help.code, kDone);
  EXPECT_THAT(help.err, IsEmpty());
  EXPECT_THAT(help.out, HasSubstr("Exit codes: 0 done and sound"));
  EXPECT_THAT(help.out, HasSubstr("check"));
  EXPECT_THAT(help.out, HasSubstr("site"));
  EXPECT_THAT(help.out, HasSubstr("draw"));
}

TEST(CommandLine, EachSubcommandHasHelp) {
  for (const char* command : {"check", "site", "suction", "draw"}) {
    const Ran help = ran({command, "--help"});
    EXPECT_EQ(help.code, kDone) << command;
    EXPECT_THAT(help.out, HasSubstr("JOB")) << command;
    EXPECT_THAT(help.err, IsEmpty()) << command;
  }
}

TEST(CommandLine, Version) {
  const Ran version = ran({"--version"});
  EXPECT_EQ(version.code, kDone);
  EXPECT_THAT(version.out, StartsWith("sumpwright "));
}

TEST(CommandLine, WithoutADisplayTheWindowIsDeclinedInWords) {
  const std::array<const char*, 3> names{"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"};
  std::vector<QByteArray> before;
  for (const char* name : names) before.push_back(qgetenv(name));
  for (const char* name : names) qunsetenv(name);
  std::ostringstream err;
  EXPECT_FALSE(canShowWindow(err));
  EXPECT_THAT(err.str(), StartsWith("sumpwright: cli.no-display: "));
  qputenv("WAYLAND_DISPLAY", "wayland-0");
  EXPECT_TRUE(canShowWindow(err));
  for (std::size_t i = 0; i < names.size(); ++i) qputenv(names.at(i), before.at(i));
}

class WrongUsage : public ::testing::TestWithParam<std::vector<std::string>> {};

TEST_P(WrongUsage, IsExitCodeTwoWithAnId) {
  const Ran wrong = ran(GetParam());
  EXPECT_EQ(wrong.code, kUnusable);
  EXPECT_THAT(wrong.out, IsEmpty());
  EXPECT_THAT(wrong.err, StartsWith("sumpwright: cli.usage: "));
}

INSTANTIATE_TEST_SUITE_P(
    CommandLine, WrongUsage,
    ::testing::Values(
        std::vector<std::string>{"check"}, std::vector<std::string>{"site"},
        std::vector<std::string>{"site", data("sound"), "--outlet", "sideways"},
        std::vector<std::string>{"site", data("sound"), "--core", "12"},
        std::vector<std::string>{"site", data("sound"), "--core", "wide"},
        std::vector<std::string>{"site", data("sound"), "--at", "14"},
        std::vector<std::string>{"site", data("sound"), "--at", "0:14,5"},
        std::vector<std::string>{"site", data("sound"), "--at", "0:nan"},
        std::vector<std::string>{"site", data("sound"), "--core", "nan"},
        std::vector<std::string>{"section", data("sound"), "--entry", "nan"},
        std::vector<std::string>{"section", data("sound"), "--fall", "nan"},
        std::vector<std::string>{"section", data("sound"), "--pit", "nan"},
        std::vector<std::string>{"section", data("sound"), "--pit", "inf"},
        std::vector<std::string>{"suction", data("sound"), "--target", "nan"},
        std::vector<std::string>{"site", data("sound"), "--nonsense"},
        std::vector<std::string>{"draw", data("sound")},
        std::vector<std::string>{"draw", data("sound"), "-o", "plan.doc"},
        std::vector<std::string>{"draw", data("sound"), "-o", "p.pdf", "--size", "a5"},
        std::vector<std::string>{"draw", data("sound"), "-o", "p.pdf", "--date", "1.5.26"}));

}  // namespace
}  // namespace sumpwright::cli
