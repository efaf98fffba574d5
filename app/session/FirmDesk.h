#pragma once
// The firm whose head and terms stand on the papers: read from its file when the program starts and
// written with every change. It belongs to no job, so there is no undo for it.

#include <QObject>

#include "files/FirmFile.h"

namespace sumpwright::session {

class FirmDesk final : public QObject {
  Q_OBJECT

 public:
  explicit FirmDesk(QObject* parent = nullptr);

  const files::Firm& firm() const { return m_firm; }
  /// Why the file cannot be read. While there are any nothing is written: what stands in the file
  /// is not lost.
  const base::Problems& problems() const { return m_problems; }
  /// Why its picture cannot be read, where the rest can: papers have none then.
  const base::Problems& logoProblems() const { return m_logo_problems; }
  /// Reads the file again.
  void reload();
  /// Takes over and writes; a firm like the one there is is not written. Problems: those of
  /// problems(), or of writing; then the papers keep the old one.
  base::Problems set(const files::Firm& firm);
  /// The same with the picture in a file, or without one.
  base::Problems setLogo(const QString& path);
  base::Problems removeLogo();

 Q_SIGNALS:
  void changed();

 private:
  files::Firm m_firm;
  base::Problems m_problems;
  base::Problems m_logo_problems;
};

}  // namespace sumpwright::session
