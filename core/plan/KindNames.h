#pragma once
// Text forms of the closed lists in Kinds.h: exactly the names used in job files and rule sheets.

#include <optional>
#include <span>
#include <string_view>

#include "plan/Kinds.h"

namespace sumpwright::plan {

/// One table per list, in the order of the enum; `public_ground` is written "public".
template <class E>
std::span<const std::string_view> namesOf();

template <class E>
std::string_view nameOf(E value) {
  return namesOf<E>()[static_cast<std::size_t>(value)];
}

/// The value of that name, or nothing.
template <class E>
std::optional<E> valueOf(std::string_view name) {
  const auto names = namesOf<E>();
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (names[i] == name) return static_cast<E>(i);
  }
  return std::nullopt;
}

}  // namespace sumpwright::plan
