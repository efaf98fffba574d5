#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "files/FanTables.h"
#include "resources/BuiltIn.h"

namespace sumpwright::files {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

/// A data folder of our own for each test.
class FanTables : public ::testing::Test {
 protected:
  FanTables() {
    m_before = qgetenv("XDG_DATA_HOME");
    qputenv("XDG_DATA_HOME", m_folder.path().toUtf8());
    QDir().mkpath(QString::fromStdString(userFanFolder()));
  }
  ~FanTables() override { qputenv("XDG_DATA_HOME", m_before); }

  static void putTable(const std::string& name, const std::string& text) {
    QFile out(QString::fromStdString(userFanFolder() + "/" + name));
    ASSERT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(text.data(), static_cast<qint64>(text.size()));
  }

 private:
  QTemporaryDir m_folder;
  QByteArray m_before;
};

/// An invented table with one fan.
std::string ownTable(const std::string& id, int shut_off) {
  return R"({"format": "sumpwright.fans", "version": 1, "id": ")" + id +
         R"(", "title": "Own, invented", "invented": true, "fans": [{"id": "one", "title": "One",)" +
         R"("source": {"mark": "own", "text": "invented"}, "points": [)" +
         R"({"flow_m3_h": 0, "pressure_pa": )" + std::to_string(shut_off) +
         R"(}, {"flow_m3_h": 90, "pressure_pa": 60}, {"flow_m3_h": 200, "pressure_pa": 0}]}]})";
}

std::vector<std::string> listedIds() {
  std::vector<std::string> out;
  for (const LoadedFans& loaded : availableFanTables().tables) out.push_back(loaded.table.id);
  return out;
}

std::vector<std::string> problemIds(const base::Problems& problems) {
  std::vector<std::string> out;
  for (const base::Problem& problem : problems) out.push_back(problem.message.id + problem.pointer);
  return out;
}

TEST_F(FanTables, BuiltInOnesAreThere) {
  EXPECT_THAT(listedIds(), ElementsAre("demo-fans"));
  EXPECT_TRUE(availableFanTables().problems.empty());
  const auto table = fanTableById("demo-fans");
  ASSERT_TRUE(table.ok());
  EXPECT_EQ(table->path, "");
  EXPECT_NE(table->table.find("demo-medium"), nullptr);
}

TEST_F(FanTables, TheFolderMayBeAbsent) {
  QDir(QString::fromStdString(userFanFolder())).removeRecursively();
  EXPECT_THAT(listedIds(), ElementsAre("demo-fans"));
}

TEST_F(FanTables, AFirmsOwnIsFoundUnderItsId) {
  putTable("anything.json", ownTable("firm", 300));
  EXPECT_THAT(listedIds(), ElementsAre("demo-fans", "firm"));
  const auto table = fanTableById("firm");
  ASSERT_TRUE(table.ok());
  EXPECT_THAT(table->path, HasSubstr("sumpwright/fans/anything.json"));
  EXPECT_EQ(table->table.fans[0].curve.at(base::Flow(), 1.2).pressure, base::Pressure::ofPa(300));
}

TEST_F(FanTables, TheUsersOfTheSameIdWins) {
  putTable("demo-fans.json", ownTable("demo-fans", 300));
  EXPECT_THAT(listedIds(), ElementsAre("demo-fans"));
  EXPECT_EQ(fanTableById("demo-fans")->table.title, "Own, invented");
  EXPECT_EQ(availableFanTables().tables[0].table.title, "Own, invented");
}

TEST_F(FanTables, ABrokenOneIsNotPassedOver) {
  putTable("demo-fans.json", ownTable("demo-fans", 50));  // rises from 50 to 60 Pa
  EXPECT_THAT(
      problemIds(fanTableById("demo-fans").problems()),
      ElementsAre("file.fans-unusable", "fans.points.not-falling/fans/0/points/1/pressure_pa"));
  EXPECT_EQ(availableFanTables().problems.size(), 2U);
}

TEST_F(FanTables, TwoOfOneIdAreAProblem) {
  putTable("a.json", ownTable("firm", 300));
  putTable("b.json", ownTable("firm", 400));
  EXPECT_THAT(problemIds(fanTableById("firm").problems()), ElementsAre("file.fans-twice"));
  EXPECT_THAT(listedIds(), ElementsAre("demo-fans"));
  EXPECT_THAT(problemIds(availableFanTables().problems), ElementsAre("file.fans-twice"));
}

TEST_F(FanTables, AnUnknownIdIsAProblem) {
  const auto none = fanTableById("atlantis");
  EXPECT_THAT(problemIds(none.problems()), ElementsAre("file.fans-unknown"));
  EXPECT_EQ(std::get<std::string>(none.problems()[0].message.find("known")->value), "demo-fans");
  EXPECT_THAT(problemIds(fanTableFromFile("/no/such.json").problems()),
              ElementsAre("file.not-found"));
}

TEST_F(FanTables, ADesignsFanIsItsOwnCurveOrThatOfATable) {
  plan::FanPick pick;
  auto picked = pickedFan(pick);
  ASSERT_TRUE(picked.ok());
  EXPECT_EQ(picked->fan.id, kFanUnchosen);
  EXPECT_TRUE(picked->invented);

  putTable("own.json", ownTable("own", 210));
  pick.id = "one";
  picked = pickedFan(pick);
  ASSERT_TRUE(picked.ok());
  EXPECT_NEAR(picked->fan.curve.at({}, airflow::kFanDensity_kg_m3).pressure.pa(), 210.0, 1e-9);
  pick.table = "demo-fans";
  EXPECT_EQ(problemIds(pickedFan(pick).problems()), std::vector<std::string>{"file.no-fan"});
  pick.table = "nowhere";
  EXPECT_EQ(problemIds(pickedFan(pick).problems()), std::vector<std::string>{"file.fans-unknown"});

  pick.points = {{0.0, 150.0, {}}, {0.02, 90.0, {}}, {0.04, 20.0, {}}};
  picked = pickedFan(pick);
  ASSERT_TRUE(picked.ok()) << "a curve of its own wins";
  EXPECT_FALSE(picked->invented);
  EXPECT_NEAR(picked->fan.curve.at({}, airflow::kFanDensity_kg_m3).pressure.pa(), 150.0, 1e-9);
  pick.points[1].pressure_pa = 160.0;
  EXPECT_THAT(problemIds(pickedFan(pick).problems()), ElementsAre(HasSubstr("/design/fan")));
}

}  // namespace
}  // namespace sumpwright::files
