#pragma once
// Taping the outline: which way, how long, the field book, and how well it closes. All by keyboard
// from the one field: arrows turn; Enter adds, and with nothing typed and the start near it closes;
// Up and Down with Ctrl walk the book; Ctrl+Delete takes a wall out; Insert on a wall in hand puts
// one in before it; Escape leaves a correction.

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableWidget>
#include <QToolButton>
#include <QWidget>

#include "session/TapeDesk.h"
#include "stages/ClosingBar.h"
#include "stages/Segments.h"
#include "stages/SideNote.h"

namespace sumpwright::stages {

class OutlinePage final : public QWidget {
  Q_OBJECT

 public:
  OutlinePage(session::Session& session, session::TapeDesk& desk, QWidget* parent = nullptr);
  void takeFocus();

  QLineEdit* field() const { return m_field; }
  QTableWidget* book() const { return m_book; }
  QPushButton* closeButton() const { return m_close; }
  QPushButton* pictureButton() const { return m_picture; }
  QPushButton* backButton() const { return m_back; }
  QToolButton* arrow(int quarter) const { return m_arrows[quarter]; }
  Segments* sharing() const { return m_sharing; }
  QPushButton* reading(int which) const { return m_reading[which]; }
  SideNote* hint() const { return m_hint; }
  QString titleText() const { return m_title->text(); }
  QString fromText() const { return m_from->text(); }
  QString message() const { return m_message->text(); }
  QString closingText() const { return m_gap->text() + QLatin1Char(' ') + m_one_in->text(); }

 Q_SIGNALS:
  /// A picture to trace, or an outline from a file.
  void pictureAsked();
  /// The outline is closed: what comes next.
  void outlineClosed();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  QWidget* makeEntry();
  QWidget* makeClosing();
  void refresh();
  void refreshHead();
  void refreshBook();
  void refreshClosing();
  void refreshHint();
  void submit();
  void told(session::TapeDesk::Outcome outcome);
  void sayWhy();
  bool closesWell() const;
  void say(const QString& text);
  void ask();
  void stepCorrection(int by);
  void insertBefore(std::size_t wall);
  void closeOrReopen();
  void goBack();
  bool fieldKey(QKeyEvent* event);

  session::Session& m_session;
  session::TapeDesk& m_desk;
  QLabel* m_title;
  QLabel* m_from;
  QToolButton* m_arrows[4] = {};  ///< up, right, down, left
  QLabel* m_bearing = nullptr;
  QLabel* m_length_label = nullptr;
  QLineEdit* m_field = nullptr;
  QPushButton* m_add = nullptr;
  QLabel* m_message = nullptr;
  QPushButton* m_reading[2] = {};
  QTableWidget* m_book = nullptr;
  SideNote* m_hint = nullptr;
  QPushButton* m_picture = nullptr;
  QWidget* m_closing = nullptr;
  QLabel* m_gap_title = nullptr;
  QLabel* m_gap = nullptr;
  QLabel* m_one_in = nullptr;
  ClosingBar* m_bar = nullptr;
  Segments* m_sharing = nullptr;
  QPushButton* m_close = nullptr;
  QPushButton* m_back = nullptr;
  bool m_filling = false;
  std::optional<geometry::Misread> m_misread;
};

}  // namespace sumpwright::stages
