#pragma once
// The drill section as text and as JSON.

#include <nlohmann/json_fwd.hpp>
#include <ostream>

#include "build/DrillSection.h"
#include "siting/Study.h"

namespace sumpwright::cli {

struct SectionAt {
  std::string sump;  ///< id, or empty: not of the design
  siting::Place place;
  build::DrillSection section;
};

void printSection(const siting::Study& study, const SectionAt& at, std::ostream& out);
/// sumpwright.section/1, resources/manual/command-line.md.
nlohmann::ordered_json sectionJson(const siting::Study& study, const SectionAt& at);

}  // namespace sumpwright::cli
