#pragma once
// The drill section at one place of the perimeter: whether a hole from outside can be cored under
// the slab and over the footing, which is best, and if none, what is in the way and by how much.
//
// The footing top is a range. A hole that fits under its high end fits surely; one that fits only
// below some level is told with that level; one that fits nowhere in the range never does.

#include <optional>
#include <string>
#include <vector>

#include "build/FeasibleSet.h"
#include "build/Void.h"

namespace sumpwright::build {

enum class Fit {
  fits,             ///< whatever the footing top in its range
  fits_if_footing,  ///< only with the footing top below footing_top_m
  never,            ///< for no footing top of the range, or not at all
  not_cored         ///< no hole from outside belongs here; section.reason says why
};

/// The words of files and JSON for Fit, in its order.
std::string_view fitName(Fit fit);
std::string_view limitName(LimitKind kind);

/// How far the hole is from one limit.
struct Margin {
  LimitKind kind = LimitKind::slab;
  double clear = 0.0;   ///< metres, edge of the hole to the thing; falls and barrel as below
  double needed = 0.0;  ///< the same unit; gentle_fall and steep_fall: tangents
  bool advisory = false;
  bool passes = false;
  base::Message what;    ///< "section.limit.KIND" {clear, needed}
  bool at_most = false;  ///< `clear` must not exceed `needed` (steep fall, barrel)
  double spare() const { return at_most ? needed - clear : clear - needed; }
  bool operator==(const Margin&) const = default;
};

/// What a contractor fixed of one sump; what is absent is chosen.
struct SectionWish {
  BoreWish bore;
  std::optional<double> pit_l;
  /// Instead of 1/96 from below the ground; 0: level is allowed.
  double least_fall = 1.0 / 96.0;
  /// Whose waivers count; "": of none. Only where the section is asked of a site.
  std::string sump;
  bool operator==(const SectionWish&) const = default;
};

/// Of a sump of the job; without its own pit the job's.
SectionWish wishOf(const plan::Job& job, const plan::Sump& sump);

struct DrillSection {
  BuildUp up;
  Fit fit = Fit::never;
  base::Message verdict;     ///< one sentence
  std::optional<Bore> bore;  ///< nothing: not_cored, or no fall is allowed
  Start start = Start::below_ground;
  /// Of the bore, with the footing top at the high end of its range. Falls and heights that refuse
  /// nothing and never can (steep fall of a chosen bore) are listed too.
  std::vector<Margin> margins;
  std::optional<double> footing_top_m;  ///< highest footing top the bore fits over
  /// fits_if_footing and never: what keeps it from fitting surely, and the room that is missing.
  std::optional<Tightest> clash;
  double path_m = 0.0;     ///< of the drill through the wall, along the hole
  double drop_m = 0.0;     ///< of the hole from face to face
  double dig_m = 0.0;      ///< below the outside ground; 0: none
  double annulus_m = 0.0;  ///< gap between hole and pipe all round
  Void hollow;
  std::vector<base::Message> notes;  ///< cautions and what the crew must look at
  /// Drilled only because a waiver accepts it: the foundation is cut, or the hole's own refusal
  /// stands aside. notes say so first. Not where it is stopped all the same.
  bool on_waiver = false;
  /// Nobody drills here: never or not_cored, and no waiver accepts the hole.
  bool stopped = false;
};

double fallOfDegrees(double degrees);
double degreesOfFall(double fall);
/// From the outside face to the end of the pipe, heights of the axis, and half the hole upright.
double axisAt_m(const Bore& bore, double x_m);
double halfUpright_m(const Bore& bore, double core_m);

/// Lines for lists: hole, way through the wall, dig, gap and hollow. Nothing without a bore.
std::vector<base::Message> factsOf(const DrillSection& section);

DrillSection drillSection(const BuildUp& up, const SectionWish& wish);
/// The place must lie on the perimeter. What keeps all holes from a place (NoCore) steps aside
/// where the sump's waivers accept it: the foundation where those of all rules on foundations are
/// waived, or of the hole where no such rule objects; a floor too deep where the hole's is.
DrillSection drillSection(const rules::Site& site, perimeter::Place place, const SectionWish& wish);

}  // namespace sumpwright::build
