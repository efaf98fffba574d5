#include <gtest/gtest.h>

#include <memory>
#include <string>

#include "base/Result.h"

namespace sumpwright::base {
namespace {

Problem problem(Gravity gravity) { return {Message("test.problem"), "/here", gravity}; }

TEST(Result, HoldsAValue) {
  const Result<int> result(7);
  EXPECT_TRUE(result.ok());
  EXPECT_TRUE(static_cast<bool>(result));
  EXPECT_EQ(*result, 7);
  EXPECT_TRUE(result.problems().empty());
}

TEST(Result, HoldsProblems) {
  const Result<int> one(problem(Gravity::unsound));
  EXPECT_FALSE(one.ok());
  ASSERT_EQ(one.problems().size(), 1U);
  EXPECT_EQ(one.problems().front(), problem(Gravity::unsound));
  const Result<int> two(Problems{problem(Gravity::missing), problem(Gravity::unsound)});
  EXPECT_EQ(two.problems().size(), 2U);
}

TEST(Result, GivesUpItsValue) {
  Result<std::unique_ptr<int>> result(std::make_unique<int>(3));
  const std::unique_ptr<int> taken = std::move(result).value();
  EXPECT_EQ(*taken, 3);
}

TEST(ResultDeath, AskingForAValueThatIsNotThere) {
  const Result<std::string> result(problem(Gravity::unsound));
  EXPECT_DEATH(static_cast<void>(result.value()), "broken invariant");
}

TEST(ResultDeath, ProblemsThatAreNone) {
  EXPECT_DEATH(static_cast<void>(Result<int>(Problems{})), "broken invariant");
}

TEST(Problems, AnyOfAGravity) {
  const Problems problems{problem(Gravity::missing), problem(Gravity::unsound)};
  EXPECT_TRUE(any(problems, Gravity::missing));
  EXPECT_TRUE(any(problems, Gravity::unsound));
  EXPECT_FALSE(any(problems, Gravity::unreadable));
  EXPECT_FALSE(any({}, Gravity::missing));
}

}  // namespace
}  // namespace sumpwright::base
