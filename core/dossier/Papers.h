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
  plan,          ///< for the householder: where the sump goes, and why there
  proposal,      ///< the same with what to expect, what it takes, terms
  quote,         ///< what it costs, line by line
  crew,          ///< setting out, section, tools, hold points to sign
  shopping,      ///< material without prices, each with a box to tick
  commissioning  ///< to fill by hand when the fan runs
};

/// In the order they are handed over.
const std::vector<Paper>& allPapers();
/// As a command or a file's name has it.
std::string_view nameOf(Paper paper);
std::optional<Paper> paperNamed(std::string_view name);
/// What it is called, and in a sentence what it holds.
base::Message titleOf(Paper paper);
base::Message aboutOf(Paper paper);
/// Whether options.landscape turns it, and A3 enlarges it: what is read like a letter or filled in
/// by hand stands, and is A4 then.
bool mayLie(Paper paper);
/// Whether it tells of the suction (options.outlook).
bool tellsSuction(Paper paper);
/// Whether it is made of options.pricing.
bool isPriced(Paper paper);

/// Pages of one paper. Contract: options.sump as clientPlan() takes it.
Document paperOf(Paper paper, const siting::Study& study, const drawing::Voice& voice,
                 const ClientPlanOptions& options);

/// Several papers as one document, each with its own page numbers. The document's
/// size is that of its first page.
Document bound(std::vector<Document> documents, const std::string& title);

/// What is shown, printed and written: those papers in the order they are handed over, whatever
/// order they are asked in; one alone keeps its own title.
Document composed(const std::vector<Paper>& papers, const siting::Study& study,
                  const drawing::Voice& voice, const ClientPlanOptions& options);

// CrewSheet.cpp, Commissioning.cpp, QuotePaper.cpp
Document crewSheet(const Sheet& sheet);
Document commissioningForm(const Sheet& sheet);
/// Lines with prices, totals, what is offered on top, terms, a line to accept it on. Lines left out
/// are not printed. Without a sump or prices: why there is no quote.
Document quotePaper(const Sheet& sheet);
Document shoppingPaper(const Sheet& sheet);

}  // namespace sumpwright::dossier
