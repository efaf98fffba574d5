#pragma once
// A value, or the problems that kept it from being made.

#include <utility>
#include <variant>

#include "base/Contract.h"
#include "base/Problem.h"

namespace sumpwright::base {

template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : m_state(std::move(value)) {}              // NOLINT(google-explicit-constructor)
  Result(Problems problems) : m_state(std::move(problems)) {  // NOLINT(google-explicit-constructor)
    SUMPWRIGHT_REQUIRE(!std::get<Problems>(m_state).empty());
  }
  Result(Problem problem)
      : m_state(Problems{std::move(problem)}) {}  // NOLINT(google-explicit-constructor)

  bool ok() const { return std::holds_alternative<T>(m_state); }
  explicit operator bool() const { return ok(); }

  /// The value; asking for it when !ok() is a broken invariant.
  const T& value() const& {
    SUMPWRIGHT_REQUIRE(ok());
    return std::get<T>(m_state);
  }
  T&& value() && {
    SUMPWRIGHT_REQUIRE(ok());
    return std::get<T>(std::move(m_state));
  }
  const T& operator*() const& { return value(); }
  const T* operator->() const { return &value(); }

  /// The problems; empty when ok().
  Problems problems() const { return ok() ? Problems{} : std::get<Problems>(m_state); }

 private:
  std::variant<T, Problems> m_state;
};

}  // namespace sumpwright::base
