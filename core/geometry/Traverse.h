#pragma once
// A house outline taped wall by wall: where the walls lead, by how much they miss the start, how
// the miss is shared out, and which single misread wall would explain it.
//
// Metres; plane frame (x east or as drawn, y north). A leg's bearing is in degrees clockwise from
// y, as a surveyor's azimuth. The gap is what is still missing to the start: start − end.

#include <optional>
#include <string>
#include <vector>

#include "geometry/Point.h"

namespace sumpwright::geometry {

/// One wall as taped.
struct Leg {
  double bearing_deg = 0.0;
  double length_m = 0.0;
  bool bearing_held = true;  ///< a right angle taken for granted, not measured: never adjusted
  bool length_held = false;  ///< measured beyond doubt: never adjusted
  bool operator==(const Leg&) const = default;
};

/// The leg as a displacement.
Vec walked(const Leg& leg);

/// The corners from `start` on: as many as legs and one more, the last being where the tape ended.
std::vector<Point> corners(Point start, const std::vector<Leg>& legs);

struct Closing {
  Vec gap;                 ///< from the end back to the start
  double gap_m = 0.0;      ///< its length
  double bearing_deg = 0;  ///< its bearing, [0, 360); 0 for no gap
  double round_m = 0.0;    ///< sum of the legs
  /// N of "1 in N": round_m / gap_m; nothing where the gap is under a micrometre.
  std::optional<double> one_in;
};

/// No legs: no gap, nothing round.
Closing closingOf(const std::vector<Leg>& legs);

/// The compass (Bowditch) rule: each corner takes the gap's share that the tape had run up to it.
/// Corners as in corners(), the last equal to `start` but for rounding. Bearings turn a little even
/// where held: the rule knows no held bearing. Legs without length share nothing; all without: as
/// taped. (N. Bowditch's rule as in C. Ghilani and P. Wolf, Elementary Surveying, "Compass
/// (Bowditch) rule", from memory.)
std::vector<Point> closedByCompassRule(Point start, const std::vector<Leg>& legs);

/// How good tape and angle are, for the adjustment by least squares.
struct Precision {
  double length_m = 0.005;           ///< standard deviation of a length: this part does not grow
  double length_per_root_m = 0.002;  ///< and this times the root of the length in metres
  double bearing_deg = 0.5;          ///< of a bearing that was measured (own figures, all three)
};

/// Least squares with the two conditions that the outline closes: the smallest weighted changes of
/// lengths, and of bearings that are not held, that close it. The adjusted legs; nothing where what
/// may change cannot close it (all bearings held and parallel, everything held) or where it does
/// not settle. (Adjustment by conditions, as in C. Ghilani, Adjustment Computations; from memory.)
std::optional<std::vector<Leg>> closedByLeastSquares(const std::vector<Leg>& legs,
                                                     const Precision& precision);

enum class MisreadKind { transposed, slip };

/// A single wall whose length, read otherwise, closes the outline.
struct Misread {
  std::size_t leg = 0;
  MisreadKind kind = MisreadKind::transposed;
  double length_m = 0.0;  ///< as it would have to be
  double left_m = 0.0;    ///< gap that would remain
};

/// The walls that a single misreading explains, best first: two neighbouring digits of the length
/// in centimetres transposed, or a slip of a whole metre, of 10 cm or of 10 m. Only where the gap
/// that remains is at most `accuracy_m` and the gap now is more than that; otherwise none. In a
/// house of right angles every wall that runs the same way explains a slip equally: all are listed.
std::vector<Misread> misreadsThatExplain(const std::vector<Leg>& legs, double accuracy_m);

}  // namespace sumpwright::geometry
