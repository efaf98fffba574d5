#pragma once

#include "build/CableRoute.h"

namespace sumpwright::build {

/// Of the route chosen, asked for one fan alone.
inline std::optional<double> cableLength_m(const rules::Site& site, const CableAsk& ask) {
  const CableAnswer answer = cableRoutes(site, ask);
  if (!answer.chosen) return std::nullopt;
  return answer.routes[*answer.chosen].length_m;
}

}  // namespace sumpwright::build
