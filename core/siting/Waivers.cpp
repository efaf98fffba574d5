#include "siting/Waivers.h"

namespace sumpwright::siting {

namespace {

/// Riser mode leaves its outlet to be placed later; any other unknown stands against acceptance.
bool isOnlyLater(const Finding& f) {
  return f.reason.id == "rule.discharge-unplaced" || f.reason.id == "rule.unjudged.riser";
}

}  // namespace

bool allWaived(const Assessment& a) {
  if (a.state != State::refused) return false;
  for (std::size_t i = 0; i < a.findings.size(); ++i) {
    const Finding& f = a.findings[i];
    if (f.weight == rules::Weight::unknown && !isOnlyLater(f)) return false;
    if (f.weight == rules::Weight::binding && !a.accepted[i]) return false;
  }
  return true;
}

}  // namespace sumpwright::siting
