#pragma once
// A photograph of a flat plan, taken at a slant, made upright: by four of its places that are the
// corners of a rectangle whose sides are known. (The lens is taken to draw straight lines
// straight.)

#include <QImage>
#include <array>

#include "base/Result.h"
#include "geometry/Point.h"

namespace sumpwright::files {

/// The known rectangle. Pixel frame: x right, y down, {0, 0} the picture's top-left, so that the
/// middle of the first pixel is {0.5, 0.5}. Corners in order round it, top-left first as the plan
/// is read; from the first to the second is the width.
struct KnownRectangle {
  std::array<geometry::Point, 4> corners_px;
  double width_m = 0.0;
  double height_m = 0.0;
};

/// What straightening makes of a photo of a size, without making it.
struct StraightFrame {
  QSize size;
  double m_per_px = 0.01;           ///< the same both ways
  geometry::Point first_corner_px;  ///< where the rectangle's first corner comes to be
};

struct StraightPicture {
  QImage image;  ///< ARGB32 premultiplied; clear where the photo shows nothing
  StraightFrame frame;
};

/// The straightened picture keeps what the photo shows around the rectangle, up to four of its
/// longer sides beyond it, and not where it is stretched to less than a twentieth towards the
/// horizon (own figures). `px_per_m` 0: as dense as the photo is at its densest side of the
/// rectangle; less where more than kMostPixels (UnderlayPicture.h) would come out. The same input
/// gives the same frame for ever: a job's figures count in its pixels. Problem, unreadable:
/// underlay.corners (no proper quad, a corner farther outside the photo than its longer side, a
/// side not above 0 or over 1000 m, a density that is none).
base::Result<StraightFrame> straightFrame(QSize photo, const KnownRectangle& rectangle,
                                          double px_per_m = 0.0);

/// The picture, every pixel looked up in the photo between its four nearest. Problem as above.
base::Result<StraightPicture> straightened(const QImage& photo, const KnownRectangle& rectangle,
                                           double px_per_m = 0.0);

}  // namespace sumpwright::files
