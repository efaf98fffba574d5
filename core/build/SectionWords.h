#pragma once
// What is said of a drill section. Internal to core/build.

#include "build/DrillSection.h"

namespace sumpwright::build {

base::Message marginWords(const Margin& margin);
/// The name of a limit in a sentence: "the underside of slab and insulation".
base::Message limitWords(LimitKind kind);
base::Message verdictWords(const DrillSection& section, const SectionWish& wish);

}  // namespace sumpwright::build
