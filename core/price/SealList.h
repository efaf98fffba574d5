#pragma once
// What leaks into each room and is sealed before a second sump is thought of: the joint of slab and
// wall along outside and party walls, service entries, wastes.

#include <string>
#include <vector>

#include "siting/Study.h"

namespace sumpwright::price {

struct SealRoom {
  std::string room;  ///< id; "": entries behind which no room is drawn
  double joint_m = 0.0;
  std::vector<base::Message> entries;  ///< labels of services that come through its outside wall
  int wastes = 0;                      ///< fittings with a waste: sink, bath, shower, WC, basin
  int radiators = 0;                   ///< their pipes may come through the floor; not counted
  int counted() const { return static_cast<int>(entries.size()) + wastes; }
};

struct SealList {
  std::vector<SealRoom> rooms;  ///< as in the plan; entries of no room last, if there are any
  double joint_m = 0.0;         ///< of all of them
  int entries = 0;              ///< services and wastes of all of them
};

/// Joints follow the rooms that are drawn: what no room is drawn for has none.
SealList sealList(const siting::Study& study);

}  // namespace sumpwright::price
