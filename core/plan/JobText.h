#pragma once
// Job text <-> value. The format is JSON, described by resources/schema/job.schema.json, named
// NAME.sump.json, versioned. Locale plays no part.
//
// Reading collects every problem instead of stopping at the first (JSON that is not sound ends it
// at that place; of a newer version nothing more is read). Limits, against accident and malice:
// 16 MiB, 64 levels of nesting, 1 MiB for one string, 10,000 entries in one list, coordinates
// within
// +-10 km; of more than 1,000 problems the rest are counted (job.more).
// Unreadable (no job): not JSON, not UTF-8, wrong type, number not finite or out of range, unknown
// word in a closed list, a key twice in one object, missing required key, control characters in a
// text, newer version, over a limit. A UTF-8 byte-order mark is read over and not written. Keys
// that are not known are kept and noted (job.key.unknown), but for "comment" and keys that begin
// "x_". Walls that state no id get "w<ring>.<edge>", with "_" added where something else has that
// id.

#include <memory>
#include <string>
#include <string_view>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

inline constexpr int kJobVersion = 1;
inline constexpr std::size_t kMaxJobBytes = 16U * 1024U * 1024U;
inline constexpr int kMaxJobDepth = 64;

/// The document a job was read from: keeps fields this version does not know, key order, and how
/// numbers were written. Immutable and cheap to copy. Default-constructed: an empty document.
class JobSource {
 public:
  JobSource();
  JobSource(const JobSource&);
  JobSource(JobSource&&) noexcept;
  JobSource& operator=(const JobSource&);
  JobSource& operator=(JobSource&&) noexcept;
  ~JobSource();

 private:
  struct Document;
  std::shared_ptr<const Document> m_document;
  friend base::Result<struct ReadJob> readJob(std::string_view text);
  friend std::string writeJob(const Job& job, const JobSource& source);
  friend std::string embeddedRuleSheet(const JobSource& source);
  friend JobSource withRuleSheetCopy(const JobSource& source, std::string_view sheet);
};

struct ReadJob {
  Job job;
  JobSource source;
  base::Problems problems;  ///< unsound and missing ones (checkJob); never unreadable
};

/// Never throws, never half-reads: either a job with its unsound and missing problems, or the
/// unreadable ones (all of them, in document order).
base::Result<ReadJob> readJob(std::string_view text);

/// Text of the job. Fields of `source` this version does not know stay where they were; a job read
/// and written unchanged gives an equal JSON value with the same key order. Elements are matched
/// to the source by id. Ends with a newline.
std::string writeJob(const Job& job, const JobSource& source = {});

/// JSON text of the rule sheet copied into the job ("rule_sheet_copy"); empty if none.
std::string embeddedRuleSheet(const JobSource& source);

/// The source with this rule sheet (text of a JSON object: a contract) copied into it, so that
/// writeJob writes it; with an empty text, without a copy. The rest of the source is unchanged.
JobSource withRuleSheetCopy(const JobSource& source, std::string_view sheet);

}  // namespace sumpwright::plan
