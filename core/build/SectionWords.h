#pragma once
// What is said of a drill section. Internal to core/build.

#include "build/DrillSection.h"

namespace sumpwright::build {

base::Message marginWords(const Margin& margin);
/// The name of a limit in a sentence: "the underside of slab and insulation".
base::Message limitWords(LimitKind kind);
/// The limit that a hole fails most whose height or fall was wished; nothing where neither was, or
/// no hole is possible at all.
std::optional<LimitKind> failedByWish(const DrillSection& section, const SectionWish& wish);
base::Message verdictWords(const DrillSection& section, const SectionWish& wish);

}  // namespace sumpwright::build
