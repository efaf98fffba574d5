#include "canvas/Camera.h"

#include <algorithm>

namespace sumpwright::canvas {

namespace {

constexpr double kMmPerPx = 0.25;

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

Camera fitted(const siting::Study& study, QSizeF size, double scale) {
  const drawing::PlanView view =
      drawing::fitted(study, std::max(40.0, size.width()) * kMmPerPx / scale,
                      std::max(40.0, size.height()) * kMmPerPx / scale, drawing::ThemeName::light);
  return {view.centre_m, std::clamp(view.mm_per_m * scale / kMmPerPx, kLeastPxPerM, kMostPxPerM)};
}

}  // namespace sumpwright::canvas
