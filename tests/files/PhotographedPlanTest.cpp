// A plan drawn, photographed at a slant with noise and blur, straightened by four corners of its
// frame as a hand would set them, and traced: how far off are the corners of the house? (The
// drawing and its figures are invented.) SUMPWRIGHT_SEE=FOLDER keeps both pictures there, to look
// at.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "files/UnderlayStraighten.h"
#include "support/PlanPhoto.h"

namespace sumpwright::files {
namespace {

using geometry::Point;
using support::kFrameHeight_m;
using support::kFrameWidth_m;
using support::kHouseCorners;
using support::Random;

TEST(PhotographedPlan, TracedCornersAreWithinTwoCentimetres) {
  support::forEachSeed(4, [&](std::uint64_t seed) {
    Random random(seed);
    const support::PlanPhoto photo = support::photographed(random);
    KnownRectangle frame{{}, kFrameWidth_m, kFrameHeight_m};
    const Point corners[] = {
        {0, 0}, {kFrameWidth_m, 0}, {kFrameWidth_m, kFrameHeight_m}, {0, kFrameHeight_m}};
    for (std::size_t i = 0; i < 4; ++i) {
      const QPointF px = photo.at(corners[i]);
      frame.corners_px[i] = {px.x() + random.uniform(-0.5, 0.5),
                             px.y() + random.uniform(-0.5, 0.5)};
    }
    const auto straight = straightened(photo.image, frame);
    ASSERT_TRUE(straight.ok());
    if (const char* folder = std::getenv("SUMPWRIGHT_SEE")) {
      photo.image.save(QString::fromUtf8(folder) + QStringLiteral("/photo.png"));
      straight->image.save(QString::fromUtf8(folder) + QStringLiteral("/straight.png"));
    }
    const support::Traced traced([&](Point p) {
      const double x = p.x / straight->frame.m_per_px + straight->frame.first_corner_px.x;
      const double y = p.y / straight->frame.m_per_px + straight->frame.first_corner_px.y;
      const QPoint px(static_cast<int>(std::floor(x)), static_cast<int>(std::floor(y)));
      EXPECT_TRUE(straight->image.rect().contains(px));
      return 255.0 - qGray(straight->image.pixel(px));
    });
    double worst = 0;
    const std::size_t n = kHouseCorners.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Point found = traced.corner(kHouseCorners[(i + n - 1) % n], kHouseCorners[i],
                                        kHouseCorners[(i + 1) % n]);
      worst = std::max(worst, distance(found, kHouseCorners[i]));
    }
    std::printf("[ measured ] corners within %.1f mm at %.1f mm a pixel\n", worst * 1000,
                straight->frame.m_per_px * 1000);
    EXPECT_LT(worst, 0.02);
  });
}

}  // namespace
}  // namespace sumpwright::files
