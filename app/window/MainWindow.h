#pragma once
// The window: stages at the left, the plan with the wall tape below it, the verdict beside it. It
// puts the parts together, owns the actions made from the table in Actions.cpp, and asks the user
// through Dialogs.

#include <QMainWindow>
#include <QSettings>
#include <map>
#include <string>

#include "canvas/PlanCanvas.h"
#include "session/LeftOver.h"
#include "session/PictureDesk.h"
#include "session/Session.h"
#include "session/SuctionDesk.h"
#include "stages/PaperStage.h"
#include "stages/RunPanel.h"
#include "stages/SitingPanel.h"
#include "stages/SuctionPanel.h"
#include "stages/SurveyPanel.h"
#include "tape/BookStrip.h"
#include "tape/WallTape.h"
#include "window/Actions.h"
#include "window/Dialogs.h"
#include "window/StageRail.h"
#include "window/StartPage.h"
#include "window/TopRow.h"

class QMenu;
class QStackedWidget;
class QVBoxLayout;

namespace sumpwright::window {

/// Edits of the whole plan that need no more asking.
enum class PlanEdit { rooms, floor, square, mirror, other_half, turn_left, turn_right };

/// Edits of the chosen thing after another.
enum class Alike { copy, in_line, size };

enum class ThemeChoice { system, light, dark };

class MainWindow final : public QMainWindow {
  Q_OBJECT

 public:
  /// `settings` and `dialogs` must outlive the window.
  MainWindow(QSettings& settings, Dialogs& dialogs, QWidget* parent = nullptr);
  ~MainWindow() override;

  session::Session& session() { return m_session; }
  const session::Session& session() const { return m_session; }
  canvas::PlanCanvas& canvas() { return *m_canvas; }
  tape::WallTape& tape() { return *m_tape; }
  /// The unrolled elevation in the middle of the stage Run, and what chooses it or the plan there.
  tape::ElevationPicture& elevation() { return *m_elevation; }
  stages::Segments& centreChoice() { return *m_centre_choice; }
  /// Wall tape or elevation below.
  stages::Segments& tapeChoice() { return *m_tape_choice; }
  stages::SitingPanel& panel() { return *m_panel; }
  stages::PaperStage& paper() { return *m_paper; }
  const stages::PaperStage& paper() const { return *m_paper; }
  stages::RunPanel& run() { return *m_run; }
  stages::SuctionPanel& suction() { return *m_suction_panel; }
  session::SuctionDesk& suctionDesk() { return m_suction; }
  session::QuoteDesk& quoteDesk() { return m_quote; }
  session::FirmDesk& firmDesk() { return m_firm; }
  stages::SurveyPanel& survey() { return *m_survey; }
  tape::BookStrip& book() { return *m_book; }
  session::TapeDesk& desk() { return m_desk; }
  const session::TaskDesk& tasks() const { return m_tasks; }
  session::PictureDesk& picture() { return m_picture; }
  StageRail& rail() { return *m_rail; }
  TopRow& topRow() { return *m_top; }
  /// The action of that id. Contract: it is in the table.
  QAction* action(const std::string& id) const;
  /// The note over the plan; empty when there is none.
  QString told() const { return m_notice->isHidden() ? QString() : m_notice->text(); }
  bool isCompact() const { return m_compact; }

  // What the actions do.
  void newJob();
  void open();
  bool openPath(const QString& path);
  /// Work that was kept when the program ended early.
  void openKept(const session::LeftOver& left);
  void discardKept(const session::LeftOver& left);
  bool save();
  bool saveAs();
  void closeJob();
  /// The job's last step; on the page of the quote a newer change of the firm's price book first.
  void undo();
  bool canUndo() const;
  void redo();
  bool canRedo() const;
  void goBest();
  void goAllowed(int direction);
  void nudge(double by_m);
  void typePlace();
  /// Goes on with what was typed on the plan in the survey.
  void typeSurvey(const QString& text);
  void showSurvey(stages::SurveyPage page);
  /// The page of the picture under the plan; without one, a picture is asked for.
  void showPicture();
  void choosePicture();
  void layPicture(const QString& path);
  void findPicture();
  void takeOutline();
  void openOutline(const QString& path);
  void editPlan(PlanEdit what);
  /// Gives the pointer something to do on the plan.
  void takeTask(tools::Task task);
  /// The same with what was taken last of a group, at first with the first of it.
  void takeTaskOf(tools::TaskGroup group);
  void makeAlike(Alike what);
  void removeRing();
  bool mayRemoveRing() const { return m_desk.outline() != nullptr; }
  void waive();
  bool mayWaive() const;
  Stage stage() const { return m_stage; }
  void showStage(Stage stage);
  void focusNextPart();
  void toggleFullScreen();
  ThemeChoice theme() const { return m_theme; }
  void setTheme(ThemeChoice theme);
  void openMenu();
  /// The ticked papers as "pdf", "svg" or "png".
  void exportPaper(const char* format);
  /// For a spreadsheet.
  void exportShopping();
  void exportQuote();
  void chooseBook();
  void printPaper();
  void chooseLogo();
  void waitForSuction();
  void turnPage(int by);
  void showKeys();
  void showAbout();

