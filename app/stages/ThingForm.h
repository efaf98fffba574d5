#pragma once
// What is known of the thing in hand, to be changed in place. Each change is one step of undo.

#include <QLabel>
#include <QWidget>

#include "plan/ThingEdits.h"
#include "session/Session.h"
#include "stages/FactForm.h"

namespace sumpwright::stages {

class ThingForm final : public QWidget {
  Q_OBJECT

 public:
  explicit ThingForm(session::Session& session, QWidget* parent = nullptr);
  /// Shows the selected thing; hides itself where none is selected.
  void refresh();
  FactForm* facts() const { return m_facts; }
  QString title() const { return m_title->text(); }

 private:
  session::Session& m_session;
  QLabel* m_title;
  FactForm* m_facts;
};

/// What the plan check says of the wall or thing of that id, by the key of the fact it is about.
std::map<std::string, QString> toldOf(const session::Session& session, const std::string& id);

}  // namespace sumpwright::stages
