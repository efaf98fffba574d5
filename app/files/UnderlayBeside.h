#pragma once
// Pictures kept beside the job: the job holds a path relative to its own folder, so that both can
// be moved together.

#include <string>

#include "base/Result.h"

namespace sumpwright::files {

/// Puts a copy of the picture into the folder of the job file, unless it is in that folder (or
/// below it) already, or a file of the same bytes is. Never writes over another file: where the
/// name is taken, "-2", "-3" ... goes before its ending. The copy gets its name when it is whole.
/// The value is the path for the job: relative, with forward slashes. Problems: those of readBytes
/// up to kMaxPictureBytes; file.not-writable.
base::Result<std::string> takeBeside(const std::string& picture, const std::string& job_file);

/// The file that a job's path means: an absolute one as it is, any other from the job's folder. No
/// job file yet (empty): from the working folder. Says nothing about whether it is there.
std::string besideJob(const std::string& path, const std::string& job_file);

}  // namespace sumpwright::files
