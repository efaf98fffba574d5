#pragma once
// What `sumpwright site` says of a study: as JSON ("sumpwright.site/1", described in the manual)
// and as text. Both hold the same facts.

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <ostream>

#include "siting/Study.h"

namespace sumpwright::cli {

/// Numbers in full precision; sentences in English in the job's display units. `at`: the one place
/// asked for.
nlohmann::ordered_json siteJson(const siting::Study& study,
                                const std::optional<siting::Assessment>& at);

/// Stretches with their reasons, best places or the least bad; what is not judged yet.
void printSite(const siting::Study& study, std::ostream& out);

/// One place: verdict, findings, margins, score.
void printPlace(const siting::Study& study, const siting::Assessment& at, std::ostream& out);

}  // namespace sumpwright::cli
