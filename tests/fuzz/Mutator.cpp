#include "fuzz/Mutator.h"

#include <array>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string_view>

#include "base/Contract.h"

namespace sumpwright::fuzz {

namespace {

using Json = nlohmann::ordered_json;

/// SplitMix64 (Steele, Lea, Flood: Fast Splittable Pseudorandom Number Generators, OOPSLA 2014).
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : m_state(seed) {}

  std::uint64_t next() {
    m_state += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = m_state;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31U);
  }
  /// 0 .. n-1; 0 for n = 0.
  std::size_t below(std::size_t n) { return n == 0 ? 0 : static_cast<std::size_t>(next() % n); }

 private:
  std::uint64_t m_state;
};

constexpr auto kNumbers = std::to_array<std::string_view>({"0",
                                                           "-0",
                                                           "-1",
                                                           "1",
                                                           "0.5",
                                                           "1e308",
                                                           "-1e308",
                                                           "1e309",
                                                           "1e-320",
                                                           "9999.999",
                                                           "10000",
                                                           "10000.001",
                                                           "-10000.001",
                                                           "2147483647",
                                                           "2147483648",
                                                           "-2147483649",
                                                           "9223372036854775808",
                                                           "18446744073709551616",
                                                           "1e999",
                                                           "NaN",
                                                           "-Infinity",
                                                           "0x10",
                                                           "01",
                                                           "1.",
                                                           ".5",
                                                           "+1",
                                                           "1e",
                                                           "0.000000001",
                                                           "123456789012345678901234567890",
                                                           "null",
                                                           "true",
                                                           "\"1\"",
                                                           "[]",
                                                           "{}"});

constexpr auto kTokens = std::to_array<std::string_view>(
    {"{",
     "}",
     "[",
     "]",
     ",",
     ":",
     "\"",
     "\\",
     "\\u0000",
     "\\uD800",
     "null",
     "true",
     "false",
     "[]",
     "{}",
     "\"\"",
     "\"id\":\"\"",
     "\"version\":2",
     "\"closed\":false",
     "\xEF\xBB\xBF",
     "\xFF",
     "\xC3",
     "/*",
     "//",
     "\n",
     "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["});

constexpr auto kWords = std::to_array<std::string_view>(
    {"", "unknown", "drawn", "overhead", "present", "looked_none", "not_looked", "party", "window",
     "flue_terminal", "internal", "standby", "soffit_vent", "carport", "12.50", "2026-02-30",
     "w0.0", "win", "\xE2\x82\xAC"});

template <class List>
std::string_view any(const List& list, Dice& dice) {
  return list[dice.below(list.size())];
}

// Of bytes.

void flipByte(std::string& text, Dice& dice) {
  if (text.empty()) return;
  const std::size_t i = dice.below(text.size());
  text[i] = static_cast<char>(static_cast<unsigned char>(text[i]) ^ (1U << dice.below(8)));
}

void truncate(std::string& text, Dice& dice) { text.resize(dice.below(text.size() + 1)); }

void cutOut(std::string& text, Dice& dice) {
  const std::size_t from = dice.below(text.size() + 1);
  text.erase(from, dice.below(64));
}

void repeatPart(std::string& text, Dice& dice) {
  const std::size_t from = dice.below(text.size() + 1);
  const std::string part = text.substr(from, dice.below(200));
  text.insert(dice.below(text.size() + 1), part);
}

// Of tokens and numbers.

void insertToken(std::string& text, Dice& dice) {
  text.insert(dice.below(text.size() + 1), any(kTokens, dice));
}

/// A run of digits and what belongs to them, from a random place on, becomes an extreme.
void replaceNumber(std::string& text, Dice& dice) {
  constexpr std::string_view kDigits = "0123456789";
  constexpr std::string_view kParts = "0123456789+-.eE";
  const std::size_t from = text.find_first_of(kDigits, dice.below(text.size() + 1));
  if (from == std::string::npos) return;
  const std::size_t to = std::min(text.find_first_not_of(kParts, from), text.size());
  text.replace(from, to - from, any(kNumbers, dice));
}

void swapTokens(std::string& text, Dice& dice) {
  const auto token = [&] {
    const std::size_t from = text.find_first_of("\"{}[],:", dice.below(text.size() + 1));
    return from == std::string::npos ? std::size_t{0} : from;
  };
  if (!text.empty()) std::swap(text[token()], text[token()]);
}

