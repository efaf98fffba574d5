// Designs that do not go with their rule sheet: sizes, and waivers that accept nothing.
#include "core/siting/Studied.h"
#include "siting/DesignCheck.h"

namespace sumpwright::siting {

namespace {

using plan::Evidence;
using plan::ServiceKind;
using support::PlanBuilder;

/// Corner B of the rectangle is refused at chainage 10.2; a waiver for it acts.
plan::Waiver good() {
  plan::Waiver w;
  w.id = "wv";
  w.sump = "s1";
  w.rule = "corners";
  w.thing = "corner.B";
  w.chainage_m = 10.2;
  w.reason = "seen on site";
  w.name = "A. Tester (invented)";
  w.date = "2026-03-02";
  return w;
}

std::string listed(const base::Problems& problems) {
  std::string text;
  for (const base::Problem& p : problems) {
    EXPECT_EQ(p.gravity, p.message.id.starts_with("waiver.") ? base::Gravity::missing
                                                             : base::Gravity::unsound);
    text += (text.empty() ? "" : "; ") + p.message.id + " " + p.pointer;
  }
  return text;
}

std::string checked(const plan::Job& job) {
  return listed(checkDesign(job, support::builtInSheet("ie-practice")));
}

std::string checkedWith(const std::function<void(plan::Waiver&)>& change) {
  plan::Waiver w = good();
  change(w);
  return checked(PlanBuilder::rectangle().sump("s1", 0, 10.2).waiver(w));
}

TEST(DesignCheck, AWaiverThatActsIsNoProblem) {
  EXPECT_EQ(checkedWith([](plan::Waiver&) {}), "");
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.chainage_m = 10.209; }), "");
}

TEST(DesignCheck, RuleThatIsNotInTheSheetOrRefusesNothing) {
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.rule = "cornres"; }),
            "waiver.unknown-rule /design/waivers/0/rule");
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.rule = "front"; }),
            "waiver.not-binding /design/waivers/0/rule");
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.rule = "party-wall"; }),
            "waiver.not-waivable /design/waivers/0/rule");
}

TEST(DesignCheck, EvidenceTheSheetDoesNotAskFor) {
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.evidence = Evidence::consent; }),
            "waiver.evidence /design/waivers/0/evidence");
}

TEST(DesignCheck, BlankTexts) {
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.reason = " \t "; }),
            "waiver.blank /design/waivers/0/reason");
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.name = "\n"; }),
            "waiver.blank /design/waivers/0/name");
}

TEST(DesignCheck, WaiverThatItsSumpHasLeft) {
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.chainage_m = 10.22; }),
            "waiver.left-behind /design/waivers/0/chainage_m");
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.lapsed = true; }),
            "waiver.left-behind /design/waivers/0/lapsed");
}

TEST(DesignCheck, NothingThereToAccept) {
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.thing = "corner.C"; }),
            "waiver.nothing-refused /design/waivers/0/thing");
  EXPECT_EQ(checkedWith([](plan::Waiver& w) { w.thing = ""; }),
            "waiver.nothing-refused /design/waivers/0/thing");
}

/// Gas at chainage 14, the hole's edge at so many metres from it.
std::string gas(double distance, const std::string& record) {
  plan::Waiver w = good();
  w.rule = "services";
  w.thing = "g";
  w.evidence = Evidence::locating_record;
  w.chainage_m = 14.0 + distance + 0.0635;
  return checked(PlanBuilder::rectangle()
                     .service("g", ServiceKind::gas, 1, 4.0)
                     .with([&](plan::Job& job) {
                       job.plan.services[0].located = true;
                       job.plan.services[0].locating_record = record;
                     })
                     .sump("s1", 0, w.chainage_m)
                     .waiver(w));
}

