#pragma once
// Randomness that can be had again. A property test draws its cases from seeds base, base + 1, ...;
// the base is fixed, so that a run on one commit says the same twice, unless the environment says
// otherwise:
//
//   SUMPWRIGHT_SEED=N    start at seed N (with SUMPWRIGHT_CASES=1: the one case that failed)
//   SUMPWRIGHT_CASES=N   as many cases instead of the usual number
//   SUMPWRIGHT_CASES=N%  that share of the usual number, one at least (builds that run slowly)

#include <gtest/gtest.h>

#include <cstdint>
#include <cstdio>
#include <string>
#include <vector>

namespace sumpwright::support {

/// SplitMix64 (Steele, Lea, Flood: Fast Splittable Pseudorandom Number Generators, OOPSLA 2014,
/// figure 17). The same numbers on every platform, which std:: distributions do not promise.
class Random {
 public:
  explicit Random(std::uint64_t seed) : m_state(seed) {}
  std::uint64_t next();
  /// [low, high)
  double uniform(double low, double high);
  /// low..high, both included
  int between(int low, int high);
  bool chance(double probability) { return uniform(0.0, 1.0) < probability; }
  std::size_t index(std::size_t size) { return static_cast<std::size_t>(next() % size); }
  template <class T>
  const T& oneOf(const std::vector<T>& choices) {
    return choices[index(choices.size())];
  }

 private:
  std::uint64_t m_state;
};

std::uint64_t baseSeed();
int caseCount(int usual);

/// body(seed) for every case; stops at the first that fails and says how to run it alone.
template <class Body>
void forEachSeed(int usual, Body&& body) {
  const std::uint64_t base = baseSeed();
  const int cases = caseCount(usual);
  std::printf("[   seed   ] %llu, %d cases\n", static_cast<unsigned long long>(base), cases);
  for (int i = 0; i < cases; ++i) {
    const std::uint64_t seed = base + static_cast<std::uint64_t>(i);
    const std::string again = "SUMPWRIGHT_SEED=" + std::to_string(seed) + " SUMPWRIGHT_CASES=1";
    SCOPED_TRACE(again + " runs this case alone");
    body(seed);
    if (::testing::Test::HasFailure()) return;
  }
}

}  // namespace sumpwright::support
