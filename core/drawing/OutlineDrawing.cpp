#include "drawing/OutlineDrawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "drawing/Clip.h"
#include "drawing/ClosingLens.h"
#include "drawing/OutlineThings.h"
#include "drawing/OutlineWalls.h"
#include "drawing/PlanDrawing.h"
#include "drawing/TiedDimensions.h"
#include "geometry/Shapes.h"
#include "perimeter/Perimeter.h"
#include "plan/WallThickness.h"

namespace sumpwright::drawing {

namespace {

constexpr double kOutlineAround_mm = 18.0;  // lengths and letters outside the walls
constexpr double kOutlineDimension_mm = 6.5;
// North point and scale bar, and the top wall's length under them, words above its line.
constexpr double kOutlineTop_mm = kFurnitureHeight_mm + kOutlineDimension_mm + 4.5;
constexpr double kSameCorner_mm = 4.0;
constexpr double kNumber_mm = 2.5;       // radius of a wall's number
constexpr double kLeastWallFor_mm = 11;  // a shorter wall keeps its number, not its length

void wallBody(Sketch& sketch, const SheetContext& c, const OutlineWall& wall, bool in_hand) {
  const std::vector<Point> body{wall.from, wall.to, wall.inner_to, wall.inner_from};
  sketch.fill(body, in_hand ? c.theme.selection : wall.party ? c.theme.inner_wall : c.theme.wall);
}

void draftBody(Sketch& sketch, const SheetContext& c, const OutlineWall& wall) {
  const std::vector<Point> body{wall.from, wall.to, wall.inner_to, wall.inner_from};
  sketch.fill(body, c.theme.selection_tint);
  sketch.outline(body, dashed(c.theme.selection, 1.5, {5, 3}));
}

/// The first of these that is free, or the one that covers least.
template <class Tries, class BoxAt>
Point freest(const Occupied& taken, const Tries& tries, BoxAt boxAt) {
  Point best = tries[0];
  int least = taken.clashes(boxAt(best));
  for (const Point& p : tries) {
    const int covered = taken.clashes(boxAt(p));
    if (covered >= least) continue;
    least = covered;
    best = p;
  }
  return best;
}

void wallNumber(Sketch& sketch, const SheetContext& c, const OutlineWall& wall, std::size_t number,
                bool in_hand, const Voice& voice, Occupied& taken) {
  const auto place = [&](double part, double further) {
    return geometry::lerp(wall.inner_from, wall.inner_to, part) -
           (kNumber_mm + 2.2 + further) * wall.out;
  };
  // Past its ends last: in a porch three walls share little room.
  const std::array tries{place(0.5, 0),  place(0.35, 0),  place(0.65, 0),
                         place(0.5, 5),  place(0.2, 0),   place(0.8, 0),
                         place(0.5, 10), place(-0.25, 0), place(1.25, 0)};
  const auto box = [](Point p) { return around(p, kNumber_mm, kNumber_mm); };
  const Point at = freest(taken, tries, box);
  taken.take(box(at));
  const Colour& ink = in_hand ? c.theme.selection : c.theme.ink2;
  sketch.ring(at, kNumber_mm, solid(ink, 1.2), in_hand ? c.theme.selection : c.theme.paper);
  sketch.text({at.x, at.y + voice.capHeight_mm(type::small) / 2.0}, std::to_string(number),
              type::small, in_hand ? c.theme.paper : c.theme.ink, HAlign::centre);
}

/// Turned so that it reads from below or from the right.
double readableTurn(Vec along) {
  double turn = std::atan2(-along.y, along.x) * 180.0 / std::numbers::pi;
  if (turn > 90.0 - 1e-6) turn -= 180.0;
  if (turn < -90.0 - 1e-6) turn += 180.0;
  return turn;
}

/// The words give way where others stand: the field book has all lengths.
void lengthWords(Sketch& sketch, const SheetContext& c, const OutlineWall& wall, Point a, Point b,
                 const Voice& voice, Occupied& taken) {
  const double turn = readableTurn(wall.along);
  const double angle = turn * std::numbers::pi / 180.0;
  const Vec up{-std::sin(angle), -std::cos(angle)};
  const std::string words =
      voice.say(base::Message("drawing.outline.length", {base::metres("length", wall.length_m)}));
  for (const double part : {0.5, 0.35, 0.65}) {
    const Text text{geometry::lerp(a, b, part) + 1.1 * up,
                    words,
                    type::strong,
                    c.theme.ink,
                    HAlign::centre,
                    turn};
    const Box box = boxOf(text, voice);
    if (!taken.isFree(box)) continue;
    taken.take(box);
    return sketch.text(text.at, text.text, text.font, text.colour, text.align, text.turn_deg);
  }
}

void wallLength(Sketch& sketch, const SheetContext& c, const OutlineWall& wall, const Voice& voice,
                Occupied& taken) {
  if (geometry::distance(wall.from, wall.to) < kLeastWallFor_mm) return;
  const Point a = wall.from + kOutlineDimension_mm * wall.out;
  const Point b = wall.to + kOutlineDimension_mm * wall.out;
  const Pen thin = solid(c.theme.ink2, 1.0);
  sketch.line(a, b, thin);
  const Vec tick = 0.9 * unit(wall.along + geometry::left(wall.along));
  for (Point end : {a, b}) sketch.line(end - tick, end + tick, solid(c.theme.ink, 1.3));
  for (Point end : {wall.from, wall.to}) {
    sketch.line(end + 1.5 * wall.out, end + (kOutlineDimension_mm + 1.0) * wall.out, thin);
  }
  lengthWords(sketch, c, wall, a, b, voice, taken);
}

void cornerLetters(Sketch& sketch, const SheetContext& c, const plan::Ring& ring,
                   const std::vector<OutlineWall>& walls, std::size_t first, const Voice& voice,
                   Occupied& taken) {
  const double down = voice.capHeight_mm(type::letter) / 2.0;
  for (std::size_t i = 0; i < ring.corners.size(); ++i) {
    if (walls.empty()) break;
    const bool has_before = i > 0 || ring.closed;
    const bool has_after = i < walls.size();
    const OutlineWall& before = walls[(i + walls.size() - 1) % walls.size()];
    const OutlineWall& after = walls[std::min(i, walls.size() - 1)];
    Vec out{};
    if (has_before) out = out + before.out;
    if (has_after) out = out + after.out;
    // At the ends of an open outline the letter stands off the end of the wall.
    if (!has_before) out = out - after.along;
    if (!has_after) out = out + before.along;
    const Vec away = unit(out);
    const Vec aside = geometry::left(away);
    // The end of the tape at the start is the same corner.
    const bool home =
        !ring.closed && i > 1 && i + 1 == ring.corners.size() &&
        geometry::distance(c.at(ring.corners[i]), c.at(ring.corners[0])) < kSameCorner_mm;
    if (home) continue;
    const std::string letter = perimeter::letterOfCorner(first + i);
    const auto place = [&](double further, double to_side) {
      return c.at(ring.corners[i]) + further * away + to_side * aside;
    };
    const std::array tries{place(5.2, 0),   place(5.2, 2.5),  place(5.2, -2.5), place(8.0, 0),
                           place(8.0, 4.0), place(8.0, -4.0), place(3.6, 3.6),  place(3.6, -3.6)};
    const auto box = [&](Point p) {
      return grown(
          boxOf(Text{{p.x, p.y + down}, letter, type::letter, c.theme.ink3, HAlign::centre, 0.0},
                voice),
          0.3);
    };
    const Point at = freest(taken, tries, box);
    taken.take(box(at));
    sketch.text({at.x, at.y + down}, letter, type::letter, c.theme.ink3, HAlign::centre);
  }
}

void openingGap(Sketch& sketch, const SheetContext& c, const plan::Opening& o,
                const OutlineWall& wall) {
  const double length = geometry::distance(wall.from, wall.to);
  const double from = std::clamp(c.mm(o.at.offset_m), 0.0, length);
  const double to = std::clamp(c.mm(o.at.offset_m + o.width_m), 0.0, length);
  const Vec in = -geometry::dot(wall.from - wall.inner_from, wall.out) * wall.out;
  const Point a = wall.from + from * wall.along;
  const Point b = wall.from + to * wall.along;
  sketch.fill({a, b, b + in, a + in}, c.theme.paper);
  const Pen pen = solid(c.theme.wall_edge, 1.2);
  sketch.outline({a, b, b + in, a + in}, pen);
  if (o.kind == plan::OpeningKind::window) sketch.line(a + 0.5 * in, b + 0.5 * in, pen);
}

void floorArea(Sketch& sketch, const SheetContext& c, const plan::Ring& ring, const Voice& voice) {
  if (ring.corners.size() < 3) return;
  const double area = std::abs(geometry::signedArea(ring.corners));
  if (area < 1.0) return;
  const Box box = boxOf(c.at(ring.corners));
  if (box.width() < 50.0 || box.height() < 30.0) return;
  const Point middle = box.centre();
  sketch.text(
      middle,
      voice.say(base::Message("drawing.area",
                              {base::Arg{"area", base::Quantity{area, base::Unit::squareMetre}}})),
      {14.0, true, false}, c.theme.ink2, HAlign::centre);
  sketch.text({middle.x, middle.y + 5.0}, voice.say(base::Message("drawing.outline.area-note")),
              type::second, c.theme.ink2, HAlign::centre);
}

/// One ring with what stands on it; `first` corners came before its own.
void paintRing(Sketch& sketch, const SheetContext& c, const plan::Job& job,
               const OutlineMarks& marks, std::size_t r, std::size_t first, const Voice& voice,
               Occupied& taken) {
  const plan::Ring& ring = job.plan.rings[r];
  const bool in_hand = marks.ring == static_cast<int>(r);
  const auto walls = outlineWalls(job, ring, r == 0, c);
  if (r == 0 && !ring.closed) floorArea(sketch.tagged("area"), c, ring, voice);
  for (std::size_t i = 0; i < walls.size(); ++i) {
    const bool chosen = in_hand && marks.wall == static_cast<int>(i);
    sketch.tagged(i < ring.walls.size() ? ring.walls[i].id : "wall");
    wallBody(sketch, c, walls[i], chosen);
    wallLength(sketch, c, walls[i], voice, taken);
  }
  for (const plan::Opening& o : job.plan.openings) {
    if (o.at.ring != static_cast<int>(r) || o.at.edge < 0) continue;
    const auto edge = static_cast<std::size_t>(o.at.edge);
    if (edge < walls.size()) openingGap(sketch.tagged(o.id), c, o, walls[edge]);
  }
  cornerLetters(sketch.tagged("corners"), c, ring, walls, first, voice, taken);
  for (std::size_t i = 0; i < walls.size(); ++i) {
    const bool chosen = in_hand && marks.wall == static_cast<int>(i);
    sketch.tagged(i < ring.walls.size() ? ring.walls[i].id : "wall");
    wallNumber(sketch, c, walls[i], i + 1, chosen, voice, taken);
  }
  if (!in_hand || ring.corners.empty()) return;
  sketch.tagged("start").ring(c.at(ring.corners.front()), 2.3, solid(c.theme.selection, 2.0),
                              c.theme.paper);
  if (!marks.gap || ring.closed) return;
  closingGap(sketch.tagged("gap"), c, ring, perimeter::letterOfCorner(first), voice);
}

void paintDraft(Sketch& sketch, const SheetContext& c, const plan::Job& job,
                const OutlineMarks& marks, const Voice& voice, Occupied& taken) {
  const auto ring = static_cast<std::size_t>(marks.ring);
  const bool begun = marks.ring >= 0 && ring < job.plan.rings.size();
  const bool left = !begun || houseOnLeft(job.plan.rings[ring], marks.ring == 0);
  const OutlineWall wall = outlineWall(*marks.draft, plan::usualThickness_m(job.house), left, c);
  sketch.tagged("draft");
  draftBody(sketch, c, wall);
  wallLength(sketch, c, wall, voice, taken);
}

}  // namespace

PlanView fittedToOutline(const plan::Plan& plan, const std::optional<geometry::Segment>& draft,
                         double width_mm, double height_mm, ThemeName theme) {
  std::vector<Point> seen;
  for (const plan::Ring& ring : plan.rings) {
    seen.insert(seen.end(), ring.corners.begin(), ring.corners.end());
  }
  if (draft) seen.insert(seen.end(), {draft->a, draft->b});
  // Before the first wall: room for a house that begins at the origin and goes right and up.
  if (seen.empty()) seen = {{-0.5, -0.5}, {16.5, 9.5}};
  Box box = boxOf(seen);
  // A first wall alone should not fill the window.
  if (seen.size() <= 3) box = join(box, {box.left, box.top, box.left + 12.0, box.top + 7.0});
  PlanView view;
  view.width_mm = width_mm;
  view.height_mm = height_mm;
  view.theme = theme;
  view.mm_per_m = std::min(
      std::max(10.0, width_mm - 2.0 * kOutlineAround_mm) / std::max(box.width(), 2.0),
      std::max(10.0, height_mm - kOutlineTop_mm - kOutlineAround_mm) / std::max(box.height(), 2.0));
  view.centre_m = box.centre();
  view.centre_m.y += (kOutlineTop_mm - kOutlineAround_mm) / 2.0 / view.mm_per_m;
  return view;
}

DrawList outlineDrawing(const plan::Job& job, const OutlineMarks& marks, const PlanView& view,
                        const Voice& voice) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const SheetContext c(view, job.plan.north_deg);
  sketch.tagged("paper").fill(rectangle(0, 0, view.width_mm, view.height_mm), c.theme.paper);
  paintGrid(sketch, c);
  paintOutlineInside(sketch, c, job.plan);
  Occupied taken;  // words: none over others
  if (view.furniture) taken.take({0.0, 0.0, kFurnitureWidth_mm, kFurnitureHeight_mm});
  // What is being typed has the first choice of a place for its words, and lies on top.
  DrawList draft{view.width_mm, view.height_mm, {}};
  Sketch on_top(draft);
  if (marks.draft) paintDraft(on_top, c, job, marks, voice, taken);
  std::size_t corners = 0;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    paintRing(sketch, c, job, marks, r, corners, voice, taken);
    corners += job.plan.rings[r].corners.size();
  }
  paintOutlineThings(sketch, c, job);
  paintTiedDimensions(sketch, c, tiedDimensions(c, job, voice));
  for (Item& item : draft.items) sketch.put(std::move(item));
  if (!view.selected.empty()) {
    paintOutlineSelected(sketch.tagged("selected"), c, job, view.selected);
  }
  paintFurniture(sketch, c, voice);
  return clipped(list, c.page, voice);
}

}  // namespace sumpwright::drawing
