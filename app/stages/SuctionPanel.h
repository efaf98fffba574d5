#pragma once
// The stage Suction beside the plan: the share of floor that is predicted to be held, with its
// band; what was measured in test holes; what would help; what is taken for granted, and the fields
// to change it. Predicted and measured are never written alike.

#include <QComboBox>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QWidget>

#include "session/Session.h"
#include "session/SuctionDesk.h"
#include "stages/ActionButton.h"
#include "stages/ChanceList.h"
#include "stages/DrawnView.h"
#include "stages/FactForm.h"
#include "stages/FanList.h"
#include "stages/HoleTable.h"
#include "stages/SideNote.h"

namespace sumpwright::stages {

/// Those of the window's actions that the panel's buttons press.
struct SuctionActions {
  QAction* best = nullptr;
};

class SuctionPanel final : public QWidget {
  Q_OBJECT

 public:
  SuctionPanel(session::Session& session, session::SuctionDesk& desk, const SuctionActions& actions,
               QWidget* parent = nullptr);

  QString share() const { return m_share->text(); }
  QString band() const { return m_band->text(); }
  QString sentence() const { return m_sentence->text(); }
  QString duty() const { return m_duty->text(); }
  ChanceList* places() const { return m_places; }
  FanList* fans() const { return m_fans; }
  HoleTable* holes() const { return m_holes; }
  FactForm* ground() const { return m_ground; }
  FactForm* fan() const { return m_fan; }
  FactForm* test() const { return m_test_form; }
  SideNote* second() const { return m_second; }
  QPushButton* propose() const { return m_propose; }
  QComboBox* holeCount() const { return m_hole_count; }
  QPushButton* stopButton() const { return m_stop; }

 Q_SIGNALS:
  /// Somebody wants to answer this.
  void led(const base::Problem& problem);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* makeShare();
  QWidget* makeScroll();
  QWidget* makeHoles(QWidget* parent);
  void refresh();
  void refreshField();  ///< with every step of a drag: figures alone
  void refreshAnswer();
  void refreshSentence();
  void refreshLines();
  void refreshSecond();
  void refreshScale();
  void refreshWork();
  void refreshForms();
  void refreshTests();
  void proposeHoles();
  void newTest();
  bool hasSump() const;
  /// The answer, where it is of the sumps as they stand.
  const siting::SuctionAnswer* answerNow() const;
  QStringList dutyLines() const;
  void tellForbidden(const base::Message& reason, geometry::Point at);
  void tellHoles(const base::Problems& problems);
  QString proposedWords() const;

  session::Session& m_session;
  session::SuctionDesk& m_desk;
  bool m_old = true;
  int m_fans_known = -1;

  QLabel* m_share;
  QLabel* m_of;
  DrawnView* m_bar;
  QLabel* m_band;
  QLabel* m_sentence;
  QProgressBar* m_progress;
  QPushButton* m_stop;
  QWidget* m_work;
  QLabel* m_work_words;
  QScrollArea* m_scroll;
  QLabel* m_legend_title;
  DrawnView* m_key;
  DrawnView* m_legend;
  SideNote* m_second;
  ChanceList* m_places;
  FanList* m_fans;
  std::optional<base::Problem> m_asked;  ///< what has to be answered before a hole is proposed
  HoleTable* m_holes;
  QPushButton* m_propose;
  QComboBox* m_hole_count;
  QLabel* m_no_hole;  ///< why none is proposed, or nothing was changed
  QPushButton* m_new_test;
  QComboBox* m_tests;
  FactForm* m_test_form;
  QLabel* m_fit;
  QLabel* m_duty;
  QLabel* m_ranges;
  FactForm* m_ground;
  FactForm* m_fan;
  QLabel* m_assumed;
  QLabel* m_cautions;
  ActionButton* m_primary;
};

/// A few words for the stage's entry in the rail, and how far it is (quarters).
struct SuctionBrief {
  QString words;
  int done = 0;
};
SuctionBrief suctionBriefly(const session::Session& session, const session::SuctionDesk& desk);

}  // namespace sumpwright::stages
