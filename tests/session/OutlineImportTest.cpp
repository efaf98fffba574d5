// Outlines from drawings and maps on their way into the plan. (All drawings and places invented.)

#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>

#include "geometry/Shapes.h"
#include "plan/PlanCheck.h"
#include "session/OutlineImport.h"

namespace sumpwright::session {
namespace {

std::string rectangleDxf(double x, double y, double w, double h, const char* layer) {
  std::string out = std::string("0\nLWPOLYLINE\n8\n") + layer + "\n90\n4\n70\n1\n";
  const double corners[4][2] = {{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}};
  for (const auto& c : corners) {
    out += "10\n" + std::to_string(c[0]) + "\n20\n" + std::to_string(c[1]) + "\n";
  }
  return out;
}

class Import : public testing::Test {
 protected:
  std::string file(const char* name, const std::string& text) {
    const QString path = folder.filePath(QLatin1String(name));
    QFile f(path);
    EXPECT_TRUE(f.open(QIODevice::WriteOnly));
    f.write(text.data(), static_cast<qint64>(text.size()));
    return path.toStdString();
  }
  /// 12 m by 8 m in mm, its inner face, a courtyard, and a shed on another layer.
  std::string drawing() {
    return file("house.dxf",
                "0\nSECTION\n2\nENTITIES\n" + rectangleDxf(5000, 3000, 12000, 8000, "WALLS") +
                    rectangleDxf(5300, 3300, 11400, 7400, "WALLS") +
                    rectangleDxf(9000, 6000, 2000, 2000, "WALLS") +
                    rectangleDxf(30000, 3000, 15000, 9000, "PLOT") + "0\nENDSEC\n0\nEOF\n");
  }
  QTemporaryDir folder;
};

TEST_F(Import, AsksForTheUnitAndTakesTheChosenRings) {
  auto import = OutlineImport::read(drawing());
  ASSERT_TRUE(import.ok());
  OutlineImport i = *import;
  ASSERT_NE(i.drawing(), nullptr);
  EXPECT_EQ(i.map(), nullptr);
  EXPECT_TRUE(i.outlines().empty()) << "nothing before the unit is said";
  ASSERT_TRUE(i.choose(0.001, {"WALLS"}).empty());
  ASSERT_EQ(i.outlines().size(), 3U);
  EXPECT_NEAR(i.outlines()[0].area_m2, 96.0, 1e-6);
  const auto inner = i.courtyardsOf(0);
  ASSERT_EQ(inner.size(), 2U);
  EXPECT_FALSE(inner[0].likely) << "that is the inner face of the walls";
  EXPECT_TRUE(inner[1].likely);
  const auto job = i.takenInto(plan::Job{}, 0, {1});
  ASSERT_TRUE(job.ok());
  ASSERT_EQ(job->plan.rings.size(), 2U);
  EXPECT_NEAR(geometry::signedArea(job->plan.rings[0].corners), 96.0, 1e-6);
  EXPECT_NEAR(geometry::signedArea(job->plan.rings[1].corners), -4.0, 1e-6);
  EXPECT_EQ(job->plan.rings[0].corners[0], (geometry::Point{0, 0}));
  for (const base::Problem& p : plan::checkJob(*job)) {
    EXPECT_FALSE(p.gravity == base::Gravity::unsound && p.pointer.starts_with("/plan/rings"))
        << p.message.id;
  }
}

TEST_F(Import, AllLayersHoldThePlotToo) {
  auto import = OutlineImport::read(drawing());
  ASSERT_TRUE(import.ok());
  OutlineImport i = *import;
  ASSERT_TRUE(i.choose(0.001, {}).empty());
  ASSERT_EQ(i.outlines().size(), 4U);
  EXPECT_NEAR(i.outlines()[0].area_m2, 135.0, 1e-6);
  EXPECT_TRUE(i.courtyardsOf(0).empty()) << "the house is not in it";
  // Said in feet, a millimetre drawing is larger than any house.
  ASSERT_TRUE(i.choose(0.3048, {"WALLS"}).empty());
  EXPECT_EQ(i.outlines().size(), 1U) << "the courtyard, 600 m wide";
  EXPECT_FALSE(i.leftOut().empty());
  EXPECT_FALSE(i.choose(0.0, {}).empty());
}

TEST_F(Import, ReplacesWhatIsThere) {
  auto import = OutlineImport::read(drawing());
  ASSERT_TRUE(import.ok());
  OutlineImport i = *import;
  ASSERT_TRUE(i.choose(0.001, {"WALLS"}).empty());
  const auto first = i.takenInto(plan::Job{}, 0, {1});
  ASSERT_TRUE(first.ok());
  const auto again = i.takenInto(*first, 2, {});
  ASSERT_TRUE(again.ok());
  ASSERT_EQ(again->plan.rings.size(), 1U);
  EXPECT_NEAR(geometry::signedArea(again->plan.rings[0].corners), 4.0, 1e-6);
  EXPECT_EQ(again->plan.rings[0].corners[0], (geometry::Point{0, 0}));
}

TEST_F(Import, AMapTurnsNorthUp) {
  // About 0.0001 degrees of longitude by 0.0001 of latitude, with a hole (an invented place).
  const std::string map = R"({"type": "Feature", "properties": {"name": "House"}, "geometry":
    {"type": "Polygon", "coordinates": [
      [[10.0, 50.0], [10.0002, 50.0], [10.0002, 50.0001], [10.0, 50.0001], [10.0, 50.0]],
      [[10.00008, 50.00003], [10.00008, 50.00006], [10.00012, 50.00006], [10.00012, 50.00003],
       [10.00008, 50.00003]]]}})";
  auto import = OutlineImport::read(file("map.geojson", map));
  ASSERT_TRUE(import.ok());
  ASSERT_NE(import->map(), nullptr);
  ASSERT_EQ(import->courtyardsOf(0).size(), 1U);
  plan::Job turned;
  turned.plan.north_deg = 30.0;
  const auto job = import->takenInto(turned, 0, {0});
  ASSERT_TRUE(job.ok());
  EXPECT_EQ(job->plan.north_deg, 0.0);
  EXPECT_EQ(job->plan.rings.size(), 2U);
  // A degree of latitude is 111.23 km at 50 degrees, one of longitude 71.70 km (derived from WGS
  // 84's axes).
  EXPECT_NEAR(geometry::signedArea(job->plan.rings[0].corners), 14.34 * 11.123, 0.1);
}

