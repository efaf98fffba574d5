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

TEST(Fill, OneIsNotMany) {
  const auto bends = [](std::int64_t count) {
    return fill("{count} {count?bend|bends}", Message("", {base::count("count", count)}),
                Units::metric);
  };
  EXPECT_EQ(bends(0), "0 bends");
  EXPECT_EQ(bends(1), "1 bend");
  EXPECT_EQ(bends(2), "2 bends");
}

TEST(Fill, AFigureOfTheSentencesOwnFollowsTheUnits) {
  const char* sentence = "within {=0.5 m}, {=13 mm}, {=1 Pa}, {=10 \u00B0C}";
  EXPECT_EQ(fill(sentence, Message(""), Units::metric), "within 0.5 m, 13 mm, 1 Pa, 10 \u00B0C");
  EXPECT_EQ(fill(sentence, Message(""), Units::imperial),
            "within 1' 8\", 1/2\", 0.004 in. w.c., 50 \u00B0F");
}

TEST(Fill, ASizeHasTheMillimetresItIsSoldByBesideItsInches) {
  const Message message("", {base::millimetres("size", 8.5)});
  EXPECT_EQ(fill("{size:1,sold}", message, Units::metric), "8.5 mm");
  EXPECT_EQ(fill("{size:1,sold}", message, Units::imperial), "3/8\" (8.5 mm)");
}

TEST(Fill, NoFullStopIsDoubled) {
  const Message message(
      "", {base::pressure("p", base::Pressure::ofPa(5.0)), base::text("t", "A socket.")});
  EXPECT_EQ(fill("needs {p}.", message, Units::imperial), "needs 0.020 in. w.c.");
  EXPECT_EQ(fill("{t}.", message, Units::metric), "A socket.");
  EXPECT_EQ(fill("needs {p}.", message, Units::metric), "needs 5.0 Pa.");
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
