#include "plan/Utf8.h"

#include <algorithm>
#include <cstdint>

namespace sumpwright::plan {

namespace {

constexpr std::size_t kQuoted = 40;

bool follows(std::uint8_t byte) { return (byte & 0xC0U) == 0x80U; }

/// Length of the character that starts here, 0 where it is malformed.
std::size_t characterAt(std::string_view text, std::size_t i) {
  const auto byte = [&](std::size_t k) {
    return i + k < text.size() ? static_cast<std::uint8_t>(text[i + k]) : std::uint8_t{0};
  };
  const std::uint8_t lead = byte(0);
  if (lead < 0x80) return 1;
  if (lead < 0xC2 || lead > 0xF4 || !follows(byte(1))) return 0;
  if (lead < 0xE0) return 2;
  if (!follows(byte(2))) return 0;
  if (lead == 0xE0 && byte(1) < 0xA0) return 0;  // overlong
  if (lead == 0xED && byte(1) > 0x9F) return 0;  // surrogates
  if (lead < 0xF0) return 3;
  if (!follows(byte(3))) return 0;
  if (lead == 0xF0 && byte(1) < 0x90) return 0;  // overlong
  if (lead == 0xF4 && byte(1) > 0x8F) return 0;  // past U+10FFFF
  return 4;
}

}  // namespace

std::optional<std::size_t> firstBadByte(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = characterAt(text, i);
    if (length == 0) return i;
    i += length;
  }
  return std::nullopt;
}

bool hasControls(std::string_view text) {
  const bool control = std::any_of(text.begin(), text.end(), [](char c) {
    const auto byte = static_cast<std::uint8_t>(c);
    return (byte < 0x20 && c != '\t' && c != '\n' && c != '\r') || byte == 0x7F;
  });
  return control || text.find("\xEF\xBF\xBE") != std::string_view::npos ||
         text.find("\xEF\xBF\xBF") != std::string_view::npos;
}

std::string shortened(std::string_view text) {
  if (text.size() <= kQuoted) return std::string(text);
  std::size_t end = kQuoted;
  while (end > 0 && follows(static_cast<std::uint8_t>(text[end]))) --end;
  return std::string(text.substr(0, end)) + "...";
}

}  // namespace sumpwright::plan
