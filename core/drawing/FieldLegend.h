#pragma once
// What stands beside a field: its scale with the target on it, and the share of floor held.

#include "drawing/FieldScale.h"
#include "drawing/Voice.h"

namespace sumpwright::drawing {

/// One box for each class, the figures between them below, the target's figure bold under a longer
/// tick. As wide as asked for; its height is in the list.
DrawList fieldLegend(FieldKind kind, double target, ThemeName name, double width_mm,
                     const Voice& voice, bool stale = false);

/// The two kinds of target line with their words, one under the other; the dotted one only where
/// `dotted`.
DrawList targetKey(FieldKind kind, double target, bool dotted, ThemeName name, double width_mm,
                   const Voice& voice);

/// What the colours mean beside their figures: that the stronger one is more, and that a hatched
/// floor has no figure.
DrawList colourKey(FieldKind kind, ThemeName name, double width_mm, const Voice& voice);

/// Share of floor held, 0..1: solid to the low case, hatched on to the high one, an upright mark at
/// the prediction. No words: the caller's say it.
struct ShareOfFloor {
  double low = 0.0;
  double predicted = 0.0;
  double high = 0.0;
};
DrawList shareBar(const ShareOfFloor& share, ThemeName name, double width_mm);
inline constexpr double kShareBar_mm = 4.5;  ///< its height

}  // namespace sumpwright::drawing
