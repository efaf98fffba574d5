// MainWindow: its parts and how they lie. What its actions do stands in MainWindowActions.cpp.

#include "window/MainWindow.h"

#include <QActionGroup>
#include <QApplication>
#include <QCloseEvent>
#include <QHBoxLayout>
#include <QMenu>
#include <QScreen>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "paint/Look.h"
#include "stages/SitingText.h"
#include "stages/ThingText.h"
#include "window/Actions.h"
#include "window/FocusRing.h"
#include "window/Theming.h"

namespace sumpwright::window {

namespace {

constexpr int kStartPage = 0;
constexpr int kSitingPage = 1;
constexpr int kPaperPage = 2;

constexpr double kVerdictWidth_px = 332.0;
constexpr double kLowTape_px = 212.0;
constexpr double kReachTape_px = 186.0;
constexpr double kTapeHeight_px = 274.0;
constexpr double kHeight_px = 720.0;
/// Below this width at 100 % the verdict goes under the plan.
constexpr double kCompactWidth_px = 1000.0;

QFrame* hairline(QWidget* parent, bool upright) {
  auto* line = new QFrame(parent);
  line->setProperty("line", true);
  if (upright)
    line->setFixedWidth(1);
  else
    line->setFixedHeight(1);
  return line;
}

QHBoxLayout* bareRow(QWidget* parent) {
  auto* row = new QHBoxLayout(parent);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  return row;
}

QVBoxLayout* bareColumn(QWidget* parent) {
  auto* column = new QVBoxLayout(parent);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  return column;
}

QKeySequence sequence(const QString& text) {
  return QKeySequence(text, QKeySequence::PortableText);
}

}  // namespace

MainWindow::MainWindow(QSettings& settings, Dialogs& dialogs, QWidget* parent)
    : QMainWindow(parent), m_settings(settings), m_dialogs(dialogs) {
  m_theme = themeFromText(m_settings.value(QStringLiteral("theme")).toString());
  applyTheme(m_theme);
  setFont(QApplication::font());
  setAcceptDrops(true);
  makeActions();
  makeParts();
  makeMenu();
  connectParts();
  new FocusRing(this);
  setMinimumSize(760, 480);
  // The first time: a van's laptop, less what its desktop keeps for the title bar and its own.
  const QSize room = screen()->availableSize() - QSize(16, 48);
  resize(QSize(1280, 720).boundedTo(room).expandedTo(minimumSize()));
  restoreGeometry(m_settings.value(QStringLiteral("geometry")).toByteArray());
  watchSuction();
  layOut();
  refreshMain();
  refreshActions();
  refreshRail();
  refreshTitle();
}

MainWindow::~MainWindow() {
  // The parts listen to the session, which is a member and goes before they do as children.
  delete takeCentralWidget();
}

QAction* MainWindow::action(const std::string& id) const {
  const auto it = m_actions.find(id);
  SUMPWRIGHT_REQUIRE(it != m_actions.end());
  return it->second;
}

void MainWindow::makeActions() {
  for (const ActionSpec& spec : actionTable()) {
    auto* action = new QAction(QCoreApplication::translate("Actions", spec.text), this);
    action->setObjectName(QLatin1String(spec.id));
    QList<QKeySequence> keys;
    for (const QString& key :
         QString::fromLatin1(spec.keys).split(QStringLiteral("; "), Qt::SkipEmptyParts)) {
      keys << sequence(key);
    }
    action->setShortcuts(keys);
    action->setShortcutContext(spec.reach == Reach::drawing ? Qt::WidgetShortcut
                                                            : Qt::WindowShortcut);
    QString tip = QCoreApplication::translate("Actions", spec.tip);
    if (!keys.isEmpty())
      tip += QStringLiteral("  (%1)").arg(keys.first().toString(QKeySequence::NativeText));
    action->setToolTip(tip);
    action->setStatusTip(tip);
    action->setCheckable(spec.checked != nullptr);
    if (spec.glyph != nullptr) action->setIcon(paint::icon(*spec.glyph));
    connect(action, &QAction::triggered, this, [this, &spec] {
      spec.run(*this);
      refreshActions();
    });
    if (spec.reach == Reach::window) addAction(action);
    m_actions[spec.id] = action;
  }
}

void MainWindow::makeMenu() {
  m_menu = new QMenu(this);
  auto& menus = m_menus;
  for (const ActionSpec& spec : actionTable()) {
    QMenu*& menu = menus[spec.menu];
    if (menu == nullptr) {
      const bool lays = spec.menu >= Menu::outline && spec.menu <= Menu::whole_plan;
      QMenu* in = lays ? menus[Menu::survey] : m_menu;
      menu = in->addMenu(QCoreApplication::translate("Actions", menuTitle(spec.menu)));
    }
    if (spec.break_before) menu->addSeparator();
    menu->addAction(action(spec.id));
  }
  m_recent_menu = new QMenu(tr("&Recent jobs"), this);
  menus[Menu::file]->insertMenu(action("file.save"), m_recent_menu);
  connect(m_recent_menu, &QMenu::aboutToShow, this, &MainWindow::fillRecentMenu);
  m_sheet_menu = menus[Menu::sump]->addMenu(tr("R&ule sheet"));
  m_sheet_menu->setObjectName(QStringLiteral("sheetMenu"));
  connect(m_sheet_menu, &QMenu::aboutToShow, this, &MainWindow::fillSheetMenu);
  connect(m_menu, &QMenu::aboutToShow, this, [this] {
    refreshActions();
    m_sheet_menu->setEnabled(m_session.hasJob());
  });
  m_rail->setMenu(m_menu);
  m_canvas->setTasks(taskChoices());  // the strip opens the same menus
}

void MainWindow::makeParts() {
  auto* central = new QWidget(this);
  QHBoxLayout* row = bareRow(central);
  m_rail = new StageRail(central);
  row->addWidget(m_rail);
  auto* right = new QWidget(central);
  QVBoxLayout* column = bareColumn(right);
  m_top =
      new TopRow(m_session, action("edit.undo"), action("edit.redo"), action("view.paper"), right);
  column->addWidget(m_top);
  column->addWidget(hairline(right, false));
  m_notice = new stages::SideNote(stages::SideNote::Kind::warning, right);
  m_notice->setDismissable();
  m_notice->hide();
  column->addWidget(m_notice);
  m_main = new QStackedWidget(right);
  column->addWidget(m_main, 1);
  row->addWidget(right, 1);
  m_start = new StartPage(action("file.new"), action("file.open"), m_main);
  m_main->addWidget(m_start);
  makeSitingPage();
  m_main->addWidget(m_siting);
  m_paper = new stages::PaperStage(
      {m_session, m_suction, m_quote, m_firm}, m_settings,
      {action("paper.pdf"), action("paper.svg"), action("paper.png"), action("paper.shopping_csv"),
       action("paper.print"), action("paper.previous_page"), action("paper.next_page")},
      m_main);
  m_main->addWidget(m_paper);
  setCentralWidget(central);
}

void MainWindow::makeSitingPage() {
  const double k = paint::uiScale(font());
  m_siting = new QWidget(m_main);
  QVBoxLayout* column = bareColumn(m_siting);
  auto* upper = new QWidget(m_siting);
  QHBoxLayout* row = bareRow(upper);
  auto* middle = new QWidget(upper);
  QVBoxLayout* middle_column = bareColumn(middle);
  m_centre_row = new QWidget(middle);
  auto* centre_row = new QHBoxLayout(m_centre_row);
  centre_row->setContentsMargins(qRound(20 * k), qRound(8 * k), qRound(20 * k), qRound(4 * k));
  m_centre_choice =
      new stages::Segments(tr("In the middle"), {tr("Elevation"), tr("Plan")}, m_centre_row);
  m_centre_choice->show(0);
  centre_row->addWidget(m_centre_choice);
  centre_row->addStretch();
  middle_column->addWidget(m_centre_row);
  m_centre = new QStackedWidget(middle);
  middle_column->addWidget(m_centre, 1);
  m_canvas = new canvas::PlanCanvas(m_session, m_centre);
  m_canvas->setDesks(m_desk, m_tasks);
  m_canvas->setPicture(m_picture);
  m_canvas->setSuction(m_suction);
  m_canvas->setSentences(stages::saidNamed);
  m_canvas->setZoomActions(action("view.zoom_in"), action("view.zoom_out"),
                           action("view.zoom_fit"));
  m_centre->addWidget(m_canvas);
  m_elevation =
      new tape::ElevationPicture(m_session, tape::ElevationPicture::Size::large, m_centre);
  m_centre->addWidget(m_elevation);
  row->addWidget(middle, 1);
  m_beside = new QWidget(upper);
  QHBoxLayout* beside = bareRow(m_beside);
  beside->addWidget(hairline(m_beside, true));
  m_panel = new stages::SitingPanel(
      m_session,
      {action("sump.best"), action("sump.next_allowed"), action("sump.previous_allowed"),
       action("view.paper"), action("sump.waive")},
      m_beside);
  m_suction_panel = new stages::SuctionPanel(m_session, m_suction, {action("sump.best")}, m_beside);
  m_run = new stages::RunPanel(m_session, m_suction, {action("sump.best")}, m_beside);
  m_survey = new stages::SurveyPanel(m_session, m_desk, m_picture, m_beside);
  connect(m_suction_panel, &stages::SuctionPanel::led, this, [this](const base::Problem& problem) {
    if (m_compact) m_below_choice->show(1);
    showStage(Stage::survey);
    m_survey->leadTo(problem);
    refreshBelow();
  });
  m_side = new QStackedWidget(m_beside);
  m_side->addWidget(m_panel);
  m_side->addWidget(m_survey);
  m_side->addWidget(m_run);
  m_side->addWidget(m_suction_panel);
  beside->addWidget(m_side, 1);
  m_beside->setFixedWidth(qRound(kVerdictWidth_px * k));
  row->addWidget(m_beside);
  column->addWidget(upper, 1);
  column->addWidget(hairline(m_siting, false));

  m_below = new QWidget(m_siting);
  m_below->setProperty("surface", QStringLiteral("panel"));
  m_below->setAttribute(Qt::WA_StyledBackground);
  QVBoxLayout* below = bareColumn(m_below);
  m_below_choice =
      new stages::Segments(tr("Below the plan"), {tr("Wall tape"), tr("Verdict")}, m_below);
  m_below_choice->show(0);
  auto* choice_row = new QHBoxLayout;
  choice_row->setContentsMargins(qRound(20 * k), qRound(6 * k), 0, 0);
  choice_row->addWidget(m_below_choice);
  choice_row->addStretch();
  below->addLayout(choice_row);
  m_below_stack = new QStackedWidget(m_below);
  below->addWidget(m_below_stack, 1);
  m_tape = new tape::WallTape(m_session, m_below_stack);
  m_tape->strip()->setSuction(m_suction);
  m_below_stack->addWidget(m_tape);
  m_tape_choice = new stages::Segments(tr("Walls unrolled"), {tr("Tape"), tr("Elevation")}, m_tape,
                                       stages::Segments::Spacing::close);
  m_tape_choice->show(0);
  m_tape->addLeading(m_tape_choice);
  m_book = new tape::BookStrip(m_session, m_desk, m_below_stack);
  m_below_stack->addWidget(m_book);
  for (const char* id : {"sump.previous_allowed", "sump.next_allowed", "sump.best"}) {
    const bool square = std::string_view(id) != "sump.best";
    auto* button = new stages::ActionButton(
        square ? stages::ActionButton::Role::square : stages::ActionButton::Role::plain, m_tape);
    button->bind(action(id));
    m_tape->addTrailing(button);
  }
  column->addWidget(m_below);
}

std::vector<canvas::TaskChoice> MainWindow::taskChoices() const {
  std::vector<canvas::TaskChoice> choices;
  for (const TaskGroupSpec& group : taskGroups()) {
    canvas::TaskChoice choice;
    choice.group = group.group;
    choice.glyph = group.glyph;
    for (const ActionSpec& spec : taskActions()) {
      if (!spec.task || tools::groupOf(*spec.task) != group.group) continue;
      choice.tasks.push_back({*spec.task, action(spec.id)});
    }
    if (choice.tasks.empty()) continue;
    const QAction* again = action(group.action);
    choice.key = again->shortcut().toString(QKeySequence::NativeText);
    choice.title = again->text();
    if (group.menu) {
      choice.menu = m_menus.at(*group.menu);
      choice.title = choice.menu->title();
    }
    choice.title.remove(QLatin1Char('&'));
    choices.push_back(choice);
  }
  return choices;
}

void MainWindow::connectParts() {
  for (const ActionSpec& spec : actionTable()) {
    if (spec.reach != Reach::drawing) continue;
    m_canvas->addAction(action(spec.id));
    m_tape->strip()->addAction(action(spec.id));
  }
  connect(m_rail, &StageRail::picked, this, &MainWindow::showStage);
  connect(m_start, &StartPage::picked, this, &MainWindow::openPath);
  connect(m_start, &StartPage::keptPicked, this, &MainWindow::openKept);
  connect(m_start, &StartPage::keptDiscarded, this, &MainWindow::discardKept);
  connect(&m_session, &session::Session::keepingFailed, this, [this](const base::Problems& why) {
    tellProblems(
        tr("What you draw is not being kept against a crash or a flat battery."), why,
        tr("Save the job often. Once the place is free again, keeping goes on by itself."));
  });
  connect(m_survey, &stages::SurveyPanel::pageShown, this, &MainWindow::refreshPictureWork);
  connect(m_survey->picture(), &stages::PicturePage::chooseAsked, this, &MainWindow::choosePicture);
  connect(m_survey->picture(), &stages::PicturePage::findAsked, this, &MainWindow::findPicture);
  connect(m_survey->picture(), &stages::PicturePage::importAsked, this, &MainWindow::takeOutline);
  connect(&m_suction, &session::SuctionDesk::fieldChanged, this, &MainWindow::refreshSuctionRail);
  connect(m_paper, &stages::PaperStage::choiceChanged, this, &MainWindow::refreshActions);
  connect(&m_quote, &session::QuoteDesk::bookChanged, this, &MainWindow::refreshActions);
  connect(m_paper->quote(), &stages::QuotePage::bookAsked, this, &MainWindow::chooseBook);
  connect(m_paper->firm(), &stages::FirmPage::logoAsked, this, &MainWindow::chooseLogo);
  const auto typed = [this](const QString& text) {
    if (m_stage == Stage::survey) return typeSurvey(text);
    if (m_stage == Stage::run || m_stage == Stage::suction) showStage(Stage::siting);
    m_panel->openEntry(text);
  };
  connect(m_canvas, &canvas::PlanCanvas::digitTyped, this, typed);
  connect(m_tape->strip(), &tape::TapeStrip::digitTyped, this, typed);
  connect(m_centre_choice, &stages::Segments::picked, this, [this](int) { refreshBelow(); });
  connect(m_tape_choice, &stages::Segments::picked, this,
          [this](int which) { m_tape->showElevation(which == 1); });
  connect(m_below_choice, &stages::Segments::picked, this, [this](int) { refreshBelow(); });
  connect(&m_session, &session::Session::jobChanged, this, [this] {
    m_paper_done.clear();
    refreshMain();
    refreshRail();
  });
  connect(&m_session, &session::Session::placeChanged, this, &MainWindow::refreshRail);
  // What may be done is asked when a drag ends: the answers look for the best place.
  const auto mayDo = [this] {
    if (!m_session.isMoving() && !m_session.isPreviewing()) refreshActions();
  };
  connect(&m_session, &session::Session::placeChanged, this, mayDo);
  connect(&m_session, &session::Session::studyChanged, this, mayDo);
  connect(&m_tasks, &session::TaskDesk::changed, this, &MainWindow::refreshActions);
  connect(&m_session, &session::Session::selectionChanged, this, &MainWindow::refreshActions);
  connect(&m_session, &session::Session::savedStateChanged, this, [this] {
    refreshTitle();
    refreshActions();
  });
}

void MainWindow::layOut() {
  const double k = paint::uiScale(font());
  m_compact = width() / k < kCompactWidth_px;
  m_below_choice->setVisible(m_compact);
  if (m_compact && m_below_stack->indexOf(m_side) < 0) {
    m_below_stack->addWidget(m_side);
    m_side->show();
  } else if (!m_compact && m_below_stack->indexOf(m_side) >= 0) {
    m_below_stack->removeWidget(m_side);
    m_beside->layout()->addWidget(m_side);
    m_side->show();
  }
  m_beside->setVisible(!m_compact);
  refreshBelow();
  // The plan takes most of the growth; the tape some, since every rule has its lane there.
  const double growth = std::max(0.0, height() - kHeight_px * k);
  const int tape = qRound(kTapeHeight_px * k + 0.3 * growth);
  const int whole = std::min(tape, qRound(height() * (m_compact ? 0.52 : 0.42)));
  // The field book is three lines: the plan gets what it leaves.
  const bool book_only = m_stage == Stage::survey && !m_compact;
  // The run is seen on the plan and in the section: of the tape the verdict and what decides it.
  const bool suction = m_stage == Stage::suction;
  const bool tape_low = (m_stage == Stage::run || suction) && !m_compact;
  const int low = std::min(whole, qRound((suction ? kReachTape_px : kLowTape_px) * k));
  m_below->setFixedHeight(book_only  ? std::min(whole, m_book->sizeHint().height())
                          : tape_low ? low
                                     : whole);
}

void MainWindow::resizeEvent(QResizeEvent* event) {
  QMainWindow::resizeEvent(event);
  layOut();
}

void MainWindow::refreshMain() {
  if (!m_session.hasJob()) {
    m_start->show(recent(), installedSamples(), session::leftOvers());
    m_main->setCurrentIndex(kStartPage);
  } else {
    m_main->setCurrentIndex(m_stage == Stage::paper ? kPaperPage : kSitingPage);
  }
  m_top->setPaperShown(m_stage == Stage::paper || !m_session.hasJob());
  m_rail->choose(m_stage);
}

/// Tape or field book below the plan; in the compact layout, what else would stand beside it.
void MainWindow::refreshBelow() {
  const bool survey = m_stage == Stage::survey;
  const bool run = m_stage == Stage::run;
  const bool suction = m_stage == Stage::suction;
  m_centre_row->setVisible(run);
  m_centre->setCurrentWidget(
      run && m_centre_choice->chosen() == 0 ? static_cast<QWidget*>(m_elevation) : m_canvas);
  m_side->setCurrentWidget(survey    ? static_cast<QWidget*>(m_survey)
                           : run     ? static_cast<QWidget*>(m_run)
                           : suction ? static_cast<QWidget*>(m_suction_panel)
                                     : m_panel);
  const bool side = m_compact && m_below_choice->chosen() == 1;
  m_below_stack->setCurrentWidget(side     ? static_cast<QWidget*>(m_side)
                                  : survey ? static_cast<QWidget*>(m_book)
                                           : m_tape);
  m_below_choice->button(0)->setText(survey ? tr("Field book") : tr("Wall tape"));
  m_below_choice->button(1)->setText(survey    ? tr("Survey")
                                     : run     ? tr("Run")
                                     : suction ? tr("Suction")
                                               : tr("Verdict"));
}

bool MainWindow::showsQuote() const {
  return m_paper != nullptr && m_stage == Stage::paper && m_paper->showsQuote();
}

bool MainWindow::undoesBook() const { return showsQuote() && m_quote.isBookChangeLast(); }

bool MainWindow::redoesBook() const { return showsQuote() && m_quote.mayMakeBookChangeAgain(); }

bool MainWindow::canUndo() const { return undoesBook() || m_session.undoStack().canUndo(); }

void MainWindow::undo() {
  if (undoesBook()) return m_paper->quote()->takeBack();
  m_session.undoStack().undo();
}

bool MainWindow::canRedo() const { return redoesBook() || m_session.undoStack().canRedo(); }

void MainWindow::redo() {
  if (redoesBook()) return m_paper->quote()->makeAgain();
  m_session.undoStack().redo();
}

void MainWindow::refreshActions() {
  for (const ActionSpec& spec : actionTable()) {
    QAction* a = action(spec.id);
    if (spec.enabled != nullptr) a->setEnabled(spec.enabled(*this));
    if (spec.checked != nullptr) a->setChecked(spec.checked(*this));
  }
}

void MainWindow::refreshRail() {
  refreshSurveyRail();
  refreshSuctionRail();
  refreshRunRail();
  StageButton* siting = m_rail->button(Stage::siting);
  StageButton* paper = m_rail->button(Stage::paper);
  const siting::Study* study = m_session.study();
  const siting::Assessment* a = m_session.assessment();
  if (!m_session.hasJob()) {
    siting->tell(tr("No job open"), 0);
    return paper->tell({}, 0);
  }
  if (study == nullptr) {
    const auto& rings = m_session.job().plan.rings;
    const bool outline = !rings.empty() && rings.front().closed && !rings.front().corners.empty();
    const QString why = outline ? tr("Plan has faults") : tr("Needs an outline");
    siting->tell(why, 0);
    return paper->tell(why, 0);
  }
  if (a == nullptr) {
    siting->tell(tr("No sump yet"), 0);
  } else {
    const int done = a->state == rules::State::clear || a->waived ? 4
                     : a->state == rules::State::advised_against  ? 3
                     : a->state == rules::State::not_proven       ? 2
                                                                  : 1;
    siting->tell(stages::briefly(*study, *a), done, a->state);
  }
  if (m_paper_done.isEmpty())
    paper->tell(tr("Not printed"), 0);
  else
    paper->tell(m_paper_done, 4);
}

void MainWindow::refreshSuctionRail() {
  const stages::SuctionBrief brief = stages::suctionBriefly(m_session, m_suction);
  m_rail->button(Stage::suction)->tell(brief.words, brief.done);
}

/// What the drill section says, once there is a sump to cut through.
void MainWindow::refreshRunRail() {
  StageButton* run = m_rail->button(Stage::run);
  if (!m_session.hasJob()) return run->tell(tr("No job open"), 0);
  const siting::Study* study = m_session.study();
  const auto place = m_session.place();
  if (study == nullptr || !place) return run->tell(tr("Needs a sump"), 0);
  const auto& sumps = study->job().design.sumps;
  const auto sump = std::find_if(sumps.begin(), sumps.end(), [this](const plan::Sump& one) {
    return one.id == m_session.sump();
  });
  const build::SectionWish wish =
      sump == sumps.end() ? build::SectionWish() : build::wishOf(study->job(), *sump);
  const build::DrillSection section = build::drillSection(study->site(), *place, wish);
  const rules::State state = stages::fitState(section);
  const int done = state == rules::State::clear             ? 3
                   : state == rules::State::advised_against ? 3
                   : state == rules::State::not_proven      ? 2
                                                            : 1;
  run->tell(stages::runBriefly(section), done, state);
}

/// How much of the survey is there: an outline, rooms, then everything looked for.
void MainWindow::refreshSurveyRail() {
  StageButton* survey = m_rail->button(Stage::survey);
  if (!m_session.hasJob()) return survey->tell(tr("No job open"), 0);
  const auto& rings = m_session.job().plan.rings;
  if (rings.empty() || !rings.front().closed || rings.front().corners.empty()) {
    const auto walls = rings.empty() ? 0 : rings.front().taped.size();
    if (walls == 0) return survey->tell(tr("No outline yet"), 0);
    return survey->tell(walls == 1 ? tr("1 wall taped") : tr("%1 walls taped").arg(walls), 1);
  }
  int unsound = 0;
  int missing = 0;
  for (const base::Problem& p : m_session.problems()) {
    ++(p.gravity == base::Gravity::missing ? missing : unsound);
  }
  if (unsound > 0) {
    return survey->tell(unsound == 1 ? tr("1 fault") : tr("%1 faults").arg(unsound), 2,
                        rules::State::refused);
  }
  survey->tell(missing == 0 ? tr("Complete") : tr("%1 not known").arg(missing),
               missing == 0 ? 4 : 3);
}

void MainWindow::refreshTitle() {
  if (!m_session.hasJob()) return setWindowTitle(tr("Sumpwright"));
  const QString address = QString::fromStdString(m_session.job().address);
  setWindowTitle(tr("%1[*] — Sumpwright").arg(address.isEmpty() ? jobName() : address));
  setWindowModified(m_session.isModified());
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!mayLeave()) return event->ignore();
  m_settings.setValue(QStringLiteral("geometry"), saveGeometry());
  m_session.close();  // deliberately: nothing is kept of it
  event->accept();
}

}  // namespace sumpwright::window
