#include <algorithm>
#include <cmath>
#include <set>

#include "core/drawing/Drawn.h"
#include "drawing/Bands.h"
#include "drawing/PlanDrawing.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::drawing {
namespace {

using support::PlanBuilder;

std::vector<PageRing> ringsOf(const siting::Study& study, double mm_per_m = 10.0) {
  PlanView view;
  view.mm_per_m = mm_per_m;
  return pageRings(study, view);
}

double area(const std::vector<Point>& polygon) { return std::abs(geometry::signedArea(polygon)); }

TEST(Bands, AreMitredAtCornersThatStandOut) {
  const auto study = studyOf(PlanBuilder::rectangle(10, 8));
  const PageRing ring = ringsOf(study)[0];
  // A band of 2 mm, 1.5 off a house of 100 x 80 mm: outer less inner rectangle.
  EXPECT_NEAR(area(ring.strip(0.0, ring.length_m, 1.5, 3.5)), 107.0 * 87.0 - 103.0 * 83.0, 1e-6);
  const auto corner = ring.strip(9.0, 11.0, 1.5, 3.5);
  const Point b = ring.edges[1].from;
  const Point far = b + 3.5 * (ring.edges[0].out + ring.edges[1].out);
  EXPECT_TRUE(std::any_of(corner.begin(), corner.end(),
                          [&](Point p) { return geometry::distance(p, far) < 1e-9; }));
}

TEST(Bands, PartsOfARingFillItWithoutGap) {
  for (const plan::Job& job : {PlanBuilder::lShape().job(), PlanBuilder::courtyard().job()}) {
    const auto study = studyOf(job);
    for (const PageRing& ring : ringsOf(study)) {
      double sum = 0.0;
      double at = 0.0;
      for (double step : {1.3, 5.1, 0.7, 7.7, 2.9}) {
        const double to = std::min(at + step, ring.length_m);
        if (to > at) sum += area(ring.strip(at, to, 1.5, 3.5));
        at = to;
      }
      if (at < ring.length_m) sum += area(ring.strip(at, ring.length_m, 1.5, 3.5));
      EXPECT_NEAR(sum, area(ring.strip(0.0, ring.length_m, 1.5, 3.5)), 1e-6);
    }
  }
}

TEST(Bands, KeepTheirDistanceFromEveryWall) {
  for (const plan::Job& job : {PlanBuilder::rectangle().job(), PlanBuilder::courtyard().job(),
                               PlanBuilder::outline({{0, 0}, {9, -1}, {11, 6}, {3, 8}}).job()}) {
    const auto study = studyOf(job);
    for (const PageRing& ring : ringsOf(study)) {
      auto face = ring.outside();
      face.push_back(face.front());
      for (double from = 0.0; from < ring.length_m; from += 0.83) {
        for (const Point& p : ring.strip(from, std::min(from + 0.9, ring.length_m), 1.5, 3.5)) {
          EXPECT_GE(geometry::distance(p, face), 1.5 - 1e-9);
        }
      }
    }
  }
}

TEST(Bands, InnerFaceIsOffsetByEachWallsOwnThickness) {
  auto job =
      PlanBuilder::rectangle(10, 8).wall(1, [](plan::Wall& w) { w.thickness_m = 0.5; }).job();
  const auto study = studyOf(job);
  const PageRing ring = ringsOf(study)[0];
  // 10 m less 0.35 and 0.5; 8 m less twice 0.35; at 10 mm to the metre.
  EXPECT_NEAR(area(ring.inside()), 91.5 * 73.0, 1e-6);
}

TEST(Bands, EveryStateIsDrawnInItsOwnWay) {
  const Theme& light = theme(ThemeName::light);
  const auto drawn = [&](rules::State state) {
    DrawList list{50, 10, {}};
    Sketch sketch(list);
    bandSample(sketch, light, state, 5, 45, 5);
    std::string kinds;
    for (const Item& item : list.items) kinds += std::to_string(item.shape.index());
    return kinds;
  };
  const std::string clear = drawn(rules::State::clear);
  const std::string advised = drawn(rules::State::advised_against);
  const std::string unproven = drawn(rules::State::not_proven);
  const std::string refused = drawn(rules::State::refused);
  EXPECT_EQ(clear, "122");  // one solid, two rings
  EXPECT_EQ(std::set<std::string>({clear, advised, unproven, refused}).size(), 4U);
}

TEST(Bands, ShowEveryRunOnce) {
  const auto study = studyOf(furnished());
  DrawList list{300, 300, {}};
  Sketch sketch(list);
  PlanView view;
  view.width_mm = view.height_mm = 300.0;
  bands(sketch, theme(ThemeName::light), study, pageRings(study, view), {0, 0, 300, 300});
  int clear = 0;
  for (const siting::Run& run : study.runs()) clear += run.state == rules::State::clear ? 1 : 0;
  int fills = 0;
  for (const Item& item : list.items) {
    const auto* fill = std::get_if<Fill>(&item.shape);
    fills += fill != nullptr && fill->colour == theme(ThemeName::light).clear.band ? 1 : 0;
  }
  EXPECT_GT(clear, 0);
  EXPECT_EQ(fills, clear);
}

}  // namespace
}  // namespace sumpwright::drawing
