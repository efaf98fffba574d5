#pragma once
// Where a figure comes from. Every figure of a rule, a table or a formula carries one.

#include <array>
#include <string>
#include <string_view>

namespace sumpwright::base {

enum class Mark { published, common_practice, own, derived, from_memory };

/// The words of files for Mark, in its order.
inline constexpr std::array<std::string_view, 5> kMarkNames{"published", "common_practice", "own",
                                                            "derived", "from_memory"};

struct Source {
  Mark mark = Mark::own;
  std::string text;  ///< document, section, year; or why, for an own figure
  bool operator==(const Source&) const = default;
};

}  // namespace sumpwright::base
