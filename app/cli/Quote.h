#pragma once
// A quote and a shopping list as text and as JSON. Amounts and quantities are decimal text in both.

#include <nlohmann/json_fwd.hpp>
#include <ostream>
#include <vector>

#include "price/Quote.h"
#include "words/Words.h"

namespace sumpwright::cli {

void printQuote(const price::PricedQuote& quote, words::Units units, std::ostream& out);
void printShopping(const std::vector<price::PricedLine>& lines, words::Units units,
                   std::ostream& out);
/// sumpwright.quote/1 and sumpwright.shopping/1, resources/manual/prices.md.
nlohmann::ordered_json quoteJson(const price::PricedQuote& quote, words::Units units);
nlohmann::ordered_json shoppingJson(const std::vector<price::PricedLine>& lines,
                                    words::Units units);

}  // namespace sumpwright::cli
