#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QImageReader>
#include <QTemporaryDir>

#include "cli/Run.h"

namespace sumpwright::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::StartsWith;

QByteArray bytesOf(const std::string& file) {
  QFile in(QString::fromStdString(file));
  return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
}

class Draw : public ::testing::Test {
 protected:
  std::string file(const std::string& name) const {
    return m_folder.filePath(QString::fromStdString(name)).toStdString();
  }
  QTemporaryDir m_folder;
};

TEST_F(Draw, Pdf) {
  const Ran run = ran({"draw", data("sound"), "-o", file("plan.pdf"), "--date", "2026-05-04"});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.err, IsEmpty());
  EXPECT_THAT(run.out, HasSubstr("plan.pdf\n"));
  EXPECT_TRUE(bytesOf(file("plan.pdf")).startsWith("%PDF-"));
}

TEST_F(Draw, ElevationInEachTheme) {
  for (const char* theme : {"paper", "light", "dark"}) {
    const Ran run = ran({"draw", data("sound"), "--what", "elevation", "--theme", theme, "-o",
                         file(std::string(theme) + ".svg"), "--no-suction"});
    EXPECT_EQ(run.code, kDone) << run.err;
    EXPECT_TRUE(bytesOf(file(std::string(theme) + ".svg")).contains("<svg"));
  }
  EXPECT_NE(bytesOf(file("light.svg")), bytesOf(file("dark.svg")));
  EXPECT_EQ(ran({"draw", data("sound"), "--what", "roof", "-o", file("x.svg")}).code, kUnusable);
}

TEST_F(Draw, Svg) {
  EXPECT_EQ(ran({"draw", data("sound"), "-o", file("plan.svg")}).code, kDone);
  EXPECT_TRUE(bytesOf(file("plan.svg")).contains("<svg"));
}

TEST_F(Draw, PngOfBothSizes) {
  EXPECT_EQ(ran({"draw", data("sound"), "-o", file("a4.png")}).code, kDone);
  EXPECT_EQ(ran({"draw", data("sound"), "-o", file("a3.png"), "--size", "a3"}).code, kDone);
  const QSize a4 = QImageReader(QString::fromStdString(file("a4.png"))).size();
  const QSize a3 = QImageReader(QString::fromStdString(file("a3.png"))).size();
  EXPECT_GT(a4.width(), 1000);
  EXPECT_GT(a3.width(), a4.width());
}

TEST_F(Draw, TellsEveryFileItWrote) {
  const Ran run = ran({"draw", data("sound"), "-o", file("plan.png")});
  std::istringstream lines(run.out);
  int count = 0;
  for (std::string line; std::getline(lines, line); ++count) {
    EXPECT_TRUE(QFile::exists(QString::fromStdString(line))) << line;
  }
  EXPECT_GE(count, 1);
}

TEST_F(Draw, DeclinesAnUnsoundJobAndWritesNothing) {
  const Ran run = ran({"draw", data("outline-crosses-itself"), "-o", file("plan.pdf")});
  EXPECT_EQ(run.code, kUnsound);
  EXPECT_THAT(run.out, IsEmpty());
  EXPECT_FALSE(QFile::exists(QString::fromStdString(file("plan.pdf"))));
}

TEST_F(Draw, AFolderThatIsNotThere) {
  const Ran run = ran({"draw", data("sound"), "-o", file("absent/plan.pdf")});
  EXPECT_EQ(run.code, kUnusable);
  EXPECT_THAT(run.err, StartsWith("sumpwright: "));
  EXPECT_THAT(run.err, HasSubstr("paper.write"));
}

TEST_F(Draw, ASumpThatIsNotThere) {
  const Ran run = ran({"draw", data("sound"), "-o", file("plan.pdf"), "--sump", "nobody"});
  EXPECT_EQ(run.code, kUnusable);
  EXPECT_THAT(run.err, HasSubstr("cli.no-sump"));
}

}  // namespace
}  // namespace sumpwright::cli
