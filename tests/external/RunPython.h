#pragma once
// A script of this folder in a Python that has SciPy, for tests that compare with it.

#include <string>

namespace sumpwright::support {

struct PythonRun {
  int status = -1;     ///< exit code; -1 could not be started or was killed
  std::string output;  ///< what it printed to stdout
  /// The script's word for "SciPy is not installed", or no Python at all.
  bool skipped() const { return status == 77 || status == 127; }
};

/// python SCRIPT ARGUMENTS, the script named from tests/external; arguments go through the shell.
PythonRun runPython(const std::string& script, const std::string& arguments = "");

}  // namespace sumpwright::support
