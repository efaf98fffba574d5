// Drawings and maps spoilt at random go through the readers: no crash, no hang; what comes out
// keeps its promises. SUMPWRIGHT_SEED and SUMPWRIGHT_CASES as in support/Seed.h.

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>

#include "files/import/DxfOutline.h"
#include "files/import/GeoJsonOutline.h"
#include "geometry/Shapes.h"
#include "support/Seed.h"

namespace sumpwright::files {
namespace {

using support::Random;

/// Invented, small, with every kind of entity that is taken. Lines instead of blanks.
std::string seedDrawing() {
  std::string text =
      "0 SECTION 2 HEADER 9 $INSUNITS 70 4 0 ENDSEC 0 SECTION 2 ENTITIES "
      "0 LINE 8 WALLS 10 0 20 0 11 9000 21 0 0 LINE 8 WALLS 10 9000 20 0 11 9000 21 7000 "
      "0 LINE 8 WALLS 10 9000 20 7000 11 0 21 0 "
      "0 LWPOLYLINE 8 BAY 90 4 70 1 10 0 20 0 42 0.5 10 4000 20 0 10 4000 20 3000 42 -1.0 "
      "10 0 20 3000 0 POLYLINE 8 0 66 1 70 1 0 VERTEX 10 1000 20 1000 0 VERTEX 10 6000 20 1000 "
      "0 VERTEX 10 6000 20 9000 42 0.2 0 SEQEND 0 ENDSEC 0 EOF ";
  for (char& c : text) {
    if (c == ' ') c = '\n';
  }
  return text;
}

const std::string kSeedMap =
    R"({"type":"FeatureCollection","features":[{"type":"Feature","id":1,"properties":{"name":"Invented"},)"
    R"("geometry":{"type":"Polygon","coordinates":[[[-8,53],[-7.9998,53],[-7.9998,53.0001],[-8,53.0001],)"
    R"([-8,53]],[[-7.9999,53.00002],[-7.9999,53.00004],[-7.99985,53.00004],[-7.9999,53.00002]]]}},)"
    R"({"type":"Feature","properties":{},"geometry":{"type":"MultiPolygon","coordinates":[[[[-8.001,53],)"
    R"([-8.0008,53],[-8.0008,53.0001],[-8.001,53]]]]}},{"type":"GeometryCollection","geometries":[)"
    R"({"type":"Point","coordinates":[0,0]}]}]})";

const std::vector<std::string> kTokens{"0\n",         "\n",
                                       "-1",          "1e308",
                                       "1e-308",      "999999999999999999999",
                                       "nan",         "inf",
                                       "[",           "]",
                                       "{",           "}",
                                       "null",        "\r",
                                       "10\n",        "42\n",
                                       "0\nLINE\n",   ",",
                                       "\"",          "180",
                                       "-90",         "0\nVERTEX\n",
                                       "0\nENDSEC\n", "0\nPOLYLINE\n",
                                       "\xFF",        std::string(1, '\0'),
                                       "70\n64\n"};

void spoilOnce(std::string& text, Random& random) {
  if (text.empty()) text = "0";
  const std::size_t at = random.index(text.size());
  const std::size_t length = random.index(std::min<std::size_t>(40, text.size() - at) + 1);
  switch (random.between(0, 6)) {
    case 0:
      text[at] = static_cast<char>(random.between(0, 255));
      break;
    case 1:
      text.erase(at, length);
      break;
    case 2:
      text.insert(at, random.oneOf(kTokens));
      break;
    case 3:
      text.replace(at, length, random.oneOf(kTokens));
      break;
    case 4:
      text.insert(random.index(text.size()), text.substr(at, 10 * length));
      break;
    case 5:  // a digit, so that numbers stay numbers
      if (const auto digit = text.find_first_of("0123456789", at); digit != std::string::npos) {
        text[digit] = static_cast<char>('0' + random.between(0, 9));
      }
      break;
    default:
      if (random.chance(0.1)) text.resize(at);
  }
}

std::string spoilt(std::string text, Random& random) {
  const int changes = 1 + random.between(0, 1) * random.between(0, 12);
  for (int i = 0; i < changes; ++i) spoilOnce(text, random);
  return text;
}

void expectPromises(const ImportedOutlines& imported) {
  double before = HUGE_VAL;
  for (const Outline& outline : imported.outlines) {
    ASSERT_GE(outline.outer.size(), 3U);
    ASSERT_GT(geometry::signedArea(outline.outer), 0.0);
    ASSERT_FALSE(geometry::firstSelfContact(outline.outer));
    ASSERT_LE(outline.area_m2, before);
    before = outline.area_m2;
    for (const geometry::Point p : outline.outer) {
      ASSERT_TRUE(std::isfinite(p.x) && std::isfinite(p.y));
    }
    for (const geometry::Polygon& hole : outline.holes) ASSERT_LT(geometry::signedArea(hole), 0.0);
  }
  for (const base::Message& m : imported.left_out) ASSERT_NE(m.find("n"), nullptr) << m.id;
}

TEST(ImportMutation, SpoiltDrawings) {
  int whole = 0;
  support::forEachSeed(6000, [&](std::uint64_t seed) {
    Random random(seed);
    const auto drawing = readDxf(spoilt(seedDrawing(), random));
    if (!drawing.ok()) return;
    const auto found = outlinesOf(*drawing, {});
    ASSERT_TRUE(found.ok());
    whole += found->outlines.empty() ? 0 : 1;
    expectPromises(*found);
  });
  std::printf("[ measured ] %d gave outlines\n", whole);
  EXPECT_GT(whole, support::caseCount(6000) / 20);  // not all was refused at the first line
}

TEST(ImportMutation, SpoiltMaps) {
  int whole = 0;
  support::forEachSeed(6000, [&](std::uint64_t seed) {
    Random random(seed);
    const auto map = readGeoJson(spoilt(kSeedMap, random));
    if (!map.ok()) return;
    whole += map->found.outlines.empty() ? 0 : 1;
    expectPromises(map->found);
  });
  std::printf("[ measured ] %d gave outlines\n", whole);
  EXPECT_GT(whole, support::caseCount(6000) / 20);
}

// The largest files that are read, of the worst kinds thought of: seconds, not minutes. (The bound
// is wide for sanitizers and busy machines; what is quadratic takes hours.)
class LargeDrawing : public ::testing::Test {
 protected:
  /// Entities until the file is full.
  template <class Next>
  static std::string filledWith(const std::string& first, Next&& next) {
    std::string text = "0\nSECTION\n2\nENTITIES\n" + first;
    while (text.size() + 200 < kMaxImportBytes) text += next();
    return text + "0\nENDSEC\n0\nEOF\n";
  }
  static std::string coordinate(int code, int value) {
    return std::to_string(code) + "\n" + std::to_string(value) + "\n";
  }
  std::string anywhere(int code) { return coordinate(code, m_random.between(0, 20'000)); }
  static void expectSeconds(const std::string& drawing) {
    const auto start = std::chrono::steady_clock::now();
    const auto read = readDxf(drawing);
    ASSERT_TRUE(read.ok());
    const auto found = outlinesOf(*read, {});
    ASSERT_TRUE(found.ok());
    const double seconds =
        std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    std::printf("[ measured ] %.1f s, %zu outlines\n", seconds, found->outlines.size());
    EXPECT_LT(seconds, 250);
  }

 private:
  Random m_random{1};
};

TEST_F(LargeDrawing, OfStrokesAnywhere) {
  expectSeconds(filledWith(
      "", [&] { return "0\nLINE\n" + anywhere(10) + anywhere(20) + anywhere(11) + anywhere(21); }));
}

TEST_F(LargeDrawing, OfZigzags) {
  std::size_t corners = 0;
  expectSeconds(filledWith("", [&] {
    const bool begins = corners++ % kMostCorners == 0;
    return (begins ? "0\nLWPOLYLINE\n70\n1\n" : "") + anywhere(10) + anywhere(20);
  }));
}

TEST_F(LargeDrawing, OfOneLineAgainAndAgain) {
  expectSeconds(filledWith("", [] { return "0\nLINE\n10\n0\n20\n0\n11\n1\n21\n0\n"; }));
}

TEST_F(LargeDrawing, OfKindsNeverHeardOf) {
  int kind = 0;
  expectSeconds(filledWith("", [&] {
    const std::string name = std::to_string(++kind);
    return "0\nX" + name + "\n8\n" + name + "\n";
  }));
}

TEST_F(LargeDrawing, OfOneStraightSideInDots) {
  int x = 0;
  expectSeconds(filledWith("0\nLWPOLYLINE\n70\n1\n10\n0\n20\n9000\n",
                           [&] { return coordinate(10, x += 2) + coordinate(20, 0); }));
}

}  // namespace
}  // namespace sumpwright::files
