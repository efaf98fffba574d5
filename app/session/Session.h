#pragma once
// The one open job: its value, its newest study, the sump being sited, selection and undo. Nobody
// else writes the job; widgets ask here and listen.
//
// While a sump is dragged only the place and its assessment move; the job changes once, when the
// drag is finished, as one step of undo. While a wall or a window is dragged the job itself is a
// live one, studied anew with every move; that, too, is one step when it is finished. The study is
// made anew after every change of the job, in the call that made it: it takes a few milliseconds
// (tests/gui holds it to the 16 ms of a frame on every sample).

#include <QDateTime>
#include <QObject>
#include <QString>
#include <QUndoStack>
#include <memory>
#include <optional>
#include <string>

#include "files/RuleSheets.h"
#include "plan/DesignEdits.h"
#include "plan/JobText.h"
#include "session/JobEdit.h"
#include "session/WorkKeeper.h"
#include "siting/Study.h"

namespace sumpwright::session {

using perimeter::Place;

class Session final : public QObject {
  Q_OBJECT

 public:
  explicit Session(QObject* parent = nullptr);
  ~Session() override;

  // The file.

  /// Opens a job, or says why not and leaves the open one alone. An unsound job opens with its
  /// problems and without a study.
  base::Problems open(const QString& path);
  /// A job with nothing drawn yet and without a file: path() is empty until saveAs().
  void newJob();
  /// Work that a window left behind when it ended early (LeftOver.h), as a job with changes; its
  /// path is that of the job it was work on. It is kept on until it is saved or closed.
  base::Problems takeUp(const std::string& slot);
  /// Contract: path() is not empty.
  base::Problems save();
  base::Problems saveAs(const QString& path);
  /// Lets go of the job; what was kept of it is removed.
  void close();
  /// Whether the job's file holds something else than was read from it or saved to it last: another
  /// window or program wrote it. Saving would overwrite that.
  bool isChangedElsewhere() const;
  /// Who else has the job at that path open (whoHas()); empty: nobody.
  QString openElsewhere(const QString& at_path) const;
  /// Returns when all that was drawn is kept against a crash, as far as it can be.
  void waitUntilKept() { m_keeper.finish(); }

  bool hasJob() const { return m_job != nullptr; }
  /// The job as it stands, the live one of a drag included. Contract: hasJob().
  const plan::Job& job() const;
  QString path() const { return m_path; }
  bool isModified() const { return !m_undo.isClean(); }
  QDateTime savedAt() const { return m_saved_at; }
  /// Unsound and missing ones of the job as it stands.
  const base::Problems& problems() const { return m_problems; }
  /// Why there is no study, empty when there is one or no job.
  const base::Problems& studyProblems() const { return m_study_problems; }
  /// nullptr without a job, or with an unsound one.
  const siting::Study* study() const { return m_study ? &*m_study : nullptr; }
  /// Judges places by a curve of reach too. Whoever made it answers for it that it is of the plan
  /// as it stands (SuctionDesk.h); the next edit makes a study without it.
  void judgeReach(std::shared_ptr<const siting::ReachAlong> reach);

  // Edits. All need a job.

  /// What an edit verb gave: pushed as one step of undo called `text`, or its problems, and nothing
  /// is changed. A job equal to the open one is no step. Steps that share a `gesture` other than 0
  /// (newGesture()) become one, as long as none of another kind comes between and nothing is saved.
  /// An edit made while a preview is on takes what is previewed along: one step holds both.
  base::Problems edit(const QString& text, base::Result<plan::Job> after, int gesture = 0);
  int newGesture() { return ++m_gestures; }

  /// A drag of something drawn: begin, preview as often as the pointer moves, finish or cancel.
  /// Each preview is made from the job as it was at the beginning. Undo, redo, saving, opening and
  /// closing cancel a drag that is on; what is still asked of it after that is ignored, since the
  /// pointer does not know.
  void beginPreview();
  void preview(plan::Job live);
  /// One step of undo from the job at the beginning, if it is another now.
  void finishPreview(const QString& text);
  void cancelPreview();
  bool isPreviewing() const { return m_before_preview != nullptr; }
  /// The job as it was before the drag that is on. Contract: isPreviewing().
  const plan::Job& jobBeforePreview() const;

