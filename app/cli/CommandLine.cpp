#include "cli/CommandLine.h"

#include <CLI/Error.hpp>
#include <algorithm>

#include "cli/Command.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

constexpr const char* kAbout =
    "Sites a fan-assisted radon sump on a house plan: where it may go along the outside walls,\n"
    "where it is best, why not elsewhere, and the marked-up plan on paper.\n"
    "Without a subcommand the window opens.";

constexpr const char* kExitCodes =
    "Exit codes: 0 done and sound (a place that is refused or not proven is no error);\n"
    "1 a job contradicts itself, so siting and drawing decline it;\n"
    "2 a file cannot be read or written, or the command line is wrong.\n"
    "Errors go to standard error: sumpwright: FILE: id: sentence (place in the file).\n"
    "Which local codes apply, and that services are located before coring, stays with the\n"
    "contractor; a prediction is not a measurement, the re-test decides.";

void describe(CLI::App& program, Outcome& outcome) {
  program.name("sumpwright");
  program.set_version_flag("--version", "sumpwright " SUMPWRIGHT_VERSION);
  program.footer(kExitCodes);
  program.add_option("JOB", outcome.job, "Job file to open in the window");
  program.require_subcommand(0, 1);
  program.fallthrough(false);
}

/// Help and version end here too: CLI11 tells of them by exception.
int explain(const CLI::App& program, const CLI::ParseError& error, Console& console) {
  if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
    return program.exit(error, console.out, console.err);
  }
  const base::Message message("cli.usage", {base::text("what", error.what())});
  console.err << "sumpwright: " << message.id << ": " << words::say(message, words::Units::metric)
              << '\n';
  return kUnusable;
}

}  // namespace

Outcome run(const std::vector<std::string>& args, std::ostream& out, std::ostream& err) {
  Console console{out, err};
  Outcome outcome;
  CLI::App program(kAbout);
  describe(program, outcome);
  addCheck(program, console);
  addSite(program, console);
  addSuction(program, console);
  addSection(program, console);
  addDraw(program, console);
  addPapers(program, console);
  addQuote(program, console);
  try {
    program.parse(std::vector<std::string>(args.rbegin(), args.rend()));
  } catch (const CLI::ParseError& error) {
    outcome.exit_code = explain(program, error, console);
    return outcome;
  }
  if (!program.get_subcommands().empty()) outcome.exit_code = console.exit_code;
  return outcome;
}

}  // namespace sumpwright::cli
