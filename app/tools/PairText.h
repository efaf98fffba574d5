#pragma once
// Two lengths as a person types them together: "12.4 x 8.6", "1.20, 0.45", "12' 6\" x 8'", "1,20
// 0,45".
//
// Parted by x, a semicolon, a comma with a space behind it, a comma between numbers with dots, or
// blanks where each half is a length by itself. "1,20" alone is one number with a decimal comma, so
// it is no pair. Lengths are those of LengthText.h. Total: any text gives a pair or none.

#include <optional>
#include <string_view>

#include "tools/LengthText.h"

namespace sumpwright::tools {

struct LengthPair {
  double first_m = 0.0;
  double second_m = 0.0;
  bool operator==(const LengthPair&) const = default;
};

/// Nothing for text that is no pair, or where one half has two readings.
std::optional<LengthPair> readPair(std::string_view text, BareUnit bare = BareUnit::metre);

}  // namespace sumpwright::tools
