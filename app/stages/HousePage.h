#pragma once
// Job and house apart from the drawing: who, when, what it is built of, levels, whose leave is
// needed, the standby sump. Every field is one step of undo; what is not known stays visible.

#include <QPushButton>
#include <QScrollArea>
#include <QWidget>
#include <vector>

#include "session/Session.h"
#include "stages/FactForm.h"

namespace sumpwright::stages {

class HousePage final : public QWidget {
  Q_OBJECT

 public:
  explicit HousePage(session::Session& session, QWidget* parent = nullptr);
  void takeFocus();
  /// Puts the cursor into the field of that place in the job file; false: it is asked for
  /// elsewhere.
  bool takeFocusAt(const std::string& pointer);
  /// nullptr where no section has it.
  QWidget* field(const std::string& key) const;
  const std::vector<FactForm*>& sections() const { return m_sections; }
  QPushButton* addAppliance() const { return m_appliance; }

 private:
  void refresh();
  void newAppliance();

  session::Session& m_session;
  QScrollArea* m_scroll;
  std::vector<FactForm*> m_sections;
  QPushButton* m_appliance;
};

}  // namespace sumpwright::stages
