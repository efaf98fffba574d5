// The distances that decide, and the ties a hole is set out by.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "drawing/MarkerParts.h"
#include "drawing/PlanContext.h"

namespace sumpwright::drawing {
namespace {

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

}  // namespace

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

}  // namespace sumpwright::drawing
