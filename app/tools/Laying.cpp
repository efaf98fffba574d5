#include "tools/Laying.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <type_traits>

#include "base/Contract.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "plan/SumpEdits.h"
#include "plan/WallEdits.h"
#include "tools/PairText.h"
#include "tools/TapeLine.h"

namespace sumpwright::tools {

namespace {

constexpr double kSamePlace_m = 1e-6;  // rounding
constexpr double kOnFace_m = 0.01;  // own figure: a run that ends this near a wall comes in there
constexpr std::size_t kAnyNumber = 10'000;  // as many as a job file holds

LayShape shapeOfOutside(plan::OutsideKind kind) {
  switch (kind) {
    case plan::OutsideKind::path:
    case plan::OutsideKind::neighbour_opening:
    case plan::OutsideKind::boundary:
    case plan::OutsideKind::overhead_line:
      return LayShape::line;
    case plan::OutsideKind::gully:
    case plan::OutsideKind::air_conditioner:
      return LayShape::point;
    case plan::OutsideKind::inspection_chamber:
    case plan::OutsideKind::tank:
    case plan::OutsideKind::deck:
    case plan::OutsideKind::soakaway:
    case plan::OutsideKind::septic_tank:
    case plan::OutsideKind::sitting_place:
    case plan::OutsideKind::steps:
    case plan::OutsideKind::carport:
      break;
  }
  return LayShape::area;
}

template <class T>
std::optional<LayShape> shapeOfThing(const T& thing) {
  if constexpr (std::is_same_v<T, plan::OutsideThing>) {
    return shapeOfOutside(thing.kind);
  } else if constexpr (requires { thing.outline_m; }) {
    return LayShape::area;
  } else if constexpr (
      requires { thing.line_m; } || requires { thing.run_m; }) {
    return LayShape::line;
  } else if constexpr (requires { thing.at_m; }) {
    return LayShape::point;
  } else {
    return std::nullopt;
  }
}

/// Fewest and most points of what is laid.
struct PointCount {
  std::size_t least = 1;
  std::size_t most = kAnyNumber;
};

PointCount countOf(const LayModel& model, LayShape shape) {
  if (shape == LayShape::point) return {1, 1};
  const auto* thing = std::get_if<plan::Thing>(&model);
  if (thing != nullptr && std::holds_alternative<plan::Radiator>(*thing)) return {2, 2};
  if (shape == LayShape::line) return {2, kAnyNumber};
  const auto* outside = thing == nullptr ? nullptr : std::get_if<plan::OutsideThing>(thing);
  // A deck or a carport is never a point; tanks may be sunk under a lid that is all one sees, and
  // of the rest a middle may do.
  const bool point = outside != nullptr && outside->kind != plan::OutsideKind::deck &&
                     outside->kind != plan::OutsideKind::carport;
  return {point ? std::size_t{1} : std::size_t{3}, kAnyNumber};
}

std::vector<Point> rectangleOf(Point a, Point b) { return {a, {b.x, a.y}, b, {a.x, b.y}}; }

/// Without places that come again at once, round the end too.
std::vector<Point> withoutRepeats(const std::vector<Point>& outline) {
  std::vector<Point> places;
  for (const Point p : outline) {
    if (places.empty() || geometry::distance(places.back(), p) > kSamePlace_m) places.push_back(p);
  }
  while (places.size() > 1 && geometry::distance(places.front(), places.back()) <= kSamePlace_m) {
    places.pop_back();
  }
  return places;
}

std::vector<Point> anticlockwise(std::vector<Point> outline) {
  if (geometry::signedArea(outline) < 0.0) std::reverse(outline.begin(), outline.end());
  return outline;
}

template <class T>
void putPoints(T& thing, std::vector<Point> points) {
  if constexpr (requires { thing.outline_m; }) {
    thing.outline_m = anticlockwise(std::move(points));
  } else if constexpr (requires { thing.line_m; }) {
    thing.line_m = std::move(points);
  } else if constexpr (requires { thing.points_m; }) {
    thing.points_m = std::move(points);
  } else if constexpr (requires { thing.at_m; }) {
    thing.at_m = points.front();
  }
}

/// The place on an outside face that a point stands on.
std::optional<plan::OnWall> entryAt(const plan::Plan& plan, Point at) {
  const auto on = plan::nearestOnWalls(plan, at, 0.0);
  if (!on) return std::nullopt;
  const auto face = placeOnFace(plan, *on);
  if (!face || geometry::distance(*face, at) > kOnFace_m) return std::nullopt;
  return on;
}

bool startsAt(const plan::Plan& plan, const plan::Service& service, Point at) {
  if (!service.entry) return false;
  const auto entry = placeOnFace(plan, *service.entry);
  return entry && geometry::distance(*entry, at) <= kOnFace_m;
}

/// A run from the wall outwards, and the service it is of: one of the kind that comes in there and
/// has no run yet, else a new one.
plan::Service serviceWith(const plan::Plan& plan, plan::Service service, std::vector<Point> run) {
  if (!entryAt(plan, run.front()) && entryAt(plan, run.back())) {
    std::reverse(run.begin(), run.end());
  }
  if (service.id.empty()) {
    const auto known =
        std::find_if(plan.services.begin(), plan.services.end(), [&](const plan::Service& s) {
          return s.kind == service.kind && s.run != plan::RunKnown::drawn &&
                 startsAt(plan, s, run.front());
        });
    if (known != plan.services.end()) service = *known;
  }
  if (!service.entry) service.entry = entryAt(plan, run.front());
  service.run = plan::RunKnown::drawn;
  service.run_m = std::move(run);
  return service;
}

}  // namespace

std::optional<LayShape> shapeOf(const LayModel& model) {
  const auto* thing = std::get_if<plan::Thing>(&model);
  if (thing == nullptr) {
    const bool place =
        std::holds_alternative<LayStart>(model) || std::holds_alternative<LaySumpInside>(model);
    return place ? LayShape::point : LayShape::area;
  }
  return std::visit([](const auto& t) { return shapeOfThing(t); }, *thing);
}

std::string laidLast(const plan::Job& before, const plan::Job& after) {
  const auto changed = [](const auto& was, const auto& is) {
    for (std::size_t i = 0; i < is.size(); ++i) {
      if (i >= was.size() || !(was[i] == is[i])) return is[i].id;
    }
    return std::string();
  };
  const plan::Plan& was = before.plan;
  const plan::Plan& is = after.plan;
  for (std::string id :
       {changed(was.services, is.services), changed(was.rooms, is.rooms),
        changed(was.floor_zones, is.floor_zones), changed(was.inner_walls, is.inner_walls),
        changed(was.rising_walls, is.rising_walls), changed(was.heating_pipes, is.heating_pipes),
        changed(was.supplies, is.supplies), changed(was.fittings, is.fittings),
        changed(was.outside, is.outside), changed(was.test_holes, is.test_holes),
        changed(before.design.sumps, after.design.sumps)}) {
    if (!id.empty()) return id;
  }
  return {};
}

Laying::Laying(plan::Job before, LayModel model, BareUnit bare)
    : m_before(std::move(before)), m_model(std::move(model)), m_bare(bare) {
  const auto shape = shapeOf(m_model);
  SUMPWRIGHT_REQUIRE(shape.has_value());
  m_shape = *shape;
  m_field = fieldOf(m_before, 0.0, 0.0);
  const auto* thing = std::get_if<plan::Thing>(&m_model);
  const auto* service = thing == nullptr ? nullptr : std::get_if<plan::Service>(thing);
  if (service != nullptr && service->entry) {
    if (const auto entry = placeOnFace(m_before.plan, *service->entry)) m_points = {*entry};
  }
}

void Laying::onto(plan::Job job) {
  m_before = std::move(job);
  m_field = fieldOf(m_before, m_field.reach_m, m_field.grid_m);
}

void Laying::look(double reach_m, double grid_m) {
  m_field.reach_m = reach_m;
  m_field.grid_m = grid_m;
}

/// What there is, and what has been laid so far; square to the last leg.
SnapField Laying::field() const {
  SnapField all = m_field;
  all.corners.insert(all.corners.end(), m_points.begin(), m_points.end());
  if (m_points.empty()) return all;
  all.from = m_points.back();
  if (m_points.size() > 1) all.axis = m_points.back() - m_points[m_points.size() - 2];
  return all;
}

void Laying::move(Point pointer) { m_aimed = snap(field(), pointer); }

bool Laying::take(Point at) {
  const PointCount count = countOf(m_model, m_shape);
  if (!m_points.empty() && geometry::distance(m_points.back(), at) <= kSamePlace_m) {
    return m_points.size() >= count.least;  // a second click on the last point ends it
  }
  if (m_shape == LayShape::area && m_points.size() >= 3 &&
      geometry::distance(m_points.front(), at) <= kSamePlace_m) {
    return true;
  }
  m_points.push_back(at);
  m_text.clear();
  return m_points.size() >= count.most;
}

bool Laying::click(Point pointer) {
  move(pointer);
  return take(typedPlace().value_or(m_aimed->at));
}

void Laying::pullRectangle(Point pressed, Point pointer) {
  SUMPWRIGHT_REQUIRE(m_shape == LayShape::area);
  const Point start = snap(m_field, pressed).at;
  SnapField field = m_field;
  field.corners.push_back(start);
  m_aimed = snap(field, pointer);
  m_rectangle = true;
  m_points = rectangleOf(start, m_aimed->at);
  const std::vector<Point> typed = typedRectangle();
  if (!typed.empty()) m_points = typed;
}

/// The sides as typed, the way the pointer went.
std::vector<Point> Laying::typedRectangle() const {
  const auto sides = readPair(m_text, m_bare);
  if (!sides || m_points.empty()) return {};
  const Point start = m_points.front();
  const Point to = m_aimed ? m_aimed->at : start;
  const double right = to.x < start.x ? -1.0 : 1.0;
  const double up = to.y < start.y ? -1.0 : 1.0;
  return rectangleOf(start, start + Vec{right * sides->first_m, up * sides->second_m});
}

/// Where a typed number puts the next point; nothing where none is typed.
std::optional<Point> Laying::typedPlace() const {
  if (m_text.empty()) return std::nullopt;
  if (m_points.empty()) {
    const auto pair = readPair(m_text, m_bare);
    if (!pair || !m_aimed) return std::nullopt;
    const auto corner = fromNearestCorner(m_before, m_aimed->at);
    if (!corner) return Point{pair->first_m, pair->second_m};  // no wall yet: from the origin
    return placeAt(*corner, pair->first_m, pair->second_m);
  }
  const TapeLine line = readTapeLine(m_text, m_bare);
  if (!line.length.ok()) return std::nullopt;
  const Point from = m_points.back();
  const double length = line.length.metres.front();
  const Vec to_pointer = m_aimed ? m_aimed->at - from : Vec{};
  constexpr double kDegrees = 180.0 / std::numbers::pi;
  std::optional<double> before_deg;
  if (m_points.size() > 1) {
    const Vec last = from - m_points[m_points.size() - 2];
    before_deg = std::atan2(last.x, last.y) * kDegrees;
  }
  double bearing_deg = std::atan2(to_pointer.x, to_pointer.y) * kDegrees;
  if (line.aim.kind != AimKind::none) {
    bearing_deg = sheetBearing(line.aim, before_deg, m_before.plan.north_deg);
  } else if (geometry::norm(to_pointer) <= kSamePlace_m) {
    return std::nullopt;  // no way to go
  }
  const double bearing = bearing_deg / kDegrees;
  return from + length * Vec{std::sin(bearing), std::cos(bearing)};
}

Laying::Typed Laying::enter() {
  if (m_text.empty()) return Typed::done;
  const std::vector<Point> rectangle =
      m_shape == LayShape::area && (m_points.size() == 1 || m_rectangle) ? typedRectangle()
                                                                         : std::vector<Point>{};
  if (!rectangle.empty()) {
    m_points = rectangle;
    m_rectangle = true;
    m_text.clear();
    return Typed::done;
  }
  if (m_rectangle) return Typed::unread;  // of a rectangle both sides are typed
  const auto at = typedPlace();
  if (!at) return Typed::unread;
  return take(*at) ? Typed::done : Typed::taken;
}

bool Laying::back() {
  if (m_points.empty()) return false;
  if (m_rectangle) {
    m_points.clear();
    m_rectangle = false;
  } else {
    m_points.pop_back();
  }
  return true;
}

std::optional<Segment> Laying::leg() const {
  if (m_rectangle || m_points.empty() || !m_aimed) return std::nullopt;
  return Segment{m_points.back(), typedPlace().value_or(m_aimed->at)};
}

base::Result<plan::Job> Laying::withThing(plan::Thing thing, std::vector<Point> points) const {
  return std::visit(
      [&]<class T>(T& t) -> base::Result<plan::Job> {
        if constexpr (std::is_same_v<T, plan::Service>) {
          t = serviceWith(m_before.plan, std::move(t), std::move(points));
        } else {
          putPoints(t, std::move(points));
        }
        if (t.id.empty()) return plan::addThing(m_before, std::move(t));
        return plan::replaceThing(m_before, t);
      },
      thing);
}

base::Result<plan::Job> Laying::finished() const {
  std::size_t least = countOf(m_model, m_shape).least;
  std::vector<Point> points = m_points;
  if (m_rectangle) {
    // Pulled open to no width it encloses nothing; to no size at all it may still be a lid.
    points = withoutRepeats(m_points);
    if (points.size() > 1) least = 3;
  }
  if (points.size() < least) {
    return base::Problem{
        base::Message("lay.few", {base::count("points", static_cast<std::int64_t>(points.size())),
                                  base::count("least", static_cast<std::int64_t>(least))}),
        "", base::Gravity::unsound};
  }
  if (std::holds_alternative<LayStart>(m_model)) return m_before;
  if (std::holds_alternative<LayOutline>(m_model)) return plan::addOutline(m_before, points);
  if (std::holds_alternative<LayCourtyard>(m_model)) return plan::addCourtyard(m_before, points);
  if (const auto* sump = std::get_if<LaySumpInside>(&m_model)) {
    return plan::moveSumpInside(m_before, "", sump->kind, points.front());
  }
  return withThing(std::get<plan::Thing>(m_model), std::move(points));
}

}  // namespace sumpwright::tools
