// sumpwright site JOB: where the sump may go, why not elsewhere, where best.

#include <memory>
#include <nlohmann/json.hpp>

#include "cli/AtPlace.h"
#include "cli/CommandLine.h"
#include "cli/FanOption.h"
#include "cli/Load.h"
#include "cli/Problems.h"
#include "cli/Site.h"
#include "siting/ReachAsked.h"

namespace sumpwright::cli {

namespace {

struct SiteChoice {
  StudyChoice study;
  std::string at;
  std::string fan;
  bool reach = false;
  bool json = false;
};

/// The assessment for the sump whose waivers hold there, else for the first one of the design.
siting::Assessment assessed(const siting::Study& study, siting::Place place) {
  const auto& sumps = study.job().design.sumps;
  for (const plan::Sump& sump : sumps) {
    if (siting::Assessment at = study.assess(place, sump.id); at.waived) return at;
  }
  return study.assess(place, sumps.empty() ? std::string() : sumps.front().id);
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

/// With the part of the score that asks for it; nothing where that failed, which is told.
std::optional<siting::Study> withReach(const siting::Study& study, const SiteChoice& choice,
                                       Console& console) {
  const auto fan = fanFor(choice.fan, study.job());
  if (!fan.ok()) {
    decline(choice.study.job, fan.problems(), console);
    return std::nullopt;
  }
  const auto system = siting::usualSystem(study.site(), fan->fan, fan->invented);
  auto reach = siting::reachAsked(study, system, siting::suctionOptionsOf(study.job()));
  if (!reach) {
    decline(choice.study.job, reach.problems(), console);
    return std::nullopt;
  }
  return study.withReach(std::make_shared<const siting::ReachAlong>(std::move(reach).value()));
}

void runSite(const SiteChoice& choice, Console& console) {
  std::optional<siting::Study> made = study(choice.study, console);
  if (made && choice.reach) made = withReach(*made, choice, console);
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
  addAtOption(*command, choice->at);
  command->add_flag("--reach", choice->reach,
                    "Also judge suction: reach along the wall (a prediction)");
  addFanOption(*command, choice->fan);
  command->callback([choice, &console] { runSite(*choice, console); });
}

}  // namespace sumpwright::cli
