#pragma once
// What of the firm's own price book is not of one line: rate of an hour, margin, tax, rounding,
// currency, price of electricity, whose prices they are; and the way back from its last change.
// Shown only where the book is the firm's.

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QWidget>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "session/QuoteDesk.h"
#include "stages/TickBox.h"

namespace sumpwright::stages {

class BookTerms final : public QWidget {
  Q_OBJECT

 public:
  BookTerms(session::Session& session, session::QuoteDesk& desk, QWidget* parent = nullptr);

  QLineEdit* hour() const { return m_hour; }
  QLineEdit* margin() const { return m_margin; }
  QLineEdit* tax() const { return m_tax; }
  QLineEdit* roundTo() const { return m_round; }
  QLineEdit* currency() const { return m_currency; }
  QLineEdit* perKwh() const { return m_per_kwh; }
  TickBox* ours() const { return m_ours; }
  QPushButton* backButton() const { return m_back; }
  /// What is offered to be taken back.
  QString lastChange() const { return m_back_words->text(); }
  /// What stands under a field; empty where nothing does.
  QString noteUnder(const QLineEdit* field) const;
  void refresh();
  /// Takes what is being typed.
  void settle();

 Q_SIGNALS:
  void backAsked();
  /// The book was changed, or was not for these problems.
  void changed(const base::Problems& problems);
  /// A field got the keys.
  void entered(QWidget* field);

 protected:
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
  QLineEdit* addBookField(const QString& label, const QString& example, Take take);
  void takeField(std::size_t i);
  void fillField(const QLineEdit* field, const QString& text, const QString& warning = {});
  void refreshBack();

  session::Session& m_session;
  session::QuoteDesk& m_desk;
  QLineEdit* m_hour = nullptr;
  QLineEdit* m_margin = nullptr;
  QLineEdit* m_tax = nullptr;
  QLineEdit* m_round = nullptr;
  QLineEdit* m_currency = nullptr;
  QLineEdit* m_per_kwh = nullptr;
  QPushButton* m_back = nullptr;
  QLabel* m_back_words = nullptr;
  TickBox* m_ours = nullptr;
  std::vector<BookField> m_fields;
  std::string m_fields_of;  ///< id of the book they show
  bool m_filling = false;
};

/// Empty where there is none.
QString shownDecimal(const std::optional<price::Decimal>& value);

}  // namespace sumpwright::stages
