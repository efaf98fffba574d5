#include "drawing/CableDrawing.h"

#include <algorithm>
#include <cmath>

#include "drawing/Clip.h"
#include "drawing/ElevationPlates.h"
#include "drawing/PlanContext.h"

namespace sumpwright::drawing {
namespace {

using build::CablePart;
using build::CablePartKind;

constexpr double kCable_px = 2.4;
constexpr double kAround_m = 1.0;       // of the plan about a route
constexpr double kPipe_mm = 1.6;        // half of what a riser takes up
constexpr double kBesidePipe_mm = 1.6;  // where the cable goes down
constexpr double kUnderFan_mm = 2.9;    // half of a fan

Pen cablePen(const Theme& theme) { return solid(theme.electricity, kCable_px); }

/// The cable outside as drawn on the folded walls, from its fan on.
class OutsideWay {
 public:
  OutsideWay(Sketch& sketch, const ElevationContext& c, const build::CableRoute& route,
             const ElevationSpot& fan)
      : m_sketch(sketch),
        m_c(c),
        m_route(route),
        m_fan(fan),
        m_fan_x(c.x(fan.place.ring, fan.place.chainage_m)) {}

  void paint(ElevationPlates& plates) {
    bool outdoors = m_route.parts.empty() || m_route.parts.front().kind != CablePartKind::roof;
    m_height_m = m_fan.height_m;
    plates.take({m_fan_x - kPipe_mm, m_c.y(m_fan.height_m), m_fan_x + kPipe_mm, m_c.laneTop()});
    const auto sleeves = build::cableSleeves(m_c.study.site(), m_route);
    std::size_t sleeve = 0;
    for (const CablePart& part : m_route.parts) {
      if (part.kind == CablePartKind::sleeve) {
        ring({sleeves[sleeve].place, sleeves[sleeve].height_m}, sleeve == 0, plates);
        ++sleeve;
        outdoors = !outdoors;
        m_height_m = part.height_m;
      } else if (outdoors) {
        run(part, plates);
      }
    }
  }

 private:
  /// Over one wall: how far along it a point lies, folded flat.
  double xOn(const perimeter::Edge& e, Point p) const {
    return m_c.x(e.ring, e.start_m + geometry::dot(p - e.from, e.along));
  }
  const perimeter::Edge& edgeOf(Point a, Point b) const {
    const auto& perimeter = m_c.study.perimeter();
    return perimeter.edgeAt(perimeter.nearest(geometry::lerp(a, b, 0.5)));
  }

  void run(const CablePart& part, ElevationPlates& plates) {
    std::vector<Point> line;
    if (part.line_m.size() < 2) {  // up or down
      const bool drop = part.kind == CablePartKind::drop;
      const double x = drop ? m_fan_x + kBesidePipe_mm
                            : xOn(edgeOf(part.line_m[0], part.line_m[0]), part.line_m[0]);
      line = {{x, m_c.y(m_height_m) + (drop ? kUnderFan_mm : 0.0)}, {x, m_c.y(part.height_m)}};
      m_height_m = part.height_m;
    } else {
      const perimeter::Edge& e = edgeOf(part.line_m.front(), part.line_m.back());
      const double start = xOn(e, part.line_m.front());
      // From beside the pipe, not from behind it.
      const double from = std::abs(start - m_fan_x) < 0.01 ? start + kBesidePipe_mm : start;
      const double to = xOn(e, part.line_m.back());
      const double level = m_c.y(part.height_m);
      const double before = m_c.y(m_height_m);
      line = {{from, before}, {from, level}, {to, level}, {to, before}};
    }
    m_sketch.path(line, cablePen(m_c.theme));
    for (std::size_t i = 1; i < line.size(); ++i) plates.takeLine(line[i - 1], line[i]);
  }

  void ring(const ElevationSpot& in, bool named, ElevationPlates& plates) {
    const Point at{m_c.x(in.place.ring, in.place.chainage_m), m_c.y(in.height_m)};
    m_sketch.ring(at, 1.1, solid(m_c.theme.electricity, 2.0), m_c.theme.paper);
    m_sketch.disc(at, 0.35, m_c.theme.electricity);
    plates.take(around(at, 1.4, 1.4));
    if (!named) return;
    const bool right = m_fan_x <= at.x;
    plates.plate({m_c.voice.say(base::Message("drawing.elevation.cable-in",
                                              {base::metres("height", in.height_m)})),
                  m_c.voice.say(base::Message("drawing.elevation.cable-to",
                                              {base::phrase("supply", m_route.label)}))},
                 at, right ? +1 : -1);
  }

