// Rule kind 7 against the floor's corners, place by place. Houses are invented.

#include <gtest/gtest.h>

#include "rules/Judge.h"
#include "suction/ModelOf.h"
#include "suction/SumpPerArea.h"
#include "support/PlanBuilder.h"

namespace sumpwright::suction {

namespace {

using support::PlanBuilder;

rules::Rule thumbRule(std::optional<double> most_m2, std::optional<double> most_m) {
  const auto figure = [](double value) { return rules::Figure{value, {base::Mark::own, "test"}}; };
  rules::Rule rule;
  rule.id = "thumb";
  rule.kind = rules::RuleKind::suction;
  rule.severity = rules::Severity::advisory;
  rule.applies_to = {rules::Part::void_};
  if (most_m2) rule.most_m2 = figure(*most_m2);
  if (most_m) rule.most_m = figure(*most_m);
  return rule;
}

plan::Job stoneHouse(double width, double depth) {
  return PlanBuilder::rectangle(width, depth).with([](plan::Job& j) {
    j.house.fill = plan::Fill::clean_stone;
  });
}

std::vector<rules::FindingSpan> thumbOf(const plan::Job& job, const rules::Rule& rule,
                                        rules::Site& site) {
  rules::RuleSheet sheet;
  sheet.rules = {rule};
  site = rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet, plan::OutletMode::low,
                         0.127);
  std::vector<rules::FindingSpan> out;
  kSumpPerArea.spans(site.sheet.rules[0], site, out);
  return out;
}

bool isHeld(const std::vector<rules::FindingSpan>& spans, double s) {
  return std::any_of(spans.begin(), spans.end(),
                     [&](const rules::FindingSpan& f) { return f.from_m < s && s < f.to_m; });
}

/// The farthest corner of the floor from the inner face, place by place.
TEST(SumpPerArea, FarFloorIsFoundToTheMicrometre) {
  rules::Site site;
  const plan::Job job = stoneHouse(19.0, 9.0);
  const auto spans = thumbOf(job, thumbRule(std::nullopt, 15.0), site);
  ASSERT_FALSE(spans.empty());
  const auto model = modelOf(job, {});
  const double length = site.perimeter.length_m(0);
  int far_places = 0;
  for (double s = 0.0137; s < length; s += 0.05) {
    const perimeter::Edge& edge = site.perimeter.edgeAt({0, s});
    const Point inner = site.perimeter.pointAt({0, s}) + edge.thickness_m * edge.inward;
    double farthest = 0.0;
    for (const Point p : model->regions[0].outline) {
      farthest = std::max(farthest, geometry::distance(p, inner));
    }
    EXPECT_EQ(isHeld(spans, s), farthest > 15.0) << s;
    if (farthest > 15.0) ++far_places;
  }
  EXPECT_GT(far_places, 50);
  EXPECT_EQ(spans[0].finding.reason.id, "rule.sump-far");
  EXPECT_EQ(spans[0].finding.weight, rules::Weight::advisory);
  // Ends: on the front, 15 m from the far corner of an inner rectangle of 18.3 m by 8.3 m.
  const double end = 18.65 - std::sqrt(15.0 * 15.0 - 8.3 * 8.3);
  EXPECT_TRUE(isHeld(spans, end - 1e-6));
  EXPECT_FALSE(isHeld(spans, end + 1e-6));
}

TEST(SumpPerArea, AFloorTooLargeObjectsEverywhereOnce) {
  rules::Site site;
  const auto spans = thumbOf(stoneHouse(19.0, 9.0), thumbRule(100.0, 15.0), site);
  ASSERT_EQ(spans.size(), 1U);
  EXPECT_EQ(spans[0].from_m, 0.0);
  EXPECT_EQ(spans[0].to_m, site.perimeter.length_m(0));
  EXPECT_EQ(spans[0].finding.reason.id, "rule.sump-area");
  EXPECT_TRUE(thumbOf(stoneHouse(19.0, 9.0), thumbRule(152.0, std::nullopt), site).empty());
  // Two sumps share it; which floor is whose is not asked then.
  plan::Job two = stoneHouse(19.0, 9.0);
  two.design.sumps.resize(2);
  EXPECT_TRUE(thumbOf(two, thumbRule(100.0, 15.0), site).empty());
  EXPECT_EQ(thumbOf(two, thumbRule(70.0, 15.0), site).size(), 1U);
}

TEST(SumpPerArea, SilentWithoutCleanStoneOrWithAWallAcross) {
  rules::Site site;
  const auto asked = [&](const plan::Job& job) {
    return thumbOf(job, thumbRule(10.0, 1.0), site).empty();
  };
  EXPECT_FALSE(asked(stoneHouse(9.0, 7.0)));
  EXPECT_EQ(whyNoThumb(stoneHouse(9.0, 7.0)), std::nullopt);
  plan::Job unknown = stoneHouse(9.0, 7.0);
  unknown.house.fill = plan::Fill::unknown;
  EXPECT_TRUE(asked(unknown));
  EXPECT_EQ(whyNoThumb(unknown)->id, "rule.sump-fill");
  plan::Job cut = stoneHouse(9.0, 7.0);
  cut.plan.rising_walls.push_back({"w", {{4, 0.35}, {4, 6.65}}});
  EXPECT_TRUE(asked(cut));
  EXPECT_EQ(whyNoThumb(cut)->id, "rule.sump-wall");
}

}  // namespace

}  // namespace sumpwright::suction
