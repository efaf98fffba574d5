#pragma once
// The job format, once: which key holds which member. Reading, writing, the set of known keys and
// the order of problems all come from these lists. A new field is one line here, one in
// resources/schema/job.schema.json and one in the struct.
//
// Internal to core/plan.

#include <cmath>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

#include "plan/Job.h"

namespace sumpwright::plan {

struct Range {
  double low = 0.0;
  double high = 0.0;
};

/// What a number may be, by the unit its key ends in; contract of JobText.h. Own figures, wide
/// enough never to meet a house: they keep arithmetic in its good range.
constexpr Range rangeOf(std::string_view key) {
  if (key == "chainage_m") return {-1e6, 1e6};  // a ring may be longer than it is wide
  if (key.ends_with("_m")) return {-1e4, 1e4};
  if (key.ends_with("_mm")) return {-1e5, 1e5};
  if (key.ends_with("_deg")) return {-3600, 3600};
  if (key.ends_with("_pa")) return {-1e5, 1e5};
  if (key.ends_with("_m3_s")) return {-1e3, 1e3};
  if (key.ends_with("_w")) return {0, 1e6};
  if (key.ends_with("_l")) return {0, 1e5};
  if (key == "speed") return {0, 10};
  if (key == "year_built") return {0, 9999};
  if (key == "fade") return {0, 1};
  if (key == "m_per_px") return {0, 1e3};
  if (key.ends_with("_px")) return {-1e6, 1e6};
  if (key == "storey") return {-10, 200};
  return {0, 1e5};  // ring, edge, bends, days, shares, ends of a spread
}

template <class Owner, class T>
struct Field {
  std::string_view key;
  T Owner::*member;
  bool required = false;
};

/// A member whose own keys stand among those of its owner.
template <class Owner, class T>
struct Flat {
  T Owner::*member;
};

template <class Owner, class T>
constexpr Field<Owner, T> may(std::string_view key, T Owner::*member) {
  return {key, member, false};
}
template <class Owner, class T>
constexpr Field<Owner, T> must(std::string_view key, T Owner::*member) {
  return {key, member, true};
}
template <class Owner, class T>
constexpr Flat<Owner, T> flat(T Owner::*member) {
  return {member};
}

/// The fields of T, in the order they are written.
template <class T>
inline constexpr auto kFields = nullptr;

template <>
inline constexpr auto kFields<OnWall> = std::tuple(may("ring", &OnWall::ring),
                                                   must("edge", &OnWall::edge),
                                                   must("offset_m", &OnWall::offset_m));

template <>
inline constexpr auto kFields<Layer> = std::tuple(must("kind", &Layer::kind),
                                                  must("thickness_m", &Layer::thickness_m));

template <>
inline constexpr auto kFields<GroundPoint> = std::tuple(must("offset_m", &GroundPoint::offset_m),
                                                        must("level_m", &GroundPoint::level_m),
                                                        may("surface", &GroundPoint::surface));

template <>
inline constexpr auto kFields<TapedWall> = std::tuple(must("bearing_deg", &TapedWall::bearing_deg),
                                                      must("length_m", &TapedWall::length_m),
                                                      may("square", &TapedWall::square));

template <>
inline constexpr auto kFields<Wall> = std::tuple(
    may("id", &Wall::id), may("name", &Wall::name), may("kind", &Wall::kind),
    may("elevation", &Wall::elevation), may("thickness_m", &Wall::thickness_m),
    may("foundation", &Wall::foundation), may("ground", &Wall::ground),
    may("free_depth_m", &Wall::free_depth_m), may("ground_level_m", &Wall::ground_level_m),
    may("layers", &Wall::layers), may("ground_points", &Wall::ground_points),
    may("party_below", &Wall::party_below), may("eaves_m", &Wall::eaves_m));

template <>
inline constexpr auto kFields<Ring> = std::tuple(must("corners_m", &Ring::corners),
                                                 may("closed", &Ring::closed),
                                                 may("walls", &Ring::walls),
                                                 may("taped", &Ring::taped),
                                                 may("shared_by", &Ring::shared_by));

template <>
inline constexpr auto kFields<Opening> = std::tuple(
    must("id", &Opening::id), may("name", &Opening::name), must("kind", &Opening::kind),
    may("opens", &Opening::opens), flat(&Opening::at), must("width_m", &Opening::width_m),
    may("sill_m", &Opening::sill_m), may("head_m", &Opening::head_m),
    may("storey", &Opening::storey), may("measured", &Opening::measured));

template <>
inline constexpr auto kFields<Service> = std::tuple(
    must("id", &Service::id), may("name", &Service::name), must("kind", &Service::kind),
    may("entry", &Service::entry), may("run", &Service::run), may("run_m", &Service::run_m),
    may("located", &Service::located), may("locating_record", &Service::locating_record),
    may("drain_kind", &Service::drain_kind), may("invert_m", &Service::invert_m),
    may("trapped", &Service::trapped));

template <>
inline constexpr auto kFields<Room> = std::tuple(must("id", &Room::id), may("name", &Room::name),
                                                 may("use", &Room::use),
                                                 must("outline_m", &Room::outline_m),
                                                 may("old_tiles", &Room::old_tiles));

template <>
inline constexpr auto kFields<FloorZone> =
    std::tuple(must("id", &FloorZone::id), may("name", &FloorZone::name),
               may("kind", &FloorZone::kind), may("oversite", &FloorZone::oversite),
               may("underfloor_heating", &FloorZone::underfloor_heating),
               must("outline_m", &FloorZone::outline_m), may("part", &FloorZone::part),
               may("year_built", &FloorZone::year_built), may("level_m", &FloorZone::level_m),
               may("slab_m", &FloorZone::slab_m), may("barrier", &FloorZone::barrier));

template <>
inline constexpr auto kFields<InnerWall> = std::tuple(must("id", &InnerWall::id),
                                                      must("line_m", &InnerWall::line_m),
                                                      may("thickness_m", &InnerWall::thickness_m),
                                                      may("below_floor", &InnerWall::below_floor));

template <>
inline constexpr auto kFields<InnerDoor> = std::tuple(must("id", &InnerDoor::id),
                                                      must("wall", &InnerDoor::wall),
                                                      must("offset_m", &InnerDoor::offset_m),
                                                      must("width_m", &InnerDoor::width_m));

template <>
inline constexpr auto kFields<Gap> = std::tuple(must("from_m", &Gap::from_m),
                                                must("to_m", &Gap::to_m));

template <>
inline constexpr auto kFields<RisingWall> = std::tuple(must("id", &RisingWall::id),
                                                       must("line_m", &RisingWall::line_m),
                                                       may("thickness_m", &RisingWall::thickness_m),
                                                       may("gaps", &RisingWall::gaps));

template <>
inline constexpr auto kFields<Radiator> = std::tuple(must("id", &Radiator::id),
                                                     may("name", &Radiator::name),
                                                     may("on", &Radiator::on),
                                                     may("width_m", &Radiator::width_m),
                                                     may("line_m", &Radiator::line_m));

template <>
inline constexpr auto kFields<HeatingPipe> = std::tuple(must("id", &HeatingPipe::id),
                                                        may("name", &HeatingPipe::name),
                                                        must("line_m", &HeatingPipe::line_m));

template <>
inline constexpr auto kFields<Supply> = std::tuple(must("id", &Supply::id),
                                                   may("name", &Supply::name),
                                                   must("kind", &Supply::kind),
                                                   must("at_m", &Supply::at_m),
                                                   may("rcd_shared", &Supply::rcd_shared),
                                                   may("circuit", &Supply::circuit));

template <>
inline constexpr auto kFields<Fitting> = std::tuple(must("id", &Fitting::id),
                                                    may("name", &Fitting::name),
                                                    must("kind", &Fitting::kind),
                                                    must("at_m", &Fitting::at_m));

template <>
inline constexpr auto kFields<OutsideThing> = std::tuple(must("id", &OutsideThing::id),
                                                         may("name", &OutsideThing::name),
                                                         must("kind", &OutsideThing::kind),
                                                         must("points_m", &OutsideThing::points_m));

template <>
inline constexpr auto kFields<TestHole> = std::tuple(must("id", &TestHole::id),
                                                     may("name", &TestHole::name),
                                                     must("at_m", &TestHole::at_m));

template <>
inline constexpr auto kFields<WallFeature> = std::tuple(must("id", &WallFeature::id),
                                                        may("name", &WallFeature::name),
                                                        must("kind", &WallFeature::kind),
                                                        flat(&WallFeature::at),
                                                        may("width_m", &WallFeature::width_m));

template <>
inline constexpr auto kFields<DimensionEnd> = std::tuple(must("thing", &DimensionEnd::thing),
                                                         may("end", &DimensionEnd::end));

template <>
inline constexpr auto kFields<Dimension> = std::tuple(must("id", &Dimension::id),
                                                      must("from", &Dimension::from),
                                                      must("to", &Dimension::to),
                                                      may("off_m", &Dimension::off_m));

template <>
inline constexpr auto kFields<Straighten> = std::tuple(must("corners_px", &Straighten::corners_px),
                                                       must("width_m", &Straighten::width_m),
                                                       must("height_m", &Straighten::height_m));

template <>
inline constexpr auto kFields<Underlay> = std::tuple(
    must("path", &Underlay::path), may("page", &Underlay::page), must("at_m", &Underlay::at_m),
    must("m_per_px", &Underlay::m_per_px), may("turn_deg", &Underlay::turn_deg),
    may("straighten", &Underlay::straighten), may("fade", &Underlay::fade),
    may("locked", &Underlay::locked), may("shown", &Underlay::shown));

template <>
inline constexpr auto kFields<Plan> =
    std::tuple(may("north_deg", &Plan::north_deg), may("rings", &Plan::rings),
               may("openings", &Plan::openings), may("services", &Plan::services),
               may("rooms", &Plan::rooms), may("floor_zones", &Plan::floor_zones),
               may("inner_walls", &Plan::inner_walls), may("inner_doors", &Plan::inner_doors),
               may("rising_walls", &Plan::rising_walls), may("radiators", &Plan::radiators),
               may("heating_pipes", &Plan::heating_pipes), may("supplies", &Plan::supplies),
               may("fittings", &Plan::fittings), may("outside", &Plan::outside),
               may("test_holes", &Plan::test_holes), may("wall_features", &Plan::wall_features),
               may("dimensions", &Plan::dimensions), may("underlay", &Plan::underlay));

template <>
inline constexpr auto kFields<Appliance> = std::tuple(must("id", &Appliance::id),
                                                      may("name", &Appliance::name),
                                                      may("open_flued", &Appliance::open_flued),
                                                      may("where", &Appliance::where));

template <>
inline constexpr auto kFields<StandbySump> =
    std::tuple(may("state", &StandbySump::state), may("identity", &StandbySump::identity),
               may("at_m", &StandbySump::at_m), may("where", &StandbySump::where),
               may("drain_test", &StandbySump::drain_test));

template <>
inline constexpr auto kFields<House> = std::tuple(
    may("year_built", &House::year_built), may("build_type", &House::build_type),
    may("wall_thickness_m", &House::wall_thickness_m), may("cavity_m", &House::cavity_m),
    may("slab_m", &House::slab_m), may("screed_m", &House::screed_m),
    may("insulation_m", &House::insulation_m), may("hardcore_m", &House::hardcore_m),
    may("fill", &House::fill), may("ground_level_m", &House::ground_level_m),
    may("dpc_height_m", &House::dpc_height_m), may("footing_top_low_m", &House::footing_top_low_m),
    may("footing_top_high_m", &House::footing_top_high_m), may("barrier", &House::barrier),
    may("barrier_level_m", &House::barrier_level_m), may("height_datum", &House::height_datum),
    may("height_datum_m", &House::height_datum_m), may("appliances", &House::appliances),
    may("standby", &House::standby), may("wall_layers", &House::wall_layers),
    may("eaves_wildlife", &House::eaves_wildlife), may("eaves_m", &House::eaves_m),
    may("eaves_overhang_m", &House::eaves_overhang_m), may("roof_lived_in", &House::roof_lived_in));

template <>
inline constexpr auto kFields<Spread> = std::tuple(must("low", &Spread::low),
                                                   must("high", &Spread::high));

template <>
inline constexpr auto kFields<GroundGuess> =
    std::tuple(may("permeability_m2", &GroundGuess::permeability_m2),
               may("fill_depth_m", &GroundGuess::fill_depth_m),
               may("leakage_m_s_pa", &GroundGuess::leakage_m_s_pa),
               may("joint_width_mm", &GroundGuess::joint_width_mm),
               may("footing_m2_s_pa", &GroundGuess::footing_m2_s_pa),
               may("exposed_m_s_pa", &GroundGuess::exposed_m_s_pa));

template <>
inline constexpr auto kFields<HoleReading> = std::tuple(must("hole", &HoleReading::hole),
                                                        must("suction_pa",
                                                             &HoleReading::suction_pa),
                                                        may("sd_pa", &HoleReading::sd_pa));

template <>
inline constexpr auto kFields<SumpPlace> = std::tuple(may("ring", &SumpPlace::ring),
                                                      may("chainage_m", &SumpPlace::chainage_m),
                                                      may("at_m", &SumpPlace::at_m));

template <>
inline constexpr auto kFields<PressureTest> =
    std::tuple(must("id", &PressureTest::id), may("date", &PressureTest::date),
               may("sump", &PressureTest::sump), may("stood", &PressureTest::stood),
               may("fan", &PressureTest::fan), may("flow_m3_s", &PressureTest::flow_m3_s),
               may("pit_pa", &PressureTest::pit_pa), may("readings", &PressureTest::readings),
               may("notes", &PressureTest::notes));

template <>
inline constexpr auto kFields<SuctionFacts> =
    std::tuple(may("target_pa", &SuctionFacts::target_pa), may("limit_pa", &SuctionFacts::limit_pa),
               may("pit_l", &SuctionFacts::pit_l), may("ground", &SuctionFacts::ground),
               may("tests", &SuctionFacts::tests), may("use_tests", &SuctionFacts::use_tests));

template <>
inline constexpr auto kFields<Discharge> = std::tuple(may("ring", &Discharge::ring),
                                                      must("chainage_m", &Discharge::chainage_m),
                                                      must("height_m", &Discharge::height_m));

template <>
inline constexpr auto kFields<Sump> = std::tuple(
    must("id", &Sump::id), may("kind", &Sump::kind), may("ring", &Sump::ring),
    may("chainage_m", &Sump::chainage_m), may("at_m", &Sump::at_m), may("entry_m", &Sump::entry_m),
    may("fall_deg", &Sump::fall_deg), may("pit_l", &Sump::pit_l),
    may("discharge", &Sump::discharge), may("fan_place", &Sump::fan_place),
    may("fan_height_m", &Sump::fan_height_m), may("supply", &Sump::supply));

template <>
inline constexpr auto kFields<Waiver> =
    std::tuple(must("id", &Waiver::id), must("sump", &Waiver::sump), must("rule", &Waiver::rule),
               may("thing", &Waiver::thing), may("ring", &Waiver::ring),
               must("chainage_m", &Waiver::chainage_m), may("evidence", &Waiver::evidence),
               may("reason", &Waiver::reason), may("name", &Waiver::name),
               may("date", &Waiver::date), may("lapsed", &Waiver::lapsed));

template <>
inline constexpr auto kFields<FanPickPoint> = std::tuple(
    must("flow_m3_s", &FanPickPoint::flow_m3_s), must("pressure_pa", &FanPickPoint::pressure_pa),
    may("power_w", &FanPickPoint::power_w));

template <>
inline constexpr auto kFields<FanPick> = std::tuple(may("table", &FanPick::table),
                                                    may("id", &FanPick::id),
                                                    may("title", &FanPick::title),
                                                    may("points", &FanPick::points),
                                                    may("speed", &FanPick::speed));

template <>
inline constexpr auto kFields<PipeRun> = std::tuple(may("before_m", &PipeRun::before_m),
                                                    may("after_m", &PipeRun::after_m),
                                                    may("bends_before", &PipeRun::bends_before),
                                                    may("bends_after", &PipeRun::bends_after));

template <>
inline constexpr auto kFields<QuoteLine> = std::tuple(
    must("id", &QuoteLine::id), may("item", &QuoteLine::item), may("text", &QuoteLine::text),
    may("quantity", &QuoteLine::quantity), may("unit_price", &QuoteLine::unit_price),
    may("left_out", &QuoteLine::left_out), may("offered", &QuoteLine::offered),
    may("unit", &QuoteLine::unit), may("kind", &QuoteLine::kind));

template <>
inline constexpr auto kFields<Quote> = std::tuple(
    may("number", &Quote::number), may("price_book", &Quote::price_book), may("date", &Quote::date),
    may("valid_days", &Quote::valid_days), may("tax_percent", &Quote::tax_percent),
    may("margin_percent", &Quote::margin_percent), may("margin_shown", &Quote::margin_shown),
    may("provisional", &Quote::provisional), may("lines", &Quote::lines));

template <>
inline constexpr auto kFields<Running> = std::tuple(may("degree_days", &Running::degree_days),
                                                    may("house_air", &Running::house_air),
                                                    may("per_kwh", &Running::per_kwh),
                                                    may("heat_per_kwh", &Running::heat_per_kwh));

template <>
inline constexpr auto kFields<Design> = std::tuple(
    may("outlet", &Design::outlet), may("core_mm", &Design::core_mm),
    may("pipe_od_mm", &Design::pipe_od_mm), may("barrel_length_m", &Design::barrel_length_m),
    may("sumps", &Design::sumps), may("waivers", &Design::waivers), may("fan", &Design::fan),
    may("shared_fan", &Design::shared_fan), may("pipe", &Design::pipe),
    may("annulus", &Design::annulus), may("silencer", &Design::silencer),
    may("running", &Design::running), may("quote", &Design::quote));

template <>
inline constexpr auto kFields<LookedFor> =
    std::tuple(may("openings", &LookedFor::openings), may("gas", &LookedFor::gas),
               may("electricity", &LookedFor::electricity), may("water", &LookedFor::water),
               may("telecom", &LookedFor::telecom), may("oil", &LookedFor::oil),
               may("drain", &LookedFor::drain), may("flue_terminal", &LookedFor::flue_terminal),
               may("heating", &LookedFor::heating), may("standby_pipe", &LookedFor::standby_pipe),
               may("open_flue", &LookedFor::open_flue));

template <>
inline constexpr auto kFields<Permissions> = std::tuple(
    may("protected_structure", &Permissions::protected_structure),
    may("conservation_area", &Permissions::conservation_area), may("flats", &Permissions::flats),
    may("tenanted", &Permissions::tenanted), may("consent", &Permissions::consent));

template <>
inline constexpr auto kFields<Job> =
    std::tuple(must("id", &Job::id), may("address", &Job::address), may("client", &Job::client),
               may("surveyor", &Job::surveyor), may("surveyed_on", &Job::surveyed_on),
               may("rule_sheet", &Job::rule_sheet), may("display_units", &Job::display_units),
               may("survey_method", &Job::survey_method), may("notes", &Job::notes),
               may("photos", &Job::photos), may("looked_for", &Job::looked_for),
               may("permissions", &Job::permissions), may("house", &Job::house),
               may("plan", &Job::plan), may("suction", &Job::suction), may("design", &Job::design));

/// Whether T is an object of the format.
template <class T>
inline constexpr bool kDescribed =
    !std::is_same_v<std::remove_cvref_t<decltype(kFields<T>)>, std::nullptr_t>;

template <class T>
inline constexpr bool kIsFlat = false;
template <class Owner, class T>
inline constexpr bool kIsFlat<Flat<Owner, T>> = true;

/// visit(field) for each Field of T, flat members entered through `enter(flat)`.
template <class T, class Visit, class Enter>
constexpr void forEachField(Visit&& visit, Enter&& enter) {
  std::apply(
      [&](const auto&... fields) {
        const auto one = [&](const auto& field) {
          if constexpr (kIsFlat<std::remove_cvref_t<decltype(field)>>) {
            enter(field);
          } else {
            visit(field);
          }
        };
        (one(fields), ...);
      },
      kFields<T>);
}

/// visit(key) for each key of T, flat members' too.
template <class T, class Visit>
constexpr void forEachKey(Visit&& visit) {
  const auto enter = [&]<class Owner, class Inner>(const Flat<Owner, Inner>&) {
    forEachKey<Inner>(visit);
  };
  forEachField<T>([&](const auto& field) { visit(field.key); }, enter);
}

}  // namespace sumpwright::plan
