#pragma once
// What the files that draw the plan share: the view, its colours, the rings on the page, and what
// stands where already.

#include "drawing/Bands.h"
#include "drawing/PageRing.h"
#include "drawing/SheetContext.h"

namespace sumpwright::drawing {

/// Detail drops as the scale falls; millimetres of page for a metre (5 mm = 20 px).
inline constexpr double kFixtureScale = 5.0;  ///< sockets, pipes, swings
inline constexpr double kAreaScale = 3.9;     ///< areas of rooms
inline constexpr double kNameScale = 2.9;     ///< names of rooms

struct PlanContext : SheetContext {
  PlanContext(const siting::Study& s, const PlanView& v)
      : SheetContext(v, s.job().plan.north_deg), study(s), rings(pageRings(s, v)) {}
  const siting::Study& study;
  std::vector<PageRing> rings;
  Occupied occupied;
  Occupied labels;      ///< words and plates outside the walls: never written over
  Occupied bands;       ///< walls and their bands
  Occupied dimensions;  ///< their lines, on which only their own words stand
  Occupied swings;      ///< of doors: better not written over, but they may be

  const plan::Plan& plan() const { return study.job().plan; }
  bool fixtures() const { return view.mm_per_m >= kFixtureScale; }
  /// Whether a page point lies inside the walls' outside face (courtyards are outside).
  bool inHouse(Point point) const;
};

// Each paints one layer; `occupied` grows as they go.
void paintFloor(Sketch& sketch, PlanContext& c);                           // Rooms.cpp
void paintRoomLabels(Sketch& sketch, PlanContext& c, const Voice& voice);  // RoomLabels.cpp
/// Where the name of a room stands, alone or over its area; one or two lines of name.
struct RoomName {
  const plan::Room* room = nullptr;
  std::vector<Text> texts;
  Box box;
};
/// Those that find a place, which is taken then.
std::vector<RoomName> placedRoomNames(PlanContext& c, const Voice& voice, bool with_area);
void paintFixtures(Sketch& sketch, PlanContext& c);    // Fixtures.cpp
void paintInnerWalls(Sketch& sketch, PlanContext& c);  // InnerWalls.cpp
void paintWalls(Sketch& sketch, PlanContext& c);       // Walls.cpp
void paintOpenings(Sketch& sketch, PlanContext& c);    // Openings.cpp
void paintBuiltIn(Sketch& sketch, PlanContext& c);     // BuiltInPlan.cpp
void paintRisingWalls(Sketch& sketch, PlanContext& c);
void paintOutside(Sketch& sketch, PlanContext& c);  // Outside.cpp
void paintTestHoles(Sketch& sketch, PlanContext& c, const Voice& voice);
void paintSumpsInside(Sketch& sketch, PlanContext& c);
void paintServices(Sketch& sketch, PlanContext& c);  // Services.cpp
void paintServiceNames(Sketch& sketch, PlanContext& c, const Voice& voice);
void paintCornerLetters(Sketch& sketch, PlanContext& c, const Voice& voice);  // Furniture.cpp
/// Pit, core and riser ring of a sump cored at a place, without stem and grip.
void paintBuiltSump(Sketch& sketch, const PlanContext& c, perimeter::Place place);  // Marker.cpp
/// The overall dimension lines and their extension lines, from end to end.
std::vector<geometry::Segment> dimensionLines(const PlanContext& c);  // Dimensions.cpp
void paintOverallDimensions(Sketch& sketch, PlanContext& c, const Voice& voice);

/// On paper: two short strokes where a line leaves the view.                   // Beyond.cpp
void breakMarks(Sketch& sketch, const PlanContext& c, const std::vector<Point>& line,
                const Colour& colour);

/// Outlines a thing, an opening's whole reveal or a room in selection blue.
void paintOutline(Sketch& sketch, const PlanContext& c, const std::string& id);  // Selection.cpp

/// Where the tag of a service's entry stands.
struct ServiceTag {
  const plan::Service* service = nullptr;
  Point tip;     ///< on the outside face
  Point centre;  ///< of the plate
  Vec out;
};
std::vector<ServiceTag> serviceTags(const PlanContext& c);
std::string serviceWord(const plan::Service& service, const Voice& voice);

}  // namespace sumpwright::drawing
