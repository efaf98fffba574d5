#pragma once
// Rule kind 7: one sump serves so much floor and so far, a rule of thumb for clean stone.

#include <optional>
#include <vector>

#include "base/Message.h"
#include "rules/Judge.h"

namespace sumpwright::suction {

/// Why the rule of thumb has nothing to say of a house: it is about clean stone that no wall
/// crosses. A phrase; nothing where it may be asked. `fill`: instead of the house's.
std::optional<base::Message> whyNoThumb(const plan::Job& job,
                                        std::optional<plan::Fill> fill = std::nullopt);

/// The rule asked of sumps that stand somewhere, by the figures of its sheet.
struct SumpThumb {
  double area_m2 = 0.0;              ///< of the floor, next door apart
  std::optional<double> farthest_m;  ///< of the one sump: its farthest corner of the floor
  bool held = false;
};
/// Sumps at `from`: on the inner face of the wall, or inside. With more than one it is not asked
/// how far the floor is from them. Nothing where the plan makes no model.
std::optional<SumpThumb> thumbAt(const rules::Rule& rule, const plan::Job& job,
                                 const std::vector<geometry::Point>& from);
/// Where a sump cored at a place is measured from: the inner face of the wall.
geometry::Point thumbPoint(const perimeter::Perimeter& perimeter, perimeter::Place place);

/// Objects along the whole wall where the floor (modelOf(), next door apart) is larger than most_m2
/// for each sump of the design; else, with no more than one sump, where a corner of the floor is
/// farther than most_m from the place, straight, measured from the inner face of the wall. Ends
/// exact: the farthest point of a polygon is a corner. Silent where whyNoThumb() has a reason or
/// the plan makes no model.
extern const rules::RuleJudge kSumpPerArea;

}  // namespace sumpwright::suction
