#pragma once
// Dragging a sump along the outside face of the walls: start, move, finish, cancel. No camera and
// no window: points are plan points in metres, so a test drags without either.
//
// The place follows the pointer as if the hole were held by a rod: what was grabbed 0.4 m off the
// hole stays 0.4 m off it. At a convex corner the place runs round it without a break. Where walls
// face each other (a nook, a thin wing, a courtyard) the place nearest to the pointer would flip
// from one wall to the other; it changes walls only when the other one is nearer by `jump_m`.

#include "perimeter/Perimeter.h"

namespace sumpwright::tools {

using geometry::Point;
using perimeter::Perimeter;
using perimeter::Place;

/// How much nearer another wall must be before the place leaves the one it is on. Own figure: half
/// the width of a common cavity wall, so that a hand's tremble never crosses one.
inline constexpr double kJump_m = 0.15;

class SiteDrag {
 public:
  /// Takes hold of a sump that stands at `at` with the pointer at `pointer` (on its grip or hole).
  static SiteDrag hold(const Perimeter& perimeter, Place at, Point pointer,
                       double jump_m = kJump_m);
  /// Puts the sump at the nearest place to a press on the wall and holds it there; `before` is
  /// where it stood, for cancel.
  static SiteDrag press(const Perimeter& perimeter, Place before, Point pointer,
                        double jump_m = kJump_m);

  /// The place for a pointer. `perimeter` must be the one the drag was started on.
  Place move(const Perimeter& perimeter, Point pointer);
  Place place() const { return m_place; }
  Place start() const { return m_start; }
  /// Whether finishing would change anything.
  bool moved() const { return m_place != m_start; }

 private:
  SiteDrag(Place start, Place place, geometry::Vec rod, double jump_m)
      : m_start(start), m_place(place), m_rod(rod), m_jump_m(jump_m) {}

  Place m_start;
  Place m_place;
  geometry::Vec m_rod;  ///< from the hole to the pointer
  double m_jump_m;
};

/// The place reached from `from` by sliding downhill in distance to `target` along its ring: the
/// local nearest place, without leaving the wall for one that only faces it.
Place slid(const Perimeter& perimeter, Place from, Point target);

/// `from` moved along its ring; wraps over the ring's start. Contract: the ring exists.
Place stepped(const Perimeter& perimeter, Place from, double by_m);

/// Keyboard steps. Own figures: a hand's width, and what a tape can tell apart.
inline constexpr double kStep_m = 0.10;
inline constexpr double kFineStep_m = 0.01;

}  // namespace sumpwright::tools
