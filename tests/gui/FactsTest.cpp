// Everything a job can hold can be set from the window; each field is one step of undo.

#include <QAbstractButton>
#include <set>

#include "WindowFixture.h"
#include "plan/JobFields.h"
#include "plan/ThingEdits.h"

namespace sumpwright::gui {
namespace {

using plan::kFields;
using stages::Fact;
using stages::FactForm;
using stages::FactKind;

class FactsOfAJob : public WindowFixture {
 protected:
  /// A sample with one thing of each kind added to it.
  void openWithEverything() {
    open(QStringLiteral("bungalow"));
    const auto add = [&](plan::Thing thing) {
      auto after = plan::addThing(session().job(), std::move(thing));
      ASSERT_TRUE(after.ok());
      std::set<std::string> before;
      for (const std::string& id : stagesIds()) before.insert(id);
      ASSERT_TRUE(session().edit(QStringLiteral("add"), std::move(after)).empty());
      for (const std::string& id : stagesIds()) {
        if (!before.contains(id)) ids.push_back(id);
      }
    };
    plan::Opening opening;
    opening.at = {0, 0, 0.2};
    opening.width_m = 0.5;
    add(opening);
    plan::Service drain;
    drain.kind = plan::ServiceKind::drain;
    drain.entry = plan::OnWall{0, 0, 1.0};
    add(drain);
    add(plan::Room{"", "", plan::RoomUse::unknown, {{1, 1}, {2, 1}, {2, 2}}});
    plan::FloorZone zone;
    zone.kind = plan::FloorKind::suspended_timber;
    zone.outline_m = {{1, 1}, {2, 1}, {2, 2}};
    add(zone);
    plan::InnerWall wall;
    wall.line_m = {{1, 1}, {1, 4}};
    add(wall);
    add(plan::InnerDoor{"", ids.back(), 0.5, 0.8});
    add(plan::RisingWall{"", {{1, 1}, {1, 4}}, 0.1, {}});
    add(plan::Radiator{"", "", plan::OnWall{0, 1, 0.2}, 0.5, {}});
    add(plan::Radiator{"", "", std::nullopt, 0.0, {{1, 1}, {2, 1}}});
    add(plan::HeatingPipe{"", "", {{1, 1}, {2, 1}}});
    add(plan::Supply{"", "", plan::SupplyKind::socket, {1, 1}, plan::YesNo::unknown, ""});
    add(plan::Fitting{"", "", plan::FittingKind::sink, {1, 1}});
    add(plan::OutsideThing{"", "", plan::OutsideKind::tank, {{-3, -3}, {-2, -3}, {-2, -2}}});
    add(plan::TestHole{"", "", {1, 1}});
    add(plan::WallFeature{"", "", plan::WallFeatureKind::pier, {0, 1, 0.2}, 0.3});
    plan::Dimension dimension;
    dimension.from.thing = ids[0];
    dimension.to.thing = session().job().plan.rings[0].walls[0].id;
    add(dimension);
    add(plan::Appliance{"", "stove", true, ""});
  }
  std::vector<std::string> stagesIds() {
    std::vector<std::string> all;
    const plan::Plan& p = session().job().plan;
    const auto take = [&](const auto& list) {
      for (const auto& thing : list) all.push_back(thing.id);
    };
    take(p.openings), take(p.services), take(p.rooms), take(p.floor_zones), take(p.inner_walls);
    take(p.inner_doors), take(p.rising_walls), take(p.radiators), take(p.heating_pipes);
    take(p.supplies), take(p.fittings), take(p.outside), take(p.test_holes);
    take(p.wall_features), take(p.dimensions), take(session().job().house.appliances);
    return all;
  }

