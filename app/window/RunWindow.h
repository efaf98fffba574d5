#pragma once
// The program with a window. Called by main.cpp when no subcommand is given.

namespace sumpwright::window {

/// Opens the window, with the job named by the first argument that is no option. Returns the
/// process's exit code.
int runWindow(int argc, char** argv);

}  // namespace sumpwright::window
