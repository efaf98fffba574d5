#pragma once
// All holes (entry height, fall) that keep every limit: a convex region, in closed form.

#include <optional>
#include <vector>

#include "build/Curves.h"
#include "build/Limits.h"

namespace sumpwright::build {

/// A hole: height of its centre at the outside face, and its fall into the house as a tangent.
struct Bore {
  double entry_m = 0.0;
  double fall = 0.0;
  bool operator==(const Bore&) const = default;
};

/// What the contractor has fixed; the rest is chosen.
struct BoreWish {
  std::optional<double> entry_m;
  std::optional<double> fall;
  bool operator==(const BoreWish&) const = default;
};

/// What falls are preferred; a `sure` not above the gentlest allowed asks for nothing.
struct FallWish {
  double usual = 0.0;
  double sure = 0.0;
};

/// The two limits between which it is tightest, and the room between them: negative where the hole
/// is too thick by that much. Both are the same where only one binds (a wish).
struct Tightest {
  LimitKind upper = LimitKind::slab;
  LimitKind lower = LimitKind::footing;
  double room_m = 0.0;
  bool operator==(const Tightest&) const = default;
};

class FeasibleSet {
 public:
  explicit FeasibleSet(std::vector<Limit> limits);

  const std::vector<Limit>& limits() const { return m_limits; }
  /// Falls that the limits on the fall alone allow (fall, barrel).
  std::optional<Falls> allowedFalls() const { return m_falls; }
  /// Falls at which some entry height keeps every limit with `spare_m` to spare on both sides.
  std::optional<Falls> falls(double spare_m = 0.0) const;
  bool empty() const { return !falls(); }
  bool contains(Bore bore) const;

  struct Entries {
    double low_m = 0.0, high_m = 0.0;  ///< low > high: none
    LimitKind lower = LimitKind::footing, upper = LimitKind::slab;
  };
  /// The entry heights that the limits allow at one fall; limits on the fall are not asked.
  Entries entries(double fall) const;

  /// The best hole that keeps to the wish; nothing where no fall is allowed.
  ///
  /// How good a fall is, is the least of two shares: what it leaves to spare to either side of the
  /// hole over kWander_m, and how far it is from the gentlest allowed to falls.sure. Among falls
  /// where both are 1 or more the one nearest to falls.usual is taken; else the one with the
  /// largest least share, so that fall is given up for room only as far as room is short, and the
  /// other way round. Where nothing is feasible that is the one that misses by least. At a fall the
  /// hole is as high as kEnough_m to spare allows: the shallowest dig; with less room, in the
  /// middle.
  std::optional<Bore> best(const BoreWish& wish, const FallWish& falls) const;
  /// Where it is tightest at a fall.
  Tightest tightest(double fall) const;

 private:
  Bore bestFree(const FallWish& falls) const;
  Bore bestAtEntry(double entry_m, const FallWish& falls) const;
  double bestFall(const std::vector<Curve>& spare, const FallWish& falls) const;
  Bore bestAtFall(double fall) const;

  std::vector<Limit> m_limits;
  std::vector<Limit> m_uppers;
  std::vector<Limit> m_lowers;
  std::vector<Curve> m_rooms;  ///< room between each upper and each lower limit, over the fall
  std::optional<Falls> m_falls;
};

/// The highest footing top that the limits other than the footing's leave room for at falls of
/// `least_fall` or more, and the hole that does so; nothing where they leave none at all.
struct Ceiling {
  double footing_top_m = 0.0;
  Bore bore;
};
std::optional<Ceiling> footingCeiling(const std::vector<Limit>& limits, double usual_fall,
                                      double least_fall = 0.0);

}  // namespace sumpwright::build
