#pragma once
// The field solver's model made of a surveyed house.

#include <optional>
#include <string>
#include <vector>

#include "airflow/Air.h"
#include "base/Result.h"
#include "perimeter/Perimeter.h"
#include "plan/Job.h"
#include "suction/Field.h"
#include "suction/Model.h"

namespace sumpwright::suction {

/// One guess at what lies under the floor; Presets.h gives ranges. SI units.
struct Ground {
  double permeability_m2 = 1e-8;
  double thickness_m = 0.15;           ///< of the fill
  airflow::Air air;                    ///< soil gas counts as air
  double leak_ground_m_s_pa = 1.4e-7;  ///< soil of 1e-11 m2 over 4 m (derived)
  double joint_width_m = 0.0005;       ///< of the joint of slab and wall
  double slab_m = 0.10;                ///< its depth
  double footing_m2_s_pa = 0.0;  ///< through an inner wall on its own footing, per metre of it
  double exposed_m_s_pa = 1e-7;  ///< through foundation wall above the ground outside, per area of
                                 ///< it (own figure: masonry of 1e-12 m2, 0.5 m)
  Layer layer() const;
  double joint_m2_s_pa() const;  ///< cubic law
  /// B of a pit of that radius, Ward's beta, Pa s2/m6.
  double inertia_pa_s2_m6(double radius_m) const;
  bool operator==(const Ground&) const = default;
};

/// Its B, to be kept.
InertiaOf inertiaOf(const Ground& ground);

/// What nobody knows and both answers of which must be looked at.
struct ModelChoices {
  bool unknown_walls_stand = true;  ///< inner walls of unknown footing go through the fill
  /// At party walls of which nobody knows it the fill goes on next door, mirrored at the wall.
  bool party_open = false;
  bool trenches_open = false;  ///< the trench of a drain under the floor carries air along it
  bool operator==(const ModelChoices&) const = default;
};

/// Whether either choice makes a difference for this plan.
bool hasUnknownWalls(const plan::Plan& plan);
bool hasUnknownParty(const plan::Plan& plan);
bool hasPartyWalls(const plan::Plan& plan);
/// Ids of drains and waste pipes whose run is drawn and goes under the house for a metre or more
/// (own figure: less is the way through the wall).
std::vector<std::string> drainsBelow(const plan::Plan& plan);
/// Whether the fill goes on, or may go on, under the house next door.
bool mayGoOnNextDoor(const plan::Plan& plan);
/// Every answer that has to be looked at, in the order that hurts first; one where nothing is open.
std::vector<ModelChoices> choicesOf(const plan::Plan& plan);

/// The floor is what lies within the inner faces of the outside walls (unknown thickness: assumed)
/// without suspended floors: what is not known to be suspended is taken for a slab on fill. Rising
/// walls are barriers with their gaps, inner walls on their own footing too where they lie along no
/// rising wall; doors are no gaps. Where floors of house and extension meet, the old outer wall is
/// a barrier without gap, where none is drawn. A foundation wall leaks to outdoors over the height
/// by which the floor's underside stands above the ground outside. At a party wall the fill ends or
/// goes on as the wall says (party_below). A drawn drain under the floor is a trench that carries
/// air along it, through walls and all, if the choices say so.
///
/// Error: suction.model.plan (outline open, crossing itself or too small), or of checkModel().
base::Result<SuctionModel> modelOf(const plan::Job& job, const Ground& ground,
                                   const ModelChoices& choices = {});

/// Radius of a dug pit taken as a half sphere: (3 V / 2 pi)^(1/3) (derived).
double pitRadius_m(double volume_m3);

/// Where a sump cored at a place draws: the middle of its pit, which touches the inner face of the
/// wall.
Sink sinkAt(const perimeter::Perimeter& perimeter, perimeter::Place place, double radius_m);
/// Of a sump of the design, internal and standby ones at their point; nothing where it has no
/// place.
std::optional<Sink> sinkOf(const perimeter::Perimeter& perimeter, const plan::Sump& sump,
                           double radius_m);

}  // namespace sumpwright::suction
