#pragma once
// The drill section along the whole perimeter: where a hole can be built, and at what cost.
//
// What decides changes only with the wall, the floor behind it and the ground outside. So each wall
// is cut where the floor zone changes and where a level of the ground was taken. Over a piece with
// level ground the section is one and the same, and the piece is exact. Over sloping ground it is
// taken every kSlopeStep_m, and where the answer changes between two of them the place is bisected
// to kSectionEnd_m; an answer that comes and goes within one step is not seen.
//
// The hole is the best at each place, at the height and fall that the judged sump states
// (rules::Site::hole).

#include <optional>
#include <vector>

#include "build/DrillSection.h"

namespace sumpwright::build {

inline constexpr double kSlopeStep_m = 0.25;  // own figure
inline constexpr double kSectionEnd_m = 1e-7;

/// One place of a piece.
struct SectionNode {
  double chainage_m = 0.0;
  double dig_m = 0.0;                   ///< below the outside ground; 0: none, or no hole
  std::optional<double> footing_top_m;  ///< fits_if_footing: highest top the hole fits over
};

/// A part of one wall over which the section gives one answer; from_m is in it, to_m is not.
struct SectionPiece {
  int ring = 0;
  int edge = 0;
  double from_m = 0.0;
  double to_m = 0.0;
  Fit fit = Fit::never;
  std::vector<NoCore> no_core;  ///< not_cored: why, all of it
  /// What a hole does there; as fit, but also where nothing but the foundation keeps it away.
  /// not_cored: it was not asked. What follows is of that hole.
  Fit bored = Fit::never;
  Start start = Start::below_ground;
  /// never: what clashes, `room_m` (negative) at its least over the piece; nothing: no fall at all.
  std::optional<Tightest> clash;
  /// never, with a height or fall stated: the limit that such a hole fails by most.
  std::optional<LimitKind> stated_fails;
  /// Whether a figure that decides was assumed: of the floor, the ground, the footing or the
  /// barrier.
  bool assumed = false;
  bool depth_assumed = false;      ///< whether one was that says how deep the floor lies
  std::vector<SectionNode> nodes;  ///< two or more, straight between them
};

class SectionAlong {
 public:
  static SectionAlong of(const rules::Site& site);

  /// By ring and chainage, without gaps.
  const std::vector<SectionPiece>& pieces() const { return m_pieces; }
  /// Contract: the place is one of the site's perimeter, wrapped onto its ring.
  const SectionPiece& at(perimeter::Place place) const;
  /// The same, read on a straight line between nodes.
  SectionNode read(perimeter::Place place) const;

 private:
  std::vector<SectionPiece> m_pieces;
};

/// Rule kind 6: refuses where no hole can be built for any footing top of the range, and where none
/// is cored at all (NoCore) unless an enabled binding rule says that very thing: of the wall's
/// kind, its foundation, the floor behind. Where a figure that decides was assumed, or nobody
/// looked, it is not proven instead. Where a hole fits only below some footing top: not proven with
/// unknown_gates, else nothing; it is for the trial pit to see. A foundation that another rule
/// refuses says nothing of the hole: that is judged as anywhere. What no note of an engineer mends
/// (neighbour, dwarf wall, no ground under the floor) cannot be waived.
extern const rules::RuleJudge kDrillSection;

}  // namespace sumpwright::build
