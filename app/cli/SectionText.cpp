#include "cli/Section.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

struct SectionPrinter {
  const siting::Study& study;
  const SectionAt& at;
  std::ostream& out;

  std::string say(const base::Message& message) const {
    return words::say(message, study.job().display_units);
  }
  void line(const base::Message& message) const { out << "  " << say(message) << '\n'; }

  void head() const {
    const std::string chainage = words::print({at.place.chainage_m, base::Unit::metre},
                                              words::Units::metric, {.bare = true});
    out << "Drill section" << (at.sump.empty() ? "" : " of " + at.sump) << " at " << at.place.ring
        << ':' << chainage << ", "
        << say(study.perimeter().wallLabel(study.perimeter().edgeAt(at.place))) << '\n'
        << say(at.section.verdict) << '\n';
  }

  void hole() const {
    const build::DrillSection& s = at.section;
    out << "\nThe hole\n";
    for (const base::Message& one : build::factsOf(s)) line(one);
  }

  void margins() const {
    out << "\nMargins, with the footing top at the high end of its range\n";
    for (const build::Margin& margin : at.section.margins) {
      const char* mark = margin.passes     ? "  passes  "
                         : margin.advisory ? "  advice  "
                                           : "  FAILS   ";
      out << mark << say(margin.what) << '\n';
    }
  }

  void assumed() const {
    if (at.section.up.assumed.empty()) return;
    out << "\nAssumed\n";
    for (const build::Assumption& one : at.section.up.assumed) {
      out << "  " << say(one.what) << " ["
          << base::kMarkNames[static_cast<std::size_t>(one.source.mark)] << ": " << one.source.text
          << "]\n";
    }
  }

  void notes() const {
    out << "\nBefore anybody drills\n";
    for (const base::Message& note : at.section.notes) line(note);
    line(base::Message("section.note.services"));
  }
};

}  // namespace

void printSection(const siting::Study& study, const SectionAt& at, std::ostream& out) {
  const SectionPrinter printer{study, at, out};
  printer.head();
  if (at.section.bore) {
    printer.hole();
    printer.margins();
  }
  printer.assumed();
  printer.notes();
}

}  // namespace sumpwright::cli
