#pragma once
// The parts of the marker that more than one file draws.

#include <vector>

#include "drawing/MarkerLabels.h"
#include "drawing/Measure.h"
#include "drawing/Ties.h"

namespace sumpwright::drawing {

struct MarkerPlace {
  const PageEdge* edge = nullptr;
  double along_mm = 0.0;
  Point face;
  Vec out;
  Point riser;
  Point grip;
};

/// A distance that decides, and its line on the page.
struct MeasureLine {
  Measure measure;
  geometry::Segment line;
};

// MarkerDistances.cpp

std::vector<MeasureLine> measureLines(const PlanContext& c, const siting::Assessment& a);
/// All lines before any words, so that no line runs over another's words.
void paintMeasures(Sketch& sketch, const PlanContext& c, const std::vector<MeasureLine>& measures,
                   Taken& taken, const Voice& voice);
/// Ties run inside along the wall, where nothing else but the room's name stands.
void paintTies(Sketch& sketch, const PlanContext& c, const MarkerPlace& m, const Ties& ties,
               Taken& taken, const Voice& voice);

}  // namespace sumpwright::drawing
