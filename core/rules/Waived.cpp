#include "rules/Waived.h"

#include <algorithm>

#include "plan/Blank.h"
#include "plan/DesignEdits.h"

namespace sumpwright::rules {

namespace {

/// Reason, name and date say something.
bool isComplete(const plan::Waiver& w) {
  return !plan::isBlank(w.reason) && !plan::isBlank(w.name) && !plan::isBlank(w.date);
}

/// A waiver holds where its sump is asked about and where the design has that sump: one that was
/// moved away by other means than the program has left it behind as well.
bool holdsFor(const Site& site, const plan::Waiver& w, perimeter::Place place) {
  const double length = site.perimeter.length_m(place.ring);
  const auto& sumps = site.job.design.sumps;
  const auto sump =
      std::find_if(sumps.begin(), sumps.end(), [&](const plan::Sump& s) { return s.id == w.sump; });
  return sump != sumps.end() && plan::waiverHolds(w, sump->ring, sump->chainage_m, length) &&
         plan::waiverHolds(w, place.ring, place.chainage_m, length);
}

}  // namespace

bool isWaived(const Site& site, const Finding& f, perimeter::Place place, const std::string& sump) {
  if (f.weight != Weight::binding || !f.waivable.allowed || sump.empty()) return false;
  const auto& waivers = site.job.design.waivers;
  return std::any_of(waivers.begin(), waivers.end(), [&](const plan::Waiver& w) {
    return w.sump == sump && w.rule == f.rule && w.thing == f.thing &&
           w.evidence == f.waivable.evidence && isComplete(w) && holdsFor(site, w, place);
  });
}

}  // namespace sumpwright::rules
