#pragma once
// What the job's price is made of beyond its material. Money, shares and the quantities money is
// counted by are decimal text ("12.50"), never binary floating point: 0.1 has no exact double.

#include <optional>
#include <string>
#include <vector>

#include "plan/Kinds.h"

namespace sumpwright::plan {

/// A line that is changed or added to what the design gives.
struct QuoteLine {
  std::string id;
  std::string item;        ///< id in the price book; such a line replaces the design's of that item
  std::string text;        ///< as the client reads it; needed where there is no item
  std::string quantity;    ///< "": the design's
  std::string unit_price;  ///< "": the price book's
  bool left_out = false;
  /// Only offered on top, in no total. Without it a line takes up what the design offers.
  bool offered = false;
  // Of a line without an item; another has them from the price book.
  QuoteUnit unit = QuoteUnit::each;
  QuoteKind kind = QuoteKind::material;
  bool operator==(const QuoteLine&) const = default;
};

struct Quote {
  std::string number;             ///< as the firm counts them; "": made of date and job
  std::string price_book;         ///< id; "": none chosen
  std::string date;               ///< ISO 8601
  std::optional<int> valid_days;  ///< from that date
  std::string tax_percent;        ///< "" here, in margin and provisional: not set
  std::string margin_percent;
  MarginShown margin_shown = MarginShown::as_book;
  std::string provisional;  ///< a sum set aside for what cannot be seen yet
  std::vector<QuoteLine> lines;
  bool operator==(const Quote&) const = default;
};

/// Whether a text is a decimal number: a sign, up to 12 digits, a point and up to 6 digits after it
/// (own figures: more than any sum of a job).
bool isDecimal(const std::string& text);

}  // namespace sumpwright::plan
