#pragma once
// What is wrong with data: a value, never an exception.

#include <string>
#include <vector>

#include "base/Message.h"

namespace sumpwright::base {

/// How bad it is, worst first.
/// unreadable: no plan can be made of the file (exit 2).
/// unsound: there is a plan, but it contradicts itself; siting and papers refuse it (exit 1).
/// missing: sound, but something is not known yet; it is named and a default is stated.
enum class Gravity { unreadable, unsound, missing };

struct Problem {
  Message message;  ///< message.id is the stable id, e.g. "plan.opening.off-wall"
  std::string
      pointer;  ///< JSON pointer of the place, e.g. "/plan/openings/3/width_m"; "" = all of it
  Gravity gravity = Gravity::unsound;
  bool operator==(const Problem&) const = default;
};

using Problems = std::vector<Problem>;

inline bool any(const Problems& problems, Gravity gravity) {
  for (const Problem& p : problems) {
    if (p.gravity == gravity) return true;
  }
  return false;
}

}  // namespace sumpwright::base
