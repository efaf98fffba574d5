#pragma once
// Whether a value can stand in a job file, by the field lists: what an edit verb takes in must be
// written and read back the same. Internal to core/plan.

#include <array>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "plan/EditProblem.h"
#include "plan/JobFields.h"
#include "plan/JobTree.h"
#include "plan/Utf8.h"

namespace sumpwright::plan {

/// Finds the first part that does not fit.
class FileFit {
 public:
  template <class T>
  std::optional<base::Problem> operator()(const T& value) {
    look(value, {});
    return m_found;
  }

 private:
  template <class T>
  requires kDescribed<T>
  void look(const T& value, Range) {
    const auto inner = [&](const auto& part) { look(value.*part.member, {}); };
    forEachField<T>([&](const auto& f) { look(value.*f.member, rangeOf(f.key)); }, inner);
  }

  void look(const std::string& text, Range) {
    if (text.size() <= kMaxTextBytes && !firstBadByte(text) && !hasControls(text)) return;
    m_found = editProblem("plan.edit.not-text");
  }

  void look(double number, Range range) {
    if (number >= range.low && number <= range.high) return;  // false for NaN
    m_found = editProblem("plan.edit.not-a-place");
  }
  void look(int number, Range range) { look(static_cast<double>(number), range); }
  void look(bool, Range) {}
  template <class E>
  requires std::is_enum_v<E>
  void look(E, Range) {}

  void look(const Point& p, Range range) {
    look(p.x, range);
    look(p.y, range);
  }
  template <class T>
  void look(const std::optional<T>& value, Range range) {
    if (value) look(*value, range);
  }
  template <class T>
  void look(const std::vector<T>& list, Range range) {
    if (list.size() > kMaxListed) m_found = editProblem("plan.edit.too-many");
    for (const T& element : list) look(element, range);
  }
  template <std::size_t N>
  void look(const std::array<Point, N>& list, Range range) {
    for (const Point& p : list) look(p, range);
  }

  std::optional<base::Problem> m_found;
};

/// Why a value cannot stand in a job file: plan.edit.not-text, plan.edit.not-a-place (a number out
/// of its range or none), plan.edit.too-many.
template <class T>
std::optional<base::Problem> unfit(const T& value) {
  return FileFit()(value);
}

}  // namespace sumpwright::plan
