// What a client has to decide on: what will be seen and heard, what it costs in a year, what is
// asked of them, how the result is found out, and what the firm stands for.

#include "build/Run.h"
#include "dossier/Sheet.h"
#include "dossier/Table.h"
#include "plan/RoofSpace.h"

namespace sumpwright::dossier {
namespace {

bool hasLowOutlet(const Sheet& sheet) {
  return build::outletModeOf(sheet.study.site(), *sheet.sump) == plan::OutletMode::low;
}

}  // namespace

void writeSeen(Writer& w, const Sheet& sheet) {
  if (sheet.sump == nullptr) return;
  const Desk& desk = w.desk();
  w.heading(desk.say("paper.seen"));
  const auto open = whatIsOpen(sheet);
  if (isStopped(sheet)) {
    w.body(desk.say("paper.seen.stopped"));
    return w.body(desk.say(*open));
  }
  const base::Arg pipe = base::millimetres("pipe", 1000.0 * sheet.study.site().pipe_od_m);
  const bool in_roof = sheet.sump->fan_place == plan::FanPlace::roof_space;
  w.body(desk.say(open                  ? "paper.seen.riser-open"
                  : hasLowOutlet(sheet) ? "paper.seen.low"
                  : in_roof             ? "paper.seen.riser-roof"
                                        : "paper.seen.riser",
                  {pipe}));
  const bool empty_roof = plan::roofSpaceOf(sheet.job()).lived_in == plan::YesNo::no;
  w.body(desk.say(!in_roof     ? "paper.seen.fan-outside"
                  : empty_roof ? "paper.seen.fan-roof"
                               : "paper.seen.fan-roof-asked"));
  w.body(desk.say("paper.seen.gauge"));
  writeCable(w, sheet);
  writeNoise(w, sheet);
  w.text(desk.say("paper.seen.sources"), fonts::small, desk.theme.ink2);
}

void writeRunning(Writer& w, const Sheet& sheet) {
  const siting::SuctionAnswer* answer = sheet.answer();
  const Desk& desk = w.desk();
  w.heading(desk.say("paper.running"));
  // Of all fans of the design together.
  if (anyOpen(sheet)) return w.body(desk.say("paper.running.open"));
  const auto year = answer == nullptr ? std::nullopt
                                      : price::runningYear(*answer, sheet.job().design.running,
                                                           sheet.options.tariff);
  if (!year) {
    return w.body(desk.say(sheet.job().design.sumps.empty() ? "paper.running.no-sump"
                                                            : "paper.running.unknown"));
  }
  for (const base::Message& line : year->lines) w.body(desk.say(line));
  std::string how;
  for (const base::Message& one : year->how) how += (how.empty() ? "" : " ") + desk.say(one);
  w.text(how, fonts::small, desk.theme.ink2);
}

void writeNeeds(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.needs"));
  // Nothing is asked for works that are not settled but a look at the house.
  w.tick(desk.say(anyOpen(sheet) ? "paper.needs.consent-later" : "paper.needs.consent"));
  for (const char* id : {"paper.needs.permission", "paper.needs.access", "paper.needs.power",
                         "paper.needs.holes", "paper.needs.appliances"}) {
    w.tick(desk.say(id));
  }
}

void writeRetest(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.retest"));
  for (const char* id :
       {"paper.retest.start", "paper.retest.same", "paper.retest.short", "paper.retest.long"}) {
    w.body(desk.say(id));
  }
  const rules::PracticeLine* again = sheet.study.sheet().practiceOn("again");
  w.body(desk.say("paper.retest.again") + (again != nullptr ? ", " + again->text : "."));
  std::string sources = desk.say("paper.retest.sources");
  if (again != nullptr) {
    sources += ' ' + desk.say("paper.source", {base::text("source", again->source.text)});
  }
  w.text(sources, fonts::small, desk.theme.ink2);
}

void writeTerms(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.terms"));
  for (const std::string& term : sheet.options.terms) w.body(term);
  if (sheet.options.terms.empty()) {
    for (const char* id :
         {"paper.terms.workmanship", "paper.terms.no-level", "paper.terms.visit"}) {
      w.body(desk.say(id));
    }
  }
  const rules::PracticeLine* sale = sheet.study.sheet().practiceOn("sale");
  if (sale == nullptr) return;
  w.body(sale->text);
  w.text(sale->source.text + '.', fonts::small, desk.theme.ink2);
}

void writeCare(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.care"));
  for (const char* id :
       {"paper.care.services", "paper.care.ground", "paper.care.dust", "paper.care.asbestos",
        "paper.care.flue", "paper.care.co-alarm", "paper.care.codes", "paper.care.prediction"}) {
    w.body(desk.say(id));
  }
}

void writeConsent(Writer& w, const Sheet& sheet) {
  constexpr double kSignHere_mm = 10.5;
  if (!sheet.assessment) return;
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.consent"));
  // Nobody agrees to works that may not be done as they are drawn, or that are not settled.
  if (anyOpen(sheet)) {
    w.body(desk.say("paper.consent.not-yet"));
    const auto& sumps = sheet.job().design.sumps;
    const auto open = whatIsOpen(sheet);
    return open && sumps.size() == 1 ? w.body(desk.say(*open)) : writeStops(w, sheet);
  }
  w.body(desk.say("paper.consent.to"));
  w.keepLastWithNext();
  w.gap(0.8);
  w.keepLastWithNext();
  w.tick(desk.say("paper.consent.holes"));
  w.gap(1.0);
  w.keepLastWithNext();
  w.append(tableRows(desk,
                     {{"", 1.7},
                      {desk.say("paper.consent.name"), 1.6},
                      {desk.say("paper.crew.date"), 0.8},
                      {desk.say("paper.consent.signature"), 2.4}},
                     {{Cell(desk.say("paper.consent.owner"))},
                      {Cell(desk.say("paper.consent.ground"))},
                      {Cell(desk.say("paper.consent.firm"))}},
                     w.width(), {kSignHere_mm, true, true}));
}

}  // namespace sumpwright::dossier
