#include "plan/ProblemList.h"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <numeric>

#include "base/Pointer.h"

namespace sumpwright::plan {

void ProblemList::add(base::Gravity gravity, std::string id, std::string pointer,
                      std::vector<base::Arg> args) {
  if (full()) {
    ++m_left_out;
    m_worst_left_out = std::min(m_worst_left_out.value_or(gravity), gravity);
    return;
  }
  m_problems.push_back(
      {base::Message(std::move(id), std::move(args)), std::move(pointer), gravity});
}

void ProblemList::add(const base::Problems& problems) {
  for (const base::Problem& p : problems) add(p.gravity, p.message.id, p.pointer, p.message.args);
}

base::Problems ProblemList::take() {
  if (m_worst_left_out) {
    m_problems.push_back(
        {base::Message("job.more", {base::count("count", static_cast<std::int64_t>(m_left_out))}),
         "", *m_worst_left_out});
  }
  m_left_out = 0;
  m_worst_left_out.reset();
  return std::exchange(m_problems, {});
}

void ProblemList::sortByPlace(base::Problems& problems,
                              std::vector<std::vector<std::size_t>> places) {
  std::vector<std::size_t> order(problems.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return places[a] < places[b]; });
  base::Problems sorted;
  sorted.reserve(problems.size());
  for (const std::size_t i : order) sorted.push_back(std::move(problems[i]));
  problems = std::move(sorted);
}

std::string at(const std::string& pointer, std::size_t index) {
  return pointer + "/" + std::to_string(index);
}

std::string at(const std::string& pointer, std::string_view key) {
  return pointer + "/" + base::pointerStep(key);
}

std::vector<std::string> tokensOf(const std::string& pointer) {
  std::vector<std::string> tokens;
  for (std::size_t i = 0; i < pointer.size(); ++i) {
    if (pointer[i] == '/') {
      tokens.emplace_back();
    } else if (pointer[i] == '~' && i + 1 < pointer.size()) {
      tokens.back() += pointer[++i] == '0' ? '~' : '/';
    } else if (!tokens.empty()) {
      tokens.back() += pointer[i];
    }
  }
  return tokens;
}

std::size_t indexOf(const std::string& token, std::size_t none) {
  std::size_t index = none;
  const char* end = token.data() + token.size();
  const auto [stop, error] = std::from_chars(token.data(), end, index);
  return error == std::errc() && stop == end ? index : none;
}

}  // namespace sumpwright::plan
