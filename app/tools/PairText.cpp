#include "tools/PairText.h"

#include <string>

namespace sumpwright::tools {

namespace {

std::optional<LengthPair> pairOf(std::string_view first, std::string_view second, BareUnit bare) {
  const LengthReading a = readLength(first, bare);
  const LengthReading b = readLength(second, bare);
  if (!a.ok() || !b.ok()) return std::nullopt;
  return LengthPair{a.metres.front(), b.metres.front()};
}

std::optional<LengthPair> partedAt(std::string_view text, std::size_t at, std::size_t width,
                                   BareUnit bare) {
  if (at == std::string_view::npos) return std::nullopt;
  return pairOf(text.substr(0, at), text.substr(at + width), bare);
}

/// Blanks stand within a length too: what is one length ("12 ft 3 in") is no pair, and else the one
/// blank that leaves two lengths parts.
std::optional<LengthPair> partedAtBlank(std::string_view text, BareUnit bare) {
  if (readLength(text, bare).ok()) return std::nullopt;
  std::optional<LengthPair> found;
  for (std::size_t at = text.find(' '); at != std::string_view::npos; at = text.find(' ', at + 1)) {
    const auto pair = partedAt(text, at, 1, bare);
    if (pair && found && *pair != *found) return std::nullopt;
    if (pair) found = pair;
  }
  return found;
}

}  // namespace

std::optional<LengthPair> readPair(std::string_view text, BareUnit bare) {
  constexpr std::string_view kTimes = "\xC3\x97";  // ×
  for (const std::string_view mark : {std::string_view("x"), std::string_view("X"), kTimes,
                                      std::string_view(";"), std::string_view(", ")}) {
    if (const auto pair = partedAt(text, text.find(mark), mark.size(), bare)) return pair;
  }
  const std::size_t comma = text.find(',');
  const bool dots = comma != std::string_view::npos &&
                    text.substr(0, comma).find('.') != std::string_view::npos &&
                    text.substr(comma + 1).find('.') != std::string_view::npos;
  if (dots) return partedAt(text, comma, 1, bare);
  return partedAtBlank(text, bare);
}

}  // namespace sumpwright::tools
