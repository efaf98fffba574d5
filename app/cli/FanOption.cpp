#include "cli/FanOption.h"

#include "files/FanTables.h"

namespace sumpwright::cli {

namespace {

base::Problem fanTrouble(const char* id, const std::string& fan, const std::string& known) {
  return {base::Message(id, {base::text("fan", fan), base::text("known", known)}), "",
          base::Gravity::unreadable};
}

void listFans(const airflow::FanTable& table, std::string& known) {
  for (const airflow::Fan& fan : table.fans) known += (known.empty() ? "" : ", ") + fan.id;
}

base::Result<ChosenFan> fanOfFile(const std::string& path, const std::string& id) {
  const auto loaded = files::fanTableFromFile(path);
  if (!loaded.ok()) return loaded.problems();
  const airflow::FanTable& table = loaded->table;
  std::string known;
  listFans(table, known);
  if (id.empty() && table.fans.size() > 1) return fanTrouble("cli.which-fan", path, known);
  const airflow::Fan* fan = id.empty() ? &table.fans.front() : table.find(id);
  if (fan == nullptr) return fanTrouble("cli.no-fan", id, known);
  return ChosenFan{*fan, table.invented};
}

}  // namespace

void addFanOption(CLI::App& command, std::string& fan) {
  command
      .add_option("--fan", fan,
                  "Fan by its id, or a fan table's file (FILE#ID where it has several)")
      ->type_name("ID|FILE")
      ->default_str("the job's, else " + std::string(files::kFanUnchosen));
}

base::Result<ChosenFan> fanOf(const std::string& idOrFile) {
  const auto hash = idOrFile.find('#');
  const std::string path = idOrFile.substr(0, hash);
  if (path.find('/') != std::string::npos || path.ends_with(".json")) {
    return fanOfFile(path, hash == std::string::npos ? "" : idOrFile.substr(hash + 1));
  }
  const files::FanTableList list = files::availableFanTables();
  std::string known;
  for (const files::LoadedFans& loaded : list.tables) {
    if (const airflow::Fan* fan = loaded.table.find(idOrFile)) {
      return ChosenFan{*fan, loaded.table.invented};
    }
    listFans(loaded.table, known);
  }
  base::Problems problems = list.problems;  // the one that is missing may stand in one of them
  problems.push_back(fanTrouble("cli.no-fan", idOrFile, known));
  return problems;
}

base::Result<ChosenFan> fanFor(const std::string& asked, const plan::Job& job) {
  if (!asked.empty()) return fanOf(asked);
  auto picked = files::pickedFan(job.design.fan);
  if (!picked.ok()) return picked.problems();
  return ChosenFan{std::move(picked->fan), picked->invented};
}

}  // namespace sumpwright::cli
