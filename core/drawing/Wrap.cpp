#include "drawing/Voice.h"

namespace sumpwright::drawing {

std::vector<std::string> wrap(const Voice& voice, const std::string& text, const Font& font,
                              double width_mm) {
  std::vector<std::string> lines;
  std::string line;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    at = end + 1;
    if (word.empty()) continue;
    const std::string longer = line.empty() ? word : line + ' ' + word;
    if (!line.empty() && voice.width_mm(longer, font) > width_mm) {
      lines.push_back(line);
      line = word;
    } else {
      line = longer;
    }
  }
  if (!line.empty()) lines.push_back(line);
  return lines;
}

}  // namespace sumpwright::drawing
