// Each sample is read, sound, written back to the byte, and shows what it was made to show.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include "plan/JobText.h"
#include "resources/BuiltIn.h"
#include "siting/Study.h"

namespace sumpwright {
namespace {

using rules::State;

const std::vector<std::string> kNames = {"bungalow",        "courtyard",   "extended-cottage",
                                         "hardly-surveyed", "mid-terrace", "nothing-clear",
                                         "semi-detached",   "standby-sump"};

std::string textOf(const std::string& name) {
  std::ifstream file(SUMPWRIGHT_SAMPLES_DIR "/" + name + ".sump.json", std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

plan::ReadJob sample(const std::string& name) {
  auto read = plan::readJob(textOf(name));
  for (const base::Problem& p : read.problems()) {
    ADD_FAILURE() << name << " " << p.message.id << " " << p.pointer;
  }
  return std::move(read).value();
}

rules::RuleSheet irishSheet() {
  return rules::readRuleSheet(resources::builtInRuleSheets()[0].text).value();
}

siting::Study studyOf(const std::string& name, plan::OutletMode outlet = plan::OutletMode::low) {
  siting::StudyOptions options;
  options.outlet = outlet;
  return siting::Study::of(sample(name).job, irishSheet(), options).value();
}

double length(const siting::Study& study, State state) {
  return study.lengths_m()[static_cast<std::size_t>(state)];
}

/// The one cored sump of a sample, judged by its own outlet mode.
siting::Assessment ownSump(const std::string& name) {
  const plan::Job job = sample(name).job;
  const auto study = siting::Study::of(job, irishSheet());
  const auto sump =
      std::find_if(job.design.sumps.begin(), job.design.sumps.end(),
                   [](const plan::Sump& s) { return s.kind == plan::SumpKind::cored; });
  return study->assess({sump->ring, sump->chainage_m}, sump->id);
}

TEST(Samples, FolderHoldsTheseAndNoOthers) {
  std::set<std::string> found;
  for (const auto& entry : std::filesystem::directory_iterator(SUMPWRIGHT_SAMPLES_DIR)) {
    if (entry.path().extension() == ".json") found.insert(entry.path().filename().string());
  }
  std::set<std::string> expected;
  for (const std::string& name : kNames) expected.insert(name + ".sump.json");
  EXPECT_EQ(found, expected);
}

TEST(Samples, AreSoundAndMarkedInvented) {
  for (const std::string& name : kNames) {
    const plan::ReadJob read = sample(name);
    for (const base::Problem& p : read.problems) {
      EXPECT_EQ(p.gravity, base::Gravity::missing) << name << " " << p.message.id << p.pointer;
    }
    EXPECT_NE(read.job.notes.find("Invented house"), std::string::npos) << name;
  }
}

TEST(Samples, AreWrittenBackToTheByte) {
  for (const std::string& name : kNames) {
    const plan::ReadJob read = sample(name);
    EXPECT_EQ(plan::writeJob(read.job, read.source), textOf(name)) << name;
  }
}

TEST(Samples, HaveAClearPlaceWherePromised) {
  for (const char* name : {"bungalow", "extended-cottage", "courtyard", "standby-sump"}) {
    const siting::Study study = studyOf(name);
    EXPECT_GT(length(study, State::clear), 1.0) << name;
    ASSERT_FALSE(study.best().empty()) << name;
    EXPECT_EQ(study.stateAt(study.best()[0].place), State::clear) << name;
    EXPECT_EQ(ownSump(name).state, State::clear) << name;
  }
}

// A low outlet would stand in a passage of 1.25 m; one over the eaves only drips on its path.
TEST(Samples, SemiDetachedHouseNeedsItsRiser) {
  const siting::Study low = studyOf("semi-detached", plan::OutletMode::low);
  EXPECT_EQ(ownSump("semi-detached").state, State::advised_against);
  EXPECT_EQ(ownSump("semi-detached").findings[0].rule, "over-path");
  EXPECT_GT(length(studyOf("semi-detached"), State::advised_against), 1.0);
  EXPECT_TRUE(low.site().run.has_value()) << "a placed outlet is judged where it is";
}

TEST(Samples, BungalowWingIsWhereTheSumpGoes) {
  const siting::Study study = studyOf("bungalow");
  const std::string wall = study.perimeter().wall(study.perimeter().edgeAt({0, 30.9})).id;
  EXPECT_EQ(wall, "wall-wing-side");
  EXPECT_GT(study.scoreAt({0, 30.9}), 80.0);
}

TEST(Samples, TerraceHasNothingForALowOutletAndSomethingToLookAtForARiser) {
  const siting::Study low = studyOf("mid-terrace");
  EXPECT_EQ(length(low, State::clear), 0.0);
  EXPECT_EQ(length(low, State::advised_against), 0.0);
  const siting::Study riser = studyOf("mid-terrace", plan::OutletMode::riser);
  EXPECT_EQ(length(riser, State::clear), 0.0);
  EXPECT_GT(length(riser, State::not_proven), 0.5);
  EXPECT_EQ(sample("mid-terrace").job.design.outlet, plan::OutletMode::riser);
  EXPECT_EQ(ownSump("mid-terrace").state, State::not_proven);
}

TEST(Samples, PartyWallsAreRefusedAlongTheirWholeLength) {
  for (const char* name : {"semi-detached", "mid-terrace"}) {
    const siting::Study study = studyOf(name);
    for (const perimeter::Edge& edge : study.perimeter().edges(0)) {
      if (study.perimeter().wall(edge).kind != plan::WallKind::party) continue;
      for (double u = 0.05; u < 1.0; u += 0.05) {
        EXPECT_EQ(study.stateAt({0, edge.start_m + u * edge.length_m}), State::refused) << name;
      }
    }
  }
}

TEST(Samples, CottageRefusesItsTimberFloor) {
  const siting::Study study = studyOf("extended-cottage");
  const auto parlour = study.assess({0, 1.0});
  EXPECT_TRUE(std::any_of(parlour.findings.begin(), parlour.findings.end(), [](const auto& f) {
    return f.rule == "floor-behind" && f.thing == "floor-parlour";
  }));
  EXPECT_EQ(study.best()[0].run.ring, 0);
  EXPECT_GT(study.best()[0].point.y, 6.3);  // on the extension's slab
}

TEST(Samples, CourtyardRingIsJudgedToo) {
  const siting::Study study = studyOf("courtyard");
  ASSERT_EQ(study.perimeter().ringCount(), 2);
  for (double s = 0.5; s < study.perimeter().length_m(1); s += 0.5) {
    const auto at = study.assess({1, s});
    EXPECT_EQ(at.state, State::refused);
    EXPECT_TRUE(std::any_of(at.findings.begin(), at.findings.end(), [](const auto& f) {
      return f.rule == "low-outlet-enclosed";
    })) << "gas of a low outlet gathers in a courtyard";
  }
}

TEST(Samples, WhereNothingIsClearTheLeastBadStandsAgainstOpeningsOnlyAndIsWaived) {
  const siting::Study study = studyOf("nothing-clear");
  EXPECT_EQ(length(study, State::refused), study.perimeter().length_m(0));
  EXPECT_TRUE(study.best().empty());
  ASSERT_TRUE(study.leastBad());
  ASSERT_TRUE(study.leastBad()->place);
  for (const rules::Finding& change : study.leastBad()->changes) EXPECT_EQ(change.rule, "openings");
  const siting::Assessment own = ownSump("nothing-clear");
  EXPECT_EQ(own.state, State::refused);
  EXPECT_TRUE(own.waived);
}

TEST(Samples, StandbySumpIsInTheHouseAndInTheDesign) {
  const plan::Job job = sample("standby-sump").job;
  EXPECT_EQ(job.house.standby.state, plan::StandbyState::found);
  EXPECT_EQ(job.house.standby.identity, plan::StandbyIdentity::traced);
  ASSERT_EQ(job.design.sumps.size(), 2U);
  EXPECT_EQ(job.design.sumps[0].kind, plan::SumpKind::standby);
  EXPECT_EQ(job.design.sumps[0].at_m, job.house.standby.at_m);
}

TEST(Samples, WhereNobodyLookedNothingIsClearOrAdvisedOrLeastBad) {
  for (const auto outlet : {plan::OutletMode::low, plan::OutletMode::riser}) {
    const siting::Study study = studyOf("hardly-surveyed", outlet);
    EXPECT_EQ(length(study, State::clear), 0.0);
    EXPECT_EQ(length(study, State::advised_against), 0.0);
    EXPECT_GT(length(study, State::not_proven), 20.0);
    EXPECT_TRUE(study.best().empty());
    EXPECT_FALSE(study.leastBad() && study.leastBad()->place);
  }
}

TEST(Samples, TemplateSheetPassesNothing) {
  const auto files = resources::builtInRuleSheets();
  const auto blank = rules::readRuleSheet(files[files.size() - 1].text);
  ASSERT_EQ(blank->id, "template");
  for (const std::string& name : kNames) {
    const auto study = siting::Study::of(sample(name).job, *blank);
    EXPECT_EQ(length(*study, State::clear), 0.0) << name;
    EXPECT_EQ(length(*study, State::advised_against), 0.0) << name;
  }
}

}  // namespace
}  // namespace sumpwright
