// The run of a sump on the unrolled elevation: core, riser, brackets, fan, isolator, discharge, and
// the line to what is nearest to the discharge.

#include <algorithm>
#include <cmath>

#include "build/Discharge.h"
#include "build/DrillSection.h"
#include "build/Levels.h"
#include "build/Run.h"
#include "drawing/ElevationPlates.h"

namespace sumpwright::drawing {
namespace {

constexpr double kCoreUnderGround_m = 0.25;  // drawn where no hole can be cored
constexpr double kBracketEvery_m = 1.2;      // drawn for the eye

const plan::Sump* sumpOf(const siting::Study& study, const std::string& id) {
  for (const plan::Sump& s : study.job().design.sumps) {
    if (s.id == id) return &s;
  }
  return nullptr;
}

/// All that is drawn of one run, in metres of the wall.
struct RunSpots {
  perimeter::Place hole;
  double core_m = 0.0;
  bool core_known = false;   ///< stated, or chosen by the section
  bool core_stated = false;  ///< drawn full
  std::optional<rules::PlacedRun> run;
  perimeter::Place outlet;  ///< of a placed run
};

RunSpots spotsOf(const ElevationContext& c, const siting::Assessment& a, const std::string& sump) {
  RunSpots spots;
  spots.hole = a.place;
  const plan::Sump* it = sumpOf(c.study, sump);
  const double ground = build::groundAt(c.study.site(), a.place);
  const build::SectionWish wish =
      it == nullptr ? build::SectionWish{} : build::wishOf(c.study.job(), *it);
  const auto bore = build::drillSection(c.study.site(), a.place, wish).bore;
  spots.core_stated = it != nullptr && it->entry_m.has_value();
  spots.core_known = spots.core_stated || bore.has_value();
  spots.core_m = bore                ? bore->entry_m
                 : spots.core_stated ? *it->entry_m
                                     : ground - kCoreUnderGround_m;
  if (it != nullptr) spots.run = build::placedRun(c.study.site(), *it);
  if (spots.run) {
    spots.outlet =
        c.study.perimeter().wrapped({a.place.ring, a.place.chainage_m + spots.run->shift_m});
  }
  return spots;
}

struct RunPainter {
  Sketch& sketch;
  const ElevationContext& c;
  const RunSpots& at;
  ElevationPlates plates;

  double holeX() const { return c.x(at.hole.ring, at.hole.chainage_m); }
  double outletX() const { return c.x(at.outlet.ring, at.outlet.chainage_m); }
  double pipe_mm() const { return std::max(5.0 * kPx, c.mm(c.study.site().pipe_od_m)); }
  double riserTop_m() const { return at.run->outlet_m; }
  double crossing_m() const {
    const double seen = std::max(at.core_m, seenTop_m() - build::kCrossUnderOutlet_m);
    return std::min(seen, riserTop_m());
  }
  bool isInRoof() const { return at.run->fan_place == plan::FanPlace::roof_space; }
  /// Of what is seen of it: where it goes into the roof, if the fan stands there.
  double seenTop_m() const {
    if (!isInRoof()) return riserTop_m();
    const auto& edge = c.study.perimeter().edgeAt(at.outlet);
    return std::min(riserTop_m(), c.profile(edge).eaves_m);
  }

  std::vector<Point> riserLine() const {
    const Point foot{holeX(), c.y(at.core_m)};
    const Point top{outletX(), c.y(seenTop_m())};
    if (at.run->shift_m == 0.0) return {foot, top};
    const double y = c.y(crossing_m());
    return {foot, {foot.x, y}, {top.x, y}, top};
  }

  void pipe(const std::vector<Point>& line) {
    Pen outside = solid(c.theme.ink, pipe_mm() / kPx + 2.6);
    Pen inside = solid(c.theme.leaf, pipe_mm() / kPx);
    for (std::size_t i = 1; i < line.size(); ++i) sketch.line(line[i - 1], line[i], outside);
    for (std::size_t i = 1; i + 1 < line.size(); ++i) {
      sketch.disc(line[i], 0.5 * outside.width_mm, c.theme.ink);
    }
    for (std::size_t i = 1; i < line.size(); ++i) sketch.line(line[i - 1], line[i], inside);
    for (std::size_t i = 1; i + 1 < line.size(); ++i) {
      sketch.disc(line[i], 0.5 * inside.width_mm, c.theme.leaf);
    }
  }

