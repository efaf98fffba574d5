// The sump as it will be built: pit inside, core through the wall, riser outside; then the grip
// with the state's sign, and the distances that decide.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "drawing/Clip.h"
#include "drawing/FieldDrawing.h"
#include "drawing/MarkerParts.h"
#include "drawing/PlanContext.h"
#include "drawing/Signs.h"
#include "plan/SumpList.h"

namespace sumpwright::drawing {
namespace {

constexpr double kRiserOut_mm = 2.5;
constexpr double kRiser_mm = 1.6;
constexpr double kStem_mm = 11.5;      // from riser to grip
constexpr double kShortStem_mm = 8.4;  // where the page or next door is near
constexpr double kLongStem_mm = 17.5;  // past tags that stand close about
constexpr double kOtherGrip_mm = 3.6;  // of a sump that is not the one being sited
constexpr double kBadge_mm = 2.2;      // plate of a sump's number
constexpr double kHoleSign_mm = 2.2;   // of a test hole, half
constexpr double kPit_m = 0.36;        // half-round inside; drawn size, not the pit's (own figure)

Vec turned(Vec v, double deg) {
  const double a = deg * std::numbers::pi / 180.0;
  return {v.x * std::cos(a) + v.y * std::sin(a), -v.x * std::sin(a) + v.y * std::cos(a)};
}

/// What a grip there would cover: tags weigh more than walls, leaving the page most.
double cost(const PlanContext& c, const std::vector<ServiceTag>& tags, Point riser, Point grip,
            double turn) {
  const double r = kGripRadius_mm;
  double sum = std::abs(turn) / 1000.0;
  if (!holds(c.page, around(grip, r + 0.5, r + 0.5))) sum += 8.0;
  if (c.view.furniture &&
      overlap({0.0, 0.0, kFurnitureWidth_mm, kFurnitureHeight_mm}, around(grip, r, r)))
    sum += 2.0;
  for (const ServiceTag& tag : tags) {
    if (geometry::distance(tag.centre, grip) < r + kPlateHalf_mm * 1.5) sum += 3.0;
    if (crosses(around(tag.centre, kPlateHalf_mm, kPlateHalf_mm), riser, grip)) sum += 2.0;
  }
  for (int i = 0; i < 8; ++i) {
    const Point rim = grip + (r + kBandFar_mm) * turned({1.0, 0.0}, 45.0 * i);
    if (c.inHouse(rim)) sum += 1.0;
  }
  return sum;
}

/// Without its grip.
MarkerPlace builtPlace(const PlanContext& c, perimeter::Place place) {
  const PageRing& ring = c.rings[static_cast<std::size_t>(place.ring)];
  const PageRing::Spot spot = ring.spot(place.chainage_m);
  MarkerPlace m;
  m.edge = &ring.edges[spot.edge];
  m.along_mm = spot.along_mm;
  m.face = m.edge->at(spot.along_mm);
  m.out = m.edge->out;
  m.riser = m.grip = m.face + kRiserOut_mm * m.out;
  return m;
}

MarkerPlace markerPlace(const PlanContext& c, perimeter::Place place) {
  MarkerPlace m = builtPlace(c, place);
  const auto tags = serviceTags(c);
  double best = std::numeric_limits<double>::infinity();
  for (double stem : {kStem_mm, kShortStem_mm, kLongStem_mm}) {
    for (double turn : {0.0, 25.0, -25.0, 45.0, -45.0, 65.0, -65.0}) {
      const Point grip = m.riser + stem * turned(m.out, turn);
      const double here = cost(c, tags, m.riser, grip, turn) + (stem == kStem_mm ? 0.0 : 0.3);
      if (here < best) {
        best = here;
        m.grip = grip;
      }
    }
  }
  return m;
}

void paintPit(Sketch& sketch, const PlanContext& c, const MarkerPlace& m) {
  const double r = std::max(2.4, c.mm(kPit_m));
  const Point centre = m.face - m.edge->thick_mm * m.out;
  const double start = std::atan2(m.out.y, -m.out.x) * 180.0 / std::numbers::pi - 90.0;
  auto bowl = arcPoints(centre, r, start, 180.0);
  sketch.fill(bowl, c.theme.room_dwelling);
  sketch.outline(bowl, dashed(c.theme.ink, 1.8, {3.6, 2.2}));
}

void paintCore(Sketch& sketch, const PlanContext& c, const MarkerPlace& m) {
  const double half = std::max(0.7, c.mm(c.study.site().core_m) / 2.0);
  const Vec side = half * m.edge->along;
  const Point in = m.face - (m.edge->thick_mm + 0.4) * m.out;
  const std::vector<Point> core{m.riser + side, m.riser - side, in - side, in + side};
  sketch.fill(core, c.theme.paper);
  sketch.outline(core, solid(c.theme.ink, 1.3));
}

void paintRiser(Sketch& sketch, const PlanContext& c, const MarkerPlace& m) {
  sketch.disc(m.riser, kRiser_mm + 0.5, c.theme.paper);
  sketch.ring(m.riser, kRiser_mm, solid(c.theme.ink, 2.4), c.theme.paper);
  sketch.disc(m.riser, 0.6, c.theme.ink);
}

void paintGrip(Sketch& sketch, const PlanContext& c, const MarkerPlace& m, rules::State state) {
  sketch.line(m.riser, m.grip, solid(c.theme.paper, 7.0));
  sketch.line(m.riser, m.grip, solid(c.theme.ink, 2.6));
  paintRiser(sketch, c, m);
  sketch.disc(m.grip, kGripRadius_mm + 0.3, c.theme.paper);
  sketch.ring(m.grip, kGripRadius_mm - 0.6, solid(c.theme.ink, 2.4), c.theme.paper);
  stateSign(sketch, c.theme, state, m.grip, 4.5);
}

/// Thinner and smaller than the grip in hand.
void paintOtherGrip(Sketch& sketch, const PlanContext& c, const MarkerPlace& m,
                    rules::State state) {
  sketch.line(m.riser, m.grip, solid(c.theme.paper, 5.0));
  sketch.line(m.riser, m.grip, solid(c.theme.ink2, 1.6));
  paintRiser(sketch, c, m);
  sketch.disc(m.grip, kOtherGrip_mm + 0.3, c.theme.paper);
  sketch.ring(m.grip, kOtherGrip_mm - 0.4, solid(c.theme.ink2, 1.6), c.theme.paper);
  stateSign(sketch, c.theme, state, m.grip, 3.4);
}

/// The number at the rim of a grip, on the side away from the stem.
void paintNumber(Sketch& sketch, const PlanContext& c, Point at, int number, bool chosen,
                 const Voice& voice) {
  const Font font{type::second.size_pt, true, false};
  const std::string words =
      voice.say(base::Message("drawing.sump-number", {base::count("number", number)}));
  const Colour& plate = chosen ? c.theme.ink : c.theme.paper;
  sketch.disc(at, kBadge_mm + 0.3, c.theme.paper);
  sketch.ring(at, kBadge_mm - 0.15, solid(chosen ? c.theme.ink : c.theme.ink2, 1.2), plate);
  sketch.text({at.x, at.y + voice.capHeight_mm(font) / 2.0}, words, font,
              chosen ? c.theme.paper : c.theme.ink, HAlign::centre);
}

Point badgeAt(Point grip, double radius_mm) {
  const double off = (radius_mm + 0.4) * std::numbers::sqrt2 / 2.0;
  return {grip.x + off, grip.y - off};
}

bool standsInWall(const siting::Study& study, const plan::Sump& sump) {
  return sump.kind == plan::SumpKind::cored &&
         study.perimeter().contains({sump.ring, sump.chainage_m});
}

/// The numbers of all sumps, where other drawings set them.
void takeNumbers(const siting::Study& study, const PlanContext& c, const MarkerPlace& chosen,
                 Taken& taken) {
  constexpr double kHalf_mm = kBadge_mm + 0.3;
  const auto take = [&](Point at) { taken.hard.take(around(at, kHalf_mm, kHalf_mm)); };
  take(badgeAt(chosen.grip, kGripRadius_mm));
  for (const plan::Sump& sump : study.job().design.sumps) {
    if (!standsInWall(study, sump)) continue;
    const perimeter::Place place{sump.ring, sump.chainage_m};
    const MarkerPlace built = builtPlace(c, place);
    take(built.riser + 4.4 * built.out);
    take(badgeAt(markerPlace(c, place).grip, kOtherGrip_mm));
  }
}

Taken takenBy(const PlanContext& c, const MarkerPlace& m) {
  Taken taken;
  taken.hard.take(around(m.grip, kGripRadius_mm, kGripRadius_mm));
  taken.hard.take(around(m.riser, kRiser_mm + 0.6, kRiser_mm + 0.6));
  taken.hard.takeLine(m.riser, m.grip);
  taken.hard.takeLine(m.face - m.edge->thick_mm * m.out, m.riser);  // the core itself
  const double pit = std::max(2.4, c.mm(kPit_m));
  taken.soft.take(around(m.face - (m.edge->thick_mm + pit / 2) * m.out, pit, pit));
  if (c.view.furniture) taken.hard.take({0.0, 0.0, kFurnitureWidth_mm, kFurnitureHeight_mm});
  for (const ServiceTag& tag : serviceTags(c)) {
    taken.hard.take(around(tag.centre, kPlateHalf_mm + 0.4, kPlateHalf_mm + 0.4));
  }
  for (const plan::TestHole& hole : c.study.job().plan.test_holes) {
    taken.hard.take(around(c.at(hole.at_m), kHoleSign_mm, kHoleSign_mm));
  }
  for (const PageRing& ring : c.rings) {
    for (const PageEdge& e : ring.edges) {
      taken.soft.takeLine(e.at(0.0, kBandFar_mm - 0.5), e.at(e.length_mm, kBandFar_mm - 0.5));
      for (double depth : {0.3, e.thick_mm / 2, e.thick_mm - 0.3}) {
        taken.soft.takeLine(e.at(0.0, -depth), e.at(e.length_mm, -depth));
      }
    }
  }
  for (const auto& line : dimensionLines(c)) taken.soft.takeLine(line.a, line.b);
  return taken;
}

}  // namespace

void paintBuiltSump(Sketch& sketch, const PlanContext& c, perimeter::Place place) {
  const MarkerPlace m = builtPlace(c, place);
  paintPit(sketch, c, m);
  paintCore(sketch, c, m);
  paintRiser(sketch, c, m);
}

Point gripCentre(const siting::Study& study, const siting::Assessment& assessment,
                 const PlanView& view) {
  return markerPlace(PlanContext(study, view), assessment.place).grip;
}

std::vector<SumpSign> sumpSigns(const siting::Study& study, const PlanView& view) {
  const PlanContext c(study, view);
  std::vector<SumpSign> signs;
  for (const plan::Sump& sump : study.job().design.sumps) {
    if (!standsInWall(study, sump)) continue;
    const MarkerPlace m = markerPlace(c, {sump.ring, sump.chainage_m});
    signs.push_back({sump.id, {sump.ring, sump.chainage_m}, m.face, m.grip});
  }
  return signs;
}

DrawList otherSumps(const siting::Study& study, const PlanView& view, const Voice& voice,
                    const std::string& marked, bool grips) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const PlanContext c(study, view);
  for (const plan::Sump& sump : study.job().design.sumps) {
    if (sump.id == marked || !standsInWall(study, sump)) continue;
    const perimeter::Place place{sump.ring, sump.chainage_m};
    const MarkerPlace m = grips ? markerPlace(c, place) : builtPlace(c, place);
    paintBuiltSump(sketch.tagged(sump.id), c, place);
    if (grips) paintOtherGrip(sketch, c, m, study.assess(place, sump.id).state);
    const int number = plan::neededNumber(study.job(), sump.id);
    if (number == 0) continue;
    const Point at = grips ? badgeAt(m.grip, kOtherGrip_mm) : m.riser + 4.4 * m.out;
    paintNumber(sketch, c, at, number, false, voice);
  }
  return clipped(list, c.page, voice);
}

