#include "stages/QuotePage.h"

#include <QCoreApplication>
#include <QEvent>
#include <QGridLayout>
#include <QHBoxLayout>
#include <algorithm>

#include "paint/Look.h"
#include "plan/SumpEdits.h"
#include "stages/SitingText.h"
#include "stages/SteadyCombo.h"

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

}  // namespace

std::vector<Fact> quoteFacts() {
  FactTable<plan::Quote> t(
      [](const plan::Job& job) { return std::optional(job.design.quote); },
      [](const plan::Job& job, const plan::Quote& quote) { return plan::setQuote(job, quote); });
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
  Fact& aside =
      t.text("/design/quote/provisional", QuoteFacts::tr("Set aside"), &plan::Quote::provisional);
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
  m_sums = new QLabel(this);
  m_sums->setTextFormat(Qt::RichText);
  m_column->addWidget(m_sums);
  m_note = new SideNote(SideNote::Kind::warning, this);
  m_note->setDismissable();
  m_note->hide();
  m_column->addWidget(m_note);
  m_invented = new SideNote(SideNote::Kind::warning, this);
  m_column->addWidget(m_invented);
  connect(m_invented, &SideNote::curePressed, this, [this] { tell(m_desk.makeOwnBook()); });
  makeLineRow();
  m_column->addWidget(heading(tr("This job")));
  m_terms = new FactForm(session, tr("Terms of the quote"), this);
  connect(m_terms, &FactForm::entered, this, &QuotePage::entered);
  m_column->addWidget(m_terms);
  makeBook();
  makeBookTerms();
  m_column->addWidget(heading(tr("To note")));
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
  m_add = new QPushButton(tr("Add a line"), this);
  m_add->setToolTip(tr("A line of this job's own; a negative price is a discount."));
  m_give_up = new QPushButton(tr("Give up"), this);
  m_give_up->setToolTip(
      tr("The chosen line as the design and the book have it; an added line goes. (Delete)"));
  m_give_up->setEnabled(false);
  row->addWidget(m_add);
  row->addWidget(m_give_up);
  row->addStretch();
  m_column->addLayout(row);
  m_items = new SteadyCombo(this);
  m_items->setAccessibleName(tr("Add an item of the price book"));
  m_items->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_column->addWidget(m_items);
  connect(m_add, &QPushButton::clicked, this, [this] {
    tell(m_desk.addLine({}, tr("New line").toStdString()));
    m_table.editNewLine();
  });
  connect(m_give_up, &QPushButton::clicked, &m_table, &QuoteTable::giveUp);
  connect(m_items, &QComboBox::activated, this, [this](int index) {
    const std::string item = m_items->itemData(index).toString().toStdString();
    if (item.empty()) return;
    tell(m_desk.addLine(item, {}));
    m_table.editNewLine();
  });
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
  grid->addWidget(words, row, 0);
  grid->addWidget(field, row, 1);
  connect(field, &QLineEdit::editingFinished, this, [this, field, take = std::move(take)] {
    if (m_filling || !field->isModified()) return;
    field->setModified(false);
    tell(take(field->text().trimmed().toStdString()));
  });
  return field;
}

void QuotePage::makeBookTerms() {
  m_book_terms = new QWidget(this);
  auto* grid = new QGridLayout(m_book_terms);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setColumnStretch(1, 1);
  const auto decimal = [this](std::optional<price::Decimal> price::PriceBook::*part) {
    return [this, part](const std::string& typed) {
      return m_desk.changeBook(
          [&](price::PriceBook& book) { return takeDecimal(typed, book.*part); });
    };
  };
  m_hour =
      addBookField(tr("Hour of labour"), tr("several rates"), [this](const std::string& typed) {
        return typed.empty() ? base::Problems() : m_desk.setHourPrice(typed);
      });
  m_margin = addBookField(tr("Margin, %"), tr("none"), decimal(&price::PriceBook::margin_percent));
  m_tax = addBookField(tr("Tax, %"), tr("not stated"), decimal(&price::PriceBook::tax_percent));
  m_round = addBookField(tr("Round total to"), tr("the least coin"),
                         decimal(&price::PriceBook::round_to));
  m_currency = addBookField(tr("Currency"), tr("as EUR"), [this](const std::string& typed) {
    return m_desk.changeBook([&](price::PriceBook& book) -> base::Problems {
      book.currency = typed;
      return {};
    });
  });
  m_ours = new TickBox(tr("These prices are ours, none invented"), m_book_terms);
  grid->addWidget(m_ours, grid->rowCount(), 0, 1, 2);
  connect(m_ours, &QCheckBox::clicked, this, [this](bool ticked) {
    tell(m_desk.changeBook([&](price::PriceBook& book) -> base::Problems {
      book.invented = !ticked;
      return {};
    }));
  });
  m_column->addWidget(m_book_terms);
}

void QuotePage::showEvent(QShowEvent* event) {
  refresh();
  QWidget::showEvent(event);
}

