// The hole, the hollow behind it, the pipe and its seals.

#include <algorithm>
#include <cmath>

#include "build/Figures.h"
#include "drawing/SectionParts.h"

namespace sumpwright::drawing {

namespace {

using build::axisAt_m;
using build::Bore;

constexpr double kRiserOff_m = 0.22;  // middle of the riser from the wall
constexpr double kBend_m = 0.13;      // of the bend at its foot

/// The half ball under the slab that touches the inner face.
void hollow(Sketch& sketch, const SectionContext& c) {
  const double r = c.section.hollow.radius_m;
  const Point middle = c.at(c.up.wall_m + r, c.up.underside_m());
  const auto bowl = arcPoints(middle, r * c.mm, 180.0, 180.0);
  sketch.tagged("hollow").fill(bowl, c.theme.paper);
  sketch.path(bowl, dashed(c.theme.ink, 1.8, {4.5, 3.0}));
}

void hole(Sketch& sketch, const SectionContext& c, const Bore& bore) {
  const double half = build::halfUpright_m(bore, c.up.core_m);
  const double to = c.up.wall_m;
  const Point a = c.at(0.0, bore.entry_m + half);
  const Point b = c.at(to, axisAt_m(bore, to) + half);
  const Point d = c.at(to, axisAt_m(bore, to) - half);
  const Point e = c.at(0.0, bore.entry_m - half);
  sketch.tagged("core").fill({a, b, d, e}, c.theme.paper);
  sketch.line(a, b, solid(c.theme.ink, 1.4));
  sketch.line(e, d, solid(c.theme.ink, 1.4));
}

/// The middle of the pipe from its end in the hollow out and up, metres.
std::vector<Point> pipeMiddle(const SectionContext& c, const Bore& bore) {
  const double end = c.up.wall_m + build::kPastInner_m;
  const double angle = std::atan(bore.fall);
  const double out = -kRiserOff_m;
  // The bend touches the falling pipe and the upright one.
  const double reach = kBend_m * std::tan((std::numbers::pi / 2.0 - angle) / 2.0);
  const double from = out + reach * std::cos(angle);
  std::vector<Point> middle{{end, axisAt_m(bore, end)}, {from, axisAt_m(bore, from)}};
  const double centre_x = out + kBend_m;
  const double centre_y = axisAt_m(bore, out) + reach;
  for (int i = 0; i <= 12; ++i) {
    const double start = -std::numbers::pi / 2.0 - angle;
    const double a = start + (-std::numbers::pi - start) * i / 12.0;
    middle.push_back({centre_x + kBend_m * std::cos(a), centre_y + kBend_m * std::sin(a)});
  }
  middle.push_back({out, c.top_m() + 0.05});
  return middle;
}

/// Both sides of a band about a line of points, half its width off.
std::vector<std::vector<Point>> sidesOf(const std::vector<Point>& middle, double half) {
  std::vector<std::vector<Point>> sides(2);
  for (std::size_t i = 0; i < middle.size(); ++i) {
    const Point before = middle[i > 0 ? i - 1 : 0];
    const Point after = middle[std::min(i + 1, middle.size() - 1)];
    const Vec across = geometry::left(unit(after - before));
    sides[0].push_back(middle[i] + half * across);
    sides[1].push_back(middle[i] - half * across);
  }
  return sides;
}

void pipe(Sketch& sketch, const SectionContext& c, const Bore& bore) {
  std::vector<Point> middle;
  for (const Point& p : pipeMiddle(c, bore)) middle.push_back(c.at(p.x, p.y));
  const auto sides = sidesOf(middle, 0.5 * c.up.pipe_od_m * c.mm);
  std::vector<Point> band = sides[0];
  band.insert(band.end(), sides[1].rbegin(), sides[1].rend());
  sketch.tagged("pipe").fill(band, c.theme.clear.tint);
  for (const auto& side : sides) sketch.path(side, solid(c.theme.ink, 1.6));
  sketch.line(sides[0].front(), sides[1].front(), solid(c.theme.ink, 1.2));
  const Point riser = c.at(-kRiserOff_m, std::max(c.up.ground_m + 0.18, bore.entry_m + 0.3));
  const double w = 0.32 * c.up.pipe_od_m * c.mm;
  sketch.fill({{riser.x, riser.y - 1.2 * w},
               {riser.x + w, riser.y + 0.6 * w},
               {riser.x - w, riser.y + 0.6 * w}},
              c.theme.ink);
}

/// Backer and sealant where the pipe goes into a leaf, round its whole circumference.
void seal(Sketch& sketch, const SectionContext& c, const Bore& bore, double from_m, double to_m) {
  const double w = std::sqrt(1.0 + bore.fall * bore.fall);
  for (const double side : {1.0, -1.0}) {
    const double core = side * 0.5 * c.up.core_m * w;
    // Never so thin that it cannot be seen.
    const double thick = std::max((c.up.core_m - c.up.pipe_od_m) / 2.0 * w, 0.9 / c.mm);
    const double pipe = core - side * thick;
    sketch.tagged("seal").fill(
        {c.at(from_m, axisAt_m(bore, from_m) + core), c.at(to_m, axisAt_m(bore, to_m) + core),
         c.at(to_m, axisAt_m(bore, to_m) + pipe), c.at(from_m, axisAt_m(bore, from_m) + pipe)},
        c.theme.ink);
  }
}

/// At the outside face and at the inner leaf's cavity side; a solid wall at both faces.
void seals(Sketch& sketch, const SectionContext& c, const Bore& bore) {
  constexpr double kDeep_m = 0.04;
  const build::Leaf* inner = nullptr;
  bool cavity = false;
  for (const build::Leaf& leaf : c.up.leaves) {
    cavity = cavity || leaf.kind == plan::LayerKind::cavity;
    if (cavity && leaf.kind != plan::LayerKind::cavity && inner == nullptr) inner = &leaf;
  }
  seal(sketch, c, bore, 0.0, std::min(kDeep_m, c.up.wall_m / 2.0));
  const double to = inner != nullptr ? inner->to_m : c.up.wall_m;
  const double from = std::max(to - kDeep_m, inner != nullptr ? inner->from_m : 0.0);
  seal(sketch, c, bore, from, to);
}

/// Three chevrons: air drawn into the pipe.
void draught(Sketch& sketch, const SectionContext& c, const Bore& bore) {
  const double x0 = c.up.wall_m + build::kPastInner_m + 0.05;
  const double h = 0.02;
  for (int i = 0; i < 3; ++i) {
    const double x = x0 + 0.035 * i;
    if (x + 0.03 > c.up.wall_m + c.section.hollow.past_inner_m) break;
    const double y = axisAt_m(bore, x);
    sketch.tagged("draught").path({c.at(x + h, y + 1.4 * h), c.at(x, y), c.at(x + h, y - 1.4 * h)},
                                  solid(c.theme.ink, 1.6));
  }
}

}  // namespace

void paintHole(Sketch& sketch, const SectionContext& c) {
  const Bore& bore = *c.section.bore;
  hollow(sketch, c);
  hole(sketch, c, bore);
  pipe(sketch, c, bore);
  seals(sketch, c, bore);
  draught(sketch, c, bore);
}

}  // namespace sumpwright::drawing
