#pragma once
// A jurisdiction's or a firm's rules as data. Every figure carries its source or its mark.
// Text form: JSON, described by resources/schema/rules.schema.json.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/Result.h"
#include "base/Source.h"
#include "plan/Kinds.h"

namespace sumpwright::rules {

using base::Mark;
using base::Source;

/// A number with its source; metres unless the member says otherwise.
struct Figure {
  double value = 0.0;
  Source source;
  bool operator==(const Figure&) const = default;
};

/// binding refuses, advisory warns and costs score, preference only moves score.
enum class Severity { binding, advisory, preference };

/// What a rule is about. Until they are designed, dig and void are judged as the hole, riser and
/// fan as the outlet; pipe and cable have no rule yet.
enum class Part { hole, dig, void_, riser, fan, outlet, pipe, cable };

enum class RuleKind {
  clearance,       ///< straight distance in plan from a thing
  along_wall,      ///< distance along the wall from jambs or corners
  drill_line,      ///< distance of the drill line from heating
  wall,            ///< what the wall is (attribute)
  room_behind,     ///< use of the room behind the wall
  fitting_behind,  ///< distance from a fitting that stands in a room behind the wall
  floor_behind,    ///< floor zone behind the wall
  section,         ///< whether a hole can be built there
  supply,          ///< length of cable to a socket or spur
  suction,         ///< one sump per so much floor, in clean stone that no wall crosses
  discharge        ///< where the run's outlet ends, and what its fan and riser pass by
};

/// What a rule of the kind discharge measures. All but `enclosed` wait until the discharge is
/// placed; that one takes an outlet that is not placed, low at the hole, to end there. A fan in the
/// roof space stands at no height that is known: only `roof_space` speaks of it.
enum class DischargeMeasure {
  above_ground,  ///< outlet, or fan, above the outside ground under it
  above_eaves,   ///< outlet above the eaves of its wall
  under_eaves,   ///< an outlet that ends below the eaves: as far below them
  below_roof,    ///< an outlet that ends below the eaves: as far above the ground
  jet,           ///< things above an upright outlet and in the way of its jet
  near,          ///< things by their straight distance, in height as in plan
  over,          ///< things below a placed outlet, by their distance in plan
  enclosed,      ///< a low outlet where walls enclose it, or the passage is narrower
  below_outlet,  ///< fan below the outlet
  roof_space     ///< a fan in a roof space where somebody lives; no figure
};

/// Kinds of thing a distance rule can look at. Openings are told apart by kind and by whether they
/// open; only the ground storey is judged in plan.
enum class ThingKind {
  window,  ///< opens, or has a trickle vent
  door,    ///< door or garage door
  glazed_door,
  air_vent,      ///< vent, air brick, extract grille
  fixed_window,  ///< pane that does not open
  intake,        ///< mechanical air intake
  flue_terminal,
  neighbour_opening,
  gas,
  electricity,
  telecom,
  oil,
  water,
  drain,
  waste,  ///< entry and drawn run
  gully,
  inspection_chamber,
  tank,
  air_conditioner,
  boundary,
  radiator,
  heating_pipe,
  sink,
  bath_fitting,
  wc_fitting,
  other_fitting,
  jamb,        ///< jambs of windows and vents
  door_width,  ///< doors: their whole width
  corner,
  wall_feature,  ///< pier, chimney breast, beam bearing, joint, weep hole, stepped footing
  soakaway,
  septic_tank,
  soffit_vent,     ///< in or under the eaves; judged in height only
  roof_window,     ///< judged in height only, as if it stood in the wall below
  bedroom_window,  ///< a window that opens and has a bedroom behind, or an unknown room upstairs
  sitting_place,
  path,
  steps,
  deck,
  carport,
  overhead_line,  ///< drawn, or where an overhead supply lands on the wall
  party_line      ///< outside face of a party wall under which the fill goes on next door, or may
};

enum class WallAttribute { kind, elevation, foundation, ground, free_depth_m };

/// straight: through walls and corners alike. string: stretched round them (clearance only).
enum class PathKind { straight, string };
/// edge: from the edge of the hole or pipe; centre: from its middle.
enum class MeasuredFrom { edge, centre };

/// Whether a contractor may accept what the rule refuses, and on what evidence.
struct WaiverRule {
  bool allowed = false;
  plan::Evidence evidence = plan::Evidence::reason;
  std::optional<Figure> not_within_m;  ///< never within this distance, whatever the evidence
  bool only_located = false;           ///< and only for a thing that was located
  bool operator==(const WaiverRule&) const = default;
};

struct Rule {
  std::string id;     ///< stable, unique in the sheet
  std::string title;  ///< short name for lanes and tables, from the sheet
  RuleKind kind = RuleKind::clearance;
  bool enabled = true;
  Severity severity = Severity::binding;
  std::vector<Part> applies_to;
  std::vector<ThingKind> things;   ///< clearance, along_wall, drill_line, fitting_behind
  std::optional<Figure> needed_m;  ///< of distance kinds; absent: a gap, then enabled is false
  std::optional<Figure> most_m2;   ///< suction: floor one sump serves, m2
  std::optional<Figure> most_m;    ///< suction: how far from it; supply: cable
  /// drill_line: instead of needed_m, in height, once the height of the hole is stated.
  std::optional<Figure> in_height_m;
  PathKind path = PathKind::straight;
  MeasuredFrom from = MeasuredFrom::edge;
  DischargeMeasure measure = DischargeMeasure::near;  ///< discharge
  std::optional<Figure> clear_below_m;  ///< clearance: a thing that ends this far below the outlet,
                                        ///< or further, is clear of it
  WallAttribute attribute = WallAttribute::kind;  ///< wall
  std::vector<std::string> values;                ///< wall, room_behind: the values objected to;
                                    ///< floor_behind: the values accepted (others are refused)
  /// wall, floor_behind, discharge, section (footing top), supply (none drawn): what is unknown is
  /// not-proven.
  bool unknown_gates = false;
  WaiverRule waiver;
  bool least_bad = false;  ///< a least-bad place may stand against this rule
  /// wall: says nothing of a run whose discharge is placed.
  bool unplaced_only = false;
  std::string reason;  ///< kinds without a distance: said instead of what stands there, such as
                       ///< "the rear wall is a party wall"; a phrase without end stop
  Source source;
  std::string note;
  bool operator==(const Rule&) const = default;
};

/// A kind that must have been looked for (key of looked_for) and the rule that needs it.
struct Gate {
  std::string looked_for;
  std::string rule;
  bool least_bad = false;
  bool operator==(const Gate&) const = default;
};

/// One value -> share of the part's points, 0..1.
struct ValueScore {
  std::string value;
  double share = 0.0;
  bool operator==(const ValueScore&) const = default;
};

enum class PartKind { margin, wall, room, reach, supply, pipe };

struct ScorePart {
  PartKind kind = PartKind::margin;
  std::string title;
  double weight = 0.0;  ///< points out of the sum of all weights
  /// margin: full points from this least margin on. supply, pipe: up to this length of cable or
  /// depth of dig.
  std::optional<Figure> full_at_m;
  std::optional<Figure> none_at_m;  ///< supply, pipe: no points from this on; without: not judged
  /// reach: full points from this share of the floor on, 0..1; absent: all of it.
  std::optional<Figure> full_at_share;
  std::vector<ValueScore> values;  ///< wall: by elevation, room: by use, pipe: by whether a hole
                                   ///< fits (fits, fits_if_footing); "other" is the rest
  Source source;
  bool operator==(const ScorePart&) const = default;
};

struct SurveyAccuracy {
  plan::SurveyMethod method = plan::SurveyMethod::not_stated;
  Figure accuracy_m;
  bool operator==(const SurveyAccuracy&) const = default;
};

/// Something no published figure was found for; shown to the user, never filled.
struct SheetGap {
  std::string what;
  std::string note;
  bool operator==(const SheetGap&) const = default;
};

/// What is usual there, for the papers; a sentence or the rest of one.
struct PracticeLine {
  std::string about;  ///< services, depths (of services), again (re-test), supply (of the fan)
  std::string text;
  Source source;
  bool operator==(const PracticeLine&) const = default;
};

struct RuleSheet {
  std::string id;
  std::string title;
  std::string jurisdiction;
  std::string note;
  std::vector<Rule> rules;  ///< in the order of lanes and tables
  std::vector<Gate> gates;
  Figure corner_turn_deg;     ///< a corner is a turn of over this, degrees
  Figure default_core_mm;     ///< where the job states none
  Figure default_pipe_od_mm;  ///< outside; where the job states none
  std::vector<SurveyAccuracy> survey_accuracy;
  std::vector<ScorePart> score;
  Figure advisory_cost;  ///< points one advisory finding takes off the scaled 0-100 score
  std::vector<SheetGap> gaps;
  std::vector<PracticeLine> practice;  ///< what the sheet has no line for, papers leave out
  std::optional<Figure> mains_volts;   ///< absent: 230 is taken
  bool operator==(const RuleSheet&) const = default;

  const Rule* find(std::string_view ruleId) const;
  /// nullptr: the sheet does not say.
  const PracticeLine* practiceOn(std::string_view about) const;
  /// Accuracy for a method; that of "not_stated" as the sheet gives it.
  double accuracy_m(plan::SurveyMethod method) const;
};

inline constexpr std::size_t kMaxSheetBytes = 1024U * 1024U;

/// Reads a sheet. Problems (all "unreadable", ids "sheet.*", with pointers): not JSON, wrong type,
/// unknown word, missing source, needed_m absent on an enabled distance rule, weights not positive,
/// duplicate rule id, gate naming no rule, newer version, too large.
base::Result<RuleSheet> readRuleSheet(std::string_view text);

}  // namespace sumpwright::rules
