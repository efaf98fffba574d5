#pragma once
// Message -> text in the user's language. Units, decimals and language are applied here and nowhere
// else. Needs no application object: without one (or without a translation) it speaks English.
//
// Formats of a quantity, metric | imperial:
//   metre         1.12 m      | 3' 8 1/8"   (feet and inches to the nearest eighth)
//   millimetre    14 mm       | 4 3/8"
//   square metre  12.4 m²     | 133 ft²
//   pascal        5.0 Pa      | 0.020 in. w.c. (inches of water column)
//   m³/h          119 m³/h    | 70 cfm         (cubic feet a minute)
//   m/s           8.1 m/s     | 1594 ft/min
//   watt 45 W, kilowatt hour 394 kWh in both.
//   degree 12.5°, percent 75 %, none 1.5 (no trailing zeros) in both.
// A minus is a true minus (U+2212); a value that rounds to nothing has no sign.
//
// In a sentence {name} stands for an argument; after a colon, joined by commas, may follow
//   N       that many decimals (metric only: eighths of an inch stay eighths)
//   signed  with its sign, + included
//   bare    without the unit (feet and inches keep their marks, they would mean nothing without)
//   down    rounded down instead of to the nearest, so that what falls short never reads as enough
//   cap     with a capital first letter
//   sold    as it is sold: inches have their millimetres beside them, 4 3/8" (110 mm)
// {name?one|many} stands for the first word where that count is 1, else for the second. {=0.5 m} is
// a figure of the sentence's own (m, mm, m³/h, Pa, °C): as written in metric; feet and inches to
// the inch. A full stop after words that end in one is left out. A name without an argument stays
// as it stands, braces and all, so that a test can see it.

#include <concepts>
#include <string>
#include <string_view>

#include "base/Message.h"

namespace sumpwright::words {

enum class Units { metric, imperial };

/// How to print one quantity; the default is the table above.
struct QuantityStyle {
  int decimals = -1;  ///< -1: as the unit has it
  bool has_sign = false;
  bool bare = false;
  bool down = false;
};

/// The sentence or phrase of a message, UTF-8. An id without a sentence gives the id in brackets;
/// an empty id gives nothing; id "text" gives its argument "text".
std::string say(const base::Message& message, Units units);

/// The same for any closed list that holds `imperial` (the job's display units), so that words need
/// not know plans.
template <class DisplayUnits>
requires(!std::same_as<DisplayUnits, Units>) && requires { DisplayUnits::imperial; }
std::string say(const base::Message& message, DisplayUnits units) {
  return say(message, units == DisplayUnits::imperial ? Units::imperial : Units::metric);
}

/// A sentence with its braces filled from the message's arguments (its id plays no part).
std::string fill(std::string_view sentence, const base::Message& message, Units units);

/// One quantity. Not a number or infinite: "unknown".
std::string print(const base::Quantity& quantity, Units units, const QuantityStyle& style = {});

/// Whether a sentence stands for this id.
bool hasSentence(const std::string& id);

}  // namespace sumpwright::words
