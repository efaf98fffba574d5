#include "stages/QuotePage.h"

#include <QCoreApplication>
#include <QDate>
#include <QEvent>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <algorithm>

#include "paint/Look.h"
#include "plan/SumpEdits.h"
#include "stages/SitingText.h"
#include "stages/SteadyCombo.h"
#include "stages/SurveyText.h"
#include "stages/TypedText.h"

namespace sumpwright::stages {

namespace {

struct QuoteFacts {
  Q_DECLARE_TR_FUNCTIONS(QuoteFacts)
};

QString shownDecimal(const std::optional<price::Decimal>& value) {
  return value ? QString::fromStdString(value->text()) : QString();
}

/// Nothing where nothing is typed.
base::Problems takeDecimal(const std::string& typed, std::optional<price::Decimal>& into) {
  into.reset();
  if (typed.empty()) return {};
  const auto parsed = price::typedDecimal(typed);
  if (!parsed.ok()) return parsed.problems();
  into = *parsed;
  return {};
}

QString sumRow(const QString& words, const QString& amount, bool bold) {
  const QString cell = bold ? QStringLiteral("<b>%1</b>") : QStringLiteral("%1");
  return QStringLiteral("<tr><td>%1</td><td align=\"right\">%2</td></tr>")
      .arg(cell.arg(words.toHtmlEscaped()), cell.arg(amount.toHtmlEscaped()));
}

/// A place of a price book's file, "/items/3/price", in words.
QString placeInBook(const std::string& pointer) {
  const QStringList steps =
      QString::fromStdString(pointer).split(QLatin1Char('/'), Qt::SkipEmptyParts);
  if (steps.size() > 1 && steps[0] == QLatin1String("items")) {
    const QString item = QuoteFacts::tr("item %1 of the book").arg(steps[1].toInt() + 1);
    return steps.size() > 2 ? QuoteFacts::tr("%1, “%2”", "item, key").arg(item, steps[2]) : item;
  }
  return QuoteFacts::tr("“%1” of the book").arg(steps.join(QLatin1Char('/')));
}

}  // namespace

QString toldWithPlace(const base::Problem& problem, const plan::Job& job) {
  const QString line = said(problem.message, job);
  if (problem.pointer.empty()) return line;
  // A fan table has places, too.
  if (!problem.message.id.starts_with("prices."))
    return QuoteFacts::tr("%1 (at %2)").arg(line, QString::fromStdString(problem.pointer));
  return QuoteFacts::tr("%1 (%2)", "problem, place").arg(line, placeInBook(problem.pointer));
}

std::vector<Fact> quoteFacts(const QString& number) {
  FactTable<plan::Quote> t(
      [](const plan::Job& job) { return std::optional(job.design.quote); },
      [](const plan::Job& job, const plan::Quote& quote) { return plan::setQuote(job, quote); });
  Fact& count = t.text("/design/quote/number", QuoteFacts::tr("Number"), &plan::Quote::number);
  count.says = QuoteFacts::tr("Number of the quote");
  if (!number.isEmpty()) count.unknown = QuoteFacts::tr("Printed: %1").arg(number);
  Fact& date = t.text("/design/quote/date", QuoteFacts::tr("Date"), &plan::Quote::date);
  date.says = QuoteFacts::tr("Date of the quote");
  date.example = QuoteFacts::tr("2026-03-31");
  date.unknown = QuoteFacts::tr("Without a date it holds to no day.");
  Fact& days =
      t.whole("/design/quote/valid_days", QuoteFacts::tr("Holds, days"), &plan::Quote::valid_days);
  days.says = QuoteFacts::tr("Days the quote holds, from its date");
  Fact& margin = t.text("/design/quote/margin_percent", QuoteFacts::tr("Margin, %"),
                        &plan::Quote::margin_percent);
  margin.says = QuoteFacts::tr("Overhead and margin of this job, in percent of its lines");
  margin.example = QuoteFacts::tr("12.5; empty: the book's");
  Fact& shown = t.choice("/design/quote/margin_shown", QuoteFacts::tr("Margin shown"),
                         &plan::Quote::margin_shown,
                         {QuoteFacts::tr("as the book says"), QuoteFacts::tr("as its own line"),
                          QuoteFacts::tr("within the lines")});
  shown.says = QuoteFacts::tr("How the client reads the margin");
  Fact& tax =
      t.text("/design/quote/tax_percent", QuoteFacts::tr("Tax, %"), &plan::Quote::tax_percent);
  tax.says = QuoteFacts::tr("Tax on this job, in percent");
  tax.example = QuoteFacts::tr("20; empty: the book's");
  Fact& aside = t.text("/design/quote/provisional", QuoteFacts::tr("Provisional sum"),
                       &plan::Quote::provisional);
  aside.says = QuoteFacts::tr("Provisional sum for what cannot be seen yet; bears no margin");
  aside.example = QuoteFacts::tr("250");
  return t.take();
}

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
  makeBookTerms();
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
  connect(table.lines(), &QuoteLines::refused, this,
          [this](const base::Problems& problems) { tell(problems); });
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

QLineEdit* QuotePage::addBookField(const QString& label, const QString& example, Take take) {
  auto* grid = static_cast<QGridLayout*>(m_book_terms->layout());
  const int row = grid->rowCount();
  auto* words = new QLabel(label, m_book_terms);
  words->setProperty("tone", QStringLiteral("second"));
  words->setWordWrap(true);
  words->setFixedWidth(qRound(92 * paint::uiScale(font())));
  auto* field = new QLineEdit(m_book_terms);
  field->setMaxLength(40);
  field->setPlaceholderText(example);
  field->setAccessibleName(tr("Price book: %1").arg(label));
  field->installEventFilter(this);
  auto* note = new QLabel(m_book_terms);
  note->setWordWrap(true);
  setTone(note, true);
  note->hide();
  grid->addWidget(words, row, 0);
  grid->addWidget(field, row, 1);
  grid->addWidget(note, row + 1, 0, 1, 2);
  const std::size_t at = m_fields.size();
  m_fields.push_back({field, note, label, std::move(take)});
  connect(field, &QLineEdit::editingFinished, this, [this, at] { takeField(at); });
  return field;
}

/// What cannot be taken stays as it is typed, with the reason under it.
void QuotePage::takeField(std::size_t i) {
  QLineEdit* field = m_fields[i].field;
  if (m_filling || !field->isModified()) return;
  field->setModified(false);
  const QString typed = field->text().trimmed();
  const QString what = typed.isEmpty() ? tr("%1: nothing", "field").arg(m_fields[i].label)
                                       : tr("%1: %2", "field").arg(m_fields[i].label, typed);
  m_fields[i].unread = false;
  const base::Problems problems = m_fields[i].take(typed.toStdString(), what);
  if (problems.empty()) {
    forgetTyping(field);
    return refreshBookTerms();
  }
  m_fields[i].unread = true;
  m_fields[i].note->setText(said(problems.front().message, m_session.job()));
  m_fields[i].note->show();
}

void QuotePage::makeBookTerms() {
  m_book_terms = new QWidget(this);
  auto* grid = new QGridLayout(m_book_terms);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setColumnStretch(1, 1);
  m_back = new QPushButton(tr("Take back"), m_book_terms);
  m_back->setToolTip(
      tr("Writes the price book as it was before its last change. (Ctrl+Z, until the job is "
         "changed)"));
  m_back_words = new QLabel(m_book_terms);
  m_back_words->setWordWrap(true);
  m_back_words->setProperty("tone", QStringLiteral("second"));
  m_back_words->setFont(paint::sized(font(), 0.9));
  grid->addWidget(m_back, 0, 0);
  grid->addWidget(m_back_words, 0, 1);
  connect(m_back, &QPushButton::clicked, this, &QuotePage::takeBack);
  const auto decimal = [this](std::optional<price::Decimal> price::PriceBook::*part) {
    return [this, part](const std::string& typed, const QString& what) {
      return m_desk.changeBook(
          what, [&](price::PriceBook& book) { return takeDecimal(typed, book.*part); });
    };
  };
  m_hour = addBookField(tr("Hour of labour"), tr("several rates"),
                        [this](const std::string& typed, const QString&) {
                          return typed.empty() ? base::Problems() : m_desk.setHourPrice(typed);
                        });
  m_margin = addBookField(tr("Margin, %"), tr("none"), decimal(&price::PriceBook::margin_percent));
  m_tax = addBookField(tr("Tax, %"), tr("not stated"), decimal(&price::PriceBook::tax_percent));
  m_round = addBookField(tr("Round total to"), tr("the least coin"),
                         decimal(&price::PriceBook::round_to));
  m_currency = addBookField(
      tr("Currency"), tr("as EUR"), [this](const std::string& typed, const QString& what) {
        return m_desk.changeBook(what, [&](price::PriceBook& book) -> base::Problems {
          book.currency = typed;
          return {};
        });
      });
  m_per_kwh = addBookField(tr("Electricity, a kWh"), tr("the firm's figure"),
                           decimal(&price::PriceBook::per_kwh));
  m_per_kwh->setToolTip(
      tr("What clients pay; the cost of a year is counted with it. Empty: the figure on the page "
         "Firm."));
  m_ours = new TickBox(tr("These prices are ours, none invented"), m_book_terms);
  grid->addWidget(m_ours, grid->rowCount(), 0, 1, 2);
  connect(m_ours, &QCheckBox::clicked, this, [this](bool ticked) {
    const QString what = ticked ? tr("These prices are ours") : tr("These prices are invented");
    tell(m_desk.changeBook(what, [&](price::PriceBook& book) -> base::Problems {
      book.invented = !ticked;
      return {};
    }));
  });
  m_column->addWidget(m_book_terms);
}

void QuotePage::takeBack() { tell(m_desk.takeBookChangeBack()); }

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
  refreshBookTerms();
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

/// Not under the hands of who types in it, nor over what has to be put right; `warning` is what is
/// odd about what the book says.
void QuotePage::fillField(const QLineEdit* field, const QString& text, const QString& warning) {
  const auto row = std::find_if(m_fields.begin(), m_fields.end(),
                                [&](const BookField& one) { return one.field == field; });
  if (row->unread || (row->field->hasFocus() && row->field->isModified())) return;
  if (row->field->text() != text) row->field->setText(text);
  row->field->setModified(false);
  row->note->setText(warning);
  row->note->setVisible(!warning.isEmpty());
}

void QuotePage::refreshBack() {
  const QString change = m_desk.bookChange();
  m_back->setEnabled(!change.isEmpty());
  m_back_words->setText(change.isEmpty() ? tr("Nothing changed yet.") : change);
}

void QuotePage::refreshBookTerms() {
  const bool own = m_desk.isBookOwn();
  m_book_terms->setVisible(own);
  if (!own) return;
  const price::PriceBook& book = m_desk.book()->book;
  if (book.id != m_fields_of) {
    for (BookField& row : m_fields) row.unread = false;
    m_fields_of = book.id;
  }
  m_filling = true;
  const auto hour = m_desk.hourPrice();
  const auto odd = price::oddMargin(book.margin_percent);
  fillField(m_hour, hour ? QString::fromStdString(hour->text(book.minor_digits)) : QString());
  fillField(m_margin, shownDecimal(book.margin_percent),
            odd ? said(*odd, m_session.job()) : QString());
  fillField(m_tax, shownDecimal(book.tax_percent));
  fillField(m_round, shownDecimal(book.round_to));
  fillField(m_currency, QString::fromStdString(book.currency));
  fillField(m_per_kwh, shownDecimal(book.per_kwh));
  m_ours->setChecked(!book.invented);
  m_filling = false;
  refreshBack();
}

QString QuotePage::noteUnder(const QLineEdit* field) const {
  for (const BookField& row : m_fields) {
    if (row.field == field && !row.note->isHidden()) return row.note->text();
  }
  return {};
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
  for (std::size_t i = 0; i < m_fields.size(); ++i) takeField(i);
}

void QuotePage::takeBook(const QString& path) {
  tell(m_desk.takeBook(path.toStdString()), tr("The job is priced as it was."));
}

void QuotePage::tell(const base::Problems& problems, const QString& then) {
  constexpr std::size_t kMost = 8;
  QStringList lines;
  for (std::size_t i = 0; i < std::min(problems.size(), kMost); ++i) {
    lines << toldWithPlace(problems[i], m_session.job());
  }
  if (problems.size() > kMost) lines << tr("and %1 more").arg(problems.size() - kMost);
  if (!problems.empty() && !then.isEmpty()) lines << then;
  m_note->setText(lines.join(QLatin1Char('\n')));
  m_note->setVisible(!problems.empty());
  if (!problems.empty()) Q_EMIT entered(m_note);  // bring it into sight
  if (!problems.empty()) refreshBookTerms();
}

bool QuotePage::eventFilter(QObject* watched, QEvent* event) {
  auto* field = qobject_cast<QWidget*>(watched);
  if (isWindowsUndo(field, event)) return true;
  if (event->type() == QEvent::FocusIn) Q_EMIT entered(field);
  if (event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    for (BookField& row : m_fields) {
      if (row.field != field || (!row.unread && !row.field->isModified())) continue;
      row.unread = false;
      row.field->setModified(false);
      refreshBookTerms();  // back to what the book holds
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace sumpwright::stages
