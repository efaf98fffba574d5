#pragma once
// --at RING:CHAINAGE: one place of the wall, for the subcommands that take one.

#include <CLI/App.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "cli/Command.h"
#include "siting/Study.h"

namespace sumpwright::cli {

/// Adds --at; what it takes reads as a place.
void addAtOption(CLI::App& command, std::string& at);

/// "RING:CHAINAGE", both plain numbers with a decimal point.
std::optional<siting::Place> placeOf(std::string_view text);

/// Why there is no such place, if so.
std::optional<base::Message> noSuchPlace(siting::Place place, const siting::Study& study);

/// The message on standard error, and exit code 2.
void refusePlace(const std::string& job, const base::Message& message, Console& console);

}  // namespace sumpwright::cli
