#pragma once

#include <string_view>

namespace sumpwright::plan {

/// Whether a text says nothing: empty, or only spaces, tabs and line ends.
inline bool isBlank(std::string_view text) {
  return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

}  // namespace sumpwright::plan