 protected:
  void closeEvent(QCloseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void makeActions();
  void makeMenu();
  void makeParts();
  void makeSitingPage();
  std::vector<canvas::TaskChoice> taskChoices() const;
  void connectParts();
  void layOut();  ///< the verdict beside the plan, or under it where room is short
  void fillRecentMenu();
  void fillSheetMenu();
  void remember(const QString& path);
  QStringList recent() const;
  void refreshActions();
  bool showsQuote() const;
  bool undoesBook() const;
  bool redoesBook() const;
  void refreshRail();
  void refreshTitle();
  void refreshMain();
  void refreshBelow();
  void refreshSurveyRail();
  void refreshRunRail();
  void refreshSuctionRail();
  void watchSuction();
  void refreshPictureWork();
  /// Whether the open job may be let go of: nothing is lost without being asked.
  bool mayLeave();
  /// Whether a job may be opened that another window may have open.
  Changed maySaveTo(const QString& path);
  void tellNotDiscarded(const std::string& slot);
  bool mayOpen(const QString& path);
  bool mayReplace(const QStringList& files);
  void exportCsv(
      const QString& name, const QString& title,
      const std::function<std::string(const price::PricedQuote&, const price::Say&)>& make);
  void paperWritten(const QString& kind, const QStringList& files);
  bool takeUp(const std::string& slot);
  void afterOpening();
  void tell(const QString& text);
  void tellProblems(const QString& what, const base::Problems& problems, const QString& then);
  QString lastFolder() const;
  /// Of the file, without its ending; of a job without one, what stands in its stead.
  QString jobName() const;

  QSettings& m_settings;
  Dialogs& m_dialogs;
  session::Session m_session;
  session::TapeDesk m_desk{m_session};
  session::TaskDesk m_tasks{m_session};
  session::PictureDesk m_picture{m_session};
  session::SuctionDesk m_suction{m_session};
  session::QuoteDesk m_quote{m_session};
  session::FirmDesk m_firm;
  std::map<std::string, QAction*> m_actions;
  QMenu* m_menu = nullptr;
  std::map<Menu, QMenu*> m_menus;
  QMenu* m_recent_menu = nullptr;
  QMenu* m_sheet_menu = nullptr;
  ThemeChoice m_theme = ThemeChoice::system;
  Stage m_stage = Stage::siting;
  bool m_compact = false;
  QString m_paper_done;  ///< when and as what the paper was last saved or printed

  StageRail* m_rail = nullptr;
  TopRow* m_top = nullptr;
  stages::SideNote* m_notice = nullptr;
  QStackedWidget* m_main = nullptr;
  StartPage* m_start = nullptr;
  QWidget* m_siting = nullptr;
  QStackedWidget* m_centre = nullptr;  ///< plan, or elevation
  tape::ElevationPicture* m_elevation = nullptr;
  stages::Segments* m_centre_choice = nullptr;
  QWidget* m_centre_row = nullptr;
  stages::Segments* m_tape_choice = nullptr;
  canvas::PlanCanvas* m_canvas = nullptr;
  tape::WallTape* m_tape = nullptr;
  stages::SitingPanel* m_panel = nullptr;
  stages::RunPanel* m_run = nullptr;
  stages::SuctionPanel* m_suction_panel = nullptr;
  stages::SurveyPanel* m_survey = nullptr;
  tape::BookStrip* m_book = nullptr;
  QStackedWidget* m_side = nullptr;  ///< verdict, survey, suction or run
  stages::PaperStage* m_paper = nullptr;
  QWidget* m_beside = nullptr;  ///< holds the verdict beside the plan
  QWidget* m_below = nullptr;   ///< tape, and in the compact layout the verdict too
  QStackedWidget* m_below_stack = nullptr;
  stages::Segments* m_below_choice = nullptr;
};

}  // namespace sumpwright::window
