#include "session/FirmDesk.h"

#include <utility>

namespace sumpwright::session {

FirmDesk::FirmDesk(QObject* parent) : QObject(parent) { reload(); }

void FirmDesk::reload() {
  m_logo_problems.clear();
  auto read = files::userFirm(&m_logo_problems);
  m_problems = read.ok() ? base::Problems() : read.problems();
  m_firm = read.ok() ? std::move(read).value() : files::Firm();
  Q_EMIT changed();
}

base::Problems FirmDesk::set(const files::Firm& firm) {
  if (!m_problems.empty()) return m_problems;
  if (firm == m_firm) return {};
  base::Problems problems = files::saveUserFirm(firm);
  if (!problems.empty()) return problems;
  m_firm = firm;
  if (firm.lost_logo.empty()) m_logo_problems.clear();
  Q_EMIT changed();
  return {};
}

base::Problems FirmDesk::setLogo(const QString& path) {
  files::Firm firm = m_firm;
  base::Problems problems = files::takeLogo(firm, path.toStdString());
  return problems.empty() ? set(firm) : problems;
}

base::Problems FirmDesk::removeLogo() {
  files::Firm firm = m_firm;
  firm.logo.clear();
  firm.lost_logo.clear();
  firm.logo_width_px = 0;
  firm.logo_height_px = 0;
  return set(firm);
}

}  // namespace sumpwright::session
