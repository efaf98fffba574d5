#include "files/FanTables.h"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>
#include <QString>
#include <algorithm>
#include <optional>
#include <utility>

#include "files/JobFile.h"
#include "resources/BuiltIn.h"

namespace sumpwright::files {

namespace {

base::Problem fanProblem(const char* id, std::vector<base::Arg> args) {
  return {base::Message(id, std::move(args)), "", base::Gravity::unreadable};
}

/// One file of the user's folder: its table or what is wrong with it.
struct UserFans {
  std::string path;
  std::string stem;
  base::Result<LoadedFans> read;
  bool isFor(const std::string& id) const { return read.ok() ? read->table.id == id : stem == id; }
};

std::vector<UserFans> userFans() {
  std::vector<UserFans> out;
  const QDir folder(QString::fromStdString(userFanFolder()));
  for (const QFileInfo& info : folder.entryInfoList({"*.json"}, QDir::Files, QDir::Name)) {
    const std::string path = info.filePath().toStdString();
    out.push_back({path, info.completeBaseName().toStdString(), fanTableFromFile(path)});
  }
  return out;
}

LoadedFans builtInFans(const resources::BuiltInFile& file) {
  base::Result<airflow::FanTable> table = airflow::readFanTable(file.text);
  SUMPWRIGHT_REQUIRE(table.ok());
  return {std::move(table).value(), ""};
}

base::Problem fansTwice(const std::string& id, const UserFans& one, const UserFans& other) {
  return fanProblem("file.fans-twice", {base::text("table", id), base::text("file", one.path),
                                        base::text("other", other.path)});
}

void putFans(const LoadedFans& loaded, std::vector<LoadedFans>& tables) {
  const auto same = std::find_if(tables.begin(), tables.end(), [&](const LoadedFans& t) {
    return t.table.id == loaded.table.id;
  });
  if (same == tables.end())
    tables.push_back(loaded);
  else
    *same = loaded;
}

}  // namespace

std::string userFanFolder() {
  const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  return (data + "/sumpwright/fans").toStdString();
}

FanTableList availableFanTables() {
  FanTableList out;
  for (const resources::BuiltInFile& file : resources::builtInFanTables())
    out.tables.push_back(builtInFans(file));
  const std::vector<UserFans> files = userFans();
  std::vector<std::string> doubled;
  for (auto file = files.begin(); file != files.end(); ++file) {
    if (!file->read.ok()) {
      const base::Problems problems = file->read.problems();
      out.problems.insert(out.problems.end(), problems.begin(), problems.end());
      continue;
    }
    const std::string& id = file->read->table.id;
    const auto before = std::find_if(files.begin(), file, [&](const UserFans& f) {
      return f.read.ok() && f.read->table.id == id;
    });
    if (before != file) {
      out.problems.push_back(fansTwice(id, *before, *file));
      doubled.push_back(id);
    } else {
      putFans(*file->read, out.tables);
    }
  }
  std::erase_if(out.tables, [&](const LoadedFans& t) {
    return std::find(doubled.begin(), doubled.end(), t.table.id) != doubled.end();
  });
  return out;
}

std::vector<siting::OfferedFan> offeredFans() {
  std::vector<siting::OfferedFan> offered;
  for (const LoadedFans& loaded : availableFanTables().tables) {
    for (const airflow::Fan& fan : loaded.table.fans) {
      offered.push_back({fan, loaded.table.id, loaded.table.invented});
    }
  }
  return offered;
}

base::Result<LoadedFans> fanTableById(const std::string& id) {
  std::vector<UserFans> files = userFans();
  std::erase_if(files, [&](const UserFans& file) { return !file.isFor(id); });
  if (files.size() > 1) return fansTwice(id, files[0], files[1]);
  if (!files.empty()) return files.front().read;
  std::string known;
  for (const resources::BuiltInFile& file : resources::builtInFanTables()) {
    if (file.id == id) return builtInFans(file);
  }
  for (const LoadedFans& loaded : availableFanTables().tables)
    known += (known.empty() ? "" : ", ") + loaded.table.id;
  return fanProblem("file.fans-unknown", {base::text("table", id), base::text("known", known)});
}

base::Result<LoadedFans> fanTableFromFile(const std::string& path) {
  base::Result<std::string> text = readBytes(path, airflow::kMostFanBytes);
  if (!text.ok()) return text.problems();
  base::Result<airflow::FanTable> table = airflow::readFanTable(text.value());
  if (table.ok()) return LoadedFans{std::move(table).value(), path};
  base::Problems problems{fanProblem("file.fans-unusable", {base::text("file", path)})};
  const base::Problems own = table.problems();
  problems.insert(problems.end(), own.begin(), own.end());
  return problems;
}

namespace {

base::Result<PickedFan> ownCurve(const plan::FanPick& pick) {
  std::vector<airflow::CurvePoint> points;
  for (const plan::FanPickPoint& point : pick.points) {
    points.push_back({base::Flow::ofM3PerS(point.flow_m3_s),
                      base::Pressure::ofPa(point.pressure_pa), point.power_w});
  }
  auto curve =
      airflow::FanCurve::through(std::move(points), airflow::kFanDensity_kg_m3, "/design/fan");
  if (!curve.ok()) return curve.problems();
  const std::string title = pick.title.empty() ? kOwnFan : pick.title;
  return PickedFan{
      {pick.id, title, "", {base::Mark::own, "The job's own curve"}, std::move(curve).value()},
      false};
}

const airflow::Fan* fanIn(const std::vector<LoadedFans>& tables, const std::string& id,
                          bool& invented) {
  for (const LoadedFans& loaded : tables) {
    const airflow::Fan* fan = loaded.table.find(id);
    if (fan == nullptr) continue;
    invented = loaded.table.invented;
    return fan;
  }
  return nullptr;
}

}  // namespace

base::Result<PickedFan> pickedFan(const plan::FanPick& pick) {
  if (!pick.points.empty()) return ownCurve(pick);
  FanTableList list;
  if (pick.table.empty() || pick.id.empty()) {
    list = availableFanTables();
  } else {
    auto table = fanTableById(pick.table);
    if (!table.ok()) return table.problems();
    list.tables.push_back(std::move(table).value());
  }
  const std::string id = pick.id.empty() ? kFanUnchosen : pick.id;
  bool invented = false;
  if (const airflow::Fan* fan = fanIn(list.tables, id, invented)) return PickedFan{*fan, invented};
  base::Problems problems = list.problems;  // the one that is missing may stand in one of them
  problems.push_back(fanProblem("file.no-fan", {base::text("fan", id)}));
  return problems;
}

}  // namespace sumpwright::files
