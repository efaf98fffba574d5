// Screed, insulation, slab, blinding and hardcore; or a suspended floor.

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "drawing/SectionParts.h"

namespace sumpwright::drawing {

namespace {

/// Scatter that is the same every time: a hash of the cell (mixing steps of SplitMix64: Steele,
/// Lea, Flood, OOPSLA 2014), 0 to 1.
double scatter(std::int64_t column, std::int64_t row, std::uint64_t what) {
  std::uint64_t z = static_cast<std::uint64_t>(column) * 0x9E3779B97F4A7C15ULL +
                    static_cast<std::uint64_t>(row) * 0xBF58476D1CE4E5B9ULL + what;
  z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
  z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
  return static_cast<double>((z ^ (z >> 31U)) >> 11U) * 0x1.0p-53;
}

/// A stone of five or six corners.
std::vector<Point> stone(Point middle, double radius, std::int64_t column, std::int64_t row) {
  const int corners = scatter(column, row, 3) < 0.5 ? 5 : 6;
  const double turn = 360.0 * scatter(column, row, 4);
  std::vector<Point> out;
  for (int i = 0; i < corners; ++i) {
    const auto corner = arcPoints(middle, radius, turn + 360.0 * i / corners, 0.0).front();
    out.push_back({corner.x, middle.y + 0.8 * (corner.y - middle.y)});
  }
  return out;
}

void stones(Sketch& sketch, const SectionContext& c, const Box& box) {
  constexpr double kPitch_mm = 2.3;
  const int rows = std::max(1, static_cast<int>(std::floor(box.height() / kPitch_mm)));
  const double high = box.height() / rows;
  const int columns = static_cast<int>(box.width() / kPitch_mm);
  const Pen pen = solid(c.theme.ink2, 0.8);
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const double radius = std::min(high, kPitch_mm) * (0.36 + 0.08 * scatter(column, row, 1));
      const double x = box.left + kPitch_mm * (column + 0.5 + 0.16 * (row % 2)) +
                       0.3 * (scatter(column, row, 2) - 0.5);
      const Point middle{x, box.top + high * (row + 0.5)};
      sketch.outline(stone(middle, radius, column, row), pen);
    }
  }
}

/// Scallops along the middle of the insulation.
void scallops(Sketch& sketch, const Box& box, const Pen& pen) {
  const double step = std::clamp(box.height() * 0.65, 1.2, 4.0);
  const double swing = 0.32 * box.height();
  const double y = (box.top + box.bottom) / 2.0;
  std::vector<Point> wave;
  double side = 1.0;
  for (double x = box.left; x < box.right; x += step, side = -side) {
    const auto piece = bezier({x, y}, {x + 0.35 * step, y + 1.6 * side * swing},
                              {x + 0.65 * step, y + 1.6 * side * swing}, {x + step, y});
    wave.insert(wave.end(), piece.begin(), piece.end());
  }
  sketch.path(wave, pen);
}

void slabOnGround(Sketch& sketch, const SectionContext& c) {
  const double from = c.up.wall_m;
  const double to = c.rightEnd_m();
  double level = c.up.floor_m - c.up.under_floor_m;
  const auto course = [&](double thickness, const char* tag, const Colour& colour,
                          const auto& inside) {
    if (thickness <= 0.0) return;
    const auto block = c.block(from, to, level, level - thickness);
    level -= thickness;
    sketch.tagged(tag).fill(block, colour);
    inside(boxOf(block));
    sketch.outline(block, solid(c.theme.ink, 1.0));
  };
  course(c.up.screed_m, "screed", c.theme.room_hall, [](const Box&) {});
  course(c.up.insulation_m, "insulation", c.theme.leaf,
         [&](const Box& box) { scallops(sketch, box, solid(c.theme.ink2, 1.0)); });
  course(c.up.slab_m, "slab", c.theme.concrete,
         [&](const Box& box) { concrete(sketch, box, c.theme.ink2); });
  course(c.up.blinding_m, "blinding", c.theme.soil, [](const Box&) {});
  course(c.up.hardcore_m, "hardcore", c.theme.hardcore,
         [&](const Box& box) { stones(sketch, c, box); });
}

void suspendedFloor(Sketch& sketch, const SectionContext& c) {
  const double from = c.up.wall_m;
  const double to = c.rightEnd_m();
  const double high = c.up.floor_m;
  const auto board = c.block(from, to, high, high - 0.025);
  const auto joist = c.block(from, to, high - 0.025, high - 0.2);
  const bool timber = c.up.floor == plan::FloorKind::suspended_timber;
  sketch.tagged("suspended").fill(joist, timber ? c.theme.leaf : c.theme.concrete);
  if (timber) {
    const Box box = boxOf(joist);
    for (const double share : {0.3, 0.65}) {
      const double y = box.top + share * box.height();
      sketch.line({box.left, y}, {box.right, y}, dashed(c.theme.ink2, 1.0, {9.0, 4.0}));
    }
  } else {
    concrete(sketch, boxOf(joist), c.theme.ink2);
  }
  sketch.outline(joist, solid(c.theme.ink, 1.2));
  sketch.fill(board, c.theme.room_hall);
  sketch.outline(board, solid(c.theme.ink, 1.0));
}

/// As the job says where the barrier lies: in the floor, or on through the wall as well.
void barrier(Sketch& sketch, const SectionContext& c) {
  const bool lapped = c.up.barrier == plan::Barrier::lapped_through_wall;
  if (!lapped && c.up.barrier != plan::Barrier::in_floor) return;
  sketch.tagged("barrier").line(c.at(lapped ? 0.0 : c.up.wall_m, c.up.barrier_m),
                                c.at(c.rightEnd_m(), c.up.barrier_m),
                                dashed(c.theme.water, 2.2, {6.0, 2.0, 1.5, 2.0}));
}

}  // namespace

void concrete(Sketch& sketch, const Box& box, const Colour& colour) {
  constexpr double kPitch_mm = 3.2;
  const int columns = static_cast<int>(box.width() / kPitch_mm);
  const int rows = std::max(1, static_cast<int>(box.height() / kPitch_mm));
  const double high = box.height() / rows;
  const Pen pen = solid(colour, 0.8);
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const double x = box.left + kPitch_mm * (column + 0.25 + 0.5 * scatter(column, row, 5));
      const double y = box.top + high * (row + 0.3 + 0.4 * scatter(column, row, 6));
      if (scatter(column, row, 7) < 0.65) {
        sketch.disc({x, y}, 0.19, colour);
      } else if (box.height() > 2.6) {
        sketch.outline({{x, y - 0.55}, {x + 0.65, y + 0.5}, {x - 0.65, y + 0.5}}, pen);
      }
    }
  }
}

void paintFloor(Sketch& sketch, const SectionContext& c) {
  if (c.suspended()) suspendedFloor(sketch, c);
  if (!c.suspended() || c.oversite()) slabOnGround(sketch, c);
  sketch.tagged("floor").line(c.at(c.up.wall_m, c.up.floor_m), c.at(c.rightEnd_m(), c.up.floor_m),
                              solid(c.theme.ink, 1.8));
  barrier(sketch, c);
}

}  // namespace sumpwright::drawing
