#include <gtest/gtest.h>

#include <cmath>

#include "support/Seed.h"
#include "tools/Snap.h"

namespace sumpwright::tools {
namespace {

void expectAt(const Snapped& got, double x, double y, SnapKind kind) {
  EXPECT_NEAR(got.at.x, x, 1e-9);
  EXPECT_NEAR(got.at.y, y, 1e-9);
  EXPECT_EQ(got.kind, kind);
}

SnapField drawing() {
  SnapField field;
  field.corners = {{0, 0}, {10, 0}};
  field.edges = {{{0, 0}, {10, 0}}};
  field.from = Point{10, 0};
  field.reach_m = 0.2;
  field.grid_m = 0.05;
  return field;
}

TEST(Snap, ACornerComesFirst) { expectAt(snap(drawing(), {0.1, 0.1}), 0, 0, SnapKind::corner); }

TEST(Snap, SquareFromTheLastWallKeepsTheGridsLength) {
  const Snapped got = snap(drawing(), {10.12, 4.983});
  expectAt(got, 10, 5.0, SnapKind::square);
  ASSERT_EQ(got.guides.size(), 1U);
  EXPECT_EQ(got.guides[0].a, (Point{10, 0}));
}

TEST(Snap, AnEighthOfATurnIsSquareToo) {
  const Snapped got = snap(drawing(), {13.05, 2.98});
  EXPECT_EQ(got.kind, SnapKind::square);
  EXPECT_NEAR(got.at.x - 10.0, got.at.y, 1e-9);
}

TEST(Snap, WhereSquareMeetsTheLineOfAnEarlierCorner) {
  SnapField field = drawing();
  field.corners.push_back({10, 8});
  field.from = Point{10, 8};
  const Snapped got = snap(field, {0.13, 7.9});
  expectAt(got, 0, 8, SnapKind::crossing);
  EXPECT_EQ(got.guides.size(), 2U);
}

TEST(Snap, TheAxisTurnsWithTheHouse) {
  SnapField field = drawing();
  const double angle = 0.3;
  field.axis = {std::cos(angle), std::sin(angle)};
  field.corners.clear();
  const Point along{10 + 4 * std::cos(angle) + 0.05, 4 * std::sin(angle)};
  const Snapped got = snap(field, along);
  EXPECT_EQ(got.kind, SnapKind::square);
  EXPECT_NEAR(std::atan2(got.at.y, got.at.x - 10), angle, 1e-9);
}

TEST(Snap, AnEdgeThenTheGridThenNothing) {
  SnapField field;
  field.edges = {{{0, 0}, {10, 5}}};
  field.reach_m = 0.2;
  const Snapped edge = snap(field, {4.0, 2.1});
  EXPECT_EQ(edge.kind, SnapKind::edge);
  EXPECT_NEAR(edge.at.y, edge.at.x / 2.0, 1e-9);
  expectAt(snap(field, {4.013, 7.04}), 4.0, 7.05, SnapKind::grid);
  field.grid_m = 0.0;
  expectAt(snap(field, {4.013, 7.04}), 4.013, 7.04, SnapKind::none);
  field.reach_m = 0.0;
  expectAt(snap(field, {0.0, 0.0}), 0, 0, SnapKind::none);
}

TEST(Snap, NeverMovesThePointerFurtherThanItsReach) {
  support::forEachSeed(2000, [](std::uint64_t seed) {
    support::Random random(seed);
    SnapField field;
    field.reach_m = random.uniform(0.01, 0.5);
    field.grid_m = random.chance(0.3) ? 0.0 : random.uniform(0.01, 0.3);
    field.axis = {random.uniform(-1, 1), random.uniform(-1, 1)};
    for (int n = random.between(0, 6); n > 0; --n) {
      field.corners.push_back({random.uniform(0, 3), random.uniform(0, 3)});
      field.edges.push_back({{random.uniform(0, 3), random.uniform(0, 3)}, field.corners.back()});
    }
    if (random.chance(0.7)) field.from = Point{random.uniform(0, 3), random.uniform(0, 3)};
    const Point pointer{random.uniform(0, 3), random.uniform(0, 3)};
    const Snapped got = snap(field, pointer);
    EXPECT_LE(geometry::distance(got.at, pointer), field.reach_m + 1e-9);
    EXPECT_EQ(snap(field, pointer), got);
    for (const Segment& guide : got.guides) EXPECT_EQ(guide.b, got.at);
  });
}

}  // namespace
}  // namespace sumpwright::tools
