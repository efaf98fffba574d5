#include "stages/SitingPanel.h"

#include <QAccessible>
#include <QEvent>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QScrollBar>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <map>

#include "paint/Look.h"
#include "siting/Verdict.h"
#include "stages/SignLabel.h"
#include "stages/SteadyCombo.h"
#include "stages/ThingText.h"

namespace sumpwright::stages {

namespace {

constexpr int kRulesPage = 0;
constexpr int kWaiverPage = 1;
constexpr double kSentence = 1.25;          // size of the verdict's sentence
constexpr double kBetweenCores_m = 0.1195;  // half way between the two that can be chosen

QLabel* second(QWidget* parent, double factor = 0.92) {
  auto* label = new QLabel(parent);
  label->setWordWrap(true);
  label->setProperty("tone", QStringLiteral("second"));
  label->setFont(paint::sized(parent->font(), factor));
  return label;
}

QLabel* title(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setFont(paint::sized(parent->font(), 0.98, true));
  return label;
}

/// A phrase as a sentence of its own.
QString asSentence(QString phrase) {
  if (!phrase.isEmpty()) phrase[0] = phrase[0].toUpper();
  return phrase + QLatin1Char('.');
}

/// Rank of a line at rest: what objects first, then the nearest, then what is met.
int rank(const RuleLine& line) {
  switch (line.state) {
    case rules::State::refused:
      return 0;
    case rules::State::not_proven:
      return 1;
    case rules::State::advised_against:
      return 2;
    case rules::State::clear:
      break;
  }
  if (line.close) return 3;
  return line.figure.isEmpty() ? 5 : 4;
}

/// What is not known yet; kinds nobody looked for are named together in one line.
std::vector<base::Message> missing(const base::Problems& problems) {
  std::vector<base::Message> others;
  std::vector<base::Message> kinds;
  for (const base::Problem& p : problems) {
    if (p.gravity != base::Gravity::missing) continue;
    const base::Arg* kind = p.message.find("kind");
    const auto* phrase = kind == nullptr ? nullptr : std::get_if<base::Message>(&kind->value);
    if (p.message.id == "plan.looked.not" && phrase != nullptr)
      kinds.push_back(*phrase);
    else
      others.push_back(p.message);
  }
  if (kinds.empty()) return others;
  others.insert(others.begin(),
                base::Message("plan.looked.not", {base::phrase("kind", siting::listOf(kinds))}));
  return others;
}

}  // namespace

SitingPanel::SitingPanel(session::Session& session, const SitingActions& actions, QWidget* parent)
    : QWidget(parent), m_session(session), m_actions(actions) {
  setProperty("surface", QStringLiteral("panel"));
  setAttribute(Qt::WA_StyledBackground);
  setAccessibleName(tr("Verdict"));
  auto* column = new QVBoxLayout(this);
  const int margin = qRound(20 * paint::uiScale(font()));
  column->setContentsMargins(margin, qRound(0.6 * margin), margin, qRound(0.4 * margin));
  column->setSpacing(6);
  m_note = new SideNote(SideNote::Kind::warning, this);
  m_note->setDismissable();
  m_note->hide();
  column->addWidget(m_note);
  column->addWidget(makeHead());
  m_middle = new QStackedWidget(this);
  m_middle->addWidget(makeRulesPage());
  auto* waiver_scroll = new QScrollArea(this);
  waiver_scroll->setWidgetResizable(true);
  waiver_scroll->setFrameShape(QFrame::NoFrame);
  m_waiver_form = new WaiverForm(session, waiver_scroll);
  waiver_scroll->setWidget(m_waiver_form);
  m_middle->addWidget(waiver_scroll);
  // In a low window the rules scroll sooner than a label is cut.
  m_middle->setMinimumHeight(qRound(44 * paint::uiScale(font())));
  column->addWidget(m_middle, 1);
  m_score = new ScoreBlock(this);
  column->addWidget(m_score);

  connect(m_waiver_form, &WaiverForm::closed, this, [this] {
    showPage(kRulesPage);
    refresh();
  });
  connect(&session, &session::Session::placeChanged, this, [this] {
    refresh();
    if (m_session.sump() != m_sump_seen) m_waivers->refresh();
    m_sump_seen = m_session.sump();
  });
  connect(&session, &session::Session::studyChanged, this, [this] {
    refresh();
    if (!m_session.isPreviewing() || isVisible()) refreshSlow();
  });
  connect(&session, &session::Session::moveFinished, this, [this] {
    refresh();
    announce();
  });
  connect(&session, &session::Session::jobChanged, this, [this] {
    m_note->hide();
    m_entry->hide();
    showPage(kRulesPage);
    m_scroll->verticalScrollBar()->setValue(0);
  });
  refresh();
  refreshSlow();
}

QWidget* SitingPanel::makeHead() {
  auto* head = new QWidget(this);
  auto* column = new QVBoxLayout(head);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);

