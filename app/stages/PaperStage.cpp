#include "stages/PaperStage.h"

#include <QDate>
#include <QEvent>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "paint/Look.h"
#include "paint/QtVoice.h"
#include "stages/ActionButton.h"
#include "stages/QuoteFacts.h"
#include "stages/SitingText.h"
#include "stages/SteadyScroll.h"

namespace sumpwright::stages {

namespace {

constexpr double kSide_px = 332.0;

/// What is taller than the room for it is scrolled.
QScrollArea* scrolled(QWidget* inside, QWidget* parent) {
  auto* scroll = new SteadyScroll(parent);
  scroll->setWidget(inside);
  return scroll;
}

ActionButton* wideButton(ActionButton::Role role, QAction* action, QWidget* parent) {
  auto* button = new ActionButton(role, parent);
  button->bind(action);
  button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  return button;
}

}  // namespace

PaperStage::PaperStage(const PaperDesks& desks, QSettings& settings, const PaperActions& actions,
                       QWidget* parent)
    : QWidget(parent),
      m_session(desks.session),
      m_suction(desks.suction),
      m_quote(desks.quote),
      m_firm_desk(desks.firm),
      m_settings(settings),
      m_actions(actions),
      m_preview(new PaperPreview(this)),
      m_left(new QStackedWidget(this)),
      m_quote_table(new QuoteTable(m_session, m_quote, this)) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  m_left->addWidget(m_preview);
  m_left->addWidget(m_quote_table);
  row->addWidget(m_left, 1);
  auto* line = new QFrame(this);
  line->setProperty("line", true);
  line->setFixedWidth(1);
  row->addWidget(line);
  row->addWidget(makeSide());
  m_list->show(rememberedPapers(settings));
  connect(m_list, &PaperList::changed, this, [this] {
    rememberPapers(m_settings, choice());
    m_preview->fit();
    outdate();
    Q_EMIT choiceChanged();
  });
  connect(&m_suction, &session::SuctionDesk::answerChanged, this, &PaperStage::takeOutlook);
  connect(&m_quote, &session::QuoteDesk::changed, this, &PaperStage::outdate);
  connect(&m_firm_desk, &session::FirmDesk::changed, this, &PaperStage::outdate);
  connect(&m_session, &session::Session::studyChanged, this, &PaperStage::outdate);
  connect(&m_session, &session::Session::placeChanged, this, &PaperStage::outdate);
  connect(&m_session, &session::Session::jobChanged, this, [this] {
    m_note->hide();
    m_page = 0;
  });
}

QWidget* PaperStage::makeSide() {
  const double k = paint::uiScale(font());
  auto* side = new QWidget(this);
  side->setProperty("surface", QStringLiteral("panel"));
  side->setAttribute(Qt::WA_StyledBackground);
  side->setFixedWidth(qRound(kSide_px * k));
  auto* column = new QVBoxLayout(side);
  const int margin = qRound(20 * k);
  column->setContentsMargins(margin, qRound(0.6 * margin), margin, qRound(0.6 * margin));
  column->setSpacing(qRound(8 * k));
  auto* head = new QHBoxLayout;
  m_choice = new Segments(tr("Page"), {tr("Papers"), tr("Quote"), tr("Firm")}, side,
                          Segments::Spacing::close);
  m_choice->show(0);
  head->addWidget(m_choice);
  head->addStretch();
  column->addLayout(head);
  m_stack = new QStackedWidget(side);
  m_stack->addWidget(makePapersPage(m_stack));
  m_stack->addWidget(makeQuotePage(m_stack));
  m_stack->addWidget(makeFirmPage(m_stack));
  column->addWidget(m_stack, 1);
  m_page_row = makePageRow(side);
  m_ways_out = makeWaysOut(side);
  column->addWidget(m_page_row);
  column->addWidget(m_ways_out);
  connect(m_choice, &Segments::picked, this,
          [this](int index) { showPage(static_cast<PaperPage>(index)); });
  return side;
}

QWidget* PaperStage::makePapersPage(QWidget* parent) {
  const double k = paint::uiScale(font());
  auto* page = new QWidget(parent);
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(3, 3, qRound(10 * k), 3);
  column->setSpacing(qRound(8 * k));
  m_note = new SideNote(SideNote::Kind::information, page);
  m_note->setDismissable();
  m_note->hide();
  column->addWidget(m_note);
  m_list = new PaperList(page);
  column->addWidget(m_list);
  // Below the list: it comes and goes with a tick there, and nothing may move under it.
  m_warning = new SideNote(SideNote::Kind::warning, page);
  m_warning->hide();
  column->addWidget(m_warning);
  m_state = new QLabel(page);
  m_state->setWordWrap(true);
  m_state->setProperty("tone", QStringLiteral("second"));
  m_state->setFont(paint::sized(font(), 0.9));
  column->addWidget(m_state);
  column->addStretch();
  return scrolled(page, parent);
}

