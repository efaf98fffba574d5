#include "drawing/TapeDrawing.h"

#include <algorithm>
#include <cmath>

#include "drawing/Bands.h"
#include "drawing/Clip.h"
#include "drawing/Signs.h"
#include "drawing/TapeParts.h"

namespace sumpwright::drawing {
namespace {

constexpr double kSample_mm = 0.6;  // between points of the score curve

double scoreY(const TapeContext& c, double score) {
  const double share = std::clamp(score, 0.0, 100.0) / 100.0;
  return c.at.scoreBottom() - share * (c.at.scoreBottom() - c.at.scoreTop());
}

/// The curve over one stretch of one state, as points.
std::vector<Point> curve(const TapeContext& c, int ring, double from, double to) {
  const double mm = (to - from) * c.at.mmPerM();
  const int steps = std::max(1, static_cast<int>(std::ceil(mm / kSample_mm)));
  std::vector<Point> out;
  for (int i = 0; i <= steps; ++i) {
    // A hair inside: the ends may belong to the neighbour.
    const double t = std::clamp(static_cast<double>(i) / steps, 1e-6, 1.0 - 1e-6);
    const double s = from + t * (to - from);
    out.push_back({c.at.xOf(ring, s), scoreY(c, c.study.scoreAt({ring, s}))});
  }
  return out;
}

void scoreStretch(Sketch& sketch, const TapeContext& c, const siting::Stretch& s) {
  const auto points = curve(c, s.ring, s.from_m, s.to_m);
  if (!walkable(s.state)) {
    sketch.path(points, dashed(c.theme.stale_line, 1.2, {1.2, 2.6}));
    return;
  }
  std::vector<Point> area = points;
  area.push_back({points.back().x, c.at.scoreBottom()});
  area.push_back({points.front().x, c.at.scoreBottom()});
  sketch.fill(area, c.theme.of(s.state).tint);
  sketch.path(points, solid(c.theme.of(s.state).band, 2.4));
}

void scorePeg(Sketch& sketch, const TapeContext& c) {
  if (c.study.best().empty()) return;
  const siting::BestPlace& best = c.study.best().front();
  const Point p{c.at.x(best.place), scoreY(c, best.score)};
  const std::string words =
      c.voice.say(base::Message("drawing.score", {base::number("score", std::floor(best.score))}));
  const Font font{type::second.size_pt, true, false};
  const double cap = c.voice.capHeight_mm(font);
  const Colour colour = c.theme.of(c.study.stateAt(best.place)).text;
  sketch.line({p.x, p.y + 0.2}, {p.x, p.y - 1.2}, solid(colour, 1.6));
  const double width = c.voice.width_mm(words, font);
  const double y = std::max(p.y - 0.4, cap + 0.2);
  const bool fits_left = p.x - 0.8 - width > c.view.label_mm;
  sketch.text({fits_left ? p.x - 0.8 : p.x + 0.8, y}, words, font, colour,
              fits_left ? HAlign::right : HAlign::left);
}

}  // namespace

bool walkable(rules::State state) {
  return state == rules::State::clear || state == rules::State::advised_against;
}

void laneTitle(Sketch& sketch, const TapeContext& c, const std::string& words, double middle_y,
               const Font& font, const Colour& colour) {
  sketch.text({0.5, middle_y + c.voice.capHeight_mm(font) / 2.0}, words, font, colour);
}

std::string shortened(const Voice& voice, const std::string& text, const Font& font,
                      double width_mm) {
  if (voice.width_mm(text, font) <= width_mm) return text;
  std::string kept = text;
  while (!kept.empty()) {
    // One whole UTF-8 letter at a time.
    while (!kept.empty() && (static_cast<unsigned char>(kept.back()) & 0xC0U) == 0x80U)
      kept.pop_back();
    if (!kept.empty()) kept.pop_back();
    while (!kept.empty() && kept.back() == ' ') kept.pop_back();
    std::string tried = kept + "\u2026";
    if (!kept.empty() && voice.width_mm(tried, font) <= width_mm) return tried;
  }
  return {};
}

void paintScore(Sketch& sketch, const TapeContext& c) {
  if (!c.view.lanes) return;
  sketch.tagged("score");
  const Font small = type::small;
  laneTitle(sketch, c, c.voice.say(base::Message("drawing.lane.score")), c.at.scoreTop() + 1.2,
            type::strong, c.theme.ink);
  for (double mark : {0.0, 50.0, 100.0}) {
    const double y = scoreY(c, mark);
    sketch.text({c.view.label_mm - 1.6, y + c.voice.capHeight_mm(small) / 2.0},
                c.voice.say(base::Message("drawing.score", {base::number("score", mark)})), small,
                c.theme.ink2, HAlign::right);
    for (int r = 0; r < c.study.perimeter().ringCount(); ++r) {
      sketch.line({c.at.left(r), y}, {c.at.right(r), y}, solid(c.theme.hairline, 1.0));
    }
  }
  for (const auto& ring : c.study.stretches()) {
    for (const siting::Stretch& s : ring) scoreStretch(sketch, c, s);
  }
  scorePeg(sketch, c);
}

void paintVerdictLane(Sketch& sketch, const TapeContext& c) {
  sketch.tagged("verdict");
  const double top = c.at.verdictTop();
  const double height = c.at.verdictHeight();
  const double middle = top + height / 2.0;
  if (c.view.lanes) {
    laneTitle(sketch, c, c.voice.say(base::Message("drawing.lane.verdict")), middle, type::strong,
              c.theme.ink);
  }
  struct Piece {
    rules::State state;
    double left, right;
    bool starts, ends;
  };
  std::vector<Piece> pieces;
  for (const siting::Run& run : c.study.runs()) {
    const double length = c.study.perimeter().length_m(run.ring);
    const bool whole = run.to_m - run.from_m >= length - 1e-9;
    const double cut = std::min(run.to_m, length);
    const bool goes_on = run.to_m > length + 1e-9;
    pieces.push_back({run.state, c.at.xOf(run.ring, run.from_m), c.at.xOf(run.ring, cut), !whole,
                      !whole && !goes_on});
    if (goes_on) {
      pieces.push_back(
          {run.state, c.at.left(run.ring), c.at.xOf(run.ring, run.to_m - length), false, true});
    }
  }
  std::stable_sort(pieces.begin(), pieces.end(),
                   [](const Piece& a, const Piece& b) { return a.state > b.state; });
  for (const Piece& p : pieces) {
    const double inset = p.state == rules::State::clear ? 0.125 * height / 2.0 : 0.0;
    const auto area = rectangle(p.left, top + inset, p.right - p.left, height - 2.0 * inset);
    bandArea(sketch, c.theme, p.state, area, boxOf(area));
  }
  for (const Piece& p : pieces) {
    std::vector<BandEnd> ends;
    if (p.starts) ends.push_back({{p.left, middle}, {1.0, 0.0}});
    if (p.ends) ends.push_back({{p.right, middle}, {-1.0, 0.0}});
    bandEnds(sketch, c.theme, p.state, ends, p.right - p.left);
  }
}

double tapeX(const siting::Study& study, const TapeView& view, perimeter::Place place) {
  return TapeLayout(study, view).x(place);
}

perimeter::Place tapePlace(const siting::Study& study, const TapeView& view, double x_mm) {
  return TapeLayout(study, view).place(x_mm);
}

double tapeFullHeight_mm(const siting::Study& study, const TapeView& view) {
  return TapeLayout(study, view).fullHeight();
}

std::string tapeRuleAt(const siting::Study& study, const TapeView& view, double y_mm) {
  const TapeLayout at(study, view);
  const auto lane = at.laneAt(y_mm);
  return lane ? at.lanes()[*lane].rule : std::string();
}

DrawList tapeBase(const siting::Study& study, const TapeView& view, const Voice& voice) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const TapeContext c(study, view, voice);
  if (view.theme != ThemeName::paper) {
    sketch.tagged("paper").fill(rectangle(0, 0, view.width_mm, view.height_mm), c.theme.panel);
  }
  paintScore(sketch, c);
  paintLanes(sketch, c);
  paintVerdictLane(sketch, c);
  paintAxis(sketch, c);
  return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
}

}  // namespace sumpwright::drawing