  auto* row = new QHBoxLayout;
  row->setSpacing(10);
  m_sign = new SignLabel(head);
  m_word = new QLabel(head);
  m_word->setObjectName(QStringLiteral("verdictWord"));
  m_word->setFont(paint::sized(font(), 1.9, true));
  m_place = new PlaceButton(head);
  connect(m_place, &PlaceButton::clicked, this, [this] { openEntry(); });
  row->addWidget(m_sign);
  row->addWidget(m_word);
  row->addWidget(m_place, 1);
  column->addLayout(row);
  m_sumps = new SumpSwitch(m_session, head);
  column->addWidget(m_sumps);

  m_entry = new PlaceEntry(m_session, head);
  m_entry->hide();
  connect(m_entry, &PlaceEntry::closed, this, &SitingPanel::refreshHead);
  column->addWidget(m_entry);

  m_sentence = new QLabel(head);
  m_sentence->setObjectName(QStringLiteral("verdictSentence"));
  m_sentence->setWordWrap(true);
  m_sentence->setFont(paint::sized(font(), kSentence));
  m_sentence->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  // Two lines always, so that nothing below jumps while the sentence changes in a drag.
  m_sentence->setMinimumHeight(qRound(2.2 * QFontMetrics(m_sentence->font()).lineSpacing()));
  column->addWidget(m_sentence);

  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(8);
  m_primary = new ActionButton(ActionButton::Role::primary, head);
  m_primary->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  m_second = new ActionButton(ActionButton::Role::plain, head);
  buttons->addWidget(m_primary, 1);
  buttons->addWidget(m_second);
  column->addLayout(buttons);
  m_ties = second(head, 0.88);
  m_ties->setObjectName(QStringLiteral("ties"));
  column->addWidget(m_ties);
  return head;
}

QWidget* SitingPanel::makeRulesPage() {
  m_scroll = new QScrollArea(this);
  m_scroll->setWidgetResizable(true);
  m_scroll->setFrameShape(QFrame::NoFrame);
  m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_scroll->setFocusPolicy(Qt::NoFocus);
  auto* page = new QWidget(m_scroll);
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(0, 2, qRound(6 * paint::uiScale(font())), 4);
  column->setSpacing(10);
  auto* cells = new QWidget(page);
  m_grid = new QGridLayout(cells);
  m_grid->setContentsMargins(0, 0, 0, 0);
  m_grid->setSpacing(6);
  column->addWidget(cells);
  m_waivers = new WaiverList(m_session, page);
  column->addWidget(m_waivers);
  m_unknown_title = title(tr("Not known yet"), page);
  m_unknowns = second(page);
  m_unknowns->setObjectName(QStringLiteral("unknowns"));
  m_unknowns->setTextFormat(Qt::RichText);
  column->addWidget(m_unknown_title);
  column->addWidget(m_unknowns);
  column->addWidget(makeSetup());
  column->addStretch();
  m_scroll->setWidget(page);
  return m_scroll;
}

