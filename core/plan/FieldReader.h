#pragma once
// JSON -> struct by the field lists of JobFields.h. Include after nlohmann/json.hpp, from a .cpp
// file only. Internal to core/plan.

#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "plan/JobFields.h"
#include "plan/JobTree.h"
#include "plan/KindNames.h"
#include "plan/Utf8.h"

namespace sumpwright::plan {

/// Keys that anybody may add anywhere without being told that they are not known.
inline bool isFreeKey(std::string_view key) { return key == "comment" || key.starts_with("x_"); }

/// `wanted`: id of the phrase for what should stand there.
inline void addWrongType(ProblemList& problems, const std::string& pointer, const char* wanted) {
  problems.add("job.type", pointer, {base::phrase("wanted", base::Message(wanted))});
}

class FieldReader {
 public:
  /// What makes the file unreadable goes to `problems`, keys that are not known to `notes`.
  FieldReader(ProblemList& problems, ProblemList& notes) : m_problems(problems), m_notes(notes) {}

  /// `also`: keys beyond the field list that the caller deals with.
  template <class T>
  void object(const Json& json, const std::string& pointer, T& out,
              const std::set<std::string_view>& also = {}) {
    if (!json.is_object()) return wrongType(pointer, "job.kind.object");
    fields(json, pointer, out);
    noteUnknownKeys<T>(json, pointer, also);
  }

 private:
  void wrongType(const std::string& pointer, const char* wanted) {
    addWrongType(m_problems, pointer, wanted);
  }

  template <class T>
  void fields(const Json& json, const std::string& pointer, T& out) {
    forEachField<T>(
        [&](const auto& field) {
          const auto it = json.find(field.key);
          if (it != json.end()) {
            value(*it, at(pointer, field.key), rangeOf(field.key), out.*field.member);
          } else if (field.required) {
            m_problems.add("job.key.missing", pointer, {base::text("key", std::string(field.key))});
          }
        },
        [&](const auto& inner) { fields(json, pointer, out.*inner.member); });
  }

  template <class T>
  void noteUnknownKeys(const Json& json, const std::string& pointer,
                       const std::set<std::string_view>& also) {
    std::set<std::string_view> known = also;
    forEachKey<T>([&](std::string_view key) { known.insert(key); });
    for (const auto& item : json.items()) {
      if (known.contains(item.key()) || isFreeKey(item.key())) continue;
      m_notes.add("job.key.unknown", at(pointer, shortened(item.key())),
                  {base::text("key", shortened(item.key()))});
    }
  }

  template <class T>
  requires kDescribed<T>
  void value(const Json& json, const std::string& pointer, Range, T& out) {
    object(json, pointer, out);
  }

  void value(const Json& json, const std::string& pointer, Range, std::string& out) {
    if (!json.is_string()) return wrongType(pointer, "job.kind.text");
    out = json.get_ref<const std::string&>();
    if (hasControls(out)) m_problems.add("job.text.control", pointer);
  }

  void value(const Json& json, const std::string& pointer, Range, bool& out) {
    if (!json.is_boolean()) return wrongType(pointer, "job.kind.yes-no");
    out = json.get<bool>();
  }

  void value(const Json& json, const std::string& pointer, Range range, double& out) {
    if (!json.is_number()) return wrongType(pointer, "job.kind.number");
    if (inRange(json.get<double>(), pointer, range)) out = json.get<double>();
  }

  void value(const Json& json, const std::string& pointer, Range range, int& out) {
    // 2.0 is as whole as 2 (JSON Schema 2020-12, Core, section 4.2.3).
    const double number = json.is_number() ? json.get<double>() : 0.5;
    if (number != std::floor(number)) return wrongType(pointer, "job.kind.whole-number");
    if (inRange(number, pointer, range)) out = static_cast<int>(number);
  }

  template <class E>
  requires std::is_enum_v<E>
  void value(const Json& json, const std::string& pointer, Range, E& out) {
    if (!json.is_string()) return wrongType(pointer, "job.kind.word");
    const auto& word = json.get_ref<const std::string&>();
    if (const std::optional<E> known = valueOf<E>(word)) {
      out = *known;
      return;
    }
    std::string allowed;
    for (const std::string_view name : namesOf<E>()) {
      allowed += (allowed.empty() ? "" : ", ") + std::string(name);
    }
    m_problems.add("job.word.unknown", pointer,
                   {base::text("word", shortened(word)), base::text("allowed", allowed)});
  }

  void value(const Json& json, const std::string& pointer, Range range, Point& out) {
    if (!json.is_array() || json.size() != 2) return wrongType(pointer, "job.kind.point");
    value(json[0], at(pointer, std::size_t{0}), range, out.x);
    value(json[1], at(pointer, std::size_t{1}), range, out.y);
  }

  template <class T>
  void value(const Json& json, const std::string& pointer, Range range, std::optional<T>& out) {
    value(json, pointer, range, out.emplace());
  }

  template <class T>
  void value(const Json& json, const std::string& pointer, Range range, std::vector<T>& out) {
    if (!json.is_array()) return wrongType(pointer, "job.kind.list");
    if (json.size() > kMaxListed) {
      m_problems.add("job.too-many", pointer,
                     {base::count("limit", static_cast<std::int64_t>(kMaxListed)),
                      base::count("count", static_cast<std::int64_t>(json.size()))});
      return;
    }
    out.resize(json.size());
    for (std::size_t i = 0; i < out.size(); ++i) value(json[i], at(pointer, i), range, out[i]);
  }

  template <std::size_t N>
  void value(const Json& json, const std::string& pointer, Range range, std::array<Point, N>& out) {
    static_assert(N == 4, "the phrase says four");
    if (!json.is_array() || json.size() != N) return wrongType(pointer, "job.kind.four-points");
    for (std::size_t i = 0; i < N; ++i) value(json[i], at(pointer, i), range, out[i]);
  }

  bool inRange(double number, const std::string& pointer, Range range) {
    if (number >= range.low && number <= range.high) return true;
    m_problems.add("job.number.range", pointer,
                   {base::number("number", number), base::number("low", range.low),
                    base::number("high", range.high)});
    return false;
  }

  ProblemList& m_problems;
  ProblemList& m_notes;
};

}  // namespace sumpwright::plan