QWidget* PaperStage::makeFirmPage(QWidget* parent) {
  m_firm = new FirmPage(m_firm_desk, parent);
  QScrollArea* scroll = scrolled(m_firm, parent);
  connect(m_firm, &FirmPage::entered, scroll,
          [scroll](QWidget* field) { scroll->ensureWidgetVisible(field, 0, 40); });
  return scroll;
}

QWidget* PaperStage::makeQuotePage(QWidget* parent) {
  m_quote_page = new QuotePage(m_session, m_quote, *m_quote_table, parent);
  QScrollArea* scroll = scrolled(m_quote_page, parent);
  connect(m_quote_page, &QuotePage::entered, scroll,
          [scroll](QWidget* field) { scroll->ensureWidgetVisible(field, 0, 40); });
  return scroll;
}

QWidget* PaperStage::makePageRow(QWidget* parent) {
  auto* row = new QWidget(parent);
  auto* pages = new QHBoxLayout(row);
  pages->setContentsMargins(0, 0, 0, 0);
  m_pages = new QLabel(row);
  m_pages->setProperty("tone", QStringLiteral("second"));
  pages->addWidget(m_pages, 1);
  for (QAction* action : {m_actions.previous_page, m_actions.next_page}) {
    auto* button = new ActionButton(ActionButton::Role::square, row);
    button->bind(action);
    pages->addWidget(button);
  }
  return row;
}

QWidget* PaperStage::makeWaysOut(QWidget* parent) {
  const double k = paint::uiScale(font());
  auto* part = new QWidget(parent);
  auto* column = new QVBoxLayout(part);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(qRound(8 * k));
  column->addWidget(wideButton(ActionButton::Role::primary, m_actions.pdf, part));
  for (const auto& pair :
       {std::pair(m_actions.print, m_actions.csv), std::pair(m_actions.svg, m_actions.png)}) {
    auto* row = new QHBoxLayout;
    row->setSpacing(qRound(8 * k));
    row->addWidget(wideButton(ActionButton::Role::plain, pair.first, part));
    row->addWidget(wideButton(ActionButton::Role::plain, pair.second, part));
    column->addLayout(row);
  }
  return part;
}

void PaperStage::showPage(PaperPage page) {
  settle();
  m_choice->show(static_cast<int>(page));
  m_stack->setCurrentIndex(static_cast<int>(page));
  const bool quote = page == PaperPage::quote;
  m_left->setCurrentIndex(quote ? 1 : 0);
  m_page_row->setHidden(quote);
  m_ways_out->setHidden(quote);
  Q_EMIT choiceChanged();
}

void PaperStage::settle() {
  m_firm->settle();
  m_quote_page->settle();
}

bool PaperStage::tellsSuction() const {
  return std::any_of(choice().papers.begin(), choice().papers.end(), dossier::tellsSuction);
}

/// The one place where papers are made: preview, files and printer show what it gives.
void PaperStage::compose() {
  if (m_document || m_session.study() == nullptr || !hasPaper()) return;
  dossier::ClientPlanOptions options;
  options.size = choice().size;
  options.landscape = choice().landscape;
  options.sump = m_session.sump();
  options.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  options.suction = dossier::Suction::expected;
  options.outlook = m_outlook;
  files::putOn(options, m_firm_desk.firm());
  // The job's own book, or none: never the demo's price of electricity unasked.
  const plan::Design& design = m_session.job().design;
  const auto& book = m_quote.book();
  const bool named = book && !design.quote.price_book.empty();
  options.tariff = price::tariffOf(design.running, named ? &book->book : nullptr, options.tariff);
  if (std::any_of(choice().papers.begin(), choice().papers.end(), dossier::isPriced)) {
    dossier::Pricing pricing;
    if (const price::PricedQuote* quote = m_quote.quote()) pricing.quote = *quote;
    pricing.why_not = m_quote.problems();
    options.pricing = std::make_shared<const dossier::Pricing>(std::move(pricing));
  }
  const paint::QtVoice voice(m_session.job().display_units);
  m_made.clear();
  std::vector<dossier::Document> all;
  for (const dossier::Paper paper : dossier::allPapers()) {
    if (!choice().has(paper)) continue;
    m_made.push_back({paper, dossier::paperOf(paper, *m_session.study(), voice, options)});
    all.push_back(m_made.back().document);
  }
  const std::string title =
      all.size() == 1 ? all.front().title : voice.say(base::Message("paper.all"));
  m_document = dossier::bound(std::move(all), title);
}

