#pragma once
// The house while it is being measured: drawn from the bare plan, open, crossing itself or whole,
// so that every number typed is seen at once. A plan that can be studied is drawn by PlanDrawing.h.

#include <optional>

#include "drawing/DrawList.h"
#include "drawing/PlanDrawing.h"
#include "drawing/Voice.h"
#include "plan/Job.h"

namespace sumpwright::drawing {

/// What is being done to the outline.
struct OutlineMarks {
  int ring = 0;                            ///< the ring in hand
  int wall = -1;                           ///< the wall in hand; -1: none
  std::optional<geometry::Segment> draft;  ///< a wall as typed so far, not in the plan yet
  bool gap = true;                         ///< show what is missing to the start
};

/// The view that shows all rings, draft and outside corners, with room for lengths around; an empty
/// plan is given 17 m by 10 m, and a first wall alone at least 12 m by 7 m (own figures).
PlanView fittedToOutline(const plan::Plan& plan, const std::optional<geometry::Segment>& draft,
                         double width_mm, double height_mm, ThemeName theme);

/// Grid, rooms, walls with their numbers and lengths, corner letters, openings, all other things as
/// plain marks, the gap, and what `view.selected` names.
DrawList outlineDrawing(const plan::Job& job, const OutlineMarks& marks, const PlanView& view,
                        const Voice& voice);

}  // namespace sumpwright::drawing
