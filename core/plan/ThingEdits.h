#pragma once
// Verbs on things of every kind: adding, changing, moving, copying, removing. Each takes a job and
// gives back the changed job or the reason why not. Walls have verbs of their own (OutlineEdits.h,
// WallEdits.h), as have sumps and waivers (DesignEdits.h). The result may contradict itself (an
// opening wider than its wall): checkJob() says so.
//
// What was looked for follows: where a thing is added of a kind that was said not to be there, it
// is there now; where the last that was drawn goes, "present" becomes "not looked", for whoever
// took it away has to say. A kind that was not looked for stays so: one that is drawn does not say
// that all are.
//
// Errors of all: plan.edit.no-thing for an id that no such thing has; plan.edit.not-a-place for a
// number that no job file may hold; plan.edit.not-text for text that is not UTF-8 or holds control
// characters; plan.edit.too-many for a list over 10,000; plan.edit.no-edge for a wall that is not
// there; plan.id.twice.

#include <optional>
#include <string>
#include <variant>

#include "base/Result.h"
#include "plan/Job.h"

namespace sumpwright::plan {

using Thing = std::variant<Opening, Service, Room, FloorZone, InnerWall, InnerDoor, RisingWall,
                           Radiator, HeatingPipe, Supply, Fitting, OutsideThing, TestHole,
                           WallFeature, Dimension, Appliance>;

const std::string& idOf(const Thing& thing);
/// The thing of that id, or nothing.
std::optional<Thing> thingOf(const Job& job, const std::string& id);
/// The first of stem-1, stem-2, ... that nothing in the job has as its id.
std::string unusedId(const Job& job, const std::string& stem);

/// Adds it at the end of its list. Without an id it gets one, made of what it is and a number. An
/// inner door must name an inner wall, a dimension two things with a place (plan.edit.no-thing).
base::Result<Job> addThing(const Job& job, Thing thing);

/// Puts it in place of the thing of the same kind and id.
base::Result<Job> replaceThing(const Job& job, const Thing& thing);

/// Takes it out, and with it the inner doors of an inner wall, the waivers that name what is gone,
/// the dimensions tied to it and what was read in a test hole; a sump wired from it names no
/// supply any more.
base::Result<Job> removeThing(const Job& job, const std::string& id);

/// Moves it. What stands on a wall goes to the place on any wall that is nearest, and is kept on it
/// as far as it fits; an inner door goes along its wall; a dimension line aside. The rest of a
/// thing, such as the run of a service, goes by the same way. Error: plan.edit.no-point for what
/// has no place (an appliance).
base::Result<Job> moveThing(const Job& job, const std::string& id, geometry::Vec by);

/// Moves one of its points, counted from 0 as listed in the job. Error: plan.edit.no-point.
base::Result<Job> movePoint(const Job& job, const std::string& id, int point, Point to);
/// Puts a point before point `point` of a line or outline (their number: at the end).
base::Result<Job> insertPoint(const Job& job, const std::string& id, int point, Point place);
/// Takes a point out. Error: plan.edit.too-few-points where less than a line (two) or an outline
/// (three) would be left.
base::Result<Job> removePoint(const Job& job, const std::string& id, int point);

/// A copy under a new id, moved as moveThing() does; inner doors of an inner wall are copied with
/// it. A dimension is not copied: plan.edit.no-point.
base::Result<Job> copyThing(const Job& job, const std::string& id, geometry::Vec by);

/// The place on any wall nearest to `middle` for something that wide, kept on its wall as far as it
/// fits; nothing where there is no wall.
std::optional<OnWall> nearestOnWalls(const Plan& plan, Point middle, double width_m);

}  // namespace sumpwright::plan
