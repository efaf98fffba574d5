#pragma once
// What the subcommands share: each adds itself to the parser and leaves its exit code in the
// console. A new one is a file of its own and a line in CommandLine.cpp.

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <CLI/Validators.hpp>
#include <ostream>

namespace sumpwright::cli {

struct Console {
  std::ostream& out;
  std::ostream& err;
  int exit_code = 0;
};

// The console outlives the parser.
void addCheck(CLI::App& program, Console& console);
void addSite(CLI::App& program, Console& console);
void addSuction(CLI::App& program, Console& console);
void addSection(CLI::App& program, Console& console);
void addDraw(CLI::App& program, Console& console);
void addPapers(CLI::App& program, Console& console);
void addQuote(CLI::App& program, Console& console);

}  // namespace sumpwright::cli
