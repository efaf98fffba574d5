#pragma once
// What a kind of rule must do: give its findings as exact spans of the perimeter, and the margin
// at one place. One small file per kind implements it; siting/RuleList.cpp lists them all.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "geometry/Point.h"
#include "perimeter/Behind.h"
#include "perimeter/Perimeter.h"
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
/// the wall; everything else has shapes in plan.
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
};

/// A thing that no rule can judge in plan yet (openings of other storeys).
struct LaterThing {
  std::string id;
  ThingKind kind = ThingKind::window;
  base::Message label;
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
  std::vector<LaterThing> later;
  std::vector<std::vector<int>> things_of_rule;  ///< by rule index: indices into things
  /// By ring, by edge.
  std::vector<std::vector<std::vector<perimeter::Span>>> rooms_behind;
  std::vector<std::vector<std::vector<perimeter::Span>>> zones_behind;

  int indexOf(const Rule& rule) const { return static_cast<int>(&rule - sheet.rules.data()); }
};

/// Everything rules look at, from a sound job and its perimeter.
Site makeSite(perimeter::Perimeter perimeter, const plan::Job& job, const RuleSheet& sheet,
              plan::OutletMode outlet, double core_m);

/// Half of the hole or pipe to take off a centre distance for a rule: the larger of the parts that
/// are judged now. Nothing when no part of the rule can be judged (all are up at the eaves).
std::optional<double> halfWidth_m(const Rule& rule, const Site& site);
/// True when the rule also speaks of a part that is not placed yet (riser mode: fan, outlet,
/// riser).
bool partlyUnjudged(const Rule& rule, const Site& site);

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
