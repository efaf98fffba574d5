#include "support/FixedVoice.h"

#include <cmath>
#include <cstdio>
#include <string_view>

namespace sumpwright::support {

namespace {

std::string number(const base::Quantity& q) {
  char buffer[64];
  std::snprintf(buffer, sizeof buffer, "%.2f", q.value == 0.0 ? 0.0 : q.value);
  return buffer;
}

struct Printed {
  const FixedVoice& voice;
  std::string operator()(const std::string& text) const { return text; }
  std::string operator()(std::int64_t count) const { return std::to_string(count); }
  std::string operator()(const base::Quantity& q) const { return number(q); }
  std::string operator()(const base::Message& m) const { return voice.say(m); }
};

double sizeOf(const drawing::Font& font) { return font.size_pt * 25.4 / 72.0; }

}  // namespace

std::string FixedVoice::say(const base::Message& message) const {
  if (message.id.empty()) return {};
  const std::string tail = message.id.substr(message.id.rfind('.') + 1);
  const Printed printed{*this};
  if (message.args.empty()) return tail;
  const bool bare =
      message.id == "text" || message.id == "thing.named" ||
      (message.args.size() == 1 && std::holds_alternative<base::Quantity>(message.args[0].value));
  if (bare) return std::visit(printed, message.args[0].value);
  std::string out = tail;
  for (const base::Arg& arg : message.args) out += ' ' + std::visit(printed, arg.value);
  return out;
}

double FixedVoice::width_mm(const std::string& text, const drawing::Font& font) const {
  double sum = 0.0;
  for (const char c : text) {
    if ((static_cast<unsigned char>(c) & 0xC0U) == 0x80U) continue;  // inside a UTF-8 letter
    const bool narrow = std::string_view(" .,:;'il|!()[]").find(c) != std::string_view::npos;
    const bool wide = std::string_view("MWmw%@").find(c) != std::string_view::npos;
    sum += narrow ? 0.35 : wide ? 0.85 : 0.58;
  }
  return sum * sizeOf(font) * (font.bold ? 1.05 : 1.0);
}

double FixedVoice::capHeight_mm(const drawing::Font& font) const { return 0.72 * sizeOf(font); }

}  // namespace sumpwright::support
