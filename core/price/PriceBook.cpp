#include "price/PriceBook.h"

#include <algorithm>
#include <cstdint>
#include <initializer_list>
#include <iterator>
#include <nlohmann/json.hpp>
#include <utility>

#include "base/Pointer.h"
#include "plan/KindNames.h"

namespace sumpwright::price {

namespace {

using PricesJson = nlohmann::json;

base::Problem unreadablePrices(const char* id, std::vector<base::Arg> args,
                               std::string pointer = "") {
  return {base::Message(id, std::move(args)), std::move(pointer), base::Gravity::unreadable};
}

/// An object of the file, what is wrong with it, and the keys nobody knows.
class PricesNode {
 public:
  PricesNode(const PricesJson& json, std::string pointer, base::Problems& problems,
             std::initializer_list<std::string_view> keys)
      : m_json(json), m_pointer(std::move(pointer)), m_problems(problems) {
    if (!json.is_object()) {
      wrongType("", "prices.type.object");
      return;
    }
    for (const auto& [key, value] : json.items()) {
      if (std::find(keys.begin(), keys.end(), key) == keys.end())
        report("prices.unknown-key", "/" + base::pointerStep(key), {base::text("key", key)});
    }
  }

  void report(const char* id, const std::string& place, std::vector<base::Arg> args = {}) const {
    m_problems.push_back(unreadablePrices(id, std::move(args), m_pointer + place));
  }
  void wrongType(const std::string& place, const char* expected) const {
    report("prices.wrong-type", place, {base::phrase("expected", base::Message(expected))});
  }

  const PricesJson* find(const char* key) const {
    if (!m_json.is_object()) return nullptr;
    const auto found = m_json.find(key);
    return found == m_json.end() ? nullptr : &*found;
  }
  const PricesJson* need(const char* key) const {
    const PricesJson* found = find(key);
    if (found == nullptr && m_json.is_object())
      report("prices.missing-key", "", {base::text("key", key)});
    return found;
  }

  std::string text(const char* key, bool needed = true) const {
    const PricesJson* value = needed ? need(key) : find(key);
    if (value == nullptr) return {};
    if (!value->is_string()) return wrongType(at(key), "prices.type.text"), std::string();
    auto out = value->get<std::string>();
    if (needed && out.empty()) report("prices.empty", at(key));
    return out;
  }
  /// Of decimal text, not negative.
  std::optional<Decimal> decimal(const char* key, bool needed) const {
    const std::string words = text(key, needed);
    if (words.empty()) return std::nullopt;
    const auto out = Decimal::parse(words);
    if (out && out->millionths() >= 0) return out;
    report(out ? "prices.negative" : "prices.not-decimal", at(key), {base::text("entry", words)});
    return std::nullopt;
  }

  static std::string at(const char* key) { return std::string("/") + key; }