const dossier::Document* PaperStage::document() {
  compose();
  return m_document ? &*m_document : nullptr;
}

const std::vector<MadePaper>& PaperStage::papers() {
  compose();
  return m_made;
}

int PaperStage::pageCount() {
  const dossier::Document* paper = document();
  return paper == nullptr ? 0 : static_cast<int>(paper->pages.size());
}

/// What the suction study says, once it is there for the sumps as they stand.
void PaperStage::takeOutlook() {
  const bool had = m_outlook != nullptr;
  m_outlook.reset();
  if (m_suction.answer() != nullptr && !m_suction.isAnswerStale()) {
    auto outlook = std::make_shared<dossier::Outlook>();
    outlook->answer = *m_suction.answer();
    outlook->fan = m_suction.fanTitle();
    outlook->invented = m_suction.isFanInvented();
    m_outlook = std::move(outlook);
  } else if (!m_suction.isWorking() && !m_suction.problems().empty()) {
    auto outlook = std::make_shared<dossier::Outlook>();
    outlook->why_not = m_suction.problems();
    m_outlook = std::move(outlook);
  }
  if (had || m_outlook != nullptr) outdate();
}

void PaperStage::outdate() {
  if (m_session.isMoving()) return;
  m_preview->show(nullptr, 0);
  m_document.reset();
  m_made.clear();
  if (isVisible()) refresh();
}

void PaperStage::showEvent(QShowEvent* event) {
  refresh();
  QWidget::showEvent(event);
}

void PaperStage::changeEvent(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) refresh();
  QWidget::changeEvent(event);
}

void PaperStage::turnPage(int by) {
  m_page += by;
  m_preview->fit();
  refresh();
}

void PaperStage::refresh() {
  const int pages = pageCount();
  m_page = std::clamp(m_page, 0, std::max(0, pages - 1));
  m_preview->show(document(), m_page);
  m_actions.previous_page->setEnabled(m_page > 0);
  m_actions.next_page->setEnabled(m_page + 1 < pages);
  m_pages->setText(pages == 0 ? tr("No page") : tr("Page %1 of %2").arg(m_page + 1).arg(pages));
  int first = 0;
  for (const MadePaper& made : m_made) {
    const int count = static_cast<int>(made.document.pages.size());
    if (m_made.size() > 1 && m_page >= first && m_page < first + count) {
      m_pages->setText(tr("%1\nPage %2 of %3")
                           .arg(said(dossier::titleOf(made.paper), m_session.job()))
                           .arg(m_page + 1)
                           .arg(pages));
    }
    first += count;
  }
  refreshWords();
}

/// Why a quote has no prices, or that they are nobody's.
QString PaperStage::pricesWarning() {
  QStringList lines;
  for (const base::Problem& problem : m_quote.problems()) {
    lines << toldWithPlace(problem, m_session.job());
  }
  const price::PricedQuote* quote = m_quote.quote();
  if (lines.isEmpty() && quote != nullptr && quote->invented && choice().has(dossier::Paper::quote))
    lines << said(base::Message("price.invented"), m_session.job());
  return lines.join(QLatin1Char('\n'));
}

void PaperStage::refreshWords() {
  QStringList warnings;
  if (!m_session.hasJob()) {
    m_state->setText(tr("No job is open."));
  } else if (m_session.study() == nullptr) {
    m_state->setText(
        tr("The plan contradicts itself, so there is no paper. The list under Siting says what to "
           "put right."));
  } else if (!hasPaper()) {
    m_state->setText(tr("Tick the papers you want."));
  } else {
    m_state->setText(tr("What you see is what is printed and written."));
    const siting::Assessment* a = m_session.assessment();
    if (a == nullptr) {
      warnings << tr("No sump yet: the paper shows where one may go.");
    } else if (a->state != rules::State::clear && !a->waived) {
      warnings << (a->state == rules::State::refused
                       ? tr("The sump stands at a refused place. The paper says so and why.")
                       : tr("The place is not clear. The paper says so and why."));
    }
    const bool priced =
        std::any_of(choice().papers.begin(), choice().papers.end(), dossier::isPriced);
    const QString prices = priced ? pricesWarning() : QString();
    if (!prices.isEmpty()) warnings << prices;
    for (const auto* problems : {&m_firm_desk.problems(), &m_firm_desk.logoProblems()}) {
      if (problems->empty()) continue;
      warnings << tr("The letterhead is not as the firm's: %1")
                      .arg(said(problems->front().message, m_session.job()));
    }
  }
  m_warning->setText(warnings.join(QLatin1Char('\n')));
  m_warning->setVisible(!warnings.isEmpty());
}

void PaperStage::tell(const QString& text) {
  m_note->setText(text);
  m_note->show();
}

}  // namespace sumpwright::stages