QWidget* SitingPanel::makeSetup() {
  auto* setup = new QWidget(this);
  auto* grid = new QGridLayout(setup);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setSpacing(8);
  grid->addWidget(title(tr("Set-up"), setup), 0, 0, 1, 2);
  m_outlet = new Segments(tr("Outlet"), {tr("Low at hole"), tr("Riser to eaves")}, setup);
  m_core = new Segments(tr("Core"), {tr("127 mm"), tr("112 mm")}, setup);
  m_sheets = new SteadyCombo(setup);
  m_sheets->setAccessibleName(tr("Rule sheet"));
  m_sheets->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_sheets->setMinimumContentsLength(8);
  int row = 1;
  for (const auto& [label, widget] : {std::pair<QString, QWidget*>{tr("Outlet"), m_outlet},
                                      {tr("Core"), m_core},
                                      {tr("Rules"), m_sheets}}) {
    QLabel* name = second(setup);
    name->setText(label);
    name->setWordWrap(false);
    grid->addWidget(name, row, 0);
    grid->addWidget(widget, row, 1);
    ++row;
  }
  grid->setColumnStretch(1, 1);
  connect(m_outlet, &Segments::picked, this, [this](int index) {
    m_session.setOutlet(index == 0 ? plan::OutletMode::low : plan::OutletMode::riser);
  });
  connect(m_core, &Segments::picked, this, [this](int index) {
    const base::Problems problems = m_session.setCore(index == 0 ? 127.0 : 112.0);
    if (!problems.empty()) tell(said(problems.front().message, m_session.job()));
    refreshSetup();
  });
  connect(m_sheets, &QComboBox::activated, this, [this](int index) {
    const base::Problems problems =
        m_session.setRuleSheet(m_sheets->itemData(index).toString().toStdString());
    if (!problems.empty()) tell(said(problems.front().message, m_session.job()));
    refreshSetup();
  });
  return setup;
}

/// While a place is typed, how to set out the old one gives way.
void SitingPanel::openEntry(const QString& typed) {
  m_entry->open(typed);
  m_ties->setVisible(!m_entry->isVisibleTo(this) && m_session.assessment() != nullptr);
}

void SitingPanel::openWaiver(const std::string& rule) {
  if (WaiverForm::waivable(m_session).empty()) return;
  showPage(kWaiverPage);
  m_waiver_form->open(rule);
}

/// The waiver form needs the height: the verdict's word stays, what explains it gives way.
void SitingPanel::showPage(int page) {
  m_middle->setCurrentIndex(page);
  const bool rules = page == kRulesPage;
  m_sentence->setVisible(rules);
  m_ties->setVisible(rules && m_session.assessment() != nullptr);
  m_score->setVisible(rules && m_session.assessment() != nullptr);
  m_primary->setVisible(rules && m_session.study() != nullptr);
  m_second->setVisible(rules && m_session.assessment() != nullptr);
}

void SitingPanel::tell(const QString& text) {
  m_note->setText(text);
  m_note->show();
}

void SitingPanel::refresh() {
  // A wall is dragged in the survey: nobody sees this, and the end of the drag comes here again.
  if (m_session.isPreviewing() && !isVisible()) return;
  refreshHead();
  refreshButtons();
  refreshCells();
  refreshScore();
  if (!m_session.isMoving() && m_middle->currentIndex() == kWaiverPage &&
      WaiverForm::waivable(m_session).empty()) {
    showPage(kRulesPage);
  }
}

void SitingPanel::refreshHead() {
  const siting::Study* study = m_session.study();
  const siting::Assessment* a = m_session.assessment();
  const drawing::Theme& t = paint::look(palette());
  if (study == nullptr || a == nullptr) return refreshEmptyHead();
  m_sign->show(a->state);
  m_word->setText(stateWord(a->state, a->waived));
  const double size = a->waived ? 1.2 : m_word->text().size() > 10 ? 1.5 : 1.9;
  m_word->setFont(paint::sized(font(), size, true));
  const QString ink = QStringLiteral("color:%1").arg(paint::colour(t.of(a->state).text).name());
  if (m_word->styleSheet() != ink) m_word->setStyleSheet(ink);  // polishing anew is slow in a drag
  m_place->show(wallText(*study, a->place), chainageText(*study, a->place));
  m_sentence->setText(verdictBody(*study, *a));
  fitSentence();
  m_ties->setText(circumstances(*study, *a));
  m_ties->setVisible(m_middle->currentIndex() == kRulesPage && !m_entry->isVisibleTo(this));
}

/// As large as two lines hold; a sentence that is longer even in small letters gets the lines it
/// needs.
void SitingPanel::fitSentence() {
  const int two = qRound(2.2 * QFontMetrics(paint::sized(font(), kSentence)).lineSpacing());
  int needed = two;
  for (const double size : {kSentence, 1.1, 0.98}) {
    m_sentence->setFont(paint::sized(font(), size));
    needed = m_sentence->heightForWidth(m_sentence->width());
    if (needed <= two) break;
  }
  m_sentence->setMinimumHeight(std::max(two, needed));
}

