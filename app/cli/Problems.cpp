#include "cli/Problems.h"

#include <nlohmann/json.hpp>

#include "cli/CommandLine.h"

namespace sumpwright::cli {

const char* gravityName(base::Gravity gravity) {
  switch (gravity) {
    case base::Gravity::unreadable:
      return "unreadable";
    case base::Gravity::unsound:
      return "unsound";
    case base::Gravity::missing:
      break;
  }
  return "missing";
}

std::string lineOf(const base::Problem& problem, words::Units units) {
  const std::string place = problem.pointer.empty() ? "" : " (" + problem.pointer + ")";
  return problem.message.id + ": " + words::say(problem.message, units) + place;
}

void complain(std::ostream& err, const std::string& file, const base::Problems& problems,
              words::Units units) {
  for (const base::Problem& problem : problems) {
    err << "sumpwright: " << file << ": " << lineOf(problem, units) << '\n';
  }
}

void decline(const std::string& job, const base::Problems& problems, Console& console) {
  complain(console.err, job, problems);
  console.exit_code = base::any(problems, base::Gravity::unsound) ? kUnsound : kUnusable;
}

int exitCodeOf(const base::Problems& problems) {
  if (base::any(problems, base::Gravity::unreadable)) return kUnusable;
  return base::any(problems, base::Gravity::unsound) ? kUnsound : kDone;
}

nlohmann::ordered_json toJson(const base::Problems& problems, words::Units units) {
  nlohmann::ordered_json rows = nlohmann::ordered_json::array();
  for (const base::Problem& problem : problems) {
    rows.push_back({{"gravity", gravityName(problem.gravity)},
                    {"id", problem.message.id},
                    {"sentence", words::say(problem.message, units)},
                    {"pointer", problem.pointer}});
  }
  return rows;
}

}  // namespace sumpwright::cli
