#pragma once
// Where rule sheets are found.
//
//   1. the copy the job itself holds, when it is the sheet the job names: a job means the same
//      on every machine;
//   2. the user's own folder, *.json in sumpwright/rules of the XDG data folder (as a rule
//      ~/.local/share/sumpwright/rules);
//   3. the built-in ones.
//
// An id found nowhere is a problem, never the default sheet. A sheet of the user's that would have
// been the answer but cannot be read is a problem too, never passed over for a built-in one.

#include <string>
#include <vector>

#include "base/Result.h"
#include "plan/JobText.h"
#include "rules/RuleSheet.h"

namespace sumpwright::files {

enum class SheetOrigin { built_in, user_folder, job_copy, file };

struct LoadedSheet {
  rules::RuleSheet sheet;
  std::string text;  ///< the JSON it was read from
  SheetOrigin origin = SheetOrigin::built_in;
  std::string path;  ///< of user_folder and file
};

struct SheetEntry {
  std::string id;
  std::string title;
  SheetOrigin origin = SheetOrigin::built_in;
  std::string path;
};

struct SheetList {
  std::vector<SheetEntry> sheets;  ///< the built-in order, then the user's own by id
  base::Problems problems;         ///< user sheets that could not be read
};

/// The user's own folder; it need not exist.
std::string userSheetFolder();

/// All that may be chosen by id: built-in ones, replaced by the user's of the same id.
SheetList availableSheets();

/// The sheet of that id; a job's own copy counts. Problems: file.sheet-unknown, file.sheet-twice,
/// file.sheet-unusable or file.sheet-copy-unusable followed by the sheet's own.
base::Result<LoadedSheet> sheetById(const std::string& id, const plan::JobSource& source = {});

/// The sheet a job names; as sheetById, with the place in the job file on the first problem.
base::Result<LoadedSheet> sheetOf(const plan::ReadJob& read);

/// The sheet in a file. Problems: file.* of the file, or file.sheet-unusable and the sheet's own.
base::Result<LoadedSheet> sheetFromFile(const std::string& path);

/// What a person may type: a name with a slash or ending in ".json" is a file, else an id.
base::Result<LoadedSheet> sheetByIdOrFile(const std::string& id_or_path,
                                          const plan::JobSource& source = {});

}  // namespace sumpwright::files
