// sumpwright site JOB: where the sump may go, why not elsewhere, where best.

#include <array>
#include <charconv>
#include <cmath>
#include <memory>
#include <nlohmann/json.hpp>

#include "cli/CommandLine.h"
#include "cli/Load.h"
#include "cli/Site.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

struct SiteChoice {
  StudyChoice study;
  std::string at;
  bool json = false;
};

template <class Number>
bool readAll(std::string_view text, Number& value) {
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc{} && end == text.data() + text.size();
}

/// "RING:CHAINAGE", both plain numbers with a decimal point.
std::optional<siting::Place> placeOf(std::string_view text) {
  const auto colon = text.find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  siting::Place place;
  const bool read = readAll(text.substr(0, colon), place.ring) &&
                    readAll(text.substr(colon + 1), place.chainage_m);
  return read && std::isfinite(place.chainage_m) ? std::optional(place) : std::nullopt;
}

std::string badPlace(const std::string& text) {
  return placeOf(text) ? "" : "'" + text + "' is not RING:CHAINAGE, such as 0:12.40";
}

/// The assessment for the sump whose waivers hold there, else for the first one of the design.
siting::Assessment assessed(const siting::Study& study, siting::Place place) {
  const auto& sumps = study.job().design.sumps;
  for (const plan::Sump& sump : sumps) {
    if (siting::Assessment at = study.assess(place, sump.id); at.waived) return at;
  }
  return study.assess(place, sumps.empty() ? std::string() : sumps.front().id);
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

/// Why there is no such place, if so.
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

void print(const siting::Study& study, const std::optional<siting::Assessment>& at, bool json,
           std::ostream& out) {
  if (json) {
    using Handler = nlohmann::ordered_json::error_handler_t;
    out << siteJson(study, at).dump(2, ' ', false, Handler::replace) << '\n';
  } else if (at) {
    printPlace(study, *at, out);
  } else {
    printSite(study, out);
  }
}

void runSite(const SiteChoice& choice, Console& console) {
  const std::optional<siting::Study> made = study(choice.study, console);
  if (!made) return;
  std::optional<siting::Assessment> at;
  if (!choice.at.empty()) {
    const siting::Place place = *placeOf(choice.at);
    if (const auto bad = noSuchPlace(place, *made)) {
      return refusePlace(choice.study.job, *bad, console);
    }
    at = assessed(*made, place);
  }
  print(*made, at, choice.json, console.out);
}

}  // namespace

void addSite(CLI::App& program, Console& console) {
  auto choice = std::make_shared<SiteChoice>();
  CLI::App* command =
      program.add_subcommand("site", "Where the sump may go, why not elsewhere, where best");
  addStudyOptions(*command, choice->study);
  command->add_flag("--json", choice->json, "As JSON (sumpwright.site/1)");
  command
      ->add_option("--at", choice->at,
                   "One place: ring and chainage on it in metres, such as 0:12.40")
      ->check(badPlace)
      ->type_name("RING:CHAINAGE");
  command->callback([choice, &console] { runSite(*choice, console); });
}

}  // namespace sumpwright::cli