/// What the verdict is for, what it takes for granted, and how to set the place out.
QString SitingPanel::circumstances(const siting::Study& study, const siting::Assessment& a) const {
  QString outlet = outletText(study);
  if (a.thickness_assumed) outlet += tr("; wall thickness not known, 0.35 m taken");
  QStringList parts{asSentence(outlet), tieText(study, a.place)};
  if (a.close && a.state == rules::State::clear) {
    parts.prepend(tr("Too close to call: measure on site."));
  }
  return parts.join(QLatin1Char(' '));
}

void SitingPanel::refreshEmptyHead() {
  m_sign->show(std::nullopt);
  m_place->hide();
  m_ties->hide();
  m_word->setStyleSheet({});
  m_word->setFont(paint::sized(font(), 1.5, true));
  if (!m_session.hasJob()) {
    m_word->clear();
    m_sentence->clear();
    return;
  }
  if (m_session.study() != nullptr) {
    m_word->setText(tr("No sump yet"));
    const auto& least = m_session.study()->leastBad();
    if (!m_session.study()->best().empty()) {
      m_sentence->setText(tr("Best place puts one where the score is highest."));
    } else if (least) {
      m_sentence->setText(
          tr("Nothing is clear. %1").arg(asSentence(said(least->advice, m_session.job()))));
    } else {
      m_sentence->setText(howToPutText(m_session));
    }
    return;
  }
  m_word->setText(tr("Siting is off"));
  QStringList lines;
  const base::Problems& why = m_session.studyProblems();
  const bool in_plan = std::any_of(why.begin(), why.end(), [](const base::Problem& p) {
    return p.pointer.starts_with("/plan") || p.pointer.starts_with("/house");
  });
  lines << (in_plan ? tr("The plan contradicts itself, so no place can be judged. Put these right "
                         "under Survey:")
                    : tr("No place can be judged until this is put right:"));
  for (const base::Problem& p : why) {
    lines << QStringLiteral("• ") + said(p.message, m_session.job());
    if (!p.pointer.empty()) lines.back() += tr(" (at %1)").arg(QString::fromStdString(p.pointer));
  }
  m_sentence->setFont(paint::sized(font(), 0.96));
  m_sentence->setText(lines.join(QLatin1Char('\n')));
}

void SitingPanel::refreshButtons() {
  const siting::Study* study = m_session.study();
  const siting::Assessment* a = m_session.assessment();
  const bool rules = m_middle->currentIndex() == kRulesPage;
  m_primary->setVisible(rules && study != nullptr);
  m_second->setVisible(rules && a != nullptr);
  if (study == nullptr) return;
  m_primary->setKeyShown(false);
  if (a == nullptr) {
    m_primary->bind(m_actions.best);
    m_primary->setLabel({});
    m_primary->setVisible(rules && m_session.bestPlace().has_value());
    return;
  }
  const auto to = m_session.nearestAllowed();
  const bool settled = a->state == rules::State::clear || a->waived ||
                       (a->state == rules::State::advised_against && !to);
  if (settled || !to) {
    m_primary->bind(m_actions.to_paper);
    m_primary->setLabel(tr("On to the paper"));
  } else {
    const bool onward = to == m_session.nextAllowed(+1);
    m_primary->bind(onward ? m_actions.next_allowed : m_actions.previous_allowed);
    m_primary->setLabel(moveText(*study, a->place, *to));
    m_primary->setKeyShown(true);
  }
  m_second->bind(a->state == rules::State::refused ? m_actions.waive : m_actions.best);
}

std::vector<RuleLine> SitingPanel::ordered(std::vector<RuleLine> lines) {
  std::map<std::string, std::size_t> kept;
  if (m_session.isMoving()) {
    for (std::size_t i = 0; i < m_order.size(); ++i) kept[m_order[i]] = i;
  }
  std::stable_sort(lines.begin(), lines.end(), [&](const RuleLine& x, const RuleLine& y) {
    if (!kept.empty()) {
      const auto at = [&](const RuleLine& l) {
        const auto it = kept.find(l.rule);
        return it == kept.end() ? kept.size() : it->second;
      };
      return at(x) < at(y);
    }
    return rank(x) < rank(y);
  });
  m_order.clear();
  for (const RuleLine& line : lines) m_order.push_back(line.rule);
  return lines;
}

