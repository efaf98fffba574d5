#include "tools/LayTask.h"

namespace sumpwright::tools {

namespace {

/// The kinds stand in the order of their own lists.
template <class Kind>
std::optional<Kind> kindWithin(Task task, Task first, Task last, Kind of_first) {
  if (task < first || task > last) return std::nullopt;
  return static_cast<Kind>(static_cast<int>(of_first) + static_cast<int>(task) -
                           static_cast<int>(first));
}

template <class T, class Kind>
LayModel ofKind(Kind kind) {
  T thing;
  thing.kind = kind;
  return LayModel(plan::Thing(std::move(thing)));
}

std::optional<plan::OutsideKind> outsideKindOf(Task task) {
  switch (task) {
    case Task::lay_gully:
      return plan::OutsideKind::gully;
    case Task::lay_air_conditioner:
      return plan::OutsideKind::air_conditioner;
    case Task::lay_chamber:
      return plan::OutsideKind::inspection_chamber;
    case Task::lay_path:
      return plan::OutsideKind::path;
    case Task::lay_boundary:
      return plan::OutsideKind::boundary;
    case Task::lay_neighbour_opening:
      return plan::OutsideKind::neighbour_opening;
    case Task::lay_overhead_line:
      return plan::OutsideKind::overhead_line;
    case Task::lay_tank:
      return plan::OutsideKind::tank;
    case Task::lay_septic_tank:
      return plan::OutsideKind::septic_tank;
    case Task::lay_soakaway:
      return plan::OutsideKind::soakaway;
    case Task::lay_deck:
      return plan::OutsideKind::deck;
    case Task::lay_sitting_place:
      return plan::OutsideKind::sitting_place;
    case Task::lay_steps:
      return plan::OutsideKind::steps;
    case Task::lay_carport:
      return plan::OutsideKind::carport;
    default:
      return std::nullopt;
  }
}

}  // namespace

std::optional<LayModel> layModelOf(Task task) {
  if (const auto kind = outsideKindOf(task)) return ofKind<plan::OutsideThing>(*kind);
  if (const auto kind =
          kindWithin(task, Task::lay_socket, Task::lay_consumer_unit, plan::SupplyKind::socket)) {
    return ofKind<plan::Supply>(*kind);
  }
  if (const auto kind =
          kindWithin(task, Task::lay_sink, Task::lay_appliance, plan::FittingKind::sink)) {
    return ofKind<plan::Fitting>(*kind);
  }
  if (const auto kind = kindWithin(task, Task::run_gas, Task::run_waste, plan::ServiceKind::gas)) {
    return ofKind<plan::Service>(*kind);
  }
  switch (task) {
    case Task::lay_test_hole:
      return LayModel(plan::Thing(plan::TestHole{}));
    case Task::lay_sump_inside:
      return LayModel(LaySumpInside{plan::SumpKind::internal});
    case Task::lay_standby_sump:
      return LayModel(LaySumpInside{plan::SumpKind::standby});
    case Task::lay_heating_pipe:
      return LayModel(plan::Thing(plan::HeatingPipe{}));
    case Task::lay_inner_wall:
      return LayModel(plan::Thing(plan::InnerWall{}));
    case Task::lay_rising_wall:
      return LayModel(plan::Thing(plan::RisingWall{}));
    case Task::lay_room:
      return LayModel(plan::Thing(plan::Room{}));
    case Task::lay_floor_zone:
      return LayModel(plan::Thing(plan::FloorZone{}));
    case Task::lay_house:
      return LayModel(LayOutline{});
    case Task::lay_courtyard:
      return LayModel(LayCourtyard{});
    case Task::tape_courtyard:
      return LayModel(LayStart{});
    default:
      return std::nullopt;
  }
}

}  // namespace sumpwright::tools
