// Ground, roofs, walls and levels of the unrolled elevation.

#include <algorithm>
#include <cmath>

#include "build/Levels.h"
#include "drawing/ElevationParts.h"
#include "drawing/Hatch.h"

namespace sumpwright::drawing {
namespace {

template <class Use>
void eachSeenEdge(const ElevationContext& c, Use&& use) {
  for (int r = 0; r < c.study.perimeter().ringCount(); ++r) {
    for (const perimeter::Edge& e : c.study.perimeter().edges(r)) {
      if (c.sees(e)) use(e);
    }
  }
}

/// The line of the ground along an edge, left to right.
std::vector<Point> groundLine(const ElevationContext& c, const perimeter::Edge& e) {
  const build::GroundLine ground = build::groundAlong(c.study.site(), e);
  std::vector<double> at{0.0};
  for (const auto& p : ground.points) {
    if (p.along_m > 0.0 && p.along_m < e.length_m) at.push_back(p.along_m);
  }
  at.push_back(e.length_m);
  std::vector<Point> line;
  for (const double along : at) {
    line.push_back({c.x(e.ring, e.start_m + along), c.y(ground.at(along))});
  }
  return line;
}

bool isParty(const ElevationContext& c, const perimeter::Edge& e) {
  return c.study.perimeter().wall(e).kind == plan::WallKind::party;
}

/// Short strokes under the ground's line, in pairs.
void soilStrokes(Sketch& sketch, const ElevationContext& c, const std::vector<Point>& line) {
  constexpr double kEvery_mm = 7.0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point a = line[i - 1];
    const Point b = line[i];
    const double first = std::ceil(a.x / kEvery_mm) * kEvery_mm;
    for (double x = first; x + 2.6 < b.x; x += kEvery_mm) {
      const double y = geometry::lerp(a, b, (x - a.x) / (b.x - a.x)).y;
      for (const double shift : {1.2, 2.4}) {
        sketch.line({x + shift, y + 0.4}, {x + shift - 1.0, y + 1.7},
                    solid(c.theme.soil_lines, 1.0));
      }
    }
  }
}

std::string said(const ElevationContext& c, const char* id, double height_m) {
  return c.voice.say(base::Message(id, {base::metres("height", height_m)}));
}

double levelsFrom(const ElevationContext& c) { return std::max(c.room().left, c.xOf(0.0)); }

/// A level over the whole picture with its words at the left.
void level(Sketch& sketch, const ElevationContext& c, const LevelMark& mark) {
  const double right = std::min(c.room().right, c.xOf(unrolledLength_m(c.study)));
  const double y = c.y(mark.height_m);
  if (right <= levelsFrom(c)) return;
  sketch.line({levelsFrom(c), y}, {right, y}, mark.pen);
  const Box box = boxOfWords(c, mark);
  sketch.fill(rectangle(box.left, box.top, box.width(), box.height()),
              mark.above ? c.theme.room_dwelling : c.theme.soil);
  sketch.text({box.left + 0.6, box.bottom - 0.5}, mark.words, type::small, c.theme.ink2);
}

}  // namespace

void paintGround(Sketch& sketch, const ElevationContext& c) {
  sketch.tagged("ground");
  eachSeenEdge(c, [&](const perimeter::Edge& e) {
    const std::vector<Point> line = groundLine(c, e);
    std::vector<Point> soil = line;
    soil.push_back({line.back().x, c.y(c.bottom_m)});
    soil.push_back({line.front().x, c.y(c.bottom_m)});
    sketch.fill(soil, c.theme.soil);
    if (!c.view.strip) soilStrokes(sketch, c, line);
    sketch.path(line, solid(c.theme.ink, c.view.strip ? 1.1 : 2.0));
  });
}

void paintRoofs(Sketch& sketch, const ElevationContext& c) {
  sketch.tagged("roof");
  eachSeenEdge(c, [&](const perimeter::Edge& e) {
    const WallProfile& p = c.profile(e);
    const double left = c.x(e.ring, e.start_m);
    const double right = c.x(e.ring, e.end_m());
    if (p.gable) return;  // drawn with the wall: it is wall
    const double top = c.y(p.eaves_m + p.roof_m);
    const double eaves = c.y(p.eaves_m);
    const auto area = rectangle(left, top, right - left, eaves - top);
    sketch.fill(area, c.theme.roof);
    if (!c.view.strip) {
      for (const auto& line : hatch({area}, {0.0, 3.0})) {
        sketch.line(line.a, line.b, solid(c.theme.hairline, 1.0));
      }
    }
    sketch.path({{left, eaves}, {left, top}, {right, top}, {right, eaves}},
                solid(c.theme.rule, c.view.strip ? 0.8 : 1.1));
  });
}

