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
};

/// One button of the strip each.
enum class TaskGroup { choose, opening, service, on_wall, at_point, line_or_area, measure };
inline constexpr int kTaskGroups = 7;

TaskGroup groupOf(Task task);

/// The kind a task lays; nothing where it lays none of these.
std::optional<plan::OpeningKind> openingKindOf(Task task);
std::optional<plan::ServiceKind> serviceKindOf(Task task);
std::optional<plan::WallFeatureKind> featureKindOf(Task task);

}  // namespace sumpwright::tools
