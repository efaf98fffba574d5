#include "cli/PaperOptions.h"

#include <QDate>
#include <algorithm>
#include <memory>
#include <thread>
#include <utility>

#include "cli/CommandLine.h"
#include "cli/Problems.h"
#include "files/FirmFile.h"
#include "files/PriceBooks.h"
#include "siting/ReachAsked.h"

namespace sumpwright::cli {

namespace {

/// More threads than this gain nothing on a house (own figure).
constexpr unsigned kMostPaperThreads = 8;

std::string badDate(const std::string& text) {
  const bool good =
      text.size() == 10 && QDate::fromString(QString::fromStdString(text), Qt::ISODate).isValid();
  return good ? "" : "'" + text + "' is not a date such as 2026-03-31";
}

bool hasSump(const plan::Design& design, const std::string& id) {
  return std::any_of(design.sumps.begin(), design.sumps.end(), [&](const plan::Sump& sump) {
    return sump.id == id && sump.kind == plan::SumpKind::cored;
  });
}

dossier::PaperSize sizeNamed(const std::string& name) {
  if (name == "a3") return dossier::PaperSize::a3;
  return name == "letter" ? dossier::PaperSize::letter : dossier::PaperSize::a4;
}

std::shared_ptr<const dossier::Outlook> outlookOf(const siting::Study& study,
                                                  const ChosenFan& fan) {
  siting::SuctionOptions options = siting::suctionOptionsOf(study.job());
  options.threads =
      static_cast<int>(std::clamp(std::thread::hardware_concurrency(), 1U, kMostPaperThreads));
  const auto system = siting::usualSystem(study.site(), fan.fan, fan.invented);
  auto answer = siting::studySuction(study, system, options);
  auto outlook = std::make_shared<dossier::Outlook>();
  outlook->fan = fan.fan.title;
  outlook->invented = fan.invented;
  if (answer.ok()) {
    outlook->answer = std::move(answer).value();
  } else {
    outlook->why_not = answer.problems();
  }
  return outlook;
}

/// --book, else the job's, else the demo book, which says that it is one.
base::Result<files::LoadedPrices> bookOf(const PaperChoice& choice, const plan::Job& job) {
  const std::string& asked = choice.book;
  const bool is_file = asked.find('/') != std::string::npos || asked.ends_with(".json");
  if (is_file) return files::priceBookFromFile(asked);
  return files::priceBookFor(asked.empty() ? job.design.quote.price_book : asked);
}

/// The score on the paper counts the reach that stands beside it; without one (no fill to draw
/// through) it says that it does not.
void addReach(siting::Study& study, const ChosenFan& fan, const dossier::Outlook& outlook) {
  const auto system = siting::usualSystem(study.site(), fan.fan, fan.invented);
  siting::SuctionOptions asked = siting::suctionOptionsOf(study.job());
  asked.fitted = outlook.answer.fitted;  // the readings are fitted once
  auto reach = siting::reachAsked(study, system, asked);
  if (!reach.ok()) return;
  study = study.withReach(std::make_shared<const siting::ReachAlong>(std::move(reach).value()));
}

/// By --book, else the job's own book: never the demo's price unasked.
base::Problems addTariff(const PaperChoice& choice, const plan::Job& job,
                         dossier::ClientPlanOptions& options) {
  const auto tariff = [&](const price::PriceBook* book) {
    return price::tariffOf(job.design.running, book, options.tariff);
  };
  if (choice.book.empty()) {
    const auto own = files::priceBookOf(job);
    if (!own.ok()) return own.problems();
    options.tariff = tariff(*own ? &(*own)->book : nullptr);
    return {};
  }
  const auto asked = bookOf(choice, job);
  if (!asked.ok()) return asked.problems();
  options.tariff = tariff(&asked->book);
  return {};
}

/// Its problems, where there are no prices.
base::Problems addPricing(const PaperChoice& choice, const siting::Study& study,
                          const ChosenFan& fan, dossier::ClientPlanOptions& options) {
  const auto book = bookOf(choice, study.job());
  if (!book.ok()) return book.problems();
  const auto system = siting::usualSystem(study.site(), fan.fan, fan.invented);
  auto quote = price::priced(price::needsOf(study, system), book->book, study.job().design.quote);
  if (!quote.ok()) return quote.problems();
  dossier::Pricing pricing;
  pricing.quote = std::move(quote).value();
  options.pricing = std::make_shared<const dossier::Pricing>(std::move(pricing));
  return {};
}

std::optional<PaperStuff> failed(const PaperChoice& choice, const base::Problems& problems,
                                 Console& console) {
  complain(console.err, choice.study.job, problems);
  console.exit_code = kUnusable;
  return std::nullopt;
}

}  // namespace

void addPaperOptions(CLI::App& command, PaperChoice& choice) {
  addStudyOptions(command, choice.study);
  command.add_option("--size", choice.size, "Paper size")
      ->check(CLI::IsMember({"a4", "a3", "letter"}))
      ->type_name("a4|a3|letter")
      ->capture_default_str();
  command.add_flag("--landscape", choice.landscape,
                   "Papers with a plan on them lie; the others stand all the same");
  command.add_option("--date", choice.date, "Date on the sheet; today unless given")
      ->check(badDate)
      ->type_name("YYYY-MM-DD");
  command.add_option("--sump", choice.sump, "Which sump of the design; the first unless given")
      ->type_name("ID");
  addFanOption(command, choice.fan);
  command.add_option("--firm", choice.firm, "Letterhead and terms: a firm's file")
      ->type_name("FILE");
  command.add_flag("--no-suction", choice.no_suction,
                   "Say nothing of the suction (it takes about half a second)");
}

void addBookOption(CLI::App& command, PaperChoice& choice) {
  command
      .add_option("--book", choice.book,
                  "Price book by id or file instead of the job's own; else the invented demo book")
      ->type_name("ID|FILE");
}

std::optional<PaperStuff> paperStuff(const PaperChoice& choice, Console& console) {
  const auto firm = choice.firm.empty() ? files::userFirm() : files::firmFromFile(choice.firm);
  if (!firm.ok()) return failed(choice, firm.problems(), console);
  std::optional<siting::Study> made = study(choice.study, console);
  if (!made) return std::nullopt;
  const auto fan = fanFor(choice.fan, made->job());
  if (!fan.ok() && (choice.priced || !choice.no_suction))
    return failed(choice, fan.problems(), console);
  if (!choice.sump.empty() && !hasSump(made->job().design, choice.sump)) {
    const base::Message message("cli.no-sump", {base::text("sump", choice.sump)});
    return failed(choice, {{message, "/design/sumps", base::Gravity::unreadable}}, console);
  }
  dossier::ClientPlanOptions options;
  options.size = sizeNamed(choice.size);
  options.landscape = choice.landscape;
  options.sump = choice.sump;
  options.date =
      choice.date.empty() ? QDate::currentDate().toString(Qt::ISODate).toStdString() : choice.date;
  files::putOn(options, *firm);
  const base::Problems no_tariff = addTariff(choice, made->job(), options);
  // Papers without prices are made all the same: they say that no price was stated.
  if (!no_tariff.empty() && !choice.priced) complain(console.err, choice.study.job, no_tariff);
  if (!choice.no_suction) {
    options.suction = dossier::Suction::expected;
    options.outlook = outlookOf(*made, *fan);
    addReach(*made, *fan, *options.outlook);
  }
  if (choice.priced) {
    const base::Problems problems = addPricing(choice, *made, *fan, options);
    if (!problems.empty()) return failed(choice, problems, console);
  }
  return PaperStuff{*std::move(made), std::move(options)};
}

}  // namespace sumpwright::cli
