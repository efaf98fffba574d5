#pragma once
// Job files read and written. What goes wrong is a problem of gravity "unreadable" with an id
// "file.*"; what is wrong inside a file has the ids of plan/JobText.h.

#include <string>

#include "base/Result.h"
#include "plan/JobText.h"

namespace sumpwright::files {

/// How job files are named: NAME.sump.json.
inline constexpr const char* kJobSuffix = ".sump.json";

/// The bytes of a file, if there are no more than `limit`; never reads more than that. Problems:
/// file.not-found, file.folder, file.not-readable (with the system's reason), file.too-large.
base::Result<std::string> readBytes(const std::string& path, std::size_t limit);

/// Writes all of the file or leaves it as it was (a new file is put in its place when it is whole).
/// Its bytes have reached the disk before it takes the old one's place, and the folder's entry when
/// this returns (where the file system can do that): a power cut leaves the one or the other.
/// Problem: file.not-writable, with the system's reason. The value is the number of bytes written.
base::Result<std::size_t> writeBytes(const std::string& path, const std::string& bytes);

/// Reads a job: the problems of readBytes, then those of plan::readJob.
base::Result<plan::ReadJob> openJob(const std::string& path);

/// The text of a job's file, keeping what `source` holds beyond this version. A rule sheet that is
/// not built in goes with the job as a copy, so that it means the same elsewhere; a copy of a sheet
/// the job no longer names is left out.
std::string jobText(const plan::Job& job, const plan::JobSource& source);

/// Writes jobText() as writeBytes does.
base::Result<std::size_t> saveJob(const std::string& path, const plan::Job& job,
                                  const plan::JobSource& source);

}  // namespace sumpwright::files