// Of the tree.

/// All values of the tree, the root first.
void collect(Json& json, std::vector<Json*>& out) {
  out.push_back(&json);
  if (!json.is_structured()) return;
  for (Json& child : json) collect(child, out);
}

Json* anyOf(Json& root, Dice& dice) {
  std::vector<Json*> all;
  collect(root, all);
  return all[dice.below(all.size())];
}

/// A value of any kind.
Json anything(Dice& dice) {
  switch (dice.below(8)) {
    case 0:
      return nullptr;
    case 1:
      return Json::object();
    case 2:
      return Json::array();
    case 3:
      return std::string(any(kWords, dice));
    case 4:
      return dice.below(2) == 0;
    case 5:
      return static_cast<double>(dice.below(20'000)) / 1000.0 - 5.0;
    case 6:
      return Json::array({1, 2});
    default:
      return static_cast<std::int64_t>(dice.below(12)) - 2;
  }
}

/// Mostly a value of the same kind, so that most files stay readable and reach the check.
Json replacement(const Json& now, Dice& dice) {
  if (dice.below(8) == 0) return anything(dice);
  if (now.is_number_float())
    return now.get<double>() + static_cast<double>(dice.below(2001)) / 100.0 - 10.0;
  if (now.is_number()) return static_cast<std::int64_t>(dice.below(14)) - 1;
  if (now.is_boolean()) return !now.get<bool>();
  if (now.is_string()) return std::string(any(kWords, dice));
  return now.is_array() ? Json::array() : Json::object();
}

void changeChild(Json& parent, Dice& dice) {
  if (parent.empty()) return;
  const std::size_t i = dice.below(parent.size());
  const auto it = std::next(parent.begin(), static_cast<std::ptrdiff_t>(i));
  switch (dice.below(4)) {
    case 0:
      parent.erase(it);
      break;
    case 1:
      if (parent.is_array()) parent.push_back(Json(*it));
      break;
    case 2:
      if (parent.is_array()) std::swap(*it, parent[dice.below(parent.size())]);
      break;
    default:
      *it = replacement(*it, dice);
  }
}

void changeTree(std::string& text, Dice& dice) {
  Json root = Json::parse(text, nullptr, false);
  if (root.is_discarded()) return;
  for (std::size_t changes = 1 + dice.below(3); changes > 0; --changes) {
    Json* place = anyOf(root, dice);
    if (place->is_structured() && dice.below(4) != 0) {
      changeChild(*place, dice);
    } else if (dice.below(3) == 0) {
      const Json other = *anyOf(root, dice);
      *place = other;
    } else {
      *place = replacement(*place, dice);
    }
  }
  text = root.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// Moves points and offsets a little: the file stays readable, the plan becomes unsound.
void nudgeNumbers(std::string& text, Dice& dice) {
  Json root = Json::parse(text, nullptr, false);
  if (root.is_discarded()) return;
  for (std::size_t changes = 1 + dice.below(8); changes > 0; --changes) {
    Json* place = anyOf(root, dice);
    if (!place->is_number()) continue;
    const double by = (static_cast<double>(dice.below(2001)) - 1000.0) / 100.0;
    *place = place->get<double>() + by;
  }
  text = root.dump(-1, ' ', false, Json::error_handler_t::replace);
}

using Mutation = void (*)(std::string&, Dice&);
constexpr auto kOfText =
    std::to_array<Mutation>({flipByte, truncate, cutOut, repeatPart, insertToken, replaceNumber,
                             replaceNumber, swapTokens});
constexpr auto kOfTree = std::to_array<Mutation>({changeTree, nudgeNumbers});

}  // namespace

Mutator::Mutator(std::vector<std::string> seeds) : m_seeds(std::move(seeds)) {
  SUMPWRIGHT_REQUIRE(!m_seeds.empty());
}

std::string Mutator::file(std::uint64_t number) const {
  Dice dice(number);
  std::string text = m_seeds[dice.below(m_seeds.size())];
  // Two in three by the tree: text that is no JSON never gets past the first door.
  if (dice.below(3) != 0) {
    kOfTree[dice.below(kOfTree.size())](text, dice);
    return text;
  }
  for (std::size_t changes = 1 + dice.below(4); changes > 0; --changes) {
    kOfText[dice.below(kOfText.size())](text, dice);
  }
  return text;
}

}  // namespace sumpwright::fuzz
