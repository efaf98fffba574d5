#pragma once

#include "siting/Study.h"

namespace sumpwright::siting {

/// The verdict in one sentence: the state, the outlet mode, and the reason that decides.
base::Message verdictSentence(const rules::Site& site, const Assessment& assessment);

/// "gas, electricity and water": phrases joined by messages list.comma and list.and. Contract: not
/// empty.
base::Message listOf(const std::vector<base::Message>& phrases);

}  // namespace sumpwright::siting
