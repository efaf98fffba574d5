// Job files spoilt at random go through the reader, the check and the writer: no crash, and either
// a job or the reasons why not. SUMPWRIGHT_MUTATIONS: how many (20,000); SUMPWRIGHT_MUTATION_FIRST:
// number of the first, to repeat a failure or to share a large run over machines.

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

#include "fuzz/Mutator.h"
#include "plan/JobText.h"

namespace sumpwright::fuzz {
namespace {

std::uint64_t fromEnvironment(const char* name, std::uint64_t otherwise) {
  const char* value = std::getenv(name);
  return value == nullptr ? otherwise : std::strtoull(value, nullptr, 10);
}

std::vector<std::string> seedTexts() {
  std::vector<std::filesystem::path> paths;
  for (const char* folder : {SUMPWRIGHT_TESTS_DIR "/core/plan", SUMPWRIGHT_SAMPLES_DIR}) {
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
      if (entry.path().string().ends_with(".sump.json")) paths.push_back(entry.path());
    }
  }
  std::sort(paths.begin(), paths.end());
  std::vector<std::string> texts;
  for (const auto& path : paths) {
    std::stringstream text;
    text << std::ifstream(path).rdbuf();
    // Small files more often, so that more are read in the same time.
    const int often = text.str().size() < 10'000 ? 20 : 1;
    for (int i = 0; i < often; ++i) texts.push_back(text.str());
  }
  return texts;
}

void expectNamed(const base::Problems& problems, bool unreadable) {
  for (const base::Problem& p : problems) {
    ASSERT_FALSE(p.message.id.empty());
    ASSERT_EQ(p.gravity == base::Gravity::unreadable, unreadable) << p.message.id;
    ASSERT_TRUE(p.pointer.empty() || p.pointer.front() == '/') << p.pointer;
  }
}

struct Tally {
  std::uint64_t unreadable = 0;
  std::uint64_t unsound = 0;
  std::uint64_t sound = 0;
};

void readOne(const std::string& text, Tally& tally) {
  const auto read = plan::readJob(text);
  if (!read.ok()) {
    ++tally.unreadable;
    ASSERT_FALSE(read.problems().empty());
    expectNamed(read.problems(), true);
    return;
  }
  ++(base::any(read->problems, base::Gravity::unsound) ? tally.unsound : tally.sound);
  expectNamed(read->problems, false);
  const std::string written = plan::writeJob(read->job, read->source);
  const auto again = plan::readJob(written);
  ASSERT_TRUE(again.ok()) << again.problems()[0].message.id << again.problems()[0].pointer;
  ASSERT_TRUE(again->job == read->job);
  ASSERT_EQ(again->problems, read->problems);
  ASSERT_EQ(plan::writeJob(again->job, again->source), written);
}

TEST(JobMutation, SpoiltFilesAreReadOrRefusedNeverCrash) {
  const Mutator mutator(seedTexts());
  const std::uint64_t first = fromEnvironment("SUMPWRIGHT_MUTATION_FIRST", 1);
  const std::uint64_t count = fromEnvironment("SUMPWRIGHT_MUTATIONS", 20'000);
  Tally tally;
  for (std::uint64_t n = first; n < first + count; ++n) {
    SCOPED_TRACE("SUMPWRIGHT_MUTATION_FIRST=" + std::to_string(n) + " SUMPWRIGHT_MUTATIONS=1");
    ASSERT_NO_FATAL_FAILURE(readOne(mutator.file(n), tally));
  }
  std::cout << "mutated files read: " << count << " (unreadable " << tally.unreadable
            << ", unsound " << tally.unsound << ", sound " << tally.sound << ")\n";
  // A mutator that only makes rubbish, or only harmless files, would show nothing.
  if (count >= 1000) {
    EXPECT_GT(tally.unreadable, count / 20);
    EXPECT_GT(tally.unsound, count / 20);
    EXPECT_GT(tally.sound, count / 100);
  }
}

}  // namespace
}  // namespace sumpwright::fuzz
