#include "files/UnderlayBeside.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryFile>
#include <cerrno>

#include "files/JobFile.h"
#include "files/UnderlayPicture.h"

namespace sumpwright::files {

namespace {

/// More pictures of one name do not stand in one folder (own figure).
constexpr int kMostOfOneName = 1000;

QString qtPath(const std::string& path) { return QString::fromStdString(path); }

QDir folderOf(const std::string& job_file) { return QFileInfo(qtPath(job_file)).absoluteDir(); }

base::Problem copyFailed(const QString& path, const QString& reason) {
  return {base::Message("file.not-writable", {base::text("file", path.toStdString()),
                                              base::text("reason", reason.toStdString())}),
          "", base::Gravity::unreadable};
}

/// "plan.png", "plan-2.png", ...
QString nameNumber(const QFileInfo& picture, int number) {
  if (number == 1) return picture.fileName();
  const QString ending = picture.suffix().isEmpty() ? QString() : u'.' + picture.suffix();
  return picture.completeBaseName() + u'-' + QString::number(number) + ending;
}

bool holds(const QString& path, const std::string& bytes) {
  QFile file(path);
  return file.size() == static_cast<qint64>(bytes.size()) && file.open(QIODevice::ReadOnly) &&
         file.readAll() == QByteArrayView(bytes.data(), static_cast<qsizetype>(bytes.size()));
}

/// As a new file would have them; a temporary one is its owner's alone.
constexpr auto kUsualPermissions = QFileDevice::ReadOwner | QFileDevice::WriteOwner |
                                   QFileDevice::ReadGroup | QFileDevice::ReadOther;

/// A whole file under a passing name, which goes with it unless it is given another.
bool fill(QTemporaryFile& copy, const std::string& bytes) {
  const auto size = static_cast<qint64>(bytes.size());
  return copy.open() && copy.write(bytes.data(), size) == size && copy.flush() &&
         copy.setPermissions(kUsualPermissions);
}

base::Result<std::string> copyInto(const QDir& folder, const QFileInfo& picture,
                                   const std::string& bytes) {
  QTemporaryFile copy(folder.filePath(QStringLiteral(".picture-XXXXXX")));
  if (!fill(copy, bytes)) return copyFailed(folder.path(), copy.errorString());
  copy.close();
  for (int number = 1; number <= kMostOfOneName; ++number) {
    const QString name = nameNumber(picture, number);
    const QString path = folder.filePath(name);
    if (holds(path, bytes)) return name.toStdString();
    if (QFileInfo::exists(path)) continue;
    // Does not replace what another program puts there meanwhile; then the next number is tried.
    if (QFile::rename(copy.fileName(), path)) return name.toStdString();
    if (!QFileInfo::exists(path)) return copyFailed(path, copy.errorString());
  }
  return copyFailed(folder.filePath(picture.fileName()), qt_error_string(EEXIST));
}

}  // namespace

base::Result<std::string> takeBeside(const std::string& picture, const std::string& job_file) {
  const base::Result<std::string> bytes = readBytes(picture, kMaxPictureBytes);
  if (!bytes.ok()) return bytes.problems();
  const QFileInfo info(qtPath(picture));
  const QDir folder = folderOf(job_file);
  const QDir real_folder(folder.canonicalPath());
  const QString relative = real_folder.relativeFilePath(info.canonicalFilePath());
  const bool is_below =
      !relative.startsWith(QStringLiteral("..")) && QDir::isRelativePath(relative);
  if (is_below && folder.exists()) return relative.toStdString();
  return copyInto(folder, info, *bytes);
}

std::string besideJob(const std::string& path, const std::string& job_file) {
  if (job_file.empty() || QDir::isAbsolutePath(qtPath(path))) return path;
  return QDir::cleanPath(folderOf(job_file).filePath(qtPath(path))).toStdString();
}

}  // namespace sumpwright::files
