#pragma once
// Pictures to trace: PNG, JPEG, SVG, a page of a PDF, as pixels.
//
// The same file and page always give the same number of pixels: a job's figures (metres per pixel,
// corners of a photo) count in them. So the figures below are part of the job format.

#include <QImage>
#include <optional>
#include <string>

#include "base/Result.h"

namespace sumpwright::files {

// Own figures all.
/// The most bytes that are read.
inline constexpr std::size_t kMaxPictureBytes = 128U * 1024U * 1024U;
/// The most pixels that are kept: a photo of a usual phone, an A2 sheet at kSheetPxPerInch.
inline constexpr double kMostPixels = 24e6;
/// A photo with more is reduced on the way in; one with more than this is refused.
inline constexpr double kMostPixelsRead = 64e6;
/// Longest side, which is what can be painted.
inline constexpr int kLongestSide_px = 30'000;
/// A PDF page, an SVG drawing (with 96 of its px to the inch, CSS Values Level 3, section 5.2).
inline constexpr double kSheetPxPerInch = 200.0;

struct UnderlayPicture {
  QImage image;     ///< ARGB32 premultiplied; sheets on white
  int pages = 1;    ///< of the file
  int reduced = 1;  ///< one pixel is so many of the file's each way
  /// Metres on the sheet for one pixel; nothing for photos and scans, whose files seldom know.
  /// Times 100 it is the metres per pixel of a plan drawn 1:100.
  std::optional<double> sheet_m_per_px;
};

/// What kind it is shows in its bytes, not in its name. `page` counts from 0. A photo stands as its
/// EXIF mark says. Problems, all unreadable: those of readBytes (JobFile.h), except that a file
/// that is not there is underlay.not-found; underlay.kind (none of the four), underlay.broken,
/// underlay.locked (a PDF with a password), underlay.page (with how many there are),
/// underlay.too-large (with the most).
base::Result<UnderlayPicture> loadPicture(const std::string& path, int page);

}  // namespace sumpwright::files
