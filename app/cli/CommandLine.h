#pragma once
// The program without a window: sumpwright check | site | suction | draw. Runs in the caller's
// process and writes to the streams given, so tests need no shell. Needs no display.
//
// Exit codes: 0 done and sound; 1 a job contradicts itself (unsound); 2 a file cannot be read or
// written, or the command line is wrong. A place refused or not proven is no error.

#include <optional>
#include <ostream>
#include <string>
#include <vector>

namespace sumpwright::cli {

enum ExitCode : int { kDone = 0, kUnsound = 1, kUnusable = 2 };

struct Outcome {
  /// Nothing: no subcommand was given and the window is wanted.
  std::optional<int> exit_code;
  std::string job;  ///< file to open in the window; empty: none
};

/// `args` without the program's name.
Outcome run(const std::vector<std::string>& args, std::ostream& out, std::ostream& err);

}  // namespace sumpwright::cli
