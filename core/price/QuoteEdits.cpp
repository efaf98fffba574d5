#include "price/QuoteEdits.h"

#include <algorithm>
#include <utility>

namespace sumpwright::price {

namespace {

std::vector<plan::QuoteLine>::iterator changeOf(plan::Quote& quote, const PricedLine& line) {
  return std::find_if(quote.lines.begin(), quote.lines.end(), [&](const plan::QuoteLine& change) {
    return !line.change.empty() && change.id == line.change;
  });
}

/// The job's change of a line, begun where there is none.
plan::QuoteLine& begunChange(plan::Quote& quote, const PricedLine& line) {
  const auto found = changeOf(quote, line);
  if (found != quote.lines.end()) return *found;
  plan::QuoteLine change;
  change.item = line.item;
  change.offered = line.state == LineState::optional;
  quote.lines.push_back(std::move(change));
  return quote.lines.back();
}

bool saysNothing(const plan::QuoteLine& change) {
  return change.text.empty() && change.quantity.empty() && change.unit_price.empty() &&
         !change.left_out;
}

/// What the design offers is taken up by the mere presence of a line that is not only offered; a
/// line of the job's own is all there is of it.
bool mayGo(const PricedLine& line, const plan::QuoteLine& change) {
  return line.designed.has_value() && (line.kind == NeedKind::optional) == change.offered;
}

void dropEmpty(plan::Quote& quote, const PricedLine& line, const plan::QuoteLine& change) {
  if (!mayGo(line, change) || !saysNothing(change)) return;
  std::erase_if(quote.lines, [&](const plan::QuoteLine& one) { return one.item == line.item; });
}

std::string& partIn(plan::QuoteLine& change, LinePart part) {
  switch (part) {
    case LinePart::text:
      return change.text;
    case LinePart::quantity:
      return change.quantity;
    case LinePart::unit_price:
      break;
  }
  return change.unit_price;
}

}  // namespace

plan::Quote withPart(plan::Quote quote, const PricedLine& line, LinePart part,
                     const std::string& text) {
  if (text.empty() && line.change.empty()) return quote;
  plan::QuoteLine& change = begunChange(quote, line);
  partIn(change, part) = text;
  dropEmpty(quote, line, plan::QuoteLine(change));
  return quote;
}

std::string partOf(const plan::Quote& quote, const PricedLine& line, LinePart part) {
  plan::Quote copy = quote;
  const auto found = changeOf(copy, line);
  return found == copy.lines.end() ? std::string() : partIn(*found, part);
}

plan::Quote withTick(plan::Quote quote, const PricedLine& line, bool in) {
  plan::QuoteLine& change = begunChange(quote, line);
  change.offered = !in && line.kind == NeedKind::optional && line.designed;
  change.left_out = !in && !change.offered;
  dropEmpty(quote, line, plan::QuoteLine(change));
  return quote;
}

plan::Quote withoutChange(plan::Quote quote, const PricedLine& line) {
  const auto found = changeOf(quote, line);
  if (found != quote.lines.end()) quote.lines.erase(found);
  return quote;
}

plan::Quote withUnit(plan::Quote quote, const PricedLine& line, PriceUnit unit) {
  const auto found = changeOf(quote, line);
  if (line.item.empty() && found != quote.lines.end()) found->unit = unit;
  return quote;
}

plan::Quote withNewLine(plan::Quote quote, const std::string& item, const std::string& text,
                        plan::QuoteKind kind) {
  if (item.empty() && text.empty()) return quote;
  plan::QuoteLine line;
  line.item = item;
  line.text = text;
  line.quantity = "1";
  if (item.empty() && kind == plan::QuoteKind::labour) {
    line.kind = kind;
    line.unit = plan::QuoteUnit::hour;
  }
  quote.lines.push_back(std::move(line));
  return quote;
}

}  // namespace sumpwright::price
