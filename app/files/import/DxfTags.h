#pragma once
// The pairs of lines a DXF file is made of: a group code, and its value.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace sumpwright::files {

struct DxfTag {
  int code = 0;
  std::string_view value;  ///< without blanks at its ends; into the file's bytes
};

/// Reads pair after pair; comments (999) and a byte order mark are passed over.
class DxfTags {
 public:
  /// `bytes` must outlive this.
  explicit DxfTags(std::string_view bytes);

  /// The next pair. Nothing at the end of the bytes, after EOF, or where the pattern breaks.
  std::optional<DxfTag> next();

  /// Whether a line that should be a code is none, and which (from 1).
  bool broken() const { return m_broken; }
  std::size_t line() const { return m_line; }
  /// Whether the file said that it ends (0, EOF).
  bool whole() const { return m_whole; }

 private:
  std::optional<std::string_view> nextLine();

  std::string_view m_rest;
  char m_line_end = '\n';
  std::size_t m_line = 0;
  bool m_broken = false;
  bool m_whole = false;
};

/// The number that is all of the text; nothing where it is none or not finite.
std::optional<double> dxfNumber(std::string_view text);
std::optional<int> dxfInteger(std::string_view text);

/// A name as UTF-8: as it is where it is that already, otherwise taken for Latin-1; \U+XXXX of the
/// format put into its letter. (Older files name a code page; Western Europe's differs from Latin-1
/// only in signs that no layer's name needs.)
std::string dxfName(std::string_view text);

}  // namespace sumpwright::files
