#pragma once
// What the files of the section drawing share. Internal to core/drawing.

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

#include "drawing/Box.h"
#include "drawing/SectionDrawing.h"
#include "drawing/Sketch.h"
#include "plan/FloorLevels.h"

namespace sumpwright::drawing {

struct SectionContext {
  SectionContext(const build::DrillSection& s, const SectionView& v, const Voice& w);
  const build::DrillSection& section;
  const build::BuildUp& up;
  const SectionView& view;
  const Voice& voice;
  const Theme& theme;
  Box picture;    ///< where the cut is drawn; words stand beside it in a dimensioned view
  double mm = 1;  ///< per metre
  double face_x = 0, floor_y = 0;  ///< of the outside face and of finished floor level

  double x(double metres) const { return face_x + metres * mm; }
  double y(double level_m) const { return floor_y - level_m * mm; }
  Point at(double x_m, double level_m) const { return {x(x_m), y(level_m)}; }
  /// Rectangle from the outer to the inner place and from the upper to the lower level.
  std::vector<Point> block(double from_m, double to_m, double high_m, double low_m) const {
    return rectangle(x(from_m), y(high_m), (to_m - from_m) * mm, (high_m - low_m) * mm);
  }
  double leftEnd_m() const { return (picture.left - face_x) / mm; }
  double rightEnd_m() const { return (picture.right - face_x) / mm; }
  double bottom_m() const { return (floor_y - picture.bottom) / mm; }
  double top_m() const { return (floor_y - picture.top) / mm; }
  /// A suspended floor over concrete on the ground: both are drawn.
  bool oversite() const { return suspended() && section.bore.has_value(); }
  bool suspended() const { return plan::isSuspended(up.floor); }
};

void paintEarth(Sketch& sketch, const SectionContext& c);       // SectionEarth.cpp
void paintFloor(Sketch& sketch, const SectionContext& c);       // SectionFloor.cpp
void paintFooting(Sketch& sketch, const SectionContext& c);     // SectionEarth.cpp
void paintWall(Sketch& sketch, const SectionContext& c);        // SectionWall.cpp
void paintHole(Sketch& sketch, const SectionContext& c);        // SectionHole.cpp
void paintLevels(Sketch& sketch, const SectionContext& c);      // SectionLabels.cpp
void paintHeights(Sketch& sketch, const SectionContext& c);     // SectionLabels.cpp
void paintDimensions(Sketch& sketch, const SectionContext& c);  // SectionDistances.cpp

/// Widths that the words left and right of a dimensioned picture take.
std::pair<double, double> columnsOf(const SectionContext& c);  // SectionLabels.cpp

// SectionLabels.cpp

/// Whether the build-up holds one of these for want of anybody's word: marked with a question mark.
bool isAssumed(const SectionContext& c, std::initializer_list<std::string_view> ids);
std::string marked(std::string words, bool assumed);
std::string thick(const SectionContext& c, const char* id, double thickness_m);

/// Concrete: dots and small triangles, scattered but always the same.
void concrete(Sketch& sketch, const Box& box, const Colour& colour);  // SectionFloor.cpp

}  // namespace sumpwright::drawing
