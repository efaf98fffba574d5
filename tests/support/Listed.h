#pragma once
// Problems as lines of text, for messages of tests.

#include <string>

#include "base/Problem.h"

namespace sumpwright::support {

/// "ID at POINTER", one line each.
inline std::string listed(const base::Problems& problems) {
  std::string text;
  for (const base::Problem& p : problems) text += p.message.id + " at " + p.pointer + "\n";
  return text;
}

}  // namespace sumpwright::support
