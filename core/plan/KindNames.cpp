#include "plan/KindNames.h"

#include <array>

namespace sumpwright::plan {

#define SUMPWRIGHT_NAMES(Type, ...)                                               \
  template <>                                                                     \
  std::span<const std::string_view> namesOf<Type>() {                             \
    static constexpr auto names = std::to_array<std::string_view>({__VA_ARGS__}); \
    return names;                                                                 \
  }

SUMPWRIGHT_NAMES(WallKind, "outside", "party", "dwarf")
SUMPWRIGHT_NAMES(Elevation, "unmarked", "front", "rear", "gable")
SUMPWRIGHT_NAMES(Foundation, "unknown", "strip", "rubble", "raft_edge", "ground_beam",
                 "insulated_raft", "retaining")
SUMPWRIGHT_NAMES(OutsideGround, "unknown", "own", "shared", "neighbour", "public")
SUMPWRIGHT_NAMES(PartyBelow, "unknown", "cut", "continuous")
SUMPWRIGHT_NAMES(LayerKind, "render", "external_insulation", "cladding", "brick", "block", "stone",
                 "concrete", "timber_frame", "cavity", "insulation", "board")
SUMPWRIGHT_NAMES(WallFeatureKind, "pier", "chimney_breast", "beam_bearing", "movement_joint",
                 "weep_hole", "stepped_footing")
SUMPWRIGHT_NAMES(GroundSurface, "unknown", "soil", "paving", "concrete", "tarmac", "gravel", "deck")
SUMPWRIGHT_NAMES(DrainKind, "unknown", "foul", "surface", "land_drain")
SUMPWRIGHT_NAMES(YesNo, "unknown", "no", "yes")
SUMPWRIGHT_NAMES(HousePart, "house", "extension", "conservatory", "porch", "garage")
SUMPWRIGHT_NAMES(Sharing, "not_shared", "compass_rule", "least_squares")
SUMPWRIGHT_NAMES(ThingEnd, "start", "end", "middle")
SUMPWRIGHT_NAMES(OpeningKind, "window", "door", "glazed_door", "garage_door", "air_vent",
                 "flue_terminal", "soffit_vent", "roof_window")
SUMPWRIGHT_NAMES(Opens, "yes", "fixed", "vent", "intake")
SUMPWRIGHT_NAMES(ServiceKind, "gas", "electricity", "telecom", "oil", "water", "drain", "waste")
SUMPWRIGHT_NAMES(RunKnown, "unknown", "drawn", "overhead")
SUMPWRIGHT_NAMES(RoomUse, "unknown", "living", "bedroom", "kitchen", "dining", "hall", "stairs",
                 "bathroom", "shower", "wc", "utility", "store", "garage", "office")
SUMPWRIGHT_NAMES(FloorKind, "unknown", "ground_bearing_slab", "suspended_concrete",
                 "suspended_timber")
SUMPWRIGHT_NAMES(Oversite, "unknown", "sealed", "open")
SUMPWRIGHT_NAMES(BelowFloor, "unknown", "own_footing", "on_slab")
SUMPWRIGHT_NAMES(SupplyKind, "socket", "fused_spur", "consumer_unit")
SUMPWRIGHT_NAMES(FittingKind, "sink", "bath", "shower", "wc", "basin", "appliance")
SUMPWRIGHT_NAMES(OutsideKind, "path", "gully", "inspection_chamber", "tank", "air_conditioner",
                 "deck", "neighbour_opening", "boundary", "soakaway", "septic_tank",
                 "overhead_line", "sitting_place", "steps", "carport")
SUMPWRIGHT_NAMES(Looked, "not_looked", "present", "looked_none")
SUMPWRIGHT_NAMES(SurveyMethod, "not_stated", "tape", "laser", "traced_picture", "map_outline")
SUMPWRIGHT_NAMES(DisplayUnits, "metric", "imperial")
SUMPWRIGHT_NAMES(Measured, "outside", "inside")
SUMPWRIGHT_NAMES(BuildType, "unknown", "cavity_masonry", "solid_masonry", "timber_frame",
                 "stone_rubble", "other")
SUMPWRIGHT_NAMES(Fill, "unknown", "clean_stone", "graded", "none")
SUMPWRIGHT_NAMES(Barrier, "unknown", "none", "in_floor", "lapped_through_wall")
SUMPWRIGHT_NAMES(StandbyState, "not_searched", "searched_not_found", "found")
SUMPWRIGHT_NAMES(StandbyIdentity, "assumed", "label", "traced")
SUMPWRIGHT_NAMES(SumpKind, "cored", "internal", "standby")
SUMPWRIGHT_NAMES(OutletMode, "low", "riser")
SUMPWRIGHT_NAMES(FanPlace, "outside_low", "outside_high", "roof_space")
SUMPWRIGHT_NAMES(MarginShown, "as_book", "own_line", "in_lines")
SUMPWRIGHT_NAMES(QuoteUnit, "each", "m", "m2", "hour")
SUMPWRIGHT_NAMES(QuoteKind, "material", "labour")
SUMPWRIGHT_NAMES(AnnulusSeal, "unknown", "sealed", "not_sealed")
SUMPWRIGHT_NAMES(Evidence, "reason", "locating_record", "drains_located", "engineers_note",
                 "consent")

#undef SUMPWRIGHT_NAMES

}  // namespace sumpwright::plan
