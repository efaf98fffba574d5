#pragma once
// The measured house in plan, as plain values. Metres; x east (or as drawn), y north.
//
// Every ring is walked with the house on the left: the outer ring counter-clockwise, courtyards
// clockwise. Edge i runs from corner i to corner i+1 (the last back to corner 0), and the corners
// are those of the *outside face*. Nothing here checks itself: PlanCheck.h says what is wrong.
// Ids are strings, unique over the whole job.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "geometry/Point.h"
#include "plan/Kinds.h"

namespace sumpwright::plan {

using geometry::Point;

/// One layer of a wall's make-up.
struct Layer {
  LayerKind kind = LayerKind::block;
  double thickness_m = 0.0;
  bool operator==(const Layer&) const = default;
};

/// The outside ground at one place of a wall, `offset_m` from its first corner.
struct GroundPoint {
  double offset_m = 0.0;
  double level_m = 0.0;  ///< to finished floor = 0
  GroundSurface surface = GroundSurface::unknown;
  bool operator==(const GroundPoint&) const = default;
};

struct Wall {
  std::string id;
  std::string name;  ///< empty: called by its compass side
  WallKind kind = WallKind::outside;
  Elevation elevation = Elevation::unmarked;
  std::optional<double> thickness_m;  ///< outside face to inner face
  Foundation foundation = Foundation::unknown;
  OutsideGround ground = OutsideGround::unknown;
  std::optional<double> free_depth_m;    ///< clear working room outside, square to the wall
  std::optional<double> ground_level_m;  ///< outside ground, to finished floor = 0
  std::vector<Layer> layers;             ///< outside to inside; empty: the house's wall_layers
  std::vector<GroundPoint> ground_points;
  PartyBelow party_below = PartyBelow::unknown;  ///< party walls only
  std::optional<double> eaves_m;                 ///< not stated: the house's
  bool operator==(const Wall&) const = default;
};

/// A wall as it was taped, before any closing error was shared out.
struct TapedWall {
  double bearing_deg = 0.0;  ///< clockwise from the drawing's +y
  double length_m = 0.0;
  bool square = false;  ///< the angle to the wall before was taken for a right angle
  bool operator==(const TapedWall&) const = default;
};

struct Ring {
  std::vector<Point> corners;
  std::vector<Wall> walls;  ///< one per edge; of the same length as corners once read
  bool closed = true;       ///< false: still being measured; the last edge is not there yet
  /// The field book this ring was made of. Verbs that change its corners empty it: it says what was
  /// measured, not what was dragged.
  std::vector<TapedWall> taped;
  Sharing shared_by = Sharing::not_shared;
  bool operator==(const Ring&) const = default;
};

/// A place on the outside face: `offset_m` along edge `edge` of ring `ring` from its first corner.
struct OnWall {
  int ring = 0;
  int edge = 0;
  double offset_m = 0.0;
  bool operator==(const OnWall&) const = default;
};

struct Opening {
  std::string id;
  std::string name;
  OpeningKind kind = OpeningKind::window;
  Opens opens = Opens::yes;
  OnWall at;  ///< the jamb nearer to the edge's first corner
  double width_m = 0.0;
  std::optional<double> sill_m;  ///< above finished floor level
  std::optional<double> head_m;
  int storey = 0;  ///< 0 = ground storey
  Measured measured = Measured::outside;
  bool operator==(const Opening&) const = default;
};

/// A pier, a movement joint and the like in an outside wall, from `at` on.
struct WallFeature {
  std::string id;
  std::string name;
  WallFeatureKind kind = WallFeatureKind::pier;
  OnWall at;
  double width_m = 0.0;  ///< 0: a line across the wall
  bool operator==(const WallFeature&) const = default;
};

/// A service: its entry in a wall, its buried run, or both.
struct Service {
  std::string id;
  std::string name;
  ServiceKind kind = ServiceKind::water;
  std::optional<OnWall> entry;
  RunKnown run = RunKnown::unknown;
  std::vector<Point> run_m;  ///< polyline when run == drawn
  bool located = false;      ///< found on site by locator or trial dig, not only drawn
  std::string locating_record;
  DrainKind drain_kind = DrainKind::unknown;  ///< drains and waste pipes only, as the next two
  std::optional<double> invert_m;             ///< inside bottom of the pipe, to finished floor = 0
  YesNo trapped = YesNo::unknown;
  bool operator==(const Service&) const = default;
};

struct Room {
  std::string id;
  std::string name;
  RoomUse use = RoomUse::unknown;
  std::vector<Point> outline_m;  ///< inner faces
  /// Thin tiles or black glue that may be older than 2000: no hole before they are tested.
  YesNo old_tiles = YesNo::unknown;
  bool operator==(const Room&) const = default;
};

struct FloorZone {
  std::string id;
  std::string name;
  FloorKind kind = FloorKind::unknown;
  Oversite oversite = Oversite::unknown;
  bool underfloor_heating = false;
  std::vector<Point> outline_m;
  HousePart part = HousePart::house;
  std::optional<int> year_built;  ///< where it differs from the house's, as the next three
  std::optional<double> level_m;  ///< of this floor, to finished floor = 0
  std::optional<double> slab_m;
  Barrier barrier = Barrier::unknown;
  bool operator==(const FloorZone&) const = default;
};

struct InnerWall {
  std::string id;
  std::vector<Point> line_m;  ///< centre line
  double thickness_m = 0.1;
  BelowFloor below_floor = BelowFloor::unknown;
  bool operator==(const InnerWall&) const = default;
};

/// A door or gap in an inner wall: `offset_m` along its centre line to the nearer jamb.
struct InnerDoor {
  std::string id;
  std::string wall;  ///< id of the inner wall
  double offset_m = 0.0;
  double width_m = 0.0;
  bool operator==(const InnerDoor&) const = default;
};

/// A known gap in a rising wall, by distance along its line.
struct Gap {
  double from_m = 0.0;
  double to_m = 0.0;
  bool operator==(const Gap&) const = default;
};

struct RisingWall {
  std::string id;
  std::vector<Point> line_m;
  double thickness_m = 0.1;
  std::vector<Gap> gaps;
  bool operator==(const RisingWall&) const = default;
};

/// On an outside wall (`on` + width) or, without `on`, along `line_m` (two points, the inner face
/// it hangs on).
struct Radiator {
  std::string id;
  std::string name;
  std::optional<OnWall> on;
  double width_m = 0.0;
  std::vector<Point> line_m;
  bool operator==(const Radiator&) const = default;
};

struct HeatingPipe {
  std::string id;
  std::string name;
  std::vector<Point> line_m;
  bool operator==(const HeatingPipe&) const = default;
};

struct Supply {
  std::string id;
  std::string name;
  SupplyKind kind = SupplyKind::socket;
  Point at_m;
  YesNo rcd_shared = YesNo::unknown;  ///< a residual-current device with other circuits on it
  std::string circuit;                ///< as the consumer unit calls it
  bool operator==(const Supply&) const = default;
};

struct Fitting {
  std::string id;
  std::string name;
  FittingKind kind = FittingKind::sink;
  Point at_m;
  bool operator==(const Fitting&) const = default;
};

/// Something outside: one point (gully), two or more in a line (path edge, boundary, the face of a
/// neighbour's opening) or an area (chamber, tank, deck: three or more points, closed).
struct OutsideThing {
  std::string id;
  std::string name;
  OutsideKind kind = OutsideKind::path;
  std::vector<Point> points_m;
  bool operator==(const OutsideThing&) const = default;
};

struct TestHole {
  std::string id;
  std::string name;
  Point at_m;
  bool operator==(const TestHole&) const = default;
};

struct DimensionEnd {
  std::string thing;  ///< id; placeOf() in Dimensions.h says what can be one
  ThingEnd end = ThingEnd::start;
  bool operator==(const DimensionEnd&) const = default;
};

/// A dimension line, tied to what it measures.
struct Dimension {
  std::string id;
  DimensionEnd from;
  DimensionEnd to;
  double off_m = 0.0;  ///< the line's distance to the left of from -> to
  bool operator==(const Dimension&) const = default;
};

/// Makes a slanted picture upright: four of its places that are the corners of a known rectangle,
/// in order round it, the first side being its width.
struct Straighten {
  std::array<Point, 4> corners_px;  ///< x right, y down, from the picture's top-left
  double width_m = 0.0;
  double height_m = 0.0;
  bool operator==(const Straighten&) const = default;
};

/// A picture under the plan, to trace.
struct Underlay {
  std::string path;  ///< relative to the job file, forward slashes
  int page = 0;      ///< of a file with pages; 0 = first
  Point at_m;        ///< where the (straightened) picture's top-left stands
  double m_per_px = 0.01;
  double turn_deg = 0.0;  ///< counter-clockwise about at_m
  std::optional<Straighten> straighten;
  double fade = 0.5;  ///< 0: as it is .. 1: not to be seen
  bool locked = true;
  bool shown = true;
  bool operator==(const Underlay&) const = default;
};

struct Plan {
  double north_deg = 0.0;   ///< true north, clockwise from the drawing's +y
  std::vector<Ring> rings;  ///< 0 = outer, then courtyards
  std::vector<Opening> openings;
  std::vector<Service> services;
  std::vector<Room> rooms;
  std::vector<FloorZone> floor_zones;
  std::vector<InnerWall> inner_walls;
  std::vector<InnerDoor> inner_doors;
  std::vector<RisingWall> rising_walls;
  std::vector<Radiator> radiators;
  std::vector<HeatingPipe> heating_pipes;
  std::vector<Supply> supplies;
  std::vector<Fitting> fittings;
  std::vector<OutsideThing> outside;
  std::vector<TestHole> test_holes;
  std::vector<WallFeature> wall_features;
  std::vector<Dimension> dimensions;
  std::optional<Underlay> underlay;
  bool operator==(const Plan&) const = default;
};

}  // namespace sumpwright::plan
