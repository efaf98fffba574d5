#pragma once
// A picture under the plan, read and made ready to be shown: the work of seconds that is done on a
// thread of its own (PictureDesk.h), as plain functions.

#include <QImage>
#include <QSize>
#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "base/Result.h"
#include "plan/Plan.h"

namespace sumpwright::session {

/// What picture is wanted; two of equal value give the same pixels.
struct PictureWanted {
  std::string file;  ///< absolute
  int page = 0;
  /// Scaled so that its width is 1: the pixels do not depend on its size.
  std::optional<plan::Straighten> straighten;
  bool operator==(const PictureWanted&) const = default;
};

PictureWanted wantedOf(const plan::Underlay& underlay, const std::string& job_file);

/// The picture at its size and at halves of it, down to about a thousand pixels: painting small
/// takes as long as what is painted, not as what was photographed.
struct PictureReady {
  std::vector<QImage> halves;  ///< at least one; ARGB32 premultiplied
  QSize photo;                 ///< of the file's picture as it is read, before it is straightened
  int pages = 1;
  int reduced = 1;  ///< as UnderlayPicture.h
  std::optional<double> sheet_m_per_px;
};

/// Reads and straightens. `photo`: the file's picture where it was read already. `given_up` is
/// looked at between steps; then there is nothing. Problems: those of files::viewOf.
std::optional<base::Result<PictureReady>> readPicture(const PictureWanted& wanted,
                                                      const std::optional<PictureReady>& photo,
                                                      const std::atomic<bool>& given_up);

/// What a straightened picture will look like, of at most about a million pixels, so quick that it
/// can be made while the corners are dragged. Problem: underlay.corners.
struct StraightSample {
  QImage image;
  double m_per_px = 0.01;
  geometry::Point first_corner_px;
};
base::Result<StraightSample> straightSample(const PictureReady& photo,
                                            const plan::Straighten& rectangle);

}  // namespace sumpwright::session
