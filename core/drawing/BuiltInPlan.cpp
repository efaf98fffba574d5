// Wall features and rising walls on a plan that can be studied.

#include "drawing/BuiltIn.h"
#include "drawing/PlanContext.h"

namespace sumpwright::drawing {

void paintBuiltIn(Sketch& sketch, PlanContext& c) {
  for (const plan::WallFeature& f : c.plan().wall_features) {
    const PageEdge& e =
        c.rings[static_cast<std::size_t>(f.at.ring)].edges[static_cast<std::size_t>(f.at.edge)];
    wallFeature(sketch.tagged(f.id), c, f,
                {e.at(c.mm(f.at.offset_m)), e.along, -e.out, e.thick_mm});
  }
}

void paintRisingWalls(Sketch& sketch, PlanContext& c) {
  for (const plan::RisingWall& wall : c.plan().rising_walls) {
    risingWall(sketch.tagged(wall.id), c, wall);
  }
}

}  // namespace sumpwright::drawing
