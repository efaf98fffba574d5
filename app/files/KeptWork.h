#pragma once
// Work kept against a crash or a flat battery. Only the user's Save writes a job's own file; what
// was drawn since then is kept in a folder of the program's own, one file for each open job: one
// line of JSON (KeptHead), then the text of the job as it would be saved.
//
// A slot is the name such a file has in that folder: SLOT.kept, and beside it SLOT.lock while a
// window has it. The slots of a job file are named after its path, those of a job that was never
// saved by chance. Several windows on one job have a slot each.

#include <string>
#include <vector>

#include "base/Result.h"
#include "plan/JobText.h"

namespace sumpwright::files {

struct KeptHead {
  std::string origin;       ///< absolute path of the job's file; empty: never saved
  std::string origin_hash;  ///< hashOf() that file when the work began; empty: there was none
  std::string written_at;   ///< ISO 8601, UTC
  std::string program;      ///< version that wrote it
  bool operator==(const KeptHead&) const = default;
};

struct KeptWork {
  std::string slot;
  KeptHead head;
  plan::ReadJob read;
};

/// sumpwright/recovery in the XDG data folder (as a rule ~/.local/share/sumpwright/recovery); it
/// need not exist.
std::string keptFolder();
/// Makes the folder, for this user alone. False where it cannot be made.
bool makeKeptFolder();

/// The n-th slot (from 1) of the job file at `path`. Two ways to one file (a symbolic link, "..")
/// give the same slot; so does a path that leads nowhere yet, as long as its folder is there.
std::string slotOf(const std::string& path, int n);
/// A slot that nobody has, for a job never saved.
std::string newSlot();
std::string keptFile(const std::string& slot);
std::string lockFile(const std::string& slot);

/// Replaces what the slot held, as a whole. As writeBytes(); has reached the disk when it returns.
base::Result<std::size_t> writeKept(const std::string& slot, const KeptHead& head,
                                    const plan::Job& job, const plan::JobSource& source);
/// Problems: those of readBytes; file.kept-unusable, followed by those of plan::readJob.
base::Result<KeptWork> readKept(const std::string& slot);
/// No file is no error. False where it is still there.
bool removeKept(const std::string& slot);
/// Slots that hold something, by name.
std::vector<std::string> keptSlots();

/// SHA-256 of the bytes, in hexadecimal digits.
std::string hashOf(const std::string& bytes);

}  // namespace sumpwright::files
