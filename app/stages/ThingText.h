#pragma once
// Things of a plan in words: what they are, what they are called, where they stand. Plain values.

#include <QString>
#include <QStringList>

#include "plan/ThingEdits.h"

namespace sumpwright::stages {

/// "Window", "Gas", "Kitchen", "Inner wall", ...
QString thingKind(const plan::Thing& thing);
/// Its name, else its kind.
QString thingTitle(const plan::Thing& thing);
/// "A to B, 1.20 m from A" on a wall; inside and outside by the nearest wall; an area for rooms and
/// floors; empty for what has no place.
QString thingWhere(const plan::Thing& thing, const plan::Job& job);
/// "A to B": a wall by its corners.
QString wallCorners(const plan::Job& job, int ring, int edge);
/// "South wall (A to B)": by its name, else by the way it faces. Contract: the wall is there.
QString wallTitle(const plan::Job& job, int ring, int edge);
/// The wall of that id, and where it is.
std::optional<plan::Wall> wallOf(const plan::Job& job, const std::string& id, int* ring = nullptr,
                                 int* edge = nullptr);

/// Ids of all things, in the order they are listed in the job.
std::vector<std::string> thingIds(const plan::Job& job);

/// What a person would call the wall or thing of that id ("Gas, south wall (A to B)"); empty where
/// nothing has it.
QString namedIn(const std::string& id, const plan::Job& job);
/// A message with the ids in it put into such names, its first letter a capital.
QString saidNamed(const base::Message& message, const plan::Job& job);

}  // namespace sumpwright::stages
