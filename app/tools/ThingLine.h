#pragma once
// One thing as a person types it beside the wall in hand: what, how far from the left corner as
// seen from outside, then how wide, or how far out from the wall or in from it.
//
//   w 1.20 1.05             window, 1.20 m from the left corner, 1.05 m wide
//   w r1.20 1.05            the same from the right corner
//   w 1.20 1.05 0.90 2.10   with sill and head above the floor
//   t4 w 1.20 1.05          four of them, as far from each other as the first from the corner
//   gas 2.10                the gas main comes in there;  el  wa  tel  oil  dr  ws
//   gas 2.10 6.00           the same, its run seen to go straight out from the wall for 6.00 m
//   rad 1.20 1.00           radiator on the wall's inside;  pi 1.20 0.30  pier in it
//   iw 3.20                 inner wall, square from this wall to the next one it meets
//   iw 3.20 2.10            the same, 2.10 m long;  rw 3.20  the rising wall under it
//   in 3.20 1.00 0.80       door 1.00 m along the inner wall that starts there, 0.80 m wide
//   so 2.10                 socket on the inside;  sink 2.10 0.30  0.30 m in from the inner face
//   gully 2.10 0.40         0.40 m out from the wall
//   ic 2.10 1.20 0.60 0.45  chamber 1.20 m out, 0.60 m along the wall and 0.45 m deep
//   bo 0 3.00 12.0          boundary, 3.00 m out, for 12 m along the wall
//   floor slab              the whole floor;  floor timber kitchen  the one under a room
//   court 3 4 2.5 2         courtyard 4 m in from the outside face
//
// wordList() has all words. Numbers are lengths of LengthText.h, without spaces inside. Total.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/Kinds.h"
#include "tools/LengthText.h"

namespace sumpwright::tools {

enum class LineKind {
  opening,
  service,
  radiator,
  inner_wall,
  rising_wall,
  inner_door,
  heating_pipe,
  supply,
  fitting,
  test_hole,
  outside,
  feature,
  floor,
  courtyard,
};

enum class LineFault {
  none,
  empty,
  unknown_word,  ///< `word` says which
  not_a_length,
  ambiguous,  ///< a length with two readings
  few,        ///< an offset, a width or a distance is missing
  many,       ///< more numbers than the thing has
  no_repeat,  ///< only openings are repeated, and at most fifty times
};

struct ThingLine {
  LineFault fault = LineFault::empty;
  std::string word;  ///< as typed
  LineKind kind = LineKind::opening;
  int which = 0;  ///< of the kind's own list: an OpeningKind, a ServiceKind, a FloorKind, ...
  int times = 1;
  bool from_right = false;
  double offset_m = 0.0;          ///< to the nearer edge, or to the middle of what has no width
  std::optional<double> width_m;  ///< an inner wall: its length; a service: its run
  std::optional<double> sill_m;
  std::optional<double> head_m;
  double off_m = 0.0;             ///< out from the wall, or in from it; along an inner wall
  std::optional<double> depth_m;  ///< away from the wall
  std::string room;               ///< of a floor: the room's name or use; empty: the whole floor
  bool ok() const { return fault == LineFault::none; }

  plan::OpeningKind opening() const { return static_cast<plan::OpeningKind>(which); }
  plan::ServiceKind service() const { return static_cast<plan::ServiceKind>(which); }
};

ThingLine readThingLine(std::string_view text, BareUnit bare = BareUnit::metre);

/// One word of the line: short and long, and what it stands for.
struct ThingWord {
  std::string_view brief;
  std::string_view full;
  LineKind kind = LineKind::opening;
  int which = 0;
};
/// All of them, in the order they are shown.
const std::vector<ThingWord>& thingWords();

}  // namespace sumpwright::tools
