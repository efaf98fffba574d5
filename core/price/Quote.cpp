#include "price/Quote.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cstdio>
#include <iterator>
#include <utility>

namespace sumpwright::price {

namespace {

constexpr std::array<std::string_view, 4> kLineStates{"counted", "optional", "left_out",
                                                      "unpriced"};

PricedLine lineOf(const Need& need) {
  PricedLine line;
  line.item = need.item;
  line.kind = need.kind;
  line.state = need.kind == NeedKind::optional ? LineState::optional : LineState::counted;
  line.text = need.text;
  line.detail = need.detail;
  line.goods = need.goods;
  line.quantity = need.quantity;
  line.designed = need.quantity;
  line.unit = need.unit;
  line.assumed = need.assumed;
  return line;
}

/// A line for an item of the book that the design does not give, or of the job's own.
PricedLine addedLine(const plan::QuoteLine& change, const PriceBook& book) {
  PricedLine line;
  line.item = change.item;
  line.quantity = Decimal::of(1);
  const PriceItem* item = book.find(change.item);
  line.text = base::plainText(item != nullptr ? item->title : change.item);
  if (change.item.empty()) {
    line.unit = change.unit;
    line.kind = change.kind == plan::QuoteKind::labour ? NeedKind::labour : NeedKind::material;
  } else if (item != nullptr) {
    line.unit = item->unit;
    line.kind = item->kind;
  }
  return line;
}

void changeLine(const plan::QuoteLine& change, PricedLine& line) {
  line.changed = true;
  line.change = change.id;
  line.state = change.left_out  ? LineState::left_out
               : change.offered ? LineState::optional
                                : LineState::counted;
  if (!change.text.empty()) line.text = base::plainText(change.text);
  if (const auto quantity = Decimal::parse(change.quantity)) {
    line.quantity = *quantity;
    line.assumed = false;
  }
  if (const auto price = Decimal::parse(change.unit_price)) line.unit_price = *price;
}

std::vector<PricedLine> linesOf(const Needs& needs, const PriceBook& book,
                                const plan::Quote& quote) {
  std::vector<PricedLine> lines;
  for (const Need& need : needs.rows) lines.push_back(lineOf(need));
  for (const plan::QuoteLine& change : quote.lines) {
    const auto same = std::find_if(lines.begin(), lines.end(), [&](const PricedLine& line) {
      return !change.item.empty() && line.item == change.item;
    });
    if (same == lines.end()) {
      lines.push_back(addedLine(change, book));
      changeLine(change, lines.back());
    } else {
      changeLine(change, *same);
    }
  }
  return lines;
}

/// Sums that say once whether one of them did not fit.
class Till {
 public:
  Money add(Money a, Money b) { return kept(sum(a, b)); }
  Money share(Money amount, const std::optional<Decimal>& percent) {
    return percent ? kept(percentOf(amount, *percent)) : Money{};
  }
  Money kept(std::optional<Money> amount) {
    m_fits = m_fits && amount.has_value();
    return amount.value_or(Money{});
  }
  bool fits() const { return m_fits; }

