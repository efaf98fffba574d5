#include "core/plan/JobCases.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;
using support::PlanBuilder;
using Change = std::function<void(Job&)>;

CheckCase unsound(std::string id, std::string pointer, PlanBuilder builder,
                  const Change& change = {}) {
  if (change) builder.with(change);
  return {std::move(id), std::move(pointer), Gravity::unsound, builder.job()};
}

CheckCase missing(std::string id, std::string pointer, PlanBuilder builder, const Change& change) {
  return {std::move(id), std::move(pointer), Gravity::missing, builder.with(change).job()};
}

PlanBuilder house() { return PlanBuilder::rectangle(10, 8); }
PlanBuilder empty() { return house().noRooms().noZones(); }

/// The outline alone is changed: rooms and zones would only add their own problems.
Change corners(geometry::Polygon polygon, std::size_t ring = 0) {
  return [polygon, ring](Job& job) {
    job.plan.rings[ring].corners = polygon;
    job.plan.rings[ring].walls.resize(polygon.size(), job.plan.rings[ring].walls[0]);
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      job.plan.rings[ring].walls[i].id = "wall" + std::to_string(ring) + "." + std::to_string(i);
    }
  };
}

Waiver waiver() {
  Waiver w;
  w.id = "v";
  w.sump = "s";
  w.rule = "openings";
  w.thing = "w";
  w.chainage_m = 5.0;
  w.reason = "window is fixed shut";
  w.name = "A. Tester (invented)";
  w.date = "2026-03-01";
  return w;
}

PlanBuilder waived() { return house().sump("s", 0, 5.0).waiver(waiver()); }

InnerDoor innerDoor(double offset_m, double width_m, std::string wall = "iw") {
  return {"d", std::move(wall), offset_m, width_m};
}

PlanBuilder parted() { return house().innerWall("iw", {{5, 0.35}, {5, 7.65}}); }

void addRecordCases(std::vector<CheckCase>& cases) {
  cases.push_back(unsound("plan.id.empty", "/id", house(), [](Job& j) { j.id = ""; }));
  cases.push_back(unsound("plan.id.empty", "/plan/rooms/0/id", house(),
                          [](Job& j) { j.plan.rooms[0].id = ""; }));
  cases.push_back(unsound("plan.id.twice", "/plan/openings/1/id",
                          house().window("a", 0, 1, 1).window("a", 2, 1, 1)));
  cases.push_back(unsound("plan.id.twice", "/plan/floor_zones/0/id", house(),
                          [](Job& j) { j.plan.floor_zones[0].id = j.plan.rooms[0].id; }));
  cases.push_back(
      unsound("plan.id.twice", "/design/sumps/1/id", house().sump("s", 0, 1).sump("s", 0, 2)));
  cases.push_back(unsound("plan.date.bad", "/surveyed_on", house(),
                          [](Job& j) { j.surveyed_on = "2026-02-30"; }));
  cases.push_back(
      unsound("plan.rule-sheet.none", "/rule_sheet", house(), [](Job& j) { j.rule_sheet = ""; }));
  cases.push_back(missing("plan.survey.method-unknown", "/survey_method", house(),
                          [](Job& j) { j.survey_method = SurveyMethod::not_stated; }));
}

