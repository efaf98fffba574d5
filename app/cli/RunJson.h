#pragma once
// Discharge, drill section and cable of a sump in `sumpwright site --json`, as the manual has them.

#include <nlohmann/json_fwd.hpp>

#include "siting/Study.h"

namespace sumpwright::cli {

/// Adds "discharge", "section" and "cable" of a cored sump whose hole is at a place.
void addRun(const siting::Study& study, const plan::Sump& sump, siting::Place hole,
            nlohmann::ordered_json& row);

/// Adds "section" and "cable" of a hole that is none of the design's, its fan low beside it.
void addPlaceRun(const siting::Study& study, siting::Place hole, nlohmann::ordered_json& row);

}  // namespace sumpwright::cli