 private:
  bool m_fits = true;
};

void priceLine(const PriceBook& book, Till& till, PricedLine& line) {
  const PriceItem* item = line.item.empty() ? nullptr : book.find(line.item);
  // A price by another unit would be multiplied by the wrong quantity.
  if (item != nullptr && item->unit == line.unit) {
    line.book_price = item->price;
    line.sold_in = item->sold_in;
  }
  if (!line.unit_price) line.unit_price = line.book_price;
  if (line.unit_price) {
    line.total = till.kept(times(line.quantity, *line.unit_price, book.minor_digits));
  } else if (line.state == LineState::counted) {
    line.state = LineState::unpriced;
  }
}

std::optional<Decimal> firstOf(const std::string& own, const std::optional<Decimal>& book) {
  const auto parsed = Decimal::parse(own);
  return parsed ? parsed : book;
}

/// A discount is shown as it was given: others bear its part of the margin.
bool bearsMargin(const PricedLine& line) {
  return line.state == LineState::counted && line.total && line.total->coins > 0;
}

/// Each counted line's part of the margin. What is shared out up to a line is rounded, never the
/// part itself: so the parts add up to the margin whatever the totals.
void shareMargin(Till& till, PricedQuote& out) {
  Money bearing;
  for (const PricedLine& line : out.lines) {
    if (bearsMargin(line)) bearing = till.add(bearing, *line.total);
  }
  Money before;
  Money shared;
  bool left = bearing.coins == 0;  // nothing but discounts: the first shows all of it
  for (PricedLine& line : out.lines) {
    if (!line.total) continue;
    if (left && line.state == LineState::counted) {
      line.shown = till.add(*line.total, out.margin);
      left = false;
      continue;
    }
    if (line.state != LineState::counted) {
      line.shown = till.add(*line.total, till.share(*line.total, out.margin_percent));
      continue;
    }
    if (!bearsMargin(line)) continue;
    before = till.add(before, *line.total);
    const Money up_to = till.kept(shareOf(out.margin, before, bearing));
    line.shown = till.add(*line.total, Money{up_to.coins - shared.coins});
    shared = up_to;
  }
}

bool inLines(plan::MarginShown job, plan::MarginShown book) {
  return (job == plan::MarginShown::as_book ? book : job) == plan::MarginShown::in_lines;
}

void addTotals(const plan::Quote& quote, const PriceBook& book, Till& till, PricedQuote& out) {
  for (const PricedLine& line : out.lines) {
    if (line.state == LineState::counted) out.work = till.add(out.work, *line.total);
  }
  out.margin_percent = firstOf(quote.margin_percent, book.margin_percent);
  out.margin = till.share(out.work, out.margin_percent);
  out.margin_in_lines =
      out.margin_percent.has_value() && inLines(quote.margin_shown, book.margin_shown);
  for (PricedLine& line : out.lines) line.shown = line.total;
  if (out.margin_in_lines) shareMargin(till, out);
  if (const auto aside = Decimal::parse(quote.provisional))
    out.provisional = till.kept(times(Decimal::of(1), *aside, book.minor_digits));
  out.net = till.add(till.add(out.work, out.margin), out.provisional);
  out.tax_percent = firstOf(quote.tax_percent, book.tax_percent);
  out.tax = till.share(out.net, out.tax_percent);
  const Money exact = till.add(out.net, out.tax);
  out.total =
      book.round_to ? till.kept(toMultiple(exact, *book.round_to, book.minor_digits)) : exact;
  out.rounding = {out.total.coins - exact.coins};
}

void addRemarks(const Needs& needs, const PriceBook& book, const plan::Quote& quote,
                PricedQuote& out) {
  auto& remarks = out.remarks;
  if (out.invented) remarks.emplace_back("price.invented");
  for (const PricedLine& line : out.lines) {
    if (line.total || line.state == LineState::left_out) continue;
    const bool offered = line.state == LineState::optional;
    const PriceItem* item = line.item.empty() ? nullptr : book.find(line.item);
    const char* id = item == nullptr ? (offered ? "price.unpriced-offer" : "price.unpriced")
                                     : (offered ? "price.other-unit-offer" : "price.other-unit");
    remarks.push_back(
        base::Message(id, {base::phrase("line", line.text), base::text("item", line.item)}));
  }
  if (auto odd = oddMargin(out.margin_percent)) remarks.push_back(*std::move(odd));
  if (out.total.coins < 0) remarks.emplace_back("price.negative-total");
  if (!out.tax_percent) remarks.emplace_back("price.no-tax");
  if (out.expires.empty()) {
    remarks.emplace_back(quote.valid_days && quote.date.empty() ? "price.expiry-from-print"
                                                                : "price.no-expiry");
  }
  remarks.insert(remarks.end(), needs.remarks.begin(), needs.remarks.end());
  remarks.emplace_back("price.own-figures");
  remarks.emplace_back("price.electrician");
}

}  // namespace

std::string_view lineStateName(LineState state) {
  return kLineStates.at(static_cast<std::size_t>(state));
}

std::string_view needKindName(NeedKind kind) {
  return kNeedKindNames[static_cast<std::size_t>(kind)];
}

std::size_t PricedQuote::unpriced() const {
  return static_cast<std::size_t>(std::count_if(lines.begin(), lines.end(), [](const auto& line) {
    return line.state == LineState::unpriced;
  }));
}

std::vector<base::Message> PricedQuote::toldToClient() const {
  std::vector<base::Message> out;
  std::copy_if(remarks.begin(), remarks.end(), std::back_inserter(out), [](const auto& remark) {
    return remark.id == "price.no-cable" || remark.id == "price.assumed-run" ||
           remark.id == "price.assumed-low";
  });
  return out;
}

std::optional<base::Message> oddMargin(const std::optional<Decimal>& percent) {
  if (!percent || !(Decimal::of(kMostMargin_percent) < *percent)) return std::nullopt;
  return base::Message("price.large-margin", {base::text("percent", percent->text())});
}

std::string_view totalName(const PricedQuote& quote) {
  if (quote.unpriced() > 0) return "incomplete";
  return quote.tax_percent ? "total" : "total-without-tax";
}

std::string quoteNumber(const plan::Job& job, const std::string& today) {
  const plan::Quote& quote = job.design.quote;
  if (!quote.number.empty()) return quote.number;
  std::string out = quote.date.empty() ? today : quote.date;
  std::erase(out, '-');
  return out.empty() ? job.id : out + "-" + job.id;
}

Money workShown(const PricedQuote& quote) {
  return {quote.work.coins + (quote.margin_in_lines ? quote.margin.coins : 0)};
}

std::vector<TotalLine> totalsOf(const PricedQuote& quote) {
  const bool adds_margin = quote.margin_percent && !quote.margin_in_lines;
  const bool adds_to_work = adds_margin || quote.provisional.coins != 0;
  const bool adds_to_net = quote.tax_percent.has_value() || quote.rounding.coins != 0;
  std::vector<TotalLine> lines;
  if (adds_to_work || adds_to_net) lines.push_back({"work", workShown(quote), {}});
  if (quote.margin_percent) {
    lines.push_back(
        {quote.margin_in_lines ? "margin-within" : "margin", quote.margin, quote.margin_percent});
  }
  if (quote.provisional.coins != 0) lines.push_back({"provisional", quote.provisional, {}});
  if (adds_to_work && adds_to_net) lines.push_back({"net", quote.net, {}});
  if (quote.tax_percent) lines.push_back({"tax", quote.tax, quote.tax_percent});
  if (quote.rounding.coins != 0) lines.push_back({"rounding", quote.rounding, {}});
  lines.push_back({totalName(quote), quote.total, {}});
  return lines;
}

std::string daysAfter(const std::string& date, int days) {
  constexpr std::size_t kLength = 10;
  int year = 0;
  unsigned month = 0;
  unsigned day = 0;
  if (date.size() != kLength || date[4] != '-' || date[7] != '-') return {};
  std::from_chars(date.data(), date.data() + 4, year);
  std::from_chars(date.data() + 5, date.data() + 7, month);
  std::from_chars(date.data() + 8, date.data() + kLength, day);
  const std::chrono::year_month_day from{std::chrono::year(year), std::chrono::month(month),
                                         std::chrono::day(day)};
  if (!from.ok()) return {};
  const std::chrono::year_month_day to(std::chrono::sys_days(from) + std::chrono::days(days));
  constexpr int kLastYear = 9999;
  if (!to.ok() || static_cast<int>(to.year()) > kLastYear) return {};
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02u-%02u", static_cast<int>(to.year()),
                static_cast<unsigned>(to.month()), static_cast<unsigned>(to.day()));
  return text.data();
}

