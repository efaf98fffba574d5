#include "canvas/Camera.h"

#include <algorithm>

#include "drawing/OutlineDrawing.h"

namespace sumpwright::canvas {

namespace {

constexpr double kMmPerPx = 0.25;

double widthOf(QSizeF size, double scale) {
  return std::max(40.0, size.width()) * kMmPerPx / scale;
}

double heightOf(QSizeF size, double scale) {
  return std::max(40.0, size.height()) * kMmPerPx / scale;
}

Camera cameraOf(const drawing::PlanView& view, double scale) {
  return {view.centre_m, std::clamp(view.mm_per_m * scale / kMmPerPx, kLeastPxPerM, kMostPxPerM)};
}

/// In a very narrow widget the buttons cover what they must.
QSizeF freeOf(QSizeF size, double scale, Covered covered) {
  return {std::max(160.0 * scale, size.width() - covered.left - covered.right), size.height()};
}

Camera beside(Covered covered, Camera camera) {
  camera.centre_m.x -= (covered.left - covered.right) / 2.0 / camera.px_per_m;
  return camera;
}

}  // namespace

QPointF Camera::toWidget(geometry::Point p, QSizeF size) const {
  return {size.width() / 2 + (p.x - centre_m.x) * px_per_m,
          size.height() / 2 - (p.y - centre_m.y) * px_per_m};
}

geometry::Point Camera::toPlan(QPointF at, QSizeF size) const {
  return {centre_m.x + (at.x() - size.width() / 2) / px_per_m,
          centre_m.y - (at.y() - size.height() / 2) / px_per_m};
}

void Camera::zoom(double factor, QPointF about, QSizeF size) {
  const geometry::Point held = toPlan(about, size);
  px_per_m = std::clamp(px_per_m * factor, kLeastPxPerM, kMostPxPerM);
  const geometry::Point now = toPlan(about, size);
  centre_m = centre_m + (held - now);
}

void Camera::pan(QPointF by_px) {
  centre_m.x -= by_px.x() / px_per_m;
  centre_m.y += by_px.y() / px_per_m;
}

drawing::PlanView Camera::view(QSizeF size, double scale, drawing::ThemeName theme) const {
  drawing::PlanView view;
  view.width_mm = size.width() * kMmPerPx / scale;
  view.height_mm = size.height() * kMmPerPx / scale;
  view.mm_per_m = px_per_m * kMmPerPx / scale;
  view.centre_m = centre_m;
  view.theme = theme;
  return view;
}

Camera fitted(const siting::Study& study, QSizeF size, double scale, Covered covered) {
  const QSizeF free = freeOf(size, scale, covered);
  return beside(covered, cameraOf(drawing::fitted(study, widthOf(free, scale),
                                                  heightOf(free, scale), drawing::ThemeName::light),
                                  scale));
}

Camera fittedToOutline(const plan::Plan& plan, QSizeF size, double scale, Covered covered) {
  const QSizeF free = freeOf(size, scale, covered);
  return beside(covered,
                cameraOf(drawing::fittedToOutline(plan, std::nullopt, widthOf(free, scale),
                                                  heightOf(free, scale), drawing::ThemeName::light),
                         scale));
}

Camera fittedToBox(geometry::Point low, geometry::Point high, QSizeF size, double scale,
                   Covered covered) {
  constexpr double kMargin_px = 24.0;
  const double wide = size.width() - 2.0 * kMargin_px * scale - covered.left - covered.right;
  const double high_px = size.height() - 2.0 * kMargin_px * scale;
  Camera camera;
  camera.px_per_m = std::clamp(
      std::min(wide / std::max(high.x - low.x, 1e-3), high_px / std::max(high.y - low.y, 1e-3)),
      kLeastPxPerM, kMostPxPerM);
  camera.centre_m = geometry::lerp(low, high, 0.5);
  camera.centre_m.x -= 0.5 * (covered.left - covered.right) / camera.px_per_m;
  return camera;
}

}  // namespace sumpwright::canvas