TEST(DesignCheck, ServicesTooNearOrNotOnRecord) {
  EXPECT_EQ(gas(0.7, "scan of 2 March (invented)"), "");
  EXPECT_EQ(gas(0.4, "scan of 2 March (invented)"), "waiver.too-near /design/waivers/0/thing");
  EXPECT_EQ(gas(0.7, ""), "waiver.not-located /design/waivers/0/thing");
  EXPECT_EQ(gas(0.7, " "), "waiver.not-located /design/waivers/0/thing");
}

TEST(DesignCheck, EachWaiverForItself) {
  plan::Waiver second = good();
  second.id = "wv2";
  second.rule = "cornres";
  EXPECT_EQ(checked(PlanBuilder::rectangle().sump("s1", 0, 10.2).waiver(good()).waiver(second)),
            "waiver.unknown-rule /design/waivers/1/rule");
}

TEST(DesignCheck, APlanThatIsNotClosedIsCheckedAsFarAsItGoes) {
  plan::Waiver wrong = good();
  wrong.evidence = Evidence::consent;
  const auto open = [](plan::Job& job) {
    job.plan.rings[0].closed = false;
    job.plan.rings[0].walls.pop_back();
  };
  const auto builder = PlanBuilder::rectangle().sump("s1", 0, 10.2);
  EXPECT_EQ(checked(PlanBuilder(builder).waiver(wrong).with(open)),
            "waiver.evidence /design/waivers/0/evidence");
  EXPECT_EQ(checked(PlanBuilder(builder).waiver(good()).with(open)), "");
}

// ---- sizes ----

rules::RuleSheet sized(double core_mm, double pipe_mm) {
  rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  sheet.default_core_mm.value = core_mm;
  sheet.default_pipe_od_mm.value = pipe_mm;
  return sheet;
}

TEST(DesignCheck, SizesNobodyStatedAreTheSheets) {
  const plan::Job job = PlanBuilder::rectangle();
  EXPECT_EQ(listed(checkDesign(job, sized(127, 110))), "");
  EXPECT_EQ(listed(checkDesign(job, sized(127, 127))), "");
  EXPECT_EQ(listed(checkDesign(job, sized(127, 160))), "study.pipe-size /design/pipe_od_mm");
  EXPECT_EQ(listed(checkDesign(job, sized(400, 160))), "study.core-size /design/core_mm");
  const Study study = studied(job, sized(152, 125));
  EXPECT_EQ(study.site().core_m, 0.152);
  EXPECT_EQ(study.site().pipe_od_m, 0.125);
}

TEST(DesignCheck, AStatedSizeIsHeldAgainstTheSheetsOther) {
  const auto with = [](std::optional<double> core, std::optional<double> pipe) {
    return PlanBuilder::rectangle()
        .with([&](plan::Job& job) {
          job.design.core_mm = core;
          job.design.pipe_od_mm = pipe;
        })
        .job();
  };
  EXPECT_EQ(listed(checkDesign(with(100, {}), sized(127, 110))),
            "study.pipe-size /design/pipe_od_mm");
  EXPECT_EQ(listed(checkDesign(with({}, 160), sized(127, 110))),
            "study.pipe-size /design/pipe_od_mm");
  EXPECT_EQ(listed(checkDesign(with(180, 160), sized(127, 110))), "");
}

TEST(DesignCheck, StudyDeclinesAPipeThatDoesNotFit) {
  const auto bad = Study::of(PlanBuilder::rectangle(), sized(127, 160));
  ASSERT_FALSE(bad.ok());
  EXPECT_EQ(listed(bad.problems()), "study.pipe-size /design/pipe_od_mm");
  StudyOptions narrow;
  narrow.core_m = 0.1;
  EXPECT_FALSE(Study::of(PlanBuilder::rectangle(), sized(127, 110), narrow).ok());
  narrow.core_m = 0.112;
  EXPECT_TRUE(Study::of(PlanBuilder::rectangle(), sized(127, 110), narrow).ok());
}

}  // namespace

}  // namespace sumpwright::siting
