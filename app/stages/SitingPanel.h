#pragma once
// The verdict beside the plan: word with its sign, place, sentence, the next thing to do, how to
// set it out, every rule as a cell, waivers, what is not known, and the score.

#include <QAction>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>
#include <QWidget>
#include <vector>

#include "session/Session.h"
#include "stages/ActionButton.h"
#include "stages/PlaceButton.h"
#include "stages/PlaceEntry.h"
#include "stages/RuleCell.h"
#include "stages/ScoreBlock.h"
#include "stages/Segments.h"
#include "stages/SideNote.h"
#include "stages/SumpSwitch.h"
#include "stages/WaiverForm.h"
#include "stages/WaiverList.h"

class QGridLayout;
class QVBoxLayout;

namespace sumpwright::stages {

/// Those of the window's actions that the panel's buttons press.
struct SitingActions {
  QAction* best = nullptr;
  QAction* next_allowed = nullptr;
  QAction* previous_allowed = nullptr;
  QAction* to_paper = nullptr;
  QAction* waive = nullptr;
};

class SignLabel;

class SitingPanel final : public QWidget {
  Q_OBJECT

 public:
  SitingPanel(session::Session& session, const SitingActions& actions, QWidget* parent = nullptr);

  void openEntry(const QString& typed = {});
  void openWaiver(const std::string& rule = {});
  /// A note on top of the panel; it stays until closed or another comes.
  void tell(const QString& text);

  QString word() const { return m_word->text(); }
  QString sentence() const { return m_sentence->text(); }
  PlaceEntry* entry() const { return m_entry; }
  WaiverForm* waiverForm() const { return m_waiver_form; }
  ActionButton* primary() const { return m_primary; }
  const std::vector<RuleCell*>& cells() const { return m_cells; }
  SumpSwitch* sumps() const { return m_sumps; }
  Segments* outlet() const { return m_outlet; }
  Segments* core() const { return m_core; }
  QComboBox* sheets() const { return m_sheets; }

 protected:
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* makeHead();
  void showPage(int page);
  QWidget* makeRulesPage();
  QWidget* makeSetup();
  void refresh();
  void refreshHead();
  void fitSentence();
  void refreshEmptyHead();
  QString circumstances(const siting::Study& study, const siting::Assessment& a) const;
  void refreshButtons();
  void refreshCells();
  void refreshScore();
  void refreshSlow();
  void refreshUnknowns();
  void refreshSetup();
  void announce();
  std::vector<RuleLine> ordered(std::vector<RuleLine> lines);

  session::Session& m_session;
  std::string m_sump_seen;  ///< whose waivers are shown
  SitingActions m_actions;
  SideNote* m_note;
  SignLabel* m_sign;
  QLabel* m_word;
  PlaceButton* m_place;
  QLabel* m_sentence;
  SumpSwitch* m_sumps;
  PlaceEntry* m_entry;
  ActionButton* m_primary;
  ActionButton* m_second;
  QLabel* m_ties;
  QStackedWidget* m_middle;
  QScrollArea* m_scroll;
  QGridLayout* m_grid;
  std::vector<RuleCell*> m_cells;
  std::vector<std::string> m_order;  ///< of the rules, kept while a drag lasts
  WaiverForm* m_waiver_form;
  WaiverList* m_waivers;
  QLabel* m_unknown_title;
  QLabel* m_unknowns;
  Segments* m_outlet;
  Segments* m_core;
  QComboBox* m_sheets;
  ScoreBlock* m_score;
};

}  // namespace sumpwright::stages