  // The sump.

  /// Id of the sump being sited; empty when the design has no cored one.
  const std::string& sump() const { return m_sump; }
  void chooseSump(const std::string& id);
  /// Where it stands now, the live place of a drag included.
  std::optional<Place> place() const { return m_place; }
  /// What is known of that place; nullptr without a sump or a study.
  const siting::Assessment* assessment() const { return m_assessment ? &*m_assessment : nullptr; }

  void beginMove();
  void moveTo(Place place);
  void finishMove();
  void cancelMove();
  bool isMoving() const { return m_moving; }

  /// Puts the sump (a new one if there is none) at a place, as one step.
  void putAt(Place place);
  /// Moves it along the wall; steps without a pause between them are one step of undo.
  void nudge(double by_m);
  /// The next place to one side that nothing objects to; nothing when there is none.
  std::optional<Place> nextAllowed(int direction) const;
  /// The nearest of the two, by distance along the wall.
  std::optional<Place> nearestAllowed() const;
  /// The best scored place, or the least bad one where nothing is allowed.
  std::optional<Place> bestPlace() const;
  void removeSump();

  // The design.

  void setOutlet(plan::OutletMode mode);
  base::Problems setCore(double core_mm);
  base::Problems setRuleSheet(const std::string& id);
  base::Problems recordWaiver(plan::Waiver waiver);
  void withdrawWaiver(const std::string& id);

  /// Every step of the session; there is no limit to them.
  QUndoStack& undoStack() { return m_undo; }
  const QUndoStack& undoStack() const { return m_undo; }

  // What is looked at.

  const std::string& selected() const { return m_selected; }
  void select(const std::string& thing);
  std::optional<Place> hovered() const { return m_hovered; }
  void hover(std::optional<Place> place);
  /// Asks the views to bring a thing into sight.
  void show(const std::string& thing);

 Q_SIGNALS:
  void jobChanged();    ///< another job, or none
  void studyChanged();  ///< a new study (or none); the place may have changed with it
  void placeChanged();  ///< the sump stands elsewhere, or is judged otherwise
  void moveFinished();  ///< a drag ended, of the sump or with a preview
  void savedStateChanged();
  void selectionChanged();
  void hoverChanged();
  void showRequested(const std::string& thing);
  /// Work is not being kept against a crash, and why; once until it is again.
  void keepingFailed(const base::Problems& problems);

 private:
  void adopt(plan::ReadJob read, const QString& path, std::string file_hash);
  void emitAll();
  void keepWork();
  void apply(const SharedJob& job);
  void change(const QString& text, plan::Job after, int gesture = 0);
  void put(SharedJob job);
  void restudy();
  void reassess();
  void findSump();
  std::string sumpOrNew() const;

  SharedJob m_job;
  SharedJob m_before_preview;  ///< none: no preview is on
  plan::JobSource m_source;
  QString m_path;
  std::string m_file_hash;  ///< of the file's bytes as read or saved last; empty: there were none
  QDateTime m_saved_at;
  base::Problems m_problems;
  base::Problems m_study_problems;
  std::optional<rules::RuleSheet> m_sheet;
  std::string m_sheet_id;
  std::optional<siting::Study> m_study;
  std::string m_sump;
  std::optional<Place> m_place;
  std::optional<siting::Assessment> m_assessment;
  bool m_moving = false;
  bool m_judging = false;  ///< telling that the study has another curve of reach
  std::optional<Place> m_before_move;
  int m_gesture = 0;   ///< of the latest step, 0: closed
  int m_gestures = 0;  ///< counted so far
  qint64 m_nudged_at_ms = 0;
  std::string m_selected;
  std::optional<Place> m_hovered;
  WorkKeeper m_keeper;
  int m_kept_step = 0;  ///< index of the step that was kept last
  QUndoStack m_undo;
};

}  // namespace sumpwright::session
