// sumpwright papers JOB -o DIR: all papers of a job as PDF, each a file or all in one.

#include <QDir>
#include <algorithm>
#include <memory>
#include <vector>

#include "cli/CommandLine.h"
#include "cli/Display.h"
#include "cli/PaperOptions.h"
#include "cli/Problems.h"
#include "dossier/Papers.h"
#include "paint/Export.h"
#include "paint/QtVoice.h"

namespace sumpwright::cli {

namespace {

struct PapersChoice {
  PaperChoice paper;
  std::string folder;
  std::string one;
  std::vector<std::string> names;
};

std::vector<std::string> paperNames() {
  std::vector<std::string> names;
  for (const dossier::Paper paper : dossier::allPapers()) {
    names.emplace_back(dossier::nameOf(paper));
  }
  return names;
}

std::string badPdf(const std::string& file) {
  return paint::formatOf(file) == paint::FileFormat::pdf ? "" : "'" + file + "' must end in .pdf";
}

/// Those asked for, in the order they are handed over.
std::vector<dossier::Paper> papersOf(const PapersChoice& choice) {
  std::vector<dossier::Paper> out;
  for (const dossier::Paper paper : dossier::allPapers()) {
    const bool asked =
        choice.names.empty() || std::find(choice.names.begin(), choice.names.end(),
                                          dossier::nameOf(paper)) != choice.names.end();
    if (asked) out.push_back(paper);
  }
  return out;
}

void failPapers(const PapersChoice& choice, const base::Problems& problems, Console& console) {
  complain(console.err, choice.paper.study.job, problems);
  console.exit_code = kUnusable;
}

bool writePaper(const PapersChoice& choice, const dossier::Document& document,
                const std::string& file, Console& console) {
  const auto written = paint::exportPages(paint::pagesOf(document), file);
  if (!written.ok()) {
    failPapers(choice, written.problems(), console);
    return false;
  }
  for (const std::string& name : *written) console.out << name << '\n';
  return true;
}

/// DIR/NAME.pdf; the folder is made where it is missing.
std::optional<std::string> pathIn(const PapersChoice& choice, const std::string& name,
                                  Console& console) {
  const QDir folder(QString::fromStdString(choice.folder));
  if (!folder.mkpath(QStringLiteral("."))) {
    failPapers(choice,
               {{base::Message("cli.no-folder", {base::text("folder", choice.folder)}), "",
                 base::Gravity::unreadable}},
               console);
    return std::nullopt;
  }
  return folder.filePath(QString::fromStdString(name + ".pdf")).toStdString();
}

void runPapers(const PapersChoice& choice, Console& console) {
  const std::vector<dossier::Paper> papers = papersOf(choice);
  PaperChoice made_of = choice.paper;
  made_of.priced = std::any_of(papers.begin(), papers.end(), dossier::isPriced);
  const std::optional<PaperStuff> stuff = paperStuff(made_of, console);
  if (!stuff) return;
  ensureGui();
  const paint::QtVoice voice(stuff->study.job().display_units);
  if (!choice.one.empty()) {
    writePaper(choice, dossier::composed(papers, stuff->study, voice, stuff->options), choice.one,
               console);
    return;
  }
  for (const dossier::Paper paper : papers) {
    const auto file = pathIn(choice, std::string(dossier::nameOf(paper)), console);
    const auto document = dossier::paperOf(paper, stuff->study, voice, stuff->options);
    if (!file || !writePaper(choice, document, *file, console)) return;
  }
}

}  // namespace

void addPapers(CLI::App& program, Console& console) {
  auto choice = std::make_shared<PapersChoice>();
  CLI::App* command = program.add_subcommand(
      "papers",
      "All papers of a job as PDF: plan, proposal, quote, crew sheet, shopping list, form");
  auto* where = command->add_option_group("where", "Where to");
  where->add_option("-o,--output", choice->folder, "Folder for a file of each paper")
      ->type_name("DIR");
  where->add_option("--one", choice->one, "One file for all of them")
      ->check(badPdf)
      ->type_name("FILE.pdf");
  where->require_option(1);
  command->add_option("--paper", choice->names, "Only this paper; may be given several times")
      ->check(CLI::IsMember(paperNames()))
      ->type_name("NAME");
  addPaperOptions(*command, choice->paper);
  addBookOption(*command, choice->paper);
  command->callback([choice, &console] { runPapers(*choice, console); });
}

}  // namespace sumpwright::cli
