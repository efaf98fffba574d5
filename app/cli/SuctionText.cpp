#include <array>
#include <charconv>

#include "cli/Suction.h"
#include "siting/ReachAsked.h"
#include "siting/SuctionWords.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

struct SuctionPrinter {
  const siting::Study& study;
  const siting::SuctionAnswer& answer;
  std::ostream& out;

  std::string say(const base::Message& message) const {
    return words::say(message, study.job().display_units);
  }

  std::string print(double value, base::Unit unit, int decimals = -1) const {
    const auto units = study.job().display_units == plan::DisplayUnits::imperial
                           ? words::Units::imperial
                           : words::Units::metric;
    return words::print({value, unit}, units, {.decimals = decimals});
  }

  /// As --at takes it: metres, whatever the display units.
  static std::string place(siting::Place at) {
    return std::to_string(at.ring) + ":" +
           words::print({at.chainage_m, base::Unit::metre}, words::Units::metric, {.bare = true});
  }

  void line(const base::Message& message) const { out << "  " << say(message) << '\n'; }

  void sumps() const {
    for (const siting::StudiedSump& sump : answer.sumps) {
      out << "Sump" << (sump.id.empty() ? "" : " " + sump.id);
      if (sump.place) {
        out << " at " << place(*sump.place) << ": "
            << rules::stateName(study.assess(*sump.place, sump.id).state) << '\n';
      } else {
        out << " inside the house\n";
      }
    }
  }

  void list(const char* head, const std::vector<base::Message>& lines) const {
    if (lines.empty()) return;
    out << '\n' << head << '\n';
    for (const base::Message& one : lines) line(one);
  }

  void middle() const {
    out << (answer.fitted && answer.fitted->usable() ? "\nPredicted on the ground as fitted\n"
                                                     : "\nOn the middle guess at the ground\n");
    for (const siting::MiddleCase& one : answer.middle) {
      if (!one.label.id.empty()) out << "  " << say(one.label) << ":\n  ";
      line(one.sentence);
    }
  }

  void ranges() const {
    out << "\nWhat the fan will do\n";
    const airflow::DutySummary& duty = answer.middle[answer.worst].duty;
    for (const base::Message& one : siting::dutySentences(duty, siting::sumpNames(answer))) {
      line(one);
    }
    for (const base::Message& range : answer.ranges) line(range);
    for (const base::Message& remark : answer.remarks) line(remark);
  }

  void places() const {
    if (!answer.along) return;
    out << "\nBest places by chance of reaching the whole floor\n";
    const auto best = placesByChance(study, answer);
    if (best.empty()) out << "  No stretch is clear or only advised against.\n";
    for (const siting::BestPlace& b : best) {
      out << "  " << place(b.place) << "  " << share(b.chance.value_or(0.0)) << " of guesses, "
          << share(b.floor.value_or(0.0)) << " of the floor on the middle one; "
          << rules::stateName(b.run.state) << ", score "
          << words::print({b.score, base::Unit::none}, words::Units::metric, {.decimals = 0})
          << '\n';
    }
  }

  static std::string share(double value) {
    return words::print({100.0 * value, base::Unit::percent}, words::Units::metric,
                        {.decimals = 0, .down = true});
  }

  void assumptions() const {
    out << "\nAssumed\n";
    for (const siting::Assumption& one : answer.assumptions) {
      out << "  " << say(one.what) << " ["
          << base::kMarkNames[static_cast<std::size_t>(one.source.mark)] << ": " << one.source.text
          << "]\n";
    }
  }
};

/// Four decimals with a point, whatever the locale.
std::string fixed(double value) {
  std::array<char, 64> text{};
  const auto [end, error] =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, 4);
  return error == std::errc{} ? std::string(text.data(), end) : std::string();
}

}  // namespace

void printSuction(const siting::Study& study, const siting::SuctionSystem& system,
                  const siting::SuctionAnswer& answer,
                  const std::optional<price::RunningYear>& year, std::ostream& out) {
  const SuctionPrinter printer{study, answer, out};
  printer.sumps();
  out << "Fan: " << system.fan.title << "\n\n" << printer.say(answer.verdict) << '\n';
  printer.list("What was measured", siting::saidOfReadings(study));
  printer.list("What was predicted for that, before it was measured",
               siting::saidOfExpected(study, answer.expected));
  if (answer.fitted) printer.list("The ground fitted to it", answer.fitted->sentences);
  if (answer.state == siting::SuctionState::answered) {
    printer.middle();
    printer.ranges();
    if (year) {
      printer.list("What it costs in a year", year->lines);
      for (const base::Message& one : year->how) printer.line(one);
    }
    printFans(study, answer, year, out);
    out << '\n';
    if (answer.second) out << printer.say(answer.second->sentence) << '\n';
    const base::Message& thumb = answer.thumb.sentence;
    if (!thumb.id.empty()) out << printer.say(thumb) << '\n';
    if (answer.leak) out << printer.say(answer.leak->sentence) << '\n';
    printer.list("On one fan", answer.shared.sentences);
    printer.places();
  } else {
    for (const base::Message& remark : answer.remarks) printer.line(remark);
  }
  printer.assumptions();
  printer.list("For the client", siting::suctionPaperLines(answer).client);
  printer.list("For the crew", siting::suctionPaperLines(answer).crew);
  out << "\nBefore anybody relies on it\n";
  for (const base::Message& caution : answer.cautions) printer.line(caution);
}

std::vector<siting::BestPlace> placesByChance(const siting::Study& study,
                                              const siting::SuctionAnswer& answer) {
  return siting::placesByChance(study, answer.along);
}

std::string gridCsv(const siting::SuctionAnswer& answer) {
  std::string text = "x_m,y_m,suction_pa,chance\n";
  for (const siting::FloorPoint& cell : answer.floor) {
    text += fixed(cell.at.x) + ',' + fixed(cell.at.y) + ',' + fixed(cell.suction_pa) + ',' +
            fixed(cell.chance) + '\n';
  }
  return text;
}

}  // namespace sumpwright::cli
