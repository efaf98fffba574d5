#include "plan/OutsideShape.h"

namespace sumpwright::plan {

bool enclosesArea(const OutsideThing& thing) {
  switch (thing.kind) {
    case OutsideKind::inspection_chamber:
    case OutsideKind::tank:
    case OutsideKind::air_conditioner:
    case OutsideKind::deck:
    case OutsideKind::soakaway:
    case OutsideKind::septic_tank:
    case OutsideKind::sitting_place:
    case OutsideKind::steps:
    case OutsideKind::carport:
      return thing.points_m.size() >= 3;
    case OutsideKind::path:
    case OutsideKind::gully:
    case OutsideKind::neighbour_opening:
    case OutsideKind::boundary:
    case OutsideKind::overhead_line:
      break;
  }
  return false;
}

}  // namespace sumpwright::plan
