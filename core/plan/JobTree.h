#pragma once
// The JSON of a job as a tree, safely read: size, depth, text and keys are held to their limits
// before anything looks at the content. Internal to core/plan; nlohmann's JSON stays behind the
// .cpp files.

#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "plan/JobText.h"
#include "plan/ProblemList.h"

namespace sumpwright::plan {

using Json = nlohmann::ordered_json;

/// One string, bytes.
inline constexpr std::size_t kMaxTextBytes = 1024U * 1024U;
/// Elements of one list (own figure: a hundred times the largest house).
inline constexpr std::size_t kMaxListed = 10'000;

inline constexpr const char* kJobFormat = "sumpwright.job";

struct Tree {
  std::shared_ptr<const Json> root;  ///< null when the text is no JSON or too deep
  std::string version;               ///< the number at /version as it is written
};

/// Reads the source; what is wrong goes to `problems`. A UTF-8 byte-order mark is read over (some
/// editors put one) and not written again. Where a key stands twice in an object the first is kept.
Tree readTree(std::string_view source, ProblemList& problems);

/// `version` as it is written in the file.
void addNewerVersion(const std::string& version, ProblemList& problems);

/// Text of a tree with short lists and objects on one line, so that a corner is [x, y] and not four
/// lines. Ends with a newline. Text that is not UTF-8 gets U+FFFD in place of the bad bytes.
std::string layOut(const Json& json);

/// Where a pointer stands in the document, as positions level by level; a key that is not there
/// stands after all others.
std::vector<std::size_t> placeIn(const Json& root, const std::string& pointer);

/// What JobSource keeps.
struct JobSource::Document {
  std::shared_ptr<const Json> root;
  /// [ring][edge]: the id made on reading for a wall that stated none; empty where it stated one.
  std::vector<std::vector<std::string>> given_wall_ids;
};

}  // namespace sumpwright::plan