  Sketch& m_sketch;
  const ElevationContext& m_c;
  const build::CableRoute& m_route;
  const ElevationSpot& m_fan;
  double m_fan_x;
  double m_height_m = 0.0;
};

Box extentOf(const build::CableRoute& route) {
  std::vector<Point> points;
  for (const CablePart& part : route.parts) {
    points.insert(points.end(), part.line_m.begin(), part.line_m.end());
  }
  return boxOf(points);
}

void paintPlanParts(Sketch& sketch, const PlanContext& c, const build::CableRoute& route,
                    Taken& taken) {
  for (const CablePart& part : route.parts) {
    const auto line = c.at(part.line_m);
    if (line.size() > 1) sketch.path(line, solid(c.theme.paper, kCable_px + 3.0));
  }
  for (const CablePart& part : route.parts) {
    const auto line = c.at(part.line_m);
    if (line.size() < 2) continue;
    const bool hidden =
        part.kind == CablePartKind::roof || part.kind == CablePartKind::over_opening;
    sketch.path(line,
                hidden ? dashed(c.theme.electricity, kCable_px, {5.0, 3.0}) : cablePen(c.theme));
    for (std::size_t i = 1; i < line.size(); ++i) taken.soft.takeLine(line[i - 1], line[i]);
  }
  for (const CablePart& part : route.parts) {
    if (part.kind != CablePartKind::sleeve && part.kind != CablePartKind::drilling) continue;
    for (const Point p : c.at(part.line_m)) {
      sketch.ring(p, 0.8, solid(c.theme.electricity, 1.6), c.theme.paper);
    }
  }
}

void planWords(Sketch& sketch, const PlanContext& c, Taken& taken, const Voice& voice, Point at,
               const std::string& words) {
  const LabelLine line{words, Font{type::second.size_pt, true, false}};
  plateLabel(sketch, c, taken, voice, besideLine(at, at, {line}, c.theme.ink, voice),
             c.inHouse(at) ? Side::inside : Side::outside);
}

}  // namespace

DrawList elevationCable(const siting::Study& study, const build::CableRoute& route,
                        const ElevationSpot& fan, const ElevationView& view, const Voice& voice,
                        const std::vector<Box>& words) {
  DrawList list{view.width_mm, view.height_mm, {}};
  Sketch sketch(list);
  const ElevationContext c(study, view, voice);
  ElevationPlates plates(sketch, c, words);
  sketch.tagged("cable");
  OutsideWay(sketch, c, route, fan).paint(plates);
  const Box room{view.label_mm, 0.0, view.width_mm, view.height_mm};
  return clipped(list, room, voice);
}

DrawList planCable(const siting::Study& study, const build::CableRoute& route, const PlanView& view,
                   const Voice& voice, const std::vector<Box>& words) {
  DrawList list{view.width_mm, view.height_mm, {}};
  if (route.parts.empty()) return list;
  Sketch sketch(list);
  const PlanContext c(study, view);
  Taken taken;
  for (const Box& box : words) taken.hard.take(box);
  sketch.tagged("cable");
  paintPlanParts(sketch, c, route, taken);
  const Point fan = c.at(route.parts.front().line_m.front());
  const Point supply = c.at(route.parts.back().line_m.back());
  sketch.disc(fan, 1.2, c.theme.electricity);
  sketch.ring(supply, 1.7, solid(c.theme.electricity, 2.2), c.theme.paper);
  sketch.disc(supply, 0.7, c.theme.electricity);
  taken.hard.take(around(fan, 1.4, 1.4));
  taken.hard.take(around(supply, 2.0, 2.0));
  planWords(sketch, c, taken, voice, supply, voice.say(route.label));
  planWords(sketch, c, taken, voice, fan, voice.say(base::Message("drawing.elevation.fan")));
  return clipped(list, c.page, voice);
}

std::optional<PlanView> viewOfCable(const build::CableRoute& route, double mm_per_m,
                                    double width_mm, double most_mm) {
  const Box extent = grown(extentOf(route), kAround_m);
  PlanView view;
  view.theme = ThemeName::paper;
  view.grid = false;
  view.furniture = false;
  view.mm_per_m = mm_per_m;
  view.centre_m = extent.centre();
  view.width_mm = width_mm;
  view.height_mm = std::max(30.0, extent.height() * mm_per_m);
  if (extent.width() * mm_per_m > width_mm || view.height_mm > most_mm) return std::nullopt;
  return view;
}

}  // namespace sumpwright::drawing
