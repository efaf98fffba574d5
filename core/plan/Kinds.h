#pragma once
// The closed lists a job file may choose from. Text forms are the snake_case names themselves
// (KindNames.h); the zero value is always the default: "unknown" or "not looked" wherever a safe
// answer needs somebody to have looked.

namespace sumpwright::plan {

/// dwarf: the low wall under a conservatory's glazing.
enum class WallKind { outside, party, dwarf };
enum class Elevation { unmarked, front, rear, gable };  ///< which side of the house the wall is
enum class Foundation { unknown, strip, rubble, raft_edge, ground_beam, insulated_raft, retaining };
/// Whether the fill under the floor goes on under the house next door.
enum class PartyBelow { unknown, cut, continuous };
enum class OutsideGround { unknown, own, shared, neighbour, public_ground };  ///< whose it is

/// What a wall is made of; a wall lists its layers from the outside in.
enum class LayerKind {
  render,
  external_insulation,
  cladding,
  brick,
  block,
  stone,
  concrete,
  timber_frame,
  cavity,
  insulation,
  board
};

/// Something in or on a wall that no hole is cored through or beside.
enum class WallFeatureKind {
  pier,
  chimney_breast,
  beam_bearing,
  movement_joint,
  weep_hole,
  stepped_footing
};

enum class GroundSurface { unknown, soil, paving, concrete, tarmac, gravel, deck };

/// soffit_vent: into the roof, under the eaves; roof_window: in the slope above the eaves.
enum class OpeningKind {
  window,
  door,
  glazed_door,
  garage_door,
  air_vent,
  flue_terminal,
  soffit_vent,
  roof_window
};
/// Whether an opening is of the roof: it leaves no gap in the wall's body.
constexpr bool isOfRoof(OpeningKind kind) {
  return kind == OpeningKind::soffit_vent || kind == OpeningKind::roof_window;
}
/// yes: opens; fixed: a pane that does not open; vent: permanently or usually open (trickle vent,
/// air brick, extract grille, cat flap, dryer); intake: mechanical supply air.
enum class Opens { yes, fixed, vent, intake };

enum class ServiceKind { gas, electricity, telecom, oil, water, drain, waste };
/// Where the service runs between the wall and the street. overhead: no buried part.
enum class RunKnown { unknown, drawn, overhead };
enum class DrainKind { unknown, foul, surface, land_drain };  ///< what a drain carries

/// Asked of somebody; "unknown" until answered.
enum class YesNo { unknown, no, yes };

enum class RoomUse {
  unknown,
  living,
  bedroom,
  kitchen,
  dining,
  hall,
  stairs,
  bathroom,
  shower,
  wc,
  utility,
  store,
  garage,
  office
};

enum class FloorKind { unknown, ground_bearing_slab, suspended_concrete, suspended_timber };
enum class HousePart { house, extension, conservatory, porch, garage };  ///< what a floor is of
enum class Oversite { unknown, sealed, open };  ///< ground cover under a suspended floor

enum class BelowFloor { unknown, own_footing, on_slab };  ///< what carries an inner wall

enum class SupplyKind { socket, fused_spur, consumer_unit };
enum class FittingKind { sink, bath, shower, wc, basin, appliance };

enum class OutsideKind {
  path,
  gully,
  inspection_chamber,
  tank,
  air_conditioner,
  deck,
  neighbour_opening,
  boundary,
  soakaway,
  septic_tank,
  overhead_line,
  sitting_place,
  steps,
  carport
};

/// Tri-state of a survey. "present" and "looked_none" both mean somebody looked.
enum class Looked { not_looked, present, looked_none };

enum class SurveyMethod { not_stated, tape, laser, traced_picture, map_outline };
/// How the closing error of a taped ring was shared out over its walls.
enum class Sharing { not_shared, compass_rule, least_squares };
/// Which end of a thing a dimension is tied to.
enum class ThingEnd { start, end, middle };
enum class DisplayUnits { metric, imperial };
enum class Measured { outside, inside };  ///< from which face an offset was taped

enum class BuildType { unknown, cavity_masonry, solid_masonry, timber_frame, stone_rubble, other };
enum class Fill { unknown, clean_stone, graded, none };  ///< what lies under the slab
enum class Barrier { unknown, none, in_floor, lapped_through_wall };
enum class StandbyState { not_searched, searched_not_found, found };
enum class StandbyIdentity { assumed, label, traced };

enum class SumpKind { cored, internal, standby };
enum class OutletMode { low, riser };  ///< low at the hole, or a riser to the eaves
enum class FanPlace { outside_low, outside_high, roof_space };
/// Whether the gap round the pipe is sealed to the inner leaf.
enum class AnnulusSeal { unknown, sealed, not_sealed };

/// Whether a quote shows the margin as a line of its own or within its lines.
enum class MarginShown { as_book, own_line, in_lines };
/// Of a line of a quote.
enum class QuoteUnit { each, metre, square_metre, hour };
/// What a line of the job's own is; only material is bought.
enum class QuoteKind { material, labour };

/// What stands behind a waiver; a rule sheet says which one a rule accepts.
enum class Evidence { reason, locating_record, drains_located, engineers_note, consent };

}  // namespace sumpwright::plan