void SitingPanel::refreshCells() {
  std::vector<RuleLine> lines;
  if (m_session.study() != nullptr && m_session.assessment() != nullptr) {
    lines = ordered(ruleLines(*m_session.study(), *m_session.assessment()));
  }
  while (m_cells.size() < lines.size()) {
    auto* cell = new RuleCell(this);
    const int i = static_cast<int>(m_cells.size());
    m_grid->addWidget(cell, i / 2, i % 2);
    connect(cell, &RuleCell::clicked, this, [this, cell] {
      if (!cell->line().thing.empty()) m_session.show(cell->line().thing);
    });
    m_cells.push_back(cell);
  }
  for (std::size_t i = 0; i < m_cells.size(); ++i) {
    m_cells[i]->setVisible(i < lines.size());
    if (i < lines.size()) m_cells[i]->show(lines[i]);
  }
}

void SitingPanel::refreshScore() {
  const siting::Assessment* a = m_session.assessment();
  m_score->setVisible(a != nullptr && m_middle->currentIndex() == kRulesPage);
  if (a == nullptr) return;
  const auto& best = m_session.study()->best();
  const bool is_best = std::any_of(best.begin(), best.end(), [&](const siting::BestPlace& b) {
    return b.place.ring == a->place.ring &&
           std::abs(b.place.chainage_m - a->place.chainage_m) < 0.005 &&
           std::none_of(best.begin(), best.end(),
                        [&](const auto& other) { return other.score > b.score; });
  });
  m_score->show(a->score, a->state == rules::State::refused && !a->waived, is_best);
}

void SitingPanel::refreshSlow() {
  m_waivers->refresh();
  refreshUnknowns();
  refreshSetup();
}

void SitingPanel::refreshUnknowns() {
  QStringList lines;
  if (const siting::Study* study = m_session.study()) {
    const auto& least = study->leastBad();
    // Without a sump the head of the panel says so.
    if (m_session.assessment() != nullptr && study->best().empty() && least && !least->place) {
      lines << asSentence(said(least->advice, m_session.job()));
    }
    for (const base::Message& message : missing(m_session.problems())) {
      lines << saidNamed(message, m_session.job());
    }
    for (const siting::Unjudged& u : study->unjudged()) {
      lines << said(u.thing_label, m_session.job()) + QStringLiteral(": ") +
                   said(u.reason, m_session.job());
    }
  }
  QString text;
  for (QString& line : lines) {
    if (!line.isEmpty()) line[0] = line[0].toUpper();
    text += QStringLiteral("<p style='margin:0 0 5px 0'>%1</p>").arg(line.toHtmlEscaped());
  }
  m_unknowns->setText(text);
  m_unknowns->setVisible(!lines.isEmpty());
  m_unknown_title->setVisible(!lines.isEmpty());
}

void SitingPanel::refreshSetup() {
  const bool on = m_session.study() != nullptr;
  m_outlet->parentWidget()->setVisible(m_session.hasJob());
  if (!m_session.hasJob()) return;
  m_outlet->setEnabled(on);
  const plan::Design& design = m_session.job().design;
  m_outlet->show(design.outlet == plan::OutletMode::low ? 0 : 1);
  m_core->show(on ? (m_session.study()->site().core_m < kBetweenCores_m ? 1 : 0)
                  : (design.core_mm.value_or(127.0) < 1000.0 * kBetweenCores_m ? 1 : 0));
  m_sheets->clear();
  for (const files::SheetEntry& entry : files::availableSheets().sheets) {
    m_sheets->addItem(QString::fromStdString(entry.title), QString::fromStdString(entry.id));
  }
  const QString id = QString::fromStdString(m_session.job().rule_sheet);
  if (m_sheets->findData(id) < 0) m_sheets->addItem(id, id);
  m_sheets->setCurrentIndex(m_sheets->findData(id));
}

void SitingPanel::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  if (m_session.assessment() != nullptr) fitSentence();
}

void SitingPanel::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) refresh();
  QWidget::changeEvent(event);
}

void SitingPanel::announce() {
  m_word->setAccessibleName(m_word->text() + QStringLiteral(". ") + m_sentence->text());
  QAccessibleEvent event(m_word, QAccessible::NameChanged);
  QAccessible::updateAccessibility(&event);
}

}  // namespace sumpwright::stages
