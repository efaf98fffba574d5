#pragma once
// Where fan tables are found: the user's own folder, *.json in sumpwright/fans of the XDG data
// folder (as a rule ~/.local/share/sumpwright/fans), then the built-in ones. The same id in the
// user's folder takes a built-in one's place. An id found nowhere is a problem, never another
// table; a table of the user's that would have been the answer but cannot be read is a problem too.

#include <string>
#include <vector>

#include "airflow/FanTable.h"
#include "base/Result.h"
#include "plan/Design.h"
#include "siting/SuctionFans.h"

namespace sumpwright::files {

struct LoadedFans {
  airflow::FanTable table;
  std::string path;  ///< of a user's table; empty: built in
};

struct FanTableList {
  std::vector<LoadedFans> tables;  ///< the built-in order, then the user's own by file name
  base::Problems problems;         ///< user tables that cannot be used, each followed by its own
};

/// The user's own folder; it need not exist.
std::string userFanFolder();

/// All there are, the user's in the place of built-in ones of the same id. Of two user tables of
/// one id neither is listed, and file.fans-twice says so.
FanTableList availableFanTables();

/// The table of that id. Problems: file.fans-unknown, file.fans-twice, or file.fans-unusable
/// followed by the table's own.
base::Result<LoadedFans> fanTableById(const std::string& id);

/// The table in a file. Problems: file.* of the file, or file.fans-unusable and the table's own.
base::Result<LoadedFans> fanTableFromFile(const std::string& path);

/// Every fan of all there are, in that order: which of them suits, the suction study says.
std::vector<siting::OfferedFan> offeredFans();

struct PickedFan {
  airflow::Fan fan;
  bool invented = false;  ///< a demo class, no product
};

/// Taken where a design chooses none: a demo class of the default table (resources/fans).
inline constexpr const char* kFanUnchosen = "demo-medium";

/// What a fan with a curve of its own is called where the job gives it no name.
inline constexpr const char* kOwnFan = "own fan";

/// The fan a design chooses: its own curve; else the fan of that id in the table it names, or in
/// the first that has it; else kFanUnchosen. Its speed is not looked at. Problems: those of the
/// table, of FanCurve (pointers into /design/fan), file.no-fan.
base::Result<PickedFan> pickedFan(const plan::FanPick& pick);

}  // namespace sumpwright::files
