#include "files/RuleSheets.h"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>
#include <QString>
#include <algorithm>
#include <optional>

#include "files/JobFile.h"
#include "resources/BuiltIn.h"

namespace sumpwright::files {

namespace {

using base::Gravity;
using base::Message;
using base::Problem;
using base::Problems;

Problem unusable(const char* id, std::vector<base::Arg> args) {
  return {Message(id, std::move(args)), "", Gravity::unreadable};
}

Problems after(Problem first, const Problems& rest) {
  Problems out{std::move(first)};
  out.insert(out.end(), rest.begin(), rest.end());
  return out;
}

/// One file of the user's folder: its sheet or what is wrong with it.
struct UserFile {
  std::string path;
  std::string stem;
  base::Result<LoadedSheet> read;
  bool isFor(const std::string& id) const { return read.ok() ? read->sheet.id == id : stem == id; }
};

std::vector<UserFile> userFiles() {
  std::vector<UserFile> out;
  const QDir folder(QString::fromStdString(userSheetFolder()));
  for (const QFileInfo& info : folder.entryInfoList({"*.json"}, QDir::Files, QDir::Name)) {
    const std::string path = info.filePath().toStdString();
    base::Result<LoadedSheet> read = sheetFromFile(path);
    if (read.ok()) {
      LoadedSheet loaded = std::move(read).value();
      loaded.origin = SheetOrigin::user_folder;
      read = std::move(loaded);
    }
    out.push_back({path, info.completeBaseName().toStdString(), std::move(read)});
  }
  return out;
}

base::Result<LoadedSheet> parsed(std::string text, SheetOrigin origin) {
  base::Result<rules::RuleSheet> sheet = rules::readRuleSheet(text);
  if (!sheet.ok()) return sheet.problems();
  return LoadedSheet{std::move(sheet).value(), std::move(text), origin, ""};
}

/// The job's own copy, if it is the sheet asked for (or cannot be read, so nobody can tell).
std::optional<base::Result<LoadedSheet>> jobCopy(const std::string& id,
                                                 const plan::JobSource& source) {
  std::string text = plan::embeddedRuleSheet(source);
  if (text.empty()) return std::nullopt;
  base::Result<LoadedSheet> read = parsed(std::move(text), SheetOrigin::job_copy);
  if (read.ok()) {
    return read->sheet.id == id ? std::optional(std::move(read)) : std::nullopt;
  }
  Problems problems = after(unusable("file.sheet-copy-unusable", {}), read.problems());
  for (Problem& problem : problems) problem.pointer = "/rule_sheet_copy" + problem.pointer;
  return base::Result<LoadedSheet>(std::move(problems));
}

std::optional<base::Result<LoadedSheet>> userSheet(const std::string& id) {
  std::vector<UserFile> files = userFiles();
  std::erase_if(files, [&](const UserFile& file) { return !file.isFor(id); });
  if (files.empty()) return std::nullopt;
  if (files.size() > 1) {
    return base::Result<LoadedSheet>(
        unusable("file.sheet-twice", {base::text("sheet", id), base::text("file", files[0].path),
                                      base::text("other", files[1].path)}));
  }
  return files.front().read;
}

std::optional<base::Result<LoadedSheet>> builtInSheet(const std::string& id) {
  for (const resources::BuiltInFile& file : resources::builtInRuleSheets()) {
    if (file.id == id) return parsed(std::string(file.text), SheetOrigin::built_in);
  }
  return std::nullopt;
}

Problem unknownSheet(const std::string& id) {
  std::string known;
  for (const SheetEntry& entry : availableSheets().sheets) {
    known += (known.empty() ? "" : ", ") + entry.id;
  }
  return unusable("file.sheet-unknown", {base::text("sheet", id), base::text("known", known)});
}

void addUserSheet(const LoadedSheet& loaded, std::vector<SheetEntry>& sheets) {
  SheetEntry entry{loaded.sheet.id, loaded.sheet.title, loaded.origin, loaded.path};
  const auto same = std::find_if(sheets.begin(), sheets.end(),
                                 [&](const SheetEntry& s) { return s.id == entry.id; });
  if (same == sheets.end()) {
    sheets.push_back(std::move(entry));
  } else {
    *same = std::move(entry);
  }
}

}  // namespace

std::string userSheetFolder() {
  const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  return (data + "/sumpwright/rules").toStdString();
}

SheetList availableSheets() {
  SheetList out;
  for (const resources::BuiltInFile& file : resources::builtInRuleSheets()) {
    const auto sheet = parsed(std::string(file.text), SheetOrigin::built_in);
    SUMPWRIGHT_REQUIRE(sheet.ok());
    out.sheets.push_back({sheet->sheet.id, sheet->sheet.title, SheetOrigin::built_in, ""});
  }
  for (const UserFile& file : userFiles()) {
    if (file.read.ok()) {
      addUserSheet(*file.read, out.sheets);
    } else {
      const Problems problems = file.read.problems();
      out.problems.insert(out.problems.end(), problems.begin(), problems.end());
    }
  }
  return out;
}

base::Result<LoadedSheet> sheetById(const std::string& id, const plan::JobSource& source) {
  if (auto sheet = jobCopy(id, source)) return *std::move(sheet);
  if (auto sheet = userSheet(id)) return *std::move(sheet);
  if (auto sheet = builtInSheet(id)) return *std::move(sheet);
  return unknownSheet(id);
}

base::Result<LoadedSheet> sheetOf(const plan::ReadJob& read) {
  base::Result<LoadedSheet> sheet = sheetById(read.job.rule_sheet, read.source);
  if (sheet.ok()) return sheet;
  Problems problems = sheet.problems();
  if (problems.front().pointer.empty()) problems.front().pointer = "/rule_sheet";
  return problems;
}

base::Result<LoadedSheet> sheetFromFile(const std::string& path) {
  base::Result<std::string> text = readBytes(path, rules::kMaxSheetBytes);
  if (!text.ok()) return text.problems();
  base::Result<LoadedSheet> read = parsed(std::move(text).value(), SheetOrigin::file);
  if (!read.ok()) {
    return after(unusable("file.sheet-unusable", {base::text("file", path)}), read.problems());
  }
  LoadedSheet loaded = std::move(read).value();
  loaded.path = path;
  return loaded;
}

base::Result<LoadedSheet> sheetByIdOrFile(const std::string& id_or_path,
                                          const plan::JobSource& source) {
  const QString text = QString::fromStdString(id_or_path);
  const bool is_file = text.contains(QLatin1Char('/')) || text.endsWith(QLatin1String(".json"));
  return is_file ? sheetFromFile(id_or_path) : sheetById(id_or_path, source);
}

}  // namespace sumpwright::files
