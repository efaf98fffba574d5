#include "plan/JobTree.h"

#include <algorithm>
#include <cstdint>
#include <deque>
#include <nlohmann/json.hpp>
#include <unordered_set>
#include <utility>

#include "plan/Utf8.h"

namespace sumpwright::plan {

namespace {

using base::count;
using base::text;

/// Builds the tree from the parser's events. nlohmann's own builder looks through all keys of an
/// object for each new one, which a hostile file turns into hours; here a hash set answers.
class Builder : public nlohmann::json_sax<Json> {
 public:
  Builder(std::string_view source, ProblemList& problems, Json& root)
      : m_source(source), m_problems(problems), m_root(root) {}

  bool null() override { return put(nullptr) != nullptr; }
  bool boolean(bool value) override { return put(value) != nullptr; }
  bool number_integer(number_integer_t value) override { return whole(value); }
  bool number_unsigned(number_unsigned_t value) override { return whole(value); }
  bool number_float(number_float_t value, const string_t& written) override {
    if (isVersion()) m_version = written;
    return put(value) != nullptr;
  }
  bool string(string_t& value) override {
    checkLength(value);
    return put(std::move(value)) != nullptr;
  }
  bool binary(binary_t&) override { return false; }  // does not occur in text

  bool start_object(std::size_t) override { return open(Json::object()); }
  bool start_array(std::size_t) override { return open(Json::array()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& value) override {
    Level& level = m_levels.back();
    level.key = std::move(value);
    checkLength(level.key);
    level.skip = !level.keys.insert(level.key).second;
    if (level.skip) m_problems.add("job.key.twice", here(), {text("key", level.key)});
    return true;
  }

  bool parse_error(std::size_t position, const std::string&,
                   const Json::exception& error) override {
    constexpr int kNumberOverflow = 406;  // nlohmann: number too large for a double
    const std::string word = wordAt(position);
    if (error.id == kNumberOverflow && isVersion() && isJob()) {
      addNewerVersion(word, m_problems);
    } else if (error.id == kNumberOverflow || isNonFinite(word)) {
      m_problems.add("job.number.not-finite", here(), {text("number", shortened(word))});
    } else {
      addSyntax(position, word);
    }
    return false;
  }

  const std::string& version() const { return m_version; }

  /// The parser takes a NUL for the end of the text: what follows it would be lost unseen.
  bool endsAt(std::size_t nul) {
    if (nul == std::string_view::npos) return true;
    addSyntax(nul + 1, "NUL");
    return false;
  }

 private:
  struct Level {
    Json* container = nullptr;
    std::unordered_set<std::string> keys;
    std::string key;
    std::size_t next = 0;  ///< index of the next array element
    bool skip = false;     ///< the value belongs to a key that stood before
  };

  template <class Value>
  Json* put(Value&& value) {
    if (m_levels.empty()) {
      m_root = std::forward<Value>(value);
      return &m_root;
    }
    Level& level = m_levels.back();
    if (level.container->is_array()) {
      ++level.next;
      level.container->push_back(std::forward<Value>(value));
      return &level.container->back();
    }
    if (level.skip) return &m_spares.emplace_back(std::forward<Value>(value));
    auto& members = level.container->get_ref<Json::object_t&>();
    members.emplace_back(level.key, std::forward<Value>(value));
    return &members.back().second;
  }

  template <class Value>
  bool whole(Value value) {
    if (isVersion()) m_version = std::to_string(value);
    return put(value) != nullptr;
  }

  /// Whether the value that comes next is the document's version.
  bool isVersion() const {
    return m_levels.size() == 1 && !m_levels[0].skip && m_levels[0].key == "version";
  }

  /// As far as the document was read.
  bool isJob() const { return m_root.value("format", Json(kJobFormat)) == kJobFormat; }

  bool open(Json empty) {
    if (m_levels.size() >= static_cast<std::size_t>(kMaxJobDepth)) {
      m_problems.add("job.too-deep", here(), {count("limit", kMaxJobDepth)});
      return false;
    }
    Json* container = put(std::move(empty));
    m_levels.push_back({container, {}, {}, 0, false});
    return true;
  }

  bool close() {
    m_levels.pop_back();
    return true;
  }

  /// Pointer of the value that comes next.
  std::string here() const {
    std::string pointer;
    for (std::size_t i = 0; i < m_levels.size(); ++i) {
      const Level& level = m_levels[i];
      const bool last = i + 1 == m_levels.size();
      if (level.container->is_array()) {
        pointer = at(pointer, last ? level.next : level.next - 1);
      } else if (!level.keys.empty()) {
        pointer = at(pointer, shortened(level.key));
      }
    }
    return pointer;
  }

  void checkLength(const std::string& value) {
    if (value.size() <= kMaxTextBytes) return;
    m_problems.add("job.text.too-long", here(),
                   {count("limit", static_cast<std::int64_t>(kMaxTextBytes))});
  }

  /// The bare word or number that reading stopped in, or the character it stopped at. `position`
  /// counts the bytes read.
  std::string wordAt(std::size_t position) const {
    constexpr std::string_view kParts =
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789+-.";
    if (position == 0 || position > m_source.size()) return {};
    std::size_t from = position;
    while (from > 0 && kParts.find(m_source[from - 1]) != std::string_view::npos) --from;
    const std::size_t to = std::min(m_source.find_first_not_of(kParts, from), m_source.size());
    return std::string(to > from ? m_source.substr(from, to - from)
                                 : m_source.substr(position - 1, 1));
  }

  /// NaN and Infinity, which other programs write and JSON does not have.
  static bool isNonFinite(std::string word) {
    std::transform(word.begin(), word.end(), word.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    if (word.starts_with('-') || word.starts_with('+')) word.erase(0, 1);
    return word == "nan" || word == "inf" || word == "infinity";
  }

  void addSyntax(std::size_t position, const std::string& near) {
    const std::string_view before = m_source.substr(0, std::min(position, m_source.size()));
    const auto lines = std::count(before.begin(), before.end(), '\n');
    const std::size_t start = before.rfind('\n');
    const std::size_t column = start == std::string_view::npos ? position : position - start - 1;
    m_problems.add("job.not-json", here(),
                   {count("line", lines + 1), count("column", static_cast<std::int64_t>(column)),
                    text("near", near == std::string(1, '\0') ? "NUL" : shortened(near))});
  }

  std::string_view m_source;
  ProblemList& m_problems;
  Json& m_root;
  std::string m_version;
  std::deque<Json> m_spares;  ///< values of keys that stood before: read, then forgotten
  std::vector<Level> m_levels;
};

}  // namespace

void addNewerVersion(const std::string& version, ProblemList& problems) {
  problems.add("job.version.newer", "/version",
               {text("version", shortened(version)), count("known", kJobVersion)});
}

Tree readTree(std::string_view source, ProblemList& problems) {
  if (source.size() > kMaxJobBytes) {
    problems.add("job.too-large", "",
                 {count("limit", static_cast<std::int64_t>(kMaxJobBytes)),
                  count("bytes", static_cast<std::int64_t>(source.size()))});
    return {};
  }
  if (const auto bad = firstBadByte(source)) {
    problems.add("job.text.not-utf8", "", {count("byte", static_cast<std::int64_t>(*bad))});
    return {};
  }
  auto root = std::make_shared<Json>();
  Builder builder(source, problems, *root);
  if (!Json::sax_parse(source.begin(), source.end(), &builder)) return {};
  if (!builder.endsAt(source.find('\0'))) return {};
  return {std::move(root), builder.version()};
}

std::vector<std::size_t> placeIn(const Json& root, const std::string& pointer) {
  std::vector<std::size_t> place;
  const Json* json = &root;
  for (const std::string& token : tokensOf(pointer)) {
    if (json == nullptr) {
      place.push_back(indexOf(token, 0));
    } else if (json->is_object()) {
      const auto& members = json->get_ref<const Json::object_t&>();
      const auto it = std::find_if(members.begin(), members.end(),
                                   [&](const auto& member) { return member.first == token; });
      place.push_back(static_cast<std::size_t>(it - members.begin()));
      json = it == members.end() ? nullptr : &it->second;
    } else {
      const std::size_t index = indexOf(token, json->size());
      place.push_back(index);
      json = json->is_array() && index < json->size() ? &(*json)[index] : nullptr;
    }
  }
  return place;
}

}  // namespace sumpwright::plan
