#include "drawing/ElevationDrawing.h"

#include <algorithm>

#include "drawing/Bands.h"
#include "drawing/Clip.h"
#include "drawing/ElevationParts.h"

namespace sumpwright::drawing {
namespace {

/// Letters in rings at the corners, names of the walls between them where they fit.
void cornersAndNames(Sketch& sketch, const ElevationContext& c) {
  sketch.tagged("axis");
  constexpr double kLetter_mm = 1.9;
  const double y = c.namesMiddle();
  const double cap = c.voice.capHeight_mm(type::small);
  double last = -1e9;
  const auto letter = [&](double x, const std::string& name) {
    if (x < c.view.label_mm - 0.1 || x > c.view.width_mm) return;
    if (x - last < 2.0 * kLetter_mm + 0.3) return;
    last = x;
    sketch.ring({x, y}, kLetter_mm, solid(c.theme.ink2, 1.1), c.theme.paper);
    sketch.text({x, y + cap / 2.0}, name, Font{type::small.size_pt, true, false}, c.theme.ink,
                HAlign::centre);
  };
  const auto fits = [&](const std::string& words, double left, double right) {
    return c.voice.width_mm(words, type::small) <= right - left;
  };
  const auto& perimeter = c.study.perimeter();
  for (int r = 0; r < perimeter.ringCount(); ++r) {
    for (const perimeter::Edge& e : perimeter.edges(r)) {
      letter(c.x(r, e.start_m), perimeter.cornerLetter(r, e.edge));
      const double left = std::max(c.view.label_mm, c.x(r, e.start_m) + kLetter_mm + 0.8);
      const double right = std::min(c.view.width_mm, c.x(r, e.end_m()) - kLetter_mm - 0.8);
      const base::Arg wall = base::phrase("wall", perimeter.wallLabel(e));
      const base::Arg length = base::metres("length", e.length_m);
      const std::string both = c.voice.say(base::Message("drawing.wall-length", {wall, length}));
      const std::string name = c.voice.say(base::Message("drawing.wall", {wall}));
      const std::string& words = fits(both, left, right) ? both : name;
      if (!fits(words, left, right)) continue;
      sketch.text({0.5 * (left + right), y + cap / 2.0}, words, type::small, c.theme.ink2,
                  HAlign::centre);
    }
    letter(c.x(r, perimeter.length_m(r)), perimeter.cornerLetter(r, 0));
  }
}

struct LanePiece {
  rules::State state = rules::State::clear;
  double left = 0.0, right = 0.0;
  bool starts = false, ends = false;
};

std::vector<LanePiece> lanePieces(const ElevationContext& c) {
  std::vector<LanePiece> pieces;
  for (const siting::Run& run : c.study.runs()) {
    const double length = c.study.perimeter().length_m(run.ring);
    const bool whole = run.to_m - run.from_m >= length - 1e-9;
    const bool goes_on = run.to_m > length + 1e-9;
    pieces.push_back({run.state, c.x(run.ring, run.from_m),
                      c.x(run.ring, std::min(run.to_m, length)), !whole, !whole && !goes_on});
    if (!goes_on) continue;
    pieces.push_back(
        {run.state, c.x(run.ring, 0.0), c.x(run.ring, run.to_m - length), false, true});
  }
  const double left = c.view.label_mm;
  const double right = c.view.width_mm;
  std::erase_if(pieces, [&](const LanePiece& p) { return p.right <= left || p.left >= right; });
  std::stable_sort(pieces.begin(), pieces.end(),
                   [](const LanePiece& a, const LanePiece& b) { return a.state > b.state; });
  return pieces;
}

void verdictLane(Sketch& sketch, const ElevationContext& c) {
  sketch.tagged("verdict");
  const double top = c.laneTop();
  const double height = c.laneHeight();
  const auto pieces = lanePieces(c);
  const double from = c.view.label_mm;
  const double to = c.view.width_mm;
  for (const LanePiece& p : pieces) {
    const double inset = p.state == rules::State::clear ? 0.0625 * height : 0.0;
    const double left = std::max(from, p.left);
    const double right = std::min(to, p.right);
    const auto area = rectangle(left, top + inset, right - left, height - 2.0 * inset);
    bandArea(sketch, c.theme, p.state, area, boxOf(area));
  }
  for (const LanePiece& p : pieces) {
    std::vector<BandEnd> ends;
    const double middle = top + 0.5 * height;
    if (p.starts && p.left >= from) ends.push_back({{p.left, middle}, {1.0, 0.0}});
    if (p.ends && p.right <= to) ends.push_back({{p.right, middle}, {-1.0, 0.0}});
    bandEnds(sketch, c.theme, p.state, ends, p.right - p.left);
  }
}

}  // namespace

DrawList elevationBase(const siting::Study& study, const ElevationView& view, const Voice& voice) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const ElevationContext c(study, view, voice);
  // What hangs over the left edge would stand in the column of heights: cut it there first.
  DrawList walls{view.width_mm, view.height_mm, {}};
  Sketch wall_sketch(walls);
  paintRoofs(wall_sketch, c);
  paintElevationWalls(wall_sketch, c);
  paintZone(wall_sketch, c);
  paintElevationOpenings(wall_sketch, c);
  paintGround(wall_sketch, c);
  if (view.theme != ThemeName::paper) {
    sketch.tagged("paper").fill(rectangle(0, 0, view.width_mm, view.height_mm),
                                view.strip ? c.theme.panel : c.theme.paper);
  }
  const Box room{view.label_mm, 0.0, view.width_mm, view.height_mm};
  for (Item& item : clipped(walls, room, voice).items) sketch.put(std::move(item));
  paintLevels(sketch, c);
  cornersAndNames(sketch, c);
  return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
}

DrawList elevationLane(const siting::Study& study, const ElevationView& view, const Voice& voice) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  verdictLane(sketch, ElevationContext(study, view, voice));
  return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
}

DrawList elevationMarker(const siting::Study& study, const siting::Assessment& assessment,
                         const std::string& sump, const ElevationView& view, const Voice& voice,
                         const std::vector<Box>& words) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const ElevationContext c(study, view, voice);
  verdictLane(sketch, c);
  paintOtherRuns(sketch, c, sump);
  paintRun(sketch, c, assessment, sump, words);
  paintRunNumber(sketch, c, assessment.place, sump);
  return clipped(list, {0.0, 0.0, view.width_mm, view.height_mm}, voice);
}

}  // namespace sumpwright::drawing
