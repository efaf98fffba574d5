#pragma once
// All papers of a job. To add one: a value in Paper, its name and title in Papers.cpp, its function
// in the list there.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "dossier/Sheet.h"

namespace sumpwright::dossier {

enum class Paper {
  proposal,      ///< for the client: the plan, what to expect, what it takes, terms
  crew,          ///< setting out, section, tools, hold points to sign
  commissioning  ///< to fill by hand when the fan runs
};

/// In the order they are handed over.
const std::vector<Paper>& allPapers();
/// As a command or a file's name has it.
std::string_view nameOf(Paper paper);
std::optional<Paper> paperNamed(std::string_view name);
base::Message titleOf(Paper paper);

/// Pages of one paper. Contract: options.sump as clientPlan() takes it.
Document paperOf(Paper paper, const siting::Study& study, const drawing::Voice& voice,
                 const ClientPlanOptions& options);

/// Several papers as one document, each with its own page numbers; of one size.
Document bound(std::vector<Document> documents, const std::string& title);

// CrewSheet.cpp, Commissioning.cpp
Document crewSheet(const Sheet& sheet);
Document commissioningForm(const Sheet& sheet);

}  // namespace sumpwright::dossier
