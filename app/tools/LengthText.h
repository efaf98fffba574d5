#pragma once
// A length as a person types it on site: "12.40", "12,40", "1240cm", "3450 mm", "40'8\"",
// "11' 4 1/2\"", "12 ft 3 in", "5/8\"". Metric or feet and inches, whatever is on display.
//
// A dot is a decimal mark, as on a laser's display ("3.450"). One comma before exactly three digits
// ("1,900") may be a decimal comma or a thousands mark: never guessed, both readings are given.
// Both marks in one number ("1.234,5") settle each other. Signs are refused: a length is measured
// forward. Total: any text gives one of the three outcomes.

#include <string_view>
#include <vector>

namespace sumpwright::tools {

/// Unit of a number that states none.
enum class BareUnit { metre, foot };

enum class LengthFault {
  none,
  empty,
  not_a_length,  ///< no number, or letters that are no unit
  ambiguous,     ///< two readings: ask
};

struct LengthReading {
  LengthFault fault = LengthFault::not_a_length;
  std::vector<double> metres;  ///< one when understood, two when ambiguous, else none
  bool ok() const { return fault == LengthFault::none; }
};

/// 1 in = 25.4 mm, 1 ft = 12 in, exactly (International Yard and Pound Agreement, 1959).
LengthReading readLength(std::string_view text, BareUnit bare = BareUnit::metre);

}  // namespace sumpwright::tools
