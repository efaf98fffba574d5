#include "support/RandomPlan.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <numbers>

#include "base/Contract.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "plan/JobText.h"
#include "resources/BuiltIn.h"

namespace sumpwright::support {

using namespace plan;  // NOLINT: this file speaks of nothing else
using geometry::Point;
using geometry::Polygon;
using geometry::Vec;

namespace {

// ---- outlines ----

Polygon skewQuad(Random& r) {
  const double w = r.uniform(6.0, 16.0);
  const double d = r.uniform(5.0, 11.0);
  const double skew = r.chance(0.5) ? 0.0 : 0.8;
  Polygon quad{{0, 0}, {w, 0}, {w, d}, {0, d}};
  for (Point& p : quad) p = p + Vec{r.uniform(-skew, skew), r.uniform(-skew, skew)};
  return quad;
}

/// Columns of different depths on a common base: L, T, U and stepped houses.
Polygon stepped(Random& r) {
  const int columns = r.between(2, 4);
  Polygon outline{{0, 0}};
  std::vector<Point> tops;
  double x = 0.0;
  double depth = 0.0;
  for (int i = 0; i < columns; ++i) {
    double next = r.uniform(3.0, 10.0);
    if (std::abs(next - depth) < 0.3) next += 0.6;
    tops.push_back({x, next});
    x += r.uniform(1.5, 5.0);
    tops.push_back({x, next});
    depth = next;
  }
  outline.push_back({x, 0});
  outline.insert(outline.end(), tops.rbegin(), tops.rend());
  return outline;
}

Polygon star(Random& r, int corners, double least, double most) {
  Polygon outline;
  for (int i = 0; i < corners; ++i) {
    const double turn = 2.0 * std::numbers::pi * (i + r.uniform(-0.3, 0.3)) / corners;
    const double radius = r.uniform(least, most);
    outline.push_back({radius * std::cos(turn), radius * std::sin(turn)});
  }
  return outline;
}

/// A corner on a straight or nearly straight wall, turning by up to about 15 degrees.
void addFlatCorner(Random& r, Polygon& outline) {
  const std::size_t i = r.index(outline.size());
  const Point a = outline[i];
  const Point b = outline[(i + 1) % outline.size()];
  const double length = geometry::distance(a, b);
  if (length < 2.0) return;
  const double aside = r.chance(0.4) ? 0.0 : r.uniform(-0.06, 0.06) * length;
  const Vec across = (aside / length) * geometry::left(b - a);
  Polygon changed = outline;
  changed.insert(changed.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                 geometry::lerp(a, b, r.uniform(0.3, 0.7)) + across);
  if (!geometry::firstSelfContact(changed)) outline = changed;
}

Polygon randomOutline(Random& r) {
  Polygon outline;
  switch (r.between(0, 3)) {
    case 0:
      outline = skewQuad(r);
      break;
    case 1:
      outline = star(r, r.between(5, 10), 3.5, 9.0);
      break;
    default:
      outline = stepped(r);
  }
  for (int i = r.between(0, 2); i > 0; --i) addFlatCorner(r, outline);
  std::rotate(outline.begin(),
              outline.begin() + static_cast<std::ptrdiff_t>(r.index(outline.size())),
              outline.end());
  return outline;
}

Polygon randomCourtyard(Random& r, const Polygon& outer) {
  const Point centre = geometry::labelPoint(outer);
  double room = 1e9;
  for (std::size_t i = 0; i < outer.size(); ++i) {
    room = std::min(room, geometry::distance(
                              centre, geometry::Segment{outer[i], outer[(i + 1) % outer.size()]}));
  }
  const double reach = room - 1.0;
  if (reach < 0.8) return {};
  Polygon court = star(r, r.between(3, 6), 0.5 * reach, reach);
  for (Point& p : court) p = centre + (p - Point{});
  std::reverse(court.begin(), court.end());
  return court;
}

// ---- where things go ----

Point cornerOf(const Ring& ring, std::size_t i) { return ring.corners[i % ring.corners.size()]; }

struct Face {
  OnWall at;
  double length = 0.0;
  Point from;
  Vec along;
  double thickness = 0.35;
  Point inside(double u, double v) const { return from + u * along + v * geometry::left(along); }
};

Face randomFace(Random& r, const Job& job) {
  const auto ring = r.index(job.plan.rings.size());
  const Ring& corners = job.plan.rings[ring];
  const auto edge = r.index(corners.corners.size());
  const Point a = cornerOf(corners, edge);
  const Point b = cornerOf(corners, edge + 1);
  Face face;
  face.at = {static_cast<int>(ring), static_cast<int>(edge), 0.0};
  face.length = geometry::distance(a, b);
  face.from = a;
  face.along = (1.0 / face.length) * (b - a);
  face.thickness = corners.walls[edge].thickness_m.value_or(0.35);
  return face;
}

Point nearHouse(Random& r, const Job& job) {
  const Face face = randomFace(r, job);
  return face.inside(r.uniform(-1.0, face.length + 1.0), -r.uniform(0.0, 3.0));
}

Point indoors(Random& r, const Job& job) {
  const Face face = randomFace(r, job);
  return face.inside(r.uniform(0.0, face.length), face.thickness + r.uniform(0.0, 1.5));
}

std::string idOf(const char* kind, std::size_t i) { return std::string(kind) + std::to_string(i); }

// ---- rings and walls ----

void randomWall(Random& r, Wall& wall) {
  if (r.chance(0.1)) wall.kind = WallKind::party;
  wall.elevation = r.oneOf<Elevation>(
      {Elevation::unmarked, Elevation::front, Elevation::rear, Elevation::gable});
  if (r.chance(0.7)) wall.thickness_m = r.uniform(0.1, 0.6);
  wall.foundation =
      r.oneOf<Foundation>({Foundation::strip, Foundation::strip, Foundation::strip,
                           Foundation::rubble, Foundation::unknown, Foundation::raft_edge});
  wall.ground = r.oneOf<OutsideGround>({OutsideGround::own, OutsideGround::own, OutsideGround::own,
                                        OutsideGround::unknown, OutsideGround::shared});
  if (r.chance(0.85)) wall.free_depth_m = r.uniform(0.7, 4.0);
}

void addRing(Random& r, Job& job, Polygon corners) {
  Ring ring;
  ring.corners = std::move(corners);
  for (std::size_t i = 0; i < ring.corners.size(); ++i) {
    Wall wall;
    wall.id = "wall" + std::to_string(job.plan.rings.size()) + "." + std::to_string(i);
    randomWall(r, wall);
    ring.walls.push_back(std::move(wall));
  }
  job.plan.rings.push_back(std::move(ring));
}

// ---- openings ----

bool free(const Job& job, const Opening& o) {
  return std::none_of(job.plan.openings.begin(), job.plan.openings.end(), [&](const Opening& p) {
    return p.at.ring == o.at.ring && p.at.edge == o.at.edge && p.storey == o.storey &&
           o.at.offset_m < p.at.offset_m + p.width_m && p.at.offset_m < o.at.offset_m + o.width_m;
  });
}

void addOpening(Random& r, Job& job) {
  const Face face = randomFace(r, job);
  Opening o;
  o.id = idOf("opening", job.plan.openings.size());
  o.kind = r.oneOf<OpeningKind>({OpeningKind::window, OpeningKind::window, OpeningKind::door,
                                 OpeningKind::glazed_door, OpeningKind::garage_door,
                                 OpeningKind::air_vent, OpeningKind::flue_terminal});
  o.opens = r.oneOf<Opens>({Opens::yes, Opens::yes, Opens::fixed, Opens::vent, Opens::intake});
  o.storey = r.chance(0.15) ? 1 : 0;
  o.width_m = std::min(r.uniform(0.1, 2.4), face.length);
  o.at = face.at;
  o.at.offset_m = r.uniform(0.0, face.length - o.width_m);
  if (free(job, o)) job.plan.openings.push_back(std::move(o));
}

// ---- services and outside ----

void addService(Random& r, Job& job) {
  Service s;
  s.id = idOf("service", job.plan.services.size());
  s.kind = static_cast<ServiceKind>(r.between(0, 6));
  s.located = r.chance(0.5);
  const bool drawn = r.chance(0.5);
  if (drawn) {
    s.run = RunKnown::drawn;
    for (int i = r.between(2, 4); i > 0; --i) s.run_m.push_back(nearHouse(r, job));
  } else {
    s.run = r.chance(0.5) ? RunKnown::unknown : RunKnown::overhead;
  }
  if (!drawn || r.chance(0.8)) {
    const Face face = randomFace(r, job);
    s.entry = face.at;
    s.entry->offset_m = r.uniform(0.0, face.length);
  }
  job.plan.services.push_back(std::move(s));
}

void addOutside(Random& r, Job& job) {
  OutsideThing t;
  t.id = idOf("outside", job.plan.outside.size());
  t.kind = static_cast<OutsideKind>(r.between(0, 7));
  const Point at = nearHouse(r, job);
  const auto beside = [&] { return at + Vec{r.uniform(-2.0, 2.0), r.uniform(-2.0, 2.0)}; };
  switch (t.kind) {
    case OutsideKind::gully:
    case OutsideKind::air_conditioner:
      t.points_m = {at};
      break;
    case OutsideKind::inspection_chamber:
    case OutsideKind::tank:
    case OutsideKind::deck:
      for (const Point p : star(r, r.between(3, 6), 0.2, 0.9))
        t.points_m.push_back(at + (p - Point{}));
      break;
    default:
      t.points_m = {at, beside()};
      if (r.chance(0.4)) t.points_m.push_back(beside());
  }
  job.plan.outside.push_back(std::move(t));
}

// ---- inside ----

void addHeating(Random& r, Job& job) {
  if (r.chance(0.5)) {
    HeatingPipe pipe;
    pipe.id = idOf("pipe", job.plan.heating_pipes.size());
    for (int i = r.between(2, 4); i > 0; --i) pipe.line_m.push_back(indoors(r, job));
    job.plan.heating_pipes.push_back(std::move(pipe));
    return;
  }
  Radiator radiator;
  radiator.id = idOf("radiator", job.plan.radiators.size());
  if (r.chance(0.6)) {
    const Face face = randomFace(r, job);
    radiator.width_m = std::min(r.uniform(0.4, 2.0), face.length);
    radiator.on = face.at;
    radiator.on->offset_m = r.uniform(0.0, face.length - radiator.width_m);
  } else {
    radiator.line_m = {indoors(r, job), indoors(r, job)};
  }
  job.plan.radiators.push_back(std::move(radiator));
}

void addFitting(Random& r, Job& job) {
  Fitting f;
  f.id = idOf("fitting", job.plan.fittings.size());
  f.kind = static_cast<FittingKind>(r.between(0, 5));
  f.at_m = indoors(r, job);
  job.plan.fittings.push_back(std::move(f));
}

/// A four-sided room or zone against a wall; empty when it would not lie in the house.
Polygon alongWall(Random& r, const Job& job) {
  const Face face = randomFace(r, job);
  if (face.length < 0.8) return {};
  const double u1 = r.uniform(-0.1, 0.6) * face.length;
  const double u2 = u1 + r.uniform(0.3, 1.0) * face.length;
  const double v1 = face.thickness + r.uniform(-0.2, 0.35);
  const double v2 = v1 + r.uniform(0.15, 3.5);
  const double skew = r.chance(0.5) ? 0.0 : 0.25;
  const auto jitter = [&] { return r.uniform(-skew, skew); };
  Polygon quad{face.inside(u1 + jitter(), v1 + jitter()), face.inside(u2 + jitter(), v1 + jitter()),
               face.inside(u2 + jitter(), v2 + jitter()),
               face.inside(u1 + jitter(), v2 + jitter())};
  if (r.chance(0.2)) quad.pop_back();
  double outside = geometry::areaOutside(quad, job.plan.rings[0].corners);
  for (std::size_t i = 1; i < job.plan.rings.size(); ++i) {
    outside += geometry::overlapArea(quad, job.plan.rings[i].corners);
  }
  if (geometry::firstSelfContact(quad) || outside > 1e-9) return {};
  return quad;
}

template <class Thing>
bool apart(const std::vector<Thing>& things, const Polygon& outline) {
  return std::none_of(things.begin(), things.end(), [&](const Thing& t) {
    return geometry::overlapArea(t.outline_m, outline) > 1e-9;
  });
}

void addRoom(Random& r, Job& job) {
  const Polygon outline = alongWall(r, job);
  if (outline.empty() || !apart(job.plan.rooms, outline)) return;
  Room room;
  room.id = idOf("room", job.plan.rooms.size());
  room.use = static_cast<RoomUse>(r.between(0, 13));
  room.outline_m = outline;
  job.plan.rooms.push_back(std::move(room));
}

void addZone(Random& r, Job& job, const Polygon& outline) {
  if (outline.empty() || !apart(job.plan.floor_zones, outline)) return;
  FloorZone zone;
  zone.id = idOf("zone", job.plan.floor_zones.size());
  zone.kind =
      r.chance(0.6) ? FloorKind::ground_bearing_slab : static_cast<FloorKind>(r.between(0, 3));
  zone.oversite = static_cast<Oversite>(r.between(0, 2));
  zone.outline_m = outline;
  job.plan.floor_zones.push_back(std::move(zone));
}

// ---- what else a survey records ----

void addWallFeature(Random& r, Job& job) {
  const Face face = randomFace(r, job);
  WallFeature f;
  f.id = idOf("feature", job.plan.wall_features.size());
  f.kind = static_cast<WallFeatureKind>(r.between(0, 5));
  f.width_m = r.chance(0.3) ? 0.0 : std::min(r.uniform(0.05, 0.9), face.length);
  f.at = face.at;
  f.at.offset_m = r.uniform(0.0, face.length - f.width_m);
  job.plan.wall_features.push_back(std::move(f));
}

/// Soakaways, septic tanks and overhead lines.
void addFurtherOutside(Random& r, Job& job) {
  OutsideThing t;
  t.id = idOf("further", job.plan.outside.size());
  t.kind = static_cast<OutsideKind>(r.between(8, 10));
  const Point at = nearHouse(r, job);
  if (t.kind == OutsideKind::overhead_line) {
    t.points_m = {at, at + Vec{r.uniform(-4.0, 4.0), r.uniform(-4.0, 4.0)}};
  } else if (r.chance(0.3)) {
    t.points_m = {at};
  } else {
    for (const Point p : star(r, r.between(3, 6), 0.4, 1.2))
      t.points_m.push_back(at + (p - Point{}));
  }
  job.plan.outside.push_back(std::move(t));
}

void addInnerWall(Random& r, Job& job) {
  Plan& plan = job.plan;
  InnerWall wall;
  wall.id = idOf("inner", plan.inner_walls.size());
  for (int i = r.between(2, 4); i > 0; --i) wall.line_m.push_back(indoors(r, job));
  wall.thickness_m = r.uniform(0.08, 0.25);
  wall.below_floor = static_cast<BelowFloor>(r.between(0, 2));
  double length = 0.0;
  for (std::size_t i = 1; i < wall.line_m.size(); ++i) {
    length += geometry::distance(wall.line_m[i - 1], wall.line_m[i]);
  }
  const double width = r.uniform(0.6, 1.0);
  if (r.chance(0.6) && length > width) {
    plan.inner_doors.push_back({idOf("innerdoor", plan.inner_doors.size()), wall.id,
                                r.uniform(0.0, length - width), width});
  }
  if (r.chance(0.3)) {
    plan.rising_walls.push_back({idOf("rising", plan.rising_walls.size()),
                                 wall.line_m,
                                 0.1,
                                 {{0.25 * length, r.uniform(0.3, 1.0) * length}}});
  }
  plan.inner_walls.push_back(std::move(wall));
}

void addDimension(Random& r, Job& job) {
  std::vector<DimensionEnd> ends;
  const auto offer = [&](const std::string& id, ThingEnd end) { ends.push_back({id, end}); };
  for (const Ring& ring : job.plan.rings) {
    for (const Wall& wall : ring.walls) offer(wall.id, static_cast<ThingEnd>(r.between(0, 2)));
  }
  for (const Opening& o : job.plan.openings) offer(o.id, static_cast<ThingEnd>(r.between(0, 2)));
  for (const WallFeature& f : job.plan.wall_features) offer(f.id, ThingEnd::end);
  for (const Room& room : job.plan.rooms) offer(room.id, ThingEnd::middle);
  for (const OutsideThing& t : job.plan.outside) offer(t.id, ThingEnd::start);
  job.plan.dimensions.push_back({idOf("dimension", job.plan.dimensions.size()), r.oneOf(ends),
                                 r.oneOf(ends), r.uniform(-2.0, 2.0)});
}

void furtherFacts(Random& r, Job& job) {
  Plan& plan = job.plan;
  for (Service& s : plan.services) {
    if (s.kind != ServiceKind::drain && s.kind != ServiceKind::waste) continue;
    s.drain_kind = static_cast<DrainKind>(r.between(0, 3));
    if (r.chance(0.6)) s.invert_m = r.uniform(-2.0, -0.2);
    s.trapped = static_cast<YesNo>(r.between(0, 2));
  }
  for (FloorZone& zone : plan.floor_zones) {
    zone.part = static_cast<HousePart>(r.between(0, 4));
    if (r.chance(0.5)) zone.level_m = r.uniform(-0.6, 0.3);
    if (r.chance(0.5)) zone.slab_m = r.uniform(0.08, 0.2);
    zone.barrier = static_cast<Barrier>(r.between(0, 3));
  }
  for (Ring& ring : plan.rings) {
    for (std::size_t i = 0; i < ring.walls.size(); ++i) {
      if (!r.chance(0.3)) continue;
      const double length = geometry::distance(ring.corners[i], cornerOf(ring, i + 1));
      ring.walls[i].ground_points = {{r.uniform(0.0, 0.4) * length, r.uniform(-0.5, 0.0),
                                      static_cast<GroundSurface>(r.between(0, 6))},
                                     {r.uniform(0.5, 1.0) * length, r.uniform(-0.5, 0.0),
                                      static_cast<GroundSurface>(r.between(0, 6))}};
      ring.walls[i].ground_level_m = r.uniform(-0.5, 0.0);
    }
  }
  const auto answer = [&] { return static_cast<YesNo>(r.between(0, 2)); };
  job.permissions = {answer(), answer(), answer(), answer(), r.chance(0.5) ? "by letter" : ""};
  if (r.chance(0.3)) {
    plan.underlay = Underlay{};
    plan.underlay->path = "sketch.png";
    plan.underlay->m_per_px = r.uniform(0.005, 0.05);
    plan.underlay->turn_deg = r.uniform(0.0, 360.0);
  }
  if (r.chance(0.5)) plan.test_holes.push_back({"testhole", "", indoors(r, job)});
  if (r.chance(0.5)) {
    plan.supplies.push_back(
        {"supply", "", static_cast<SupplyKind>(r.between(0, 2)), indoors(r, job)});
  }
}

// ---- looked for ----

bool hasService(const Job& job, std::initializer_list<ServiceKind> kinds) {
  return std::any_of(job.plan.services.begin(), job.plan.services.end(), [&](const Service& s) {
    return std::find(kinds.begin(), kinds.end(), s.kind) != kinds.end();
  });
}

bool hasOutside(const Job& job, std::initializer_list<OutsideKind> kinds) {
  return std::any_of(job.plan.outside.begin(), job.plan.outside.end(), [&](const OutsideThing& t) {
    return std::find(kinds.begin(), kinds.end(), t.kind) != kinds.end();
  });
}

void randomLookedFor(Random& r, Job& job, bool all) {
  const bool everything = all || r.chance(0.7);
  const auto set = [&](Looked& looked, bool drawn) {
    if (!everything && r.chance(0.2)) {
      looked = Looked::not_looked;
    } else {
      looked = drawn ? Looked::present : Looked::looked_none;
    }
  };
  const auto& openings = job.plan.openings;
  const auto isFlue = [](const Opening& o) { return o.kind == OpeningKind::flue_terminal; };
  LookedFor& l = job.looked_for;
  set(l.openings, !std::all_of(openings.begin(), openings.end(), isFlue) ||
                      hasOutside(job, {OutsideKind::neighbour_opening}));
  set(l.flue_terminal, std::any_of(openings.begin(), openings.end(), isFlue));
  set(l.gas, hasService(job, {ServiceKind::gas}));
  set(l.electricity, hasService(job, {ServiceKind::electricity}));
  set(l.telecom, hasService(job, {ServiceKind::telecom}));
  set(l.oil, hasService(job, {ServiceKind::oil}));
  set(l.water, hasService(job, {ServiceKind::water}));
  set(l.drain, hasService(job, {ServiceKind::drain, ServiceKind::waste}) ||
                   hasOutside(job, {OutsideKind::gully, OutsideKind::inspection_chamber}));
  set(l.heating, !job.plan.radiators.empty() || !job.plan.heating_pipes.empty());
}

// ---- turned and moved ----

void place(Random& r, Polygon& outer, Polygon& court) {
  if (r.chance(0.35)) return;
  const double turn = r.uniform(0.0, 2.0 * std::numbers::pi);
  const Vec by{r.uniform(-40.0, 40.0), r.uniform(-40.0, 40.0)};
  for (Polygon* polygon : {&outer, &court}) {
    for (Point& p : *polygon) {
      p = {p.x * std::cos(turn) - p.y * std::sin(turn) + by.x,
           p.x * std::sin(turn) + p.y * std::cos(turn) + by.y};
    }
  }
}

template <class Add>
void some(Random& r, int most, Add&& add) {
  for (int i = r.between(0, most); i > 0; --i) add();
}

}  // namespace

Job randomJob(Random& random, const RandomPlanOptions& options) {
  Random& r = random;
  Job job;
  job.id = "random";
  job.address = "Random House (invented)";
  job.survey_method =
      r.oneOf<SurveyMethod>({SurveyMethod::tape, SurveyMethod::laser, SurveyMethod::traced_picture,
                             SurveyMethod::not_stated});
  if (r.chance(0.5)) job.house.wall_thickness_m = r.uniform(0.2, 0.5);
  job.plan.north_deg = r.uniform(0.0, 360.0);
  Polygon outer = randomOutline(r);
  Polygon court;
  if (options.courtyards && r.chance(0.35)) court = randomCourtyard(r, outer);
  place(r, outer, court);
  addRing(r, job, outer);
  if (!court.empty()) addRing(r, job, court);
  if (court.empty() && r.chance(0.4)) addZone(r, job, outer);
  some(r, 7, [&] { addZone(r, job, alongWall(r, job)); });
  some(r, 12, [&] { addRoom(r, job); });
  some(r, 6, [&] { addOpening(r, job); });
  some(r, 4, [&] { addService(r, job); });
  some(r, 4, [&] { addOutside(r, job); });
  some(r, 3, [&] { addHeating(r, job); });
  some(r, 3, [&] { addFitting(r, job); });
  some(r, 3, [&] { addWallFeature(r, job); });
  some(r, 2, [&] { addFurtherOutside(r, job); });
  some(r, 4, [&] { addInnerWall(r, job); });
  some(r, 3, [&] { addDimension(r, job); });
  furtherFacts(r, job);
  for (int i = 0; i < options.more_things; ++i) {
    job.plan.outside.push_back(
        {"more" + std::to_string(i), "", OutsideKind::gully, {nearHouse(r, job)}});
  }
  randomLookedFor(r, job, options.all_looked_for);
  if (r.chance(0.2)) job.design.outlet = OutletMode::riser;
  if (r.chance(0.3)) job.design.core_mm = 112.0;
  return job;
}

rules::RuleSheet builtInSheet(const std::string& id) {
  for (const resources::BuiltInFile& file : resources::builtInRuleSheets()) {
    if (file.id == id) return rules::readRuleSheet(file.text).value();
  }
  SUMPWRIGHT_REQUIRE(!"there is such a sheet");
  return {};
}

rules::RuleSheet randomSheet(Random& random) {
  Random& r = random;
  rules::RuleSheet sheet = builtInSheet("ie-practice");
  if (r.chance(0.35)) return sheet;
  sheet.corner_turn_deg.value = r.oneOf<double>({3.0, 10.0, 20.0});
  for (rules::Rule& rule : sheet.rules) {
    if (rule.severity == rules::Severity::preference) continue;
    if (rule.kind == rules::RuleKind::clearance && !rule.needed_m) {
      rule.needed_m = rules::Figure{1.0, {rules::Mark::own, "random"}};
      rule.enabled = true;
    }
    if (rule.needed_m) rule.needed_m->value *= r.uniform(0.0, 1.6);
    if (r.chance(0.3)) {
      rule.severity = r.chance(0.5) ? rules::Severity::binding : rules::Severity::advisory;
    }
    if (r.chance(0.2)) rule.from = rules::MeasuredFrom::centre;
    if (r.chance(0.1)) rule.applies_to = {rules::Part::hole, rules::Part::fan};
    if (r.chance(0.05)) rule.enabled = false;
    if (r.chance(0.03)) rule.path = rules::PathKind::string;
  }
  return sheet;
}

std::string writeForReproduction(const Job& job, std::uint64_t seed) {
  std::error_code failed;
  const auto folder = std::filesystem::temp_directory_path(failed);
  if (failed) return "no temporary folder: " + failed.message();
  const auto path = folder / ("sumpwright-seed-" + std::to_string(seed) + ".sump.json");
  std::ofstream(path) << writeJob(job);
  return path.string();
}

}  // namespace sumpwright::support
