#pragma once
// Classes of a field under the floor and their colours: more is always further from the paper and
// stronger, so that they read in grey print as well.

#include <cstddef>
#include <vector>

#include "drawing/Theme.h"

namespace sumpwright::drawing {

enum class FieldKind {
  suction,  ///< Pa, in steps of 1-2-5
  chance    ///< that the target is held, 0..1
};

struct FieldScale {
  std::vector<double> levels;   ///< rising; class k lies from level k-1 up to level k
  std::vector<Colour> colours;  ///< one more than levels
  std::size_t classOf(double value) const;
};

/// Suction: below 0.5, 0.5, 1, 2, 5, 10, 20, 50, 100 Pa and over. Chance: below 0.1, 1/3, 2/3 (what
/// counts as likely), 0.9 and over (own figures). On paper the light colours.
const FieldScale& fieldScale(FieldKind kind, ThemeName name);

/// What belongs to an old plan: grey, at six parts of ten over the paper (own figure).
Colour drained(const Colour& colour, const Colour& paper);
/// A step of the scale's nine colours further from the paper, or nearer where negative.
Colour stepFrom(const FieldScale& scale, std::size_t own, int steps);

/// Relative luminance of WCAG 2.1, 0..1 (W3C recommendation, definitions; from memory).
double luminance(const Colour& colour);
/// Whichever of two colours has more contrast (WCAG 2.1, from memory) with the background
/// that suits it least.
Colour moreReadable(const Colour& one, const Colour& other, const std::vector<Colour>& behind);

}  // namespace sumpwright::drawing
