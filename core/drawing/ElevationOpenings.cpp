// Openings as rectangles in the unrolled walls.

#include <algorithm>

#include "build/Levels.h"
#include "drawing/ElevationParts.h"

namespace sumpwright::drawing {
namespace {

bool isDoorLike(plan::OpeningKind kind) {
  return kind == plan::OpeningKind::door || kind == plan::OpeningKind::glazed_door ||
         kind == plan::OpeningKind::garage_door;
}

/// Drawn where nobody measured: by kind, over the floor of its storey.
geometry::Interval usualHeights(const plan::Opening& o, double eaves_m) {
  constexpr double kStorey_m = 2.7;
  const double floor = kStorey_m * o.storey;
  switch (o.kind) {
    case plan::OpeningKind::air_vent:
      return {floor + 0.1, floor + 0.25};
    case plan::OpeningKind::flue_terminal:
      return {floor + 1.8, floor + 1.9};
    case plan::OpeningKind::soffit_vent:
      return {eaves_m - 0.05, eaves_m + 0.05};
    case plan::OpeningKind::roof_window:
      return {eaves_m + 0.4, eaves_m + 1.2};
    default:
      return {isDoorLike(o.kind) ? floor : floor + 0.9, floor + 2.1};
  }
}

Box inset(const Box& box, double by) {
  return {box.left + by, box.top + by, box.right - by, box.bottom - by};
}

std::vector<Point> corners(const Box& box) {
  return rectangle(box.left, box.top, box.width(), box.height());
}

struct Drawer {
  Sketch& sketch;
  const ElevationContext& c;

  Pen thin() const { return solid(c.theme.ink, 1.0); }
  Pen frame(bool assumed) const {
    return assumed ? dashed(c.theme.ink2, 1.3, {4.0, 3.0})
                   : solid(c.theme.ink, c.view.strip ? 0.9 : 1.3);
  }

  void glass(const Box& box) const {
    if (box.width() <= 0.2 || box.height() <= 0.2) return;
    sketch.fill(corners(box), c.theme.glass);
    sketch.outline(corners(box), solid(c.theme.ink, 0.9));
  }

  void window(const DrawnOpening& o) const {
    sketch.fill(corners(o.box), c.theme.leaf);
    if (c.view.strip) {
      sketch.fill(corners(o.box), c.theme.glass);
      sketch.outline(corners(o.box), frame(o.assumed));
      return;
    }
    sketch.outline(corners(o.box), frame(o.assumed));
    const Box pane = inset(o.box, 0.7);
    glass(pane);
    if (pane.width() > 8.0 && o.opening->opens != plan::Opens::fixed) {
      const double x = pane.centre().x;
      sketch.line({x, pane.top}, {x, pane.bottom}, solid(c.theme.ink, 0.9));
    }
    if (o.opening->kind == plan::OpeningKind::window) {
      sketch.line({o.box.left - 0.5, o.box.bottom}, {o.box.right + 0.5, o.box.bottom},
                  solid(c.theme.ink, 2.2));
    }
  }

  void door(const DrawnOpening& o) const {
    sketch.fill(corners(o.box), c.theme.leaf);
    sketch.outline(corners(o.box), frame(o.assumed));
    if (c.view.strip) return;
    const Box leaf = inset(o.box, 0.9);
    if (leaf.height() < 6.0 || leaf.width() < 2.0) return;
    const double rail = leaf.top + 0.55 * leaf.height();
    glass({leaf.left, leaf.top, leaf.right, rail - 0.5});
    sketch.outline(corners({leaf.left, rail + 0.5, leaf.right, leaf.bottom}), thin());
    sketch.disc({leaf.right - 0.9, rail}, 0.4, c.theme.ink);
  }

  void glazedDoor(const DrawnOpening& o) const {
    sketch.fill(corners(o.box), c.theme.leaf);
    sketch.outline(corners(o.box), frame(o.assumed));
    if (c.view.strip) return;
    const double x = o.box.centre().x;
    const Box all = inset(o.box, 0.8);
    glass({all.left, all.top, x - 0.4, all.bottom});
    glass({x + 0.4, all.top, all.right, all.bottom});
  }

