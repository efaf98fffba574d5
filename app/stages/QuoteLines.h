#pragma once
// The lines of the quote: what, how many and where that comes from, what the price book takes and
// what this job does. What is typed goes into the job or, of the book, into the firm's own.

#include <QAbstractTableModel>
#include <QStringList>

#include "session/QuoteDesk.h"

namespace sumpwright::stages {

class QuoteLines final : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column { what, quantity, unit, book_price, job_price, total, column_count };
  /// Of a cell beside Qt's own: smaller words under it, how it is drawn, whether one of a list is
  /// chosen in it.
  enum Role { second_role = Qt::UserRole + 1, tone_role, head_role, choice_role };
  enum class Tone { plain, changed, quiet, warning };

  explicit QuoteLines(session::QuoteDesk& desk, QObject* parent = nullptr);

  void refresh(const plan::Job* job);
  bool isHead(int row) const { return m_rows[static_cast<std::size_t>(row)].line < 0; }
  /// Of a row that is no head.
  const price::PricedLine& line(int row) const;
  /// The row of an item of the price book; -1 where it has none.
  int rowOf(const std::string& item) const;
  /// What a unit may be, as the cell says it.
  static QStringList unitWords();

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 Q_SIGNALS:
  /// What was typed was not taken, in the line of those words.
  void refused(const base::Problems& problems, const QString& line);
  void taken();
  void structureChanged();

 private:
  struct Row {
    int line = -1;
    QString head;
    std::string key;
  };
  void addRows(std::vector<Row>& rows, const QString& head,
               const std::function<bool(const price::PricedLine&)>& wanted) const;
  QString words(const price::PricedLine& line, Column column) const;
  QString second(const price::PricedLine& line, Column column) const;
  Tone tone(const price::PricedLine& line, Column column) const;
  bool maySetSoldIn(const price::PricedLine& line) const;
  QString typed(const price::PricedLine& line, Column column) const;
  base::Problems take(const price::PricedLine& line, Column column, const std::string& text);

  session::QuoteDesk& m_desk;
  price::PricedQuote m_quote;
  plan::Quote m_job_quote;
  plan::DisplayUnits m_units = plan::DisplayUnits::metric;
  bool m_own = false;  ///< the book is the firm's
  std::vector<Row> m_rows;
};

}  // namespace sumpwright::stages
