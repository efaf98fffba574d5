#pragma once
// --fan ID|FILE: one fan of the tables there are, or of a file.

#include <CLI/App.hpp>
#include <string>

#include "airflow/FanTable.h"
#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::cli {

/// Adds --fan; empty: the job's (fanFor()).
void addFanOption(CLI::App& command, std::string& fan);

struct ChosenFan {
  airflow::Fan fan;
  bool invented = false;
};

/// A name with a slash or ending in .json is a fan table's file, a fan of it named after '#';
/// anything else is a fan's id in the tables there are (files/FanTables.h), the first that has it.
/// Problems (unreadable): those of the file, cli.no-fan, cli.which-fan (several in the file and
/// none named).
base::Result<ChosenFan> fanOf(const std::string& idOrFile);

/// fanOf() what was asked for; with nothing asked the job's (files::pickedFan()).
base::Result<ChosenFan> fanFor(const std::string& asked, const plan::Job& job);

}  // namespace sumpwright::cli
