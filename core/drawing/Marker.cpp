// The sump as it will be built: pit inside, core through the wall, riser outside; then the grip
// with the state's sign, and the distances that decide.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "drawing/Clip.h"
#include "drawing/FieldDrawing.h"
#include "drawing/MarkerLabels.h"
#include "drawing/Measure.h"
#include "drawing/PlanContext.h"
#include "drawing/Signs.h"
#include "drawing/Ties.h"
#include "plan/SumpList.h"

namespace sumpwright::drawing {
namespace {

constexpr double kRiserOut_mm = 2.5;
constexpr double kRiser_mm = 1.6;
constexpr double kStem_mm = 11.5;      // from riser to grip
constexpr double kShortStem_mm = 8.4;  // where the page or next door is near
constexpr double kOtherGrip_mm = 3.6;  // of a sump that is not the one being sited
constexpr double kBadge_mm = 2.2;      // plate of a sump's number
constexpr double kPit_m = 0.36;        // half-round inside; drawn size, not the pit's (own figure)

Vec turned(Vec v, double deg) {
  const double a = deg * std::numbers::pi / 180.0;
  return {v.x * std::cos(a) + v.y * std::sin(a), -v.x * std::sin(a) + v.y * std::cos(a)};
}

struct MarkerPlace {
  const PageEdge* edge = nullptr;
  double along_mm = 0.0;
  Point face;
  Vec out;
  Point riser;
  Point grip;
};

/// What a grip there would cover: tags weigh more than walls, leaving the page most.
double cost(const PlanContext& c, const std::vector<ServiceTag>& tags, Point grip, double turn) {
  const double r = kGripRadius_mm;
  double sum = std::abs(turn) / 1000.0;
  if (!holds(c.page, around(grip, r + 0.5, r + 0.5))) sum += 8.0;
  if (c.view.furniture &&
      overlap({0.0, 0.0, kFurnitureWidth_mm, kFurnitureHeight_mm}, around(grip, r, r)))
    sum += 2.0;
  for (const ServiceTag& tag : tags) {
    if (geometry::distance(tag.centre, grip) < r + kPlateHalf_mm * 1.5) sum += 3.0;
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
  for (double stem : {kStem_mm, kShortStem_mm}) {
    for (double turn : {0.0, 25.0, -25.0, 45.0, -45.0}) {
      const Point grip = m.riser + stem * turned(m.out, turn);
      const double here = cost(c, tags, grip, turn) + (stem < kStem_mm ? 0.3 : 0.0);
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

/// A distance that decides, and its line on the page.
struct MeasureLine {
  Measure measure;
  geometry::Segment line;
};

std::vector<MeasureLine> measureLines(const PlanContext& c, const siting::Assessment& a) {
  std::vector<MeasureLine> out;
  for (const Measure& m : measuresToShow(c.study, a)) {
    if (m.on_wall) {  // between wall and band
      const PageRing& ring = c.rings[static_cast<std::size_t>(a.place.ring)];
      out.push_back({m, {ring.face(m.from_s_m, 0.8), ring.face(m.to_s_m, 0.8)}});
    } else {
      out.push_back({m, {c.at(m.from), c.at(m.to)}});
    }
  }
  return out;
}

/// The limit about the thing, kept outside the house: it meets the wall where the refused part
/// ends. Its figure stands with the distance, never here: alone it reads as another's.
void paintLimit(Sketch& sketch, const PlanContext& c, const Measure& m) {
  const Point centre = c.at(m.to);
  const double r = c.mm(m.needed_m + m.half_m);
  const Vec to = c.at(m.centre) - centre;
  const double facing = std::atan2(-to.y, to.x) * 180.0 / std::numbers::pi;
  std::vector<Point> run;
  const auto flush = [&] {
    sketch.path(run, dashed(c.theme.refused.text, 1.1, {4.0, 3.0}));
    run.clear();
  };
  for (Point p : arcPoints(centre, r, facing - 50.0, 100.0)) {
    if (c.inHouse(p)) {
      flush();
    } else {
      run.push_back(p);
    }
  }
  flush();
}

/// A distance that falls short has what it needs right under it.
std::vector<LabelLine> measureWords(const Measure& m, const Voice& voice) {
  const double distance_m = std::max(0.0, m.distance_m);
  std::vector<LabelLine> lines{
      {voice.say(base::Message("drawing.distance", {base::metres("distance", distance_m)})),
       Font{type::room.size_pt, true, false}}};
  if (m.distance_m < m.needed_m) {
    lines.push_back(
        {voice.say(base::Message("drawing.limit", {base::metres("needed", m.needed_m)})),
         type::small});
  }
  return lines;
}

void paintMeasure(Sketch& sketch, const MeasureLine& m, const Theme& theme) {
  if (m.measure.distance_m < 0.0) return;  // the hole is on the thing: no line to draw
  const auto& [a, b] = m.line;
  const Colour colour = m.measure.refused ? theme.refused.text : theme.ink;
  sketch.line(a, b, solid(theme.paper, 4.4));
  sketch.line(a, b, solid(colour, 2.2));
  for (Point end : {a, b}) sketch.disc(end, 0.7, colour);
}

/// Also where the hole is on the thing, but for things on the wall: there the band shows it.
void paintMeasureWords(Sketch& sketch, const PlanContext& c, const MeasureLine& m,
                       const std::vector<MeasureLine>& all, Taken& taken, const Voice& voice) {
  if (m.measure.distance_m < 0.0 && (m.measure.on_wall || !m.measure.refused)) return;
  const auto& [a, b] = m.line;
  Beside beside{m.line, {}};
  for (const MeasureLine& other : all) {
    if (&other != &m) beside.others.push_back(other.line);
  }
  const Colour colour = m.measure.refused ? c.theme.refused.text : c.theme.ink;
  const bool indoors = !m.measure.on_wall && c.inHouse(geometry::lerp(a, b, 0.5));
  plateLabel(sketch, c, taken, voice,
             besideLine(a, b, measureWords(m.measure, voice), colour, voice),
             indoors ? Side::inside : Side::outside, beside);
}

/// A tie as drawn: its line inside the wall, and where it comes from on the face.
struct TieRow {
  const Tie* tie;
  Point a;  ///< at the hole
  Point b;  ///< at the feature
  Point face_a;
  Point face_b;
};

/// Ties run inside along the wall, where nothing else but the room's name stands.
std::vector<TieRow> tieRows(const PlanContext& c, const MarkerPlace& m, const Ties& ties) {
  constexpr double kRow_mm = 6.5;
  constexpr double kCheckRow_mm = 12.5;
  const PageEdge& e = *m.edge;
  std::vector<TieRow> rows;
  const auto row = [&](const Tie& tie, double in_mm) {
    const double to_mm = c.mm(tie.chainage_m - e.edge->start_m);
    rows.push_back({&tie, e.at(m.along_mm, -e.thick_mm - in_mm), e.at(to_mm, -e.thick_mm - in_mm),
                    e.at(m.along_mm, 0.0), e.at(to_mm, 0.0)});
  };
  if (ties.before) row(*ties.before, kRow_mm);
  if (ties.after) row(*ties.after, kRow_mm);
  // A straight check to another wall's corner is told in words: its line would cross the drawing.
  if (ties.check && ties.check_on_wall) row(*ties.check, kCheckRow_mm);
  return rows;
}

void paintTies(Sketch& sketch, const PlanContext& c, const MarkerPlace& m, const Ties& ties,
               Taken& taken, const Voice& voice) {
  const PageEdge& e = *m.edge;
  const Font font{type::body.size_pt, true, false};
  const auto rows = tieRows(c, m, ties);
  sketch.tagged("tie");
  for (const TieRow& row : rows) {
    for (const auto& [from, end] : {std::pair{row.face_a, row.a}, std::pair{row.face_b, row.b}}) {
      sketch.line(from, end - 0.8 * e.out, dashed(c.theme.ink2, 0.8, {4.0, 3.0}));
      taken.soft.takeLine(from, end);
    }
    sketch.line(row.a, row.b, solid(c.theme.ink, 2.0));
    const Vec tick = 0.9 * unit(e.along + geometry::left(e.along));
    for (Point end : {row.a, row.b}) sketch.line(end - tick, end + tick, solid(c.theme.ink, 2.0));
  }
  // The words when all lines stand; each may cross its own line, but no other.
  for (const TieRow& row : rows) {
    Taken others = taken;
    for (const TieRow& other : rows) {
      if (other.tie != row.tie) others.soft.takeLine(other.a, other.b);
    }
    const std::string words =
        voice.say(base::Message("drawing.tie", {base::metres("length", row.tie->length_m)}));
    plateLabel(sketch, c, others, voice, inLine(row.a, row.b, {words, font}, c.theme.ink, voice),
               Side::inside);
    taken.hard = others.hard;
  }
  for (const TieRow& row : rows) taken.soft.takeLine(row.a, row.b);
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

/// All lines before any words, so that no line runs over another's words.
void paintMeasures(Sketch& sketch, const PlanContext& c, const std::vector<MeasureLine>& measures,
                   Taken& taken, const Voice& voice) {
  for (const auto& [m, line] : measures) {
    if (m.refused && !c.onPaper()) paintOutline(sketch.tagged("refuser"), c, m.thing);
    if (m.refused && !m.on_wall) paintLimit(sketch.tagged("limit"), c, m);
  }
  sketch.tagged("distance");
  for (const MeasureLine& m : measures) paintMeasure(sketch, m, c.theme);
  for (const MeasureLine& m : measures) paintMeasureWords(sketch, c, m, measures, taken, voice);
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
