#pragma once
// The ways a cable may take in plan, as a graph. Internal to core/build.
//
// Its lines are the outside faces and the outlines of rooms that may be wired. Places on them are
// joined along the line, and across a wall to the line that faces them. Shortest routes along such
// lines have their bends at corners, jambs, terminals or square across from one of these; exactly
// these places are in the graph, so the shortest way in it is the shortest there is.

#include <string>
#include <vector>

#include "build/CableRoute.h"

namespace sumpwright::build {

struct CableLink {
  std::size_t a = 0;
  std::size_t b = 0;
  double length_m = 0.0;
  double cost_m = 0.0;  ///< with what a drilling is worth
  CablePartKind kind = CablePartKind::skirting;
  std::string thing;
};

struct CableTerminal {
  std::string supply;
  std::size_t node = 0;
  double rise_m = 0.0;  ///< from the run up to it, and across the floor to one off the wall
  bool outside = false;
};

struct CableNetwork {
  std::vector<geometry::Point> nodes;
  std::vector<CableLink> links;
  std::size_t fan = 0;
  double drop_m = 0.0;  ///< from the fan to the run outside
  std::vector<CableTerminal> terminals;
  std::vector<NoCable> none;
  double dpc_m = 0.0;  ///< that the run outside keeps above
  bool head_assumed = false;
  bool sill_assumed = false;
};

CableNetwork cableNetwork(const rules::Site& site, const CableAsk& ask);

/// From the fan to every node: the links of the best way, in order. Empty: the fan's own node, or
/// none leads there.
struct CableWays {
  std::vector<double> cost_m;          ///< by node; infinite where none leads
  std::vector<std::size_t> last_link;  ///< by node
  std::vector<std::size_t> linksTo(const CableNetwork& net, std::size_t node) const;
};
CableWays cableWays(const CableNetwork& net);

}  // namespace sumpwright::build
