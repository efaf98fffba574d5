#pragma once
// Work that was kept and whose window is gone without having been told that it may be lost.

#include <QDateTime>
#include <QLockFile>
#include <QString>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/Problem.h"

namespace sumpwright::session {

/// No more windows than this are told apart on one job (own figure).
inline constexpr int kMostSlots = 99;

struct LeftOver {
  std::string slot;
  QString origin;  ///< of the job's file; empty: never saved
  QString address;
  QDateTime written_at;     ///< local time
  base::Problems problems;  ///< why it cannot be read; such a one is there only to be discarded
};

/// A lock that is stale only when the process that has it is gone, or the computer was started
/// anew.
std::unique_ptr<QLockFile> lockOf(const std::string& slot);

/// All of them, newest first. Clears up after processes that are gone.
std::vector<LeftOver> leftOvers();
/// The newest that can be read of the job at that path. What differs in nothing from the job's file
/// (the program ended between saving and clearing up) is removed and passed over.
std::optional<LeftOver> leftOverOf(const QString& path);
/// Removes it; false where a window has taken it up meanwhile, or the file cannot be removed.
bool discardLeftOver(const std::string& slot);

/// Who has the job at that path open besides the window with slot `own`, in words such as "process
/// 4711"; empty when nobody does.
QString whoHas(const QString& path, const std::string& own);

}  // namespace sumpwright::session
