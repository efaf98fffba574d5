#include "files/Underlay.h"

#include <cmath>
#include <utility>

#include "files/UnderlayBeside.h"
#include "geometry/Homography.h"

namespace sumpwright::files {

namespace {

using geometry::Point;
using geometry::Similarity;

/// From the picture's frame with y up.
Similarity placing(const plan::Underlay& placed) {
  return {placed.m_per_px, placed.turn_deg, placed.at_m - Point{}};
}

KnownRectangle rectangleOf(const plan::Straighten& s) {
  return {s.corners_px, s.width_m, s.height_m};
}

}  // namespace

base::Result<UnderlayView> viewOf(const plan::Underlay& underlay, const std::string& job_file) {
  if (!std::isfinite(underlay.m_per_px) || underlay.m_per_px <= 0) {
    return base::Problem{base::Message("underlay.scale"), "", base::Gravity::unreadable};
  }
  auto picture = loadPicture(besideJob(underlay.path, job_file), underlay.page);
  if (!picture.ok()) return picture.problems();
  UnderlayView view{picture->image, underlay, *picture};
  if (!underlay.straighten) return view;
  auto straight = straightened(picture->image, rectangleOf(*underlay.straighten));
  if (!straight.ok()) return straight.problems();
  view.image = straight->image;
  view.placed.m_per_px = straight->frame.m_per_px;
  return view;
}

Point planPoint(const plan::Underlay& placed, Point px) {
  return placing(placed).at({px.x, -px.y});
}

Point underlayPx(const plan::Underlay& placed, Point at) {
  const Point up = placing(placed).inverse().at(at);
  return {up.x, -up.y};
}

std::optional<plan::Underlay> scaledTo(const plan::Underlay& placed, Point a, Point b,
                                       double length_m, std::optional<double> direction_deg) {
  const auto change = direction_deg ? geometry::similarity(a, b, a, length_m, *direction_deg)
                                    : geometry::similarity(a, b, a, length_m);
  if (!change) return std::nullopt;
  plan::Underlay scaled = placed;
  scaled.at_m = change->at(placed.at_m);
  scaled.m_per_px *= change->scale;
  scaled.turn_deg = std::remainder(placed.turn_deg + change->turn_deg, 360.0);
  if (scaled.straighten) {
    scaled.straighten->width_m *= change->scale;
    scaled.straighten->height_m *= change->scale;
  }
  return scaled;
}

base::Result<plan::Underlay> straightenedBy(const plan::Underlay& placed, QSize photo,
                                            const KnownRectangle& rectangle) {
  const auto frame = straightFrame(photo, rectangle);
  if (!frame.ok()) return frame.problems();
  const Point kept = planPoint(placed, rectangle.corners_px[0]);
  plan::Underlay straight = placed;
  straight.straighten =
      plan::Straighten{rectangle.corners_px, rectangle.width_m, rectangle.height_m};
  straight.m_per_px = frame->m_per_px;
  straight.at_m = placed.at_m + (kept - planPoint(straight, frame->first_corner_px));
  return straight;
}

}  // namespace sumpwright::files
