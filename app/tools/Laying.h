#pragma once
// Laying something by clicks: a point, a line or an area, from what it will be and where the
// pointer is. Values in, values out: a test lays without a window. Nothing is in the job until
// finished() gives it.
//
// A typed number wins over the pointer: for the first point two lengths, along the wall from the
// nearest corner and square off it ("1.20, 0.45"); for the next a length, with a direction if it
// changes, as on the tape ("3.20", "l 3.20", "n 2"); for an area with one point its two sides
// ("3.60 x 2.80").

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/Result.h"
#include "plan/ThingEdits.h"
#include "tools/Faces.h"
#include "tools/LengthText.h"

namespace sumpwright::tools {

enum class LayShape { point, line, area };

struct LayOutline {};    ///< the house itself, where none is drawn
struct LayCourtyard {};  ///< a ring within it
struct LayStart {};      ///< only a place: where a tape begins
/// A sump inside the house: a new one, or a standby sump that was found.
struct LaySumpInside {
  plan::SumpKind kind = plan::SumpKind::internal;
};

/// What is laid: a thing without its places, a ring, a sump inside, or nothing but a place.
using LayModel = std::variant<plan::Thing, LayOutline, LayCourtyard, LayStart, LaySumpInside>;

/// How a thing is laid. What stands on a wall, has no place or is tied to others is not laid here:
/// nothing. An inspection chamber, a tank and the like are areas that may be one point.
std::optional<LayShape> shapeOf(const LayModel& model);

/// Id of the point, line or area that is new or changed from one job to the next; empty for none.
std::string laidLast(const plan::Job& before, const plan::Job& after);

class Laying {
 public:
  /// Contract: shapeOf(model).
  Laying(plan::Job before, LayModel model, BareUnit bare = BareUnit::metre);

  /// Reach and grid at the scale that is looked at; before move() and click().
  void look(double reach_m, double grid_m);

  /// Goes on with another job (an undo came between): what is laid so far stays.
  void onto(plan::Job job);
  const plan::Job& before() const { return m_before; }

  void move(Point pointer);
  /// Takes the place the pointer stands for; true when nothing can follow (a point; an area clicked
  /// on its first point; a line clicked twice on its last).
  bool click(Point pointer);
  /// A rectangle pulled open from where the pointer was pressed. Contract: shape() is area.
  void pullRectangle(Point pressed, Point pointer);

  void setText(const std::string& text) { m_text = text; }
  const std::string& text() const { return m_text; }
  enum class Typed { taken, done, unread };
  /// Takes what is typed as the next place. `done`: nothing can follow, or nothing was typed, which
  /// ends what is being laid. `unread`: neither a length nor two.
  Typed enter();
  /// Takes the last point back; false where there is none.
  bool back();

  /// The job with the thing in it; as it is for a place alone. Errors: lay.few for fewer points
  /// than it needs, as of a rectangle of no width; those of plan/ThingEdits.h and plan/WallEdits.h.
  base::Result<plan::Job> finished() const;

  LayShape shape() const { return m_shape; }
  const LayModel& model() const { return m_model; }
  /// The places so far.
  const std::vector<Point>& points() const { return m_points; }
  /// What the pointer is brought to; nothing before it moved.
  const std::optional<Snapped>& aimed() const { return m_aimed; }
  /// The leg to the pointer, as a typed number would make it; nothing before the first point.
  std::optional<Segment> leg() const;
  bool isRectangle() const { return m_rectangle; }

 private:
  SnapField field() const;
  bool take(Point at);
  std::optional<Point> typedPlace() const;
  std::vector<Point> typedRectangle() const;
  base::Result<plan::Job> withThing(plan::Thing thing, std::vector<Point> points) const;

  plan::Job m_before;
  LayModel m_model;
  LayShape m_shape;
  BareUnit m_bare;
  SnapField m_field;
  std::vector<Point> m_points;
  std::optional<Snapped> m_aimed;
  std::string m_text;
  bool m_rectangle = false;
};

}  // namespace sumpwright::tools
