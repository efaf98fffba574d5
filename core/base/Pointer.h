#pragma once
// Places in a JSON file.

#include <string>
#include <string_view>

namespace sumpwright::base {

/// A key as one step of a JSON pointer (RFC 6901, section 3), without the slash before it.
std::string pointerStep(std::string_view key);

}  // namespace sumpwright::base
