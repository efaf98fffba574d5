#pragma once
// The things on the plan: typed onto a wall from its corner, listed, and the one in hand with what
// is known of it. All by keyboard: Page up and down choose the wall, Enter adds.

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QWidget>

#include "session/Session.h"
#include "stages/SteadyCombo.h"
#include "stages/ThingForm.h"
#include "stages/WallForm.h"

namespace sumpwright::stages {

class ThingsPage final : public QWidget {
  Q_OBJECT

 public:
  explicit ThingsPage(session::Session& session, QWidget* parent = nullptr);
  void takeFocus() { m_line->setFocus(Qt::OtherFocusReason); }

  /// Puts the cursor into the field of the thing or wall in hand that a place of the job file ends
  /// in; into the line where there is none.
  void takeFocusAt(const std::string& pointer);
  /// Whether this page asks for the facts of that id.
  bool asks(const std::string& id) const;
  QLineEdit* line() const { return m_line; }
  QComboBox* walls() const { return m_walls; }
  QListWidget* list() const { return m_list; }
  ThingForm* form() const { return m_form; }
  WallForm* wallForm() const { return m_wall_form; }
  QString message() const { return m_message->text(); }
  QPushButton* roomsButton() const { return m_rooms; }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void refresh();
  void refreshWalls();
  void refreshList();
  void showSelected();
  void submit();
  void preview();
  void say(const QString& text, bool warning);
  void removeSelected();
  void findRooms();
  int chosenRow() const;  ///< -1: none
  std::string listed(int row) const;

  session::Session& m_session;
  SteadyCombo* m_walls;
  QLineEdit* m_line;
  QPushButton* m_add;
  QLabel* m_message;
  QListWidget* m_list;
  QPushButton* m_rooms;
  QPushButton* m_remove;
  QScrollArea* m_forms;
  ThingForm* m_form;
  WallForm* m_wall_form;
  bool m_filling = false;
};

}  // namespace sumpwright::stages
