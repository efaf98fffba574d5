#include "support/Golden.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

namespace sumpwright::support {

namespace {

std::string firstDifference(const std::string& expected, const std::string& actual) {
  std::istringstream left(expected);
  std::istringstream right(actual);
  std::string a;
  std::string b;
  for (int line = 1;; ++line) {
    const bool more_left = static_cast<bool>(std::getline(left, a));
    const bool more_right = static_cast<bool>(std::getline(right, b));
    if (!more_left && !more_right) return "only line ends differ";
    if (a != b || more_left != more_right) {
      return "line " + std::to_string(line) + "\n  expected: " + (more_left ? a : "(end)") +
             "\n  actual:   " + (more_right ? b : "(end)");
    }
  }
}

}  // namespace

void expectGolden(const std::string& file, std::string_view actual) {
  const std::string path = std::string(SUMPWRIGHT_TESTS_DIR) + "/" + file;
  if (std::getenv("SUMPWRIGHT_RENEW_GOLDEN") != nullptr) {
    std::ofstream(path, std::ios::binary) << actual;
    return;
  }
  std::ifstream in(path, std::ios::binary);
  ASSERT_TRUE(in) << file << " is missing: run once with SUMPWRIGHT_RENEW_GOLDEN=1 and read it";
  std::ostringstream expected;
  expected << in.rdbuf();
  const std::string text(actual);
  EXPECT_TRUE(expected.str() == text) << file << ": " << firstDifference(expected.str(), text);
}

}  // namespace sumpwright::support
