// Cases for what the survey records of walls, ground, drains, zones, field book and underlay.

#include <cmath>

#include "core/plan/JobCases.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;
using support::PlanBuilder;
using Change = std::function<void(Job&)>;

class SurveyCases {
 public:
  explicit SurveyCases(std::vector<CheckCase>& cases) : m_cases(cases) {}

  void unsound(std::string id, std::string pointer, const Change& change,
               PlanBuilder house = PlanBuilder::rectangle()) {
    m_cases.push_back(
        {std::move(id), std::move(pointer), Gravity::unsound, house.with(change).job()});
  }
  void missing(std::string id, std::string pointer, const Change& change,
               PlanBuilder house = PlanBuilder::rectangle()) {
    m_cases.push_back(
        {std::move(id), std::move(pointer), Gravity::missing, house.with(change).job()});
  }

 private:
  std::vector<CheckCase>& m_cases;
};

void addPermissionCases(SurveyCases& cases) {
  cases.missing("plan.permissions.unknown", "/permissions",
                [](Job& j) { j.permissions.flats = YesNo::unknown; });
  for (YesNo Permissions::*answer :
       {&Permissions::protected_structure, &Permissions::conservation_area, &Permissions::flats,
        &Permissions::tenanted}) {
    cases.missing("plan.permissions.no-consent", "/permissions/consent",
                  [answer](Job& j) { j.permissions.*answer = YesNo::yes; });
  }
  cases.missing("plan.eaves.wildlife", "/house/eaves_wildlife",
                [](Job& j) { j.house.eaves_wildlife = Looked::present; });
  cases.missing("plan.eaves.not-looked", "/house/eaves_wildlife", [](Job& j) {
    j.house.eaves_wildlife = Looked::not_looked;
    j.design.outlet = OutletMode::riser;
  });
}

void addMakeUpCases(SurveyCases& cases) {
  const std::string at = "/plan/rings/0/walls/2";
  const auto layers = [](std::vector<Layer> list) {
    return [list](Job& j) { j.plan.rings[0].walls[2].layers = list; };
  };
  cases.unsound("plan.wall.layer-thickness", at + "/layers/1/thickness_m",
                layers({{LayerKind::brick, 0.35}, {LayerKind::cavity, 0.0}}));
  cases.unsound("plan.wall.layers-sum", at + "/layers", layers({{LayerKind::brick, 0.215}}));
  cases.unsound("plan.wall.layers-sum", "/house/wall_layers", [](Job& j) {
    j.house.wall_layers = {{LayerKind::block, 0.215}};
  });
  const std::string all = "/plan/rings/0/walls";
  cases.missing("plan.wall.external-insulation", all,
                layers({{LayerKind::external_insulation, 0.1}, {LayerKind::block, 0.25}}));
  cases.missing("plan.wall.timber-frame", all,
                layers({{LayerKind::brick, 0.2}, {LayerKind::timber_frame, 0.15}}));
  cases.missing("plan.wall.stone", all, layers({{LayerKind::stone, 0.34}}));
  const auto ground = [](double offset, double level) {
    return [=](Job& j) {
      j.house.dpc_height_m = 0.0;
      j.plan.rings[0].walls[2].ground_points = {{offset, level, GroundSurface::paving}};
    };
  };
  cases.unsound("plan.ground.off-wall", at + "/ground_points/0/offset_m", ground(10.5, -0.2));
  cases.missing("plan.ground.near-dpc", at + "/ground_points/0/level_m", ground(2.0, -0.14));
  cases.missing("plan.house.footing-above-ground", "/house/footing_top_high_m",
                [](Job& j) { j.house.footing_top_high_m = *j.house.ground_level_m + 0.01; });
  cases.missing("plan.house.footing-above-ground", "/house/footing_top_high_m", [](Job& j) {
    // Only the walls say how high the ground is.
    j.house.ground_level_m.reset();
    for (Wall& wall : j.plan.rings[0].walls) wall.ground_level_m = -0.30;
    j.house.footing_top_high_m = -0.29;
  });
}

void addZoneCases(SurveyCases& cases) {
  const std::string at = "/plan/floor_zones/0";
  const auto zone = [](std::function<void(FloorZone&)> change) {
    return [change](Job& j) { change(j.plan.floor_zones[0]); };
  };
  cases.missing("plan.zone.own-build", at + "/part",
                zone([](FloorZone& z) { z.part = HousePart::conservatory; }));
  cases.missing("plan.zone.deep", at + "/level_m", zone([](FloorZone& z) { z.level_m = -1.2; }));
  cases.unsound("plan.house.negative", at + "/slab_m", zone([](FloorZone& z) { z.slab_m = -0.1; }));
  cases.unsound("plan.house.year-after-survey", at + "/year_built", [](Job& j) {
    j.surveyed_on = "2026-03-01";
    j.plan.floor_zones[0].year_built = 2027;
  });
}

