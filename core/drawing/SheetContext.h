#pragma once
// What every drawing of a plan shares, studied or not: the view, its colours, its page.

#include "drawing/Box.h"
#include "drawing/PlanDrawing.h"
#include "drawing/Sketch.h"
#include "drawing/Theme.h"

namespace sumpwright::drawing {

struct SheetContext {
  SheetContext(const PlanView& v, double north)
      : view(v),
        theme(drawing::theme(v.theme)),
        page{0.0, 0.0, v.width_mm, v.height_mm},
        north_deg(north) {}
  const PlanView& view;
  const Theme& theme;
  Box page;
  double north_deg;  ///< Plan::north_deg

  double mm(double metres) const { return metres * view.mm_per_m; }
  Point at(Point plan_m) const { return toPage(view, plan_m); }
  std::vector<Point> at(const std::vector<Point>& plan_m) const {
    std::vector<Point> out;
    for (Point p : plan_m) out.push_back(at(p));
    return out;
  }
  bool onPaper() const { return view.theme == ThemeName::paper; }
};

void paintGrid(Sketch& sketch, const SheetContext& c);                           // Furniture.cpp
void paintFurniture(Sketch& sketch, const SheetContext& c, const Voice& voice);  // Furniture.cpp

}  // namespace sumpwright::drawing
