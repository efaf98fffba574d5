#pragma once
// How long the cable to the chosen supply is, from the fan of a hole at every place of the
// perimeter.
//
// It is worked out every kCableStep_m of each wall and at its ends, all in one network (from the
// supplies outward), and read on a straight line between; where the best supply changes within a
// step, the jump is read as a slope over it. Where one end of a step has no route, none is said
// between. About a millisecond (tests/bench), from fans in a roof space a few, so whoever scores
// may ask at once.

#include <optional>
#include <vector>

#include "build/CableRoute.h"

namespace sumpwright::build {

inline constexpr double kCableStep_m = 0.5;  // own figure

/// What the cable of a sump's fan is asked with, but for its place: that stands `shift_m` further
/// round the ring than the hole.
struct Wiring {
  CableAsk ask;
  double shift_m = 0.0;
  bool operator==(const Wiring&) const = default;
};

/// Of the cored sump with that id, fan and supply as the job has them; for "" of the one whose run
/// is judged, else of the first. A low fan beside the hole where there is none.
Wiring wiringOf(const rules::Site& site, const std::string& sump);

class CableAlong {
 public:
  /// `ask` but for the place of its fan, which stands `shift_m` further round the ring than the
  /// hole.
  static CableAlong of(const rules::Site& site, const CableAsk& ask = {}, double shift_m = 0.0);

  /// To the supply wished where one leads there, else to the best. Nothing where none leads to any.
  /// Contract: the place is wrapped onto its ring.
  std::optional<double> length_m(perimeter::Place place) const;

  struct Node {
    int ring = 0;
    int edge = 0;
    double chainage_m = 0.0;  ///< of the hole
    std::optional<double> length_m;
  };
  /// By ring and chainage.
  const std::vector<Node>& nodes() const { return m_nodes; }

 private:
  std::vector<Node> m_nodes;
};

/// Rule kind 5: objects where the cable from the fan of the judged sump (Site::sump) is longer than
/// most_m, by CableAlong; ends of a span lie where the straight line crosses it. It objects too
/// where no route leads to any supply. Where none is drawn that is not proven, of a binding rule or
/// with unknown_gates; else it says nothing.
extern const rules::RuleJudge kSupply;

}  // namespace sumpwright::build
