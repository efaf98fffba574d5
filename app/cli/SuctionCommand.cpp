// sumpwright suction JOB: will it pull under the whole floor.

#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>
#include <thread>

#include "cli/AtPlace.h"
#include "cli/CommandLine.h"
#include "cli/FanOption.h"
#include "cli/Load.h"
#include "cli/Problems.h"
#include "cli/Suction.h"
#include "files/FanTables.h"
#include "files/JobFile.h"
#include "files/PriceBooks.h"
#include "plan/KindNames.h"

namespace sumpwright::cli {

namespace {

struct SuctionChoice {
  StudyChoice study;
  std::string at;
  std::string fan;
  std::string fill;
  std::string grid;
  std::optional<double> target;
  std::optional<double> limit;
  bool no_tests = false;
  int draws = 64;
  bool places = false;
  bool json = false;
};

/// More threads than this gain nothing on a house (own figure).
constexpr unsigned kMostThreads = 8;

/// Tells how far it is, on a terminal only: logs and pipes stay clean.
suction::Going progressOn(const Console& console) {
  if (&console.err != &std::cerr || isatty(STDERR_FILENO) == 0) return {};
  return [&err = console.err, last = -1](double done) mutable {
    const int percent = static_cast<int>(std::floor(100.0 * done));
    if (percent == last) return true;
    last = percent;
    err << "\rguessing the ground: " << percent << " %" << (percent == 100 ? "\r\033[K" : "")
        << std::flush;
    return true;
  };
}

siting::SuctionOptions suctionOptions(const SuctionChoice& choice, const plan::Job& job,
                                      const Console& console) {
  siting::SuctionOptions options = siting::suctionOptionsOf(job);
  if (!choice.at.empty()) options.at = placeOf(choice.at);
  if (!choice.fill.empty()) options.fill = plan::valueOf<plan::Fill>(choice.fill);
  if (choice.target) {
    options.target.design_pa = *choice.target;
    if (!choice.limit) options.target.limit_pa = std::min(options.target.limit_pa, *choice.target);
  }
  if (choice.limit) options.target.limit_pa = *choice.limit;
  options.use_tests = !choice.no_tests;
  options.draws = choice.draws;
  options.along = choice.places;
  options.fans = files::offeredFans();
  options.threads =
      static_cast<int>(std::clamp(std::thread::hardware_concurrency(), 1U, kMostThreads));
  options.going = progressOn(console);
  return options;
}

void writeSuction(const SuctionChoice& choice, const siting::Study& study,
                  const siting::SuctionSystem& system, const siting::SuctionAnswer& answer,
                  Console& console) {
  if (!choice.grid.empty()) {
    const auto written = files::writeBytes(choice.grid, gridCsv(answer));
    if (!written.ok()) return decline(choice.study.job, written.problems(), console);
  }
  const auto book = files::priceBookOf(study.job());
  if (!book.ok()) return decline(choice.study.job, book.problems(), console);
  const plan::Running& running = study.job().design.running;
  const auto year = price::runningYear(answer, running,
                                       price::tariffOf(running, *book ? &(*book)->book : nullptr));
  if (!choice.json) return printSuction(study, system, answer, year, console.out);
  using Handler = nlohmann::ordered_json::error_handler_t;
  console.out << suctionJson(study, system, answer, year).dump(2, ' ', false, Handler::replace)
              << '\n';
}

void runSuction(const SuctionChoice& choice, Console& console) {
  const std::optional<siting::Study> made = study(choice.study, console);
  if (!made) return;
  const auto fan = fanFor(choice.fan, made->job());
  if (!fan.ok()) return decline(choice.study.job, fan.problems(), console);
  const siting::SuctionOptions options = suctionOptions(choice, made->job(), console);
  if (options.at) {
    if (const auto bad = noSuchPlace(*options.at, *made)) {
      return refusePlace(choice.study.job, *bad, console);
    }
  }
  const auto system = siting::usualSystem(made->site(), fan->fan, fan->invented);
  const auto answer = siting::studySuction(*made, system, options);
  if (!answer.ok()) return decline(choice.study.job, answer.problems(), console);
  writeSuction(choice, *made, system, *answer, console);
}

void addGroundOptions(CLI::App& command, SuctionChoice& choice) {
  command
      .add_option("--target", choice.target,
                  "Suction asked for everywhere, pascals; without it the job's, else 5")
      ->check(within(0.1, 100.0))
      ->type_name("PA");
  command
      .add_option("--limit", choice.limit,
                  "Least suction that counts as held, pascals, no more than the target; without it "
                  "the job's, else 1")
      ->check(within(0.1, 100.0))
      ->type_name("PA");
  command.add_flag("--no-tests", choice.no_tests,
                   "Leaves the job's pressure tests out of the prediction");
  command.add_option("--fill", choice.fill, "What lies under the slab instead of the job's word")
      ->check(CLI::IsMember({"clean_stone", "graded", "none", "unknown"}))
      ->type_name("KIND");
  command.add_option("--draws", choice.draws, "Guesses at the ground, 64 to 1024")
      ->check(CLI::Range(64, 1024))
      ->type_name("N")
      ->capture_default_str();
}

}  // namespace

void addSuction(CLI::App& program, Console& console) {
  auto choice = std::make_shared<SuctionChoice>();
  CLI::App* command =
      program.add_subcommand("suction", "Will it pull under the whole floor: a prediction");
  addStudyOptions(*command, choice->study);
  command->add_flag("--json", choice->json, "As JSON (sumpwright.suction/1)");
  addAtOption(*command, choice->at);
  addFanOption(*command, choice->fan);
  addGroundOptions(*command, *choice);
  command->add_flag("--places", choice->places,
                    "Also the best places by chance of reaching the whole floor");
  command->add_option("--grid", choice->grid, "Also write x, y, suction and chance of every cell")
      ->type_name("FILE");
  command->callback([choice, &console] { runSuction(*choice, console); });
}

}  // namespace sumpwright::cli
