#include <gtest/gtest.h>

#include "base/Message.h"

namespace sumpwright::base {
namespace {

TEST(Message, FindsArgumentsByName) {
  const Message message("a.b", {metres("distance", 1.5), text("name", "x")});
  ASSERT_NE(message.find("distance"), nullptr);
  EXPECT_EQ(std::get<Quantity>(message.find("distance")->value), (Quantity{1.5, Unit::metre}));
  EXPECT_EQ(message.find("nobody"), nullptr);
}

TEST(Message, EqualByIdAndArguments) {
  const Message message("a.b", {count("n", 1)});
  EXPECT_EQ(message, Message("a.b", {count("n", 1)}));
  EXPECT_FALSE(message == Message("a.c", {count("n", 1)}));
  EXPECT_FALSE(message == Message("a.b", {count("n", 2)}));
  EXPECT_FALSE(message == Message("a.b"));
}

// Metres and millimetres of the same value are not the same thing said.
TEST(Message, TheUnitCounts) {
  EXPECT_FALSE(metres("a", 1.0) == millimetres("a", 1.0));
  EXPECT_FALSE(number("a", 1.0) == degrees("a", 1.0));
}

TEST(Message, NestsMessages) {
  const Message inner("thing.window", {text("name", "kitchen")});
  const Message outer("rule.too-near", {phrase("thing", inner)});
  EXPECT_EQ(std::get<Message>(outer.find("thing")->value), inner);
}

TEST(Message, PlainTextIsTheUsersOwn) {
  EXPECT_EQ(plainText("as typed"), Message("text", {text("text", "as typed")}));
}

}  // namespace
}  // namespace sumpwright::base