void addLookedForCases(std::vector<CheckCase>& cases) {
  for (const auto& [key, kind] :
       {std::pair("openings", &LookedFor::openings), std::pair("gas", &LookedFor::gas),
        std::pair("electricity", &LookedFor::electricity), std::pair("water", &LookedFor::water),
        std::pair("telecom", &LookedFor::telecom), std::pair("oil", &LookedFor::oil),
        std::pair("drain", &LookedFor::drain),
        std::pair("flue_terminal", &LookedFor::flue_terminal),
        std::pair("heating", &LookedFor::heating)}) {
    const std::string pointer = std::string("/looked_for/") + key;
    cases.push_back(missing("plan.looked.not", pointer, house(),
                            [kind](Job& j) { j.looked_for.*kind = Looked::not_looked; }));
    cases.push_back(unsound("plan.looked.not-drawn", pointer, house(),
                            [kind](Job& j) { j.looked_for.*kind = Looked::present; }));
    PlanBuilder full = house()
                           .window("w", 0, 1, 1)
                           .flue("f", 1, 1)
                           .radiator("r", 2, 1, 1)
                           .service("gas", ServiceKind::gas, 0, 4)
                           .service("el", ServiceKind::electricity, 0, 5)
                           .service("wa", ServiceKind::water, 0, 6)
                           .service("te", ServiceKind::telecom, 0, 7)
                           .service("oi", ServiceKind::oil, 0, 8)
                           .service("dr", ServiceKind::drain, 0, 9);
    cases.push_back(unsound("plan.looked.contradicted", pointer, full,
                            [kind](Job& j) { j.looked_for.*kind = Looked::looked_none; }));
  }
  cases.push_back(unsound("plan.looked.contradicted", "/looked_for/drain",
                          house().outside("g", OutsideKind::gully, {{3, -1}}),
                          [](Job& j) { j.looked_for.drain = Looked::looked_none; }));
  cases.push_back(unsound("plan.looked.contradicted", "/looked_for/heating", house(),
                          [](Job& j) { j.plan.floor_zones[0].underfloor_heating = true; }));
  cases.push_back(unsound("plan.looked.contradicted", "/looked_for/open_flue", house(), [](Job& j) {
    j.house.appliances.push_back({"a", "stove", true, "parlour"});
  }));
  cases.push_back(
      unsound("plan.looked.contradicted", "/looked_for/standby_pipe", house(), [](Job& j) {
        j.house.standby.state = StandbyState::found;
        j.house.standby.where = "by the gully";
      }));
  cases.push_back(missing("plan.looked.not-drawn", "/looked_for/open_flue", house(),
                          [](Job& j) { j.looked_for.open_flue = Looked::present; }));
  // Listed, but nowhere: as good as not drawn.
  cases.push_back(missing("plan.service.nowhere", "/plan/services/0/entry",
                          house().service("gas", ServiceKind::gas, 0, 4), [](Job& j) {
                            j.plan.services[0].entry.reset();
                            j.looked_for.gas = Looked::present;
                            // A second one has a place, so that only the first is complained of.
                            Service other = j.plan.services[0];
                            other.id = "gas2";
                            other.entry = OnWall{0, 0, 3.0};
                            j.plan.services.push_back(other);
                          }));
  cases.push_back(missing("plan.flue.not-looked", "/looked_for/open_flue", house(),
                          [](Job& j) { j.looked_for.open_flue = Looked::not_looked; }));
}

void addHouseCases(std::vector<CheckCase>& cases) {
  cases.push_back(unsound("plan.house.negative", "/house/slab_m", house(),
                          [](Job& j) { j.house.slab_m = -0.1; }));
  cases.push_back(unsound("plan.house.cavity", "/house/cavity_m", house(),
                          [](Job& j) { j.house.cavity_m = 0.35; }));
  cases.push_back(unsound("plan.wall.thickness", "/house/wall_thickness_m", house(),
                          [](Job& j) { j.house.wall_thickness_m = 350.0; }));
  cases.push_back(unsound("plan.house.footing-reversed", "/house/footing_top_low_m", house(),
                          [](Job& j) { j.house.footing_top_low_m = -0.3; }));
  cases.push_back(unsound("plan.house.year-after-survey", "/house/year_built", house(),
                          [](Job& j) { j.house.year_built = 2027; }));
  cases.push_back(unsound("plan.house.datum", "/house/height_datum_m", house(),
                          [](Job& j) { j.house.height_datum_m = 60.0; }));
  cases.push_back(missing("plan.house.barrier-unknown", "/house/barrier", house(),
                          [](Job& j) { j.house.barrier = Barrier::unknown; }));
  cases.push_back(missing("plan.house.footing-unknown", "/house/footing_top_low_m", house(),
                          [](Job& j) { j.house.footing_top_low_m.reset(); }));
  cases.push_back(missing("plan.house.footing-unknown", "/house/footing_top_high_m", house(),
                          [](Job& j) { j.house.footing_top_high_m.reset(); }));
  const auto notSearched = [](std::optional<int> year) {
    return [year](Job& j) {
      j.house.year_built = year;
      j.house.standby.state = StandbyState::not_searched;
      j.looked_for.standby_pipe = Looked::not_looked;
    };
  };
  cases.push_back(
      missing("plan.house.year-unknown", "/house/year_built", house(), notSearched({})));
  cases.push_back(
      missing("plan.standby.not-searched", "/house/standby/state", house(), notSearched(1998)));
  cases.push_back(
      missing("plan.standby.where-unknown", "/house/standby/where", house(), [](Job& j) {
        j.house.standby.state = StandbyState::found;
        j.looked_for.standby_pipe = Looked::present;
      }));
}

