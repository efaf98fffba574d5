#pragma once
// Runs the command line in this process, streams kept apart.

#include <sstream>
#include <string>
#include <vector>

#include "cli/CommandLine.h"

namespace sumpwright::cli {

struct Ran {
  int code = -1;  ///< -1: the window was asked for
  std::string out;
  std::string err;
  std::string job;  ///< for the window
};

inline Ran ran(const std::vector<std::string>& args) {
  std::ostringstream out;
  std::ostringstream err;
  const Outcome outcome = run(args, out, err);
  return {outcome.exit_code.value_or(-1), out.str(), err.str(), outcome.job};
}

/// A job of tests/cli/data by the fault its name tells.
inline std::string data(const std::string& name) {
  return std::string(SUMPWRIGHT_TESTS_DIR) + "/cli/data/" + name + ".sump.json";
}

/// The same text without the folder that differs from machine to machine.
inline std::string portable(std::string text) {
  const std::string folder = std::string(SUMPWRIGHT_TESTS_DIR) + "/cli/data/";
  for (auto at = text.find(folder); at != std::string::npos; at = text.find(folder)) {
    text.erase(at, folder.size());
  }
  return text;
}

}  // namespace sumpwright::cli