 private:
  const PricesJson& m_json;
  std::string m_pointer;
  base::Problems& m_problems;
};

std::string listedWords(const std::string_view* begin, const std::string_view* end) {
  std::string out;
  for (const auto* word = begin; word != end; ++word)
    out += (out.empty() ? "" : ", ") + std::string(*word);
  return out;
}

/// One of a list of words.
template <class Kind, std::size_t Count>
void readWord(const PricesNode& node, const char* key, bool needed,
              const std::string_view (&names)[Count], Kind& into) {
  const std::string word = node.text(key, needed);
  const auto* const found = std::find(std::begin(names), std::end(names), word);
  if (found != std::end(names)) {
    into = static_cast<Kind>(found - std::begin(names));
  } else if (!word.empty()) {
    node.report("prices.unknown-word", PricesNode::at(key),
                {base::text("word", word),
                 base::text("words", listedWords(std::begin(names), std::end(names)))});
  }
}

/// A multiple of the least coin, or there would be coins that nobody can pay.
void readRounding(const PricesNode& root, PriceBook& book) {
  book.round_to = root.decimal("round_to", false);
  if (!book.round_to) return;
  const auto coins = times(Decimal::of(1), *book.round_to, book.minor_digits);
  const bool whole = coins && coins->coins > 0 &&
                     Decimal::parse(moneyText(*coins, book.minor_digits)) == book.round_to;
  if (!whole) root.report("prices.round", "/round_to");
}

PriceItem readItem(const PricesNode& node) {
  PriceItem item;
  item.id = node.text("id");
  item.title = node.text("title");
  item.price = node.decimal("price", true).value_or(Decimal());
  readWord(node, "unit", true, kPriceUnitNames, item.unit);
  readWord(node, "kind", false, kNeedKindNames, item.kind);
  item.sold_in = node.decimal("sold_in", false);
  if (item.sold_in == Decimal()) node.report("prices.sold-in", PricesNode::at("sold_in"));
  return item;
}

void readItems(const PricesNode& root, base::Problems& problems, PriceBook& book) {
  const PricesJson* rows = root.need("items");
  if (rows == nullptr) return;
  if (!rows->is_array()) return root.wrongType("/items", "prices.type.list");
  if (rows->size() > kMostPriceItems) {
    return root.report("prices.too-many", "/items",
                       {base::count("given", static_cast<std::int64_t>(rows->size())),
                        base::count("most", std::int64_t{kMostPriceItems})});
  }
  for (std::size_t i = 0; i < rows->size(); ++i) {
    const std::string place = "/items/" + std::to_string(i);
    PriceItem item =
        readItem(PricesNode((*rows)[i], place, problems,
                            {"id", "title", "unit", "kind", "price", "sold_in", "currency"}));
    if ((*rows)[i].is_object() && (*rows)[i].contains("currency"))
      root.report("prices.two-currencies", place + "/currency");
    if (!item.id.empty() && book.find(item.id) != nullptr)
      root.report("prices.repeated", place + "/id", {base::text("word", item.id)});
    book.items.push_back(std::move(item));
  }
}

void readCurrency(const PricesNode& root, PriceBook& book) {
  book.currency = root.text("currency");
  const bool fits =
      book.currency.size() == 3 && std::all_of(book.currency.begin(), book.currency.end(),
                                               [](char c) { return c >= 'A' && c <= 'Z'; });
  if (!book.currency.empty() && !fits)
    root.report("prices.not-currency", "/currency", {base::text("entry", book.currency)});
  const PricesJson* digits = root.find("minor_digits");
  if (digits == nullptr) return;
  if (digits->is_number_integer() && *digits >= 0 && *digits <= kMostMinorDigits) {
    book.minor_digits = digits->get<int>();
  } else {
    root.report("prices.minor-digits", "/minor_digits", {base::count("most", kMostMinorDigits)});
  }
}

void readMarginShown(const PricesNode& root, PriceBook& book) {
  const std::string word = root.text("margin_shown", false);
  if (word.empty()) return;
  const auto shown = plan::valueOf<plan::MarginShown>(word);
  if (shown && *shown != plan::MarginShown::as_book) {
    book.margin_shown = *shown;
  } else {
    root.report("prices.unknown-word", "/margin_shown",
                {base::text("word", word), base::text("words", "own_line, in_lines")});
  }
}

PriceBook readBook(const PricesJson& json, base::Problems& problems) {
  const PricesNode root(
      json, "", problems,
      {"format", "version", "id", "title", "note", "invented", "currency", "minor_digits",
       "round_to", "tax_percent", "margin_percent", "margin_shown", "per_kwh", "items"});
  PriceBook book;
  book.id = root.text("id");
  book.title = root.text("title");
  book.note = root.text("note", false);
  if (const PricesJson* invented = root.find("invented")) {
    if (invented->is_boolean())
      book.invented = invented->get<bool>();
    else
      root.wrongType("/invented", "prices.type.yes-no");
  }
  readCurrency(root, book);
  readRounding(root, book);
  book.tax_percent = root.decimal("tax_percent", false);
  book.margin_percent = root.decimal("margin_percent", false);
  readMarginShown(root, book);
  book.per_kwh = root.decimal("per_kwh", false);
  readItems(root, problems, book);
  return book;
}

std::optional<base::Problem> notPrices(const PricesJson& json) {
  if (!json.is_object() || json.value("format", PricesJson()) != kPricesFormat)
    return unreadablePrices("prices.not-a-book", {base::text("format", kPricesFormat)});
  const PricesJson version = json.value("version", PricesJson());
  if (version.is_number() && version == kPricesVersion) return std::nullopt;
  return unreadablePrices(
      "prices.version",
      {base::text("version", version.is_null() ? "" : version.dump(-1, ' ', true)),
       base::count("known", kPricesVersion)},
      "/version");
}

}  // namespace

const PriceItem* PriceBook::find(std::string_view item) const {
  const auto found = std::find_if(items.begin(), items.end(),
                                  [&](const PriceItem& one) { return one.id == item; });
  return found == items.end() ? nullptr : &*found;
}

base::Result<PriceBook> readPriceBook(std::string_view text) {
  if (text.size() > kMostPriceBytes) {
    return unreadablePrices("prices.too-large",
                            {base::count("bytes", static_cast<std::int64_t>(text.size())),
                             base::count("limit", std::int64_t{kMostPriceBytes})});
  }
  // The parser takes a NUL for the end of the text: what follows it would be lost unseen.
  if (const auto nul = text.find('\0'); nul != std::string_view::npos)
    return unreadablePrices("prices.not-json",
                            {base::count("byte", static_cast<std::int64_t>(nul) + 1)});
  PricesJson json;
  try {
    json = PricesJson::parse(text);
  } catch (const PricesJson::parse_error& error) {
    return unreadablePrices("prices.not-json",
                            {base::count("byte", static_cast<std::int64_t>(error.byte))});
  } catch (const PricesJson::out_of_range&) {  // a number no double holds
    return unreadablePrices("prices.not-json", {base::count("byte", 0)});
  }
  if (auto problem = notPrices(json)) return *problem;
  base::Problems problems;
  PriceBook book = readBook(json, problems);
  if (!problems.empty()) return problems;
  return book;
}

base::Result<std::optional<Decimal>> typedSoldIn(const std::string& text) {
  if (text.empty()) return std::optional<Decimal>();
  const auto typed = typedDecimal(text);
  if (!typed.ok()) return typed.problems();
  if (*typed == Decimal()) {
    return base::Problem{base::Message("prices.sold-in"), "", base::Gravity::unsound};
  }
  return std::optional(*typed);
}

base::Result<Decimal> typedDecimal(const std::string& text) {
  const auto parsed = Decimal::parse(text);
  if (parsed && parsed->millionths() >= 0) return *parsed;
  return base::Problem{
      base::Message(parsed ? "prices.negative" : "prices.typed", {base::text("entry", text)}), "",
      base::Gravity::unsound};
}

}  // namespace sumpwright::price
