#pragma once
// Laying something on an outside wall with the pointer: a ghost that rests where wallStop() says,
// numbers typed that fix it, and the job with it laid. Values in, values out.

#include <optional>

#include "plan/ThingEdits.h"
#include "tools/Task.h"
#include "tools/WallStop.h"

namespace sumpwright::tools {

/// What would be laid, and where.
struct WallGhost {
  plan::Thing thing;
  plan::OnWall at;
  double width_m = 0.0;
  int storey = 0;
  StopKind kind = StopKind::none;
  std::vector<Segment> guides;
  WallGaps gaps;
  std::optional<base::Problem> refusal;  ///< why it cannot be laid there
};

/// Whether a task lays something on a wall.
bool laysOnWall(Task task);

/// What the task lays next: like the last of its kind on the plan (width, sill, head, storey,
/// what carries a drain), without name and place; of usual width where there is none yet. That it
/// opens is taken of every opening, whatever was seen of the last.
/// Contract: laysOnWall(task).
plan::Thing nextLike(const plan::Job& job, Task task);

class WallLaying {
 public:
  /// Contract: laysOnWall(task).
  explicit WallLaying(Task task);
  Task task() const { return m_task; }

  /// The pointer is there; nothing: it is near no wall. `reach_m` is how far a wall may be.
  void point(std::optional<Point> pointer, double reach_m);
  /// Typed numbers, in force until they are taken away: distance from the left corner of the wall
  /// the ghost is on, width.
  void fix(std::optional<double> offset_m, std::optional<double> width_m);
  /// Holds the wall under the ghost, as while numbers are typed.
  void hold(const plan::Job& job);
  /// Holds that wall.
  void holdAt(const plan::OnWall& at) { m_held = at; }
  void letGo();

  /// Nothing without a wall under the pointer.
  std::optional<WallGhost> ghost(const plan::Job& job, double grid_m, double snap_m) const;

 private:
  Task m_task;
  std::optional<Point> m_pointer;
  double m_reach_m = 0.0;
  std::optional<plan::OnWall> m_held;
  std::optional<double> m_offset_m;
  std::optional<double> m_width_m;
};

/// The job with the ghost laid. Errors: its refusal, and those of plan/ThingEdits.h.
base::Result<plan::Job> laid(const plan::Job& job, const WallGhost& ghost);

}  // namespace sumpwright::tools
