#pragma once
// What a kind of rule must do: give its findings as exact spans of the perimeter, and the margin
// at one place. One small file per kind implements it; siting/RuleList.cpp lists them all.

#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "geometry/Point.h"
#include "perimeter/Behind.h"
#include "perimeter/Perimeter.h"
#include "perimeter/StringPaths.h"
#include "plan/Job.h"
#include "rules/Finding.h"
#include "rules/RuleSheet.h"

namespace sumpwright::rules {

/// A part of a ring by chainage, from <= to; may reach below 0 or past the length.
struct RingRange {
  int ring = 0;
  double from_m = 0.0;
  double to_m = 0.0;
};

/// A thing of the plan, flattened for the rules. Jambs, door widths and corners have ranges along
/// the wall; everything else has shapes in plan, and takes up the heights from low_m to high_m over
/// all of its shape (metres above finished floor). Where its heights are not known it is taken to
/// stand at every height.
struct Thing {
  std::string id;
  ThingKind kind = ThingKind::window;
  base::Message label;
  std::vector<geometry::Polyline> shapes;  ///< one point, a polyline, or the corners of an area
  bool area = false;
  std::vector<RingRange> ranges;
  bool located = true;                          ///< services: found on site, and on record
  std::optional<perimeter::Place> street_from;  ///< services: entry whose buried run is unknown
  bool nowhere = false;  ///< services: it is there, but neither entry nor run is known; no shapes
  double low_m = -std::numeric_limits<double>::infinity();
  double high_m = std::numeric_limits<double>::infinity();
  std::shared_ptr<const perimeter::StringTarget> string;  ///< of things that a string is drawn to
};

/// The run above a hole once its discharge is placed. It goes along with the hole: the outlet keeps
/// its height, and its distance to one side of the hole round the ring.
struct PlacedRun {
  std::string sump;     ///< whose run it is
  double outlet_m = 0;  ///< mouth of the outlet, above finished floor
  double shift_m = 0;   ///< outlet's chainage less the hole's, the shorter way round the ring
  plan::FanPlace fan_place = plan::FanPlace::outside_low;
  double fan_m = 0;          ///< middle of the fan, above finished floor
  bool fan_assumed = false;  ///< the job states no height for it
  double foot_m = -0.5;      ///< the lowest that its riser may stand
  bool operator==(const PlacedRun&) const = default;
};

/// The hole of a sump whose height or fall is stated. It keeps both along the wall.
struct PlacedHole {
  std::string sump;
  std::optional<double> entry_m;   ///< centre of the core at the outside face, above finished floor
  std::optional<double> fall_deg;  ///< outwards and down
  bool operator==(const PlacedHole&) const = default;
};

/// What all rules look at: one plan, one sheet, one outlet mode. Built once per study.
struct Site {
  perimeter::Perimeter perimeter;
  plan::Job job;
  RuleSheet sheet;
  plan::OutletMode outlet = plan::OutletMode::low;
  double core_m = 0.127;
  double pipe_od_m = 0.110;
  std::vector<Thing> things;
  std::vector<Thing> later;  ///< judged in height only: openings of other storeys, eaves and roof
  std::optional<PlacedRun> run;
  std::optional<PlacedHole> hole;
  std::string sump;  ///< whose fan and cable are judged; "": of the run's, else of the first cored
  std::vector<std::vector<int>> things_of_rule;  ///< by rule index: indices into things
  /// Only where some rule measures along a string.
  std::shared_ptr<const perimeter::StringPaths> strings;
  /// By ring, by edge.
  std::vector<std::vector<std::vector<perimeter::Span>>> rooms_behind;
  std::vector<std::vector<std::vector<perimeter::Span>>> zones_behind;

  int indexOf(const Rule& rule) const { return static_cast<int>(&rule - sheet.rules.data()); }
};

/// Everything rules look at, from a sound job and its perimeter; no run is placed in it.
Site makeSite(perimeter::Perimeter perimeter, const plan::Job& job, const RuleSheet& sheet,
              plan::OutletMode outlet, double core_m);

/// Half of the hole or pipe to take off a centre distance for a rule: the larger of the parts that
/// are judged in plan. Nothing when no part of the rule is: all are up at the eaves, or the run is
/// placed and judged in height.
std::optional<double> halfWidth_m(const Rule& rule, const Site& site);
/// True when the rule speaks of outlet, fan or riser.
bool isAboutRun(const Rule& rule);
/// True when the rule also speaks of a part that is not placed yet (riser mode: fan, outlet,
/// riser).
bool partlyUnjudged(const Rule& rule, const Site& site);

/// Of the cored sump with that id, or for "" of the first cored one; nothing where it states
/// neither height nor fall.
std::optional<PlacedHole> placedHole(const plan::Job& job, const std::string& sump);

/// What a rule of distances asks for here: in_height_m where that counts, else needed_m. Contract:
/// the rule has a figure.
double needed_m(const Rule& rule, const Site& site);

/// The nearest of a rule's things: its distance from the edge of hole or pipe. thing_index is -1
/// for a wall (the one at the place).
struct Nearest {
  double distance_m = 0.0;
  int thing_index = -1;
};

/// What a kind of rule does. The list of all kinds is siting/RuleList.cpp.
struct RuleJudge {
  RuleKind kind;
  /// Appends the findings of one rule: one per thing and connected part of a ring.
  void (*spans)(const Rule&, const Site&, std::vector<FindingSpan>& out);
  /// What is nearest to a place; nothing where the rule has no distance or no thing.
  std::optional<Nearest> (*nearest)(const Rule&, const Site&, perimeter::Place);
  /// Distance to a thing, the least over chainages [from, to] of one ring, 0 <= from <= to <=
  /// length; nothing where the rule has no distance.
  std::optional<double> (*least)(const Rule&, const Site&, const Thing&, int ring, double from_m,
                                 double to_m);
};

extern const RuleJudge kClearance;
extern const RuleJudge kAlongWall;
extern const RuleJudge kDrillLine;
extern const RuleJudge kWallRule;
extern const RuleJudge kRoomBehind;
extern const RuleJudge kFittingBehind;
extern const RuleJudge kFloorBehind;

}  // namespace sumpwright::rules
