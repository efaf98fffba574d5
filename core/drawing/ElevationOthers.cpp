// Where there are several sumps: the runs of the others, quietly, and every sump's number.

#include "build/Levels.h"
#include "build/Run.h"
#include "drawing/ElevationParts.h"
#include "plan/SumpList.h"

namespace sumpwright::drawing {
namespace {

constexpr double kRunBadge_mm = 1.7;
constexpr double kAir_mm = 4.0;  // drawn over an outlet
constexpr double kFoot_m = 0.3;  // on the strip, of a run that is not placed

/// Of one run: from its hole to its outlet, or without a discharge the hole alone.
std::vector<Point> runPath(const ElevationContext& c, const plan::Sump& sump,
                           perimeter::Place hole) {
  const double x = c.x(hole.ring, c.study.perimeter().wrapped(hole).chainage_m);
  const auto run = build::placedRun(c.study.site(), sump);
  const double ground = build::groundAt(c.study.site(), hole);
  const Point foot{x, c.view.strip ? c.laneTop() + c.laneHeight() : c.y(ground)};
  if (!run) return {foot, {x, c.y(kFoot_m)}};
  const perimeter::Place out =
      c.study.perimeter().wrapped({hole.ring, hole.chainage_m + run->shift_m});
  const Point top{c.x(out.ring, out.chainage_m), c.y(run->outlet_m)};
  if (run->shift_m == 0.0) return {foot, top};
  const double cross = c.y(run->outlet_m - build::kCrossUnderOutlet_m);
  return {foot, {x, cross}, {top.x, cross}, top};
}

bool isSeen(const ElevationContext& c, const std::vector<Point>& path) {
  return path.front().x >= c.view.label_mm && path.front().x <= c.view.width_mm;
}

void numberOver(Sketch& sketch, const ElevationContext& c, Point top, int number, bool marked) {
  if (number == 0) return;
  const Font font{type::small.size_pt, true, false};
  const Point at{top.x, top.y - kRunBadge_mm - 1.0};
  sketch.disc(at, kRunBadge_mm + 0.3, c.theme.panel);
  sketch.disc(at, kRunBadge_mm, marked ? c.theme.ink : c.theme.paper);
  if (!marked) sketch.ring(at, kRunBadge_mm, solid(c.theme.ink2, 1.2), c.theme.paper);
  sketch.text({at.x, at.y + 0.5 * c.voice.capHeight_mm(font)},
              c.voice.say(base::Message("drawing.sump-number", {base::count("number", number)})),
              font, marked ? c.theme.paper : c.theme.ink, HAlign::centre);
}

}  // namespace

void paintOtherRuns(Sketch& sketch, const ElevationContext& c, const std::string& marked) {
  for (const plan::Sump& sump : c.study.job().design.sumps) {
    const perimeter::Place hole{sump.ring, sump.chainage_m};
    const bool stands = sump.kind == plan::SumpKind::cored && c.study.perimeter().contains(hole);
    if (!stands || sump.id == marked) continue;
    const auto path = runPath(c, sump, hole);
    if (!isSeen(c, path)) continue;
    sketch.tagged(sump.id);
    sketch.path(path, solid(c.theme.panel, 3.4));
    sketch.path(path, dashed(c.theme.ink2, 1.6, {5.0, 3.0}));
    sketch.disc(path.back(), 0.8, c.theme.ink2);
    numberOver(sketch, c, path.back(), plan::neededNumber(c.study.job(), sump.id), false);
  }
}

void paintRunNumber(Sketch& sketch, const ElevationContext& c, perimeter::Place hole,
                    const std::string& marked) {
  for (const plan::Sump& sump : c.study.job().design.sumps) {
    if (sump.id != marked) continue;
    const auto path = runPath(c, sump, hole);
    sketch.tagged("number");
    if (!isSeen(c, path)) continue;
    // Over the air that leaves it.
    const double up = sump.discharge && !c.view.strip ? kAir_mm : 0.0;
    numberOver(sketch, c, path.back() - geometry::Vec{0.0, up},
               plan::neededNumber(c.study.job(), marked), true);
  }
}

}  // namespace sumpwright::drawing
