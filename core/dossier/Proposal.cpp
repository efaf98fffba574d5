// What a client has to decide on: what will be seen and heard, what it costs in a year, what is
// asked of them, how the result is found out, and what the firm stands for.

#include <array>
#include <cmath>

#include "dossier/Sheet.h"
#include "plan/RoofSpace.h"

namespace sumpwright::dossier {
namespace {

/// Heat to warm a cubic metre of air by one kelvin, Wh (1.2 kg/m3, 1006 J/(kg K); derived).
constexpr double kWhPerM3K = 0.34;
/// Heating degree days of a mild oceanic climate, K d a year (own figure, to be changed).
constexpr double kDegreeDays = 2200.0;
/// Share of the drawn air that comes from the heated rooms (assumption: 20 to 80 %).
constexpr double kLeastShare = 0.2;
constexpr double kMostShare = 0.8;

double heat_kwh(double flow_m3_h, double share) {
  return kWhPerM3K * flow_m3_h * share * kDegreeDays * 24.0 / 1000.0;
}

bool hasLowOutlet(const Sheet& sheet) { return sheet.job().design.outlet == plan::OutletMode::low; }

std::string withPrice(const Desk& desk, const Sheet& sheet, const char* bare, const char* priced,
                      std::vector<base::Arg> args, double low_kwh, double high_kwh) {
  const auto& price = sheet.options.price_per_kwh;
  if (!price) return desk.say(bare, std::move(args));
  args.push_back(base::number("low_cost", std::round(low_kwh * *price)));
  args.push_back(base::number("high_cost", std::round(high_kwh * *price)));
  args.push_back(base::text("currency", sheet.options.currency));
  return desk.say(priced, std::move(args));
}

}  // namespace

void writeSeen(Writer& w, const Sheet& sheet) {
  if (sheet.sump == nullptr) return;
  const Desk& desk = w.desk();
  w.heading(desk.say("paper.seen"));
  const base::Arg pipe = base::millimetres("pipe", 1000.0 * sheet.study.site().pipe_od_m);
  w.body(desk.say(hasLowOutlet(sheet) ? "paper.seen.low" : "paper.seen.riser", {pipe}));
  const bool in_roof = sheet.sump->fan_place == plan::FanPlace::roof_space;
  const bool empty_roof = plan::roofSpaceOf(sheet.job()).lived_in == plan::YesNo::no;
  w.body(desk.say(!in_roof     ? "paper.seen.fan-outside"
                  : empty_roof ? "paper.seen.fan-roof"
                               : "paper.seen.fan-roof-asked"));
  w.body(desk.say("paper.seen.gauge"));
  w.body(desk.say(sheet.job().design.silencer == plan::YesNo::yes ? "paper.seen.noise-silencer"
                                                                  : "paper.seen.noise"));
}

void writeRunning(Writer& w, const Sheet& sheet) {
  const siting::SuctionAnswer* answer = sheet.answer();
  const Desk& desk = w.desk();
  w.heading(desk.say("paper.running"));
  if (answer == nullptr || answer->state != siting::SuctionState::answered) {
    w.body(desk.say("paper.running.unknown"));
    return;
  }
  if (answer->power_w) {
    const double kwh = answer->running.energy_kwh;
    w.body(withPrice(desk, sheet, "paper.running.fan", "paper.running.fan-price",
                     {base::watts("power", *answer->power_w), base::kilowattHours("energy", kwh)},
                     kwh, kwh));
  } else {
    w.body(desk.say("paper.running.no-power"));
  }
  const double flow = base::Flow::ofM3PerS(answer->flow_m3_s.middle).m3PerH();
  const double low = heat_kwh(flow, kLeastShare);
  const double high = heat_kwh(flow, kMostShare);
  w.body(withPrice(desk, sheet, "paper.running.heat", "paper.running.heat-price",
                   {base::kilowattHours("low", low), base::kilowattHours("high", high)}, low,
                   high));
  w.text(desk.say("paper.running.how",
                  {base::flow("flow", base::Flow::ofM3PerH(flow)),
                   base::percent("least", 100.0 * kLeastShare),
                   base::percent("most", 100.0 * kMostShare), base::number("days", kDegreeDays)}),
         fonts::small, desk.theme.ink2);
}

void writeNeeds(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.needs"));
  for (const char* id : {"paper.needs.consent", "paper.needs.permission", "paper.needs.access",
                         "paper.needs.power", "paper.needs.holes", "paper.needs.appliances"}) {
    w.tick(desk.say(id));
  }
}

void writeRetest(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.retest"));
  for (const char* id : {"paper.retest.start", "paper.retest.same", "paper.retest.short",
                         "paper.retest.long", "paper.retest.again"}) {
    w.body(desk.say(id));
  }
  w.text(desk.say("paper.retest.sources"), fonts::small, desk.theme.ink2);
}

void writeTerms(Writer& w, const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  w.heading(desk.say("paper.terms"));
  if (!sheet.options.terms.empty()) {
    for (const std::string& term : sheet.options.terms) w.body(term);
    return;
  }
  for (const char* id : {"paper.terms.workmanship", "paper.terms.no-level", "paper.terms.visit"}) {
    w.body(desk.say(id));
  }
}

}  // namespace sumpwright::dossier