  static QString another(const Fact& fact) {
    const std::string& key = fact.key;
    if (key == "/surveyed_on") return QStringLiteral("2024-02-29");
    switch (fact.kind) {
      case FactKind::text:
      case FactKind::note:
        return QStringLiteral("Invented text 7");
      case FactKind::length:
        return key.ends_with("core_mm") || key.ends_with("pipe_od_mm") ? QStringLiteral("0.1")
                                                                       : QStringLiteral("0.41");
      case FactKind::level:
        return QStringLiteral("-0.21");
      case FactKind::bearing:
        return QStringLiteral("12.5");
      case FactKind::pressure:
      case FactKind::flow:
      case FactKind::number:
        return key.ends_with("pit_l") ? QStringLiteral("20") : QStringLiteral("3.5");
      case FactKind::whole:
        return key.ends_with("storey") ? QStringLiteral("1") : QStringLiteral("1971");
      case FactKind::list:
        return fact.example;
      case FactKind::choice:
        break;
    }
    return {};
  }

  /// Sets each field of a form through its widget and takes it back.
  void setEach(FactForm& form) {
    const std::vector<Fact> facts = form.facts();
    for (const Fact& fact : facts) {
      SCOPED_TRACE(fact.key);
      QWidget* field = form.field(fact.key);
      ASSERT_NE(field, nullptr);
      if (field->isHidden()) {
        hidden.insert(fact.key);
        continue;
      }
      EXPECT_FALSE(field->accessibleName().isEmpty());
      const plan::Job before = session().job();
      const int steps = session().undoStack().index();
      if (auto* box = qobject_cast<QComboBox*>(field)) {
        ASSERT_GT(box->count(), 1);
        const int next = (box->currentIndex() + 1) % box->count();
        box->setCurrentIndex(next);
        Q_EMIT box->activated(next);
      } else if (auto* line = qobject_cast<QLineEdit*>(field)) {
        line->setText(another(fact));
        QTest::keyClick(line, Qt::Key_Return);
      } else if (auto* note = qobject_cast<QPlainTextEdit*>(field)) {
        note->setPlainText(another(fact));
        note->setFocus();
        note->clearFocus();
      }
      EXPECT_NE(session().job(), before) << form.noteUnder(fact.key).toStdString();
      EXPECT_EQ(session().undoStack().index(), steps + 1) << "one step";
      set.insert(fact.key);
      while (session().undoStack().index() > steps) session().undoStack().undo();
      EXPECT_EQ(session().job(), before);
    }
  }

  /// FactKeys of T that no fact asks for.
  template <class T>
  std::set<std::string> missing(const FactForm& form, const std::string& prefix = {}) {
    std::set<std::string> keys;
    plan::forEachKey<T>([&](std::string_view key) { keys.emplace(prefix + std::string(key)); });
    for (const Fact& fact : form.facts()) {
      std::erase_if(keys, [&](const std::string& key) {
        return fact.key == key || fact.key.starts_with(key + "/");
      });
    }
    return keys;
  }