void addRingCases(std::vector<CheckCase>& cases) {
  cases.push_back(unsound("plan.ring.none", "/plan/rings", empty(), [](Job& j) {
    j.plan.rings.clear();
    j.plan.rooms.push_back({"r", "", RoomUse::hall, {{0, 0}, {1, 0}, {0, 1}}});
    j.plan.floor_zones.push_back({"z",
                                  "",
                                  FloorKind::ground_bearing_slab,
                                  Oversite::unknown,
                                  false,
                                  {{0, 0}, {1, 0}, {0, 1}}});
  }));
  cases.push_back(unsound("plan.ring.open", "/plan/rings/0/closed", house(),
                          [](Job& j) { j.plan.rings[0].closed = false; }));
  cases.push_back(
      unsound("plan.ring.corners", "/plan/rings/0/corners_m", house(), corners({{0, 0}, {1, 0}})));
  cases.push_back(unsound("plan.ring.short-edge", "/plan/rings/0/corners_m/1", house(),
                          corners({{0, 0}, {10, 0}, {10, 0.0009}, {10, 8}, {0, 8}})));
  cases.push_back(unsound("plan.ring.self-contact", "/plan/rings/0/corners_m", house(),
                          corners({{0, 0}, {10, 0}, {0, 8}, {10, 9}})));
  cases.push_back(unsound("plan.ring.turned", "/plan/rings/0/corners_m", house(),
                          corners({{0, 0}, {0, 8}, {10, 8}, {10, 0}})));
  const PlanBuilder court = PlanBuilder::courtyard();
  cases.push_back(unsound("plan.courtyard.turned", "/plan/rings/1/corners_m", court,
                          corners({{5, 5}, {9, 5}, {9, 8}, {5, 8}}, 1)));
  cases.push_back(unsound("plan.courtyard.outside", "/plan/rings/1", court,
                          corners({{20, 5}, {20, 8}, {22, 8}, {22, 5}}, 1)));
  cases.push_back(unsound("plan.courtyard.outside", "/plan/rings/1", court,
                          corners({{0, 5}, {0, 8}, {9, 8}, {9, 5}}, 1)));  // on the outline
  PlanBuilder twoCourts = PlanBuilder::courtyard();
  twoCourts.hole({{6, 6}, {6, 7}, {7, 7}, {7, 6}});
  cases.push_back(unsound("plan.courtyard.overlap", "/plan/rings/2", twoCourts));
}

