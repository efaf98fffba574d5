#include "dossier/Folio.h"
#include "dossier/Papers.h"
#include "dossier/Table.h"

namespace sumpwright::dossier {
namespace {

using price::LineState;
using price::NeedKind;
using price::PricedLine;
using price::PricedQuote;

constexpr double kTick_mm = 6.0;  // height of a line to tick

/// Quantities by the unit of the price book, which a price is for; a job in feet has them beside.
struct Amounts {
  const Sheet& sheet;
  bool both() const { return sheet.job().display_units == plan::DisplayUnits::imperial; }
  double share() const { return both() ? 1.9 : 1.1; }  ///< of a table's width

  std::string operator()(const PricedLine& line) const {
    if (line.unit == price::PriceUnit::each) return line.quantity.text();
    std::string amount = line.quantity.text() + " " +
                         std::string(price::kPriceUnitNames[static_cast<std::size_t>(line.unit)]);
    if (!both() || line.unit != price::PriceUnit::metre) return amount;
    const double length_m = static_cast<double>(line.quantity.millionths()) / price::Decimal::kOne;
    return sheet.desk.say("paper.quote.both-units",
                          {base::text("amount", amount), base::metres("length", length_m)});
  }
};

/// The lines of a state and a group; none: no rows.
Rows quoteTable(const Sheet& sheet, const PricedQuote& quote, double width_mm, const char* heading,
                bool (*wanted)(const PricedLine&)) {
  const Desk& desk = sheet.desk;
  const Amounts amountWithUnit{sheet};
  std::vector<std::vector<Cell>> cells;
  for (const PricedLine& line : quote.lines) {
    if (!wanted(line)) continue;
    cells.push_back({Cell(desk.say(line.text)), Cell(amountWithUnit(line))});
    if (!quote.margin_in_lines) {
      cells.back().emplace_back(line.unit_price ? line.unit_price->text(quote.minor_digits) : "?");
    }
    cells.back().emplace_back(line.shown ? price::moneyText(*line.shown, quote.minor_digits) : "?");
  }
  if (cells.empty()) return {};
  using drawing::HAlign;
  Writer w(desk, width_mm);
  w.heading(desk.say(heading));
  std::vector<TableColumn> columns{
      {desk.say("paper.quote.what"), 5.0},
      {desk.say("paper.quote.quantity"), amountWithUnit.share(), HAlign::right}};
  // With the margin in it a line's total is no longer quantity by price.
  if (!quote.margin_in_lines) columns.push_back({desk.say("paper.quote.each"), 1.2, HAlign::right});
  columns.push_back({quote.currency, 1.3, HAlign::right});
  w.append(tableRows(desk, columns, cells, width_mm));
  return w.take();
}

class QuoteTotals {
 public:
  QuoteTotals(const Desk& desk, const PricedQuote& quote) : m_desk(desk), m_quote(quote) {}

  void add(const char* id, price::Money amount, const std::optional<price::Decimal>& percent = {},
           Font font = fonts::body) {
    std::string words = m_desk.say(base::Message(std::string("price.total.") + id));
    if (percent) words += ", " + percent->text() + " %";
    m_cells.push_back(
        {Cell(words, font), Cell(price::moneyText(amount, m_quote.minor_digits), font)});
  }

  Rows rows(double width_mm) const {
    Writer w(m_desk, width_mm);
    w.gap(2.0);
    w.append(tableRows(m_desk, {{"", 7.3}, {"", 1.3, drawing::HAlign::right}}, m_cells, width_mm));
    return w.take();
  }

