#include "session/Session.h"

#include <QScopedValueRollback>
#include <algorithm>
#include <utility>

#include "plan/PlanCheck.h"
#include "session/FreshId.h"
#include "session/JobEdit.h"
#include "siting/DesignCheck.h"
#include "siting/ReachAlong.h"
#include "tools/SiteDrag.h"

namespace sumpwright::session {

namespace {

/// Arrow presses closer together than this are one gesture (own figure).
constexpr qint64 kNudgePause_ms = 800;

const plan::Sump* sumpOf(const plan::Job& job, const std::string& id) {
  const auto& sumps = job.design.sumps;
  const auto it = std::find_if(sumps.begin(), sumps.end(), [&](const plan::Sump& s) {
    return s.kind == plan::SumpKind::cored && (id.empty() || s.id == id);
  });
  return it == sumps.end() ? nullptr : &*it;
}

}  // namespace

Session::Session(QObject* parent) : QObject(parent) {
  connect(&m_undo, &QUndoStack::cleanChanged, this, &Session::savedStateChanged);
  connect(&m_undo, &QUndoStack::indexChanged, this, &Session::keepWork);
  connect(&m_keeper, &WorkKeeper::failed, this, &Session::keepingFailed);
}

Session::~Session() {
  // An unclean stack calls itself clean as it goes, when nobody can listen any more.
  m_undo.disconnect(this);
}

const plan::Job& Session::job() const {
  SUMPWRIGHT_REQUIRE(hasJob());
  return *m_job;
}

void Session::findSump() {
  const plan::Sump* sump = sumpOf(*m_job, m_sump);
  if (sump == nullptr) sump = sumpOf(*m_job, {});
  m_sump = sump == nullptr ? std::string() : sump->id;
  m_place.reset();
  if (sump != nullptr) m_place = Place{sump->ring, sump->chainage_m};
}

void Session::restudy() {
  m_study.reset();
  m_study_problems.clear();
  m_problems = plan::checkJob(*m_job);
  if (!m_sheet || m_sheet_id != m_job->rule_sheet) {
    base::Result<files::LoadedSheet> loaded = files::sheetById(m_job->rule_sheet, m_source);
    m_sheet.reset();
    if (loaded)
      m_sheet = std::move(loaded).value().sheet;
    else
      m_study_problems = loaded.problems();
    m_sheet_id = m_job->rule_sheet;
  }
  if (m_sheet) {
    base::Result<siting::Study> study = siting::Study::of(*m_job, *m_sheet);
    if (study)
      m_study = std::move(study).value();
    else
      m_study_problems = study.problems();
  }
  findSump();
  reassess();
}

void Session::reassess() {
  m_assessment.reset();
  if (m_study && m_place && m_study->perimeter().contains(*m_place)) {
    m_assessment = m_study->assess(*m_place, m_sump);
  }
}

void Session::judgeReach(std::shared_ptr<const siting::ReachAlong> reach) {
  if (!m_study || m_study->reach() == reach.get()) return;
  if (reach != nullptr && !reach->fits(m_study->perimeter())) return;
  if (m_judging) return;  // whoever hears of it has a curve of its own: the first one stays
  const QScopedValueRollback judging(m_judging, true);
  m_study = m_study->withReach(std::move(reach));
  reassess();
  Q_EMIT studyChanged();
  Q_EMIT placeChanged();
}

void Session::put(SharedJob job) {
  m_job = std::move(job);
  restudy();
  Q_EMIT studyChanged();
  Q_EMIT placeChanged();
}

void Session::apply(const SharedJob& job) {
  const bool dragged = m_moving || isPreviewing();
  m_moving = false;
  m_before_preview.reset();
  put(job);
  Q_EMIT savedStateChanged();
  if (dragged) Q_EMIT moveFinished();
}

void Session::change(const QString& text, plan::Job after, int gesture) {
  const SharedJob before = isPreviewing() ? m_before_preview : m_job;
  if (after == *before) return cancelPreview();
  m_undo.push(new JobEdit(
      text, before, std::make_shared<const plan::Job>(std::move(after)),
      [this](const SharedJob& j) { apply(j); }, gesture));
}

base::Problems Session::edit(const QString& text, base::Result<plan::Job> after, int gesture) {
  SUMPWRIGHT_REQUIRE(hasJob());
  if (!after) return after.problems();
  m_gesture = 0;  // arrow keys after it are a step of their own
  change(text, std::move(after).value(), gesture);
  return {};
}

void Session::beginPreview() {
  SUMPWRIGHT_REQUIRE(hasJob());
  cancelMove();
  cancelPreview();
  m_before_preview = m_job;
}

void Session::preview(plan::Job live) {
  if (!isPreviewing() || live == *m_job) return;
  put(std::make_shared<const plan::Job>(std::move(live)));
}

void Session::finishPreview(const QString& text) {
  if (!isPreviewing()) return;
  m_gesture = 0;
  change(text, *m_job);
}

void Session::cancelPreview() {
  if (!isPreviewing()) return;
  const SharedJob before = std::exchange(m_before_preview, nullptr);
  if (before != m_job) put(before);
  Q_EMIT moveFinished();
}

const plan::Job& Session::jobBeforePreview() const {
  SUMPWRIGHT_REQUIRE(isPreviewing());
  return *m_before_preview;
}

void Session::chooseSump(const std::string& id) {
  if (id == m_sump) return;
  if (m_moving) cancelMove();
  m_gesture = 0;  // arrow keys move another one: a step of their own
  m_sump = id;
  findSump();
  reassess();
  Q_EMIT placeChanged();
}

std::string Session::sumpOrNew() const { return m_sump.empty() ? freshId(job(), "sump") : m_sump; }

void Session::beginMove() {
  SUMPWRIGHT_REQUIRE(study() != nullptr);
  cancelPreview();
  m_moving = true;
  m_before_move = m_place;
}

void Session::moveTo(Place place) {
  SUMPWRIGHT_REQUIRE(m_moving);
  m_place = place;
  reassess();
  Q_EMIT placeChanged();
}

void Session::finishMove() {
  if (!m_moving) return;
  m_moving = false;
  const std::optional<Place> place = m_place;
  if (place && place != m_before_move) putAt(*place);
  Q_EMIT moveFinished();
}

void Session::cancelMove() {
  if (!m_moving) return;
  m_moving = false;
  m_place = m_before_move;
  reassess();
  Q_EMIT placeChanged();
  Q_EMIT moveFinished();
}

void Session::putAt(Place place) {
  const QString text = m_sump.empty() ? tr("Place the sump") : tr("Move the sump");
  base::Result<plan::Job> moved = plan::moveSump(job(), sumpOrNew(), place.ring, place.chainage_m);
  // The place came from this job's own perimeter, so it is on a ring.
  SUMPWRIGHT_REQUIRE(moved.ok());
  m_gesture = 0;
  change(text, std::move(moved).value());
}

void Session::nudge(double by_m) {
  if (!m_study || !m_place || m_moving || isPreviewing()) return;
  const qint64 now = QDateTime::currentMSecsSinceEpoch();
  if (m_gesture == 0 || now - m_nudged_at_ms > kNudgePause_ms) m_gesture = newGesture();
  m_nudged_at_ms = now;
  const Place to = tools::stepped(m_study->perimeter(), *m_place, by_m);
  base::Result<plan::Job> moved = plan::moveSump(job(), m_sump, to.ring, to.chainage_m);
  SUMPWRIGHT_REQUIRE(moved.ok());
  change(tr("Move the sump"), std::move(moved).value(), m_gesture);
}

std::optional<Place> Session::nextAllowed(int direction) const {
  if (!m_study) return std::nullopt;
  return m_study->nextAllowed(m_place.value_or(Place{}), direction);
}

std::optional<Place> Session::nearestAllowed() const {
  if (!m_study || !m_place) return std::nullopt;
  const auto on = nextAllowed(+1);
  const auto back = nextAllowed(-1);
  if (!on || !back) return on ? on : back;
  const double length = m_study->perimeter().length_m(m_place->ring);
  const auto ahead = [&](double from, double to) {
    return to >= from ? to - from : to - from + length;
  };
  const double forward = ahead(m_place->chainage_m, on->chainage_m);
  const double backward = ahead(back->chainage_m, m_place->chainage_m);
  return backward < forward ? back : on;
}

std::optional<Place> Session::bestPlace() const {
  if (!m_study) return std::nullopt;
  const auto& best = m_study->best();
  if (!best.empty()) {
    return std::max_element(best.begin(), best.end(),
                            [](const auto& a, const auto& b) { return a.score < b.score; })
        ->place;
  }
  if (m_study->leastBad()) return m_study->leastBad()->place;
  return std::nullopt;
}

void Session::removeSump() {
  if (!m_job || m_sump.empty()) return;
  edit(tr("Remove the sump"), plan::removeSump(job(), m_sump));
}

void Session::setOutlet(plan::OutletMode mode) {
  if (!m_job) return;
  change(tr("Change the outlet"), plan::setOutlet(job(), mode));
}

base::Problems Session::setCore(double core_mm) {
  // A core that no pipe goes through would leave nothing to judge.
  if (m_sheet) {
    if (const auto bad = siting::sizeProblem(job(), *m_sheet, core_mm / 1000.0)) return {*bad};
  }
  return edit(tr("Change the core"), plan::setCore(job(), core_mm));
}

base::Problems Session::setRuleSheet(const std::string& id) {
  const base::Result<files::LoadedSheet> loaded = files::sheetById(id, m_source);
  if (!loaded) return loaded.problems();
  const rules::RuleSheet& sheet = loaded->sheet;
  const double core_mm = job().design.core_mm.value_or(sheet.default_core_mm.value);
  const auto bad = siting::sizeProblem(job(), sheet, core_mm / 1000.0);
  if (bad && m_study) return {*bad};
  change(tr("Change the rule sheet"), plan::setRuleSheet(job(), id));
  return {};
}

base::Problems Session::recordWaiver(plan::Waiver waiver) {
  if (waiver.id.empty()) waiver.id = freshId(job(), "waiver");
  return edit(tr("Record a waiver"), plan::recordWaiver(job(), waiver));
}

void Session::withdrawWaiver(const std::string& id) {
  edit(tr("Withdraw a waiver"), plan::withdrawWaiver(job(), id));
}

void Session::select(const std::string& thing) {
  if (thing == m_selected) return;
  m_selected = thing;
  Q_EMIT selectionChanged();
}

void Session::hover(std::optional<Place> place) {
  if (place == m_hovered) return;
  m_hovered = place;
  Q_EMIT hoverChanged();
}

void Session::show(const std::string& thing) {
  if (m_job && !thing.empty() && sumpOf(*m_job, thing) != nullptr) chooseSump(thing);
  select(thing);
  Q_EMIT showRequested(thing);
}

}  // namespace sumpwright::session
