#pragma once
// Beside the lines of the quote: what it comes to, the terms of this job, the price book and what
// of it is the firm's to change.

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <QWidget>

#include "session/QuoteDesk.h"
#include "stages/BookTerms.h"
#include "stages/FactForm.h"
#include "stages/QuoteTable.h"
#include "stages/SideNote.h"

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
  QPushButton* giveUp() const { return m_give_up; }
  QComboBox* items() const { return m_items; }
  BookTerms* bookTerms() const { return m_book_terms; }
  /// The line under the total: whose prices, and whether it is whole.
  QString standing() const { return m_standing->text(); }
  void settle();
  /// Takes the last change of the firm's price book back.
  void takeBack();
  void makeAgain();
  /// Puts a book from elsewhere among the firm's own, or says what is wrong with it.
  void takeBook(const QString& path);

 Q_SIGNALS:
  void bookAsked();
  /// A field got the keys.
  void entered(QWidget* field);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void makeLineRow();
  void makeBook();
  QLabel* heading(const QString& text);
  QStringList remarksOf(const price::PricedQuote& quote) const;
  QString sumsOf(const price::PricedQuote& quote) const;
  void refreshStanding();
  void addOwnLine(plan::QuoteKind kind);
  void refresh();
  void refreshTotal();
  void refreshBooks();
  void refreshItems();
  /// `of`: the line of the quote they are about.
  void tell(const base::Problems& problems, const QString& then = {}, const QString& of = {});

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
  BookTerms* m_book_terms = nullptr;
  QLabel* m_remarks;
  bool m_filling = false;
};

}  // namespace sumpwright::stages
