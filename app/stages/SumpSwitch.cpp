#include "stages/SumpSwitch.h"

#include <QHBoxLayout>
#include <algorithm>

#include "plan/SumpList.h"

namespace sumpwright::stages {

SumpSwitch::SumpSwitch(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setAlignment(Qt::AlignLeft);
  hide();
  connect(&session, &session::Session::studyChanged, this, &SumpSwitch::refresh);
  connect(&session, &session::Session::placeChanged, this, &SumpSwitch::refresh);
  refresh();
}

void SumpSwitch::refresh() {
  std::vector<plan::NumberedSump> cored;
  if (m_session.hasJob()) cored = plan::coredSumps(m_session.job());
  if (cored.size() < 2) cored.clear();
  std::vector<std::string> ids;
  for (const plan::NumberedSump& sump : cored) ids.push_back(sump.id);
  if (ids != m_ids) {
    m_ids = ids;
    if (m_row != nullptr) m_row->deleteLater();  // a press on it may have led here
    m_row = nullptr;
    setVisible(!m_ids.empty());
    if (m_ids.empty()) return;
    QStringList names;
    for (const plan::NumberedSump& sump : cored) names << tr("Sump %1").arg(sump.number);
    m_row = new Segments(tr("Sump looked at"), names, this, Segments::Spacing::close);
    layout()->addWidget(m_row);
    connect(m_row, &Segments::picked, this,
            [this](int index) { m_session.chooseSump(m_ids[static_cast<std::size_t>(index)]); });
  }
  const auto chosen = std::find(m_ids.begin(), m_ids.end(), m_session.sump());
  if (m_row != nullptr && chosen != m_ids.end()) {
    m_row->show(static_cast<int>(chosen - m_ids.begin()));
  }
}

}  // namespace sumpwright::stages
