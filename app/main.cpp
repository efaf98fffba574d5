// The program: the command line where a subcommand is given, else the window.

#include <algorithm>
#include <iostream>
#include <string>
#include <vector>

#include "cli/CommandLine.h"
#include "cli/Display.h"
#include "window/RunWindow.h"

int main(int argc, char** argv) {
  const std::vector<std::string> args(argv + std::min(argc, 1), argv + argc);
  const sumpwright::cli::Outcome outcome = sumpwright::cli::run(args, std::cout, std::cerr);
  if (outcome.exit_code) return *outcome.exit_code;
  if (!sumpwright::cli::canShowWindow(std::cerr)) return sumpwright::cli::kUnusable;
  return sumpwright::window::runWindow(argc, argv);
}
