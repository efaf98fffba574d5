// The quote. What only whoever makes the quote has to know is told in the window and
// by the command, not here.

#include <algorithm>

#include "dossier/Amounts.h"
#include "dossier/Folio.h"
#include "dossier/Papers.h"
#include "dossier/Table.h"

namespace sumpwright::dossier {
namespace {

using price::LineState;
using price::NeedKind;
using price::PricedLine;
using price::PricedQuote;

constexpr double kSign_mm = 9.0;  // and of one to sign on

/// The lines of a state and a group; none: no rows. Of lines to choose from, with room to say so.
Rows quoteTable(const Sheet& sheet, const PricedQuote& quote, double width_mm, const char* heading,
                bool (*wanted)(const PricedLine&), bool to_choose = false) {
  const Desk& desk = sheet.desk;
  const Amounts amountWithUnit(sheet);
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
  if (to_choose) columns.push_back({desk.say("paper.quote.wanted"), 0.9});
  const TableStyle style = to_choose ? TableStyle{kTick_mm, true} : TableStyle();
  w.append(tableRows(desk, columns, cells, width_mm, style));
  return w.take();
}

class QuoteTotals {
 public:
  QuoteTotals(const Desk& desk, const PricedQuote& quote) : m_desk(desk), m_quote(quote) {}

  void add(const price::TotalLine& line, bool last) {
    const Font font = last ? fonts::strong : fonts::body;
    std::string words = m_desk.say(base::Message("price.total." + std::string(line.name)));
    if (line.percent) words += ", " + line.percent->text() + " %";
    m_cells.push_back(
        {Cell(words, font), Cell(price::moneyText(line.amount, m_quote.minor_digits), font)});
  }

  Rows rows(double width_mm) const {
    Writer w(m_desk, width_mm);
    w.gap(2.0);
    w.keepLastWithNext();
    w.append(tableRows(
        m_desk,
        {{m_desk.say("paper.quote.sum"), 7.3}, {m_quote.currency, 1.3, drawing::HAlign::right}},
        m_cells, width_mm, {0.0, false, true}));
    return w.take();
  }

