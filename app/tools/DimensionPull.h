#pragma once
// Pulling a dimension line out: the two places it is tied to, then how far off it stands; and
// finding and dragging one that is there.

#include <optional>
#include <string>

#include "base/Result.h"
#include "plan/Job.h"
#include "tools/Faces.h"

namespace sumpwright::tools {

/// A place a dimension can be tied to.
struct TiePlace {
  plan::DimensionEnd end;
  Point at;
};

/// The nearest within reach: corners of the house first, then ends of what stands on walls, ends of
/// lines and points, then middles.
std::optional<TiePlace> tiePlaceAt(const plan::Job& job, Point at, double reach_m);

/// The dimension whose line is nearest within reach; empty for none.
std::string dimensionAt(const plan::Job& job, Point at, double reach_m);

/// The job with that dimension's line through a place, its distance brought to the grid. Errors:
/// plan.edit.no-thing.
base::Result<plan::Job> dimensionThrough(const plan::Job& job, const std::string& id, Point at,
                                         double grid_m);

class DimensionPull {
 public:
  explicit DimensionPull(plan::Job before) : m_before(std::move(before)) {}

  void move(Point pointer, double reach_m, double grid_m);
  /// Ties the first end, then the second, then sets how far off; true when that was the last.
  bool click(Point pointer, double reach_m, double grid_m);
  /// Takes the last step back; false where there is none.
  bool back();
  /// How far off, as typed, to the side the pointer is on.
  void setOff(double off_m);
  base::Result<plan::Job> finished() const;

  const std::optional<TiePlace>& from() const { return m_from; }
  const std::optional<TiePlace>& to() const { return m_to; }
  /// What the next click would tie.
  const std::optional<TiePlace>& hovered() const { return m_hovered; }
  double off_m() const { return m_off_m; }
  const plan::Job& before() const { return m_before; }

 private:
  plan::Job m_before;
  std::optional<TiePlace> m_from;
  std::optional<TiePlace> m_to;
  std::optional<TiePlace> m_hovered;
  double m_off_m = 0.0;
};

}  // namespace sumpwright::tools
