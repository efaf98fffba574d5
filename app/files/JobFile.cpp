#include "files/JobFile.h"

#include <fcntl.h>
#include <unistd.h>

#include <QFile>
#include <QFileInfo>
#include <QSaveFile>
#include <QString>

#include "files/RuleSheets.h"

namespace sumpwright::files {

namespace {

using base::Gravity;
using base::Message;
using base::Problem;

QString native(const std::string& path) { return QString::fromStdString(path); }

Problem trouble(const char* id, const std::string& path, const QString& reason) {
  return {Message(id, {base::text("file", path), base::text("reason", reason.toStdString())}), "",
          Gravity::unreadable};
}

Problem tooLarge(const std::string& path, std::size_t limit) {
  constexpr std::size_t kMebi = 1024U * 1024U;
  return {
      Message("file.too-large", {base::text("file", path),
                                 base::count("limit", static_cast<std::int64_t>(limit / kMebi))}),
      "", Gravity::unreadable};
}

/// QSaveFile syncs the file but not the entry of its folder. Not every file system can; there is
/// nothing else to do there, and the file itself is whole either way.
void syncFolderOf(const QString& path) {
  const QByteArray folder = QFile::encodeName(QFileInfo(path).absolutePath());
  const int handle = ::open(folder.constData(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (handle < 0) return;
  ::fsync(handle);
  ::close(handle);
}

/// The source as it must be written: with the sheet the job names, unless that is built in.
plan::JobSource withSheet(const plan::Job& job, const plan::JobSource& source) {
  const base::Result<LoadedSheet> sheet = sheetById(job.rule_sheet, source);
  if (!sheet.ok() || sheet->origin == SheetOrigin::job_copy) return source;
  const bool built_in = sheet->origin == SheetOrigin::built_in;
  return plan::withRuleSheetCopy(source, built_in ? std::string() : sheet->text);
}

}  // namespace

base::Result<std::string> readBytes(const std::string& path, std::size_t limit) {
  const QFileInfo info(native(path));
  if (!info.exists()) {
    return Problem{Message("file.not-found", {base::text("file", path)}), "", Gravity::unreadable};
  }
  if (info.isDir()) {
    return Problem{Message("file.folder", {base::text("file", path)}), "", Gravity::unreadable};
  }
  QFile file(native(path));
  if (!file.open(QIODevice::ReadOnly))
    return trouble("file.not-readable", path, file.errorString());
  // One byte more than allowed tells a file that is too large, also where it has no size (a pipe).
  const QByteArray bytes = file.read(static_cast<qint64>(limit) + 1);
  if (file.error() != QFileDevice::NoError) {
    return trouble("file.not-readable", path, file.errorString());
  }
  if (static_cast<std::size_t>(bytes.size()) > limit) return tooLarge(path, limit);
  return bytes.toStdString();
}

base::Result<std::size_t> writeBytes(const std::string& path, const std::string& bytes) {
  QSaveFile file(native(path));
  const auto size = static_cast<qint64>(bytes.size());
  if (!file.open(QIODevice::WriteOnly) || file.write(bytes.data(), size) != size ||
      !file.commit()) {
    return trouble("file.not-writable", path, file.errorString());
  }
  syncFolderOf(native(path));
  return bytes.size();
}

base::Result<plan::ReadJob> openJob(const std::string& path) {
  const base::Result<std::string> text = readBytes(path, plan::kMaxJobBytes);
  if (!text.ok()) return text.problems();
  return plan::readJob(*text);
}

std::string jobText(const plan::Job& job, const plan::JobSource& source) {
  return plan::writeJob(job, withSheet(job, source));
}

base::Result<std::size_t> saveJob(const std::string& path, const plan::Job& job,
                                  const plan::JobSource& source) {
  return writeBytes(path, jobText(job, source));
}

}  // namespace sumpwright::files
