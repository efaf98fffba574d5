#pragma once
// What the stage Suction shows of the open job: the field that follows the sump, and the answer
// with its chances, which takes a second and is made on a thread of its own. Panel, plan, tape and
// paper ask here and listen.
//
// Nothing is worked out while nobody watches, and no more than the curve along the wall while only
// the score is looked at. When the plan changes the last field stays, stale, until the new one is
// there; while only the sump moves the field follows at once, with cells of 10 cm while it moves
// and of 5 cm at rest, coarser on large floors (siting::SuctionOptions::most_cells). Guesses at the
// ground and the curve are kept over moves of the sump.

#include <QObject>
#include <QThreadPool>
#include <QTimer>
#include <atomic>
#include <memory>
#include <optional>

#include "session/Session.h"
#include "siting/SuctionLive.h"

namespace sumpwright::session {

class SuctionDesk final : public QObject {
  Q_OBJECT

 public:
  explicit SuctionDesk(Session& session, QObject* parent = nullptr);
  ~SuctionDesk() override;

  /// reach: the curve along the wall, for the score. Each holds all of those before it.
  enum class Watched { nothing, reach, everything };
  void setWatched(Watched watched);
  Watched watched() const { return m_watched; }

  /// What the field is of; nullptr before the first one is made, or where none can be.
  const siting::SuctionLive* live() const { return m_shown ? &*m_shown : nullptr; }
  /// Of the sumps as they stand now; nothing where none stands in a floor on fill.
  const std::optional<siting::LiveField>& field() const { return m_field; }
  /// The field is of a plan that is no more.
  bool isStale() const { return m_stale; }
  /// The newest answer; nullptr before the first.
  const siting::SuctionAnswer* answer() const { return m_answer.get(); }
  std::shared_ptr<const siting::SuctionAnswer> sharedAnswer() const { return m_answer; }
  /// Of other sumps or another plan than there are now.
  bool isAnswerStale() const { return m_answer_stale; }
  /// Curve along the wall, with its chance once there is an answer; nullptr: not worked out, or of
  /// an old plan.
  const siting::ReachAlong* along() const { return m_along_stale ? nullptr : m_along.get(); }

  std::shared_ptr<const siting::ReachAlong> sharedAlong() const {
    return m_along_stale ? nullptr : m_along;
  }

  /// Of the fan that the answer counts with.
  const std::string& fanTitle() const { return m_fan; }
  bool isFanInvented() const { return m_fan_invented; }

  bool isWorking() const { return m_is_working; }  ///< on what is looked at
  /// The answer is there, finer cells for the field at rest are on their way.
  bool isRefining() const { return m_work != nullptr && !m_is_working; }
  double progress() const { return m_progress; }  ///< 0..1 of the answer
  /// The user's stop: the answer is not made until go(), or until something changes.
  void stop();
  void go();
  bool isStopped() const { return m_stopped; }
  /// Returns when the answer is there, or cannot be: for paper that is wanted now.
  void finish();
  /// Why there is no field or no answer; empty where there is one, or one is on its way.
  const base::Problems& problems() const { return m_no_field.empty() ? m_problems : m_no_field; }
  /// Adds the second sump that the answer proposes and goes on with the first; one step.
  base::Problems addSecond();
  bool mayAddSecond() const;

 Q_SIGNALS:
  void fieldChanged();
  void answerChanged();
  void workChanged();  ///< began, went on, or ended

 private:
  struct Work;
  /// What a stage of the work gives is written before it is told, and not touched after.
  enum class Stage { fielded, answered, done };
  void follow();
  bool wantsAll() const { return m_watched == Watched::everything; }
  bool isWanting() const;
  void judge();
  bool isAlongOfThis() const;
  void refield();
  void begin();
  void giveUp();
  void take(const std::shared_ptr<Work>& work, Stage stage);
  void takeAnswer(const Work& work);
  void forget();

  Session& m_session;
  Watched m_watched = Watched::nothing;
  bool m_stopped = false;
  std::optional<plan::Job> m_key;         ///< what m_live was made of
  std::optional<plan::Job> m_answer_key;  ///< what m_answer was made of ...
  std::vector<plan::Sump> m_answered;     ///< ... and for which sumps
  std::optional<siting::SuctionLive> m_live;
  std::optional<siting::SuctionLive> m_fine;
  std::optional<siting::SuctionLive> m_shown;  ///< of the two, whose m_field is
  std::optional<siting::LiveField> m_field;
  std::shared_ptr<const siting::SuctionAnswer> m_answer;
  std::shared_ptr<const siting::ReachAlong> m_along;
  std::optional<plan::Job> m_along_key;  ///< what m_along was made of, or could not be
  bool m_stale = false;
  bool m_answer_stale = false;
  bool m_along_stale = true;
  std::shared_ptr<Work> m_work;
  bool m_is_working = false;  ///< m_work, until its answer is taken
  double m_progress = 0.0;
  std::string m_fan;
  bool m_fan_invented = false;
  base::Problems m_problems;
  base::Problems m_no_field;  ///< of the sumps where they stand now
  QTimer m_soon;
  QThreadPool m_pool;
};

}  // namespace sumpwright::session
