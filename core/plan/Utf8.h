#pragma once
// Whether text may be printed. Internal to core/plan.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace sumpwright::plan {

/// First byte that is not well-formed UTF-8 (RFC 3629, section 4), or nothing.
std::optional<std::size_t> firstBadByte(std::string_view text);

/// Whether the text holds a control character other than tab and line ends, or U+FFFE or U+FFFF.
/// None of them may stand in XML 1.0 (section 2.2), so none could be drawn to SVG.
bool hasControls(std::string_view text);

/// At most 40 bytes of it, cut between characters, for quoting in a message.
std::string shortened(std::string_view text);

}  // namespace sumpwright::plan
