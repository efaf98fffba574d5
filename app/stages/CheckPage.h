#pragma once
// What is impossible in the plan, and what is not known yet: each line leads to the thing.

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
  QString summary() const { return m_summary->text(); }

 private:
  void refresh();
  void goTo(int row);
  void offer();
  void fix();
  session::Session& m_session;
  QLabel* m_summary;
  QListWidget* m_list;
  QPushButton* m_fix;
  std::vector<base::Problem> m_rows;
  std::vector<std::string> m_things;  ///< id of the thing a row leads to; may be empty
};

}  // namespace sumpwright::stages
