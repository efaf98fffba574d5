#pragma once
// Problems in words: lines for people and rows of JSON.

#include <nlohmann/json_fwd.hpp>
#include <ostream>
#include <string>

#include "base/Problem.h"
#include "cli/Command.h"
#include "words/Words.h"

namespace sumpwright::cli {

/// "unreadable", "unsound", "missing".
const char* gravityName(base::Gravity gravity);

/// "id: sentence (pointer)", without the brackets where the pointer is empty.
std::string lineOf(const base::Problem& problem, words::Units units);

/// One line each to standard error: "sumpwright: FILE: id: sentence (pointer)".
void complain(std::ostream& err, const std::string& file, const base::Problems& problems,
              words::Units units = words::Units::metric);

/// Nothing was answered: complains, and sets the exit code. What is only missing for a paper is too
/// little to answer here.
void decline(const std::string& job, const base::Problems& problems, Console& console);

/// 0, 1 or 2, by the worst of them.
int exitCodeOf(const base::Problems& problems);

nlohmann::ordered_json toJson(const base::Problems& problems, words::Units units);

}  // namespace sumpwright::cli
