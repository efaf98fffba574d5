// Stretches of a fully surveyed rectangle 10 x 8: front 0..10 advised against, corners at 0, 10,
// 18, 28 kept clear by 0.3635 m.
#include "core/siting/Studied.h"

namespace sumpwright::siting {

namespace {

using plan::Looked;
using plan::LookedFor;
using support::PlanBuilder;

struct Expected {
  double from;
  double to;
  State state;
};

void expectStretches(const Study& study, const std::vector<Expected>& expected) {
  const auto& ring = study.stretches()[0];
  ASSERT_EQ(ring.size(), expected.size());
  for (std::size_t i = 0; i < ring.size(); ++i) {
    EXPECT_NEAR(ring[i].from_m, expected[i].from, kMicrometre);
    EXPECT_NEAR(ring[i].to_m, expected[i].to, kMicrometre);
    EXPECT_EQ(ring[i].state, expected[i].state) << "from " << expected[i].from;
  }
}

/// The slab drawn to the outside face, so that corners have it behind them as well.
PlanBuilder slabToTheFace() {
  return PlanBuilder::rectangle().noZones().zone("slab", plan::FloorKind::ground_bearing_slab,
                                                 {{0, 0}, {10, 0}, {10, 8}, {0, 8}});
}

TEST(Stretches, OfABareButSurveyedHouse) {
  const Study study = studied(slabToTheFace());
  // A refused corner ends where the front begins or ends, since the set of findings changes there.
  expectStretches(study, {{0.0, 0.3635, State::refused},
                          {0.3635, 9.6365, State::advised_against},
                          {9.6365, 10.0, State::refused},
                          {10.0, 10.3635, State::refused},
                          {10.3635, 17.6365, State::clear},
                          {17.6365, 18.3635, State::refused},
                          {18.3635, 27.6365, State::clear},
                          {27.6365, 28.3635, State::refused},
                          {28.3635, 35.6365, State::clear},
                          {35.6365, 36.0, State::refused}});
  const auto lengths = study.lengths_m();
  EXPECT_NEAR(lengths[static_cast<std::size_t>(State::clear)], 7.273 + 9.273 + 7.273, kMicrometre);
  EXPECT_NEAR(lengths[static_cast<std::size_t>(State::refused)], 8 * 0.3635, kMicrometre);
}

/// A rectangle that begins half way along its rear wall.
PlanBuilder begunMidWall() {
  PlanBuilder builder = PlanBuilder::outline({{5, 8}, {0, 8}, {0, 0}, {10, 0}, {10, 8}});
  const support::Polygon inner{{0.35, 0.35}, {9.65, 0.35}, {9.65, 7.65}, {0.35, 7.65}};
  return builder.room("room", plan::RoomUse::living, inner)
      .zone("zone", plan::FloorKind::ground_bearing_slab, inner)
      .wall(0, [](plan::Wall& wall) { wall.elevation = plan::Elevation::rear; })
      .wall(4, [](plan::Wall& wall) { wall.elevation = plan::Elevation::rear; });
}

TEST(Stretches, CutAtTheStartButOneRunAndOneBestPlace) {
  const Study study = studied(begunMidWall());
  const auto& ring = study.stretches()[0];
  EXPECT_EQ(ring.front().state, State::clear);
  EXPECT_EQ(ring.front().from_m, 0.0);
  EXPECT_NEAR(ring.front().to_m, 4.6365, kMicrometre);
  EXPECT_NEAR(ring.back().from_m, 31.3635, kMicrometre);
  EXPECT_EQ(ring.back().to_m, study.perimeter().length_m(0));

  std::vector<siting::Run> clear;
  for (const siting::Run& run : study.runs()) {
    if (run.state == State::clear) clear.push_back(run);
  }
  ASSERT_EQ(clear.size(), 4U);  // rear, west, front (unmarked here), east
  EXPECT_NEAR(clear.back().from_m, 31.3635, kMicrometre);
  EXPECT_NEAR(clear.back().to_m, 36 + 4.6365, kMicrometre);
  ASSERT_EQ(study.best().size(), 4U);
  const auto rear = std::find_if(study.best().begin(), study.best().end(),
                                 [](const BestPlace& b) { return b.run.to_m > 36.0; });
  ASSERT_NE(rear, study.best().end());
  EXPECT_LT(rear->place.chainage_m, 36.0);
}

TEST(Stretches, WholeRingOfOneStateIsOneRun) {
  const Study study = studied(PlanBuilder::bare());
  for (const siting::Run& run : study.runs()) EXPECT_NE(run.state, State::clear);
  const Study riser = studied(PlanBuilder::rectangle(), [] {
    rules::RuleSheet sheet = support::builtInSheet("ie-practice");
    for (rules::Rule& rule : sheet.rules) rule.enabled = rule.id == "openings";
    return sheet;
  }());
  ASSERT_EQ(riser.runs().size(), 1U);
  EXPECT_EQ(riser.runs()[0].from_m, 0.0);
  EXPECT_EQ(riser.runs()[0].to_m, 36.0);
}

TEST(Stretches, NobodyLookedMeansNothingIsClear) {
  const Study study = studied(PlanBuilder::bare());
  for (const auto& stretch : study.stretches()[0]) {
    EXPECT_TRUE(stretch.state == State::not_proven || stretch.state == State::refused);
  }
}

// One kind after another not looked for: no stretch that is not refused stays better than
// not-proven, and every one says which kind.
TEST(Stretches, EveryGateGates) {
  const std::vector<std::pair<const char*, Looked LookedFor::*>> gates{
      {"openings", &LookedFor::openings},
      {"gas", &LookedFor::gas},
      {"electricity", &LookedFor::electricity},
      {"water", &LookedFor::water},
      {"telecom", &LookedFor::telecom},
      {"oil", &LookedFor::oil},
      {"drain", &LookedFor::drain},
      {"flue_terminal", &LookedFor::flue_terminal},
      {"heating", &LookedFor::heating}};
  for (const auto& [kind, member] : gates) {
    const Study study = studied(PlanBuilder::rectangle().with(
        [m = member](plan::Job& job) { job.looked_for.*m = Looked::not_looked; }));
    for (const Stretch& stretch : study.stretches()[0]) {
      EXPECT_GE(stretch.state, State::not_proven) << kind;
    }
    const Assessment a = study.assess({0, 14.0});
    EXPECT_EQ(a.state, State::not_proven) << kind;
    ASSERT_EQ(a.findings.size(), 1U) << kind;
    EXPECT_EQ(a.findings[0].thing, std::string("looked_for.") + kind);
    EXPECT_EQ(a.findings[0].weight, rules::Weight::unknown);
    EXPECT_EQ(a.sentence.id, "verdict.not-looked");
    EXPECT_EQ(study.assess({0, 10.1}).state, State::refused) << kind;  // a corner stays refused
  }
}

TEST(Stretches, HoldPointsGateNothing) {
  const Study study = studied(PlanBuilder::rectangle().with([](plan::Job& job) {
    job.looked_for.standby_pipe = Looked::not_looked;
    job.looked_for.open_flue = Looked::not_looked;
  }));
  EXPECT_EQ(study.stateAt({0, 14.0}), State::clear);
}

TEST(Stretches, UnknownWallMakesThatWallNotProven) {
  const std::vector<std::function<void(plan::Wall&)>> unknown{
      [](plan::Wall& w) { w.foundation = plan::Foundation::unknown; },
      [](plan::Wall& w) { w.ground = plan::OutsideGround::unknown; },
      [](plan::Wall& w) { w.free_depth_m.reset(); }};
  for (const auto& change : unknown) {
    const Study study = studied(PlanBuilder::rectangle().wall(1, change));
    EXPECT_EQ(study.stateAt({0, 14.0}), State::not_proven);
    EXPECT_EQ(study.stateAt({0, 23.0}), State::clear);
  }
}

TEST(Stretches, RiserIsNeverBetterThanNotProven) {
  const Study study = studied(PlanBuilder::rectangle().outlet(plan::OutletMode::riser));
  EXPECT_EQ(study.lengths_m()[0], 0.0);
  EXPECT_EQ(study.lengths_m()[1], 0.0);
  EXPECT_TRUE(has(study.assess({0, 14.0}), "discharge", ""));
  // Given as an option it overrides the job, either way.
  StudyOptions low;
  low.outlet = plan::OutletMode::low;
  const Study overridden = studied(PlanBuilder::rectangle().outlet(plan::OutletMode::riser),
                                   support::builtInSheet("ie-practice"), low);
  EXPECT_EQ(overridden.stateAt({0, 14.0}), State::clear);
}

/// A string is never shorter than the straight way: what is refused by it is refused straight.
TEST(Stretches, ByStringNothingMoreIsRefusedThanStraight) {
  rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  const plan::Job job = PlanBuilder::lShape().window("w", 2, 1.0, 1.0).door("d", 3, 0.5);
  const Study straight = studied(job, sheet);
  for (rules::Rule& rule : sheet.rules) {
    if (rule.kind == rules::RuleKind::clearance) rule.path = rules::PathKind::string;
  }
  const Study string = studied(job, sheet);
  int gained = 0;
  for (double s = 0.05; s < 36.0; s += 0.1) {
    EXPECT_LE(string.stateAt({0, s}), straight.stateAt({0, s})) << s;
    if (string.stateAt({0, s}) < straight.stateAt({0, s})) ++gained;
  }
  EXPECT_GT(gained, 0);
}

TEST(Stretches, DisabledRulesSayNothing) {
  rules::RuleSheet sheet = support::builtInSheet("ie-practice");
  for (rules::Rule& rule : sheet.rules) {
    if (rule.id == "corners") rule.enabled = false;
  }
  const Study study = studied(slabToTheFace(), sheet);
  EXPECT_EQ(study.stateAt({0, 10.1}), State::clear);
}

TEST(Stretches, OverlappingUnknownAndRefusedIsRefused) {
  // Gas entry at 14: refused for 1.0635 either side; its run is unknown back to the front.
  const Study study = studied(
      PlanBuilder::rectangle().service("g", plan::ServiceKind::gas, 1, 4.0).runUnknown("g"));
  EXPECT_EQ(study.stateAt({0, 13.5}), State::refused);
  EXPECT_EQ(study.stateAt({0, 11.0}), State::not_proven);
  EXPECT_EQ(study.stateAt({0, 5.0}), State::not_proven);  // worse than advised against
  EXPECT_EQ(study.stateAt({0, 16.0}), State::clear);
  const Assessment a = study.assess({0, 13.5});
  ASSERT_EQ(a.findings.size(), 2U);
  EXPECT_EQ(a.findings[0].weight, rules::Weight::binding);  // worst first
  EXPECT_EQ(a.findings[1].weight, rules::Weight::unknown);
}

TEST(Stretches, FindingsOfAStretchShowItsLeastDistance) {
  const Study study =
      studied(PlanBuilder::rectangle().service("g", plan::ServiceKind::gas, 1, 4.0));
  // 12.9365..15.0635 about chainage 14.
  const auto& ring = study.stretches()[0];
  const auto found = std::find_if(ring.begin(), ring.end(),
                                  [](const Stretch& s) { return s.from_m > 12 && s.from_m < 13; });
  ASSERT_NE(found, ring.end());
  const auto findings = study.findingsOf(*found);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_NEAR(*findings[0].distance_m, -0.0635, kMicrometre);
}

TEST(Stretches, RefusesUnsoundJobsAndCoresOutOfRange) {
  const auto sheet = support::builtInSheet("ie-practice");
  EXPECT_FALSE(Study::of(plan::Job{}, sheet));
  StudyOptions wide;
  wide.core_m = 0.5;
  const auto made = Study::of(PlanBuilder::rectangle(), sheet, wide);
  ASSERT_FALSE(made);
  EXPECT_EQ(made.problems()[0].message.id, "study.core-size");
  wide.core_m = std::numeric_limits<double>::quiet_NaN();
  EXPECT_FALSE(Study::of(PlanBuilder::rectangle(), sheet, wide));
}

TEST(Stretches, SameJobSameBits) {
  const plan::Job job =
      PlanBuilder::courtyard().window("w", 0, 3.3, 1.1).service("g", plan::ServiceKind::gas, 1, 2);
  const Study a = studied(job);
  const Study b = studied(job);
  for (std::size_t r = 0; r < a.stretches().size(); ++r) {
    ASSERT_EQ(a.stretches()[r].size(), b.stretches()[r].size());
    for (std::size_t i = 0; i < a.stretches()[r].size(); ++i) {
      EXPECT_EQ(a.stretches()[r][i].from_m, b.stretches()[r][i].from_m);
      EXPECT_EQ(a.stretches()[r][i].spans, b.stretches()[r][i].spans);
    }
  }
  ASSERT_EQ(a.best().size(), b.best().size());
  for (std::size_t i = 0; i < a.best().size(); ++i) {
    EXPECT_EQ(a.best()[i].place, b.best()[i].place);
    EXPECT_EQ(a.best()[i].score, b.best()[i].score);
  }
}

TEST(Stretches, OtherStoreysAreListedAsNotYetJudged) {
  plan::Opening upstairs;
  upstairs.id = "up";
  upstairs.at = {0, 1, 3.0};
  upstairs.width_m = 1.0;
  upstairs.storey = 1;
  const Study study = studied(PlanBuilder::rectangle().opening(upstairs));
  EXPECT_EQ(study.stateAt({0, 13.5}), State::clear);
  ASSERT_EQ(study.unjudged().size(), 1U);
  EXPECT_EQ(study.unjudged()[0].rule, "openings");
  EXPECT_EQ(study.unjudged()[0].thing, "up");
}

TEST(Stretches, LabelsOfEverything) {
  const Study study =
      studied(PlanBuilder::rectangle()
                  .window("w", 0, 2, 1)
                  .wall(1, [](plan::Wall& wall) { wall.name = "side"; })
                  .with([](plan::Job& job) { job.plan.openings[0].name = "kitchen window"; }));
  EXPECT_EQ(study.labelOf("w"),
            base::Message("thing.named", {base::text("name", "kitchen window")}));
  EXPECT_EQ(study.labelOf("w0.1"), base::plainText("side"));
  EXPECT_EQ(study.labelOf("room").id, "room.living");
  EXPECT_EQ(study.labelOf("zone").id, "floor.ground_bearing_slab");
  EXPECT_EQ(study.labelOf("corner.A").id, "thing.corner");
  EXPECT_EQ(study.labelOf("nothing"), base::plainText("nothing"));
}

TEST(Stretches, ADoorInsideIsCalledByTheRoomsItLeadsTo) {
  plan::Job job = PlanBuilder::rectangle();
  job.plan.rooms = {{"west", "Den, invented", plan::RoomUse::living, {}},
                    {"east", "", plan::RoomUse::kitchen, {}}};
  job.plan.rooms[0].outline_m = {{0.3, 0.3}, {4.95, 0.3}, {4.95, 7.7}, {0.3, 7.7}};
  job.plan.rooms[1].outline_m = {{5.05, 0.3}, {9.7, 0.3}, {9.7, 4.0}, {5.05, 4.0}};
  plan::InnerWall across;
  across.id = "across";
  across.thickness_m = 0.1;
  across.line_m = {{5.0, 0.3}, {5.0, 7.7}};
  job.plan.inner_walls = {across};
  job.plan.inner_doors = {{"d", "across", 1.0, 0.8}, {"half", "across", 6.0, 0.8}};
  const Study study = studied(job);
  const base::Message between = study.labelOf("d");
  EXPECT_EQ(between.id, "door.between");
  EXPECT_EQ(std::get<base::Message>(between.find("room")->value).id, "thing.named");
  EXPECT_EQ(std::get<base::Message>(between.find("other")->value).id, "room.kitchen");
  EXPECT_EQ(study.labelOf("half").id, "door.of");  // no room is drawn behind it
  // A wall that stands within one room leads from it to nowhere else.
  job.plan.rooms.pop_back();
  job.plan.rooms[0].outline_m = {{0.3, 0.3}, {9.7, 0.3}, {9.7, 7.7}, {0.3, 7.7}};
  EXPECT_EQ(studied(job).labelOf("d").id, "door.of");
  job.plan.rooms.clear();
  EXPECT_EQ(studied(job).labelOf("d").id, "door.inside");
}

}  // namespace

}  // namespace sumpwright::siting
