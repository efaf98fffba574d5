#include "siting/DesignCheck.h"

#include <algorithm>

#include "plan/Blank.h"
#include "plan/DesignEdits.h"
#include "plan/KindNames.h"
#include "plan/PlanGeometry.h"
#include "siting/Study.h"

namespace sumpwright::siting {

namespace {

using base::Problem;
using rules::Rule;
using rules::RuleSheet;

constexpr double kSmallestCore_m = 0.04;  // own figures: a drill that exists, and no more than the
constexpr double kLargestCore_m = 0.30;   // corner distance
constexpr double kRounding_m = 1e-9;      // own figure: millimetres turned into metres

/// One waiver, its place in the file, and what it is judged by.
struct Checked {
  const plan::Job& job;
  const RuleSheet& sheet;
  const Study* study;  ///< null where the plan cannot be studied
  const plan::Waiver& waiver;
  std::string pointer;

  Problem problem(const char* id, const char* key, std::vector<base::Arg> args = {}) const {
    args.insert(args.begin(), base::text("waiver", waiver.id));
    return {base::Message(id, std::move(args)), pointer + "/" + key, base::Gravity::missing};
  }
};

/// What the sheet says of the rule that is waived.
std::optional<Problem> ruleProblem(const Checked& c) {
  const base::Arg name = base::text("rule", c.waiver.rule);
  const Rule* rule = c.sheet.find(c.waiver.rule);
  if (rule == nullptr) {
    return c.problem("waiver.unknown-rule", "rule", {name, base::text("sheet", c.sheet.id)});
  }
  if (!rule->enabled || rule->severity != rules::Severity::binding) {
    return c.problem("waiver.not-binding", "rule", {name});
  }
  if (!rule->waiver.allowed) return c.problem("waiver.not-waivable", "rule", {name});
  if (rule->waiver.evidence == c.waiver.evidence) return std::nullopt;
  return c.problem("waiver.evidence", "evidence",
                   {name, base::text("wanted", std::string(plan::nameOf(rule->waiver.evidence))),
                    base::text("given", std::string(plan::nameOf(c.waiver.evidence)))});
}

/// Empty texts are unsound already; these only look filled in.
std::optional<Problem> blankProblem(const Checked& c) {
  if (plan::isBlank(c.waiver.reason)) {
    return c.problem("waiver.blank", "reason", {base::text("key", "reason")});
  }
  if (plan::isBlank(c.waiver.name)) {
    return c.problem("waiver.blank", "name", {base::text("key", "name")});
  }
  return std::nullopt;
}

std::optional<Problem> placeProblem(const Checked& c, const plan::Sump& sump) {
  const auto& rings = c.job.plan.rings;
  const auto ring = static_cast<std::size_t>(c.waiver.ring);
  const double length = ring < rings.size() ? plan::ringLength_m(rings[ring]) : 0.0;
  if (sump.kind == plan::SumpKind::cored &&
      plan::waiverHolds(c.waiver, sump.ring, sump.chainage_m, length)) {
    return std::nullopt;
  }
  return c.problem("waiver.left-behind", c.waiver.lapsed ? "lapsed" : "chainage_m",
                   {base::text("sump", sump.id), base::count("ring", c.waiver.ring),
                    base::metres("chainage", c.waiver.chainage_m)});
}

/// What the rules find at the sump.
std::optional<Problem> findingProblem(const Checked& c, const plan::Sump& sump) {
  const Assessment at = c.study->assess({sump.ring, sump.chainage_m}, sump.id);
  const auto found = std::find_if(at.findings.begin(), at.findings.end(), [&](const Finding& f) {
    return f.rule == c.waiver.rule && f.thing == c.waiver.thing &&
           f.weight == rules::Weight::binding;
  });
  if (found == at.findings.end()) {
    return c.problem("waiver.nothing-refused", "thing",
                     {base::text("rule", c.waiver.rule), base::text("thing", c.waiver.thing)});
  }
  if (found->waivable.allowed) return std::nullopt;
  const base::Arg thing = base::phrase("thing", found->thing_label);
  const std::optional<double> floor = found->waivable.not_within_m;
  const std::optional<double> distance = found->distance_m;
  if (floor && distance && *distance <= *floor) {
    return c.problem("waiver.too-near", "thing", {thing, base::metres("least", *floor)});
  }
  return c.problem("waiver.not-located", "thing", {thing});
}

/// Why the waiver accepts nothing, if so.
std::optional<Problem> waiverProblem(const Checked& c) {
  if (auto bad = ruleProblem(c)) return bad;
  if (auto bad = blankProblem(c)) return bad;
  const auto& sumps = c.job.design.sumps;
  const auto sump = std::find_if(sumps.begin(), sumps.end(),
                                 [&](const plan::Sump& s) { return s.id == c.waiver.sump; });
  if (sump == sumps.end()) return std::nullopt;  // unsound already
  if (auto bad = placeProblem(c, *sump)) return bad;
  return c.study == nullptr ? std::nullopt : findingProblem(c, *sump);
}

}  // namespace

base::Problems checkDesign(const plan::Job& job, const RuleSheet& sheet) {
  base::Problems problems;
  const double core_mm = job.design.core_mm.value_or(sheet.default_core_mm.value);
  if (auto bad = sizeProblem(job, sheet, core_mm / 1000.0)) problems.push_back(std::move(*bad));
  const auto& waivers = job.design.waivers;
  if (waivers.empty()) return problems;
  const base::Result<Study> study = Study::of(job, sheet);
  for (std::size_t i = 0; i < waivers.size(); ++i) {
    const Checked checked{job, sheet, study.ok() ? &*study : nullptr, waivers[i],
                          "/design/waivers/" + std::to_string(i)};
    if (auto bad = waiverProblem(checked)) problems.push_back(std::move(*bad));
  }
  return problems;
}

std::optional<Problem> waiverProblem(const Study& study, const plan::Waiver& waiver) {
  return waiverProblem(Checked{study.job(), study.sheet(), &study, waiver, "/design/waivers"});
}

std::optional<Problem> sizeProblem(const plan::Job& job, const RuleSheet& sheet, double core_m) {
  const base::Arg core = base::millimetres("core", core_m * 1000.0);
  if (!(core_m >= kSmallestCore_m && core_m <= kLargestCore_m)) {
    return Problem{base::Message("study.core-size", {core}), "/design/core_mm"};
  }
  const double pipe_mm = job.design.pipe_od_mm.value_or(sheet.default_pipe_od_mm.value);
  if (pipe_mm / 1000.0 <= core_m + kRounding_m) return std::nullopt;
  return Problem{base::Message("study.pipe-size", {base::millimetres("pipe", pipe_mm), core}),
                 "/design/pipe_od_mm"};
}

}  // namespace sumpwright::siting
