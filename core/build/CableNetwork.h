#pragma once
// The ways a cable may take in plan, as a graph. Internal to core/build.
//
// Its lines are the outside faces and the outlines of rooms that may be wired. Places on them are
// joined along the line, and across a wall to the line that faces them. Shortest routes along such
// lines have their bends at corners, jambs, terminals or square across from one of these; exactly
// these places are in the graph, so the shortest way in it is the shortest there is. Not so from a
// fan in the roof space: where its straight way comes down is tried every 0.25 m, and the route may
// be longer than the shortest by up to twice that.

#include <string>
#include <vector>

#include "build/CableRoute.h"

namespace sumpwright::build {

struct CableLink {
  std::size_t a = 0;  ///< of the kind roof: the fan
  std::size_t b = 0;
  double length_m = 0.0;
  double cost_m = 0.0;  ///< with what a drilling is worth
  CablePartKind kind = CablePartKind::skirting;
  std::vector<std::string> things;
};

struct CableTerminal {
  std::string supply;
  std::size_t node = 0;
  double rise_m = 0.0;     ///< from the run up to it, and across the floor to one off the wall
  double through_m = 0.0;  ///< through an outside wall right there; 0: not
  /// To order ways by, what a drilling is worth included.
  double cost_m(double per_drilling_m) const {
    return rise_m + through_m + (through_m > 0.0 ? per_drilling_m : 0.0);
  }
};

struct CableNetwork {
  std::vector<geometry::Point> nodes;
  std::vector<CableLink> links;
  std::vector<std::size_t> fans;  ///< node of each place that was asked for
  double drop_m = 0.0;            ///< from the fan to the run outside; 0: it is not outside
  double run_outside_m = 0.0;     ///< height of run and sleeve outside, above finished floor
  double descent_m = 0.0;         ///< part of every link of the kind roof
  std::vector<CableTerminal> terminals;
  std::vector<NoCable> none;
  double dpc_m = 0.0;  ///< that the run outside keeps above
  bool head_assumed = false;
  bool sill_assumed = false;
  /// The other end of a link.
  std::size_t across(std::size_t link, std::size_t node) const {
    return links[link].a == node ? links[link].b : links[link].a;
  }
};

/// Above finished floor.
double heightOfSupply(const plan::Supply& supply, const CableFigures& figures);

/// With a fan at each of the places instead of at ask.fan. More fans change no way of any one: what
/// is added are places on lines that are there.
CableNetwork cableNetwork(const rules::Site& site, const CableAsk& ask,
                          const std::vector<perimeter::Place>& fans);

/// Where ways begin, and what it costs to begin there.
struct CableStart {
  std::size_t node = 0;
  double cost_m = 0.0;
};

/// To every node from the start that is best for it.
struct CableWays {
  std::vector<double> cost_m;          ///< by node; infinite where none leads
  std::vector<std::size_t> last_link;  ///< by node
  /// The links of the best way, in order from the start. Empty: a start itself, or none leads
  /// there.
  std::vector<std::size_t> linksTo(const CableNetwork& net, std::size_t node) const;
  std::size_t startOf(const CableNetwork& net, std::size_t node) const;
};
/// CableWays.cpp
CableWays cableWays(const CableNetwork& net, const std::vector<CableStart>& starts);

}  // namespace sumpwright::build
