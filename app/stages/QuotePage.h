#pragma once
// Beside the lines of the quote: what it comes to, the terms of this job, the price book and what
// of it is the firm's to change.

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <QWidget>

#include "session/QuoteDesk.h"
#include "stages/FactForm.h"
#include "stages/QuoteTable.h"
#include "stages/SideNote.h"
#include "stages/TickBox.h"

namespace sumpwright::stages {

class QuotePage final : public QWidget {
  Q_OBJECT

 public:
  QuotePage(session::Session& session, session::QuoteDesk& desk, QuoteTable& table,
            QWidget* parent = nullptr);

  QString total() const { return m_total->text(); }
  QString told() const { return m_note->isHidden() ? QString() : m_note->text(); }
  FactForm* terms() const { return m_terms; }
  QComboBox* books() const { return m_books; }
  QPushButton* openBook() const { return m_open; }
  QPushButton* ownBook() const { return m_own; }
  QPushButton* addLine() const { return m_add; }
  QPushButton* addWork() const { return m_add_work; }
  QPushButton* takeBackButton() const { return m_back; }
  QPushButton* giveUp() const { return m_give_up; }
  QComboBox* items() const { return m_items; }
  QLineEdit* hour() const { return m_hour; }
  QLineEdit* bookMargin() const { return m_margin; }
  QLineEdit* bookTax() const { return m_tax; }
  QLineEdit* roundTo() const { return m_round; }
  QLineEdit* currency() const { return m_currency; }
  QLineEdit* perKwh() const { return m_per_kwh; }
  /// What stands under a field of the book; empty where nothing does.
  QString noteUnder(const QLineEdit* field) const;
  /// The line under the total: whose prices, and whether it is whole.
  QString standing() const { return m_standing->text(); }
  /// What is offered to be taken back of the book.
  QString bookChange() const { return m_back_words->text(); }
  TickBox* ours() const { return m_ours; }
  void settle();
  /// Takes the last change of the firm's price book back.
  void takeBack();
  /// Puts a book from elsewhere among the firm's own, or says what is wrong with it.
  void takeBook(const QString& path);

 Q_SIGNALS:
  void bookAsked();
  /// A field got the keys.
  void entered(QWidget* field);

 protected:
  void showEvent(QShowEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  /// `what` is what the change is called when it is offered to be taken back.
  using Take = std::function<base::Problems(const std::string& typed, const QString& what)>;
  struct BookField {
    QLineEdit* field = nullptr;
    QLabel* note = nullptr;
    QString label;
    Take take;
    bool unread = false;  ///< what is typed was not taken, and still has to be put right
  };
  void makeLineRow();
  void makeBook();
  void makeBookTerms();
  QLabel* heading(const QString& text);
  QLineEdit* addBookField(const QString& label, const QString& example, Take take);
  void takeField(std::size_t i);
  void fillField(const QLineEdit* field, const QString& text, const QString& warning = {});
  void refreshBack();
  QStringList remarksOf(const price::PricedQuote& quote) const;
  QString sumsOf(const price::PricedQuote& quote) const;
  void refreshStanding();
  void addOwnLine(plan::QuoteKind kind);
  void refresh();
  void refreshTotal();
  void refreshBooks();
  void refreshBookTerms();
  void refreshItems();
  void tell(const base::Problems& problems, const QString& then = {});

  session::Session& m_session;
  session::QuoteDesk& m_desk;
  QuoteTable& m_table;
  QVBoxLayout* m_column;
  QLabel* m_total;
  QLabel* m_standing;
  QLabel* m_sums;
  SideNote* m_note;
  SideNote* m_wrong;
  SideNote* m_invented = nullptr;
  QPushButton* m_add = nullptr;
  QPushButton* m_add_work = nullptr;
  QPushButton* m_give_up = nullptr;
  QComboBox* m_items = nullptr;
  FactForm* m_terms;
  QComboBox* m_books = nullptr;
  QPushButton* m_open = nullptr;
  QPushButton* m_own = nullptr;
  QWidget* m_book_terms = nullptr;
  QLineEdit* m_hour = nullptr;
  QLineEdit* m_margin = nullptr;
  QLineEdit* m_tax = nullptr;
  QLineEdit* m_round = nullptr;
  QLineEdit* m_currency = nullptr;
  QLineEdit* m_per_kwh = nullptr;
  QPushButton* m_back = nullptr;
  QLabel* m_back_words = nullptr;
  std::vector<BookField> m_fields;
  std::string m_fields_of;  ///< id of the book they show
  TickBox* m_ours = nullptr;
  QLabel* m_remarks;
  bool m_filling = false;
};

/// What a job's quote says beside its lines: its number, date, days it holds, margin, tax,
/// provisional sum. `number` is what is printed where the job gives none.
std::vector<Fact> quoteFacts(const QString& number = {});

/// What is wrong with a price book or a fan table, and where, in words.
QString toldWithPlace(const base::Problem& problem, const plan::Job& job);

}  // namespace sumpwright::stages
