#pragma once
// A price: what the design takes, by a price book, with the changes the job's quote makes. A line
// of the job of the same item replaces what the design gives of it. Nothing is guessed: an item the
// book does not hold has no price, is told, and is in no total.

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/Result.h"
#include "plan/Job.h"
#include "plan/Quote.h"
#include "price/Materials.h"

namespace sumpwright::price {

enum class LineState {
  counted,
  optional,  ///< offered on top, not in the total
  left_out,
  unpriced  ///< neither book nor job gives a price
};
/// The words of files for it.
std::string_view lineStateName(LineState state);
std::string_view needKindName(NeedKind kind);

struct PricedLine {
  std::string item;  ///< "": the job's own line
  NeedKind kind = NeedKind::material;
  LineState state = LineState::counted;
  base::Message text;
  std::optional<base::Message> detail;  ///< of what the design gives: what it is bought by
  bool goods = false;                   ///< of an optional line: a thing to buy
  Decimal quantity;
  PriceUnit unit = PriceUnit::each;
  std::optional<Decimal> designed;    ///< the design's quantity; nothing: a line the job has added
  std::optional<Decimal> book_price;  ///< by the line's unit
  std::optional<Decimal> unit_price;  ///< the job's, else the book's
  std::optional<Decimal> sold_in;     ///< the book's, of a price by the line's unit
  std::optional<Money> total;         ///< quantity by price, rounded; of every line with a price
  /// What the client reads: the total, with its share of a margin that stands in the lines.
  std::optional<Money> shown;
  std::string change;    ///< id of the job's line that changed or added it; "": none
  bool changed = false;  ///< the job's quote changed or added it
  /// Its quantity follows from a run that nobody has placed or stated (price.assumed-*).
  bool assumed = false;
};

struct PricedQuote {
  std::string number;  ///< the job's; "": none given
  std::string book;
  std::string book_title;
  bool invented = false;
  std::string currency;
  int minor_digits = 2;
  std::vector<PricedLine> lines;
  Money work;                             ///< the counted lines
  std::optional<Decimal> margin_percent;  ///< the job's, else the book's
  Money margin;
  /// The margin is in the lines, and their `shown` add up to work and margin: each has of it in
  /// proportion to its total, the coins so shared out that none is lost. Discounts bear none.
  bool margin_in_lines = false;
  Money provisional;                   ///< set aside for what cannot be seen yet; bears no margin
  Money net;                           ///< work, margin and provisional sum
  std::optional<Decimal> tax_percent;  ///< the job's, else the book's; nothing: not stated
  Money tax;
  Money rounding;  ///< what brings the total to a multiple of the book's round_to
  Money total;     ///< without tax where none is stated
  std::string date;
  std::string expires;                 ///< the last day it holds; "": not stated
  std::vector<base::Message> remarks;  ///< "price.*", for who makes the quote, not for the client

  std::size_t unpriced() const;
  /// Of the remarks what the client has to know too: what is not counted, what was assumed.
  std::vector<base::Message> toldToClient() const;
};

/// A margin above this many percent is remarked: it may be mistyped (own figure).
inline constexpr int kMostMargin_percent = 100;
/// Nothing where there is nothing odd about it: price.large-margin.
std::optional<base::Message> oddMargin(const std::optional<Decimal>& percent);

/// What the total is called, after "price.total.": "incomplete" while a line has no price, else
/// "total", or "total-without-tax" where no tax is stated.
std::string_view totalName(const PricedQuote& quote);

/// The quote's number as the job states it; else its date (`today` where the job's quote has none)
/// and the job's id: "20260302-job-4f2a".
std::string quoteNumber(const plan::Job& job, const std::string& today);

/// Problem (unsound): price.too-large. Decimal texts that are none are left out of account here:
/// checkJob() tells them. `quote` as checkJob() passes it.
base::Result<PricedQuote> priced(const Needs& needs, const PriceBook& book,
                                 const plan::Quote& quote);

/// A line under the quote's lines, called "price.total." + name.
struct TotalLine {
  std::string_view name;
  Money amount;
  std::optional<Decimal> percent;
};
/// From the top: work, margin ("margin-within" where it is in the lines), provisional, net, tax and
/// rounding as far as there are any; last the total by its name. A sum that only says again what
/// the next one says is left out.
std::vector<TotalLine> totalsOf(const PricedQuote& quote);

/// The sum of the counted lines as they are shown: with the margin where it is in them.
Money workShown(const PricedQuote& quote);

/// yyyy-mm-dd so many days later; "" where the date is none.
std::string daysAfter(const std::string& date, int days);

/// How many of what it is sold in that takes, none of them cut: "price.packs". Nothing where the
/// book does not say.
std::optional<base::Message> packsOf(const PricedLine& line);
/// The same as a number; 0 where the book does not say.
std::int64_t packCount(const PricedLine& line);

using Say = std::function<std::string(const base::Message&)>;

/// RFC 4180 (CRLF, quotes doubled), UTF-8. Head: group, state, item, text, quantity, unit,
/// unit_price, amount (of every line with a price), counted (the same of those in the total, so
/// that the column adds up), sum; with a point. With the margin in the lines unit_price is empty,
/// since it is no longer the price of one, and amounts hold their share of it. Totals follow as
/// rows of group "total", in the column sum alone. A text that a spreadsheet would take for a
/// formula gets an apostrophe before it.
std::string quoteCsv(const PricedQuote& quote, const Say& say);
/// Material to buy, with the job's changes, without prices: item, text, quantity, unit, detail,
/// sold_in, packs.
std::string shoppingCsv(const std::vector<PricedLine>& lines, const Say& say);
/// The material of a quote that is not left out, of what is offered the goods that are taken up; of
/// the job's own lines those that are no discount.
std::vector<PricedLine> shoppingOf(const PricedQuote& quote);

}  // namespace sumpwright::price
