#pragma once
// The lines of the quote as a table: ticked in or out, their figures typed where they stand.

#include <QTableView>

#include "stages/QuoteLines.h"

namespace sumpwright::stages {

class QuoteTable final : public QTableView {
  Q_OBJECT

 public:
  QuoteTable(session::Session& session, session::QuoteDesk& desk, QWidget* parent = nullptr);

  QuoteLines* lines() const { return m_lines; }
  /// Gives up the change of the chosen line, or takes out one the job has added.
  void giveUp();
  bool mayGiveUp() const;
  /// Begins typing in a cell of the last line of the job's own.
  void editNewLine();
  /// Takes what is being typed.
  void settle();
  /// Typed letters never look for a line: a price would land in another one than is marked.
  void keyboardSearch(const QString&) override {}

 Q_SIGNALS:
  void chosen();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  /// Tab goes to the next cell that takes something.
  QModelIndex moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) override;
  void showEvent(QShowEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void refresh();
  void layOut();
  void keepTyped(const QPersistentModelIndex& index, const QString& typed);

  session::Session& m_session;
  session::QuoteDesk& m_desk;
  QuoteLines* m_lines;
};

}  // namespace sumpwright::stages