void addWallCases(std::vector<CheckCase>& cases) {
  const auto wall = [](std::function<void(Wall&)> change) {
    return [change](Job& j) { change(j.plan.rings[0].walls[2]); };
  };
  const std::string at = "/plan/rings/0/walls/2";
  cases.push_back(unsound("plan.walls.count", "/plan/rings/0/walls", house(),
                          [](Job& j) { j.plan.rings[0].walls.pop_back(); }));
  for (const double thickness : {0.0, -0.1, 2.01}) {
    cases.push_back(unsound("plan.wall.thickness", at + "/thickness_m", house(),
                            wall([=](Wall& w) { w.thickness_m = thickness; })));
  }
  cases.push_back(unsound("plan.wall.free-depth", at + "/free_depth_m", house(),
                          wall([](Wall& w) { w.free_depth_m = -1.0; })));
  cases.push_back(missing("plan.wall.thickness-unknown", at, house(), [](Job& j) {
    j.plan.rings[0].walls[2].thickness_m.reset();
    j.house.wall_thickness_m.reset();
  }));
  cases.push_back(missing("plan.wall.foundation-unknown", at, house(),
                          wall([](Wall& w) { w.foundation = Foundation::unknown; })));
  cases.push_back(missing("plan.wall.ground-unknown", at, house(),
                          wall([](Wall& w) { w.ground = OutsideGround::unknown; })));
  cases.push_back(missing("plan.wall.free-depth-unknown", at, house(),
                          wall([](Wall& w) { w.free_depth_m.reset(); })));
  cases.push_back(
      missing("plan.wall.free-depth-unknown", "/plan/rings/0/walls", house(), [](Job& j) {
        for (Wall& w : j.plan.rings[0].walls) w.free_depth_m.reset();
      }));
}

void addOpeningCases(std::vector<CheckCase>& cases) {
  const std::string at = "/plan/openings/0";
  cases.push_back(unsound("plan.opening.no-wall", at + "/edge", house().window("w", 4, 1, 1)));
  cases.push_back(unsound("plan.opening.no-wall", at + "/ring", house().window("w", 0, 1, 1, 1)));
  cases.push_back(
      unsound("plan.opening.off-wall", at + "/offset_m", house().window("w", 0, 9.0, 1.002)));
  cases.push_back(
      unsound("plan.opening.off-wall", at + "/offset_m", house().window("w", 0, -0.002, 1)));
  cases.push_back(unsound("plan.opening.width", at + "/width_m", house().window("w", 0, 1, 0)));
  cases.push_back(unsound("plan.opening.sill-above-head", at + "/sill_m",
                          house().window("w", 0, 1, 1),
                          [](Job& j) { j.plan.openings[0].sill_m = 2.1; }));
  // Sill 0.9 and head 2.1 of a window upstairs are from its own floor: 2.4 m up at the least.
  cases.push_back(missing("plan.opening.own-floor", at + "/head_m", house().window("w", 0, 1, 1),
                          [](Job& j) { j.plan.openings[0].storey = 1; }));
  cases.push_back(
      missing("plan.opening.own-floor", at + "/head_m", house().window("w", 0, 1, 1), [](Job& j) {
        j.plan.openings[0].storey = 2;
        j.plan.openings[0].sill_m = 3.5;
        j.plan.openings[0].head_m = 4.7;
      }));
  cases.push_back(
      missing("plan.opening.own-floor", at + "/sill_m", house().window("w", 0, 1, 1), [](Job& j) {
        j.plan.openings[0].storey = 1;
        j.plan.openings[0].head_m.reset();
      }));
  cases.push_back(
      missing("plan.opening.upstairs", at + "/sill_m", house().window("w", 0, 1, 1), [](Job& j) {
        j.plan.openings[0].sill_m = 3.6;
        j.plan.openings[0].head_m = 4.8;
      }));
  cases.push_back(unsound("plan.opening.overlap", "/plan/openings/1",
                          house().window("b", 0, 2, 2).window("a", 0, 1, 1.5)));
  cases.push_back(unsound("plan.opening.overlap", "/plan/openings/1",
                          house().window("a", 0, 1, 2).window("b", 0, 2, 2), [](Job& j) {
                            for (Opening& o : j.plan.openings) o.head_m.reset();
                          }));
}