  void bracket(Point middle) {
    const double half = 0.5 * pipe_mm() + 0.7;
    const auto box = rectangle(middle.x - half, middle.y - 0.6, 2.0 * half, 1.2);
    sketch.fill(box, c.theme.leaf);
    sketch.outline(box, solid(c.theme.ink, 1.3));
  }

  bool fanStands(double z) const { return !isInRoof() && std::abs(z - at.run->fan_m) < 0.4; }

  /// What is out of sight, on the wall it goes in at.
  void inRoof() {
    const Point in{outletX(), c.y(seenTop_m())};
    const Point top{outletX(), c.y(riserTop_m())};
    if (in.y - top.y < 1.0) return;
    sketch.tagged("riser").line(in, top, solid(c.theme.leaf, pipe_mm() / kPx));
    sketch.line(in, top, dashed(c.theme.ink2, 2.4, {4.0, 3.0}));
    plates.plate(c.voice.say(base::Message("drawing.elevation.fan-in-roof")),
                 {in.x - 0.5 * pipe_mm(), (in.y + top.y) / 2.0}, -1);
  }

  /// Along both upright parts, from above the ground to under the outlet.
  void brackets() {
    const double ground = build::groundAt(c.study.site(), at.hole);
    const bool aside = at.run->shift_m != 0.0;
    const double top = aside ? crossing_m() : seenTop_m();
    for (double z = ground + 0.45; z < top - 0.3; z += kBracketEvery_m) {
      if (!fanStands(z)) bracket({holeX(), c.y(z)});
    }
    if (aside) bracket({outletX(), c.y(seenTop_m() - 0.25)});
  }

  void fan() {
    if (isInRoof()) return inRoof();
    const bool low = at.run->fan_place == plan::FanPlace::outside_low;
    const Point middle{low ? holeX() : outletX(), c.y(at.run->fan_m)};
    const double w = std::max(2.1, 0.5 * pipe_mm() + 1.2);
    const std::vector<Point> body{
        {middle.x - 0.6 * w, middle.y - 2.9}, {middle.x + 0.6 * w, middle.y - 2.9},
        {middle.x + w, middle.y - 1.6},       {middle.x + w, middle.y + 1.6},
        {middle.x + 0.6 * w, middle.y + 2.9}, {middle.x - 0.6 * w, middle.y + 2.9},
        {middle.x - w, middle.y + 1.6},       {middle.x - w, middle.y - 1.6}};
    sketch.tagged("fan");
    sketch.fill(body, c.theme.clear.tint);
    sketch.outline(body, solid(c.theme.ink, 1.8));
    sketch.fill({{middle.x - 1.0, middle.y + 1.1},
                 {middle.x + 1.0, middle.y + 1.1},
                 {middle.x, middle.y - 1.3}},
                c.theme.ink);
    isolator({middle.x + w, middle.y + 1.2});
    plates.take(around(middle, w + 0.3, 3.2));
    plates.plate(c.voice.say(base::Message("drawing.elevation.fan")), {middle.x - w, middle.y}, -1);
  }

  void isolator(Point from) {
    const Point to{from.x + 2.6, from.y};
    const auto box = rectangle(to.x, to.y - 1.8, 3.0, 3.6);
    sketch.tagged("isolator");
    sketch.line(from, to, solid(c.theme.electricity, 1.6));
    sketch.fill(box, c.theme.leaf);
    sketch.outline(box, solid(c.theme.electricity, 1.6));
    sketch.line({to.x + 1.5, to.y - 0.8}, {to.x + 1.5, to.y + 0.5},
                solid(c.theme.electricity, 1.8));
    plates.take({to.x - 0.2, to.y - 2.0, to.x + 3.2, to.y + 2.0});
    plates.words(c.voice.say(base::Message("drawing.elevation.isolator")), {to.x + 3.8, to.y});
  }

