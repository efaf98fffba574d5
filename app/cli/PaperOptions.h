#pragma once
// What `draw` and `papers` have in common: date, sump, the firm, and what is told of the suction.

#include <CLI/App.hpp>
#include <optional>
#include <string>

#include "cli/Command.h"
#include "cli/FanOption.h"
#include "cli/Load.h"
#include "dossier/ClientPlan.h"

namespace sumpwright::cli {

struct PaperChoice {
  StudyChoice study;
  std::string size = "a4";
  std::string date;
  std::string sump;
  std::string fan;
  std::string firm;
  std::string book;
  bool landscape = false;
  bool no_suction = false;
  bool priced = false;  ///< options.pricing is wanted; without prices there is nothing
};

/// JOB and all the options that are shared.
void addPaperOptions(CLI::App& command, PaperChoice& choice);
void addBookOption(CLI::App& command, PaperChoice& choice);

/// Everything a paper is made of, or nothing: then the problems went to standard error and the
/// exit code is set. The suction study takes about half a second and is left out by --no-suction.
struct PaperStuff {
  siting::Study study;
  dossier::ClientPlanOptions options;
};
std::optional<PaperStuff> paperStuff(const PaperChoice& choice, Console& console);

}  // namespace sumpwright::cli
