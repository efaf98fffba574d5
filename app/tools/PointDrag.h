#pragma once
// Dragging what is laid: one of its points, a new one out of the middle of a side, or all of it.
// Every job is made from the one the drag was started on, so nothing adds up on the way.

#include <optional>
#include <string>
#include <vector>

#include "base/Result.h"
#include "plan/Job.h"
#include "tools/Faces.h"
#include "tools/PairText.h"

namespace sumpwright::tools {

enum class PointGripKind { vertex, side, whole };

struct PointGrip {
  std::string thing;
  PointGripKind kind = PointGripKind::vertex;
  int index = 0;  ///< of the vertex, or of the side that begins there
  bool operator==(const PointGrip&) const = default;
};

/// The points of a thing (or a sump inside) that is a point, a line or an area, and whether its
/// last joins its first; empty for any other thing, or none. The first point of a run that begins
/// at its entry is left to the entry: `first` says where the points that can be taken hold of
/// begin.
struct LaidPoints {
  std::vector<Point> points;
  bool closed = false;
  std::size_t first = 0;
};
LaidPoints laidPointsOf(const plan::Job& job, const std::string& thing);

/// Of that thing: the vertex within reach, else the middle of a side, else all of it where the
/// place is on its line or in its area.
std::optional<PointGrip> pointGripAt(const plan::Job& job, const std::string& thing, Point at,
                                     double reach_m);

class PointDrag {
 public:
  /// Contract: the grip is on the job's plan.
  PointDrag(plan::Job before, PointGrip grip, Point pointer, double reach_m, double grid_m);

  base::Result<plan::Job> move(Point pointer);
  /// What is typed wins: a length from the point before (of a line or area), or two lengths, along
  /// the wall from the nearest corner and off it. Nothing where it is neither.
  std::optional<base::Result<plan::Job>> type(const std::string& text, BareUnit bare);

  const PointGrip& grip() const { return m_grip; }
  const plan::Job& before() const { return m_before; }
  const Snapped& snapped() const { return m_snapped; }
  /// Where the point is, or for all of a thing its first point.
  Point at() const { return m_at; }

 private:
  base::Result<plan::Job> put(Point at);

  plan::Job m_before;
  PointGrip m_grip;
  LaidPoints m_laid;
  Vec m_rod;  ///< from what was gripped to the pointer
  Point m_held;
  Point m_at;
  SnapField m_field;
  Snapped m_snapped;
};

}  // namespace sumpwright::tools
