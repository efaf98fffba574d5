#pragma once
// A price book: what a firm takes for each item. JSON, described by
// resources/schema/prices.schema.json. Prices are decimal text.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/Result.h"
#include "plan/Kinds.h"
#include "price/Money.h"

namespace sumpwright::price {

using PriceUnit = plan::QuoteUnit;
/// In the order of PriceUnit; words of files.
inline constexpr std::string_view kPriceUnitNames[] = {"each", "m", "m2", "hour"};

/// optional: only counted once the job's quote has a line for it.
enum class NeedKind { material, labour, optional };
/// In the order of NeedKind; words of files.
inline constexpr std::string_view kNeedKindNames[] = {"material", "labour", "optional"};

struct PriceItem {
  std::string id;
  std::string title;
  PriceUnit unit = PriceUnit::each;
  Decimal price;
  NeedKind kind = NeedKind::material;  ///< of a line that the job adds; only material is bought
  /// By the unit, over 0: the length, or how many in a pack, it is sold in. Nothing: as it is asked
  /// for. The price is for the unit all the same.
  std::optional<Decimal> sold_in = {};
};

struct PriceBook {
  std::string id;
  std::string title;
  std::string note;
  bool invented = false;
  std::string currency;  ///< three capital letters (ISO 4217)
  int minor_digits = 2;
  std::optional<Decimal> tax_percent;                            ///< nothing: not stated
  std::optional<Decimal> margin_percent;                         ///< nothing: none
  plan::MarginShown margin_shown = plan::MarginShown::own_line;  ///< never as_book
  /// The total goes to the nearest multiple; nothing: as it comes.
  std::optional<Decimal> round_to;
  std::optional<Decimal> per_kwh;  ///< what the client pays for electricity; nothing: not stated
  std::vector<PriceItem> items;    ///< each id once

  const PriceItem* find(std::string_view item) const;
};

inline constexpr const char* kPricesFormat = "sumpwright.prices";
inline constexpr int kPricesVersion = 1;
inline constexpr std::size_t kMostPriceBytes = 1024U * 1024U;
inline constexpr std::size_t kMostPriceItems = 2000;

/// Never throws; every problem of the text (unreadable, "prices.*"), with its place.
base::Result<PriceBook> readPriceBook(std::string_view text);

/// What readPriceBook() reads; of a book that breaks its rules the reader says so.
std::string priceBookText(const PriceBook& book);

/// A figure of a book as somebody types it. Problems: prices.typed, prices.negative.
base::Result<Decimal> typedDecimal(const std::string& text);
/// What an item is sold in, as typed; empty: nothing. Problems: those, and prices.sold-in of 0.
base::Result<std::optional<Decimal>> typedSoldIn(const std::string& text);

}  // namespace sumpwright::price
