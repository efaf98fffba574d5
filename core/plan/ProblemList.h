#pragma once
// Problems as they are found, up to a limit: a hostile file must not turn into gigabytes of them.
// Internal to core/plan.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/Problem.h"

namespace sumpwright::plan {

/// Problems kept of one file; the rest are counted (own figure: more than anybody reads).
inline constexpr std::size_t kMaxProblems = 1000;

class ProblemList {
 public:
  explicit ProblemList(base::Gravity gravity) : m_gravity(gravity) {}

  void add(std::string id, std::string pointer, std::vector<base::Arg> args = {}) {
    add(m_gravity, std::move(id), std::move(pointer), std::move(args));
  }
  void add(base::Gravity gravity, std::string id, std::string pointer,
           std::vector<base::Arg> args = {});
  void add(const base::Problems& problems);

  bool empty() const { return m_problems.empty(); }
  bool full() const { return m_problems.size() >= kMaxProblems; }
  /// In the order found, or that of `placeOf` (stable); with job.more {count} where some were left
  /// out, as grave as the worst of those.
  base::Problems take();
  template <class PlaceOf>
  base::Problems takeSorted(PlaceOf&& placeOf);

 private:
  static void sortByPlace(base::Problems& problems, std::vector<std::vector<std::size_t>> places);

  base::Gravity m_gravity;
  base::Problems m_problems;
  std::size_t m_left_out = 0;
  std::optional<base::Gravity> m_worst_left_out;
};

template <class PlaceOf>
base::Problems ProblemList::takeSorted(PlaceOf&& placeOf) {
  std::vector<std::vector<std::size_t>> places;
  places.reserve(m_problems.size());
  for (const base::Problem& p : m_problems) places.push_back(placeOf(p.pointer));
  sortByPlace(m_problems, std::move(places));
  return take();
}

/// "/plan/rooms" + "/" + "3".
std::string at(const std::string& pointer, std::size_t index);
/// The same for a key, escaped (RFC 6901, section 3).
std::string at(const std::string& pointer, std::string_view key);
/// The tokens of a pointer, unescaped.
std::vector<std::string> tokensOf(const std::string& pointer);
/// The token as an array index (RFC 6901, section 4), or `none`.
std::size_t indexOf(const std::string& token, std::size_t none);

}  // namespace sumpwright::plan
