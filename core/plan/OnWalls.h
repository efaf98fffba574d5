#pragma once
// What stands on the walls of one ring, and how an edit of the ring carries it along. Internal to
// core/plan.

#include <functional>
#include <optional>

#include "plan/Job.h"

namespace sumpwright::plan {

/// Unit vector along it; +x for one without length.
geometry::Vec directionOf(const geometry::Segment& s);

/// visit(place, width) for everything that hangs on a wall, sumps left out.
void forEachOnWall(Plan& plan, const std::function<void(OnWall&, double width_m)>& visit);

/// A place of one ring as edge and offset.
struct OnEdge {
  std::size_t edge = 0;
  double offset_m = 0.0;
};

/// The edge that holds a chainage (wrapped onto the ring); at a corner the edge that begins there.
/// Contract: the ring has an edge longer than nothing.
OnEdge onEdge(const Ring& ring, double chainage_m);
double chainageOf(const Ring& ring, OnEdge at);
Point pointAt(const Ring& ring, OnEdge at);

/// Where something of the width at `at` of the old ring stands on the new one.
using Carry =
    std::function<OnEdge(const Ring& before, const Ring& after, OnEdge at, double width_m)>;

/// The job with ring `ring` replaced and everything on it carried, ground points too; waivers as
/// OutlineEdits.h says.
Job withRing(const Job& job, std::size_t ring, Ring after, const Carry& carry);

/// Edges correspond one to one: by the corner that stayed, else square to the wall; kept on it.
OnEdge carryAlongEdge(const Ring& before, const Ring& after, OnEdge at, double width_m);

/// For a ring that is now walked the other way round: which end of a wall and of what stands on it
/// a dimension is tied to.
void countFromOtherEnds(Job& job, std::size_t ring);

/// Set square onto edge `edge`, and kept on it.
OnEdge setOnto(const Ring& before, const Ring& after, OnEdge at, double width_m, std::size_t edge);

}  // namespace sumpwright::plan
