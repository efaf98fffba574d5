#pragma once
// One rule of the Irish sheet asked about one house. Core 127 mm: half 0.0635 m; pipe 110 mm: half
// 0.055 m.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "rules/Judge.h"
#include "support/PlanBuilder.h"
#include "support/RandomPlan.h"

namespace sumpwright::rules {

inline constexpr double kMicrometre = 1e-6;
inline constexpr double kHalfCore_m = 0.0635;
inline constexpr double kHalfPipe_m = 0.055;

inline const RuleJudge& judge(RuleKind kind) {
  for (const RuleJudge* j : {&kClearance, &kAlongWall, &kDrillLine, &kWallRule, &kRoomBehind,
                             &kFittingBehind, &kFloorBehind}) {
    if (j->kind == kind) return *j;
  }
  ADD_FAILURE() << "no judge";
  return kClearance;
}

class Judged {
 public:
  Judged(const plan::Job& job, const std::string& rule,
         const std::function<void(Rule&)>& change = {}) {
    RuleSheet sheet = support::builtInSheet("ie-practice");
    for (Rule& r : sheet.rules) {
      if (r.id == rule && change) change(r);
    }
    m_site = makeSite(perimeter::Perimeter::of(job).value(), job, sheet, job.design.outlet,
                      job.design.core_mm.value_or(sheet.default_core_mm.value) / 1000.0);
    m_rule = m_site.sheet.find(rule);
    judge(m_rule->kind).spans(*m_rule, m_site, spans);
    std::stable_sort(spans.begin(), spans.end(), [](const FindingSpan& a, const FindingSpan& b) {
      return a.ring != b.ring ? a.ring < b.ring : a.from_m < b.from_m;
    });
  }

  const Rule& rule() const { return *m_rule; }
  const Site& site() const { return m_site; }
  std::optional<Nearest> nearest(int ring, double s) const {
    return judge(m_rule->kind).nearest(*m_rule, m_site, {ring, s});
  }
  /// Least distance over a span, as findings show it.
  std::optional<double> least(const FindingSpan& span) const {
    return judge(m_rule->kind)
        .least(*m_rule, m_site, m_site.things[static_cast<std::size_t>(span.thing_index)],
               span.ring, span.from_m, span.to_m);
  }

  std::vector<FindingSpan> spans;  ///< in order of ring and chainage

 private:
  Site m_site;
  const Rule* m_rule = nullptr;
};

inline void expectSpan(const FindingSpan& span, double from, double to, bool from_in = false) {
  EXPECT_NEAR(span.from_m, from, kMicrometre);
  EXPECT_NEAR(span.to_m, to, kMicrometre);
  EXPECT_EQ(span.from_in, from_in);
}

/// All of a ring, unknown.
inline void expectUnknownAllRound(const FindingSpan& span, double length,
                                  const std::string& reason) {
  expectSpan(span, 0.0, length, true);
  EXPECT_EQ(span.finding.weight, Weight::unknown);
  EXPECT_EQ(span.finding.reason.id, reason);
  EXPECT_FALSE(span.finding.waivable.allowed);
}

}  // namespace sumpwright::rules
