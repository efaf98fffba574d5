#include <gtest/gtest.h>

#include "plan/Kinds.h"
#include "words/Words.h"

namespace sumpwright::words {
namespace {

using base::Message;

TEST(Say, AnIdWithoutASentenceIsShownInBrackets) {
  EXPECT_EQ(say(Message("nobody.wrote-this"), Units::metric), "[nobody.wrote-this]");
  EXPECT_FALSE(hasSentence("nobody.wrote-this"));
}

TEST(Say, NoMessageSaysNothing) { EXPECT_EQ(say(Message(), Units::metric), ""); }

TEST(Say, TheUsersOwnTextIsLeftAlone) {
  EXPECT_EQ(say(base::plainText("caf\u00E9 {name} \"x\""), Units::metric),
            "caf\u00E9 {name} \"x\"");
}

TEST(Fill, ArgumentsOfEveryKindAndFormat) {
  const Message message("", {base::text("word", "abc"), base::count("count", 3),
                             base::phrase("thing", base::plainText("the back door")),
                             base::metres("distance", 1.4999), base::metres("margin", 0.5)});
  const auto filled = [&](const char* sentence) { return fill(sentence, message, Units::metric); };
  EXPECT_EQ(filled("{word} {count}."), "abc 3.");
  EXPECT_EQ(filled("{thing} {thing:cap}"), "the back door The back door");
  EXPECT_EQ(filled("{distance} {distance:down} {distance:1} {distance:bare}"),
            "1.50 m 1.49 m 1.5 m 1.50");
  EXPECT_EQ(filled("{margin:signed} {margin:signed,bare,1}"), "+0.50 m +0.5");
  EXPECT_EQ(fill("{margin:signed}", message, Units::imperial), "+1' 7 5/8\"");
}

TEST(Fill, WhatHasNoArgumentStandsAsItIs) {
  EXPECT_EQ(fill("a {b:bare} c", Message(""), Units::metric), "a {b:bare} c");
  EXPECT_EQ(fill("open { brace", Message(""), Units::metric), "open { brace");
}

TEST(Fill, BracesInAnArgumentAreNotFilledAgain) {
  const Message message("", {base::text("a", "{b}"), base::text("b", "no")});
  EXPECT_EQ(fill("{a}", message, Units::metric), "{b}");
}

TEST(Say, TakesTheUnitsOfAJob) {
  const Message message("quantity.of", {base::metres("value", 0.3048)});
  EXPECT_EQ(say(message, plan::DisplayUnits::imperial), "1' 0\"");
  EXPECT_EQ(say(message, plan::DisplayUnits::metric), "0.30 m");
}

}  // namespace
}  // namespace sumpwright::words
