#pragma once
// The picture under a plan, as the job describes it: loaded, straightened, and where its pixels are
// on the plan.
//
// Pixel frame of the picture shown (straightened, where the job says so): x right, y down, {0, 0}
// its top-left corner. On the plan: that corner at at_m, x along turn_deg counter-clockwise, y down
// from there.

#include <QImage>
#include <optional>
#include <string>

#include "base/Result.h"
#include "files/UnderlayPicture.h"
#include "files/UnderlayStraighten.h"
#include "plan/Plan.h"

namespace sumpwright::files {

struct UnderlayView {
  QImage image;
  /// The job's, with the metres per pixel that count: a straightened picture's follow from its
  /// rectangle.
  plan::Underlay placed;
  UnderlayPicture
      source;  ///< the file's picture as it was; shares its pixels where not straightened
};

/// Problems: those of loadPicture and straightened; underlay.scale for metres per pixel that are
/// none.
base::Result<UnderlayView> viewOf(const plan::Underlay& underlay, const std::string& job_file);

/// The place on the plan of a pixel of the picture shown, and back. m_per_px above 0.
geometry::Point planPoint(const plan::Underlay& placed, geometry::Point px);
geometry::Point underlayPx(const plan::Underlay& placed, geometry::Point at);

/// Scaled so that two places of the plan, now drawn at a and b, are `length_m` apart; what is at a
/// stays there. With a direction (counter-clockwise from x, as a to b is to run) turned, too. A
/// straightened picture's rectangle is scaled with it. Nothing as similarity() in Homography.h.
std::optional<plan::Underlay> scaledTo(const plan::Underlay& placed, geometry::Point a,
                                       geometry::Point b, double length_m,
                                       std::optional<double> direction_deg = std::nullopt);

/// Straightened by a rectangle of known sides, its first corner staying where it is on the plan.
/// `placed` is not straightened yet (an earlier rectangle is forgotten first: corners are pixels of
/// the photo itself). Problem: underlay.corners.
base::Result<plan::Underlay> straightenedBy(const plan::Underlay& placed, QSize photo,
                                            const KnownRectangle& rectangle);

}  // namespace sumpwright::files
