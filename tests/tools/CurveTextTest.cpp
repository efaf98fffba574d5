#include <gtest/gtest.h>

#include "tools/CurveText.h"

namespace sumpwright::tools {
namespace {

/// Points as "flow/pressure[/power]" in m³/h, Pa and W.
std::string curveRead(const std::string& text, AirUnits air = AirUnits::metric) {
  const CurveReading reading = readCurve(text, air);
  if (!reading.unread.empty()) return "unread: " + reading.unread;
  std::string out;
  for (const plan::FanPickPoint& p : reading.points) {
    char words[64];
    std::snprintf(words, sizeof words, "%g/%g", p.flow_m3_s * 3600.0, p.pressure_pa);
    out += (out.empty() ? "" : " ") + std::string(words);
    if (p.power_w) {
      std::snprintf(words, sizeof words, "/%g", *p.power_w);
      out += words;
    }
  }
  return out;
}

TEST(CurveText, PointsArePartedBySemicolonsCommasOrLines) {
  const std::string curve = "0/400 100/300 250/50";
  for (const char* text :
       {"0 400; 100 300; 250 50", "0 400, 100 300, 250 50", "0 400,100 300,250 50",
        "0,400; 100,300; 250,50", "0 400\n100 300\n250 50", "0:400;100:300;250:50;",
        " 0  400 ;  100 300;; 250\t50 "}) {
    EXPECT_EQ(curveRead(text), curve) << text;
  }
}

TEST(CurveText, ACommaIsADotWhereBlanksPartTheFigures) {
  EXPECT_EQ(curveRead("0 400,5; 99,5 300; 250 50"), "0/400.5 99.5/300 250/50");
}

TEST(CurveText, AThirdFigureIsThePower) {
  EXPECT_EQ(curveRead("0 400 45; 100 300 52; 250 50 60"), "0/400/45 100/300/52 250/50/60");
}

TEST(CurveText, FiguresAreInTheUnitsOnDisplayUnlessTheySayOthers) {
  // One cubic foot a minute is 1.69901 m³/h, an inch of water 249.089 Pa (AirTextTest.cpp).
  EXPECT_EQ(curveRead("0 1; 100 0.5", AirUnits::customary), "0/249.089 169.901/124.544");
  EXPECT_EQ(curveRead("0m3/h 400Pa 45W; 100m3/h 300Pa 50W", AirUnits::customary),
            "0/400/45 100/300/50");
}

TEST(CurveText, SaysWhereItStops) {
  EXPECT_EQ(curveRead("0 400; hundred 300; 250 50"), "unread: hundred 300");
  EXPECT_EQ(curveRead("0 400; 100; 250 50"), "unread: 100");
  EXPECT_EQ(curveRead("0 400; 1 2 3 4"), "unread: 1 2 3 4");
  EXPECT_EQ(curveRead("nan 400; 100 inf"), "unread: nan 400");
  EXPECT_EQ(curveRead(""), "");
}

}  // namespace
}  // namespace sumpwright::tools
