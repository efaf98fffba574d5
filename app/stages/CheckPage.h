#pragma once
// What is impossible in the plan, and what is not known yet: each line leads to the
// page and field that answer it.

#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QWidget>

#include "session/Session.h"

namespace sumpwright::stages {

class CheckPage final : public QWidget {
  Q_OBJECT

 public:
  explicit CheckPage(session::Session& session, QWidget* parent = nullptr);
  void takeFocus() { m_list->setFocus(Qt::OtherFocusReason); }
  QListWidget* list() const { return m_list; }
  QPushButton* fixButton() const { return m_fix; }
  QPushButton* answerButton() const { return m_answer; }
  /// What is wrong apart from the job itself: a picture that is not there.
  void setMore(const base::Problems& more);
  QString summary() const { return m_summary->text(); }

 Q_SIGNALS:
  /// Somebody wants to answer this.
  void led(const base::Problem& problem);

 protected:
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void refresh();
  void fitLines();
  void lead(int row);
  void point(int row);
  int chosen() const;  ///< -1: none
  void offer();
  void fix();
  session::Session& m_session;
  QLabel* m_summary;
  QListWidget* m_list;
  QPushButton* m_fix;
  QPushButton* m_answer;
  base::Problems m_more;
  std::vector<base::Problem> m_rows;
};

}  // namespace sumpwright::stages
