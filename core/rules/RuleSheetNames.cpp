#include "rules/RuleSheetNames.h"

#include <array>

namespace sumpwright::plan {

#define SUMPWRIGHT_NAMES(Type, ...)                                               \
  template <>                                                                     \
  std::span<const std::string_view> namesOf<rules::Type>() {                      \
    static constexpr auto names = std::to_array<std::string_view>({__VA_ARGS__}); \
    return names;                                                                 \
  }

template <>
std::span<const std::string_view> namesOf<rules::Mark>() {
  return base::kMarkNames;
}

SUMPWRIGHT_NAMES(Severity, "binding", "advisory", "preference")
SUMPWRIGHT_NAMES(Part, "hole", "dig", "void", "riser", "fan", "outlet", "pipe", "cable")
SUMPWRIGHT_NAMES(RuleKind, "clearance", "along_wall", "drill_line", "wall", "room_behind",
                 "fitting_behind", "floor_behind", "section", "supply", "suction", "discharge")
SUMPWRIGHT_NAMES(ThingKind, "window", "door", "glazed_door", "air_vent", "fixed_window", "intake",
                 "flue_terminal", "neighbour_opening", "gas", "electricity", "telecom", "oil",
                 "water", "drain", "waste", "gully", "inspection_chamber", "tank",
                 "air_conditioner", "boundary", "radiator", "heating_pipe", "sink", "bath_fitting",
                 "wc_fitting", "other_fitting", "jamb", "door_width", "corner", "wall_feature",
                 "soakaway", "septic_tank", "soffit_vent", "roof_window", "bedroom_window",
                 "sitting_place", "path", "steps", "deck", "carport", "overhead_line", "party_line")
SUMPWRIGHT_NAMES(WallAttribute, "kind", "elevation", "foundation", "ground", "free_depth_m")
SUMPWRIGHT_NAMES(DischargeMeasure, "above_ground", "above_eaves", "under_eaves", "below_roof",
                 "jet", "near", "over", "enclosed", "below_outlet", "roof_space")
SUMPWRIGHT_NAMES(PathKind, "straight", "string")
SUMPWRIGHT_NAMES(MeasuredFrom, "edge", "centre")
SUMPWRIGHT_NAMES(PartKind, "margin", "wall", "room", "reach", "supply", "pipe")

#undef SUMPWRIGHT_NAMES

}  // namespace sumpwright::plan
