// Outlines from DXF drawings. The drawings are invented.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "files/import/DxfOutline.h"
#include "files/import/LineJoin.h"
#include "geometry/Shapes.h"

namespace sumpwright::files {
namespace {

using geometry::Point;
using geometry::Polygon;

std::string group(int code, const std::string& value) {
  return std::to_string(code) + "\n" + value + "\n";
}
std::string group(int code, double value) { return group(code, std::to_string(value)); }

std::string sectionOf(const std::string& name, const std::string& entities) {
  return group(0, "SECTION") + group(2, name) + entities + group(0, "ENDSEC");
}
std::string drawingOf(const std::string& entities) {
  return sectionOf("ENTITIES", entities) + group(0, "EOF");
}
std::string lineEntity(const std::string& layer, Point a, Point b) {
  return group(0, "LINE") + group(8, layer) + group(10, a.x) + group(20, a.y) + group(30, 0.0) +
         group(11, b.x) + group(21, b.y) + group(31, 0.0);
}
std::string lightPolyline(const std::string& layer, const std::vector<DxfVertex>& vertices,
                          bool closed, const std::string& more = "") {
  std::string text = group(0, "LWPOLYLINE") + group(8, layer) +
                     group(90, std::to_string(vertices.size())) + group(70, closed ? "1" : "0") +
                     more;
  for (const DxfVertex& v : vertices) {
    text += group(10, v.at.x) + group(20, v.at.y);
    if (v.bulge != 0) text += group(42, v.bulge);
  }
  return text;
}
std::string oldPolyline(const std::string& layer, const Polygon& corners, int flags) {
  std::string text = group(0, "POLYLINE") + group(8, layer) + group(66, "1") + group(10, 0.0) +
                     group(20, 0.0) + group(70, std::to_string(flags));
  for (const Point p : corners) {
    text += group(0, "VERTEX") + group(8, layer) + group(10, p.x) + group(20, p.y) + group(30, 0.0);
  }
  return text + group(0, "SEQEND") + group(8, layer);
}

/// An L of 10 x 8 m less 4 x 3 m: 68 m2, in millimetres.
const Polygon kEll{{0, 0}, {10000, 0}, {10000, 5000}, {6000, 5000}, {6000, 8000}, {0, 8000}};

std::string linesRound(const std::string& layer, const Polygon& corners) {
  std::string text;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    text += lineEntity(layer, corners[i], corners[(i + 1) % corners.size()]);
  }
  return text;
}

std::vector<DxfVertex> noBulges(const Polygon& corners) {
  std::vector<DxfVertex> vertices;
  for (const Point p : corners) vertices.push_back({p, 0});
  return vertices;
}

DxfDrawing readDrawing(const std::string& text) {
  const auto drawing = readDxf(text);
  EXPECT_TRUE(drawing.ok()) << (drawing.ok() ? "" : drawing.problems()[0].message.id);
  return drawing.ok() ? *drawing : DxfDrawing{};
}

ImportedOutlines outlinesIn(const std::string& text, const DxfChoice& choice = {}) {
  const auto found = outlinesOf(readDrawing(text), choice);
  EXPECT_TRUE(found.ok());
  return found.ok() ? *found : ImportedOutlines{};
}

std::vector<std::string> idsOf(const std::vector<base::Message>& messages) {
  std::vector<std::string> result;
  for (const base::Message& m : messages) result.push_back(m.id);
  return result;
}

std::string dxfProblem(const std::string& text) {
  const auto drawing = readDxf(text);
  return drawing.ok() ? "" : drawing.problems()[0].message.id;
}

/// The L in metres, counter-clockwise, from whichever corner.
void expectEll(Polygon ring) {
  ASSERT_EQ(ring.size(), kEll.size());
  const auto at_origin =
      std::find_if(ring.begin(), ring.end(), [](Point p) { return distance(p, Point{}) < 1e-4; });
  ASSERT_NE(at_origin, ring.end());
  std::rotate(ring.begin(), at_origin, ring.end());
  EXPECT_NEAR(geometry::signedArea(ring), 68.0, 1e-3);
  for (std::size_t i = 0; i < ring.size(); ++i) {
    EXPECT_NEAR(ring[i].x, kEll[i].x / 1000, 1e-4) << i;
    EXPECT_NEAR(ring[i].y, kEll[i].y / 1000, 1e-4) << i;
  }
}

TEST(Dxf, AClosedPolylineIsAnOutline) {
  const auto found = outlinesIn(drawingOf(lightPolyline("WALLS", noBulges(kEll), true)));
  ASSERT_EQ(found.outlines.size(), 1U);
  EXPECT_EQ(found.outlines[0].name, "WALLS");
  EXPECT_NEAR(found.outlines[0].area_m2, 68.0, 1e-9);
  EXPECT_TRUE(found.left_out.empty());
  expectEll(found.outlines[0].outer);
}

TEST(Dxf, AnOldPolylineIsToo) {
  const auto found = outlinesIn(drawingOf(oldPolyline("0", kEll, 1)));
  ASSERT_EQ(found.outlines.size(), 1U);
  expectEll(found.outlines[0].outer);
}

TEST(Dxf, ClockwiseIsTurned) {
  const auto found = outlinesIn(
      drawingOf(lightPolyline("W", noBulges(Polygon(kEll.rbegin(), kEll.rend())), true)));
  ASSERT_EQ(found.outlines.size(), 1U);
  expectEll(found.outlines[0].outer);
}

TEST(Dxf, LinesAreJoinedWhateverTheirOrderAndDirection) {
  const auto at = [](std::size_t i) { return kEll[i % 6]; };
  // Corners missed by 3 mm, one line twice.
  std::string text;
  for (const std::size_t i : {3U, 0U, 5U, 1U, 4U, 2U, 1U}) {
    const Point a = at(i);
    const Point b{at(i + 1).x + 2, at(i + 1).y - 2};
    text += i % 2 == 0 ? lineEntity("WALLS", a, b) : lineEntity("WALLS", b, a);
  }
  const auto found = outlinesIn(drawingOf(text));
  ASSERT_EQ(found.outlines.size(), 1U);
  EXPECT_EQ(found.outlines[0].outer.size(), 6U);
  EXPECT_NEAR(found.outlines[0].area_m2, 68.0, 0.05);
  EXPECT_TRUE(found.left_out.empty());
}

TEST(Dxf, AGapWiderThanTheToleranceIsNotClosed) {
  std::string text = linesRound("W", kEll);
  text = text.substr(0, text.rfind("0\nLINE")) + lineEntity("W", {0, 8000}, {0, 10});
  EXPECT_THAT(outlinesIn(drawingOf(text)).outlines, testing::IsEmpty());
  EXPECT_THAT(idsOf(outlinesIn(drawingOf(text)).left_out),
              testing::ElementsAre("import.line.loose"));
  DxfChoice wider;
  wider.join_m = 0.02;
  EXPECT_EQ(outlinesIn(drawingOf(text), wider).outlines.size(), 1U);
}

TEST(Dxf, InnerWallsThatMeetTheOutlineAreLeftOut) {
  // The L with its south side in two lines, and a partition from there to the re-entrant corner;
  // another partition hangs in the room.
  std::string text = lineEntity("W", {0, 0}, {6000, 0}) + lineEntity("W", {6000, 0}, {10000, 0});
  for (std::size_t i = 1; i < 6; ++i) text += lineEntity("W", kEll[i], kEll[(i + 1) % 6]);
  text += lineEntity("W", {6000, 0}, {6000, 5000}) + lineEntity("W", {6000, 5000}, {3000, 5000});
  const auto found = outlinesIn(drawingOf(text));
  ASSERT_EQ(found.outlines.size(), 1U);
  expectEll(found.outlines[0].outer);  // the corner at 6 m lies on the straight line: gone
  EXPECT_THAT(idsOf(found.left_out),
              testing::ElementsAre("import.line.loose", "import.line.inner"));
}

TEST(Dxf, HouseAndGarageOnABridge) {
  const Polygon garage{{12000, 0}, {15000, 0}, {15000, 6000}, {12000, 6000}};
  const auto found = outlinesIn(drawingOf(linesRound("W", kEll) + linesRound("W", garage) +
                                          lineEntity("W", {10000, 0}, {12000, 0})));
  ASSERT_EQ(found.outlines.size(), 2U);
  expectEll(found.outlines[0].outer);
  EXPECT_NEAR(found.outlines[1].area_m2, 18.0, 1e-9);
  EXPECT_THAT(idsOf(found.left_out), testing::ElementsAre("import.line.inner"));
}

TEST(Dxf, LayersAreListedAndChosen) {
  const std::string text = drawingOf(
      lightPolyline("PLOT",
                    noBulges({{-9000, -9000}, {20000, -9000}, {20000, 20000}, {-9000, 20000}}),
                    true) +
      linesRound("WALLS", kEll) + group(0, "TEXT") + group(8, "WALLS") + group(1, "Kitchen") +
      group(0, "INSERT") + group(8, "DOORS") + group(2, "door"));
  const DxfDrawing drawing = readDrawing(text);
  EXPECT_THAT(drawing.layers,
              testing::ElementsAre(DxfLayer{"DOORS", 0, 0, 1}, DxfLayer{"PLOT", 0, 1, 0},
                                   DxfLayer{"WALLS", 6, 0, 1}));
  EXPECT_THAT(idsOf(drawing.left_out),
              testing::ElementsAre("import.dxf.other-kind", "import.dxf.other-kind"));
  const auto all = outlinesOf(drawing, {});
  ASSERT_EQ(all->outlines.size(), 2U);
  EXPECT_EQ(all->outlines[0].name, "PLOT");
  EXPECT_EQ(all->outlines[1].within, 0U);
  DxfChoice walls;
  walls.layers = {"WALLS"};
  const auto chosen = outlinesOf(drawing, walls);
  ASSERT_EQ(chosen->outlines.size(), 1U);
  expectEll(chosen->outlines[0].outer);
}

TEST(Dxf, UnitsAreReadAndAsked) {
  const std::string body = lightPolyline("W", noBulges(kEll), true);
  const std::string header = sectionOf(
      "HEADER", group(9, "$ACADVER") + group(1, "AC1021") + group(9, "$INSUNITS") + group(70, "5"));
  EXPECT_EQ(readDrawing(header + drawingOf(body)).metres_per_unit, 0.01);
  EXPECT_FALSE(readDrawing(drawingOf(body)).metres_per_unit);
  DxfChoice choice;
  choice.metres_per_unit = 0.01;
  EXPECT_NEAR(outlinesIn(drawingOf(body), choice).outlines.at(0).area_m2, 6800, 1e-6);
  choice.metres_per_unit = 1;
  EXPECT_THAT(idsOf(outlinesIn(drawingOf(body), choice).left_out),
              testing::ElementsAre("import.ring.large"));
  choice.metres_per_unit = 1e-6;
  EXPECT_THAT(idsOf(outlinesIn(drawingOf(body), choice).left_out),
              testing::Not(testing::IsEmpty()));
  for (const double bad : {0.0, -1.0, std::nan(""), HUGE_VAL}) {
    choice.metres_per_unit = bad;
    EXPECT_FALSE(outlinesOf(readDrawing(drawingOf(body)), choice).ok()) << bad;
  }
}

TEST(Dxf, FarFromTheOriginTheHouseIsAtZero) {
  Polygon far = kEll;
  for (Point& p : far) p = {p.x + 715'830'123, p.y + 734'697'456};
  const auto found = outlinesIn(drawingOf(lightPolyline("W", noBulges(far), true)));
  ASSERT_EQ(found.outlines.size(), 1U);
  expectEll(found.outlines[0].outer);
  EXPECT_NEAR(found.origin.x, 715'830.123, 1e-6);
  EXPECT_NEAR(found.origin.y, 734'697.456, 1e-6);
}

TEST(Dxf, ArcsBecomeChordsWithinTheSagitta) {
  // A bay: a half circle of 2 m radius on a 10 x 6 m house; chord area short of the arc's
  // (derived).
  for (const double sagitta : {0.001, 0.005, 0.05}) {
    DxfChoice choice;
    choice.sagitta_m = sagitta;
    const auto found = outlinesIn(drawingOf(lightPolyline("W",
                                                          {{{0, 0}, 0},
                                                           {{3000, 0}, 1},
                                                           {{7000, 0}, 0},
                                                           {{10000, 0}, 0},
                                                           {{10000, 6000}, 0},
                                                           {{0, 6000}, 0}},
                                                          true)),
                                  choice);
    ASSERT_EQ(found.outlines.size(), 1U);
    const double exact = 60 + 2 * std::numbers::pi;
    const double area = found.outlines[0].area_m2;
    EXPECT_LT(area, exact);
    EXPECT_GT(area, exact - 2 * std::numbers::pi * sagitta);
    std::size_t on_arc = 0;
    for (const Point p : found.outlines[0].outer) {
      const Point drawn = p + (found.origin - Point{});
      if (drawn.y > -1e-3) continue;
      EXPECT_NEAR(distance(drawn, {5, 0}), 2.0, 2e-4);
      ++on_arc;
    }
    EXPECT_GE(on_arc, 3U);
  }
}

TEST(Dxf, ABulgeOfTheOtherSignBendsInwards) {
  const auto found = outlinesIn(drawingOf(lightPolyline("W",
                                                        {{{0, 0}, 0},
                                                         {{3000, 0}, -1},
                                                         {{7000, 0}, 0},
                                                         {{10000, 0}, 0},
                                                         {{10000, 6000}, 0},
                                                         {{0, 6000}, 0}},
                                                        true)));
  ASSERT_EQ(found.outlines.size(), 1U);
  EXPECT_NEAR(found.outlines[0].area_m2, 60 - 2 * std::numbers::pi, 0.04);
}

TEST(Dxf, ACircleOfTwoVertices) {
  const auto found = outlinesIn(drawingOf(lightPolyline("W", {{{0, 0}, 1}, {{6000, 0}, 1}}, true)));
  ASSERT_EQ(found.outlines.size(), 1U);
  EXPECT_NEAR(found.outlines[0].area_m2, 9 * std::numbers::pi, 6 * std::numbers::pi * 0.005);
}

TEST(Dxf, AMirroredPlaneIsTurnedBack) {
  std::vector<DxfVertex> vertices;
  for (const Point p : kEll) vertices.push_back({{-p.x, p.y}, 0});
  const auto found = outlinesIn(drawingOf(
      lightPolyline("W", vertices, true, group(210, 0.0) + group(220, 0.0) + group(230, -1.0))));
  ASSERT_EQ(found.outlines.size(), 1U);
  expectEll(found.outlines[0].outer);
}

TEST(Dxf, WhatIsLeftOutIsCounted) {
  const std::string tilted = group(210, 0.0) + group(220, 1.0) + group(230, 0.0);
  const DxfDrawing drawing = readDrawing(drawingOf(
      lightPolyline("A", noBulges(kEll), true, tilted) +
      lightPolyline("A", noBulges(kEll), true, group(67, "1")) +
      lightPolyline("A", noBulges(kEll), true, group(60, "1")) + oldPolyline("A", kEll, 64) +
      lightPolyline("A", {{{1e12, 0}, 0}, {{0, 1}, 0}}, false) +
      lightPolyline("A", {{{0, 0}, 0}, {{0, 1}, 0}}, false, group(10, "1,5") + group(20, "1"))));
  EXPECT_TRUE(drawing.paths.empty());
  EXPECT_THAT(idsOf(drawing.left_out),
              testing::ElementsAre("import.dxf.tilted", "import.dxf.on-paper", "import.dxf.hidden",
                                   "import.dxf.mesh", "import.dxf.number"));
  EXPECT_EQ(*drawing.left_out.back().find("n"), base::count("n", 2));
  EXPECT_THAT(drawing.layers, testing::ElementsAre(DxfLayer{"A", 0, 0, 6}));
}

TEST(Dxf, AnOutlineThatCrossesItselfIsLeftOut) {
  const auto found = outlinesIn(
      drawingOf(lightPolyline("W", noBulges({{0, 0}, {9000, 9000}, {9000, 0}, {0, 5000}}), true)));
  EXPECT_TRUE(found.outlines.empty());
  EXPECT_THAT(idsOf(found.left_out), testing::ElementsAre("import.ring.crosses-itself"));
}

TEST(Dxf, LineEndsMarksAndCommentsMakeNoDifference) {
  const std::string plain = drawingOf(lightPolyline("W", noBulges(kEll), true));
  const DxfDrawing expected = readDrawing(plain);
  const auto with = [&](const std::string& end) {
    std::string text;
    for (const char c : plain) text += c == '\n' ? end : std::string(1, c);
    return text;
  };
  EXPECT_EQ(readDrawing(with("\r\n")).paths, expected.paths);
  EXPECT_EQ(readDrawing(with("\r")).paths, expected.paths);
  EXPECT_EQ(readDrawing(with("  \n")).paths, expected.paths);
  EXPECT_EQ(readDrawing("\xEF\xBB\xBF" + plain).paths, expected.paths);
  EXPECT_EQ(readDrawing(group(999, "a comment") + plain + "\n\n").paths, expected.paths);
  EXPECT_EQ(
      readDrawing(sectionOf("CLASSES", "") + sectionOf("BLOCKS", linesRound("B", kEll)) + plain)
          .paths,
      expected.paths);
}

TEST(Dxf, NamesAreUtf8) {
  const auto name = [](const std::string& layer) {
    return readDrawing(drawingOf(lineEntity(layer, {0, 0}, {1, 1}))).layers.at(0).name;
  };
  EXPECT_EQ(name("B\xC3\xA4nke"), "B\xC3\xA4nke");
  EXPECT_EQ(name("B\xE4nke"), "B\xC3\xA4nke");
  EXPECT_EQ(name("B\\U+00E4nke"), "B\xC3\xA4nke");
  EXPECT_EQ(name("B\\U+D800\\U+zzzz\\U+"), "B\\U+D800\\U+zzzz\\U+");
}

TEST(Dxf, CutShortItGivesWhatWasWhole) {
  const std::string text = drawingOf(linesRound("W", kEll));
  for (std::size_t size = text.find("ENTITIES") + 9; size + 4 < text.size(); ++size) {
    const auto drawing = readDxf(std::string_view(text).substr(0, size));
    ASSERT_TRUE(drawing.ok()) << size;
    EXPECT_THAT(idsOf(drawing->left_out), testing::ElementsAre("import.dxf.ends-early"));
    // Never a line that is not in the whole file.
    for (const DxfPath& path : drawing->paths)
      EXPECT_THAT(readDrawing(text).paths, testing::Contains(path));
  }
}

TEST(Dxf, WhatIsNoDrawing) {
  EXPECT_EQ(dxfProblem(""), "import.dxf.no-entities");
  EXPECT_EQ(dxfProblem("hello\nworld\n"), "import.dxf.not-dxf");
  EXPECT_EQ(dxfProblem(std::string("Some Binary DXF\r\n\x1a\0\0\0", 20)), "import.dxf.binary");
  EXPECT_EQ(dxfProblem(sectionOf("HEADER", "") + group(0, "EOF")), "import.dxf.no-entities");
  EXPECT_EQ(dxfProblem(std::string(kMaxImportBytes + 1, '0')), "import.too-large");
  const auto broken = readDxf(sectionOf("ENTITIES", "") + "x\n1\n");
  ASSERT_FALSE(broken.ok());
  EXPECT_EQ(*broken.problems()[0].message.find("line"), base::count("line", 7));
}

TEST(LineJoin, OutlinesThatTouchInACornerAreTwo) {
  // Two squares sharing the corner {1, 1}.
  std::vector<geometry::Segment> lines;
  for (const Point o : {Point{0, 0}, Point{1, 1}}) {
    const Polygon square{o, {o.x + 1, o.y}, {o.x + 1, o.y + 1}, {o.x, o.y + 1}};
    for (std::size_t i = 0; i < 4; ++i) lines.push_back({square[i], square[(i + 1) % 4]});
  }
  const JoinedLines joined = joinLines(lines, 0.001);
  ASSERT_EQ(joined.rings.size(), 2U);
  for (const Polygon& ring : joined.rings) EXPECT_DOUBLE_EQ(geometry::signedArea(ring), 1.0);
  EXPECT_EQ(joined.inner + joined.loose, 0U);
}

TEST(LineJoin, NothingGivesNothing) {
  EXPECT_TRUE(joinLines({}, 1).rings.empty());
  EXPECT_TRUE(joinLines({{{0, 0}, {0, 0}}}, 1).rings.empty());
  EXPECT_EQ(joinLines({{{0, 0}, {5, 0}}}, 1).loose, 1U);
}

}  // namespace
}  // namespace sumpwright::files