DrawList fieldMarker(const siting::Study& study, const siting::Assessment& assessment,
                     const PlanView& view, const Voice& voice, int number) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const PlanContext c(study, view);
  const MarkerPlace m = markerPlace(c, assessment.place);
  sketch.tagged("sump");
  paintPit(sketch, c, m);
  paintCore(sketch, c, m);
  paintGrip(sketch.tagged("grip"), c, m, assessment.state);
  if (number > 0) paintNumber(sketch, c, badgeAt(m.grip, kGripRadius_mm), number, true, voice);
  return clipped(list, c.page, voice);
}

DrawList planMarker(const siting::Study& study, const siting::Assessment& assessment,
                    const PlanView& view, const Voice& voice, bool ties,
                    const std::vector<Box>& words, int number) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const PlanContext c(study, view);
  const MarkerPlace m = markerPlace(c, assessment.place);
  Taken taken = takenBy(c, m);
  for (const Box& box : words) taken.hard.take(box);
  if (number > 0) takeNumbers(study, c, m, taken);
  const auto measures = measureLines(c, assessment);
  sketch.tagged("sump");
  paintPit(sketch, c, m);
  paintCore(sketch, c, m);
  for (const MeasureLine& each : measures) {
    if (!each.measure.on_wall) taken.soft.takeLine(each.line.a, each.line.b);
  }
  if (ties) paintTies(sketch, c, m, tiesOf(study, assessment.place), taken, voice);
  paintMeasures(sketch, c, measures, taken, voice);
  paintGrip(sketch.tagged("grip"), c, m, assessment.state);
  if (number > 0) paintNumber(sketch, c, badgeAt(m.grip, kGripRadius_mm), number, true, voice);
  return clipped(list, c.page, voice);
}

}  // namespace sumpwright::drawing
