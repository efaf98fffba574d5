// Outlines from GeoJSON maps, and how true their metres are. Places are invented: corners about
// points of round degrees.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <boost/geometry/core/cs.hpp>
#include <boost/geometry/formulas/karney_direct.hpp>
#include <boost/geometry/formulas/karney_inverse.hpp>
#include <boost/geometry/srs/spheroid.hpp>
#include <numbers>
#include <sstream>

#include "files/import/GeoJsonOutline.h"
#include "geometry/Shapes.h"
#include "support/Seed.h"

namespace sumpwright::files {
namespace {

using geometry::Point;
using geometry::Polygon;

constexpr double kDegreeInRadians = std::numbers::pi / 180;

/// The geodesic on the ellipsoid by another library: Karney's series (C. F. F. Karney, Algorithms
/// for geodesics, J. Geodesy 87, 2013), right to nanometres.
const boost::geometry::srs::spheroid<double> kWgs84(6378137.0, 6356752.3142451793);

LonLat walkedFrom(LonLat from, double distance_m, double azimuth_deg) {
  using Direct = boost::geometry::formula::karney_direct<double, true, false, false, false, 8>;
  const auto result = Direct::apply(from.lon_deg, from.lat_deg, distance_m, azimuth_deg, kWgs84);
  return {result.lon2, result.lat2};
}

double geodesic_m(LonLat a, LonLat b) {
  using Inverse =
      boost::geometry::formula::karney_inverse<double, true, false, false, false, false, 8>;
  return Inverse::apply(a.lon_deg, a.lat_deg, b.lon_deg, b.lat_deg, kWgs84).distance;
}

std::string positions(const std::vector<LonLat>& ring) {
  std::ostringstream text;
  text.precision(17);
  text << "[";
  for (std::size_t i = 0; i <= ring.size(); ++i) {
    const LonLat p = ring[i % ring.size()];
    text << (i == 0 ? "" : ",") << "[" << p.lon_deg << "," << p.lat_deg << "]";
  }
  return text.str() + "]";
}

std::string polygonText(const std::vector<std::vector<LonLat>>& rings) {
  std::string text = R"({"type":"Polygon","coordinates":[)";
  for (std::size_t i = 0; i < rings.size(); ++i) text += (i == 0 ? "" : ",") + positions(rings[i]);
  return text + "]}";
}

std::string featureText(const std::string& geometry, const std::string& name) {
  return R"({"type":"Feature","properties":{"name":")" + name + R"("},"geometry":)" + geometry +
         "}";
}

/// Corners in metres east and north of a place, by geodesics.
std::vector<LonLat> placesAbout(LonLat centre, const Polygon& corners) {
  std::vector<LonLat> places;
  for (const Point p : corners) {
    places.push_back(
        walkedFrom(centre, norm(p - Point{}), std::atan2(p.x, p.y) / kDegreeInRadians));
  }
  return places;
}

const Polygon kHouse{{-6, -4}, {6, -4}, {6, 1}, {2, 1}, {2, 4}, {-6, 4}};  // 84 m2
constexpr LonLat kPlace{-8, 53};

MapOutlines readMap(const std::string& text) {
  const auto map = readGeoJson(text);
  EXPECT_TRUE(map.ok()) << (map.ok() ? "" : map.problems()[0].message.id);
  return map.ok() ? *map : MapOutlines{};
}

std::string mapProblem(const std::string& text) {
  const auto map = readGeoJson(text);
  return map.ok() ? "" : map.problems()[0].message.id;
}

std::vector<std::string> mapIds(const std::vector<base::Message>& messages) {
  std::vector<std::string> result;
  for (const base::Message& m : messages) result.push_back(m.id);
  return result;
}

// NIMA TR8350.2's WGS 84: a degree of longitude on the equator is a pi / 180 = 111 319.491 m
// (derived); a hundred-thousandth of it here.
TEST(LocalMetres, OnTheEquatorByHand) {
  const LocalMetres local({0, 0});
  EXPECT_NEAR(local.at({1e-5, 0}).x, 1.11319491, 1e-8);
  EXPECT_NEAR(local.at({1e-5, 0}).y, 0, 1e-9);
  // b^2 / a = 6 335 439.327 m, the meridian's radius there (derived).
  EXPECT_NEAR(local.at({0, 1e-5}).y, 6335439.327 * 1e-5 * kDegreeInRadians, 1e-8);
}

TEST(LocalMetres, LengthsAreWithinTheStatedError) {
  for (const auto& [reach, allowed] : {std::pair{30.0, 1e-7}, {200.0, 1e-6}, {10'000.0, 0.03}}) {
    double worst = 0;
    for (std::uint64_t seed = 1; seed <= 3000; ++seed) {
      support::Random random(seed);
      const LonLat centre{random.uniform(-180, 180), random.uniform(-89, 89)};
      const LocalMetres local(centre);
      const LonLat a = walkedFrom(centre, random.uniform(0, reach), random.uniform(0, 360));
      const LonLat b = walkedFrom(centre, random.uniform(0, reach), random.uniform(0, 360));
      const double error = std::abs(distance(local.at(a), local.at(b)) - geodesic_m(a, b));
      worst = std::max(worst, error);
      const double stated = reach * reach / (2 * 6.335e6 * 6.335e6) * geodesic_m(a, b);
      // 1e-7: the last digits of longitudes and of the Earth's radius, in both ways.
      ASSERT_LE(error, stated + 1e-7) << reach;
    }
    std::printf("[ measured ] within %.0f m of the centre: at most %.2g m\n", reach, worst);
    EXPECT_LE(worst, allowed);
  }
}

TEST(LocalMetres, NorthIsNorth) {
  for (const double lat : {-60.0, 0.0, 53.0, 80.0}) {
    const LocalMetres local({12, lat});
    const Point p = local.at(walkedFrom({12, lat}, 100, 30));
    EXPECT_NEAR(p.x, 50, 1e-5);
    EXPECT_NEAR(p.y, 100 * std::cos(30 * kDegreeInRadians), 1e-5);
  }
}

TEST(GeoJson, AHouseComesOutInMetres) {
  const MapOutlines map =
      readMap(featureText(polygonText({placesAbout(kPlace, kHouse)}), "Invented"));
  ASSERT_EQ(map.found.outlines.size(), 1U);
  const Outline& house = map.found.outlines[0];
  EXPECT_EQ(house.name, "Invented");
  EXPECT_NEAR(house.area_m2, 84, 0.005);
  ASSERT_EQ(house.outer.size(), kHouse.size());
  for (std::size_t i = 0; i < kHouse.size(); ++i) {
    EXPECT_NEAR(house.outer[i].x, kHouse[i].x + 6, 2e-4);
    EXPECT_NEAR(house.outer[i].y, kHouse[i].y + 4, 2e-4);
  }
}

TEST(GeoJson, AcrossTheLineWhereLongitudeJumps) {
  std::vector<LonLat> places = placesAbout({180, -17}, kHouse);
  for (LonLat& p : places) p.lon_deg = std::remainder(p.lon_deg, 360);
  const MapOutlines map = readMap(polygonText({places}));
  ASSERT_EQ(map.found.outlines.size(), 1U);
  EXPECT_NEAR(map.found.outlines[0].area_m2, 84, 0.005);
}

TEST(GeoJson, AHoleIsClockwiseAndTakenOff) {
  const Polygon yard{{-5, -3}, {-2, -3}, {-2, 0}, {-5, 0}};
  const MapOutlines map =
      readMap(polygonText({placesAbout(kPlace, kHouse), placesAbout(kPlace, yard)}));
  ASSERT_EQ(map.found.outlines.size(), 1U);
  const Outline& house = map.found.outlines[0];
  EXPECT_NEAR(house.area_m2, 75, 0.005);
  ASSERT_EQ(house.holes.size(), 1U);
  EXPECT_NEAR(geometry::signedArea(house.holes[0]), -9, 0.005);
  EXPECT_GT(geometry::signedArea(house.outer), 0);
}

TEST(GeoJson, AHoleOutsideIsLeftOut) {
  const Polygon out{{3, 2}, {5, 2}, {5, 3}, {3, 3}};
  const MapOutlines map =
      readMap(polygonText({placesAbout(kPlace, kHouse), placesAbout(kPlace, out)}));
  ASSERT_EQ(map.found.outlines.size(), 1U);
  EXPECT_TRUE(map.found.outlines[0].holes.empty());
  EXPECT_THAT(mapIds(map.found.left_out), testing::ElementsAre("import.ring.hole"));
}

TEST(GeoJson, ACollectionIsListedLargestFirst) {
  Polygon shed{{20, 0}, {23, 0}, {23, 2}, {20, 2}};
  const std::string text =
      R"({"type":"FeatureCollection","features":[)" +
      featureText(polygonText({placesAbout(kPlace, shed)}), "Shed") + "," +
      featureText(polygonText({placesAbout(kPlace, kHouse)}), "House") + "," +
      featureText(polygonText({placesAbout({-8, 54}, kHouse)}), "Far") + "," +
      R"({"type":"Feature","id":7,"properties":null,"geometry":{"type":"MultiPolygon","coordinates":[)"
      "[" +
      positions(placesAbout(kPlace, {{30, 0}, {32, 0}, {32, 2}, {30, 2}})) + "]]}}," +
      R"({"type":"Feature","properties":{},"geometry":null},)"
      R"({"type":"Feature","properties":{},"geometry":{"type":"Point","coordinates":[0,0]}},)"
      R"({"type":"GeometryCollection","geometries":[{"type":"Polygon","coordinates":[[1]]}]}]})";
  const MapOutlines map = readMap(text);
  std::vector<std::string> names;
  for (const Outline& o : map.found.outlines) names.push_back(o.name);
  EXPECT_THAT(names, testing::ElementsAre("House", "Shed", "7"));
  EXPECT_THAT(mapIds(map.found.left_out),
              testing::ElementsAre("import.geojson.other-kind", "import.geojson.coordinates",
                                   "import.geojson.far"));
}

TEST(GeoJson, TheFarSideOfTheEarthIsFar) {
  // Seen along the line through the Earth, both stand on one place.
  const MapOutlines map =
      readMap(R"({"type":"GeometryCollection","geometries":[)" +
              polygonText({placesAbout({0, 0}, kHouse)}) + "," +
              polygonText({placesAbout({180, 0}, {{0, 0}, {5, 0}, {5, 5}})}) + "]}");
  EXPECT_EQ(map.found.outlines.size(), 1U);
  EXPECT_THAT(mapIds(map.found.left_out), testing::ElementsAre("import.geojson.far"));
}

TEST(GeoJson, OfManyHolesTheFirstAreTaken) {
  std::vector<std::vector<LonLat>> rings{placesAbout(kPlace, kHouse)};
  for (std::size_t i = 0; i < kMostHoles + 5; ++i) {
    const double x = -5.5 + 0.05 * static_cast<double>(i);
    rings.push_back(placesAbout(kPlace, {{x, -3}, {x + 0.03, -3}, {x + 0.03, -2}, {x, -2}}));
  }
  const MapOutlines map = readMap(polygonText(rings));
  ASSERT_EQ(map.found.outlines.size(), 1U);
  EXPECT_EQ(map.found.outlines[0].holes.size(), kMostHoles);
  ASSERT_THAT(mapIds(map.found.left_out), testing::ElementsAre("import.ring.many-holes"));
  EXPECT_EQ(*map.found.left_out[0].find("n"), base::count("n", 5));
}

TEST(GeoJson, WhatIsNoMap) {
  EXPECT_EQ(mapProblem(""), "import.geojson.not-json");
  EXPECT_EQ(mapProblem("{"), "import.geojson.not-json");
  EXPECT_EQ(mapProblem("[]"), "import.geojson.not-geojson");
  EXPECT_EQ(mapProblem(R"({"type":"Topology"})"), "import.geojson.not-geojson");
  EXPECT_EQ(mapProblem(R"({"type":5})"), "import.geojson.not-geojson");
  EXPECT_EQ(mapProblem(std::string(kMaxImportBytes + 1, ' ')), "import.too-large");
  EXPECT_EQ(mapProblem(R"({"type":"Polygon","coordinates":[[[1e999,1]]]})"),
            "import.geojson.not-json");
  EXPECT_EQ(mapProblem(R"({"type":"Polygon","coordinates":[[[715830,734697],[715840,734697],)"
                       R"([715840,734707]]]})"),
            "import.geojson.not-degrees");
  EXPECT_EQ(mapProblem(R"({"type":"FeatureCollection","features":[],)"
                       R"("crs":{"type":"name","properties":{"name":"EPSG:2157"}}})"),
            "import.geojson.crs");
}

TEST(GeoJson, TheOldWayToSayTheRuleIsAllowed) {
  const std::string crs = R"({"type":"FeatureCollection","features":[],"crs":{"type":"name",)"
                          R"("properties":{"name":"urn:ogc:def:crs:OGC:1.3:CRS84"}}})";
  EXPECT_TRUE(readGeoJson(crs).ok());
  EXPECT_TRUE(readGeoJson("\xEF\xBB\xBF" + crs).ok());
}

TEST(GeoJson, DeepNestingIsNoCrash) {
  const std::string deep(1'000'000, '[');
  EXPECT_EQ(mapProblem(deep), "import.geojson.not-json");
  EXPECT_EQ(mapProblem(deep + std::string(1'000'000, ']')), "import.geojson.not-geojson");
  std::string nested;
  std::string ends;
  for (int i = 0; i < 100'000; ++i) {
    nested += R"({"type":"GeometryCollection","geometries":[)";
    ends += "]}";
  }
  nested += R"({"type":"Point","coordinates":[0,0]})" + ends;
  EXPECT_TRUE(readGeoJson(nested).ok());
}

}  // namespace
}  // namespace sumpwright::files