  std::vector<std::string> ids;
  std::set<std::string> set;
  std::set<std::string> hidden;
};

using FactKeys = std::set<std::string>;

TEST_F(FactsOfAJob, EveryFieldOfEveryThingCanBeSet) {
  openWithEverything();
  ASSERT_EQ(ids.size(), 17U);
  window->showSurvey(stages::SurveyPage::things);
  FactForm& form = *window->survey().things()->form()->facts();
  const auto look = [&](std::size_t i, auto type, const FactKeys& elsewhere) {
    using T = decltype(type);
    SCOPED_TRACE(ids[i]);
    session().select(ids[i]);
    ASSERT_FALSE(form.facts().empty());
    FactKeys left = missing<T>(form);
    // The id is the program's own; "ring" goes with the wall that is chosen.
    left.erase("id");
    left.erase("ring");
    EXPECT_EQ(left, elsewhere);
    setEach(form);
  };
  look(0, plan::Opening(), {});
  look(1, plan::Service(), {});
  look(2, plan::Room(), {});
  look(3, plan::FloorZone(), {});
  look(4, plan::InnerWall(), {});
  look(5, plan::InnerDoor(), {});
  look(6, plan::RisingWall(), {});
  look(7, plan::Radiator(), {"line_m", "on"});  // "on" is its wall and offset; a line: the next
  look(8, plan::Radiator(), {"on", "width_m"});
  look(9, plan::HeatingPipe(), {});
  look(10, plan::Supply(), {});
  look(11, plan::Fitting(), {});
  look(12, plan::OutsideThing(), {});
  look(13, plan::TestHole(), {});
  look(14, plan::WallFeature(), {});
  look(15, plan::Dimension(), {});
  look(16, plan::Appliance(), {});
}

TEST_F(FactsOfAJob, EveryFieldOfAWallCanBeSet) {
  openWithEverything();
  window->showSurvey(stages::SurveyPage::things);
  session().select(session().job().plan.rings[0].walls[1].id);
  FactForm& form = *window->survey().things()->wallForm()->facts();
  FactKeys left = missing<plan::Wall>(form);
  left.erase("id");
  EXPECT_TRUE(left.empty()) << *left.begin();
  setEach(form);
}

TEST_F(FactsOfAJob, OtherWallsTakeOnlyWhatIsNotKnownOfThem) {
  open(QStringLiteral("bungalow"));
  window->showSurvey(stages::SurveyPage::things);
  plan::Job job = session().job();
  auto& walls = job.plan.rings[0].walls;
  for (plan::Wall& wall : walls) {
    wall.foundation = plan::Foundation::unknown;
    wall.free_depth_m.reset();
  }
  walls[0].foundation = plan::Foundation::strip;
  walls[0].free_depth_m = 3.0;
  walls[1].foundation = plan::Foundation::raft_edge;
  walls[1].free_depth_m = 0.9;
  ASSERT_TRUE(session().edit(QStringLiteral("Walls"), job).empty());
  session().select(walls[0].id);
  QTest::mouseClick(window->survey().things()->wallForm()->forAll(), Qt::LeftButton);
  const auto& after = session().job().plan.rings[0].walls;
  EXPECT_EQ(after[1].foundation, plan::Foundation::raft_edge);
  EXPECT_EQ(after[1].free_depth_m, 0.9);
  EXPECT_EQ(after[2].foundation, plan::Foundation::strip);
  EXPECT_EQ(after[2].free_depth_m, 3.0);
}

TEST_F(FactsOfAJob, EveryFieldOfHouseAndJobCanBeSet) {
  openWithEverything();
  window->showSurvey(stages::SurveyPage::house);
  auto& page = *window->survey().house();
  plan::House house = session().job().house;
  house.standby.state = plan::StandbyState::found;  // what is asked of one only then
  plan::Job job = session().job();
  job.house = house;
  ASSERT_TRUE(session().edit(QStringLiteral("found"), job).empty());
  for (FactForm* form : page.sections()) setEach(*form);
  EXPECT_TRUE(hidden.empty()) << *hidden.begin();

  const auto want = [&](auto type, const std::string& prefix, const FactKeys& elsewhere) {
    using T = decltype(type);
    plan::forEachKey<T>([&](std::string_view key) {
      const std::string pointer = prefix + std::string(key);
      const bool here = std::any_of(set.begin(), set.end(), [&](const std::string& s) {
        return s == pointer || s.starts_with(pointer + "/");
      });
      EXPECT_NE(here, elsewhere.contains(std::string(key))) << pointer;
    });
  };
  // Looked for, plan and waivers have pages of their own; appliances are things.
  // What suction is told of stands on a stage of its own.
  want(plan::Job(), "/", {"id", "looked_for", "suction"});
  want(plan::House(), "/house/", {"appliances"});
  want(plan::StandbySump(), "/house/standby/", {});
  want(plan::Permissions(), "/permissions/", {});
  // Fan, pipe and seal are entered with the suction and the run, the price with the paper.
  want(
      plan::Design(), "/design/",
      {"sumps", "waivers", "fan", "shared_fan", "pipe", "annulus", "silencer", "running", "quote"});
}

TEST_F(FactsOfAJob, EveryFieldOfASumpCanBeSet) {
  open(QStringLiteral("bungalow"));
  window->showStage(window::Stage::run);
  FactForm& form = *window->run().form();
  setEach(form);
  ASSERT_FALSE(HasFailure());
  EXPECT_EQ(hidden, (FactKeys{"discharge/chainage_m"}));
  // Where it stands is dragged, typed and laid on the plan.
  EXPECT_EQ(missing<plan::Sump>(form), (FactKeys{"id", "kind", "ring", "chainage_m", "at_m"}));
}

TEST_F(FactsOfAJob, WhatCannotBeReadStaysAndSaysWhy) {
  open(QStringLiteral("bungalow"));
  window->showSurvey(stages::SurveyPage::things);
  session().select(session().job().plan.rings[0].walls[1].id);
  FactForm& form = *window->survey().things()->wallForm()->facts();
  const plan::Job before = session().job();
  QLineEdit* field = form.line("free_depth_m");
  const QString was = field->text();
  field->setText(QStringLiteral("three"));
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_EQ(field->text(), QStringLiteral("three"));
  EXPECT_TRUE(form.noteUnder("free_depth_m").contains(QStringLiteral("three")));
  EXPECT_EQ(session().job(), before);
  QTest::keyClick(field, Qt::Key_Escape);
  EXPECT_EQ(field->text(), was);
  EXPECT_FALSE(form.noteUnder("free_depth_m").contains(QStringLiteral("three")));
  field->setText(QStringLiteral("2.75"));
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_EQ(session().job().plan.rings[0].walls[1].free_depth_m, 2.75);
}

TEST_F(FactsOfAJob, WhatIsTypedIsSavedWithoutEnter) {
  open(QStringLiteral("bungalow"));
  window->activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
  window->showSurvey(stages::SurveyPage::house);
  auto* field = qobject_cast<QLineEdit*>(window->survey().house()->field("/client"));
  field->setFocus();
  QTest::keyClicks(field, QStringLiteral("B Invented"));
  EXPECT_TRUE(session().job().client.empty());
  ASSERT_TRUE(window->save());
  EXPECT_EQ(session().job().client, "B Invented");
  EXPECT_FALSE(session().isModified());
}

TEST_F(FactsOfAJob, UnitsAreThoseOnDisplay) {
  open(QStringLiteral("bungalow"));
  window->showSurvey(stages::SurveyPage::house);
  auto& page = *window->survey().house();
  const auto type = [&](const char* key, const char* text) {
    auto* field = qobject_cast<QLineEdit*>(page.field(key));
    field->setText(QLatin1String(text));
    QTest::keyClick(field, Qt::Key_Return);
  };
  type("/house/slab_m", "0.15");
  EXPECT_EQ(session().job().house.slab_m, 0.15);
  auto* units = qobject_cast<QComboBox*>(page.field("/display_units"));
  units->setCurrentIndex(1);
  Q_EMIT units->activated(1);
  EXPECT_EQ(qobject_cast<QLineEdit*>(page.field("/house/slab_m"))->text().back(), QLatin1Char('"'));
  type("/house/slab_m", "6\"");
  EXPECT_NEAR(session().job().house.slab_m.value(), 0.1524, 1e-12);
  type("/house/ground_level_m", "-6\"");
  EXPECT_NEAR(session().job().house.ground_level_m.value(), -0.1524, 1e-12);
  type("/house/ground_level_m", "");
  EXPECT_FALSE(session().job().house.ground_level_m);
  EXPECT_FALSE(page.sections()[3]->noteUnder("/house/ground_level_m").isEmpty())
      << "what is taken for it";
}

TEST_F(FactsOfAJob, AnAnswerByKeyboardIsOneStep) {
  window->newJob();
  window->showSurvey(stages::SurveyPage::looked);
  window->activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
  auto* row = window->survey().looked()->rows()[1];
  row->button(0)->setFocus(Qt::TabFocusReason);
  QTest::keyClick(row->button(0), Qt::Key_Right);
  QTest::keyClick(row->button(1), Qt::Key_Right);
  EXPECT_EQ(session().job().looked_for.gas, plan::Looked::looked_none);
  EXPECT_EQ(session().undoStack().index(), 1);
  session().undoStack().undo();
  EXPECT_EQ(session().job().looked_for.gas, plan::Looked::not_looked);
}

TEST_F(FactsOfAJob, EveryLineOfTheCheckLeadsToWhereItIsAnswered) {
  window->newJob();
  auto& survey = window->survey();
  window->showSurvey(stages::SurveyPage::check);
  auto* list = survey.check()->list();
  ASSERT_GT(list->count(), 10);
  std::set<stages::SurveyPage> reached;
  for (int row = 0; row < list->count(); ++row) {
    window->showSurvey(stages::SurveyPage::check);
    SCOPED_TRACE(list->item(row)->text().toStdString());
    Q_EMIT list->itemActivated(list->item(row));
    EXPECT_NE(survey.page(), stages::SurveyPage::check);
    reached.insert(survey.page());
  }
  EXPECT_TRUE(reached.contains(stages::SurveyPage::house));
  EXPECT_TRUE(reached.contains(stages::SurveyPage::looked));
  EXPECT_TRUE(reached.contains(stages::SurveyPage::outline));
}

TEST_F(FactsOfAJob, NoIdIsShownToAPerson) {
  openWithEverything();
  window->showSurvey(stages::SurveyPage::check);
  const auto* list = window->survey().check()->list();
  for (int row = 0; row < list->count(); ++row) {
    for (const std::string& id : ids) {
      EXPECT_FALSE(list->item(row)->text().contains(QString::fromStdString(id)))
          << list->item(row)->text().toStdString();
    }
  }
}

TEST_F(FactsOfAJob, WhatIsOnlyLookedAtStaysAsItIs) {
  open(QStringLiteral("bungalow"));
  window->activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
  plan::Job job = session().job();
  job.client = " A Invented ";
  job.notes = "first\n\n";
  plan::OutsideThing boundary;
  boundary.id = "long";
  boundary.kind = plan::OutsideKind::boundary;
  for (int i = 0; i < 300; ++i) boundary.points_m.push_back({-20.0 + 0.125 * i, -12.3456 - i % 2});
  job.plan.outside.push_back(boundary);
  ASSERT_TRUE(session().edit(QStringLiteral("long"), job).empty());
  const int steps = session().undoStack().index();
  const auto lookAt = [&](QWidget* field) {
    ASSERT_NE(field, nullptr);
    field->setFocus();
    FactForm::settle();  // as saving does
    if (qobject_cast<QLineEdit*>(field) != nullptr) QTest::keyClick(field, Qt::Key_Return);
    field->clearFocus();
    EXPECT_EQ(session().undoStack().index(), steps);
  };
  window->showSurvey(stages::SurveyPage::house);
  lookAt(window->survey().house()->field("/client"));
  lookAt(window->survey().house()->field("/notes"));
  window->showSurvey(stages::SurveyPage::things);
  session().select("long");
  FactForm& form = *window->survey().things()->form()->facts();
  lookAt(form.field("points_m"));
  EXPECT_EQ(session().job(), job);
}

TEST_F(FactsOfAJob, OneEntryOfAListIsChangedAndTheOthersAreNotRounded) {
  open(QStringLiteral("bungalow"));
  plan::Job job = session().job();
  job.display_units = plan::DisplayUnits::imperial;
  plan::OutsideThing boundary;
  boundary.id = "b";
  boundary.kind = plan::OutsideKind::boundary;
  boundary.points_m = {{-3.0, -3.001}, {-2.0, -3.002}, {-1.0, -3.003}};
  job.plan.outside.push_back(boundary);
  ASSERT_TRUE(session().edit(QStringLiteral("b"), job).empty());
  window->showSurvey(stages::SurveyPage::things);
  session().select("b");
  QLineEdit* field = window->survey().things()->form()->facts()->line("points_m");
  QStringList entries = field->text().split(QStringLiteral("; "));
  ASSERT_EQ(entries.size(), 3);
  entries[1] = QStringLiteral("-7' : -9'");
  field->setText(entries.join(QStringLiteral("; ")));
  QTest::keyClick(field, Qt::Key_Return);
  const auto& points = session().job().plan.outside.back().points_m;
  ASSERT_EQ(points.size(), 3U);
  EXPECT_EQ(points[0], boundary.points_m[0]);
  EXPECT_EQ(points[2], boundary.points_m[2]);
  EXPECT_NEAR(points[1].x, -7 * 0.3048, 1e-9);
}

TEST_F(FactsOfAJob, OneDrawnOfAKindThatWasNotThereAsksForMore) {
  open(QStringLiteral("bungalow"));
  plan::Job job = session().job();
  job.looked_for.oil = plan::Looked::looked_none;
  std::erase_if(job.plan.services,
                [](const plan::Service& s) { return s.kind == plan::ServiceKind::oil; });
  ASSERT_TRUE(session().edit(QStringLiteral("none"), job).empty());
  const stages::SideNote* note = window->survey().foundAfterAll();
  EXPECT_TRUE(note->isHidden());
  window->showSurvey(stages::SurveyPage::looked);
  auto* row = window->survey().looked()->rows()[5];
  QTest::mouseClick(row->button(1), Qt::LeftButton);
  EXPECT_TRUE(note->isHidden()) << "an answer is none that was drawn";
  QTest::mouseClick(row->button(2), Qt::LeftButton);
  ASSERT_EQ(session().job().looked_for.oil, plan::Looked::looked_none);
  plan::Service oil;
  oil.kind = plan::ServiceKind::oil;
  oil.entry = plan::OnWall{0, 0, 1.0};
  ASSERT_TRUE(session().edit(QStringLiteral("oil"), plan::addThing(session().job(), oil)).empty());
  EXPECT_EQ(session().job().looked_for.oil, plan::Looked::present);
  EXPECT_FALSE(note->isHidden()) << "by whatever hand it is drawn";
  EXPECT_TRUE(note->text().contains(QStringLiteral("Oil")));
  session().undoStack().undo();
  EXPECT_TRUE(note->isHidden());
}

TEST_F(FactsOfAJob, TheRunGoesWithItsEntry) {
  open(QStringLiteral("bungalow"));
  plan::Service gas;
  gas.id = "run";
  gas.kind = plan::ServiceKind::gas;
  gas.entry = plan::OnWall{0, 0, 1.0};
  gas.run = plan::RunKnown::drawn;
  const auto& corners = session().job().plan.rings[0].corners;
  const geometry::Vec way =
      (1.0 / geometry::distance(corners[0], corners[1])) * (corners[1] - corners[0]);
  const geometry::Point begins = corners[0] + 1.0 * way;
  gas.run_m = {begins, begins - 3.0 * geometry::left(way)};
  plan::Job job = session().job();
  job.plan.services.push_back(gas);
  ASSERT_TRUE(session().edit(QStringLiteral("gas"), job).empty());
  window->showSurvey(stages::SurveyPage::things);
  session().select("run");
  FactForm& form = *window->survey().things()->form()->facts();
  QLineEdit* field = form.line("entry/offset_m");
  ASSERT_NE(field, nullptr);
  field->setText(QStringLiteral("1.5"));
  QTest::keyClick(field, Qt::Key_Return);
  const plan::Service& moved = session().job().plan.services.back();
  EXPECT_EQ(moved.entry->offset_m, 1.5);
  EXPECT_NEAR(geometry::distance(moved.run_m[0], corners[0] + 1.5 * way), 0.0, 1e-9);
  EXPECT_NEAR(geometry::distance(moved.run_m[0], moved.run_m[1]), 3.0, 1e-9);
  field->setText(QStringLiteral("900"));
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_EQ(session().job().plan.services.back().entry->offset_m, 1.5) << "past the wall's end";
  EXPECT_FALSE(form.noteUnder("entry/offset_m").isEmpty());
}

}  // namespace
}  // namespace sumpwright::gui
