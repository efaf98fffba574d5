#include "support/PlanBuilder.h"

#include <utility>

#include "base/Contract.h"

namespace sumpwright::support {

using namespace plan;  // NOLINT: the builder speaks of nothing else

namespace {

constexpr double kWall_m = 0.35;

void present(Looked& looked) {
  if (looked == Looked::looked_none) looked = Looked::present;
}

Polygon rectangleAt(double x0, double y0, double x1, double y1) {
  return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

Looked& lookedFor(LookedFor& looked, ServiceKind kind) {
  switch (kind) {
    case ServiceKind::gas:
      return looked.gas;
    case ServiceKind::electricity:
      return looked.electricity;
    case ServiceKind::telecom:
      return looked.telecom;
    case ServiceKind::oil:
      return looked.oil;
    case ServiceKind::water:
      return looked.water;
    case ServiceKind::drain:
    case ServiceKind::waste:
      break;
  }
  return looked.drain;
}

}  // namespace

PlanBuilder PlanBuilder::rectangle(double width_m, double depth_m) {
  PlanBuilder builder = outline(rectangleAt(0, 0, width_m, depth_m));
  std::vector<Wall>& walls = builder.m_job.plan.rings[0].walls;
  walls[1].elevation = Elevation::gable;
  walls[2].elevation = Elevation::rear;
  walls[3].elevation = Elevation::gable;
  builder.insideOf(rectangleAt(kWall_m, kWall_m, width_m - kWall_m, depth_m - kWall_m));
  return builder;
}

PlanBuilder PlanBuilder::lShape() {
  PlanBuilder builder = outline({{0, 0}, {10, 0}, {10, 5}, {6, 5}, {6, 8}, {0, 8}});
  const double t = kWall_m;
  builder.insideOf(
      {{t, t}, {10 - t, t}, {10 - t, 5 - t}, {6 - t, 5 - t}, {6 - t, 8 - t}, {t, 8 - t}});
  return builder;
}

PlanBuilder PlanBuilder::courtyard() {
  PlanBuilder builder = outline(rectangleAt(0, 0, 14, 12));
  builder.hole({{5, 5}, {5, 8}, {9, 8}, {9, 5}});
  const double t = kWall_m;
  // Four zones and rooms round the court, meeting without overlap.
  const Polygon south = rectangleAt(t, t, 14 - t, 5 - t);
  const Polygon north = rectangleAt(t, 8 + t, 14 - t, 12 - t);
  const Polygon west = rectangleAt(t, 5 - t, 5 - t, 8 + t);
  const Polygon east = rectangleAt(9 + t, 5 - t, 14 - t, 8 + t);
  builder.room("room-s", RoomUse::living, south)
      .zone("zone-s", FloorKind::ground_bearing_slab, south);
  builder.room("room-n", RoomUse::bedroom, north)
      .zone("zone-n", FloorKind::ground_bearing_slab, north);
  builder.room("room-w", RoomUse::hall, west).zone("zone-w", FloorKind::ground_bearing_slab, west);
  builder.room("room-e", RoomUse::store, east).zone("zone-e", FloorKind::ground_bearing_slab, east);
  return builder;
}

PlanBuilder PlanBuilder::outline(Polygon corners) {
  PlanBuilder builder;
  builder.m_job.id = "test-job";
  builder.m_job.address = "1 Invented Row";
  builder.m_job.surveyor = "A. Tester (invented)";
  builder.m_job.surveyed_on = "2026-03-01";
  builder.addRing(std::move(corners));
  builder.m_job.plan.rings[0].walls[0].elevation = Elevation::front;
  builder.surveyed();
  return builder;
}

PlanBuilder PlanBuilder::bare(double width_m, double depth_m) {
  PlanBuilder builder;
  builder.m_job.id = "test-job";
  Ring ring;
  ring.corners = rectangleAt(0, 0, width_m, depth_m);
  for (int i = 0; i < 4; ++i) {
    Wall wall;
    wall.id = "w0." + std::to_string(i);
    ring.walls.push_back(std::move(wall));
  }
  builder.m_job.plan.rings.push_back(std::move(ring));
  return builder;
}

PlanBuilder& PlanBuilder::hole(Polygon clockwise) {
  addRing(std::move(clockwise));
  return *this;
}

PlanBuilder& PlanBuilder::window(const std::string& id, int edge, double offset_m, double width_m,
                                 int ring) {
  Opening o;
  o.id = id;
  o.at = {ring, edge, offset_m};
  o.width_m = width_m;
  o.sill_m = 0.9;
  o.head_m = 2.1;
  return opening(std::move(o));
}

PlanBuilder& PlanBuilder::door(const std::string& id, int edge, double offset_m, double width_m,
                               int ring) {
  Opening o;
  o.id = id;
  o.kind = OpeningKind::door;
  o.at = {ring, edge, offset_m};
  o.width_m = width_m;
  o.sill_m = 0.0;
  o.head_m = 2.1;
  return opening(std::move(o));
}

PlanBuilder& PlanBuilder::vent(const std::string& id, int edge, double offset_m, double width_m,
                               int ring) {
  Opening o;
  o.id = id;
  o.kind = OpeningKind::air_vent;
  o.opens = Opens::vent;
  o.at = {ring, edge, offset_m};
  o.width_m = width_m;
  return opening(std::move(o));
}

PlanBuilder& PlanBuilder::flue(const std::string& id, int edge, double offset_m, double width_m,
                               int ring) {
  Opening o;
  o.id = id;
  o.kind = OpeningKind::flue_terminal;
  o.at = {ring, edge, offset_m};
  o.width_m = width_m;
  return opening(std::move(o));
}

PlanBuilder& PlanBuilder::opening(Opening opening) {
  LookedFor& looked = m_job.looked_for;
  present(opening.kind == OpeningKind::flue_terminal ? looked.flue_terminal : looked.openings);
  m_job.plan.openings.push_back(std::move(opening));
  return *this;
}

PlanBuilder& PlanBuilder::service(const std::string& id, ServiceKind kind, int edge,
                                  double offset_m, int ring) {
  Service s;
  s.id = id;
  s.kind = kind;
  s.entry = OnWall{ring, edge, offset_m};
  s.run = RunKnown::overhead;
  if (kind == ServiceKind::drain) {
    s.drain_kind = DrainKind::foul;
    s.invert_m = -0.9;
    s.trapped = YesNo::yes;
  }
  present(lookedFor(m_job.looked_for, kind));
  m_job.plan.services.push_back(std::move(s));
  return *this;
}

PlanBuilder& PlanBuilder::run(const std::string& service, std::vector<Point> points) {
  for (Service& s : m_job.plan.services) {
    if (s.id != service) continue;
    s.run = RunKnown::drawn;
    s.run_m = std::move(points);
    return *this;
  }
  SUMPWRIGHT_REQUIRE(false && "run() names a service added before");
  return *this;
}

PlanBuilder& PlanBuilder::runUnknown(const std::string& service) {
  for (Service& s : m_job.plan.services) {
    if (s.id != service) continue;
    s.run = RunKnown::unknown;
    s.run_m.clear();
    return *this;
  }
  SUMPWRIGHT_REQUIRE(false && "runUnknown() names a service added before");
  return *this;
}

PlanBuilder& PlanBuilder::room(const std::string& id, RoomUse use, Polygon outline) {
  Room r;
  r.id = id;
  r.use = use;
  r.outline_m = std::move(outline);
  m_job.plan.rooms.push_back(std::move(r));
  return *this;
}

PlanBuilder& PlanBuilder::zone(const std::string& id, FloorKind kind, Polygon outline) {
  FloorZone z;
  z.id = id;
  z.kind = kind;
  z.outline_m = std::move(outline);
  m_job.plan.floor_zones.push_back(std::move(z));
  return *this;
}

PlanBuilder& PlanBuilder::noRooms() {
  m_job.plan.rooms.clear();
  return *this;
}

PlanBuilder& PlanBuilder::noZones() {
  m_job.plan.floor_zones.clear();
  return *this;
}

PlanBuilder& PlanBuilder::radiator(const std::string& id, int edge, double offset_m, double width_m,
                                   int ring) {
  Radiator r;
  r.id = id;
  r.on = OnWall{ring, edge, offset_m};
  r.width_m = width_m;
  present(m_job.looked_for.heating);
  m_job.plan.radiators.push_back(std::move(r));
  return *this;
}

PlanBuilder& PlanBuilder::heatingPipe(const std::string& id, std::vector<Point> line) {
  HeatingPipe p;
  p.id = id;
  p.line_m = std::move(line);
  present(m_job.looked_for.heating);
  m_job.plan.heating_pipes.push_back(std::move(p));
  return *this;
}

PlanBuilder& PlanBuilder::innerWall(const std::string& id, std::vector<Point> line) {
  InnerWall w;
  w.id = id;
  w.line_m = std::move(line);
  w.below_floor = BelowFloor::on_slab;
  m_job.plan.inner_walls.push_back(std::move(w));
  return *this;
}

PlanBuilder& PlanBuilder::fitting(const std::string& id, FittingKind kind, Point at) {
  Fitting f;
  f.id = id;
  f.kind = kind;
  f.at_m = at;
  m_job.plan.fittings.push_back(std::move(f));
  return *this;
}

PlanBuilder& PlanBuilder::supply(const std::string& id, SupplyKind kind, Point at) {
  Supply s;
  s.id = id;
  s.kind = kind;
  s.at_m = at;
  m_job.plan.supplies.push_back(std::move(s));
  return *this;
}

PlanBuilder& PlanBuilder::outside(const std::string& id, OutsideKind kind,
                                  std::vector<Point> points) {
  OutsideThing t;
  t.id = id;
  t.kind = kind;
  t.points_m = std::move(points);
  if (kind == OutsideKind::gully || kind == OutsideKind::inspection_chamber) {
    present(m_job.looked_for.drain);
  }
  if (kind == OutsideKind::neighbour_opening) present(m_job.looked_for.openings);
  m_job.plan.outside.push_back(std::move(t));
  return *this;
}

PlanBuilder& PlanBuilder::sump(const std::string& id, int ring, double chainage_m) {
  Sump s;
  s.id = id;
  s.ring = ring;
  s.chainage_m = chainage_m;
  m_job.design.sumps.push_back(std::move(s));
  return *this;
}

PlanBuilder& PlanBuilder::waiver(Waiver waiver) {
  m_job.design.waivers.push_back(std::move(waiver));
  return *this;
}

PlanBuilder& PlanBuilder::outlet(OutletMode mode) {
  m_job.design.outlet = mode;
  return *this;
}

PlanBuilder& PlanBuilder::wall(int edge, const std::function<void(Wall&)>& change, int ring) {
  change(
      m_job.plan.rings.at(static_cast<std::size_t>(ring)).walls.at(static_cast<std::size_t>(edge)));
  return *this;
}

PlanBuilder& PlanBuilder::with(const std::function<void(Job&)>& change) {
  change(m_job);
  return *this;
}

void PlanBuilder::addRing(Polygon corners) {
  Ring ring;
  ring.corners = std::move(corners);
  for (std::size_t i = 0; i < ring.corners.size(); ++i) {
    Wall wall;
    wall.id = "w" + std::to_string(m_job.plan.rings.size()) + "." + std::to_string(i);
    wall.thickness_m = kWall_m;
    wall.foundation = Foundation::strip;
    wall.ground = OutsideGround::own;
    wall.free_depth_m = 3.0;
    wall.ground_level_m = -0.15;
    ring.walls.push_back(std::move(wall));
  }
  m_job.plan.rings.push_back(std::move(ring));
}

void PlanBuilder::surveyed() {
  m_job.survey_method = SurveyMethod::tape;
  LookedFor& l = m_job.looked_for;
  for (Looked* kind : {&l.openings, &l.gas, &l.electricity, &l.water, &l.telecom, &l.oil, &l.drain,
                       &l.flue_terminal, &l.heating, &l.standby_pipe, &l.open_flue}) {
    *kind = Looked::looked_none;
  }
  m_job.permissions = {YesNo::no, YesNo::no, YesNo::no, YesNo::no, ""};
  House& h = m_job.house;
  h.eaves_wildlife = Looked::looked_none;
  h.year_built = 1985;
  h.build_type = BuildType::cavity_masonry;
  h.wall_thickness_m = kWall_m;
  h.slab_m = 0.15;
  h.hardcore_m = 0.15;
  h.fill = Fill::clean_stone;
  h.ground_level_m = -0.15;
  h.footing_top_low_m = -0.75;
  h.footing_top_high_m = -0.65;
  h.barrier = Barrier::none;
  h.standby.state = StandbyState::searched_not_found;
}

void PlanBuilder::insideOf(const Polygon& inner) {
  room("room", RoomUse::living, inner);
  zone("zone", FloorKind::ground_bearing_slab, inner);
}

}  // namespace sumpwright::support
