#include <algorithm>

#include "cli/Site.h"
#include "plan/KindNames.h"
#include "siting/ReachAlong.h"
#include "words/Words.h"

namespace sumpwright::cli {

namespace {

/// Right-aligned in ten columns; counts letters, not bytes.
std::string padded(const std::string& text) {
  constexpr std::ptrdiff_t kColumns = 10;
  const auto letters = std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  });
  return std::string(static_cast<std::size_t>(std::max<std::ptrdiff_t>(kColumns - letters, 0)),
                     ' ') +
         text;
}

struct Printer {
  const siting::Study& study;
  std::ostream& out;

  std::string say(const base::Message& message) const {
    return words::say(message, study.job().display_units);
  }

  std::string length(double value_m, words::QuantityStyle style = {}) const {
    const auto units = study.job().display_units == plan::DisplayUnits::imperial
                           ? words::Units::imperial
                           : words::Units::metric;
    return words::print({value_m, base::Unit::metre}, units, style);
  }

  /// The ring and chainage as --at takes them: metres, whatever the display units.
  std::string place(siting::Place at) const {
    const std::string metres =
        words::print({at.chainage_m, base::Unit::metre}, words::Units::metric, {.bare = true});
    return std::to_string(at.ring) + ":" + metres;
  }

  std::string run(const siting::Run& r) const {
    const double ring_length = study.perimeter().length_m(r.ring);
    const double to = r.to_m > ring_length ? r.to_m - ring_length : r.to_m;
    return length(r.from_m) + " to " + length(to);
  }

  /// Rounded down: what falls short never reads as enough. Hole and thing that overlap: 0.
  std::string distance(double value_m) const {
    return length(std::max(value_m, 0.0), {.down = true});
  }

  std::string told(const rules::Finding& f) const {
    std::string text = say(f.reason);
    // What is measured to the ground, the eaves or the outlet says its figures itself.
    const bool says_needed = f.reason.find("needed") != nullptr;
    if (f.distance_m && f.needed_m && !says_needed) {
      // Reasons of other kinds tell the distance themselves.
      const bool near = f.reason.id == "rule.too-near" || f.reason.id == "rule.run-near" ||
                        f.reason.id == "rule.run-near-any-height" ||
                        f.reason.id == "rule.outlet-over" || f.reason.id == "rule.outlet-jet";
      text += near ? ": " + distance(*f.distance_m) + ", " : ", ";
      text += length(*f.needed_m) + " needed";
    }
    return text + " [" + f.rule + "]";
  }

  void head() const {
    const auto& site = study.site();
    out << "Rule sheet: " << study.sheet().id << " (" << study.sheet().title << ")\n"
        << "Outlet: "
        << (site.outlet == plan::OutletMode::low ? "low at the hole" : "riser to the eaves")
        << "; core "
        << words::print({site.core_m * 1000.0, base::Unit::millimetre}, words::Units::metric)
        << "; survey accuracy " << length(study.accuracy_m()) << '\n';
  }

  /// Told alike; where there is a distance each stretch has its own.
  static bool isSame(const rules::Finding& a, const rules::Finding& b) {
    return a.rule == b.rule && a.weight == b.weight && a.reason == b.reason && !a.distance_m &&
           !b.distance_m;
  }

  static bool isIn(const std::vector<rules::Finding>& list, const rules::Finding& f) {
    return std::any_of(list.begin(), list.end(),
                       [&](const rules::Finding& other) { return isSame(other, f); });
  }

  /// What is told alike on every stretch: said once, not on each.
  std::vector<rules::Finding> onEveryStretch() const {
    std::vector<rules::Finding> common = study.findingsOf(study.stretches()[0].front());
    for (const auto& ring : study.stretches()) {
      for (const siting::Stretch& s : ring) {
        const auto here = study.findingsOf(s);
        std::erase_if(common, [&](const rules::Finding& f) { return !isIn(here, f); });
      }
    }
    return common;
  }

  void everywhere(const std::vector<rules::Finding>& common) const {
    if (common.empty()) return;
    out << "\nOn every stretch\n";
    for (const rules::Finding& f : common) out << "  " << told(f) << '\n';
  }

  void stretch(const siting::Stretch& s, const std::vector<rules::Finding>& common) const {
    out << "  " << padded(length(s.from_m)) << "  to " << padded(length(s.to_m)) << "  "
        << rules::stateName(s.state) << '\n';
    for (const rules::Finding& f : study.findingsOf(s)) {
      if (!isIn(common, f)) out << "        " << told(f) << '\n';
    }
  }

  void ring(int index, const std::vector<rules::Finding>& common) const {
    out << "\nRing " << index << (index == 0 ? " (outside), " : " (courtyard), ")
        << length(study.perimeter().length_m(index)) << " round\n";
    corners(index);
    for (const siting::Stretch& s : study.stretches()[static_cast<std::size_t>(index)]) {
      stretch(s, common);
    }
  }

  void corners(int ring) const {
    out << "  Corners:";
    for (const perimeter::Edge& edge : study.perimeter().edges(ring)) {
      out << (edge.edge == 0 ? " " : ", ") << study.perimeter().cornerLetter(ring, edge.edge) << ' '
          << length(edge.start_m);
    }
    out << '\n';
  }

  void sumps() const {
    const auto& sumps = study.job().design.sumps;
    if (sumps.empty()) return;
    out << "\nSumps of the design\n";
    for (const plan::Sump& sump : sumps) {
      const siting::Place at{sump.ring, sump.chainage_m};
      if (sump.kind != plan::SumpKind::cored) {
        out << "  " << sump.id << ": inside the house, not sited here\n";
      } else if (study.perimeter().contains(at)) {
        out << "  " << sump.id << " at " << place(at) << ": "
            << say(study.assess(at, sump.id).sentence) << '\n';
      }
    }
  }

