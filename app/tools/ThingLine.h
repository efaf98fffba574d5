#pragma once
// One thing on a wall as a person types it: what, how far from the left corner as seen from
// outside, how wide, and for an opening its sill and head.
//
//   w 1.20 1.05             window, 1.20 m from the left corner, 1.05 m wide
//   w r1.20 1.05            the same from the right corner
//   d 3.40 0.90             door          g  glazed door     gd garage door    v  vent
//   w 1.20 1.05 0.90 2.10   with sill and head above the floor
//   gas 2.10                the gas main comes in there;  el  wa  tel  oil  dr  ws
//   gas 2.10 6.00           the same, its run seen to go straight out from the wall for 6.00 m
//   rad 1.20 1.00           radiator on the wall's inside
//   iw 3.20                 inner wall, square from this wall to the next one it meets
//   iw 3.20 2.10            the same, 2.10 m long
//   fl 2.00 0.10            flue terminal
//   t4 w 1.20 1.05          four of them, as far from each other as the first from the corner
//
// Words may be written out. Numbers are lengths of LengthText.h, without spaces inside. Total.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/Kinds.h"
#include "tools/LengthText.h"

namespace sumpwright::tools {

enum class LineKind { opening, service, radiator, inner_wall };

enum class LineFault {
  none,
  empty,
  unknown_word,  ///< `word` says which
  not_a_length,
  ambiguous,  ///< a length with two readings
  few,        ///< an offset or width is missing
  many,       ///< more numbers than the thing has
  no_repeat,  ///< only openings are repeated, and at most fifty times
};

struct ThingLine {
  LineFault fault = LineFault::empty;
  std::string word;  ///< as typed
  LineKind kind = LineKind::opening;
  plan::OpeningKind opening = plan::OpeningKind::window;
  plan::ServiceKind service = plan::ServiceKind::water;
  int times = 1;
  bool from_right = false;
  double offset_m = 0.0;          ///< to the nearer edge, or to the middle of what has no width
  std::optional<double> width_m;  ///< an inner wall: its length; a service: its run
  std::optional<double> sill_m;
  std::optional<double> head_m;
  bool ok() const { return fault == LineFault::none; }
};

ThingLine readThingLine(std::string_view text, BareUnit bare = BareUnit::metre);

}  // namespace sumpwright::tools
