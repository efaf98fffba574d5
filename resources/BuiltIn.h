#pragma once
// Texts compiled into the program from resources/: what it knows without any file.

#include <span>
#include <string_view>

namespace sumpwright::resources {

struct BuiltInFile {
  std::string_view id;    ///< file name without its ending: "ie-practice", "job.schema"
  std::string_view text;  ///< the JSON as it stands in the file, UTF-8
};

/// Rule sheets; the default one first, the template for a firm's own last.
std::span<const BuiltInFile> builtInRuleSheets();

/// Fan tables; the default one first.
std::span<const BuiltInFile> builtInFanTables();

/// Price books; all invented.
std::span<const BuiltInFile> builtInPriceBooks();

/// JSON Schemas of the program's own file formats, by name.
std::span<const BuiltInFile> builtInSchemas();

}  // namespace sumpwright::resources
