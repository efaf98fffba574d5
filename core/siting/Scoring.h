#pragma once
// Findings to a number, each part with its reason. Weights and shares come from the sheet.

#include "siting/Study.h"

namespace sumpwright::siting {

/// Margins of all enabled distance rules, in the sheet's order; `close` set by the accuracy.
std::vector<Margin> marginsAt(const rules::Site& site, Place place, double accuracy_m);

/// The least margin to what a binding rule keeps clear of on the wall (working room apart);
/// nullptr where no such rule has a thing.
const Margin* leastBinding(const rules::Site& site, const std::vector<Margin>& margins);

/// The least margin of any binding rule, working room outside included: what the verdict names.
const Margin* leastOfAll(const rules::Site& site, const std::vector<Margin>& margins);

/// leastBinding() without words, for searches.
std::optional<double> leastBindingMargin_m(const rules::Site& site, Place place);

/// What a score is made of.
struct Scored {
  const rules::Site& site;
  const build::SectionAlong& section;
  const ReachAlong* reach = nullptr;         ///< fits the site's wall; nullptr: not known
  const build::CableAlong* cable = nullptr;  ///< of this site; nullptr: no supply
};

/// Score of a place whose least binding margin and advisories are known.
Score scoreOf(const Scored& of, Place place, const Margin* least, int advisories);

/// The same without reasons, for searches and the curve.
double scoreTotal(const Scored& of, Place place, std::optional<double> least_m, int advisories);

/// Ids of the rooms behind a place, in order of where their spans begin.
std::vector<std::string> roomsBehindAt(const rules::Site& site, Place place);

}  // namespace sumpwright::siting
