#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

#include "cli/Quote.h"

namespace sumpwright::cli {

namespace {

using price::LineState;
using price::NeedKind;
using price::PricedLine;
using price::PricedQuote;

constexpr std::size_t kQuantityWidth = 8;
constexpr std::size_t kMoneyWidth = 12;

std::string rightOf(const std::string& text, std::size_t width) {
  return text.size() >= width ? text : std::string(width - text.size(), ' ') + text;
}

std::string unitText(const PricedLine& line) {
  constexpr std::size_t kWidth = 4;  // the longest unit
  std::string unit(price::kPriceUnitNames[static_cast<std::size_t>(line.unit)]);
  unit.resize(std::max(unit.size(), kWidth), ' ');
  return unit;
}

std::string moneyOf(const PricedQuote& quote, const std::optional<price::Money>& amount) {
  return amount ? price::moneyText(*amount, quote.minor_digits) : "?";
}

struct QuotePrinter {
  const PricedQuote& quote;
  words::Units units;
  std::ostream& out;

  std::string say(const base::Message& message) const { return words::say(message, units); }

  /// With the margin in it a line's total is no longer quantity by price.
  std::string priceOfOne(const PricedLine& line) const {
    if (!line.unit_price) return "?";
    return quote.margin_in_lines ? "" : line.unit_price->text(quote.minor_digits);
  }

  void lines(const char* title, bool (*wanted)(const PricedLine&)) const {
    bool first = true;
    for (const PricedLine& line : quote.lines) {
      if (!wanted(line)) continue;
      if (first) out << '\n' << title << '\n';
      first = false;
      out << rightOf(line.quantity.text(), kQuantityWidth) << ' ' << unitText(line)
          << rightOf(priceOfOne(line), kMoneyWidth)
          << rightOf(moneyOf(quote, line.shown), kMoneyWidth) << "  " << say(line.text)
          << (line.changed ? " *" : "") << (line.assumed ? " ≈" : "") << '\n';
    }
  }

  void total(const price::TotalLine& line) const {
    constexpr std::size_t kIndent = kQuantityWidth + 5 + kMoneyWidth;
    out << rightOf(moneyOf(quote, line.amount), kIndent + kMoneyWidth) << "  "
        << say(base::Message("price.total." + std::string(line.name)));
    if (line.percent) out << ", " << line.percent->text() << " %";
    out << '\n';
  }

  void totals() const {
    out << '\n';
    for (const price::TotalLine& line : price::totalsOf(quote)) total(line);
  }
};

bool isMaterial(const PricedLine& line) {
  return line.kind == NeedKind::material && line.state != LineState::left_out;
}
bool isLabour(const PricedLine& line) {
  return line.kind == NeedKind::labour && line.state != LineState::left_out;
}
bool isTakenUp(const PricedLine& line) {
  return line.kind == NeedKind::optional &&
         (line.state == LineState::counted || line.state == LineState::unpriced);
}
bool isOffered(const PricedLine& line) { return line.state == LineState::optional; }
bool isLeftOut(const PricedLine& line) { return line.state == LineState::left_out; }

nlohmann::ordered_json lineJson(const PricedLine& line, words::Units units) {
  return {{"item", line.item},
          {"text", words::say(line.text, units)},
          {"quantity", line.quantity.text()},
          {"unit", price::kPriceUnitNames[static_cast<std::size_t>(line.unit)]}};
}

}  // namespace

void printQuote(const PricedQuote& quote, words::Units units, std::ostream& out) {
  const QuotePrinter printer{quote, units, out};
  out << "Quote in " << quote.currency << ", by " << quote.book_title;
  if (!quote.date.empty()) out << ", of " << quote.date;
  if (!quote.expires.empty()) out << ", holds to " << quote.expires;
  out << '\n';
  printer.lines("Material", isMaterial);
  printer.lines("Labour", isLabour);
  printer.lines("Taken up", isTakenUp);
  if (!quote.lines.empty()) printer.totals();  // of nothing there is no sum
  printer.lines("Offered on top, in no total", isOffered);
  printer.lines("Left out", isLeftOut);
  out << "\nTo note\n";
  for (const base::Message& remark : quote.remarks) out << "  " << printer.say(remark) << '\n';
}

void printShopping(const std::vector<PricedLine>& lines, words::Units units, std::ostream& out) {
  out << "Shopping list\n";
  for (const PricedLine& line : lines) {
    out << rightOf(line.quantity.text(), kQuantityWidth) << ' ' << unitText(line) << "  "
        << words::say(line.text, units);
    if (line.detail) out << ": " << words::say(*line.detail, units);
    if (const auto packs = price::packsOf(line)) out << "; " << words::say(*packs, units);
    out << '\n';
  }
}

nlohmann::ordered_json quoteJson(const PricedQuote& quote, words::Units units) {
  const auto money = [&](price::Money amount) {
    return price::moneyText(amount, quote.minor_digits);
  };
  const auto percent = [](const std::optional<price::Decimal>& value) {
    return value ? nlohmann::ordered_json(value->text()) : nlohmann::ordered_json();
  };
  nlohmann::ordered_json lines = nlohmann::ordered_json::array();
  for (const PricedLine& line : quote.lines) {
    nlohmann::ordered_json row = lineJson(line, units);
    row["group"] = price::needKindName(line.kind);
    row["state"] = price::lineStateName(line.state);
    row["changed"] = line.changed;
    row["assumed"] = line.assumed;
    row["unit_price"] = percent(line.unit_price);
    row["total"] = line.total ? nlohmann::ordered_json(money(*line.total)) : nullptr;
    row["shown"] = line.shown ? nlohmann::ordered_json(money(*line.shown)) : nullptr;
    lines.push_back(std::move(row));
  }
  nlohmann::ordered_json remarks = nlohmann::ordered_json::array();
  for (const base::Message& remark : quote.remarks)
    remarks.push_back({{"id", remark.id}, {"text", words::say(remark, units)}});
  return {{"format", "sumpwright.quote/1"},
          {"price_book", quote.book},
          {"invented", quote.invented},
          {"currency", quote.currency},
          {"number", quote.number},
          {"date", quote.date},
          {"expires", quote.expires},
          {"lines", std::move(lines)},
          {"work", money(quote.work)},
          {"margin_percent", percent(quote.margin_percent)},
          {"margin", money(quote.margin)},
          {"margin_shown", quote.margin_in_lines ? "in_lines" : "own_line"},
          {"provisional", money(quote.provisional)},
          {"net", money(quote.net)},
          {"tax_percent", percent(quote.tax_percent)},
          {"tax", money(quote.tax)},
          {"rounding", money(quote.rounding)},
          {"total", money(quote.total)},
          {"complete", quote.unpriced() == 0},
          {"remarks", std::move(remarks)}};
}

nlohmann::ordered_json shoppingJson(const std::vector<PricedLine>& lines, words::Units units) {
  nlohmann::ordered_json rows = nlohmann::ordered_json::array();
  for (const PricedLine& line : lines) {
    rows.push_back(lineJson(line, units));
    rows.back()["detail"] = line.detail ? words::say(*line.detail, units) : std::string();
    if (line.sold_in) {
      rows.back()["sold_in"] = line.sold_in->text();
      rows.back()["packs"] = price::packCount(line);
    }
  }
  return {{"format", "sumpwright.shopping/1"}, {"lines", std::move(rows)}};
}

}  // namespace sumpwright::cli
