// The shopping list, and how quantities are printed.

#include "dossier/Amounts.h"
#include "dossier/Folio.h"
#include "dossier/Papers.h"
#include "dossier/Table.h"

namespace sumpwright::dossier {
namespace {

using price::PricedLine;

/// What the fan has to do, where the suction is worked out.
std::string dutyOf(const Sheet& sheet) {
  const siting::SuctionAnswer* answer = sheet.answer();
  if (answer == nullptr || answer->worst >= answer->middle.size()) return {};
  const airflow::DutySummary& duty = answer->middle[answer->worst].duty;
  std::string out;
  for (const airflow::LineDuty& line : duty.ok() ? duty.lines : std::vector<airflow::LineDuty>()) {
    out += "; " + sheet.desk.say("price.detail.duty", {base::flow("flow", line.flow),
                                                       base::pressure("pressure", line.fan)});
  }
  return out;
}

std::string toAskFor(const Sheet& sheet, const PricedLine& line) {
  std::string out = line.detail ? sheet.desk.say(*line.detail) : std::string();
  if (line.item == "fan") out += dutyOf(sheet);
  if (const auto packs = price::packsOf(line)) {
    out += (out.empty() ? "" : "; ") + sheet.desk.say(*packs);
  }
  return out;
}

}  // namespace

bool Amounts::both() const { return m_sheet.job().display_units == plan::DisplayUnits::imperial; }

std::string Amounts::operator()(const PricedLine& line) const {
  if (!line.assumed) return counted(line);
  return m_sheet.desk.say("paper.quote.about", {base::text("amount", counted(line))});
}

std::string Amounts::counted(const PricedLine& line) const {
  using enum price::PriceUnit;
  const base::Arg number = base::text("amount", line.quantity.text());
  const Desk& desk = m_sheet.desk;
  if (line.unit == each) return line.quantity.text();
  if (line.unit == hour) {
    const bool one = line.quantity == price::Decimal::of(1);
    return desk.say(one ? "paper.quote.hour" : "paper.quote.hours", {number});
  }
  if (line.unit == square_metre) return desk.say("paper.quote.square-metres", {number});
  std::string amount = desk.say("paper.quote.metres", {number});
  if (!both()) return amount;
  const double length_m = static_cast<double>(line.quantity.millionths()) / price::Decimal::kOne;
  return desk.say("paper.quote.both-units",
                  {base::text("amount", amount), base::metres("length", length_m)});
}

Document shoppingPaper(const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  Folio folio(sheet, desk.say("paper.shopping.title"),
              forWhom(sheet, desk.say("paper.shopping.for")));
  const Amounts amountWithUnit(sheet);
  Writer stops(desk, folio.width_mm());
  writeStops(stops, sheet);
  folio.add(allWaiverRows(sheet, folio.width_mm()));
  folio.addWhole(stops.take());
  std::vector<std::vector<Cell>> cells;
  const auto& pricing = sheet.options.pricing;
  for (const PricedLine& line :
       pricing ? price::shoppingOf(pricing->quote) : std::vector<PricedLine>())
    cells.push_back({Cell(), Cell(amountWithUnit(line)), Cell(desk.say(line.text)),
                     Cell(toAskFor(sheet, line))});
  Writer w(desk, folio.width_mm());
  if (cells.empty()) {
    w.body(desk.say("price.no-sump"));
  } else {
    if (std::any_of(pricing->quote.lines.begin(), pricing->quote.lines.end(),
                    [](const PricedLine& line) { return line.assumed; })) {
      for (const base::Message& told : pricing->quote.toldToClient()) w.body(desk.say(told));
      w.gap(1.0);
    }
    w.append(tableRows(desk,
                       {{desk.say("paper.shopping.bought"), 0.8},
                        {desk.say("paper.quote.quantity"), 1.1, drawing::HAlign::right},
                        {desk.say("paper.quote.what"), 3.6},
                        {desk.say("paper.shopping.detail"), 3.4}},
                       cells, folio.width_mm(), {kTick_mm, true}));
  }
  folio.add(w.take());
  return folio.finished();
}

}  // namespace sumpwright::dossier
