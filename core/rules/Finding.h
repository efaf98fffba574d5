#pragma once
// What the rules say of a place, and of stretches of wall.

#include <optional>
#include <string>
#include <vector>

#include "base/Message.h"
#include "plan/Kinds.h"

namespace sumpwright::rules {

/// Of a place or stretch, best first; the worst of its findings decides.
enum class State { clear, advised_against, not_proven, refused };

/// "clear", "advised-against", "not-proven", "refused".
const char* stateName(State state);

/// binding: refused. advisory: advised against. unknown: not proven, nobody looked or not yet
/// judged.
enum class Weight { advisory, unknown, binding };

const char* weightName(Weight weight);

/// What a place is whose worst finding weighs this much.
State stateOf(Weight weight);

/// Whether this finding may be waived, with the thing's own facts taken in.
struct Waivable {
  bool allowed = false;
  plan::Evidence evidence = plan::Evidence::reason;
  std::optional<double> not_within_m;  ///< never when the distance is this or less
  bool operator==(const Waivable&) const = default;
};

struct Finding {
  std::string rule;   ///< id of the rule; "discharge" for the built-in riser note
  std::string thing;  ///< id of the thing, wall, zone or room; "" where there is none
  Weight weight = Weight::binding;
  std::optional<double> distance_m;  ///< from the edge of hole or pipe; nothing where no distance.
                                     ///< Negative: the hole or pipe overlaps the thing
  std::optional<double> needed_m;
  base::Message thing_label;  ///< phrase: "the kitchen window"; empty id where there is no thing
  base::Message reason;       ///< phrase without end stop, e.g. "gas not located"
  Waivable waivable;
  bool least_bad = false;  ///< a least-bad place may stand against it
  bool operator==(const Finding&) const = default;
};

/// A finding that holds on part of a ring, from < to in [0, length]. to_m is never in it; from_m
/// only where from_in says so (a distance exactly met is clear, but a span that is cut at chainage
/// 0 or that begins with a wall holds its first place).
struct FindingSpan {
  int ring = 0;
  double from_m = 0.0;
  double to_m = 0.0;
  bool from_in = false;
  Finding finding;       ///< distance_m = the least over the span
  int rule_index = -1;   ///< in RuleSheet::rules; -1: built in
  int thing_index = -1;  ///< in Site::things; -1: none
  bool of_run = false;   ///< about the placed run: judged in height
};

struct Margin {
  std::string rule;
  std::string thing;
  base::Message thing_label;
  base::Message part;  ///< phrase: of the placed run what is nearest; empty id: the hole, in plan
  double distance_m = 0.0;
  double needed_m = 0.0;
  double margin_m = 0.0;  ///< distance - needed
  bool close = false;     ///< |margin| below the survey's accuracy
  bool operator==(const Margin&) const = default;
};

}  // namespace sumpwright::rules
