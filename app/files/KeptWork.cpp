#include "files/KeptWork.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QStandardPaths>
#include <QString>
#include <QUuid>

#include "files/JobFile.h"

namespace sumpwright::files {

namespace {

constexpr std::size_t kMostHeadBytes = 64U * 1024U;  // own figure
constexpr const char* kKeptFormat = "sumpwright.kept";
constexpr int kKeptVersion = 1;
const QLatin1String kKeptEnding(".kept");

QString qt(const std::string& text) { return QString::fromStdString(text); }

QByteArray headLine(const KeptHead& head) {
  const QJsonObject object{{"format", kKeptFormat},
                           {"version", kKeptVersion},
                           {"origin", qt(head.origin)},
                           {"origin_sha256", qt(head.origin_hash)},
                           {"written_at", qt(head.written_at)},
                           {"program", qt(head.program)}};
  return QJsonDocument(object).toJson(QJsonDocument::Compact) + '\n';
}

KeptHead headFrom(const QJsonObject& object) {
  const auto field = [&](const char* key) {
    return object.value(QLatin1String(key)).toString().toStdString();
  };
  return {field("origin"), field("origin_sha256"), field("written_at"), field("program")};
}

base::Problems unusableKept(const std::string& file, const base::Problems& rest = {}) {
  base::Problems out{{base::Message("file.kept-unusable", {base::text("file", file)}), "",
                      base::Gravity::unreadable}};
  out.insert(out.end(), rest.begin(), rest.end());
  return out;
}

/// The same for every way that leads to the file.
QString oneWayTo(const QString& path) {
  const QFileInfo info(path);
  const QString whole = info.canonicalFilePath();
  if (!whole.isEmpty()) return whole;
  const QString folder = QFileInfo(info.absolutePath()).canonicalFilePath();
  return folder.isEmpty() ? info.absoluteFilePath() : QDir(folder).filePath(info.fileName());
}

}  // namespace

std::string keptFolder() {
  const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  return (data + "/sumpwright/recovery").toStdString();
}

bool makeKeptFolder() {
  const QString folder = qt(keptFolder());
  if (QFileInfo(folder).isDir()) return true;
  if (!QDir().mkpath(folder)) return false;
  // Addresses of clients are nobody else's business.
  return QFile::setPermissions(
      folder, QFileDevice::ReadOwner | QFileDevice::WriteOwner | QFileDevice::ExeOwner);
}

std::string slotOf(const std::string& path, int n) {
  const std::string slot = "job-" + hashOf(oneWayTo(qt(path)).toStdString()).substr(0, 32);
  return n == 1 ? slot : slot + "-" + std::to_string(n);
}

std::string newSlot() { return "new-" + QUuid::createUuid().toString(QUuid::Id128).toStdString(); }

std::string keptFile(const std::string& slot) { return keptFolder() + "/" + slot + ".kept"; }

std::string lockFile(const std::string& slot) { return keptFolder() + "/" + slot + ".lock"; }

base::Result<std::size_t> writeKept(const std::string& slot, const KeptHead& head,
                                    const plan::Job& job, const plan::JobSource& source) {
  makeKeptFolder();  // where it cannot be made, writing says so
  return writeBytes(keptFile(slot), headLine(head).toStdString() + jobText(job, source));
}

base::Result<KeptWork> readKept(const std::string& slot) {
  const std::string file = keptFile(slot);
  const base::Result<std::string> bytes = readBytes(file, plan::kMaxJobBytes + kMostHeadBytes);
  if (!bytes.ok()) return bytes.problems();
  const std::size_t end = bytes->find('\n');
  if (end == std::string::npos || end > kMostHeadBytes) return unusableKept(file);
  const QJsonObject head =
      QJsonDocument::fromJson(QByteArray(bytes->data(), static_cast<qsizetype>(end))).object();
  if (head.value(QLatin1String("format")) != QLatin1String(kKeptFormat) ||
      head.value(QLatin1String("version")) != kKeptVersion) {
    return unusableKept(file);
  }
  base::Result<plan::ReadJob> read = plan::readJob(std::string_view(*bytes).substr(end + 1));
  if (!read.ok()) return unusableKept(file, read.problems());
  return KeptWork{slot, headFrom(head), std::move(read).value()};
}

bool removeKept(const std::string& slot) {
  const QString file = qt(keptFile(slot));
  return QFile::remove(file) || !QFileInfo::exists(file);
}

std::vector<std::string> keptSlots() {
  std::vector<std::string> out;
  const QDir folder(qt(keptFolder()));
  for (const QFileInfo& info :
       folder.entryInfoList({QLatin1Char('*') + kKeptEnding}, QDir::Files, QDir::Name)) {
    out.push_back(info.completeBaseName().toStdString());
  }
  return out;
}

std::string hashOf(const std::string& bytes) {
  const QByteArray data =
      QByteArray::fromRawData(bytes.data(), static_cast<qsizetype>(bytes.size()));
  return QCryptographicHash::hash(data, QCryptographicHash::Sha256).toHex().toStdString();
}

}  // namespace sumpwright::files
