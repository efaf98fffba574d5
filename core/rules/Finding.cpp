#include "rules/Finding.h"

namespace sumpwright::rules {

const char* stateName(State state) {
  switch (state) {
    case State::clear:
      return "clear";
    case State::advised_against:
      return "advised-against";
    case State::not_proven:
      return "not-proven";
    case State::refused:
      break;
  }
  return "refused";
}

const char* weightName(Weight weight) {
  switch (weight) {
    case Weight::advisory:
      return "advisory";
    case Weight::unknown:
      return "unknown";
    case Weight::binding:
      break;
  }
  return "binding";
}

State stateOf(Weight weight) {
  switch (weight) {
    case Weight::advisory:
      return State::advised_against;
    case Weight::unknown:
      return State::not_proven;
    case Weight::binding:
      break;
  }
  return State::refused;
}

}  // namespace sumpwright::rules
