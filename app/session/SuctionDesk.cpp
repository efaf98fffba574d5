#include "session/SuctionDesk.h"

#include <QCoreApplication>
#include <QMetaObject>
#include <algorithm>
#include <cmath>
#include <set>

#include "files/FanTables.h"
#include "plan/DesignEdits.h"
#include "plan/SuctionEdits.h"
#include "session/FreshId.h"
#include "siting/ReachAsked.h"

namespace sumpwright::session {

namespace {

constexpr int kSoon_ms = 120;              // own figure: keys that come one after the other
constexpr double kMoving_m = 0.10;         // cells while the sump moves ...
constexpr double kAtRest_m = 0.05;         // ... and at rest
constexpr double kMostAtRest = 250'000.0;  // cells of all answers together (own figure)
constexpr double kTold = 0.02;  // share of the work between two words about it (own figure)

/// What a sump's run is, wherever it stands: its pipe is counted with the fan. Chainages to a
/// hundredth of a millimetre, so that a move leaves them as they were.
plan::Sump runOnly(const plan::Sump& sump) {
  plan::Sump run;
  run.id = sump.id;
  run.fan_place = sump.fan_place;
  run.fan_height_m = sump.fan_height_m;
  run.discharge = sump.discharge;
  if (run.discharge) {
    const double aside = run.discharge->chainage_m - sump.chainage_m;
    run.discharge->chainage_m = 1e-5 * std::round(1e5 * aside);
  }
  return run;
}

/// Of each sump its run; where the ground is fitted to tests its pit too, and its place where a
/// test does not say where it stood.
void keepWhatCounts(plan::Job& key) {
  const bool fits = siting::wantsFit(key);
  std::set<std::string> placed;
  for (const plan::PressureTest& test : key.suction.tests) {
    const plan::Sump* sump = fits && !test.stood ? plan::testedSump(key, test) : nullptr;
    if (sump != nullptr) placed.insert(sump->id);
  }
  for (plan::Sump& sump : key.design.sumps) {
    plan::Sump counted = runOnly(sump);
    if (fits) counted.pit_l = sump.pit_l;
    if (placed.contains(sump.id)) {
      counted.kind = sump.kind;
      counted.ring = sump.ring;
      counted.chainage_m = sump.chainage_m;
      counted.at_m = sump.at_m;
    }
    sump = std::move(counted);
  }
  if (fits) return;
  std::erase_if(key.design.sumps, [](const plan::Sump& sump) { return !sump.discharge; });
}

/// All that the field depends on but where the sumps stand: the rest of the job emptied.
plan::Job keyOf(plan::Job job) {
  plan::Job key;
  key.rule_sheet = job.rule_sheet;
  key.house = std::move(job.house);
  key.plan = std::move(job.plan);
  key.plan.dimensions.clear();
  key.plan.underlay.reset();
  key.suction = std::move(job.suction);
  key.design = std::move(job.design);
  key.design.shared_fan = key.design.shared_fan && key.design.sumps.size() > 1;
  keepWhatCounts(key);
  key.design.waivers.clear();
  key.design.quote = {};
  key.design.running = {};
  return key;
}

}  // namespace

struct SuctionDesk::Work {
  siting::Study study;
  plan::Job key;
  std::optional<siting::SuctionLive> live;
  std::optional<siting::SuctionLive> fine;
  std::shared_ptr<const siting::SuctionAnswer> answer;  ///< the one before, then the new one
  std::shared_ptr<const siting::ReachAlong> along;
  bool only_reach = false;
  bool answered = false;
  std::string sump;  ///< that is in hand
  std::string fan;
  bool fan_invented = false;
  base::Problems problems;
  std::atomic<bool> given_up = false;

