#pragma once
// What is known of the thing in hand, to be changed in place: name, kind of use, offset from the
// left corner, width, sill and head. Each change is one step of undo.

#include <QLabel>
#include <QLineEdit>
#include <QWidget>

#include "plan/ThingEdits.h"
#include "session/Session.h"
#include "stages/SteadyCombo.h"

class QGridLayout;

namespace sumpwright::stages {

class ThingForm final : public QWidget {
  Q_OBJECT

 public:
  explicit ThingForm(session::Session& session, QWidget* parent = nullptr);
  /// Shows the selected thing; hides itself where none is selected.
  void refresh();

  QLineEdit* name() const { return m_name; }
  QComboBox* choice() const { return m_choice; }
  QLineEdit* lengthField(int which) const { return m_lengths[which]; }
  QString message() const { return m_message->text(); }

 private:
  enum Length { kOffset, kWidth, kSill, kHead, kLengths };
  void commitName();
  void commitChoice(int index);
  void commitLength(int which);
  void show(const plan::Thing& thing);
  void showChoice(const plan::Thing& thing);
  void showLengths(const plan::Thing& thing);
  void say(const base::Problems& problems);

  session::Session& m_session;
  std::string m_id;
  QLabel* m_title;
  QLineEdit* m_name;
  QLabel* m_choice_label;
  SteadyCombo* m_choice;
  QLabel* m_length_labels[kLengths] = {};
  QLineEdit* m_lengths[kLengths] = {};
  QLabel* m_message;
  bool m_filling = false;
};

}  // namespace sumpwright::stages