void addDrainCases(SurveyCases& cases) {
  const std::string at = "/plan/services/0";
  const auto with = [](ServiceKind kind) {
    return PlanBuilder::rectangle().service("s", kind, 0, 4);
  };
  const auto service = [](std::function<void(Service&)> change) {
    return [change](Job& j) { change(j.plan.services[0]); };
  };
  cases.unsound("plan.service.not-a-drain", at + "/drain_kind",
                service([](Service& s) { s.trapped = YesNo::yes; }), with(ServiceKind::gas));
  cases.missing("plan.service.land-drain", at + "/drain_kind",
                service([](Service& s) { s.drain_kind = DrainKind::land_drain; }),
                with(ServiceKind::drain));
  cases.missing("plan.service.drain-unknown", at + "/invert_m",
                service([](Service& s) { s.invert_m.reset(); }), with(ServiceKind::drain));
  cases.missing("plan.service.drain-unknown", at + "/drain_kind",
                service([](Service& s) { s.drain_kind = DrainKind::unknown; }),
                with(ServiceKind::drain));
  cases.missing(
      "plan.outside.overhead", "/plan/outside/0/points_m", [](Job&) {},
      PlanBuilder::rectangle().outside("o", OutsideKind::overhead_line, {{-3, -3}, {12, -3}}));
}

void addFeatureCases(SurveyCases& cases) {
  const std::string at = "/plan/wall_features/0";
  const auto feature = [](OnWall place, double width) {
    return [=](Job& j) {
      j.plan.wall_features.push_back({"f", "", WallFeatureKind::pier, place, width});
    };
  };
  cases.unsound("plan.feature.no-wall", at + "/edge", feature({0, 4, 1.0}, 0.4));
  cases.unsound("plan.feature.off-wall", at + "/offset_m", feature({0, 1, 7.8}, 0.4));
  cases.unsound("plan.feature.width", at + "/width_m", feature({0, 1, 1.0}, -0.1));
}

void addFieldBookCases(SurveyCases& cases) {
  const auto taped = [](std::vector<TapedWall> walls) {
    return [walls](Job& j) { j.plan.rings[0].taped = walls; };
  };
  cases.unsound("plan.taped.wall", "/plan/rings/0/taped/1",
                taped({{90, 10}, {0, 0}, {270, 10}, {180, 8}}));
  cases.missing("plan.taped.poor", "/plan/rings/0/taped",
                taped({{90, 10}, {0, 8}, {270, 10.05}, {180, 8}}));
  cases.missing("plan.taped.count", "/plan/rings/0/taped", taped({{90, 10}, {0, 8}}));
}

void addDrawingCases(SurveyCases& cases) {
  const auto dimension = [](DimensionEnd from, DimensionEnd to) {
    return [=](Job& j) { j.plan.dimensions.push_back({"d", from, to, 0.5}); };
  };
  cases.unsound("plan.dimension.no-thing", "/plan/dimensions/0/from/thing",
                dimension({"nothing"}, {"w0.0"}));
  cases.unsound("plan.dimension.no-thing", "/plan/dimensions/0/to/thing",
                dimension({"w0.0"}, {"room"}));  // a room has a middle only
  const auto underlay = [](std::function<void(Underlay&)> change) {
    return [change](Job& j) {
      j.plan.underlay.emplace();
      j.plan.underlay->path = "photos/estate.png";
      change(*j.plan.underlay);
    };
  };
  for (const char* path : {"", "/home/a.png", "../a.png", "a/../../b.png", "c:/a.png", "a\\b"}) {
    cases.missing("plan.underlay.path", "/plan/underlay/path",
                  underlay([path](Underlay& u) { u.path = path; }));
  }
  cases.unsound("plan.underlay.scale", "/plan/underlay/m_per_px",
                underlay([](Underlay& u) { u.m_per_px = 0.0; }));
  cases.unsound("plan.underlay.rectangle", "/plan/underlay/straighten",
                underlay([](Underlay& u) { u.straighten.emplace().width_m = 3.0; }));
}

void addBarrelCases(SurveyCases& cases) {
  cases.unsound("plan.barrel.length", "/design/barrel_length_m",
                [](Job& j) { j.design.barrel_length_m = 0.0; });
  cases.missing(
      "plan.barrel.short", "/design/sumps/0/chainage_m",
      [](Job& j) { j.design.barrel_length_m = 0.3; }, PlanBuilder::rectangle().sump("s", 0, 5.0));
}

}  // namespace

void addSurveyCases(std::vector<CheckCase>& cases) {
  SurveyCases survey(cases);
  addPermissionCases(survey);
  addMakeUpCases(survey);
  addZoneCases(survey);
  addDrainCases(survey);
  addFeatureCases(survey);
  addFieldBookCases(survey);
  addDrawingCases(survey);
  addBarrelCases(survey);
}

}  // namespace sumpwright::plan
