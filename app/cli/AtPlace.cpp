#include "cli/AtPlace.h"

#include <array>
#include <charconv>
#include <cmath>

#include "cli/CommandLine.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

template <class Number>
bool readAll(std::string_view text, Number& value) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc{} && end == text.data() + text.size();
}

/// A ring's length adds up its walls': this much over it is rounding (own figure).
constexpr double kRounding_m = 1e-9;

/// The shortest text that reads back as the same number.
std::string plain(double value) {
  std::array<char, 32> text{};
  const auto [end, error] = std::to_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc{} ? std::string(text.data(), end) : std::string();
}

/// So that the length that is told may be typed.
double downToMicrometre(double value_m) { return std::floor(value_m * 1e6 + 1e-3) / 1e6; }

std::string badPlace(const std::string& text) {
  return placeOf(text) ? "" : "'" + text + "' is not RING:CHAINAGE, such as 0:12.40";
}

}  // namespace

std::optional<siting::Place> placeOf(std::string_view text) {
  const auto colon = text.find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  siting::Place place;
  const bool read = readAll(text.substr(0, colon), place.ring) &&
                    readAll(text.substr(colon + 1), place.chainage_m);
  return read && std::isfinite(place.chainage_m) ? std::optional(place) : std::nullopt;
}

std::optional<base::Message> noSuchPlace(siting::Place place, const siting::Study& study) {
  const perimeter::Perimeter& perimeter = study.perimeter();
  if (!perimeter.contains({place.ring, 0.0})) {
    return base::Message("cli.no-ring", {base::count("ring", place.ring),
                                         base::count("last", perimeter.ringCount() - 1)});
  }
  const double length = perimeter.length_m(place.ring);
  if (place.chainage_m >= 0.0 && place.chainage_m <= length + kRounding_m) return std::nullopt;
  return base::Message("cli.off-ring", {base::text("chainage", plain(place.chainage_m)),
                                        base::count("ring", place.ring),
                                        base::text("length", plain(downToMicrometre(length)))});
}

void refusePlace(const std::string& job, const base::Message& message, Console& console) {
  console.err << "sumpwright: " << job << ": " << message.id << ": "
              << words::say(message, words::Units::metric) << '\n';
  console.exit_code = kUnusable;
}

void addAtOption(CLI::App& command, std::string& at) {
  command.add_option("--at", at, "One place: ring and chainage on it in metres, such as 0:12.40")
      ->check(badPlace)
      ->type_name("RING:CHAINAGE");
}

}  // namespace sumpwright::cli