TEST_F(Import, WhatCannotBeReadIsSaid) {
  const auto none = OutlineImport::read(folder.filePath(QStringLiteral("none.dxf")).toStdString());
  ASSERT_FALSE(none.ok());
  EXPECT_EQ(none.problems()[0].message.id, "file.not-found");
  const auto words = OutlineImport::read(file("words.dxf", "no drawing\nat all\n"));
  ASSERT_FALSE(words.ok());
  EXPECT_EQ(words.problems()[0].message.id, "import.dxf.not-dxf");
}

TEST_F(Import, WhatIsDroppedIsKnownByItsBytes) {
  EXPECT_EQ(natureOf(drawing()), FileNature::outline);
  EXPECT_EQ(natureOf(file("a.sump.json", "{}")), FileNature::job);
  EXPECT_EQ(natureOf(file("b.json", R"({"type": "FeatureCollection"})")), FileNature::outline);
  EXPECT_EQ(natureOf(file("c.json", R"({"job": 1})")), FileNature::job);
  EXPECT_EQ(natureOf(file("scan", "\x89PNG\r\n")), FileNature::picture);
  EXPECT_EQ(natureOf(file("d.pdf", "")), FileNature::picture) << "its name says so";
  EXPECT_EQ(natureOf("/no/such/file"), FileNature::job);
}

}  // namespace
}  // namespace sumpwright::session
