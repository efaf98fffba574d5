#pragma once
// --fan ID|FILE: one fan of the tables there are, or of a file.

#include <CLI/App.hpp>
#include <string>

#include "airflow/FanTable.h"
#include "base/Result.h"

namespace sumpwright::cli {

/// A demo class of the default table (resources/fans).
inline constexpr const char* kUsualFan = "demo-medium";

/// Adds --fan; `otherwise`: what is taken without it, in words.
void addFanOption(CLI::App& command, std::string& fan, const std::string& otherwise = kUsualFan);

struct ChosenFan {
  airflow::Fan fan;
  bool invented = false;
};

/// A name with a slash or ending in .json is a fan table's file, a fan of it named after '#';
/// anything else is a fan's id in the tables there are (files/FanTables.h), the first that has it.
/// Problems (unreadable): those of the file, cli.no-fan, cli.which-fan (several in the file and
/// none named).
base::Result<ChosenFan> fanOf(const std::string& idOrFile);

}  // namespace sumpwright::cli
