#include "support/Seed.h"

#include <algorithm>
#include <cstdlib>

namespace sumpwright::support {

namespace {

constexpr std::uint64_t kUsualSeed = 20260301;

std::uint64_t fromEnvironment(const char* name, std::uint64_t otherwise) {
  const char* text = std::getenv(name);
  return text == nullptr || *text == '\0' ? otherwise : std::strtoull(text, nullptr, 10);
}

}  // namespace

std::uint64_t Random::next() {
  std::uint64_t z = (m_state += 0x9e3779b97f4a7c15ULL);
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}

double Random::uniform(double low, double high) {
  const double unit = static_cast<double>(next() >> 11) * 0x1.0p-53;
  return low + unit * (high - low);
}

int Random::between(int low, int high) {
  return low + static_cast<int>(next() % static_cast<std::uint64_t>(high - low + 1));
}

std::uint64_t baseSeed() { return fromEnvironment("SUMPWRIGHT_SEED", kUsualSeed); }

int caseCount(int usual) {
  const char* text = std::getenv("SUMPWRIGHT_CASES");
  if (text == nullptr || *text == '\0') return usual;
  char* rest = nullptr;
  const auto given = static_cast<int>(std::strtol(text, &rest, 10));
  return *rest == '%' ? std::max(1, usual * given / 100) : given;
}

}  // namespace sumpwright::support
