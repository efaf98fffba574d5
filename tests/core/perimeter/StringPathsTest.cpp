// A stretched string round the house, against a slow twin: a search over corners and many points of
// the thing, with sight lines of its own.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "perimeter/StringPaths.h"
#include "support/PlanBuilder.h"
#include "support/Seed.h"

namespace sumpwright::perimeter {

namespace {

using geometry::Polyline;
using support::PlanBuilder;
using support::Random;

constexpr double kNever = std::numeric_limits<double>::infinity();

class StringTwin {
 public:
  explicit StringTwin(const plan::Job& job) {
    for (const plan::Ring& ring : job.plan.rings) m_rings.push_back(ring.corners);
  }

  double distance(Point p, const Polyline& thing) const {
    std::vector<Point> nodes{p};
    for (const auto& ring : m_rings) nodes.insert(nodes.end(), ring.begin(), ring.end());
    std::vector<double> far(nodes.size(), kNever);
    std::vector<bool> done(nodes.size(), false);
    far[0] = 0.0;
    double best = kNever;
    for (std::size_t round = 0; round < nodes.size(); ++round) {
      std::size_t next = nodes.size();
      for (std::size_t k = 0; k < nodes.size(); ++k) {
        if (!done[k] && far[k] < kNever && (next == nodes.size() || far[k] < far[next])) next = k;
      }
      if (next == nodes.size()) break;
      done[next] = true;
      best = std::min(best, far[next] + lastLeg(nodes[next], thing));
      for (std::size_t k = 0; k < nodes.size(); ++k) {
        const double way = far[next] + geometry::distance(nodes[next], nodes[k]);
        if (way < far[k] && sees(nodes[next], nodes[k])) far[k] = way;
      }
    }
    return best;
  }

 private:
  double lastLeg(Point from, const Polyline& thing) const {
    double best = kNever;
    for (std::size_t k = 1; k < thing.size(); ++k) {
      const geometry::Vec d = thing[k] - thing[k - 1];
      const double foot = geometry::dot(from - thing[k - 1], d) / geometry::dot(d, d);
      std::vector<double> tries{std::clamp(foot, 0.0, 1.0)};
      for (int i = 0; i <= 60; ++i) tries.push_back(i / 60.0);
      for (const double t : tries) {
        const Point q = geometry::lerp(thing[k - 1], thing[k], t);
        const double off = geometry::distance(from, q);
        if (off < best && sees(from, q)) best = off;
      }
    }
    return best;
  }

  /// Winding by angles; a point within a micrometre of a wall is not inside.
  bool within(Point p) const {
    double turns = 0.0;
    for (const auto& ring : m_rings) {
      for (std::size_t k = 0; k < ring.size(); ++k) {
        const geometry::Vec a = ring[k] - p;
        const geometry::Vec b = ring[(k + 1) % ring.size()] - p;
        const geometry::Vec side = b - a;
        const double t = std::clamp(-geometry::dot(a, side) / geometry::dot(side, side), 0.0, 1.0);
        if (geometry::norm(a + t * side) < 1e-6) return false;
        turns += std::atan2(geometry::cross(a, b), geometry::dot(a, b));
      }
    }
    return turns > 3.0;
  }

  bool sees(Point a, Point b) const {
    std::vector<double> marks{0.0, 1.0};
    for (const auto& ring : m_rings) {
      for (std::size_t k = 0; k < ring.size(); ++k) {
        const geometry::Vec side = ring[(k + 1) % ring.size()] - ring[k];
        const double across = geometry::cross(b - a, side);
        if (std::abs(across) < 1e-12) continue;
        const double t = geometry::cross(ring[k] - a, side) / across;
        if (t > 0.0 && t < 1.0) marks.push_back(t);
      }
    }
    std::sort(marks.begin(), marks.end());
    for (std::size_t k = 1; k < marks.size(); ++k) {
      if (within(geometry::lerp(a, b, 0.5 * (marks[k - 1] + marks[k])))) return false;
    }
    return true;
  }