void paintElevationWalls(Sketch& sketch, const ElevationContext& c) {
  eachSeenEdge(c, [&](const perimeter::Edge& e) {
    sketch.tagged(c.study.perimeter().wall(e).id);
    const WallProfile& p = c.profile(e);
    const double left = c.x(e.ring, e.start_m);
    const double right = c.x(e.ring, e.end_m());
    std::vector<Point> area = groundLine(c, e);
    area.push_back({right, c.y(p.eaves_m)});
    if (p.gable) area.push_back({0.5 * (left + right), c.y(p.eaves_m + p.roof_m)});
    area.push_back({left, c.y(p.eaves_m)});
    sketch.fill(area, c.view.theme == ThemeName::paper ? c.theme.paper : c.theme.room_dwelling);
    if (isParty(c, e)) {
      for (const auto& line : hatch({area}, {45.0, 3.0})) {
        sketch.line(line.a, line.b, solid(c.theme.hairline, 1.2));
      }
    }
    sketch.outline(area, solid(c.theme.wall_edge, c.view.strip ? 1.1 : 1.3));
  });
  if (c.view.strip) return;
  sketch.tagged("eaves");
  eachSeenEdge(c, [&](const perimeter::Edge& e) {
    const WallProfile& p = c.profile(e);
    if (p.gable) return;
    const Point a{c.x(e.ring, e.start_m), c.y(p.eaves_m)};
    const Point b{c.x(e.ring, e.end_m()), c.y(p.eaves_m)};
    sketch.line(a, b,
                p.eaves_assumed ? dashed(c.theme.wall, 2.4, {6.0, 4.0}) : solid(c.theme.wall, 4.5));
  });
}

std::vector<LevelMark> levelMarks(const ElevationContext& c) {
  const plan::House& house = c.study.job().house;
  const double dpc = house.dpc_height_m.value_or(0.0);
  const Pen dash = dashed(c.theme.ink2, 1.0, {7.0, 4.0});
  std::vector<LevelMark> marks;
  const auto add = [&](const char* id, double height_m, const Pen& pen, bool above) {
    const double y = c.y(height_m);
    if (y > c.room().bottom || y < c.room().top) return;
    marks.push_back({height_m, said(c, id, height_m), above, pen});
  };
  if (std::abs(dpc) < 0.005) {
    add("drawing.elevation.floor-dpc", 0.0, dash, true);
  } else {
    add("drawing.elevation.floor", 0.0, dash, dpc < 0.0);
    add("drawing.elevation.dpc", dpc, dash, dpc > 0.0);
  }
  if (house.footing_top_high_m) {
    add("drawing.elevation.footing", *house.footing_top_high_m,
        dashed(c.theme.ink2, 1.0, {2.5, 2.5}), false);
  }
  return marks;
}

Box boxOfWords(const ElevationContext& c, const LevelMark& mark) {
  const double cap = c.voice.capHeight_mm(type::small);
  const double y = c.y(mark.height_m);
  const double base = mark.above ? y - 0.9 : y + 0.9 + cap;
  const double left = levelsFrom(c) + 0.9;
  return {left, base - cap - 0.5, left + c.voice.width_mm(mark.words, type::small) + 1.2,
          base + 0.5};
}

void paintLevels(Sketch& sketch, const ElevationContext& c) {
  if (c.view.strip) return;
  sketch.tagged("level");
  for (const LevelMark& mark : levelMarks(c)) level(sketch, c, mark);
  const Box room = c.room();
  sketch.tagged("axis");
  const double axis = c.view.label_mm - 1.5;
  if (c.view.label_mm < 6.0) return;
  sketch.line({axis, room.top}, {axis, room.bottom}, solid(c.theme.ink2, 1.1));
  const double cap = c.voice.capHeight_mm(type::small);
  const double unit_m = c.voice.markedIn_m();
  double step = 1.0;
  for (const double next : {2.0, 5.0, 10.0}) {
    if (c.mm(step * unit_m) < 5.0) step = next;
  }
  for (double z = step * std::ceil(c.bottom_m / unit_m / step); z * unit_m <= c.view.top_m + 1e-9;
       z += step) {
    const double y = c.y(z * unit_m);
    if (y < room.top - 1e-9) break;
    sketch.line({axis - 1.0, y}, {axis, y}, solid(c.theme.ink2, 1.0));
    sketch.text({axis - 1.6, y + cap / 2.0},
                c.voice.say(base::Message(
                    c.voice.inFeet() ? "drawing.elevation.tick-feet" : "drawing.elevation.tick",
                    {base::number("height", z)})),
                type::small, c.theme.ink2, HAlign::right);
  }
}

}  // namespace sumpwright::drawing