  void boards(const DrawnOpening& o, double every_mm) const {
    sketch.fill(corners(o.box), c.theme.leaf);
    sketch.outline(corners(o.box), frame(o.assumed));
    if (c.view.strip) return;
    for (double y = o.box.top + every_mm; y < o.box.bottom - 0.2; y += every_mm) {
      sketch.line({o.box.left, y}, {o.box.right, y}, thin());
    }
  }

  void flue(const DrawnOpening& o) const {
    const double r = std::max(c.view.strip ? 0.5 : 1.2, 0.5 * o.box.width());
    sketch.ring(o.box.centre(), r, solid(c.theme.ink, 1.3), c.theme.leaf);
    if (!c.view.strip) sketch.disc(o.box.centre(), 0.4 * r, c.theme.ink);
  }

  void draw(const DrawnOpening& o) const {
    switch (o.opening->kind) {
      case plan::OpeningKind::door:
        return door(o);
      case plan::OpeningKind::glazed_door:
        return glazedDoor(o);
      case plan::OpeningKind::garage_door:
        return boards(o, 2.4);
      case plan::OpeningKind::air_vent:
      case plan::OpeningKind::soffit_vent:
        return boards(o, 0.6);
      case plan::OpeningKind::flue_terminal:
        return flue(o);
      case plan::OpeningKind::window:
      case plan::OpeningKind::roof_window:
        return window(o);
    }
  }
};

/// The lowest of the ground along its wall, on the page.
double groundUnder(const ElevationContext& c, const DrawnOpening& o) {
  const auto& at = o.opening->at;
  const auto& edge = c.study.perimeter().edges(at.ring)[static_cast<std::size_t>(at.edge)];
  double lowest = -1e300;
  for (const auto& point : build::groundAlong(c.study.site(), edge).points) {
    lowest = std::max(lowest, c.y(point.level_m));
  }
  return lowest;
}

bool covers(const Box& box, const DrawnOpening& own, const std::vector<DrawnOpening>& all) {
  return std::any_of(all.begin(), all.end(), [&](const DrawnOpening& other) {
    return &other != &own && overlap(box, other.box);
  });
}

/// In the opening where it fits, else over its head, else under it, else in the ground under it,
/// off other openings if that can be; else it is left out.
void nameOf(Sketch& sketch, const ElevationContext& c, const DrawnOpening& o,
            const std::vector<DrawnOpening>& all, Occupied& taken) {
  if (o.opening->name.empty()) return;
  const double width = c.voice.width_mm(o.opening->name, type::small);
  const double cap = c.voice.capHeight_mm(type::small);
  const double x = o.box.centre().x;
  std::vector<double> lines;
  const bool in = width + 1.6 < o.box.width() && o.box.height() > 5.0;
  if (in) lines.push_back(o.box.centre().y + cap / 2.0);
  lines.push_back(o.box.top - 1.2);
  lines.push_back(o.box.bottom + 1.4 + cap);
  lines.push_back(std::max(o.box.bottom, groundUnder(c, o)) + 1.9 + cap);
  // Over its middle, else as far aside as it still stands over the opening.
  const double aside = std::max(0.0, (width - o.box.width()) / 2.0);
  std::optional<Point> chosen;
  for (const bool over_others : {false, true}) {
    for (const double y : lines) {
      for (const double by : {0.0, -aside, aside}) {
        const Box box = around({x + by, y - cap / 2.0}, width / 2.0 + 0.5, cap / 2.0 + 0.6);
        if (chosen || !taken.isFree(box) || !holds(c.room(), box)) continue;
        if (over_others || !covers(box, o, all)) chosen = Point{x + by, y};
      }
    }
  }
  if (!chosen) return;
  const Box box = around({chosen->x, chosen->y - cap / 2.0}, width / 2.0 + 0.5, cap / 2.0 + 0.6);
  taken.take(box);
  const bool inside = chosen->y < o.box.bottom && chosen->y > o.box.top;
  sketch.fill(corners(box), inside ? c.theme.glass : c.theme.room_dwelling);
  sketch.text(*chosen, o.opening->name, type::small, c.theme.ink, HAlign::centre);
}

/// The line of the ground, which words would hide in.
void takeGround(const ElevationContext& c, Occupied& taken) {
  for (int r = 0; r < c.study.perimeter().ringCount(); ++r) {
    for (const perimeter::Edge& e : c.study.perimeter().edges(r)) {
      if (!c.sees(e)) continue;
      for (const auto& at : build::groundAlong(c.study.site(), e).points) {
        const double y = c.y(at.level_m);
        taken.take({c.x(e.ring, e.start_m), y - 0.7, c.x(e.ring, e.end_m()), y + 0.7});
      }
    }
  }
}

/// Lines that words would cut: the eaves, but for a gable's, which are not drawn.
void takeEaves(const ElevationContext& c, Occupied& taken) {
  for (int r = 0; r < c.study.perimeter().ringCount(); ++r) {
    for (const perimeter::Edge& e : c.study.perimeter().edges(r)) {
      if (!c.sees(e) || c.profile(e).gable) continue;
      const double y = c.y(c.profile(e).eaves_m);
      taken.take({c.x(e.ring, e.start_m), y - 0.7, c.x(e.ring, e.end_m()), y + 0.7});
    }
  }
}

/// Room of a riser that goes up there, and of one that ends to the side.
void takeRun(const ElevationContext& c, perimeter::Place hole, Occupied& taken) {
  constexpr double kHalf_mm = 2.2;  // as wide as the fan
  const auto& run = c.study.site().run;
  const double shift = run ? run->shift_m : 0.0;
  const double top = run ? c.y(run->outlet_m) - 5.0 : c.room().top;
  for (const double by : {0.0, shift}) {
    const perimeter::Place at = c.study.perimeter().wrapped({hole.ring, hole.chainage_m + by});
    const double x = c.x(at.ring, at.chainage_m);
    taken.take({x - kHalf_mm, top, x + kHalf_mm, c.room().bottom});
  }
}

}  // namespace

std::vector<DrawnOpening> drawnOpenings(const ElevationContext& c) {
  std::vector<DrawnOpening> drawn;
  for (const plan::Opening& o : c.study.job().plan.openings) {
    const auto& e = c.study.perimeter().edges(o.at.ring)[static_cast<std::size_t>(o.at.edge)];
    const bool known = o.sill_m && o.head_m;
    const geometry::Interval heights =
        known ? geometry::Interval{*o.sill_m, *o.head_m} : usualHeights(o, c.profile(e).eaves_m);
    const double left = c.x(o.at.ring, e.start_m + o.at.offset_m);
    Box box{left, c.y(heights.to), left + c.mm(o.width_m), c.y(heights.from)};
    // A slit or a vent is still to be seen.
    if (box.height() < 0.8) {
      const double middle = box.centre().y;
      box.top = middle - 0.4;
      box.bottom = middle + 0.4;
    }
    if (box.right < c.view.label_mm || box.left > c.view.width_mm) continue;
    drawn.push_back({&o, box, !known});
  }
  return drawn;
}

void paintElevationOpenings(Sketch& sketch, const ElevationContext& c) {
  const auto openings = drawnOpenings(c);
  const Drawer drawer{sketch, c};
  Occupied taken;
  for (const DrawnOpening& o : openings) {
    sketch.tagged(o.opening->id);
    drawer.draw(o);
  }
  if (c.view.strip) return;
  takeEaves(c, taken);
  takeGround(c, taken);
  for (const LevelMark& mark : levelMarks(c)) taken.take(boxOfWords(c, mark));
  if (c.view.keep_clear) takeRun(c, *c.view.keep_clear, taken);
  for (const DrawnOpening& o : openings) {
    sketch.tagged(o.opening->id);
    nameOf(sketch, c, o, openings, taken);
  }
}

std::string elevationOpeningAt(const siting::Study& study, const ElevationView& view, Point at_mm) {
  class Mute final : public Voice {
   public:
    std::string say(const base::Message&) const override { return {}; }
    double width_mm(const std::string&, const Font&) const override { return 0.0; }
    double capHeight_mm(const Font&) const override { return 0.0; }
  };
  const Mute mute;
  const ElevationContext c(study, view, mute);
  const auto openings = drawnOpenings(c);
  std::string on_top;  // the last drawn
  for (const DrawnOpening& o : openings) {
    if (holds(grown(o.box, 0.5), at_mm)) on_top = o.opening->id;
  }
  return on_top;
}

}  // namespace sumpwright::drawing