  /// The curve alone, without chance.
  void askReach(const siting::SuctionSystem& system, siting::SuctionOptions options);
  /// `tell(progress)` after each step of the answer, `hand(stage)` where there is something to
  /// show.
  template <class Tell, class Hand>
  void work(const Tell& tell, const Hand& hand);
  template <class Tell, class Hand>
  void answerAll(const siting::SuctionSystem& system, siting::SuctionOptions options,
                 const Tell& tell, const Hand& hand);
};

void SuctionDesk::Work::askReach(const siting::SuctionSystem& system,
                                 siting::SuctionOptions options) {
  auto reach = siting::reachAsked(study, system, options);
  if (reach) along = std::make_shared<const siting::ReachAlong>(std::move(reach).value());
}

template <class Tell, class Hand>
void SuctionDesk::Work::work(const Tell& tell, const Hand& hand) {
  const auto picked = files::pickedFan(study.job().design.fan);
  if (!picked) return void(problems = picked.problems());
  fan = picked->fan.title;
  fan_invented = picked->invented;
  const siting::SuctionSystem system =
      siting::usualSystem(study.site(), picked->fan, picked->invented);
  siting::SuctionOptions options = siting::suctionOptionsOf(study.job());
  options.cell_m = kMoving_m;
  options.along_of = sump;
  options.going = [this](double) { return !given_up; };
  if (only_reach) return askReach(system, options);
  if (!live) {
    auto made = siting::SuctionLive::of(study, system, options);
    if (!made) return void(problems = made.problems());
    live = std::move(made).value();
  }
  if (given_up) return;
  hand(Stage::fielded);
  options.fitted = live->fitted();  // once for all three
  answerAll(system, options, tell, hand);
  if (fine || given_up || !answered) return;
  options.cell_m = kAtRest_m;
  options.most_cells = kMostAtRest;
  auto made = siting::SuctionLive::of(study, system, options);
  fine = made ? std::move(made).value() : *live;  // larger ones serve as well
}

template <class Tell, class Hand>
void SuctionDesk::Work::answerAll(const siting::SuctionSystem& system,
                                  siting::SuctionOptions options, const Tell& tell,
                                  const Hand& hand) {
  options.along = true;
  options.fans = files::offeredFans();
  if (answer != nullptr) {
    options.guesses = answer->guesses;
    options.reach = answer->along;
  }
  double told = 0.0;
  options.going = [&](double done_share) {
    if (done_share >= told + kTold) tell(told = done_share);
    return !given_up;
  };
  auto asked = siting::studySuction(study, system, options);
  if (given_up) return;
  if (asked) {
    answer = std::make_shared<const siting::SuctionAnswer>(std::move(asked).value());
    along = answer->along;
    answered = true;
  } else {
    problems = asked.problems();
  }
  if (!along) askReach(system, options);  // without fill, or no sump stands on the floor
  if (answered && !given_up) hand(Stage::answered);
}

SuctionDesk::SuctionDesk(Session& session, QObject* parent) : QObject(parent), m_session(session) {
  m_pool.setMaxThreadCount(1);
  m_soon.setSingleShot(true);
  m_soon.setInterval(kSoon_ms);
  connect(&m_soon, &QTimer::timeout, this, &SuctionDesk::begin);
  connect(&session, &Session::jobChanged, this, [this] {
    forget();
    follow();
  });
  connect(&session, &Session::studyChanged, this, &SuctionDesk::follow);
  connect(&session, &Session::placeChanged, this, &SuctionDesk::refield);
  connect(&session, &Session::moveFinished, this, &SuctionDesk::follow);
}

SuctionDesk::~SuctionDesk() {
  giveUp();
  m_pool.waitForDone();
}

void SuctionDesk::setWatched(Watched watched) {
  if (watched == m_watched) return;
  m_watched = watched;
  if (watched != Watched::nothing) return follow();
  giveUp();
  m_soon.stop();
}

/// On one fan for all the curve is of one sump beside the others where they stood.
bool SuctionDesk::isAlongOfThis() const {
  if (!m_along || m_session.study() == nullptr) return true;
  siting::SuctionOptions options = siting::suctionOptionsOf(m_session.job());
  options.along_of = m_session.sump();
  return siting::isAlongOf(*m_along, *m_session.study(), options);
}

void SuctionDesk::forget() {
  giveUp();
  m_key.reset();
  m_live.reset();
  m_fine.reset();
  m_shown.reset();
  m_field.reset();
  m_no_field.clear();
  m_answer.reset();
  m_answer_key.reset();
  m_answered.clear();
  m_along.reset();
  m_along_key.reset();
  m_problems.clear();
  m_stale = m_answer_stale = m_stopped = false;
  m_along_stale = true;
  Q_EMIT fieldChanged();
  Q_EMIT answerChanged();
}

/// Whether anything that is looked at is missing or of an old plan.
bool SuctionDesk::isWanting() const {
  if (!wantsAll()) return m_along_stale;
  return m_answer == nullptr || m_answer_stale || m_stale || !m_fine || !isAlongOfThis();
}

/// Something changed: what is shown may be of an old plan, and a new answer is wanted.
void SuctionDesk::follow() {
  if (m_watched == Watched::nothing) return;
  if (m_session.study() == nullptr) return forget();
  judge();
  m_stopped = false;
  refield();
  if (m_session.isPreviewing() || m_session.isMoving()) return;  // when it has come to rest
  if (isRefining() && !m_stale && !m_answer_stale && !m_along_stale) return;
  giveUp();  // also where nothing is wanted: what is under way is then of another plan
  if (isWanting()) return m_soon.start();
  m_soon.stop();
  m_problems.clear();
}

/// Which of what is shown is of the job as it stands: while work goes on, a wall may be dragged.
/// The curve along the wall, where it still is, counts in the score; a drag that is on is not held
/// up by it.
void SuctionDesk::judge() {
  const plan::Job now = keyOf(m_session.job());
  m_stale = !(m_key == now);
  m_answer_stale = !(m_answer_key == now) || m_answered != m_session.job().design.sumps;
  if (m_answer != nullptr && m_answer->second && m_session.study() != nullptr && !m_answer_stale) {
    // What was looked for and where something was judged may let or stop a second sump.
    const siting::SecondSump& second = *m_answer->second;
    m_answer_stale = m_session.study()->stateAt(second.place) != second.state;
  }
  m_along_stale = !(m_along_key == now) || !isAlongOfThis();
  if (along() != nullptr && !m_session.isMoving()) m_session.judgeReach(m_along);
}

/// The field where the sumps stand now; of an old plan it stays as it was.
void SuctionDesk::refield() {
  // Another sump was chosen: the curve is wanted for that one.
  if (!m_session.isMoving() && !m_along_stale && !isAlongOfThis()) return follow();
  if (!wantsAll()) return;
  if (m_live && !m_stale) {
    m_shown = m_fine && !m_session.isMoving() ? m_fine : m_live;
    const auto sumps =
        m_shown->sumpsOf(m_session.job().design, m_session.sump(), m_session.place());
    m_field = m_shown->at(sumps);
    m_no_field.clear();
    if (auto problem = siting::SuctionLive::problemOf(sumps)) m_no_field = {*problem};
  }
  Q_EMIT fieldChanged();
}

void SuctionDesk::begin() {
  if (m_watched == Watched::nothing || m_session.study() == nullptr) return;
  giveUp();
  auto work = std::make_shared<Work>();
  work->study = *m_session.study();
  work->only_reach = !wantsAll();
  work->key = keyOf(m_session.job());
  work->sump = m_session.sump();
  if (m_key && *m_key == work->key) {
    work->live = m_live;
    work->fine = m_fine;
  }
  if (m_answer_key == work->key) work->answer = m_answer;
  m_work = work;
  m_is_working = true;
  m_progress = 0.0;
  m_problems.clear();
  m_pool.start([this, work] {
    const auto later = [this](auto what) {
      QMetaObject::invokeMethod(this, std::move(what), Qt::QueuedConnection);
    };
    const auto tell = [this, work, later](double progress) {
      later([this, work, progress] {
        if (work != m_work) return;
        m_progress = progress;
        Q_EMIT workChanged();
      });
    };
    const auto hand = [this, work, later](Stage stage) {
      later([this, work, stage] { take(work, stage); });
    };
    work->work(tell, hand);
    hand(Stage::done);
  });
  Q_EMIT workChanged();
}

void SuctionDesk::giveUp() {
  if (!m_work) return;
  m_work->given_up = true;
  m_work.reset();
  m_is_working = false;
  Q_EMIT workChanged();
}

/// What a stage of the work gives.
void SuctionDesk::take(const std::shared_ptr<Work>& work, Stage stage) {
  if (work != m_work) return;  // of an old plan
  if (work->live) {
    if (!(m_key == work->key)) m_fine.reset();
    m_key = work->key;
    m_live = work->live;
  }
  const bool done = stage == Stage::done;
  const bool answers = stage >= Stage::answered && m_is_working;
  if (answers) takeAnswer(*work);
  if (done && work->fine) m_fine = work->fine;
  if (done) m_work.reset();
  judge();
  refield();
  if (answers) Q_EMIT answerChanged();
  Q_EMIT workChanged();
}

void SuctionDesk::takeAnswer(const Work& work) {
  m_is_working = false;
  if (work.along || work.only_reach) {
    m_along = work.along;
    m_along_key = work.key;
  }
  if (work.only_reach) return;
  m_problems = work.problems;
  if (!work.answered) return;
  m_answer = work.answer;
  m_fan = work.fan;
  m_fan_invented = work.fan_invented;
  m_answer_key = work.key;
  m_answered = work.study.job().design.sumps;
}

void SuctionDesk::stop() {
  giveUp();
  m_soon.stop();
  m_stopped = true;
  Q_EMIT workChanged();
}

void SuctionDesk::go() {
  m_stopped = false;
  begin();
}

void SuctionDesk::finish() {
  if (m_soon.isActive() || (m_stopped && m_answer_stale)) {
    m_soon.stop();
    m_stopped = false;
    begin();
  }
  while (m_work) {
    m_pool.waitForDone();
    QCoreApplication::sendPostedEvents(this, QEvent::MetaCall);
  }
}

bool SuctionDesk::mayAddSecond() const {
  return m_answer != nullptr && !m_answer_stale && m_answer->second.has_value();
}

base::Problems SuctionDesk::addSecond() {
  if (!mayAddSecond()) return {};
  const Place place = m_answer->second->place;
  return m_session.edit(tr("Add a second sump"),
                        plan::moveSump(m_session.job(), freshId(m_session.job(), "sump"),
                                       place.ring, place.chainage_m));
}

}  // namespace sumpwright::session
