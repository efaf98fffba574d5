// sumpwright quote JOB and sumpwright shopping JOB: what the design takes, with and without prices.

#include <memory>
#include <nlohmann/json.hpp>

#include "cli/CommandLine.h"
#include "cli/Display.h"
#include "cli/FanOption.h"
#include "cli/PaperOptions.h"
#include "cli/Problems.h"
#include "cli/Quote.h"
#include "dossier/QuotePaper.h"
#include "files/JobFile.h"
#include "files/PriceBooks.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"

namespace sumpwright::cli {

namespace {

struct QuoteChoice {
  StudyChoice study;
  std::string book;
  std::string fan;
  std::string csv;
  std::string paper;  ///< a PDF to write instead
  std::string size = "a4";
  std::string firm;
  bool bom = false;
  bool json = false;
  bool shopping = false;  ///< no prices
};

constexpr const char* kByteOrderMark = "\xEF\xBB\xBF";

/// --book, else the job's, else the demo book, which says that it is one.
base::Result<files::LoadedPrices> bookOf(const QuoteChoice& choice, const plan::Job& job) {
  const std::string& asked = choice.book.empty() ? job.design.quote.price_book : choice.book;
  if (asked.empty()) return files::priceBookById(files::kPricesUnchosen);
  const bool is_file =
      !choice.book.empty() && (asked.find('/') != std::string::npos || asked.ends_with(".json"));
  return is_file ? files::priceBookFromFile(asked) : files::priceBookById(asked);
}

void writeQuote(const QuoteChoice& choice, const price::PricedQuote& quote, words::Units units,
                Console& console) {
  const std::vector<price::PricedLine> shopping = price::shoppingOf(quote);
  if (!choice.csv.empty()) {
    const price::Say say = [units](const base::Message& m) { return words::say(m, units); };
    std::string csv =
        choice.shopping ? price::shoppingCsv(shopping, say) : price::quoteCsv(quote, say);
    if (choice.bom) csv.insert(0, kByteOrderMark);
    const auto written = files::writeBytes(choice.csv, csv);
    if (!written.ok()) return decline(choice.study.job, written.problems(), console);
  }
  if (choice.json) {
    using Handler = nlohmann::ordered_json::error_handler_t;
    const auto report = choice.shopping ? shoppingJson(shopping, units) : quoteJson(quote, units);
    console.out << report.dump(2, ' ', false, Handler::replace) << '\n';
  } else if (choice.shopping) {
    printShopping(shopping, units, console.out);
  } else {
    printQuote(quote, units, console.out);
  }
}

void writeQuotePaper(const QuoteChoice& choice, const PaperStuff& stuff,
                     const price::PricedQuote& quote, Console& console) {
  ensureGui();
  const paint::QtVoice voice(stuff.study.job().display_units);
  dossier::ClientPlanOptions options = stuff.options;
  if (!quote.date.empty()) options.date = quote.date;
  const auto make = choice.shopping ? dossier::shoppingPaper : dossier::quotePaper;
  const auto written =
      paint::exportPages(paint::pagesOf(make(stuff.study, voice, options, quote)), choice.paper);
  if (!written.ok()) return decline(choice.study.job, written.problems(), console);
  for (const std::string& file : *written) console.out << file << '\n';
}

void runQuote(const QuoteChoice& choice, Console& console) {
  PaperChoice paper;
  paper.study = choice.study;
  paper.size = choice.size;
  paper.firm = choice.firm;
  paper.no_suction = true;
  const std::optional<PaperStuff> stuff = paperStuff(paper, console);
  if (!stuff) return;
  const siting::Study& made = stuff->study;
  const auto fail = [&](const base::Problems& problems) {
    decline(choice.study.job, problems, console);
  };
  const auto fan = fanFor(choice.fan, made.job());
  if (!fan.ok()) return fail(fan.problems());
  const auto book = bookOf(choice, made.job());
  if (!book.ok()) return fail(book.problems());
  const auto system = siting::usualSystem(made.site(), fan->fan, fan->invented);
  const auto quote =
      price::priced(price::needsOf(made, system), book->book, made.job().design.quote);
  if (!quote.ok()) return fail(quote.problems());
  if (!choice.paper.empty()) return writeQuotePaper(choice, *stuff, *quote, console);
  const bool imperial = made.job().display_units == plan::DisplayUnits::imperial;
  writeQuote(choice, *quote, imperial ? words::Units::imperial : words::Units::metric, console);
}

std::string badQuotePdf(const std::string& file) {
  return paint::formatOf(file) == paint::FileFormat::pdf ? "" : "'" + file + "' must end in .pdf";
}

void addQuotePaper(CLI::App& command, QuoteChoice& choice) {
  command.add_option("-o,--output", choice.paper, "Write it on paper instead")
      ->check(badQuotePdf)
      ->type_name("FILE.pdf");
  command.add_option("--size", choice.size, "Paper size")
      ->check(CLI::IsMember({"a4", "a3", "letter"}))
      ->type_name("a4|a3|letter")
      ->capture_default_str();
  command.add_option("--firm", choice.firm, "Letterhead and terms: a firm's file")
      ->type_name("FILE");
}

void addPriced(CLI::App& program, Console& console, const char* name, const char* about,
               bool shopping) {
  auto choice = std::make_shared<QuoteChoice>();
  choice->shopping = shopping;
  CLI::App* command = program.add_subcommand(name, about);
  addStudyOptions(*command, choice->study);
  command->add_flag("--json", choice->json,
                    shopping ? "As JSON (sumpwright.shopping/1)" : "As JSON (sumpwright.quote/1)");
  command
      ->add_option("--book", choice->book,
                   "Price book by id or file instead of the job's own; else the invented demo book")
      ->type_name("ID|FILE");
  addFanOption(*command, choice->fan);
  auto* csv = command->add_option("--csv", choice->csv, "Also write it for a spreadsheet")
                  ->type_name("FILE");
  addQuotePaper(*command, *choice);
  command->add_flag("--bom", choice->bom, "Begin the CSV with a byte-order mark")->needs(csv);
  command->callback([choice, &console] { runQuote(*choice, console); });
}

}  // namespace

void addQuote(CLI::App& program, Console& console) {
  addPriced(program, console, "quote", "What the design costs, line by line", false);
  addPriced(program, console, "shopping", "What to buy for the design, without prices", true);
}

}  // namespace sumpwright::cli
