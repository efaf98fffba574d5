// Quotes as comma separated values.

#include <initializer_list>

#include "price/Quote.h"

namespace sumpwright::price {

namespace {

/// RFC 4180, section 2, rules 5 to 7.
std::string quoted(const std::string& field) {
  if (field.find_first_of("\",\r\n") == std::string::npos) return field;
  std::string out = "\"";
  for (const char c : field) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

/// Words of people: never a formula to whoever opens the file.
std::string words(std::string text) {
  constexpr std::string_view kFormulaStarts = "=+-@\t\r\n";
  if (!text.empty() && kFormulaStarts.find(text.front()) != std::string_view::npos)
    text.insert(0, "'");
  return text;
}

void addRow(std::initializer_list<std::string> fields, std::string& csv) {
  const char* between = "";
  for (const std::string& field : fields) {
    csv += between + quoted(field);
    between = ",";
  }
  csv += "\r\n";
}

std::string unitOf(const PricedLine& line) {
  return std::string(kPriceUnitNames[static_cast<std::size_t>(line.unit)]);
}

class TotalRows {
 public:
  TotalRows(const PricedQuote& quote, const Say& say, std::string& csv)
      : m_quote(quote), m_say(say), m_csv(csv) {}
  void add(std::string_view name, Money amount, const std::optional<Decimal>& percent = {}) {
    const std::string id(name);
    addRow({"total", "", id, words(m_say(base::Message("price.total." + id))),
            percent ? percent->text() : "", percent ? "percent" : m_quote.currency, "", "", "",
            moneyText(amount, m_quote.minor_digits)},
           m_csv);
  }

 private:
  const PricedQuote& m_quote;
  const Say& m_say;
  std::string& m_csv;
};

}  // namespace

std::string quoteCsv(const PricedQuote& quote, const Say& say) {
  std::string csv;
  addRow({"group", "state", "item", "text", "quantity", "unit", "unit_price", "amount", "counted",
          "sum"},
         csv);
  for (const PricedLine& line : quote.lines) {
    const std::string amount = line.shown ? moneyText(*line.shown, quote.minor_digits) : "";
    addRow({std::string(needKindName(line.kind)), std::string(lineStateName(line.state)),
            words(line.item), words(say(line.text)), line.quantity.text(), unitOf(line),
            line.unit_price && !quote.margin_in_lines ? line.unit_price->text() : "", amount,
            line.state == LineState::counted ? amount : "", ""},
           csv);
  }
  TotalRows rows(quote, say, csv);
  rows.add("work", workShown(quote));
  if (quote.margin_percent && !quote.margin_in_lines)
    rows.add("margin", quote.margin, quote.margin_percent);
  if (quote.provisional.coins != 0) rows.add("provisional", quote.provisional);
  rows.add("net", quote.net);
  if (quote.tax_percent) rows.add("tax", quote.tax, quote.tax_percent);
  if (quote.rounding.coins != 0) rows.add("rounding", quote.rounding);
  rows.add(totalName(quote), quote.total);
  return csv;
}

std::string shoppingCsv(const std::vector<PricedLine>& lines, const Say& say) {
  std::string csv;
  addRow({"item", "text", "quantity", "unit", "detail", "sold_in", "packs"}, csv);
  for (const PricedLine& line : lines) {
    addRow({words(line.item), words(say(line.text)), line.quantity.text(), unitOf(line),
            line.detail ? words(say(*line.detail)) : "", line.sold_in ? line.sold_in->text() : "",
            line.sold_in ? std::to_string(packCount(line)) : ""},
           csv);
  }
  return csv;
}

}  // namespace sumpwright::price