void addServiceCases(std::vector<CheckCase>& cases) {
  const std::string at = "/plan/services/0";
  const auto gas = [](int edge = 0, double offset = 4, int ring = 0) {
    return house().service("gas", ServiceKind::gas, edge, offset, ring);
  };
  cases.push_back(unsound("plan.service.no-wall", at + "/entry/edge", gas(9)));
  cases.push_back(unsound("plan.service.no-wall", at + "/entry/ring", gas(0, 4, 3)));
  cases.push_back(unsound("plan.service.off-wall", at + "/entry/offset_m", gas(0, 10.5)));
  cases.push_back(unsound("plan.service.run-without-points", at + "/run_m", gas(),
                          [](Job& j) { j.plan.services[0].run = RunKnown::drawn; }));
  cases.push_back(unsound("plan.service.run-without-points", at + "/run_m",
                          gas().run("gas", {{1, 1}, {1, 1}})));
  cases.push_back(unsound("plan.service.run-contradicted", at + "/run",
                          gas().run("gas", {{4, 0}, {4, -5}}),
                          [](Job& j) { j.plan.services[0].run = RunKnown::overhead; }));
  cases.push_back(missing("plan.service.run-unknown", at + "/run", gas(),
                          [](Job& j) { j.plan.services[0].run = RunKnown::unknown; }));
  cases.push_back(missing("plan.service.not-located", at + "/located",
                          gas().run("gas", {{4, 0}, {4, -5}}), [](Job&) {}));
  cases.push_back(missing("plan.service.no-record", at + "/locating_record", gas(),
                          [](Job& j) { j.plan.services[0].located = true; }));
}

void addRoomAndZoneCases(std::vector<CheckCase>& cases) {
  const geometry::Polygon bow = {{1, 1}, {3, 1}, {1, 3}, {3, 4}};
  const geometry::Polygon line = {{1, 1}, {3, 1}};
  const geometry::Polygon out = {{9, 1}, {11, 1}, {11, 2}, {9, 2}};
  const geometry::Polygon in = {{1, 1}, {3, 1}, {3, 3}, {1, 3}};
  const auto rooms = [](geometry::Polygon outline) {
    return house().noRooms().room("r", RoomUse::hall, std::move(outline));
  };
  const auto zones = [](geometry::Polygon outline) {
    return house().noZones().zone("z", FloorKind::ground_bearing_slab, std::move(outline));
  };
  const std::string room = "/plan/rooms/0/outline_m";
  const std::string zone = "/plan/floor_zones/0/outline_m";
  cases.push_back(unsound("plan.room.corners", room, rooms(line)));
  cases.push_back(unsound("plan.room.self-contact", room, rooms(bow)));
  cases.push_back(unsound("plan.room.outside", room, rooms(out)));
  cases.push_back(unsound("plan.room.overlap", "/plan/rooms/1/outline_m",
                          house().room("r", RoomUse::hall, in)));
  cases.push_back(missing("plan.room.none", "/plan/rooms", house().noRooms(), [](Job&) {}));
  cases.push_back(missing("plan.room.use-unknown", "/plan/rooms/0/use", house(),
                          [](Job& j) { j.plan.rooms[0].use = RoomUse::unknown; }));
  cases.push_back(unsound("plan.zone.corners", zone, zones(line)));
  cases.push_back(unsound("plan.zone.self-contact", zone, zones(bow)));
  cases.push_back(unsound("plan.zone.outside", zone, zones(out)));
  cases.push_back(unsound("plan.zone.overlap", "/plan/floor_zones/1/outline_m",
                          house().zone("z", FloorKind::ground_bearing_slab, in)));
  cases.push_back(missing("plan.zone.none", "/plan/floor_zones", house().noZones(), [](Job&) {}));
  cases.push_back(missing("plan.zone.kind-unknown", "/plan/floor_zones/0/kind", house(),
                          [](Job& j) { j.plan.floor_zones[0].kind = FloorKind::unknown; }));
  cases.push_back(
      missing("plan.zone.oversite-unknown", "/plan/floor_zones/0/oversite", house(),
              [](Job& j) { j.plan.floor_zones[0].kind = FloorKind::suspended_timber; }));
  // In the courtyard is outside.
  cases.push_back(
      unsound("plan.room.outside", "/plan/rooms/4/outline_m",
              PlanBuilder::courtyard().room("r", RoomUse::hall, {{6, 6}, {7, 6}, {7, 7}, {6, 7}})));
}

