#pragma once
// How long the cable to the best supply is, from a fan at every place of the perimeter.
//
// A route is solved every kCableStep_m of each wall and at its ends, and read on a straight line
// between; where the best supply changes within a step, the jump is read as a slope over it. Where
// one end of a step has no route, none is said between.

#include <optional>
#include <vector>

#include "build/CableRoute.h"

namespace sumpwright::build {

inline constexpr double kCableStep_m = 1.0;  // own figure

class CableAlong {
 public:
  /// `ask` but for the place of its fan.
  static CableAlong of(const rules::Site& site, const CableAsk& ask = {});

  /// Nothing where no route leads to a supply. Contract: the place is wrapped onto its ring.
  std::optional<double> length_m(perimeter::Place place) const;

  struct Node {
    int ring = 0;
    int edge = 0;
    double chainage_m = 0.0;
    std::optional<double> length_m;
  };
  /// By ring and chainage.
  const std::vector<Node>& nodes() const { return m_nodes; }

 private:
  std::vector<Node> m_nodes;
};

/// Rule kind 5: objects where the cable is longer than most_m, by CableAlong; ends of a span lie
/// where the straight line crosses it. Where no supply is drawn, or no route leads to one, it says
/// nothing.
extern const rules::RuleJudge kSupply;

}  // namespace sumpwright::build