base::Result<PricedQuote> priced(const Needs& needs, const PriceBook& book,
                                 const plan::Quote& quote) {
  if (needs.too_large) {
    return base::Problem{base::Message("price.too-large"), "/design", base::Gravity::unsound};
  }
  PricedQuote out;
  out.number = quote.number;
  out.book = book.id;
  out.book_title = book.title;
  out.invented = book.invented;
  out.currency = book.currency;
  out.minor_digits = book.minor_digits;
  out.date = quote.date;
  if (quote.valid_days) out.expires = daysAfter(quote.date, *quote.valid_days);
  out.lines = linesOf(needs, book, quote);
  Till till;
  for (PricedLine& line : out.lines) priceLine(book, till, line);
  addTotals(quote, book, till, out);
  if (!till.fits()) {
    return base::Problem{base::Message("price.too-large"), "/design/quote", base::Gravity::unsound};
  }
  addRemarks(needs, book, quote, out);
  return out;
}

std::int64_t packCount(const PricedLine& line) {
  if (!line.sold_in) return 0;
  const std::int64_t size = line.sold_in->millionths();
  return (std::max<std::int64_t>(0, line.quantity.millionths()) + size - 1) / size;
}

std::optional<base::Message> packsOf(const PricedLine& line) {
  const std::int64_t packs = packCount(line);
  if (packs == 0) return std::nullopt;
  std::string size = line.sold_in->text();
  if (line.unit != PriceUnit::each) {
    size += " " + std::string(kPriceUnitNames[static_cast<std::size_t>(line.unit)]);
  }
  return base::Message("price.packs", {base::text("size", size), base::count("packs", packs)});
}

std::vector<PricedLine> shoppingOf(const PricedQuote& quote) {
  std::vector<PricedLine> out;
  for (const PricedLine& line : quote.lines) {
    const bool discount = line.item.empty() && line.unit_price && *line.unit_price < Decimal();
    const bool taken_up = line.state == LineState::counted || line.state == LineState::unpriced;
    const bool material = line.kind == NeedKind::material && line.state != LineState::left_out;
    if ((material && !discount) || (line.goods && taken_up)) out.push_back(line);
  }
  return out;
}

}  // namespace sumpwright::price
