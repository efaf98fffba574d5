#pragma once
// Rules on outlet, fan and riser, judged in height once the discharge is placed (Site::run): the
// clearance and wall rules that speak of those parts, and the kind `discharge`. A riser that goes
// sideways is judged over all of its way. The run goes along with the hole, so findings are exact
// spans of the hole's chainage, like all others.

#include <optional>
#include <string>
#include <vector>

#include "rules/Finding.h"
#include "rules/Judge.h"

namespace sumpwright::build {

/// What a rule of the kind discharge says where no discharge is placed: an outlet low at the hole
/// between walls. Its nearest and least know nothing; the functions below do.
extern const rules::RuleJudge kDischarge;

/// Appends what the rule says of the placed run, marked `of_run`, distances the least of each span;
/// nothing where no run is placed or the rule does not speak of it.
void addRunSpans(const rules::Rule& rule, const rules::Site& site,
                 std::vector<rules::FindingSpan>& out);

/// Whether a binding rule refuses the way of the placed run from above that hole to its outlet: the
/// leg that goes sideways and what goes up from its end. Straight above the hole: no. Needs a
/// placed run.
bool isWayRefused(const rules::Site& site, perimeter::Place hole);

/// A finding of addRunSpans() with its distance and words at one place of the hole.
rules::Finding runFindingAt(const rules::Rule& rule, const rules::Site& site,
                            const rules::Finding& finding, perimeter::Place hole);

/// The thing (or ground, or eaves) that leaves the placed run the least distance over what the rule
/// needs. Nothing where the rule measures none.
struct RunNearest {
  double distance_m = 0.0;
  std::string thing;  ///< "" for ground and eaves
  base::Message label;
  base::Message part;  ///< phrase: outlet, fan or riser
};
std::optional<RunNearest> nearestOfRun(const rules::Rule& rule, const rules::Site& site,
                                       perimeter::Place hole);

/// Things of a rule in height: of the ground storey, of other storeys, of eaves and roof.
std::vector<const rules::Thing*> thingsInHeight(const rules::Rule& rule, const rules::Site& site);

}  // namespace sumpwright::build