  std::vector<geometry::Polygon> m_rings;
};

plan::Job crescent() {
  return PlanBuilder::outline({{0, 0}, {12, 0}, {12, 9}, {8, 9}, {8, 3}, {4, 3.5}, {3, 9}, {0, 8}});
}

geometry::Polygon starOf(Random& random) {
  geometry::Polygon corners;
  const int count = random.between(5, 9);
  for (int k = 0; k < count; ++k) {
    const double turn = 2.0 * 3.14159265358979 * (k + random.uniform(-0.25, 0.25)) / count;
    const double radius = random.uniform(2.5, 7.0);
    corners.push_back({radius * std::cos(turn), radius * std::sin(turn)});
  }
  return corners;
}

/// An opening somewhere on a wall, or a line somewhere outside.
Polyline thingOf(Random& random, const Perimeter& perimeter) {
  const int ring = random.between(0, perimeter.ringCount() - 1);
  const auto& edges = perimeter.edges(ring);
  const Edge& edge = edges[random.index(edges.size())];
  const double from = random.uniform(0.0, 0.7) * edge.length_m;
  const double to = from + random.uniform(0.05, 0.3) * edge.length_m;
  if (random.chance(0.6)) return {edge.line().at(from), edge.line().at(to)};
  const Point off = edge.line().at(from) - random.uniform(0.1, 1.5) * edge.inward;
  return {off, off - random.uniform(0.2, 2.0) * edge.inward};
}

void expectAsTwin(const plan::Job& job, Random& random) {
  const Perimeter perimeter = Perimeter::of(job).value();
  const StringPaths strings(perimeter);
  const StringTwin twin(job);
  const Polyline thing = thingOf(random, perimeter);
  if (!strings.targetOf({thing}, false).indoors.empty() &&
      strings.targetOf({thing}, false).indoors[0]) {
    return;  // the wall opposite came in the way: such a thing is measured straight
  }
  const StringTarget target = strings.targetOf({thing}, false);
  const double r = random.uniform(0.2, 9.0);
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    double least = kNever;
    for (int k = 0; k < 25; ++k) {
      const double s = random.uniform(0.0, perimeter.length_m(ring));
      const double there = twin.distance(perimeter.pointAt({ring, s}), thing);
      const double found = strings.distance({ring, s}, target);
      if (there == kNever) {
        EXPECT_EQ(found, kNever) << s;
        continue;
      }
      EXPECT_NEAR(found, there, 1e-6) << ring << ':' << s;
      least = std::min(least, there);
      if (std::abs(there - r) < 1e-5) continue;
      const Edge& edge = perimeter.edgeAt({ring, s});
      bool held = false;
      for (const auto& i : strings.within(edge, target, r)) {
        held = held || (i.from < s - edge.start_m && s - edge.start_m < i.to);
      }
      EXPECT_EQ(held, there < r) << ring << ':' << s << " at " << there << " of " << r;
    }
    EXPECT_LE(strings.least(ring, 0.0, perimeter.length_m(ring), target), least + 1e-6);
  }
}

TEST(StringPaths, AsTheTwinOnRandomHouses) {
  support::forEachSeed(60, [](std::uint64_t seed) {
    Random random(seed);
    expectAsTwin(PlanBuilder::outline(starOf(random)), random);
    expectAsTwin(crescent(), random);
    expectAsTwin(PlanBuilder::lShape(), random);
    expectAsTwin(PlanBuilder::courtyard(), random);
  });
}

/// Two walls of 10 by 8 round a corner: 3 m and 2 m along them, the string lies on both.
TEST(StringPaths, GoesRoundACorner) {
  const Perimeter perimeter = Perimeter::of(PlanBuilder::rectangle()).value();
  const StringPaths strings(perimeter);
  const auto window = strings.targetOf({{{10.0, 2.0}, {10.0, 3.0}}}, false);
  EXPECT_NEAR(strings.distance({0, 7.0}, window), 5.0, 1e-12);
  EXPECT_NEAR(strings.distance({0, 12.5}, window), 0.0, 1e-12);
  // On the rear at (4, 8), straight through the house some 7.8 m; round its corner 6 m and 5 m.
  EXPECT_NEAR(strings.distance({0, 24.0}, window), 11.0, 1e-12);
  const auto near = strings.within(perimeter.edges(0)[0], window, 5.0);
  ASSERT_EQ(near.size(), 1U);
  EXPECT_NEAR(near[0].from, 7.0, 1e-8);
}

TEST(StringPaths, OverAnInnerCornerItIsStraight) {
  const Perimeter perimeter = Perimeter::of(PlanBuilder::lShape()).value();
  const StringPaths strings(perimeter);
  // (10, 5) - (6, 5) - (6, 8): from 2 m beside the inner corner to 2 m above it.
  const auto thing = strings.targetOf({{{6.0, 7.0}, {6.0, 7.5}}}, false);
  EXPECT_NEAR(strings.distance(perimeter.nearest({8.0, 5.0}), thing), std::hypot(2.0, 2.0), 1e-9);
}

TEST(StringPaths, ACourtyardIsNotLeft) {
  const Perimeter perimeter = Perimeter::of(PlanBuilder::courtyard()).value();
  const StringPaths strings(perimeter);
  const auto outside = strings.targetOf({{{3.0, 0.0}, {4.0, 0.0}}}, false);
  EXPECT_EQ(strings.distance({1, 2.0}, outside), kNever);
  EXPECT_EQ(strings.least(1, 0.0, 14.0, outside), kNever);
  EXPECT_TRUE(strings.within(perimeter.edges(1)[0], outside, 100.0).empty());
  const auto inside = strings.targetOf({{{6.0, 5.0}, {7.0, 5.0}}}, false);
  EXPECT_EQ(strings.distance({0, 2.0}, inside), kNever);
  EXPECT_LT(strings.distance({1, 2.0}, inside), 7.0);
}

TEST(StringPaths, WhatLiesInTheHouseIsMeasuredStraight) {
  const Perimeter perimeter = Perimeter::of(PlanBuilder::rectangle()).value();
  const StringPaths strings(perimeter);
  const auto run = strings.targetOf({{{5.0, 0.0}, {5.0, 4.0}}}, false);
  EXPECT_NEAR(strings.distance({0, 14.0}, run), 5.0, 1e-12);
}

TEST(StringPaths, InAnAreaThereIsNoDistance) {
  const Perimeter perimeter = Perimeter::of(PlanBuilder::rectangle()).value();
  const StringPaths strings(perimeter);
  const auto tank = strings.targetOf({{{3.0, -1.0}, {5.0, -1.0}, {5.0, 1.0}, {3.0, 1.0}}}, true);
  EXPECT_EQ(strings.distance({0, 4.0}, tank), 0.0);
  EXPECT_NEAR(strings.distance({0, 7.0}, tank), 2.0, 1e-9);
}

}  // namespace

}  // namespace sumpwright::perimeter
