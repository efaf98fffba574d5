#include "stages/QuotePage.h"

#include <QDate>
#include <QHBoxLayout>
#include <algorithm>

#include "paint/Look.h"
#include "stages/QuoteFacts.h"
#include "stages/SitingText.h"
#include "stages/SteadyCombo.h"
#include "stages/SurveyText.h"

namespace sumpwright::stages {

namespace {

QString sumRow(const QString& words, const QString& amount, bool bold) {
  const QString cell = bold ? QStringLiteral("<b>%1</b>") : QStringLiteral("%1");
  return QStringLiteral("<tr><td>%1</td><td align=\"right\">%2</td></tr>")
      .arg(cell.arg(words.toHtmlEscaped()), cell.arg(amount.toHtmlEscaped()));
}

}  // namespace

QuotePage::QuotePage(session::Session& session, session::QuoteDesk& desk, QuoteTable& table,
                     QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_desk(desk),
      m_table(table),
      m_column(new QVBoxLayout(this)) {
  setAccessibleName(tr("Quote"));
  const double k = paint::uiScale(font());
  m_column->setContentsMargins(3, 3, qRound(10 * k), 3);
  m_column->setSpacing(qRound(8 * k));
  m_total = new QLabel(this);
  m_total->setFont(paint::sized(font(), 1.9, true));
  m_total->setTextInteractionFlags(Qt::TextSelectableByMouse);
  m_total->setMinimumWidth(1);  // a sum beyond all measure is cut, not the panel
  m_column->addWidget(m_total);
  m_standing = new QLabel(this);
  m_standing->setWordWrap(true);
  m_column->addWidget(m_standing);
  m_sums = new QLabel(this);
  m_sums->setTextFormat(Qt::RichText);
  m_sums->setWordWrap(true);  // or a long line pushes the amounts out of the panel
  m_column->addWidget(m_sums);
  m_note = new SideNote(SideNote::Kind::warning, this);
  m_note->setDismissable();
  m_note->hide();
  m_column->addWidget(m_note);
  m_wrong = new SideNote(SideNote::Kind::warning, this);
  m_column->addWidget(m_wrong);
  makeLineRow();
  m_column->addWidget(heading(tr("This job")));
  m_terms = new FactForm(session, tr("Terms of the quote"), this);
  connect(m_terms, &FactForm::entered, this, &QuotePage::entered);
  m_column->addWidget(m_terms);
  makeBook();
  m_book_terms = new BookTerms(session, desk, this);
  connect(m_book_terms, &BookTerms::backAsked, this, &QuotePage::takeBack);
  connect(m_book_terms, &BookTerms::changed, this,
          [this](const base::Problems& problems) { tell(problems); });
  connect(m_book_terms, &BookTerms::entered, this, &QuotePage::entered);
  m_column->addWidget(m_book_terms);
  // Below what it is about: it comes and goes with a click there, and nothing may move under it.
  m_invented = new SideNote(SideNote::Kind::warning, this);
  m_column->addWidget(m_invented);
  m_column->addWidget(heading(tr("To note, for you alone")));
  m_remarks = new QLabel(this);
  m_remarks->setWordWrap(true);
  m_remarks->setProperty("tone", QStringLiteral("second"));
  m_remarks->setFont(paint::sized(font(), 0.9));
  m_column->addWidget(m_remarks);
  m_column->addStretch();
  connect(&desk, &session::QuoteDesk::changed, this, &QuotePage::refresh);
  connect(
      table.lines(), &QuoteLines::refused, this,
      [this](const base::Problems& problems, const QString& line) { tell(problems, {}, line); });
  connect(table.lines(), &QuoteLines::taken, m_note, &QWidget::hide);
  connect(&table, &QuoteTable::chosen, this,
          [this] { m_give_up->setEnabled(m_table.mayGiveUp()); });
}

QLabel* QuotePage::heading(const QString& text) {
  auto* label = new QLabel(text, this);
  label->setFont(paint::sized(font(), 1.05, true));
  return label;
}

void QuotePage::makeLineRow() {
  auto* row = new QHBoxLayout;
  m_add = new QPushButton(tr("Add material"), this);
  m_add->setToolTip(tr("A line of this job's own; a negative price is a discount."));
  m_add_work = new QPushButton(tr("Add work"), this);
  m_add_work->setToolTip(tr("Work of this job's own, by the hour or another unit."));
  m_give_up = new QPushButton(tr("Give up"), this);
  m_give_up->setToolTip(
      tr("The chosen line as the design and the book have it; an added line goes. (Delete)"));
  m_give_up->setEnabled(false);
  row->addWidget(m_add);
  row->addWidget(m_add_work);
  row->addStretch();
  m_column->addLayout(row);
  m_items = new SteadyCombo(this);
  m_items->setAccessibleName(tr("Add an item of the price book"));
  m_items->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  auto* second = new QHBoxLayout;
  second->addWidget(m_items, 1);
  second->addWidget(m_give_up);
  m_column->addLayout(second);
  connect(m_add, &QPushButton::clicked, this, [this] { addOwnLine(plan::QuoteKind::material); });
  connect(m_add_work, &QPushButton::clicked, this, [this] { addOwnLine(plan::QuoteKind::labour); });
  connect(m_give_up, &QPushButton::clicked, &m_table, &QuoteTable::giveUp);
  connect(m_items, &QComboBox::activated, this, [this](int index) {
    const std::string item = m_items->itemData(index).toString().toStdString();
    if (item.empty()) return;
    tell(m_desk.addLine(item, {}));
    m_table.editNewLine();
  });
}

void QuotePage::addOwnLine(plan::QuoteKind kind) {
  const QString words = kind == plan::QuoteKind::labour ? tr("New work") : tr("New line");
  tell(m_desk.addLine({}, words.toStdString(), kind));
  m_table.editNewLine();
}

void QuotePage::makeBook() {
  m_column->addWidget(heading(tr("Price book")));
  m_books = new SteadyCombo(this);
  m_books->setAccessibleName(tr("Price book"));
  m_books->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_column->addWidget(m_books);
  auto* row = new QHBoxLayout;
  m_open = new QPushButton(tr("Open…"), this);
  m_open->setToolTip(tr("Takes a price book (JSON) from elsewhere among your own."));
  m_own = new QPushButton(tr("Make our own"), this);
  m_own->setToolTip(
      tr("A copy in your own folder, in which prices can be changed; this job is priced by it."));
  row->addWidget(m_open);
  row->addWidget(m_own);
  row->addStretch();
  m_column->addLayout(row);
  connect(m_books, &QComboBox::activated, this, [this](int index) {
    tell(m_desk.chooseBook(m_books->itemData(index).toString().toStdString()));
  });
  connect(m_open, &QPushButton::clicked, this, &QuotePage::bookAsked);
  connect(m_own, &QPushButton::clicked, this, [this] { tell(m_desk.makeOwnBook()); });
}

void QuotePage::takeBack() { tell(m_desk.takeBookChangeBack()); }

void QuotePage::makeAgain() { tell(m_desk.makeBookChangeAgain()); }

void QuotePage::showEvent(QShowEvent* event) {
  refresh();
  QWidget::showEvent(event);
}

void QuotePage::refresh() {
  if (!isVisible() || !m_session.hasJob()) return;
  const plan::Job& job = m_session.job();
  const std::string today = QDate::currentDate().toString(Qt::ISODate).toStdString();
  std::map<std::string, QString> told;
  if (const auto odd = price::oddMargin(price::Decimal::parse(job.design.quote.margin_percent)))
    told["/design/quote/margin_percent"] = said(*odd, job);
  m_terms->setTold(std::move(told));
  m_terms->setFacts(quoteFacts(QString::fromStdString(price::quoteNumber(job, today))), job.id);
  refreshTotal();
  refreshBooks();
  m_book_terms->refresh();
  refreshItems();
  m_give_up->setEnabled(m_table.mayGiveUp());
}

QString QuotePage::sumsOf(const price::PricedQuote& quote) const {
  QString rows;
  const auto lines = price::totalsOf(quote);
  for (const price::TotalLine& line : lines) {
    QString words = said(base::Message("price.total." + std::string(line.name)), m_session.job());
    if (line.percent) words += tr(", %1 %").arg(shownDecimal(line.percent));
    rows += sumRow(words, QString::fromStdString(price::moneyText(line.amount, quote.minor_digits)),
                   &line == &lines.back());
  }
  return QStringLiteral("<table width=\"100%\" cellspacing=\"0\" cellpadding=\"1\">%1</table>")
      .arg(rows);
}

QStringList QuotePage::remarksOf(const price::PricedQuote& quote) const {
  QStringList out;
  for (const base::Message& remark : quote.remarks)
    out << QStringLiteral("• ") + said(remark, m_session.job());
  return out;
}

void QuotePage::refreshTotal() {
  const plan::Job& job = m_session.job();
  const price::PricedQuote* quote = m_desk.quote();
  const base::Problems& problems = m_desk.problems();
  const bool priced = quote != nullptr && problems.empty();
  m_total->setText(priced ? tr("%1 %2").arg(QString::fromStdString(quote->currency),
                                            QString::fromStdString(price::moneyText(
                                                quote->total, quote->minor_digits)))
                          : tr("No prices"));
  m_sums->setText(priced ? sumsOf(*quote) : QString());
  m_sums->setVisible(priced);
  m_remarks->setText(priced ? remarksOf(*quote).join(QLatin1Char('\n')) : QString());
  QStringList wrong;
  for (const base::Problem& problem : problems) wrong << toldWithPlace(problem, job);
  m_wrong->setVisible(!priced);
  m_wrong->setText(wrong.join(QLatin1Char('\n')));
  m_invented->setVisible(priced && quote->invented);
  m_invented->setText(said(base::Message("price.invented"), job));
  refreshStanding();
}

/// Always a line, so that nothing below it moves when it says something else.
void QuotePage::refreshStanding() {
  const price::PricedQuote* quote = m_desk.quote();
  const bool priced = quote != nullptr && m_desk.problems().empty();
  const int unpriced = priced ? static_cast<int>(quote->unpriced()) : 0;
  QString words = tr("See below why.");
  if (priced) {
    words = quote->invented ? tr("Prices invented")
                            : tr("By %1").arg(QString::fromStdString(quote->book_title));
  }
  if (unpriced > 0) words = tr("Not complete: lines without a price: %1").arg(unpriced);
  m_standing->setText(words);
  setTone(m_standing, unpriced > 0 || (priced && quote->invented));
}

void QuotePage::refreshBooks() {
  m_filling = true;
  const std::string named = m_session.job().design.quote.price_book;
  m_books->clear();
  int at = -1;
  for (const files::PriceBookEntry& entry : files::availablePriceBooks()) {
    const QString title = QString::fromStdString(entry.title);
    const bool said_so = title.contains(tr("invented"), Qt::CaseInsensitive);
    m_books->addItem(entry.invented && !said_so ? tr("%1 (invented)").arg(title) : title,
                     QString::fromStdString(entry.id));
    if (entry.id == (named.empty() ? files::kPricesUnchosen : named)) at = m_books->count() - 1;
  }
  if (at < 0) {
    m_books->addItem(tr("%1 (not there)").arg(QString::fromStdString(named)),
                     QString::fromStdString(named));
    at = m_books->count() - 1;
  }
  m_books->setCurrentIndex(at);
  m_own->setEnabled(m_desk.book().has_value());
  m_own->setText(m_desk.isBookOwn() ? tr("Copy it") : tr("Make our own"));
  m_filling = false;
}

/// What the book has and the quote has not.
void QuotePage::refreshItems() {
  m_items->clear();
  m_items->addItem(tr("Add from the price book…"), QString());
  const price::PricedQuote* quote = m_desk.quote();
  if (quote != nullptr && m_desk.book()) {
    for (const price::PriceItem& item : m_desk.book()->book.items) {
      const bool there = std::any_of(quote->lines.begin(), quote->lines.end(),
                                     [&](const auto& line) { return line.item == item.id; });
      if (!there)
        m_items->addItem(QString::fromStdString(item.title), QString::fromStdString(item.id));
    }
  }
  m_items->setCurrentIndex(0);
  m_items->setVisible(m_items->count() > 1);
}

void QuotePage::settle() {
  m_table.settle();
  m_book_terms->settle();
}

void QuotePage::takeBook(const QString& path) {
  tell(m_desk.takeBook(path.toStdString()), tr("The job is priced as it was."));
}

void QuotePage::tell(const base::Problems& problems, const QString& then, const QString& of) {
  constexpr std::size_t kMost = 8;
  QStringList lines;
  for (std::size_t i = 0; i < std::min(problems.size(), kMost); ++i) {
    const QString line = toldWithPlace(problems[i], m_session.job());
    lines << (of.isEmpty() ? line : tr("%1: %2", "line of the quote, problem").arg(of, line));
  }
  if (problems.size() > kMost) lines << tr("and %1 more").arg(problems.size() - kMost);
  if (!problems.empty() && !then.isEmpty()) lines << then;
  m_note->setText(lines.join(QLatin1Char('\n')));
  m_note->setVisible(!problems.empty());
  if (!problems.empty()) Q_EMIT entered(m_note);  // bring it into sight
  if (!problems.empty()) m_book_terms->refresh();
}

}  // namespace sumpwright::stages
