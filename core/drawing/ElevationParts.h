#pragma once
// The parts of the unrolled elevation, one file each.

#include <optional>
#include <vector>

#include "drawing/Box.h"
#include "drawing/ElevationDrawing.h"
#include "drawing/Sketch.h"

namespace sumpwright::drawing {

/// How high a wall is drawn.
struct WallProfile {
  double eaves_m = 0.0;
  bool eaves_assumed = false;
  double roof_m = 0.0;  ///< rise over the eaves: to the apex of a gable, to the ridge of others
  bool gable = false;
};

/// Of every edge, by ring.
std::vector<std::vector<WallProfile>> wallProfiles(const siting::Study& study);

/// Heights that everything lies between, with some room.
geometry::Interval heightsOf(const siting::Study& study);

struct ElevationContext {
  ElevationContext(const siting::Study& s, const ElevationView& v, const Voice& w);
  const siting::Study& study;
  const ElevationView& view;
  const Voice& voice;
  const Theme& theme;
  std::vector<std::vector<WallProfile>> profiles;
  double bottom_m = -1.0;  ///< lowest height drawn

  double xOf(double unrolled) const {
    return view.label_mm + (unrolled - view.left_m) * view.mm_per_m;
  }
  double x(int ring, double chainage_m) const;  ///< not wrapped
  double y(double height_m) const { return view.head_mm + (view.top_m - height_m) * view.mm_per_m; }
  double mm(double metres) const { return metres * view.mm_per_m; }
  const WallProfile& profile(const perimeter::Edge& e) const {
    return profiles[static_cast<std::size_t>(e.ring)][static_cast<std::size_t>(e.edge)];
  }
  double laneTop() const { return y(bottom_m) + (view.strip ? 0.8 : 3.0); }
  double laneHeight() const { return view.strip ? 2.2 : 3.4; }
  double namesMiddle() const { return laneTop() + laneHeight() + (view.strip ? 3.6 : 4.4); }
  /// Room of the walls on the page.
  Box room() const { return {view.label_mm, view.head_mm, view.width_mm, y(bottom_m)}; }
  bool sees(const perimeter::Edge& e) const;
};

/// Of an opening: where it is drawn, and whether at heights nobody measured.
struct DrawnOpening {
  const plan::Opening* opening = nullptr;
  Box box;
  bool assumed = false;
};
std::vector<DrawnOpening> drawnOpenings(const ElevationContext& c);

/// A height over the whole picture, its words at the left above or below its line.
struct LevelMark {
  double height_m = 0.0;
  std::string words;
  bool above = false;
  Pen pen;
};
std::vector<LevelMark> levelMarks(const ElevationContext& c);      // ElevationWalls.cpp
Box boxOfWords(const ElevationContext& c, const LevelMark& mark);  // ElevationWalls.cpp

void paintGround(Sketch& sketch, const ElevationContext& c);             // ElevationWalls.cpp
void paintRoofs(Sketch& sketch, const ElevationContext& c);              // ElevationWalls.cpp
void paintElevationWalls(Sketch& sketch, const ElevationContext& c);     // ElevationWalls.cpp
void paintLevels(Sketch& sketch, const ElevationContext& c);             // ElevationWalls.cpp
void paintElevationOpenings(Sketch& sketch, const ElevationContext& c);  // ElevationOpenings.cpp
void paintZone(Sketch& sketch, const ElevationContext& c);               // ElevationZone.cpp
void paintRun(Sketch& sketch, const ElevationContext& c, const siting::Assessment& a,
              const std::string& sump, const std::vector<Box>& words);  // ElevationRun.cpp
/// Of all sumps but one.
void paintOtherRuns(Sketch& sketch, const ElevationContext& c,
                    const std::string& marked);  // ElevationOthers.cpp
/// Its number, where more than one is cored.
void paintRunNumber(Sketch& sketch, const ElevationContext& c, perimeter::Place hole,
                    const std::string& marked);  // ElevationOthers.cpp

}  // namespace sumpwright::drawing
