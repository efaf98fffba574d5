#pragma once
// Where the plan is looked at: true scale, a plan point in the middle of the widget. Widget pixels
// are Qt's device-independent ones; `scale` is how much larger than at 100 % the window's signs and
// texts are drawn.

#include <QPointF>
#include <QSizeF>

#include "drawing/PlanDrawing.h"

namespace sumpwright::canvas {

/// Scales that can be reached, pixels a metre at 100 %: a terrace of houses to a single window.
inline constexpr double kLeastPxPerM = 4.0;
inline constexpr double kMostPxPerM = 600.0;

struct Camera {
  geometry::Point centre_m;
  double px_per_m = 50.0;

  QPointF toWidget(geometry::Point plan_m, QSizeF size) const;
  geometry::Point toPlan(QPointF widget, QSizeF size) const;
  /// Zooms about a point of the widget, which keeps its plan point; stays within the limits.
  void zoom(double factor, QPointF about, QSizeF size);
  void pan(QPointF by_px);
  /// For the drawings: millimetres of a page on which 1 px at 100 % is 0.25 mm.
  drawing::PlanView view(QSizeF size, double scale, drawing::ThemeName theme) const;
  bool operator==(const Camera&) const = default;
};

/// What buttons cover at the edges of the widget, px.
struct Covered {
  double left = 0.0;
  double right = 0.0;
};

/// The camera that shows all of a plan beside what is covered.
Camera fitted(const siting::Study& study, QSizeF size, double scale, Covered covered = {});
/// The same for a plan that cannot be studied (yet).
Camera fittedToOutline(const plan::Plan& plan, QSizeF size, double scale, Covered covered = {});
/// The camera that shows an upright box.
Camera fittedToBox(geometry::Point low, geometry::Point high, QSizeF size, double scale,
                   Covered covered = {});

}  // namespace sumpwright::canvas
