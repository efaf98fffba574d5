#pragma once
// What lies behind the wall, as exact intervals of chainage.
//
// The drill line runs from the outside face along the inward normal to kDrillBeyond_m past the
// inner face. The rooms behind at s are the rooms that lines in a band as wide as the core, centred
// at s, enter first. The floor behind at s is the zone that holds the inner end of the drill line.

#include <string>
#include <vector>

#include "perimeter/Perimeter.h"

namespace sumpwright::perimeter {

/// On `edge`, chainages in (from_m, to_m) have `id` behind them; from_m itself too where from_in
/// says so (a room's span that starts with the edge; every zone's, so that zones which share an
/// outline leave no place between them). to_m never. from_m/to_m lie within the edge.
struct Span {
  std::string id;
  double from_m = 0.0;
  double to_m = 0.0;
  bool from_in = false;
  bool operator==(const Span&) const = default;
};

/// Room spans of one edge, sorted by (from, id). Where the band enters several rooms, spans
/// overlap. No span: no room drawn there.
std::vector<Span> roomsBehind(const Edge& edge, const std::vector<plan::Room>& rooms,
                              double core_m);

/// Zone spans of one edge; overlap where zones do. No span: no zone drawn there.
std::vector<Span> zonesBehind(const Edge& edge, const std::vector<plan::FloorZone>& zones);

}  // namespace sumpwright::perimeter