  void outlet() {
    const Point top{outletX(), c.y(riserTop_m())};
    const double half = 0.5 * pipe_mm() + 0.9;
    sketch.tagged("outlet");
    sketch.line({top.x - half, top.y}, {top.x + half, top.y}, solid(c.theme.ink, 2.4));
    for (const double shift : {-1.2, 0.0, 1.2}) {
      const double x = top.x + shift;
      sketch.path(bezier({x, top.y - 0.9}, {x + 0.9, top.y - 2.0}, {x - 0.9, top.y - 3.0},
                         {x, top.y - 4.2}),
                  solid(c.theme.ink2, 1.2));
    }
    plates.take(around({top.x, top.y - 2.2}, half + 0.5, 2.4));
  }

  void core() {
    const Point spot{holeX(), c.y(at.core_m)};
    const double r = std::max(0.9, 0.5 * c.mm(c.study.site().core_m));
    sketch.tagged("core");
    sketch.ring(spot, r, solid(c.theme.ink, 1.8), at.core_stated ? c.theme.ink : c.theme.leaf);
    sketch.line({spot.x, spot.y + r}, {spot.x, c.laneTop() + c.laneHeight() + 0.4},
                solid(c.theme.ink, 2.0));
    plates.take(around(spot, r + 0.3, r + 0.3));
    const base::Arg size = base::millimetres("diameter", 1000.0 * c.study.site().core_m);
    const auto text = at.core_known ? base::Message("drawing.elevation.core",
                                                    {size, base::metres("height", at.core_m)})
                                    : base::Message("drawing.elevation.core-only", {size});
    plates.plate(c.voice.say(text), {spot.x + r, spot.y}, +1);
  }

