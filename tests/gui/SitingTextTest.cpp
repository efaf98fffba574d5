// What the panel says, without a widget.

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "files/JobFile.h"
#include "files/RuleSheets.h"
#include "stages/SitingText.h"

namespace sumpwright::stages {
namespace {

Study studyOf(const char* sample) {
  auto read = files::openJob(std::string(SUMPWRIGHT_SAMPLES_DIR) + "/" + sample + ".sump.json");
  EXPECT_TRUE(read.ok());
  const auto sheet = files::sheetById(read->job.rule_sheet);
  return Study::of(read->job, sheet->sheet).value();
}

TEST(SitingText, OneLineForEveryRuleInForce) {
  const Study study = studyOf("bungalow");
  std::size_t in_force = 0;
  for (const rules::Rule& rule : study.sheet().rules) {
    const bool asked = rule.enabled && rule.severity != rules::Severity::preference;
    // Of the placed run a rule is told where it measures something.
    in_force += asked && rule.kind != rules::RuleKind::discharge ? 1U : 0U;
  }
  for (double s = 0; s < study.perimeter().length_m(0); s += 0.5) {
    const Assessment a = study.assess({0, s});
    const auto lines = ruleLines(study, a);
    std::set<std::string> objecting;
    for (const rules::Finding& f : a.findings) objecting.insert(f.rule);
    const auto of_run = static_cast<std::size_t>(
        std::count_if(objecting.begin(), objecting.end(), [&](const std::string& id) {
          const rules::Rule* rule = study.sheet().find(id);
          return rule != nullptr && rule->kind == rules::RuleKind::discharge;
        }));
    EXPECT_EQ(lines.size(), in_force + of_run);
    for (const RuleLine& line : lines) {
      EXPECT_EQ(line.state != rules::State::clear, objecting.contains(line.rule))
          << line.rule << " at " << s;
      EXPECT_FALSE(line.second.isEmpty()) << line.rule;
    }
  }
}

TEST(SitingText, TheWordIsNotSaidTwice) {
  const Study study = studyOf("bungalow");
  for (double s = 0; s < study.perimeter().length_m(0); s += 0.25) {
    const Assessment a = study.assess({0, s});
    const QString body = verdictBody(study, a);
    EXPECT_FALSE(body.isEmpty());
    EXPECT_FALSE(body.startsWith(stateWord(a.state))) << body.toStdString();
    EXPECT_TRUE(body[0].isUpper() || body[0].isDigit()) << body.toStdString();
  }
}

TEST(SitingText, MoveSaysHowFarAndWhichWay) {
  const Study study = studyOf("bungalow");
  const auto& edge = study.perimeter().edges(0)[0];
  const QString text = moveText(study, {0, edge.start_m + 1.0}, {0, edge.start_m + 1.5});
  EXPECT_TRUE(text.contains(QStringLiteral("0.50 m"))) << text.toStdString();
  const QString round = moveText(study, {0, edge.end_m() - 0.5}, {0, edge.end_m() + 0.5});
  EXPECT_TRUE(round.contains(QStringLiteral("right"))) << round.toStdString();
  const QString back = moveText(study, {0, 0.5}, {0, study.perimeter().length_m(0) - 0.5});
  EXPECT_TRUE(back.contains(QStringLiteral("1.00 m to the left"))) << back.toStdString();
}

TEST(SitingText, SettingOutNamesTwoFeatures) {
  const Study study = studyOf("bungalow");
  const QString text = tieText(study, {0, 2.0});
  EXPECT_TRUE(text.startsWith(QStringLiteral("Set out"))) << text.toStdString();
  EXPECT_GE(text.count(QStringLiteral(" from ")), 2) << text.toStdString();
}

TEST(SitingText, NeverWithinIsNotWaivable) {
  rules::Finding finding;
  finding.waivable = {true, plan::Evidence::locating_record, 0.5};
  finding.distance_m = 0.5;
  EXPECT_FALSE(mayWaive(finding)) << "0.50 m or less: never";
  finding.distance_m = 0.51;
  EXPECT_TRUE(mayWaive(finding));
  finding.weight = rules::Weight::unknown;
  EXPECT_FALSE(mayWaive(finding)) << "what was not located cannot be waived";
}

}  // namespace
}  // namespace sumpwright::stages
