#include "files/FirmFile.h"

#include <QBuffer>
#include <QByteArray>
#include <QDir>
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
constexpr const char* kFirmFormat = "sumpwright.firm/1";

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

/// In the order they are written.
void putTexts(nlohmann::ordered_json& root, const char* key, const std::vector<std::string>& all) {
  if (all.empty()) {
    root.erase(key);
  } else {
    root[key] = all;
  }
}

void putText(nlohmann::ordered_json& root, const char* key, const std::string& text) {
  if (text.empty()) {
    root.erase(key);
  } else {
    root[key] = text;
  }
}

/// What stands in the file already, so that nothing of it is lost; an object where there is none.
base::Result<nlohmann::ordered_json> firmAsWritten(const std::string& path) {
  nlohmann::ordered_json root;
  root["format"] = kFirmFormat;
  if (!QFileInfo::exists(QString::fromStdString(path))) return root;
  const auto bytes = readBytes(path, kMostFirm);
  if (!bytes.ok()) return bytes.problems();
  auto there = nlohmann::ordered_json::parse(*bytes, nullptr, false);
  if (!there.is_object()) return firmProblem(path, "no JSON object");
  return there;
}

/// The logo beside the firm's file; gives its name, empty without one.
base::Result<std::string> writeLogo(const Firm& firm, const QDir& folder) {
  if (firm.logo.empty()) return std::string();
  const bool png = firm.logo.starts_with("\x89PNG");
  const std::string name = png ? "firm-logo.png" : "firm-logo.jpg";
  const std::string path = folder.filePath(QString::fromStdString(name)).toStdString();
  const auto there = readBytes(path, kMostLogo);
  if (there.ok() && *there == firm.logo) return name;
  const auto written = writeBytes(path, firm.logo);
  if (!written.ok()) return written.problems();
  return name;
}

}  // namespace

std::string userFirmFile() {
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation);
  return (folder + "/sumpwright/firm.json").toStdString();
}

base::Result<Firm> firmFromFile(const std::string& path, base::Problems* logo_trouble) {
  const auto bytes = readBytes(path, kMostFirm);
  if (!bytes.ok()) return bytes.problems();
  const auto root = nlohmann::json::parse(*bytes, nullptr, false);
  if (!root.is_object()) return firmProblem(path, "no JSON object");
  FirmReader reader(root);
  if (reader.text("format") != kFirmFormat) {
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
  if (logo.empty()) return firm;
  const QFileInfo beside(QFileInfo(QString::fromStdString(path)).dir(),
                         QString::fromStdString(logo));
  const base::Problems trouble = takeLogo(firm, beside.filePath().toStdString());
  if (trouble.empty()) return firm;
  if (logo_trouble == nullptr) return trouble;
  *logo_trouble = trouble;
  firm.lost_logo = logo;
  return firm;
}

base::Result<Firm> userFirm(base::Problems* logo_trouble) {
  const std::string path = userFirmFile();
  if (!QFileInfo::exists(QString::fromStdString(path))) return Firm{};
  return firmFromFile(path, logo_trouble);
}

base::Problems takeLogo(Firm& firm, const std::string& picture) {
  const auto bytes = readBytes(picture, kMostLogo);
  if (!bytes.ok()) return bytes.problems();
  QByteArray data = QByteArray::fromStdString(*bytes);
  QBuffer buffer(&data);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer);
  const QSize size = reader.size();
  const QByteArray format = reader.format();
  if ((format != "png" && format != "jpeg") || size.isEmpty() || size.width() > kMostLogo_px ||
      size.height() > kMostLogo_px || !reader.canRead()) {
    return {firmProblem(picture, "no PNG or JPEG picture")};
  }
  firm.logo = *bytes;
  firm.lost_logo.clear();
  firm.logo_width_px = size.width();
  firm.logo_height_px = size.height();
  return {};
}

base::Problems saveUserFirm(const Firm& firm) {
  const std::string path = userFirmFile();
  const QDir folder = QFileInfo(QString::fromStdString(path)).dir();
  folder.mkpath(QStringLiteral("."));  // where that fails, writing says why
  auto there = firmAsWritten(path);
  if (!there.ok()) return there.problems();
  nlohmann::ordered_json root = std::move(there).value();
  const auto logo = writeLogo(firm, folder);
  if (!logo.ok()) return logo.problems();
  putText(root, "name", firm.name);
  putTexts(root, "lines", firm.lines);
  putText(root, "insurer", firm.insurer);
  putText(root, "registration", firm.registration);
  putText(root, "electrician", firm.electrician);
  putText(root, "logo", logo->empty() ? firm.lost_logo : *logo);
  putTexts(root, "terms", firm.terms);
  putText(root, "currency", firm.currency);
  if (firm.price_per_kwh) {
    root["price_per_kwh"] = *firm.price_per_kwh;
  } else {
    root.erase("price_per_kwh");
  }
  const auto written = writeBytes(
      path, root.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n");
  return written.ok() ? base::Problems() : written.problems();
}

}  // namespace sumpwright::files