  void best() const {
    if (study.best().empty()) return;
    out << "\nBest places\n";
    for (const siting::BestPlace& b : study.best()) {
      out << "  " << place(b.place) << "  score " << score(b.score) << reachOf(b) << "  "
          << rules::stateName(b.run.state) << " from " << run(b.run)
          << (b.close ? ", too close to call: measure on site" : "") << '\n'
          << "        " << say(study.assess(b.place).sentence) << '\n';
    }
  }

  static std::string reachOf(const siting::BestPlace& b) {
    return b.floor ? ", reach " + sharePercent(*b.floor) : std::string();
  }

  static std::string sharePercent(double share) {
    return words::print({100.0 * share, base::Unit::percent}, words::Units::metric,
                        {.decimals = 0, .down = true});
  }

  void reach() const {
    if (study.reach() == nullptr) return;
    const siting::ReachSummary& r = study.reach()->summary();
    out << "\nReach along the wall, a prediction on the middle guess at the ground\n";
    if (!study.reach()->computed()) {
      out << "  No granular fill: no figure of reach is given.\n";
      return;
    }
    const auto units = words::Units::metric;
    const auto shown = study.job().display_units == plan::DisplayUnits::imperial
                           ? words::Units::imperial
                           : words::Units::metric;
    out << "  One sump, " << words::print({r.target.design_pa, base::Unit::pascal}, shown)
        << " asked for; " << r.solved << " places solved in "
        << words::print({r.middle_ms, base::Unit::none}, units, {.decimals = 0}) << " ms, cells of "
        << length(r.cell_m) << (r.coarser ? " (coarser: a large floor)" : "") << ".\n"
        << "  Between them the share of floor is read to "
        << words::print({100.0 * r.miss, base::Unit::percent}, units, {.decimals = 1})
        << ", by estimate";
    if (r.jumps > 0) out << "; it jumps at " << r.jumps << " places where a wall is passed";
    out << ".\n";
  }

  void leastBad() const {
    if (!study.leastBad()) return;
    const siting::LeastBad& least = *study.leastBad();
    out << "\nNo stretch is clear or only advised against. ";
    if (least.place) {
      out << "Least bad: " << place(*least.place) << ", " << rules::stateName(least.state) << '\n';
    } else {
      out << "No place is proposed:\n  " << say(least.advice) << '\n';
      leftOpen();
    }
    for (const rules::Finding& f : least.changes) out << "  to change: " << told(f) << '\n';
  }

  /// Where to look further when the program itself is what stands in the way.
  void leftOpen() const {
    const auto runs = study.runsLeftOpen();
    if (runs.empty()) return;
    out << "  Nothing else stands against the hole on\n";
    for (const siting::Run& r : runs) {
      out << "    ring " << r.ring << " from " << run(r) << '\n';
    }
  }

  void unjudged() const {
    if (study.unjudged().empty()) return;
    out << "\nNot judged yet\n";
    for (const siting::Unjudged& u : study.unjudged()) {
      const std::string thing = say(u.thing_label);
      out << "  " << u.rule << (thing.empty() ? "" : ", " + thing) << ": " << say(u.reason) << '\n';
    }
  }

  static std::string score(double value) {
    return words::print({value, base::Unit::none}, words::Units::metric, {.decimals = 0});
  }

  void margins(const siting::Assessment& at) const {
    if (at.margins.empty()) return;
    out << "\nMargins\n";
    for (const rules::Margin& m : at.margins) {
      out << "  " << padded(length(m.margin_m, {.has_sign = true, .down = true})) << "  "
          << say(m.thing_label) << ": " << distance(m.distance_m) << ", " << length(m.needed_m)
          << " needed [" << m.rule << ']' << (m.close ? "  too close to call" : "") << '\n';
    }
  }

  void scoreOf(const siting::Assessment& at) const {
    out << "\nScore " << score(at.score.total) << " of 100";
    if (at.state == siting::State::refused) out << ", if it were allowed";
    if (!at.score.complete) out << " (parts not judged yet are left out)";
    out << '\n';
    for (const siting::ScoredPart& p : at.score.parts) {
      const std::string points =
          p.judged ? score(p.points) + " of " + score(p.weight) + ", " : std::string();
      out << "  " << p.title << ": " << points << say(p.reason) << '\n';
    }
  }
};

}  // namespace

void printSite(const siting::Study& study, std::ostream& out) {
  const Printer printer{study, out};
  printer.head();
  const auto common = printer.onEveryStretch();
  printer.everywhere(common);
  for (int ring = 0; ring < study.perimeter().ringCount(); ++ring) printer.ring(ring, common);
  printer.sumps();
  printer.reach();
  printer.best();
  printer.leastBad();
  printer.unjudged();
}

void printPlace(const siting::Study& study, const siting::Assessment& at, std::ostream& out) {
  const Printer printer{study, out};
  printer.head();
  out << "\nAt " << printer.place(at.place) << ": " << rules::stateName(at.state)
      << (at.waived ? ", accepted by waiver" : "") << '\n'
      << "  " << printer.say(at.sentence) << '\n';
  for (const rules::Finding& f : at.findings) out << "        " << printer.told(f) << '\n';
  printer.margins(at);
  printer.scoreOf(at);
}

}  // namespace sumpwright::cli
