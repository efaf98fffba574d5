#pragma once
// Struct -> JSON by the field lists of JobFields.h, laid over the JSON it was read from: what this
// version does not know stays, keys stay in their order, and a number that has not changed stays as
// it was written. Include after nlohmann/json.hpp, from a .cpp file only. Internal to core/plan.

#include <array>
#include <optional>
#include <set>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "plan/JobFields.h"
#include "plan/JobTree.h"
#include "plan/KindNames.h"

namespace sumpwright::plan {

/// `before`: the value as it stood in the source, or null where it stood nowhere.
template <class T>
requires kDescribed<T> Json written(const T& now, const Json* before);

inline Json written(const std::string& now, const Json*) { return now; }
inline Json written(bool now, const Json*) { return now; }

inline Json written(double now, const Json* before) {
  const bool same = before != nullptr && before->is_number() && before->get<double>() == now;
  return same ? *before : Json(now);
}

inline Json written(int now, const Json* before) {
  const bool same = before != nullptr && before->is_number() && before->get<double>() == now;
  return same ? *before : Json(now);
}

template <class E>
requires std::is_enum_v<E> Json written(E now, const Json*) { return std::string(nameOf(now)); }

/// Element i of a JSON array, or null.
inline const Json* elementOf(const Json* list, std::size_t i) {
  return list != nullptr && list->is_array() && i < list->size() ? &(*list)[i] : nullptr;
}

inline Json written(const Point& now, const Json* before) {
  return Json::array({written(now.x, elementOf(before, 0)), written(now.y, elementOf(before, 1))});
}

template <std::size_t N>
Json written(const std::array<Point, N>& now, const Json* before) {
  Json list = Json::array();
  for (std::size_t i = 0; i < N; ++i) list.push_back(written(now[i], elementOf(before, i)));
  return list;
}

template <class T>
inline constexpr bool kHasId = requires(const T& t) {
  t.id;
};

inline const std::string* idIn(const Json* element) {
  if (element == nullptr || !element->is_object()) return nullptr;
  const auto id = element->find("id");
  return id != element->end() && id->is_string() ? &id->get_ref<const std::string&>() : nullptr;
}

/// Finds the source element of each thing: by id where things have ids, else by place in the list.
class Matcher {
 public:
  explicit Matcher(const Json* list) : m_list(list) {
    if (list == nullptr || !list->is_array()) return;
    for (const Json& element : *list) {
      if (const std::string* id = idIn(&element)) m_by_id.emplace(*id, &element);
    }
  }

  template <class T>
  const Json* operator()(const T& thing, std::size_t i) const {
    const Json* here = elementOf(m_list, i);
    if constexpr (kHasId<T>) {
      const std::string* id = idIn(here);
      if (id != nullptr && *id == thing.id) return here;
      const auto found = m_by_id.find(thing.id);
      return found == m_by_id.end() ? nullptr : found->second;
    } else {
      return here;
    }
  }

 private:
  const Json* m_list;
  std::unordered_map<std::string, const Json*> m_by_id;
};

template <class T>
Json written(const std::vector<T>& now, const Json* before) {
  const Matcher sourceOf(before);
  Json list = Json::array();
  for (std::size_t i = 0; i < now.size(); ++i) {
    list.push_back(written(now[i], sourceOf(now[i], i)));
  }
  return list;
}

/// One known key of an object: its new value, or nothing where the key is to go.
struct Member {
  std::string_view key;
  std::optional<Json> value;
};

template <class T>
bool isAbsent(const T&) {
  return false;
}
template <class T>
bool isAbsent(const std::optional<T>& value) {
  return !value.has_value();
}
template <class T>
const T& bare(const T& value) {
  return value;
}
template <class T>
const T& bare(const std::optional<T>& value) {
  return *value;  // asked only of what is not isAbsent()
}

template <class T>
void addMembers(const T& now, const T& standard, const Json* before, std::vector<Member>& members) {
  forEachField<T>(
      [&](const auto& field) {
        const auto& value = now.*field.member;
        const Json* source = nullptr;
        if (before != nullptr) {
          const auto it = before->find(field.key);
          if (it != before->end()) source = &*it;
        }
        const bool wanted =
            field.required || source != nullptr || !(value == standard.*field.member);
        Member member{field.key, std::nullopt};
        if (wanted && !isAbsent(value)) member.value = written(bare(value), source);
        members.push_back(std::move(member));
      },
      [&](const auto& inner) {
        addMembers(now.*inner.member, standard.*inner.member, before, members);
      });
}

/// The members laid over the source: its keys in their order, then the new ones in theirs.
Json laidOver(const Json* before, std::vector<Member> members);

template <class T>
requires kDescribed<T> Json written(const T& now, const Json* before) {
  if (before != nullptr && !before->is_object()) before = nullptr;
  std::vector<Member> members;
  addMembers(now, T{}, before, members);
  return laidOver(before, std::move(members));
}

}  // namespace sumpwright::plan
