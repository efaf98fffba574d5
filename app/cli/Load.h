#pragma once
// From the command line's words to a study: job, rule sheet and overrides, with every problem told
// on the way.

#include <CLI/App.hpp>
#include <optional>
#include <string>

#include "cli/Command.h"
#include "siting/Study.h"

namespace sumpwright::cli {

/// What `site` and `draw` have in common.
struct StudyChoice {
  std::string job;
  std::string rules;   ///< id or file; empty: the job's own
  std::string outlet;  ///< "low", "riser" or empty: the job's own
  std::optional<double> core_mm;
};

/// CLI::Range, which also lets "nan" pass, without that.
CLI::Validator within(double least, double most);

/// Adds JOB, --rules, --outlet and --core.
void addStudyOptions(CLI::App& command, StudyChoice& choice);

/// The study, or nothing: then the problems went to standard error and the exit code is set.
std::optional<siting::Study> study(const StudyChoice& choice, Console& console);

}  // namespace sumpwright::cli