 private:
  const Desk& m_desk;
  const PricedQuote& m_quote;
  std::vector<std::vector<Cell>> m_cells;
};

Rows totalRows(const Sheet& sheet, const PricedQuote& quote, double width_mm) {
  QuoteTotals totals(sheet.desk, quote);
  const auto lines = price::totalsOf(quote);
  for (const price::TotalLine& line : lines) {
    // What is within the lines is the firm's alone.
    if (line.name != "margin-within") totals.add(line, &line == &lines.back());
  }
  Writer w(sheet.desk, width_mm);
  w.append(totals.rows(width_mm));
  // What the sum leaves out or guesses stands beside it.
  for (const base::Message& told : quote.toldToClient()) {
    w.keepLastWithNext();
    w.gap(1.0);
    w.keepLastWithNext();
    w.body(sheet.desk.say(told));
  }
  return w.take();
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
bool isOfferedLine(const PricedLine& line) {
  return line.state == LineState::optional && line.total.has_value();
}

/// The tables one below the other and the sum, which takes the last lines along to its page.
Rows countedRows(const Sheet& sheet, const PricedQuote& quote, double width_mm) {
  constexpr std::size_t kAlong = 3;
  Writer w(sheet.desk, width_mm);
  const auto table = [&](const char* heading, bool (*wanted)(const PricedLine&)) {
    Rows rows = quoteTable(sheet, quote, width_mm, heading, wanted);
    if (rows.empty()) return;
    if (!w.rows().empty()) w.gap(3.2);
    w.append(std::move(rows));
  };
  table("paper.quote.material", isMaterialLine);
  table("paper.quote.labour", isLabourLine);
  table("paper.quote.taken-up", isTakenUpLine);
  Rows rows = w.take();
  const std::size_t from = rows.size() - std::min(rows.size(), kAlong);
  for (std::size_t i = from; i < rows.size(); ++i) rows[i].keep_with_next = true;
  Rows sums = totalRows(sheet, quote, width_mm);
  rows.insert(rows.end(), sums.begin(), sums.end());
  return rows;
}

/// Nothing to tick that has no price: it is named, to be asked for.
void offeredWithoutPrice(Writer& w, const PricedQuote& quote) {
  const Desk& desk = w.desk();
  std::string all;
  for (const PricedLine& line : quote.lines) {
    if (line.state == LineState::optional && !line.total)
      all += (all.empty() ? "" : "; ") + desk.say(line.text);
  }
  if (!all.empty()) w.body(desk.say("paper.quote.offered-unpriced", {base::text("what", all)}));
}

Rows offeredRows(const Sheet& sheet, const PricedQuote& quote, double width_mm) {
  Writer w(sheet.desk, width_mm);
  w.append(quoteTable(sheet, quote, width_mm, "paper.quote.offered", isOfferedLine, true));
  const bool any = heightOf(w.rows()) > 0.0;
  const bool margin = quote.margin_percent && !quote.margin_in_lines;
  if (any && (quote.tax_percent || margin)) {
    w.text(sheet.desk.say(!margin             ? "paper.quote.offered-net"
                          : quote.tax_percent ? "paper.quote.offered-net-margin"
                                              : "paper.quote.offered-margin"),
           fonts::small, sheet.desk.theme.ink2);
  }
  return w.take();
}

Rows remarkRows(const Sheet& sheet, const PricedQuote& quote, double width_mm) {
  Writer w(sheet.desk, width_mm);
  w.heading(sheet.desk.say("paper.quote.notes"));
  offeredWithoutPrice(w, quote);
  w.body(sheet.desk.say("price.electrician"));
  return w.take();
}

/// What makes it no offer to go by, before all else.
Rows doubtRows(const Sheet& sheet, const PricedQuote& quote, double width_mm) {
  Writer w(sheet.desk, width_mm);
  const auto say = [&](const char* id) {
    w.text(sheet.desk.say(id), fonts::strong, sheet.desk.theme.ink);
  };
  if (quote.invented) say("price.invented");
  if (quote.unpriced() > 0) say("paper.quote.incomplete");
  return w.take();
}

base::Arg numberOf(const Sheet& sheet) {
  return base::text("number", price::quoteNumber(sheet.job(), sheet.options.date));
}

/// With the sum, wherever the page breaks.
Rows acceptRows(const Sheet& sheet, const PricedQuote& quote, double width_mm) {
  const Desk& desk = sheet.desk;
  Writer w(desk, width_mm);
  w.heading(desk.say("paper.quote.accept"));
  w.body(desk.say(quote.tax_percent ? "paper.quote.accept-text" : "paper.quote.accept-no-tax",
                  {numberOf(sheet), base::text("currency", quote.currency),
                   base::text("sum", price::moneyText(quote.total, quote.minor_digits))}));
  w.gap(1.0);
  std::vector<std::vector<Cell>> cells{{Cell(sheet.job().client), Cell(), Cell()}};
  w.append(tableRows(desk,
                     {{desk.say("paper.quote.accept-name"), 2.6},
                      {desk.say("paper.quote.accept-date"), 1.4},
                      {desk.say("paper.quote.accept-sign"), 3.0}},
                     cells, width_mm, {kSign_mm, true}));
  return w.take();
}

/// Counted from its own day, else from the day that stands on the paper.
std::string expiryOf(const Sheet& sheet, const PricedQuote& quote) {
  if (!quote.expires.empty()) return quote.expires;
  const auto& days = sheet.job().design.quote.valid_days;
  return days ? price::daysAfter(sheet.options.date, *days) : std::string();
}

/// Its number, for whom, of when, and to which day it holds.
std::string quoteUnder(const Sheet& sheet, const PricedQuote& quote) {
  const std::string& client = sheet.job().client;
  std::string out =
      forWhom(sheet, sheet.desk.say(client.empty() ? "paper.quote.for" : "paper.quote.for-client",
                                    {numberOf(sheet), base::text("client", client)}));
  const std::string expires = expiryOf(sheet, quote);
  if (!expires.empty())
    out += "; " + sheet.desk.say("paper.quote.holds", {base::text("date", expires)});
  return out;
}

/// Without a sump or prices: why, rather than a paper that looks like an offer.
Document noQuote(const Sheet& sheet, const char* why) {
  const Desk& desk = sheet.desk;
  const std::string& client = sheet.job().client;
  Folio folio(sheet, desk.say("paper.quote.title-none"),
              client.empty() ? sheet.options.date : forWhom(sheet, client));
  folio.add(allWaiverRows(sheet, folio.width_mm()));
  Writer w(desk, folio.width_mm());
  w.text(desk.say(why), fonts::strong, desk.theme.ink);
  writeStops(w, sheet);
  if (const auto& pricing = sheet.options.pricing) {
    for (const base::Problem& problem : pricing->why_not) w.body(desk.say(problem.message));
  }
  folio.add(w.take());
  return folio.finished();
}

}  // namespace

Document quotePaper(const Sheet& sheet) {
  const auto& pricing = sheet.options.pricing;
  if (sheet.job().design.sumps.empty()) return noQuote(sheet, "paper.quote.no-sump");
  if (!pricing || !pricing->why_not.empty()) return noQuote(sheet, "paper.quote.none");
  if (anyStopped(sheet)) return noQuote(sheet, "paper.quote.stopped");
  const PricedQuote& quote = pricing->quote;
  Folio folio(sheet, sheet.desk.say("paper.quote.title"), quoteUnder(sheet, quote));
  const double width = folio.width_mm();
  Writer stops(sheet.desk, width);
  writeStops(stops, sheet);
  const Rows open = stops.take();
  folio.add(allWaiverRows(sheet, width));
  folio.addWhole(open);
  folio.add(doubtRows(sheet, quote, width));
  folio.add(countedRows(sheet, quote, width));
  folio.addWhole(offeredRows(sheet, quote, width));
  folio.addWhole(remarkRows(sheet, quote, width));
  Writer terms(sheet.desk, width);
  writeTerms(terms, sheet);
  folio.addWhole(terms.take());
  // Nobody signs for a place that is not settled, or for a sum with lines missing.
  if (open.empty() && quote.unpriced() == 0) folio.addWhole(acceptRows(sheet, quote, width));
  return folio.finished();
}

}  // namespace sumpwright::dossier
