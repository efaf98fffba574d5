#include <gtest/gtest.h>

#include <stdexcept>

#include "base/Contract.h"

namespace sumpwright::base {
namespace {

[[noreturn]] void throwing(const char* condition, const char* file, int line) {
  throw std::logic_error(std::string(condition) + " " + file + ":" + std::to_string(line));
}

class Contract : public ::testing::Test {
 protected:
  ContractHandler m_before = setContractHandler(throwing);
  ~Contract() override { setContractHandler(m_before); }
};

TEST_F(Contract, WhatHoldsCostsNothing) { EXPECT_NO_THROW(SUMPWRIGHT_REQUIRE(1 + 1 == 2)); }

TEST_F(Contract, WhatIsBrokenReachesTheHandlerWithItsPlace) {
  try {
    SUMPWRIGHT_REQUIRE(1 + 1 == 3);
    FAIL() << "the handler was not called";
  } catch (const std::logic_error& error) {
    const std::string what = error.what();
    EXPECT_NE(what.find("1 + 1 == 3"), std::string::npos) << what;
    EXPECT_NE(what.find("ContractTest.cpp"), std::string::npos) << what;
  }
}

TEST_F(Contract, SettingAHandlerGivesBackTheOneBefore) {
  EXPECT_EQ(setContractHandler(throwing), throwing);
}

TEST(ContractDefault, StopsTheProgramInReleaseToo) {
  EXPECT_DEATH(SUMPWRIGHT_REQUIRE(false), "broken invariant: false");
}

// A handler that returns does not let the program go on with a broken invariant.
TEST(ContractDefault, StopsThoughTheHandlerReturns) {
  EXPECT_DEATH(
      {
        setContractHandler([](const char*, const char*, int) {});
        SUMPWRIGHT_REQUIRE(false);
      },
      "");
}

}  // namespace
}  // namespace sumpwright::base
