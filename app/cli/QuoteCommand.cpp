// sumpwright quote JOB and sumpwright shopping JOB: what the design takes, with and without prices.

#include <memory>
#include <nlohmann/json.hpp>

#include "cli/CommandLine.h"
#include "cli/Display.h"
#include "cli/PaperOptions.h"
#include "cli/Problems.h"
#include "cli/Quote.h"
#include "dossier/Papers.h"
#include "files/JobFile.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"

namespace sumpwright::cli {

namespace {

struct QuoteChoice {
  PaperChoice made_of;
  std::string csv;
  std::string paper;  ///< a PDF to write instead
  bool bom = false;
  bool json = false;
  bool shopping = false;  ///< no prices
};

constexpr const char* kByteOrderMark = "\xEF\xBB\xBF";

void writeQuote(const QuoteChoice& choice, const price::PricedQuote& quote, words::Units units,
                Console& console) {
  const std::vector<price::PricedLine> shopping = price::shoppingOf(quote);
  if (!choice.csv.empty()) {
    const price::Say say = [units](const base::Message& m) { return words::say(m, units); };
    std::string csv =
        choice.shopping ? price::shoppingCsv(shopping, say) : price::quoteCsv(quote, say);
    if (choice.bom) csv.insert(0, kByteOrderMark);
    const auto written = files::writeBytes(choice.csv, csv);
    if (!written.ok()) return decline(choice.made_of.study.job, written.problems(), console);
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

void writeQuotePaper(const QuoteChoice& choice, const PaperStuff& stuff, Console& console) {
  ensureGui();
  const paint::QtVoice voice(stuff.study.job().display_units);
  const auto paper = choice.shopping ? dossier::Paper::shopping : dossier::Paper::quote;
  const dossier::Document document = dossier::paperOf(paper, stuff.study, voice, stuff.options);
  const auto written = paint::exportPages(paint::pagesOf(document), choice.paper);
  if (!written.ok()) return decline(choice.made_of.study.job, written.problems(), console);
  for (const std::string& file : *written) console.out << file << '\n';
}

void runQuote(const QuoteChoice& choice, Console& console) {
  const std::optional<PaperStuff> stuff = paperStuff(choice.made_of, console);
  if (!stuff) return;
  if (!choice.paper.empty()) return writeQuotePaper(choice, *stuff, console);
  const bool imperial = stuff->study.job().display_units == plan::DisplayUnits::imperial;
  writeQuote(choice, stuff->options.pricing->quote,
             imperial ? words::Units::imperial : words::Units::metric, console);
}

std::string badQuotePdf(const std::string& file) {
  return paint::formatOf(file) == paint::FileFormat::pdf ? "" : "'" + file + "' must end in .pdf";
}

void addQuotePaper(CLI::App& command, QuoteChoice& choice) {
  command.add_option("-o,--output", choice.paper, "Write it on paper instead")
      ->check(badQuotePdf)
      ->type_name("FILE.pdf");
  command.add_option("--size", choice.made_of.size, "Paper size")
      ->check(CLI::IsMember({"a4", "a3", "letter"}))
      ->type_name("a4|a3|letter")
      ->capture_default_str();
  command.add_option("--firm", choice.made_of.firm, "Letterhead and terms: a firm's file")
      ->type_name("FILE");
}

void addPriced(CLI::App& program, Console& console, const char* name, const char* about,
               bool shopping) {
  auto choice = std::make_shared<QuoteChoice>();
  choice->shopping = shopping;
  choice->made_of.no_suction = true;
  choice->made_of.priced = true;
  CLI::App* command = program.add_subcommand(name, about);
  addStudyOptions(*command, choice->made_of.study);
  command->add_flag("--json", choice->json,
                    shopping ? "As JSON (sumpwright.shopping/1)" : "As JSON (sumpwright.quote/1)");
  addBookOption(*command, choice->made_of);
  addFanOption(*command, choice->made_of.fan);
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
