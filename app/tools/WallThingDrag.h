#pragma once
// Dragging what stands on a wall along it, to another wall, or by one of its ends. Values in,
// values out; every job is made from the one the drag was started on.

#include "tools/WallStop.h"

namespace sumpwright::tools {

/// All of it, or the end nearer to the wall's left or right corner.
enum class WallPart { body, left_end, right_end };

struct WallGrip {
  std::string id;
  WallPart part = WallPart::body;
  bool operator==(const WallGrip&) const = default;
};

/// An end of the thing within `reach_m`, along the outside face; nothing for what has no width.
std::optional<WallGrip> wallEndAt(const plan::Job& job, const std::string& id, Point at,
                                  double reach_m);

class WallThingDrag {
 public:
  /// `field`: reach and grid; the rest is filled in. Contract: the grip's thing stands on a wall.
  WallThingDrag(plan::Job before, WallGrip grip, Point pointer, WallSnapField field);

  /// The job with the pointer there, or why that cannot be.
  base::Result<plan::Job> move(Point pointer);
  /// With typed numbers. Of the body: distance from the left corner, width; of an end: the width.
  base::Result<plan::Job> set(double first_m, std::optional<double> second_m);

  const plan::Job& before() const { return m_before; }
  const WallGrip& grip() const { return m_grip; }
  /// Where it would stand now, whether it can or not.
  const WallStop& stop() const { return m_stop; }
  double width_m() const { return m_width_m; }
  int storey() const { return m_field.storey; }

 private:
  base::Result<plan::Job> apply(const WallStop& stop, double width_m);

  plan::Job m_before;
  base::Problems m_were;  ///< of the job before
  WallGrip m_grip;
  WallSnapField m_field;
  WallThing m_was;
  Vec m_rod;  ///< from the thing's middle, or its end, to the pointer
  WallStop m_stop;
  double m_width_m = 0.0;
};

}  // namespace sumpwright::tools
