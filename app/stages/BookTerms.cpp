#include "stages/BookTerms.h"

#include <QEvent>
#include <QGridLayout>
#include <QKeyEvent>
#include <algorithm>

#include "paint/Look.h"
#include "stages/SitingText.h"
#include "stages/SurveyText.h"
#include "stages/TypedText.h"

namespace sumpwright::stages {

namespace {

/// Nothing where nothing is typed.
base::Problems takeDecimal(const std::string& typed, std::optional<price::Decimal>& into) {
  into.reset();
  if (typed.empty()) return {};
  const auto parsed = price::typedDecimal(typed);
  if (!parsed.ok()) return parsed.problems();
  into = *parsed;
  return {};
}

}  // namespace

QString shownDecimal(const std::optional<price::Decimal>& value) {
  return value ? QString::fromStdString(value->text()) : QString();
}

QLineEdit* BookTerms::addBookField(const QString& label, const QString& example, Take take) {
  auto* grid = static_cast<QGridLayout*>(layout());
  const int row = grid->rowCount();
  auto* words = new QLabel(label, this);
  words->setProperty("tone", QStringLiteral("second"));
  words->setWordWrap(true);
  words->setFixedWidth(qRound(92 * paint::uiScale(font())));
  auto* field = new QLineEdit(this);
  field->setMaxLength(40);
  field->setPlaceholderText(example);
  field->setAccessibleName(tr("Price book: %1").arg(label));
  field->installEventFilter(this);
  auto* note = new QLabel(this);
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
void BookTerms::takeField(std::size_t i) {
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
    return refresh();
  }
  m_fields[i].unread = true;
  m_fields[i].note->setText(said(problems.front().message, m_session.job()));
  m_fields[i].note->show();
}

BookTerms::BookTerms(session::Session& session, session::QuoteDesk& desk, QWidget* parent)
    : QWidget(parent), m_session(session), m_desk(desk) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setColumnStretch(1, 1);
  m_back = new QPushButton(tr("Take back"), this);
  m_back->setToolTip(
      tr("Writes the price book as it was before its last change. (Ctrl+Z, until the job is "
         "changed)"));
  m_back_words = new QLabel(this);
  m_back_words->setWordWrap(true);
  m_back_words->setProperty("tone", QStringLiteral("second"));
  m_back_words->setFont(paint::sized(font(), 0.9));
  grid->addWidget(m_back, 0, 0);
  grid->addWidget(m_back_words, 0, 1);
  connect(m_back, &QPushButton::clicked, this, &BookTerms::backAsked);
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
  m_ours = new TickBox(tr("These prices are ours, none invented"), this);
  grid->addWidget(m_ours, grid->rowCount(), 0, 1, 2);
  connect(m_ours, &QCheckBox::clicked, this, [this](bool ticked) {
    const QString what = ticked ? tr("These prices are ours") : tr("These prices are invented");
    Q_EMIT changed(m_desk.changeBook(what, [&](price::PriceBook& book) -> base::Problems {
      book.invented = !ticked;
      return {};
    }));
  });
}

/// Not under the hands of who types in it, nor over what has to be put right; `warning` is what is
/// odd about what the book says.
void BookTerms::fillField(const QLineEdit* field, const QString& text, const QString& warning) {
  const auto row = std::find_if(m_fields.begin(), m_fields.end(),
                                [&](const BookField& one) { return one.field == field; });
  if (row->unread || (row->field->hasFocus() && row->field->isModified())) return;
  if (row->field->text() != text) row->field->setText(text);
  row->field->setModified(false);
  row->note->setText(warning);
  row->note->setVisible(!warning.isEmpty());
}

void BookTerms::refreshBack() {
  const QString change = m_desk.bookChange();
  m_back->setEnabled(!change.isEmpty());
  m_back_words->setText(change.isEmpty() ? tr("Nothing changed yet.") : change);
}

void BookTerms::refresh() {
  const bool own = m_desk.isBookOwn();
  setVisible(own);
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

QString BookTerms::noteUnder(const QLineEdit* field) const {
  for (const BookField& row : m_fields) {
    if (row.field == field && !row.note->isHidden()) return row.note->text();
  }
  return {};
}

bool BookTerms::eventFilter(QObject* watched, QEvent* event) {
  auto* field = qobject_cast<QWidget*>(watched);
  if (isWindowsUndo(field, event)) return true;
  if (event->type() == QEvent::FocusIn) Q_EMIT entered(field);
  if (event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    for (BookField& row : m_fields) {
      if (row.field != field || (!row.unread && !row.field->isModified())) continue;
      row.unread = false;
      row.field->setModified(false);
      refresh();  // back to what the book holds
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

void BookTerms::settle() {
  for (std::size_t i = 0; i < m_fields.size(); ++i) takeField(i);
}

}  // namespace sumpwright::stages
