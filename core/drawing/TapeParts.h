#pragma once
// The parts of the wall tape, one file each.

#include "drawing/Sketch.h"
#include "drawing/TapeLayout.h"

namespace sumpwright::drawing {

struct TapeContext {
  TapeContext(const siting::Study& s, const TapeView& v, const Voice& w)
      : study(s), view(v), voice(w), theme(drawing::theme(v.theme)), at(s, v) {}
  const siting::Study& study;
  const TapeView& view;
  const Voice& voice;
  const Theme& theme;
  TapeLayout at;
};

/// Clear or advised against: a sump may stand there.
bool walkable(rules::State state);

/// Cut so that it fits, with an ellipsis; empty when not even one letter does.
std::string shortened(const Voice& voice, const std::string& text, const Font& font,
                      double width_mm);

void paintScore(Sketch& sketch, const TapeContext& c);
void paintReach(Sketch& sketch, const TapeContext& c, const siting::ReachAlong* reach,
                const base::Message& absence);  // TapeReach.cpp
/// Name of a lane in the column at the left.
void laneTitle(Sketch& sketch, const TapeContext& c, const std::string& words, double middle_y,
               const Font& font, const Colour& colour);
void paintVerdictLane(Sketch& sketch, const TapeContext& c);
void paintLanes(Sketch& sketch, const TapeContext& c);  // TapeLanes.cpp
void paintAxis(Sketch& sketch, const TapeContext& c);

}  // namespace sumpwright::drawing
