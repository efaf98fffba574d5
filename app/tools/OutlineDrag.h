#pragma once
// Dragging the outline of a house: what is under the pointer, and the job as it would be with the
// pointer elsewhere. Values in, values out: a test drags without a window. Every job is made from
// the one the drag was started on, so nothing adds up on the way.

#include <optional>

#include "base/Result.h"
#include "plan/Job.h"
#include "tools/Snap.h"

namespace sumpwright::tools {

enum class GripKind { corner, wall };

/// A corner or wall of a closed ring.
struct OutlineGrip {
  GripKind kind = GripKind::corner;
  int ring = 0;
  int index = 0;  ///< of the corner, or of the edge
  bool operator==(const OutlineGrip&) const = default;
};

/// Where the corner stands, or the middle of the wall's outside face. Contract: it is on the plan.
Point gripPoint(const plan::Plan& plan, const OutlineGrip& grip);

/// The corner within `reach_m`, else the wall whose body (outside face to `thickness_m` inside, and
/// `reach_m` to both sides) holds the point; the nearest where several do. Only closed rings.
std::optional<OutlineGrip> outlineGripAt(const plan::Plan& plan, Point at, double reach_m,
                                         double thickness_m);

class OutlineDrag {
 public:
  /// `reach_m` and `grid_m` as in Snap.h. Contract: the grip is on the job's plan.
  OutlineDrag(plan::Job before, OutlineGrip grip, Point pointer, double reach_m, double grid_m);

  /// The job with the pointer there, or why that cannot be: snapped() and out_m() tell of this
  /// try all the same, and the caller shows the last job that could.
  base::Result<plan::Job> move(Point pointer);
  /// The same with a typed number: the length of the wall before the corner, or how far the wall
  /// goes out.
  base::Result<plan::Job> set(double length_m);

  const plan::Job& before() const { return m_before; }
  const OutlineGrip& grip() const { return m_grip; }
  /// What the pointer was last brought to.
  const Snapped& snapped() const { return m_snapped; }
  /// How far a wall has gone out, square to itself; 0 for a corner.
  double out_m() const { return m_out_m; }

 private:
  plan::Job m_before;
  OutlineGrip m_grip;
  geometry::Vec m_rod;  ///< from what was gripped to the pointer
  SnapField m_field;
  Snapped m_snapped;
  double m_out_m = 0.0;
};

}  // namespace sumpwright::tools
