#pragma once
// What the pointer is there for while the house is surveyed: choosing and dragging what is drawn,
// laying something new, measuring. The one that holds is kept by session/TaskDesk.h.
//
// A further task: a value here and its group in Task.cpp; its line in app/window/TaskActions.cpp
// (menu, strip, keys and manual follow from that); a canvas/PlanHand.h that serves it, given to the
// canvas in PlanCanvas::makeHands(). A hand that drags what is already drawn serves Task::choose.

#include <optional>

#include "plan/Kinds.h"

namespace sumpwright::tools {

enum class Task {
  choose,
  lay_window,
  lay_door,
  lay_glazed_door,
  lay_garage_door,
  lay_air_vent,
  lay_flue_terminal,
  lay_soffit_vent,
  lay_roof_window,
  lay_gas,
  lay_electricity,
  lay_telecom,
  lay_oil,
  lay_water,
  lay_drain,
  lay_waste,
  lay_radiator,
  lay_pier,
  lay_chimney_breast,
  lay_beam_bearing,
  lay_movement_joint,
  lay_weep_hole,
  lay_stepped_footing,
  // Rings and their walls.
  lay_house,
  lay_courtyard,
  tape_courtyard,
  split_wall,
  // At a point (LayTask.h).
  lay_socket,
  lay_fused_spur,
  lay_consumer_unit,
  lay_sink,
  lay_bath,
  lay_shower,
  lay_wc,
  lay_basin,
  lay_appliance,
  lay_gully,
  lay_air_conditioner,
  lay_test_hole,
  lay_sump_inside,
  lay_standby_sump,
  // Along a line.
  run_gas,
  run_electricity,
  run_telecom,
  run_oil,
  run_water,
  run_drain,
  run_waste,
  lay_heating_pipe,
  lay_inner_wall,
  lay_rising_wall,
  lay_gap,
  lay_path,
  lay_boundary,
  lay_neighbour_opening,
  lay_overhead_line,
  // Over an area.
  lay_room,
  lay_floor_zone,
  lay_chamber,
  lay_tank,
  lay_septic_tank,
  lay_soakaway,
  lay_deck,
  lay_sitting_place,
  lay_steps,
  lay_carport,
  // Looking.
  measure,
  dimension,
};

/// One button of the strip each.
enum class TaskGroup { choose, outline, opening, service, on_wall, at_point, line, area, measure };
inline constexpr int kTaskGroups = 9;

TaskGroup groupOf(Task task);

/// The kind a task lays; nothing where it lays none of these.
std::optional<plan::OpeningKind> openingKindOf(Task task);
std::optional<plan::ServiceKind> serviceKindOf(Task task);
std::optional<plan::WallFeatureKind> featureKindOf(Task task);

}  // namespace sumpwright::tools
