// The curve of reach along the wall, for the stage Suction.

#include <algorithm>
#include <cmath>

#include "drawing/Clip.h"
#include "drawing/TapeParts.h"

namespace sumpwright::drawing {
namespace {

constexpr double kHair_m = 1e-5;  // inside a stretch, whose ends may belong to the neighbour

/// The curve's own scale, percent.
struct ReachScale {
  double low = 0.0;
  std::vector<double> marks;
  double y(const TapeContext& c, double percent) const {
    const double share = std::clamp((percent - low) / (100.0 - low), 0.0, 1.0);
    return c.at.scoreBottom() - share * (c.at.scoreBottom() - c.at.scoreTop());
  }
};

ReachScale scaleOf(const siting::ReachAlong& reach) {
  double least = 100.0;
  for (const siting::ReachPlace& p : reach.places()) {
    if (p.read.on_floor) least = std::min(least, 100.0 * p.read.floor);
  }
  ReachScale scale;
  scale.low = std::min(50.0, 25.0 * std::floor(least / 25.0));
  const double step = scale.low < 25.0 ? 50.0 : 25.0;
  for (double mark = step * std::ceil(scale.low / step); mark <= 100.0; mark += step) {
    scale.marks.push_back(mark);
  }
  return scale;
}

using Curve = std::vector<Point>;

/// The curve over a stretch, in pieces: broken where there is no floor behind the wall.
std::vector<Curve> piecesOf(const TapeContext& c, const siting::ReachAlong& reach,
                            const ReachScale& scale, const siting::Stretch& stretch) {
  std::vector<Curve> pieces(1);
  const auto add = [&](double s, const siting::ReachRead& read) {
    if (read.on_floor) {
      pieces.back().push_back({c.at.xOf(stretch.ring, s), scale.y(c, 100.0 * read.floor)});
    } else if (!pieces.back().empty()) {
      pieces.emplace_back();
    }
  };
  const double from = std::min(stretch.from_m + kHair_m, stretch.to_m);
  const double to = std::max(stretch.to_m - kHair_m, from);
  add(from, reach.at({stretch.ring, from}));
  for (const siting::ReachPlace& p : reach.places()) {
    const bool inside =
        p.place.ring == stretch.ring && p.place.chainage_m > from && p.place.chainage_m < to;
    if (inside) add(p.place.chainage_m, p.read);
  }
  add(to, reach.at({stretch.ring, to}));
  std::erase_if(pieces, [](const Curve& piece) { return piece.size() < 2; });
  return pieces;
}

void paintPiece(Sketch& sketch, const TapeContext& c, rules::State state, const Curve& piece) {
  if (!walkable(state)) {
    sketch.path(piece, dashed(c.theme.stale_line, 1.2, {1.2, 2.6}));
    return;
  }
  Curve area = piece;
  area.push_back({piece.back().x, c.at.scoreBottom()});
  area.push_back({piece.front().x, c.at.scoreBottom()});
  sketch.fill(area, c.theme.of(state).tint);
  sketch.path(piece, solid(c.theme.of(state).band, 2.6));
}

/// Refused wall first, so that a bold piece is never crossed by dots.
void paintCurve(Sketch& sketch, const TapeContext& c, const siting::ReachAlong& reach,
                const ReachScale& scale) {
  for (const bool bold : {false, true}) {
    for (const auto& ring : c.study.stretches()) {
      for (const siting::Stretch& stretch : ring) {
        if (walkable(stretch.state) != bold) continue;
        for (const Curve& piece : piecesOf(c, reach, scale, stretch)) {
          paintPiece(sketch, c, stretch.state, piece);
        }
      }
    }
  }
}

void paintScale(Sketch& sketch, const TapeContext& c, const ReachScale& scale) {
  for (const double mark : scale.marks) {
    const double y = scale.y(c, mark);
    sketch.text({c.view.label_mm - 1.6, y + c.voice.capHeight_mm(type::small) / 2.0},
                c.voice.say(base::Message("drawing.score", {base::number("score", mark)})),
                type::small, c.theme.ink2, HAlign::right);
    for (int r = 0; r < c.study.perimeter().ringCount(); ++r) {
      sketch.line({c.at.left(r), y}, {c.at.right(r), y}, solid(c.theme.hairline, 1.0));
    }
  }
}

/// Why there is no curve, in the middle of where it would be.
void paintAbsence(Sketch& sketch, const TapeContext& c, const siting::ReachAlong* reach,
                  const base::Message& absence) {
  base::Message why(reach == nullptr ? "drawing.reach.not-yet" : "drawing.reach.not-layered");
  if (reach == nullptr && !absence.id.empty()) why = absence;
  const double left = c.at.left(0);
  const double right = c.at.right(c.study.perimeter().ringCount() - 1);
  const std::string words = shortened(c.voice, c.voice.say(why), type::body, right - left);
  const double middle = 0.5 * (c.at.scoreTop() + c.at.scoreBottom());
  sketch.text({0.5 * (left + right), middle + c.voice.capHeight_mm(type::body) / 2.0}, words,
              type::body, c.theme.ink2, HAlign::centre);
}

void paintTitle(Sketch& sketch, const TapeContext& c, const siting::ReachAlong* reach) {
  const double top = c.at.scoreTop() + 1.0;
  laneTitle(sketch, c, c.voice.say(base::Message("drawing.lane.reach")), top, type::strong,
            c.theme.ink);
  if (reach == nullptr) return;
  const base::Arg target =
      base::pressure("target", base::Pressure::ofPa(reach->summary().target.design_pa));
  laneTitle(sketch, c, c.voice.say(base::Message("drawing.lane.reach-at", {target})), top + 4.0,
            type::small, c.theme.ink2);
  laneTitle(sketch, c, c.voice.say(base::Message("drawing.lane.predicted")), top + 7.6,
            Font{type::small.size_pt, false, true}, c.theme.ink2);
  if (c.study.job().design.sumps.size() < 2 || !reach->computed()) return;
  laneTitle(sketch, c,
            c.voice.say(base::Message(reach->others().empty() ? "drawing.lane.reach-alone"
                                                              : "drawing.lane.reach-beside")),
            top + 11.2, type::small, c.theme.ink2);
}

}  // namespace

void paintReach(Sketch& sketch, const TapeContext& c, const siting::ReachAlong* reach,
                const base::Message& absence) {
  sketch.tagged("reach");
  paintTitle(sketch, c, reach);
  if (reach == nullptr || !reach->computed()) return paintAbsence(sketch, c, reach, absence);
  const ReachScale scale = scaleOf(*reach);
  paintScale(sketch, c, scale);
  paintCurve(sketch, c, *reach, scale);
}

DrawList tapeReach(const siting::Study& study, const siting::ReachAlong* reach,
                   const TapeView& view, const Voice& voice, const base::Message& absence) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  TapeView wanted = view;
  wanted.reach = true;
  const TapeContext c(study, wanted, voice);
  if (view.theme != ThemeName::paper) {
    sketch.tagged("paper").fill(rectangle(0, 0, view.width_mm, view.height_mm), c.theme.panel);
  }
  const bool fits = reach != nullptr && reach->fits(study.perimeter());
  paintReach(sketch, c, fits ? reach : nullptr, absence);
  paintVerdictLane(sketch, c);
  paintAxis(sketch, c);
  return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
}

}  // namespace sumpwright::drawing
