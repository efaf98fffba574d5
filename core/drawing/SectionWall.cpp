// The wall from its footing up, leaf by leaf, and the damp-proof course.

#include "drawing/Hatch.h"
#include "drawing/SectionParts.h"

namespace sumpwright::drawing {

namespace {

using plan::LayerKind;

/// The footing top is not known: it begins somewhere in this part.
void doubtfulFooting(Sketch& sketch, const SectionContext& c) {
  const double high = c.up.footing_high_m;
  const double low = c.up.footing_low_m;
  if (!(high > low)) return;
  const auto block = c.block(-0.15, c.up.wall_m + 0.15, high, low);
  sketch.tagged("footing-range");
  for (const auto& line : hatch({block}, {-45.0, 2.0})) {
    sketch.line(line.a, line.b, solid(c.theme.advised.band, 1.4));
  }
  sketch.outline(block, dashed(c.theme.ink, 1.4, {5.0, 3.0}));
}

void hatched(Sketch& sketch, const SectionContext& c, const std::vector<Point>& block,
             double spacing) {
  for (const auto& line : hatch({block}, {-45.0, spacing})) {
    sketch.line(line.a, line.b, solid(c.theme.ink2, 0.9));
  }
}

/// Upright strokes: what is light and framed.
void upright(Sketch& sketch, const SectionContext& c, const std::vector<Point>& block) {
  const Box box = boxOf(block);
  for (const double share : {1.0 / 3.0, 2.0 / 3.0}) {
    const double x = box.left + share * box.width();
    sketch.line({x, box.top}, {x, box.bottom}, dashed(c.theme.ink2, 0.9, {6.0, 3.0}));
  }
}

/// Zigzag from side to side.
void zigzag(Sketch& sketch, const SectionContext& c, const std::vector<Point>& block) {
  const Box box = boxOf(block);
  std::vector<Point> path;
  bool left = true;
  for (double y = box.top; y < box.bottom; y += 0.7 * box.width(), left = !left) {
    path.push_back({left ? box.left : box.right, y});
  }
  sketch.path(path, solid(c.theme.ink2, 0.9));
}

void leaf(Sketch& sketch, const SectionContext& c, const build::Leaf& leaf) {
  const auto block = c.block(leaf.from_m, leaf.to_m, c.top_m() + 0.05, c.up.footing_low_m);
  sketch.tagged("leaf");
  if (leaf.kind == LayerKind::cavity) {
    sketch.fill(block, c.theme.paper);
    return;
  }
  sketch.fill(block, c.theme.leaf);
  switch (leaf.kind) {
    case LayerKind::insulation:
    case LayerKind::external_insulation:
      zigzag(sketch, c, block);
      break;
    case LayerKind::timber_frame:
    case LayerKind::board:
    case LayerKind::cladding:
      upright(sketch, c, block);
      break;
    case LayerKind::concrete:
      concrete(sketch, boxOf(block), c.theme.ink2);
      break;
    case LayerKind::stone:
      hatched(sketch, c, block, 2.4);
      break;
    case LayerKind::render:
      break;
    case LayerKind::brick:
    case LayerKind::block:
    case LayerKind::cavity:
      hatched(sketch, c, block, 1.5);
      break;
  }
  sketch.outline(block, solid(c.theme.ink, 1.3));
}

}  // namespace

void paintWall(Sketch& sketch, const SectionContext& c) {
  for (const build::Leaf& one : c.up.leaves) leaf(sketch, c, one);
  doubtfulFooting(sketch, c);
  sketch.tagged("dpc");
  for (const build::Leaf& one : c.up.leaves) {
    if (one.kind == LayerKind::cavity) continue;
    sketch.line(c.at(one.from_m, c.up.dpc_m), c.at(one.to_m, c.up.dpc_m), solid(c.theme.ink, 3.6));
  }
}

}  // namespace sumpwright::drawing
