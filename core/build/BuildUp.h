#pragma once
// Wall, floor and ground at one place of the perimeter, with all that is not known filled in by a
// stated default. Metres. In the section x runs from the outside face into the house, heights are
// above the house's finished floor level.

#include <optional>
#include <string>
#include <vector>

#include "base/Message.h"
#include "base/Source.h"
#include "rules/Judge.h"

namespace sumpwright::build {

/// Something not known, what was taken for it, and why that.
struct Assumption {
  base::Message what;
  base::Source source;
  bool operator==(const Assumption&) const = default;
};

/// One layer of the wall, from its outside to its inside.
struct Leaf {
  plan::LayerKind kind = plan::LayerKind::block;
  double from_m = 0.0;
  double to_m = 0.0;
  bool operator==(const Leaf&) const = default;
};

struct BuildUp {
  double wall_m = 0.0;       ///< outside face to inner face
  std::vector<Leaf> leaves;  ///< from 0 to wall_m without gaps

  plan::FloorKind floor = plan::FloorKind::unknown;  ///< unknown: taken for a slab on the ground
  double floor_m = 0.0;  ///< finished level of the floor behind the wall
  /// A suspended floor over ground sealed with concrete: from finished floor down to that concrete,
  /// which then is the slab. Else 0.
  double under_floor_m = 0.0;
  double screed_m = 0.0;
  double insulation_m = 0.0;  ///< over or under the slab: the lowest underside is the same
  double slab_m = 0.0;
  double blinding_m = 0.0;
  double hardcore_m = 0.0;  ///< 0: none
  plan::Fill fill = plan::Fill::unknown;

  double ground_m = 0.0;      ///< outside ground at the place
  double ground_slope = 0.0;  ///< its rise per metre of chainage
  plan::GroundSurface surface = plan::GroundSurface::unknown;
  double dpc_m = 0.0;
  plan::Barrier barrier = plan::Barrier::unknown;
  double barrier_m = 0.0;  ///< of barriers that are there

  double footing_low_m = 0.0;  ///< its top lies between the two
  double footing_high_m = 0.0;
  bool footing_known = false;  ///< both ends; an end nobody gave is the usual one
  plan::Foundation foundation = plan::Foundation::unknown;

  double core_m = 0.0;  ///< diameter of the hole
  double pipe_od_m = 0.0;
  double barrel_m = 0.0;  ///< length of the drill

  std::vector<Assumption> assumed;

  /// Lowest underside of slab and insulation.
  double underside_m() const { return floor_m - under_floor_m - screed_m - insulation_m - slab_m; }
  double fillTop_m() const { return underside_m() - blinding_m; }
  double fillBottom_m() const { return fillTop_m() - hardcore_m; }
};

/// Of a place that the perimeter contains.
BuildUp buildUpAt(const rules::Site& site, perimeter::Place place);

/// The zone behind the wall there, or nothing where none is drawn.
const plan::FloorZone* floorBehind(const rules::Site& site, perimeter::Place place);

/// Why no hole is cored from outside somewhere at all.
enum class NoCore {
  party,       ///< a neighbour behind the wall
  dwarf,       ///< a wall under glazing
  foundation,  ///< not cut without an engineer's word
  timber,      ///< suspended floors over ground that is not sealed
  concrete,
  deep  ///< the floor is too deep in the ground
};

/// All that hold there, in the order above. The floor not drawn is none of them.
std::vector<NoCore> noCores(const rules::Site& site, perimeter::Place place);
/// The message of that theme and the reason's name ("rule.no-core." and "party"); of a foundation
/// with {foundation}, the wall's. Figures of `deep` are the caller's.
base::Message noCoreMessage(const std::string& theme, NoCore why, const plan::Wall& wall);
/// One of them in a sentence.
base::Message noCoreWords(NoCore why, const rules::Site& site, perimeter::Place place);

}  // namespace sumpwright::build
