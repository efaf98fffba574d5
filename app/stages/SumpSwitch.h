#pragma once
// Which of several sumps in the wall is looked at and moved: "Sump 1", "Sump 2", … in one row; not
// there for one alone.

#include <QWidget>
#include <string>
#include <vector>

#include "session/Session.h"
#include "stages/Segments.h"

namespace sumpwright::stages {

class SumpSwitch final : public QWidget {
  Q_OBJECT

 public:
  explicit SumpSwitch(session::Session& session, QWidget* parent = nullptr);
  /// nullptr where there are fewer than two.
  Segments* row() const { return m_row; }

 private:
  void refresh();

  session::Session& m_session;
  std::vector<std::string> m_ids;
  Segments* m_row = nullptr;
};

}  // namespace sumpwright::stages