void QuotePage::refresh() {
  if (!isVisible() || !m_session.hasJob()) return;
  m_terms->setFacts(quoteFacts(), m_session.job().id);
  refreshTotal();
  refreshBooks();
  refreshBookTerms();
  refreshItems();
  m_give_up->setEnabled(m_table.mayGiveUp());
}

void QuotePage::refreshTotal() {
  const plan::Job& job = m_session.job();
  const price::PricedQuote* quote = m_desk.quote();
  const base::Problems& problems = m_desk.problems();
  const bool priced = quote != nullptr && problems.empty();
  const auto money = [&](price::Money amount) {
    return QString::fromStdString(price::moneyText(amount, quote->minor_digits));
  };
  m_total->setText(
      priced ? tr("%1 %2").arg(QString::fromStdString(quote->currency), money(quote->total))
             : tr("No prices"));
  QString rows;
  const auto add = [&](const char* id, price::Money amount,
                       const std::optional<price::Decimal>& percent = {}, bool bold = false) {
    QString words = said(base::Message(std::string("price.total.") + id), job);
    if (percent) words += tr(", %1 %").arg(shownDecimal(percent));
    rows += sumRow(words, money(amount), bold);
  };
  QStringList remarks;
  if (priced) {
    add("work", price::workShown(*quote));
    if (quote->margin_percent) {
      add(quote->margin_in_lines ? "margin-within" : "margin", quote->margin,
          quote->margin_percent);
    }
    if (quote->provisional.coins != 0) add("provisional", quote->provisional);
    add("net", quote->net);
    if (quote->tax_percent) add("tax", quote->tax, quote->tax_percent);
    if (quote->rounding.coins != 0) add("rounding", quote->rounding);
    add(quote->tax_percent ? "total" : "total-without-tax", quote->total, {}, true);
    for (const base::Message& remark : quote->remarks)
      remarks << QStringLiteral("• ") + said(remark, job);
  }
  m_sums->setText(
      QStringLiteral("<table width=\"100%\" cellspacing=\"0\" cellpadding=\"1\">%1</table>")
          .arg(rows));
  m_sums->setVisible(priced);
  m_remarks->setText(remarks.join(QLatin1Char('\n')));
  QStringList wrong;
  for (const base::Problem& problem : problems) {
    QString line = said(problem.message, job);
    if (!problem.pointer.empty())
      line += tr(" (at %1)").arg(QString::fromStdString(problem.pointer));
    wrong << line;
  }
  const bool invented = priced && quote->invented;
  m_invented->setVisible(invented || !priced);
  m_invented->setText(invented ? said(base::Message("price.invented"), job)
                               : wrong.join(QLatin1Char('\n')));
  m_invented->setCure(invented && !m_desk.isBookOwn() ? tr("Make a book of our own") : QString());
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
  m_filling = false;
}

void QuotePage::refreshBookTerms() {
  const bool own = m_desk.isBookOwn();
  m_book_terms->setVisible(own);
  if (!own) return;
  const price::PriceBook& book = m_desk.book()->book;
  m_filling = true;
  const auto fill = [](QLineEdit* field, const QString& text) {
    if (field->hasFocus() && field->isModified()) return;
    field->setText(text);
    field->setModified(false);
  };
  const auto hour = m_desk.hourPrice();
  fill(m_hour, hour ? QString::fromStdString(hour->text(book.minor_digits)) : QString());
  fill(m_margin, shownDecimal(book.margin_percent));
  fill(m_tax, shownDecimal(book.tax_percent));
  fill(m_round, shownDecimal(book.round_to));
  fill(m_currency, QString::fromStdString(book.currency));
  m_ours->setChecked(!book.invented);
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
  for (QLineEdit* field : {m_hour, m_margin, m_tax, m_round, m_currency}) {
    if (field->isModified()) Q_EMIT field->editingFinished();
  }
}

void QuotePage::takeBook(const QString& path) {
  tell(m_desk.takeBook(path.toStdString()), tr("The job is priced as it was."));
}

void QuotePage::tell(const base::Problems& problems, const QString& then) {
  constexpr std::size_t kMost = 8;
  QStringList lines;
  for (std::size_t i = 0; i < std::min(problems.size(), kMost); ++i) {
    QString line = said(problems[i].message, m_session.job());
    if (!problems[i].pointer.empty())
      line += tr(" (at %1)").arg(QString::fromStdString(problems[i].pointer));
    lines << line;
  }
  if (problems.size() > kMost) lines << tr("and %1 more").arg(problems.size() - kMost);
  if (!problems.empty() && !then.isEmpty()) lines << then;
  m_note->setText(lines.join(QLatin1Char('\n')));
  m_note->setVisible(!problems.empty());
  if (!problems.empty()) Q_EMIT entered(m_note);  // bring it into sight
  if (!problems.empty()) refreshBookTerms();
}

bool QuotePage::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::FocusIn) Q_EMIT entered(qobject_cast<QWidget*>(watched));
  return QWidget::eventFilter(watched, event);
}

}  // namespace sumpwright::stages