void addInnerCases(std::vector<CheckCase>& cases) {
  const std::string wall = "/plan/inner_walls/0";
  const std::string rising = "/plan/rising_walls/0";
  cases.push_back(
      unsound("plan.inner-wall.line", wall + "/line_m", house().innerWall("iw", {{5, 1}})));
  cases.push_back(unsound("plan.inner-wall.thickness", wall + "/thickness_m", parted(),
                          [](Job& j) { j.plan.inner_walls[0].thickness_m = 0.0; }));
  cases.push_back(missing("plan.inner-wall.in-opening", wall + "/line_m",
                          parted().window("w", 0, 4.5, 1.2), [](Job&) {}));
  const auto door = [](InnerDoor d) { return [d](Job& j) { j.plan.inner_doors.push_back(d); }; };
  const std::string at = "/plan/inner_doors/0";
  cases.push_back(unsound("plan.inner-door.no-wall", at + "/wall", parted(),
                          door(innerDoor(1, 0.8, "nowhere"))));
  cases.push_back(
      unsound("plan.inner-door.off-wall", at + "/offset_m", parted(), door(innerDoor(7, 0.8))));
  cases.push_back(
      unsound("plan.inner-door.width", at + "/width_m", parted(), door(innerDoor(1, 0))));
  const auto risingWall = [](RisingWall w) {
    return [w](Job& j) { j.plan.rising_walls.push_back(w); };
  };
  cases.push_back(unsound("plan.rising-wall.line", rising + "/line_m", house(),
                          risingWall({"rw", {}, 0.1, {}})));
  cases.push_back(unsound("plan.rising-wall.thickness", rising + "/thickness_m", house(),
                          risingWall({"rw", {{5, 1}, {5, 7}}, -1, {}})));
  cases.push_back(unsound("plan.rising-wall.gap", rising + "/gaps/0", house(),
                          risingWall({"rw", {{5, 1}, {5, 7}}, 0.1, {{2, 1}}})));
  cases.push_back(unsound("plan.rising-wall.gap", rising + "/gaps/1", house(),
                          risingWall({"rw", {{5, 1}, {5, 7}}, 0.1, {{1, 2}, {5, 6.1}}})));
}

void addHeatingAndOutsideCases(std::vector<CheckCase>& cases) {
  const std::string at = "/plan/radiators/0";
  const auto radiator = [](int edge = 1, double offset = 1, double width = 1, int ring = 0) {
    return house().radiator("r", edge, offset, width, ring);
  };
  cases.push_back(unsound("plan.radiator.no-wall", at + "/on/edge", radiator(7)));
  cases.push_back(unsound("plan.radiator.off-wall", at + "/on/offset_m", radiator(1, 7.5)));
  cases.push_back(unsound("plan.radiator.width", at + "/width_m", radiator(1, 1, -1)));
  cases.push_back(unsound("plan.radiator.line", at + "/line_m", radiator(),
                          [](Job& j) { j.plan.radiators[0].on.reset(); }));
  cases.push_back(unsound("plan.radiator.twice-placed", at + "/line_m", radiator(), [](Job& j) {
    j.plan.radiators[0].line_m = {{1, 1}, {2, 1}};
  }));
  cases.push_back(unsound("plan.heating-pipe.line", "/plan/heating_pipes/0/line_m",
                          house().heatingPipe("p", {{1, 1}})));
  cases.push_back(unsound("plan.outside.points", "/plan/outside/0/points_m",
                          house().outside("g", OutsideKind::gully, {})));
  cases.push_back(unsound("plan.outside.points", "/plan/outside/0/points_m",
                          house().outside("b", OutsideKind::boundary, {{-3, 0}})));
  cases.push_back(
      unsound("plan.outside.self-contact", "/plan/outside/0/points_m",
              house().outside("t", OutsideKind::tank, {{12, 0}, {14, 0}, {12, 2}, {14, 3}})));
}

