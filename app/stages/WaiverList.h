#pragma once
// The waivers of the sump: what was accepted, why, by whom; struck out when lapsed; each may be
// withdrawn.

#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>

#include "session/Session.h"

namespace sumpwright::stages {

class WaiverList final : public QWidget {
  Q_OBJECT

 public:
  explicit WaiverList(session::Session& session, QWidget* parent = nullptr);
  void refresh();

 private:
  void addRow(const plan::Waiver& waiver, bool holds);

  session::Session& m_session;
  QVBoxLayout* m_rows;
};

}  // namespace sumpwright::stages
