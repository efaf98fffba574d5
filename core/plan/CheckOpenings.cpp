#include <algorithm>
#include <tuple>

#include "plan/Checks.h"
#include "plan/PlanGeometry.h"

namespace sumpwright::plan {

namespace {

std::string pointerToOpening(std::size_t opening) { return at("/plan/openings", opening); }

/// Vents and terminals are often set under or over a window, and what is of the roof stands above.
bool isSmall(const Opening& o) {
  return isOfRoof(o.kind) || o.kind == OpeningKind::air_vent ||
         o.kind == OpeningKind::flue_terminal;
}

/// Heights are all from the finished floor of the ground storey. Upstairs they are easily taken
/// from the floor one stands on, and then a rule measures to a window that is not there.
void checkStorey(const Opening& o, const std::string& pointer, ProblemList& problems) {
  const auto say = [&](const char* id, const char* key, double height_m) {
    problems.add(base::Gravity::missing, id, at(pointer, key),
                 {base::text("thing", labelOf(o)), base::metres("height", height_m),
                  base::count("storey", o.storey),
                  base::metres("floor", std::max(1, o.storey) * kLeastStorey_m)});
  };
  const auto& top = o.head_m ? o.head_m : o.sill_m;
  if (o.storey > 0 && top && *top < o.storey * kLeastStorey_m) {
    say("plan.opening.own-floor", o.head_m ? "head_m" : "sill_m", *top);
  } else if (o.storey == 0 && o.sill_m && *o.sill_m >= kLeastStorey_m && !isSmall(o)) {
    say("plan.opening.upstairs", "sill_m", *o.sill_m);
  }
}

void checkOpening(const Plan& plan, std::size_t index, ProblemList& problems) {
  const Opening& o = plan.openings[index];
  const std::string pointer = pointerToOpening(index);
  if (o.width_m <= 0.0) {
    problems.add("plan.opening.width", at(pointer, "width_m"),
                 {base::text("thing", labelOf(o)), base::metres("width", o.width_m)});
  }
  checkOnWall(plan, o.at, std::max(0.0, o.width_m), "plan.opening.", pointer, labelOf(o), problems);
  if (o.sill_m && o.head_m && *o.sill_m >= *o.head_m) {
    problems.add("plan.opening.sill-above-head", at(pointer, "sill_m"),
                 {base::text("thing", labelOf(o)), base::metres("sill", *o.sill_m),
                  base::metres("head", *o.head_m)});
  }
  checkStorey(o, pointer, problems);
}

/// Whether two openings that overlap along the wall do so in height as well. Unknown heights: not
/// said of those, taken for sure of windows and doors.
bool overlapInHeight(const Opening& a, const Opening& b) {
  if (a.sill_m && a.head_m && b.sill_m && b.head_m) {
    return *a.sill_m < *b.head_m && *b.sill_m < *a.head_m;
  }
  return !isSmall(a) && !isSmall(b);
}

/// Sorted along each wall, so that only neighbours are compared.
void checkOverlaps(const Plan& plan, ProblemList& problems) {
  const std::vector<Opening>& all = plan.openings;
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i].width_m > 0.0) order.push_back(i);
  }
  const auto keyOf = [&](std::size_t i) {
    return std::tuple(all[i].storey, all[i].at.ring, all[i].at.edge, all[i].at.offset_m, i);
  };
  std::sort(order.begin(), order.end(), [&](auto i, auto j) { return keyOf(i) < keyOf(j); });
  for (std::size_t k = 0; k < order.size(); ++k) {
    const Opening& a = all[order[k]];
    for (std::size_t l = k + 1; l < order.size() && !problems.full(); ++l) {
      const Opening& b = all[order[l]];
      const bool sameWall =
          a.storey == b.storey && a.at.ring == b.at.ring && a.at.edge == b.at.edge;
      const double common =
          std::min(a.at.offset_m + a.width_m, b.at.offset_m + b.width_m) - b.at.offset_m;
      if (!sameWall || a.at.offset_m + a.width_m - b.at.offset_m <= kTapeRounding_m) break;
      if (common <= kTapeRounding_m || !overlapInHeight(a, b)) continue;
      const auto [first, second] = std::minmax(order[k], order[l]);
      problems.add("plan.opening.overlap", pointerToOpening(second),
                   {base::text("thing", labelOf(all[second])),
                    base::text("other", labelOf(all[first])), base::metres("common", common)});
    }
  }
}

}  // namespace

void checkOnWall(const Plan& plan, const OnWall& at, double width_m, const std::string& theme,
                 const std::string& pointer, const std::string& label, ProblemList& problems) {
  const auto edge = edgeAt(plan, at);
  if (!edge) {
    const bool ringThere = at.ring >= 0 && static_cast<std::size_t>(at.ring) < plan.rings.size();
    problems.add(
        theme + "no-wall", plan::at(pointer, ringThere ? "edge" : "ring"),
        {base::text("thing", label), base::count("ring", at.ring), base::count("edge", at.edge)});
    return;
  }
  const double length = length_m(*edge);
  const bool before = at.offset_m < -kTapeRounding_m;
  const bool past = at.offset_m + width_m > length + kTapeRounding_m;
  if (!before && !past) return;
  problems.add(theme + "off-wall", plan::at(pointer, "offset_m"),
               {base::text("thing", label), base::metres("from", at.offset_m),
                base::metres("to", at.offset_m + width_m), base::metres("length", length)});
}

void checkOpenings(const Plan& plan, ProblemList& problems) {
  for (std::size_t i = 0; i < plan.openings.size(); ++i) checkOpening(plan, i, problems);
  checkOverlaps(plan, problems);
}

}  // namespace sumpwright::plan
