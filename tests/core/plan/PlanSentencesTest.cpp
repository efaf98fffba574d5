// Every problem a job can have is thrown by a case, and its sentence finds all it speaks of.

#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "core/plan/JobCases.h"
#include "plan/DesignEdits.h"
#include "plan/JobText.h"
#include "plan/OutlineEdits.h"
#include "plan/PlanCheck.h"
#include "words/Sentences.h"
#include "words/Words.h"

namespace sumpwright::plan {
namespace {

base::Problems allProblems() {
  base::Problems all;
  const auto add = [&](const base::Problems& more) {
    all.insert(all.end(), more.begin(), more.end());
  };
  for (const ReadCase& c : unreadableCases()) add(readJob(c.text).problems());
  for (const ReadCase& c : notedCases()) add(readJob(c.text)->problems);
  for (const CheckCase& c : checkCases()) add(checkJob(c.job));
  std::string keys;
  for (int i = 0; i < 1100; ++i) keys += ",\"k" + std::to_string(i) + "\":0";
  add(readJob(jobText(keys))->problems);
  Job job = support::PlanBuilder::rectangle().sump("s", 0, 1);
  add(removeSump(job, "x").problems());
  add(withdrawWaiver(job, "x").problems());
  job.design.sumps[0].kind = SumpKind::standby;
  add(moveSump(job, "s", 0, 1).problems());
  const Job house = support::PlanBuilder::rectangle().window("w", 0, 2.0, 2.0);
  add(moveCorner(house, 0, 9, {0, 0}).problems());
  add(moveWall(house, 0, 9, 1.0).problems());
  add(moveWall(house, 0, 0, 1e9).problems());
  add(splitWall(house, 0, 0, 3.0).problems());
  add(removeCorner(support::PlanBuilder::outline({{0, 0}, {9, 0}, {0, 9}}), 0, 0).problems());
  return all;
}

TEST(PlanSentences, EveryProblemIsSaidInFull) {
  const std::regex unfilled("\\{[a-z_]+[:}]");
  for (const base::Problem& p : allProblems()) {
    ASSERT_TRUE(words::hasSentence(p.message.id)) << p.message.id;
    const std::string said = words::say(p.message, words::Units::metric);
    EXPECT_FALSE(std::regex_search(said, unfilled)) << said;
    EXPECT_TRUE(said.ends_with('.')) << said;
  }
}

TEST(PlanSentences, EverySentenceOfAProblemHasACase) {
  std::set<std::string> thrown;
  for (const base::Problem& p : allProblems()) {
    thrown.insert(p.message.id);
    for (const base::Arg& arg : p.message.args) {
      if (const auto* phrase = std::get_if<base::Message>(&arg.value)) thrown.insert(phrase->id);
    }
  }
  for (const words::Sentence& s : words::planSentences()) {
    EXPECT_TRUE(thrown.contains(std::string(s.id))) << "no case for " << s.id;
  }
}

}  // namespace
}  // namespace sumpwright::plan
