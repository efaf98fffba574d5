#include "files/FirmFile.h"

#include <QBuffer>
#include <QByteArray>
#include <QFileInfo>
#include <QImageReader>
#include <QStandardPaths>
#include <QString>
#include <cmath>
#include <nlohmann/json.hpp>
#include <utility>

#include "files/JobFile.h"

namespace sumpwright::files {

namespace {

constexpr std::size_t kMostFirm = 256U * 1024U;
constexpr std::size_t kMostLogo = 8U * 1024U * 1024U;
constexpr int kMostLogo_px = 8000;

base::Problem firmProblem(const std::string& path, const std::string& reason) {
  return {
      base::Message("file.firm-unusable", {base::text("file", path), base::text("reason", reason)}),
      "", base::Gravity::unreadable};
}

/// Reads the members of one object; the first that is wrong is kept.
class FirmReader {
 public:
  explicit FirmReader(const nlohmann::json& root) : m_root(root) {}

  std::string text(const char* key) {
    const auto at = m_root.find(key);
    if (at == m_root.end()) return {};
    if (at->is_string()) return at->get<std::string>();
    m_wrong = key;
    return {};
  }

  std::vector<std::string> texts(const char* key) {
    const auto at = m_root.find(key);
    std::vector<std::string> out;
    if (at == m_root.end()) return out;
    if (!at->is_array()) m_wrong = key;
    if (!m_wrong.empty()) return out;
    for (const auto& one : *at) {
      if (one.is_string()) {
        out.push_back(one.get<std::string>());
      } else {
        m_wrong = key;
      }
    }
    return out;
  }

  std::optional<double> price(const char* key) {
    const auto at = m_root.find(key);
    if (at == m_root.end()) return std::nullopt;
    if (at->is_number() && std::isfinite(at->get<double>()) && at->get<double>() >= 0.0) {
      return at->get<double>();
    }
    m_wrong = key;
    return std::nullopt;
  }

  const std::string& wrong() const { return m_wrong; }

 private:
  const nlohmann::json& m_root;
  std::string m_wrong;
};

std::optional<base::Problems> readLogo(Firm& firm, const std::string& path,
                                       const std::string& name) {
  if (name.empty()) return std::nullopt;
  const QFileInfo beside(QFileInfo(QString::fromStdString(path)).dir(),
                         QString::fromStdString(name));
  const auto bytes = readBytes(beside.filePath().toStdString(), kMostLogo);
  if (!bytes.ok()) return bytes.problems();
  QByteArray data = QByteArray::fromStdString(*bytes);
  QBuffer buffer(&data);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer);
  const QSize size = reader.size();
  const QByteArray format = reader.format();
  if ((format != "png" && format != "jpeg") || size.isEmpty() || size.width() > kMostLogo_px ||
      size.height() > kMostLogo_px || !reader.canRead()) {
    return base::Problems{firmProblem(beside.filePath().toStdString(), "no PNG or JPEG picture")};
  }
  firm.logo = *bytes;
  firm.logo_width_px = size.width();
  firm.logo_height_px = size.height();
  return std::nullopt;
}

}  // namespace

std::string userFirmFile() {
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation);
  return (folder + "/sumpwright/firm.json").toStdString();
}

base::Result<Firm> firmFromFile(const std::string& path) {
  const auto bytes = readBytes(path, kMostFirm);
  if (!bytes.ok()) return bytes.problems();
  const auto root = nlohmann::json::parse(*bytes, nullptr, false);
  if (!root.is_object()) return firmProblem(path, "no JSON object");
  FirmReader reader(root);
  if (reader.text("format") != "sumpwright.firm/1") {
    return firmProblem(path, "format is not sumpwright.firm/1");
  }
  Firm firm;
  firm.name = reader.text("name");
  firm.lines = reader.texts("lines");
  firm.insurer = reader.text("insurer");
  firm.registration = reader.text("registration");
  firm.electrician = reader.text("electrician");
  firm.terms = reader.texts("terms");
  firm.price_per_kwh = reader.price("price_per_kwh");
  firm.currency = reader.text("currency");
  const std::string logo = reader.text("logo");
  if (!reader.wrong().empty()) return firmProblem(path, "'" + reader.wrong() + "'");
  if (const auto trouble = readLogo(firm, path, logo)) return *trouble;
  return firm;
}

base::Result<Firm> userFirm() {
  const std::string path = userFirmFile();
  if (!QFileInfo::exists(QString::fromStdString(path))) return Firm{};
  return firmFromFile(path);
}

}  // namespace sumpwright::files
