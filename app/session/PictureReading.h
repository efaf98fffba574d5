#pragma once
// What PictureDesk hands to its thread and gets back. Internal to app/session.

#include <atomic>
#include <string>

#include "session/PictureDesk.h"

namespace sumpwright::session {

/// A picture the user chose; without one, the picture of the job is read.
struct PictureDesk::Choice {
  std::optional<plan::Underlay> keep;  ///< place and scale that stay
};

struct PictureDesk::Reading {
  PictureWanted wanted;
  std::optional<Choice> choice;
  std::string job_file;               ///< empty: never saved
  std::optional<PictureReady> photo;  ///< read already
  std::atomic<bool> given_up = false;

  // What came of it.
  std::optional<base::Result<PictureReady>> result;
  std::string path;           ///< for the job, of a choice
  base::Problems not_beside;  ///< why there is no copy beside the job
  bool copied = false;

  /// On the thread. A picture that cannot be shown is not copied.
  void work();
};

}  // namespace sumpwright::session
