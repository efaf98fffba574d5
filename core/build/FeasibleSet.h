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

  /// The best hole that keeps to the wish: with kEnough_m to spare, the shallowest dig at the fall
  /// nearest to `usual_fall`; where there is less room, the place with most to spare. Where
  /// nothing is feasible, the one that misses by least; nothing where no fall is allowed.
  std::optional<Bore> best(const BoreWish& wish, double usual_fall) const;
  /// Where it is tightest at a fall.
  Tightest tightest(double fall) const;

 private:
  Bore bestFree(double usual_fall) const;
  Bore bestAtEntry(double entry_m, double usual_fall) const;
  Bore bestAtFall(double fall) const;

  std::vector<Limit> m_limits;
  std::vector<Limit> m_uppers;
  std::vector<Limit> m_lowers;
  std::vector<Curve> m_rooms;  ///< room between each upper and each lower limit, over the fall
  std::optional<Falls> m_falls;
};

/// The highest footing top that the limits other than the footing's leave room for, and the hole
/// that does so; nothing where they leave none at all.
struct Ceiling {
  double footing_top_m = 0.0;
  Bore bore;
};
std::optional<Ceiling> footingCeiling(const std::vector<Limit>& limits, double usual_fall);

}  // namespace sumpwright::build
