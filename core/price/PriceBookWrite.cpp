// A price book as text: what readPriceBook() reads.

#include <nlohmann/json.hpp>

#include "plan/KindNames.h"
#include "price/PriceBook.h"

namespace sumpwright::price {

namespace {

using PricesText = nlohmann::ordered_json;

void putDecimal(PricesText& json, const char* key, const std::optional<Decimal>& value) {
  if (value) json[key] = value->text();
}

PricesText itemJson(const PriceItem& item, int minor_digits) {
  PricesText json{{"id", item.id},
                  {"title", item.title},
                  {"unit", kPriceUnitNames[static_cast<std::size_t>(item.unit)]}};
  if (item.kind != NeedKind::material)
    json["kind"] = kNeedKindNames[static_cast<std::size_t>(item.kind)];
  json["price"] = item.price.text(minor_digits);
  putDecimal(json, "sold_in", item.sold_in);
  return json;
}

}  // namespace

std::string priceBookText(const PriceBook& book) {
  PricesText json{{"format", kPricesFormat},
                  {"version", kPricesVersion},
                  {"id", book.id},
                  {"title", book.title}};
  if (!book.note.empty()) json["note"] = book.note;
  if (book.invented) json["invented"] = true;
  json["currency"] = book.currency;
  json["minor_digits"] = book.minor_digits;
  putDecimal(json, "round_to", book.round_to);
  putDecimal(json, "tax_percent", book.tax_percent);
  putDecimal(json, "margin_percent", book.margin_percent);
  if (book.margin_shown == plan::MarginShown::in_lines)
    json["margin_shown"] = plan::nameOf(book.margin_shown);
  putDecimal(json, "per_kwh", book.per_kwh);
  json["items"] = PricesText::array();
  for (const PriceItem& item : book.items)
    json["items"].push_back(itemJson(item, book.minor_digits));
  return json.dump(2, ' ', false, PricesText::error_handler_t::replace) + "\n";
}

}  // namespace sumpwright::price
