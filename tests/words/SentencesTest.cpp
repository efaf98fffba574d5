#include <gtest/gtest.h>

#include <regex>
#include <set>
#include <string>
#include <vector>

#include "words/Sentences.h"

namespace sumpwright::words {
namespace {

std::vector<Sentence> all() {
  std::vector<Sentence> out;
  for (const auto table :
       {planSentences(), ruleSentences(), sheetSentences(), paperSentences(), fileSentences(),
        cliSentences(), surveySentences(), suctionSentences(), airSentences(), sectionSentences(),
        cableSentences(), papersSentences(), priceSentences()}) {
    out.insert(out.end(), table.begin(), table.end());
  }
  return out;
}

TEST(Sentences, EveryIdStandsOnce) {
  std::set<std::string_view> seen;
  for (const Sentence& sentence : all()) {
    EXPECT_TRUE(seen.insert(sentence.id).second) << sentence.id << " stands twice";
  }
}

TEST(Sentences, IdsAreLowerCaseAndDottedByTheme) {
  const std::regex form("[a-z]+(\\.[a-z0-9_-]+)+");
  for (const Sentence& sentence : all()) {
    EXPECT_TRUE(std::regex_match(std::string(sentence.id), form)) << sentence.id;
  }
}

// A brace that is not closed, or a format nobody knows, would reach the user as it stands.
TEST(Sentences, BracesHoldANameAndKnownFormats) {
  const std::regex argument(
      "\\{[a-z_]+(:(signed|bare|down|cap|sold|[0-9])(,(signed|bare|down|cap|sold|[0-9]))*)?\\}"
      "|\\{[a-z_]+\\?[^{}|]+\\|[^{}|]+\\}|\\{=[0-9.]+ (m|mm|m\u00B3/h|Pa|\u00B0C)\\}");
  for (const Sentence& sentence : all()) {
    const std::string rest = std::regex_replace(std::string(sentence.english), argument, "");
    EXPECT_EQ(rest.find_first_of("{}"), std::string::npos)
        << sentence.id << ": " << sentence.english;
  }
}

TEST(Sentences, NoneIsEmptyOrHasLooseSpaces) {
  for (const Sentence& sentence : all()) {
    const std::string text = sentence.english;
    ASSERT_FALSE(text.empty()) << sentence.id;
    EXPECT_NE(text.front(), ' ') << sentence.id;
    EXPECT_NE(text.back(), ' ') << sentence.id;
    EXPECT_EQ(text.find("  "), std::string::npos) << sentence.id;
  }
}

}  // namespace
}  // namespace sumpwright::words