  /// A riser that nobody has placed yet: where it would go up.
  void unplaced() {
    const auto& edge = c.study.perimeter().edgeAt(at.hole);
    const Point top{holeX(), c.y(c.profile(edge).eaves_m + 0.3)};
    sketch.tagged("riser");
    sketch.line({holeX(), c.y(at.core_m)}, top, dashed(c.theme.stale_line, 2.0, {4.0, 3.0}));
    plates.plate(c.voice.say(base::Message("drawing.elevation.unplaced")), top, -1,
                 &c.theme.not_proven.text);
  }
};

/// What leaves the outlet least to spare, among what rules hold it off by.
struct NearestThing {
  build::RunNearest near;
  double needed_m = 0.0;
};

std::optional<NearestThing> nearestToOutlet(const siting::Study& study, perimeter::Place hole) {
  std::optional<NearestThing> best;
  for (const rules::Rule& rule : study.sheet().rules) {
    if (!rule.enabled || rule.severity != rules::Severity::binding) continue;
    rules::Rule outlet = rule;
    const auto said =
        std::find(rule.applies_to.begin(), rule.applies_to.end(), rules::Part::outlet);
    if (said == rule.applies_to.end()) continue;
    outlet.applies_to = {rules::Part::outlet};
    const auto near = build::nearestOfRun(outlet, study.site(), hole);
    if (!near || near->thing.empty()) continue;
    const double spare = near->distance_m - rule.needed_m->value;
    if (!best || spare < best->near.distance_m - best->needed_m) {
      best = NearestThing{*near, rule.needed_m->value};
    }
  }
  return best;
}

const plan::Opening* openingOf(const siting::Study& study, const std::string& id) {
  for (const plan::Opening& o : study.job().plan.openings) {
    if (o.id == id) return &o;
  }
  return nullptr;
}

/// The nearest spot of an opening's rectangle to the outlet, as drawn.
Point nearestSpot(const ElevationContext& c, const plan::Opening& o, const RunSpots& at,
                  const Box& drawn) {
  const double z = std::clamp(c.y(at.run->outlet_m), drawn.top, drawn.bottom);
  const auto& e = c.study.perimeter().edges(o.at.ring)[static_cast<std::size_t>(o.at.edge)];
  const geometry::Point p = c.study.perimeter().pointAt(at.outlet);
  const double along = geometry::dot(p - e.from, e.along);
  const double on = std::clamp(along, o.at.offset_m, o.at.offset_m + o.width_m);
  return {c.x(o.at.ring, e.start_m + on), z};
}

void distanceLine(RunPainter& painter, const ElevationContext& c, const RunSpots& at) {
  const auto nearest = nearestToOutlet(c.study, at.hole);
  if (!nearest) return;
  const plan::Opening* opening = openingOf(c.study, nearest->near.thing);
  if (opening == nullptr) return;
  const bool refused = nearest->near.distance_m < nearest->needed_m - 1e-9;
  const Colour colour = refused ? c.theme.refused.text : c.theme.ink;
  const std::string words = c.voice.say(
      base::Message("drawing.elevation.need", {base::metres("distance", nearest->near.distance_m),
                                               base::metres("needed", nearest->needed_m)}));
  for (const DrawnOpening& o : drawnOpenings(c)) {
    if (o.opening != opening) continue;
    const Point from{painter.outletX(), c.y(at.run->outlet_m)};
    const Point to = nearestSpot(c, *opening, at, o.box);
    const bool same_wall = opening->at.ring == at.outlet.ring &&
                           c.study.perimeter().edgeAt(at.outlet).edge == opening->at.edge;
    painter.sketch.tagged("distance");
    // Folded flat the line over a corner is not the distance: it is broken there.
    painter.sketch.line(from, to, same_wall ? solid(colour, 2.0) : dashed(colour, 1.6, {3.0, 3.0}));
    painter.sketch.disc(from, 0.7, colour);
    painter.sketch.disc(to, 0.7, colour);
    painter.plates.takeLine(from, to);
    const Point middle = geometry::lerp(from, to, 0.5);
    painter.plates.plate(words, middle, to.x >= from.x ? +1 : -1, &colour);
  }
}

void strip(Sketch& sketch, const ElevationContext& c, const RunSpots& at) {
  const double x = c.x(at.hole.ring, at.hole.chainage_m);
  const double bottom = c.laneTop() + c.laneHeight();
  sketch.tagged("riser");
  if (!at.run) {
    sketch.line({x, bottom}, {x, c.y(0.3)}, solid(c.theme.ink, 2.4));
    sketch.disc({x, c.y(0.3)}, 0.8, c.theme.ink);
    return;
  }
  const double out = c.x(at.outlet.ring, at.outlet.chainage_m);
  const double y = c.y(at.run->outlet_m);
  const double cross = c.y(at.run->outlet_m - build::kCrossUnderOutlet_m);
  sketch.path({{x, bottom}, {x, out == x ? y : cross}, {out, out == x ? y : cross}, {out, y}},
              solid(c.theme.ink, 2.4));
  sketch.disc({out, y}, 0.8, c.theme.ink);
}

}  // namespace

void paintRun(Sketch& sketch, const ElevationContext& c, const siting::Assessment& a,
              const std::string& sump, const std::vector<Box>& words) {
  const RunSpots at = spotsOf(c, a, sump);
  if (c.view.strip) return strip(sketch, c, at);
  RunPainter painter{sketch, c, at, {sketch, c, words}};
  if (!at.run) {
    if (c.study.site().outlet == plan::OutletMode::riser) painter.unplaced();
    painter.core();
    return;
  }
  sketch.tagged("riser");
  const std::vector<Point> riser = painter.riserLine();
  painter.pipe(riser);
  for (std::size_t i = 1; i < riser.size(); ++i) painter.plates.takeLine(riser[i - 1], riser[i]);
  painter.brackets();
  painter.outlet();
  painter.core();
  painter.fan();
  sketch.tagged("discharge");
  const double half = 0.5 * painter.pipe_mm() + 0.9;
  painter.plates.plate(c.voice.say(base::Message("drawing.elevation.discharge",
                                                 {base::metres("height", at.run->outlet_m)})),
                       {painter.outletX() - half, c.y(at.run->outlet_m)}, -1);
  distanceLine(painter, c, at);
}

}  // namespace sumpwright::drawing
