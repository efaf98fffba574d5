// MainWindow: what its actions do, but for files (MainWindowFiles.cpp).

#include <QApplication>
#include <QDir>
#include <QMenu>
#include <algorithm>
#include <cmath>

#include "files/RuleSheets.h"
#include "plan/RoomEdits.h"
#include "plan/WallEdits.h"
#include "plan/WholePlanEdits.h"
#include "stages/SitingText.h"
#include "window/Actions.h"
#include "window/KeysDialog.h"
#include "window/MainWindow.h"
#include "window/Theming.h"

namespace sumpwright::window {

namespace {

QString said(const base::Message& message) {
  return QString::fromStdString(words::say(message, words::Units::metric));
}

/// The first in it that Tab would reach; nullptr where there is none.
QWidget* firstField(QWidget* panel) {
  for (QWidget* each = panel->nextInFocusChain(); each != panel; each = each->nextInFocusChain()) {
    const bool takes = (each->focusPolicy() & Qt::TabFocus) == Qt::TabFocus;
    if (takes && each->isVisible() && each->isEnabled() && panel->isAncestorOf(each)) return each;
  }
  return nullptr;
}

}  // namespace

void MainWindow::tell(const QString& text) {
  m_notice->setText(text);
  m_notice->show();
}

/// What happened, what it means line by line, what to do.
void MainWindow::tellProblems(const QString& what, const base::Problems& problems,
                              const QString& then) {
  constexpr std::size_t kMost = 8;
  QStringList lines{what};
  for (std::size_t i = 0; i < std::min(problems.size(), kMost); ++i) {
    QString line = QStringLiteral("• ") + said(problems[i].message);
    if (!problems[i].pointer.empty())
      line += tr(" (at %1)").arg(QString::fromStdString(problems[i].pointer));
    lines << line;
  }
  if (problems.size() > kMost)
    lines << tr("and %n more", nullptr, static_cast<int>(problems.size() - kMost));
  lines << then;
  tell(lines.join(QLatin1Char('\n')));
}

void MainWindow::fillSheetMenu() {
  m_sheet_menu->clear();
  for (const files::SheetEntry& entry : files::availableSheets().sheets) {
    QAction* sheet = m_sheet_menu->addAction(QString::fromStdString(entry.title));
    sheet->setCheckable(true);
    sheet->setChecked(entry.id == m_session.job().rule_sheet);
    connect(sheet, &QAction::triggered, this, [this, id = entry.id] {
      const base::Problems problems = m_session.setRuleSheet(id);
      if (!problems.empty()) tell(stages::said(problems.front().message, m_session.job()));
    });
  }
}

void MainWindow::goBest() {
  const auto place = m_session.bestPlace();
  if (!place) return;
  const auto before = m_session.place();
  m_session.putAt(*place);
  const siting::ReachAlong* along = m_suction.along();
  if (m_stage != Stage::suction || !before || along == nullptr || !along->computed()) return;
  const auto percent = [along](perimeter::Place at) {
    return static_cast<int>(std::floor(100.0 * along->at(at).floor + 1e-9));
  };
  tell(
      tr("Moved by the score: %1 % of the floor predicted from there, %2 % from where it stood. %3 "
         "The likeliest reach heads the list beside the plan.")
          .arg(percent(*place))
          .arg(percent(*before))
          .arg(stages::reachInScoreText(*m_session.study())));
}

void MainWindow::goAllowed(int direction) {
  if (const auto place = m_session.nextAllowed(direction)) m_session.putAt(*place);
}

void MainWindow::nudge(double by_m) { m_session.nudge(by_m); }

void MainWindow::typePlace() {
  showStage(Stage::siting);
  if (m_compact) {
    m_below_choice->show(1);
    refreshBelow();
  }
  m_panel->openEntry();
}

bool MainWindow::mayWaive() const { return !stages::WaiverForm::waivable(m_session).empty(); }

void MainWindow::waive() {
  showStage(Stage::siting);
  if (m_compact) {
    m_below_choice->show(1);
    refreshBelow();
  }
  m_panel->openWaiver();
}

void MainWindow::showStage(Stage stage) {
  m_stage = stage;
  m_canvas->setSurveying(stage == Stage::survey);
  watchSuction();
  m_canvas->setShowingField(stage == Stage::suction);
  m_tape->strip()->setShowingReach(stage == Stage::suction);
  refreshPictureWork();
  layOut();
  refreshMain();
  refreshActions();
  if (stage == Stage::survey && m_session.hasJob()) m_survey->takeFocus();
}

/// As much of the suction as the stage shows: siting, what its score counts.
void MainWindow::watchSuction() {
  using Watched = session::SuctionDesk::Watched;
  const bool shown = m_stage == Stage::suction || m_stage == Stage::run || m_stage == Stage::paper;
  const Watched rest = m_stage == Stage::siting ? Watched::reach : Watched::nothing;
  m_suction.setWatched(shown ? Watched::everything : rest);
}

void MainWindow::showSurvey(stages::SurveyPage page) {
  m_survey->showPage(page);
  if (m_compact) m_below_choice->show(1);
  showStage(Stage::survey);
  refreshBelow();
}

void MainWindow::takeTask(tools::Task task) {
  if (m_stage != Stage::survey) showStage(Stage::survey);
  m_tasks.take(task);
  m_canvas->setFocus(Qt::OtherFocusReason);
}

void MainWindow::takeTaskOf(tools::TaskGroup group) {
  if (const auto last = m_tasks.lastOf(group)) return takeTask(*last);
  for (const ActionSpec& spec : taskActions()) {
    if (spec.task && tools::groupOf(*spec.task) == group) return takeTask(*spec.task);
  }
}

void MainWindow::removeRing() {
  if (m_desk.removeRing()) return m_notice->hide();
  tellProblems(tr("That ring stays."), m_desk.problems(), tr("Nothing was changed."));
}

void MainWindow::makeAlike(Alike what) {
  const base::Problems problems = what == Alike::copy      ? m_tasks.copyBeside()
                                  : what == Alike::in_line ? m_tasks.bringInLine()
                                                           : m_tasks.sizeAlike();
  if (problems.empty()) return m_notice->hide();
  tellProblems(what == Alike::copy ? tr("There is no room for a copy.") : tr("That cannot be."),
               problems, tr("Nothing was changed."));
}

void MainWindow::editPlan(PlanEdit what) {
  constexpr double kSquareWithin_deg = 5.0;  // own figure: what a sketch is out, not a splayed wall
  const plan::Job& job = m_session.job();
  const auto apply = [&](const QString& text, base::Result<plan::Job> after) {
    const base::Problems problems = m_session.edit(text, std::move(after));
    if (!problems.empty()) tellProblems(text, problems, {});
  };
  switch (what) {
    case PlanEdit::rooms:
      return apply(tr("Rooms from walls"), plan::roomsFromWalls(job));
    case PlanEdit::floor:
      return apply(tr("Floor from walls"), plan::floorZoneFromWalls(job));
    case PlanEdit::square:
      return apply(tr("Make corners square"), plan::straighten(job, 0, kSquareWithin_deg));
    case PlanEdit::mirror:
      return apply(tr("Mirror the plan"), plan::mirrorPlan(job));
    case PlanEdit::other_half:
      return apply(tr("Make it the other half"), plan::otherHalf(job));
    case PlanEdit::turn_left:
      return apply(tr("Turn the plan"), plan::turnPlan(job, 90.0));
    case PlanEdit::turn_right:
      return apply(tr("Turn the plan"), plan::turnPlan(job, -90.0));
  }
}

void MainWindow::typeSurvey(const QString& text) {
  if (m_compact) {
    m_below_choice->show(1);
    refreshBelow();
  }
  const stages::SurveyPage now = m_survey->page();
  const bool asks_nothing = now == stages::SurveyPage::house || now == stages::SurveyPage::looked ||
                            now == stages::SurveyPage::check;
  if (asks_nothing) {
    m_survey->showPage(m_desk.isOpen() ? stages::SurveyPage::outline : stages::SurveyPage::things);
  }
  QLineEdit* field = m_survey->page() == stages::SurveyPage::outline ? m_survey->outline()->field()
                     : m_survey->page() == stages::SurveyPage::picture
                         ? m_survey->picture()->field()
                     : m_survey->page() == stages::SurveyPage::things ? m_survey->things()->line()
                                                                      : nullptr;
  if (field == nullptr) return;  // nothing is asked for there
  field->setFocus(Qt::OtherFocusReason);
  field->setText(text);  // what was left there from before is not gone on with
  Q_EMIT field->textEdited(field->text());
}

void MainWindow::focusNextPart() {
  const bool survey = m_stage == Stage::survey;
  QWidget* typing = m_survey->page() == stages::SurveyPage::outline
                        ? static_cast<QWidget*>(m_survey->outline()->field())
                        : m_survey->things()->line();
  if (m_survey->page() == stages::SurveyPage::picture) {
    typing = m_survey->picture()->field();
    if (typing == nullptr) typing = m_survey->picture()->firstButton();
  } else if (m_survey->page() == stages::SurveyPage::import) {
    typing = m_survey->import()->unit();
  }
  QWidget* side = m_side->currentWidget();
  QWidget* first = side == m_panel && m_panel->primary()->isVisible()
                       ? static_cast<QWidget*>(m_panel->primary())
                       : firstField(side);
  QWidget* parts[] = {m_centre->currentWidget(), m_tape->strip(), m_tape->elevation(),
                      survey ? typing : first, m_rail->button(m_stage)};
  const int count = static_cast<int>(std::size(parts));
  QWidget* has = QApplication::focusWidget();
  int at = -1;
  for (int i = 0; i < count; ++i) {
    // Anywhere in the panel counts as the panel.
    if (parts[i] == has || (i == 3 && has != nullptr && side->isAncestorOf(has))) at = i;
  }
  for (int step = 1; step <= count; ++step) {
    QWidget* next = parts[(at + step + count) % count];
    if (next == nullptr || !next->isVisible() || !next->isEnabled()) continue;
    return next->setFocus(Qt::TabFocusReason);
  }
}

void MainWindow::toggleFullScreen() {
  if (isFullScreen())
    showNormal();
  else
    showFullScreen();
}

void MainWindow::setTheme(ThemeChoice theme) {
  m_theme = theme;
  m_settings.setValue(QStringLiteral("theme"), textOf(theme));
  applyTheme(theme);
  refreshRail();
}

void MainWindow::openMenu() { m_rail->openMenu(); }

void MainWindow::turnPage(int by) { m_paper->turnPage(by); }

void MainWindow::showKeys() {
  auto* keys = new KeysDialog(this);
  keys->setAttribute(Qt::WA_DeleteOnClose);
  keys->show();
}

void MainWindow::showAbout() {
  m_dialogs.about(this, tr("About Sumpwright"),
                  tr("<h3>Sumpwright %1</h3><p>Siting of fan-assisted radon sumps on a floor plan. "
                     "MIT licence.</p>"
                     "<p>A clear place is one no rule of the chosen sheet objects to, as far as "
                     "the survey goes. It "
                     "replaces neither locating the services before coring, nor local codes, nor "
                     "licensed practice. A "
                     "prediction is not a measurement: the re-test decides.</p>")
                      .arg(QApplication::applicationVersion()));
}

}  // namespace sumpwright::window
