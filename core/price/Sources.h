#pragma once
// Where the quantity of a line comes from, in a few words: "price.from.*".

#include "price/Quote.h"

namespace sumpwright::price {

base::Message sourceOf(const PricedLine& line);

}  // namespace sumpwright::price
