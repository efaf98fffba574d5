#pragma once
// One wall as a person types it: a direction, if it changes, and a length.
//
//   4.20            on in the direction shown       n 4.20, sw 3      by the compass
//   l 4.20          square to the left of the last  b 123.5 4.20      a bearing, degrees from north
//   r 4.20          square to the right             123.5° 4.20       the same
//   l45 4.20        45° to the left of the last     ↑ 4.20            up the sheet
//
// "left" and "right" may be written out; lengths are those of LengthText.h. Total: any text gives
// one of the outcomes.

#include <optional>
#include <string_view>

#include "tools/LengthText.h"

namespace sumpwright::tools {

enum class AimKind {
  none,     ///< the line gives no direction
  sheet,    ///< degrees clockwise from up the sheet
  compass,  ///< degrees clockwise from north
  left,     ///< degrees to the left of the wall before
  right,
};

/// Where a wall goes.
struct Aim {
  AimKind kind = AimKind::none;
  double degrees = 0.0;
  bool square = true;  ///< a right angle (or an eighth of a turn) taken for granted, not measured
  bool operator==(const Aim&) const = default;
};

struct TapeLine {
  Aim aim;
  LengthReading length;  ///< fault `empty` where only a direction was typed
  /// A direction, a length or both.
  bool ok() const {
    return length.ok() || (length.fault == LengthFault::empty && aim.kind != AimKind::none);
  }
};

TapeLine readTapeLine(std::string_view text, BareUnit bare = BareUnit::metre);

/// Degrees clockwise from up the sheet, [0, 360). `before_deg` is that of the wall before, nothing
/// for the first: left and right then turn from up. `north_deg` is Plan::north_deg. A line without
/// a direction goes on `before_deg`, the first to the right (east).
double sheetBearing(const Aim& aim, std::optional<double> before_deg, double north_deg);

}  // namespace sumpwright::tools