void addDesignCases(std::vector<CheckCase>& cases) {
  cases.push_back(unsound("plan.core.size", "/design/core_mm", house(), [](Job& j) {
    j.design.core_mm = 39.9;
    j.design.pipe_od_mm = 32;
  }));
  cases.push_back(unsound("plan.core.size", "/design/core_mm", house(),
                          [](Job& j) { j.design.core_mm = 300.1; }));
  cases.push_back(unsound("plan.pipe.size", "/design/pipe_od_mm", house(), [](Job& j) {
    j.design.core_mm = 127;
    j.design.pipe_od_mm = 160;
  }));
  cases.push_back(unsound("plan.pipe.none", "/design/pipe_od_mm", house(),
                          [](Job& j) { j.design.pipe_od_mm = 0; }));
  const std::string at = "/design/sumps/0";
  cases.push_back(unsound("plan.sump.off-ring", at + "/chainage_m", house().sump("s", 0, 36.01)));
  cases.push_back(unsound("plan.sump.off-ring", at + "/chainage_m", house().sump("s", 0, -0.01)));
  cases.push_back(unsound("plan.sump.off-ring", at + "/chainage_m", house().sump("s", 1, 1)));
  const auto inside = [](std::optional<geometry::Point> point) {
    return [point](Job& j) {
      j.design.sumps[0].kind = SumpKind::internal;
      j.design.sumps[0].at_m = point;
    };
  };
  cases.push_back(
      unsound("plan.sump.no-point", at + "/at_m", house().sump("s", 0, 1), inside(std::nullopt)));
  cases.push_back(unsound("plan.sump.outside", at + "/at_m", house().sump("s", 0, 1),
                          inside(geometry::Point{12, 1})));
  const std::string w = "/design/waivers/0";
  const auto with = [](std::function<void(Waiver&)> change) {
    return [change](Job& j) { change(j.design.waivers[0]); };
  };
  cases.push_back(
      unsound("plan.waiver.no-sump", w + "/sump", waived(), with([](Waiver& v) { v.sump = "x"; })));
  cases.push_back(
      unsound("plan.waiver.no-rule", w + "/rule", waived(), with([](Waiver& v) { v.rule = ""; })));
  cases.push_back(unsound("plan.waiver.no-reason", w + "/reason", waived(),
                          with([](Waiver& v) { v.reason = ""; })));
  cases.push_back(
      unsound("plan.waiver.no-name", w + "/name", waived(), with([](Waiver& v) { v.name = ""; })));
  cases.push_back(
      unsound("plan.waiver.no-date", w + "/date", waived(), with([](Waiver& v) { v.date = ""; })));
  cases.push_back(unsound("plan.date.bad", w + "/date", waived(),
                          with([](Waiver& v) { v.date = "1 March 2026"; })));
  cases.push_back(unsound("plan.waiver.off-ring", w + "/chainage_m", waived(),
                          with([](Waiver& v) { v.chainage_m = 99; })));
}

}  // namespace

std::vector<CheckCase> checkCases() {
  std::vector<CheckCase> cases;
  addRecordCases(cases);
  addLookedForCases(cases);
  addHouseCases(cases);
  addRingCases(cases);
  addWallCases(cases);
  addOpeningCases(cases);
  addServiceCases(cases);
  addRoomAndZoneCases(cases);
  addInnerCases(cases);
  addHeatingAndOutsideCases(cases);
  addDesignCases(cases);
  addSurveyCases(cases);
  addRunCases(cases);
  return cases;
}

}  // namespace sumpwright::plan