 private:
  const Desk& m_desk;
  const PricedQuote& m_quote;
  std::vector<std::vector<Cell>> m_cells;
};

Rows totalRows(const Sheet& sheet, const PricedQuote& quote, double width_mm) {
  QuoteTotals totals(sheet.desk, quote);
  totals.add("work", price::workShown(quote));
  if (quote.margin_percent && !quote.margin_in_lines)
    totals.add("margin", quote.margin, quote.margin_percent);
  if (quote.provisional.coins != 0) totals.add("provisional", quote.provisional);
  totals.add("net", quote.net);
  if (quote.tax_percent) totals.add("tax", quote.tax, quote.tax_percent);
  if (quote.rounding.coins != 0) totals.add("rounding", quote.rounding);
  totals.add(quote.tax_percent ? "total" : "total-without-tax", quote.total, {}, fonts::strong);
  return totals.rows(width_mm);
}

bool isInTotal(const PricedLine& line) {
  return line.state == LineState::counted || line.state == LineState::unpriced;
}
bool isMaterialLine(const PricedLine& line) {
  return line.kind == NeedKind::material && isInTotal(line);
}
bool isLabourLine(const PricedLine& line) {
  return line.kind == NeedKind::labour && isInTotal(line);
}
bool isTakenUpLine(const PricedLine& line) {
  return line.kind == NeedKind::optional && isInTotal(line);
}
bool isOfferedLine(const PricedLine& line) { return line.state == LineState::optional; }

Rows remarkRows(const Sheet& sheet, const PricedQuote& quote, double width_mm) {
  Writer w(sheet.desk, width_mm);
  w.heading(sheet.desk.say("paper.quote.notes"));
  for (const base::Message& remark : quote.remarks) w.body(sheet.desk.say(remark));
  return w.take();
}

/// Of when, and to which day it holds.
std::string quoteDates(const Sheet& sheet, const PricedQuote& quote) {
  std::string out = forWhom(sheet, sheet.desk.say("paper.quote.for"));
  if (!quote.expires.empty())
    out += "; " + sheet.desk.say("paper.quote.holds", {base::text("date", quote.expires)});
  return out;
}

/// Without prices: why, rather than a paper that looks like an offer.
Document unpricedPaper(const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  Folio folio(sheet, desk.say("paper.quote.title"), forWhom(sheet, desk.say("paper.quote.for")));
  Writer w(desk, folio.width_mm());
  w.text(desk.say("paper.quote.none"), fonts::strong, desk.theme.ink);
  if (const auto& pricing = sheet.options.pricing) {
    for (const base::Problem& problem : pricing->why_not) w.body(desk.say(problem.message));
  }
  folio.add(w.take());
  return folio.finished();
}

}  // namespace

Document quotePaper(const Sheet& sheet) {
  const auto& pricing = sheet.options.pricing;
  if (!pricing || !pricing->why_not.empty()) return unpricedPaper(sheet);
  const PricedQuote& quote = pricing->quote;
  Folio folio(sheet, sheet.desk.say("paper.quote.title"), quoteDates(sheet, quote));
  const double width = folio.width_mm();
  Writer stops(sheet.desk, width);
  writeStops(stops, sheet);
  folio.addWhole(stops.take());
  if (quote.invented) {
    Writer w(sheet.desk, width);
    w.text(sheet.desk.say("price.invented"), fonts::strong, sheet.desk.theme.ink);
    folio.add(w.take());
  }
  folio.add(quoteTable(sheet, quote, width, "paper.quote.material", isMaterialLine));
  folio.add(quoteTable(sheet, quote, width, "paper.quote.labour", isLabourLine));
  folio.add(quoteTable(sheet, quote, width, "paper.quote.taken-up", isTakenUpLine));
  folio.addWhole(totalRows(sheet, quote, width));
  folio.addWhole(quoteTable(sheet, quote, width, "paper.quote.offered", isOfferedLine));
  folio.addWhole(remarkRows(sheet, quote, width));
  Writer terms(sheet.desk, width);
  writeTerms(terms, sheet);
  folio.addWhole(terms.take());
  return folio.finished();
}

Document shoppingPaper(const Sheet& sheet) {
  const Desk& desk = sheet.desk;
  Folio folio(sheet, desk.say("paper.shopping.title"),
              forWhom(sheet, desk.say("paper.shopping.for")));
  const Amounts amountWithUnit{sheet};
  Writer stops(desk, folio.width_mm());
  writeStops(stops, sheet);
  folio.addWhole(stops.take());
  std::vector<std::vector<Cell>> cells;
  const auto& pricing = sheet.options.pricing;
  for (const PricedLine& line :
       pricing ? price::shoppingOf(pricing->quote) : std::vector<PricedLine>())
    cells.push_back({Cell(), Cell(amountWithUnit(line)), Cell(desk.say(line.text))});
  Writer w(desk, folio.width_mm());
  if (cells.empty()) {
    w.body(desk.say("price.no-sump"));
  } else {
    w.append(tableRows(desk,
                       {{desk.say("paper.shopping.bought"), 0.8},
                        {desk.say("paper.quote.quantity"), 1.1, drawing::HAlign::right},
                        {desk.say("paper.quote.what"), 6.0}},
                       cells, folio.width_mm(), {kTick_mm, true}));
  }
  folio.add(w.take());
  return folio.finished();
}

}  // namespace sumpwright::dossier
