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
/// "A to B, 1.20 m from A" on a wall, else empty.
QString thingWhere(const plan::Thing& thing, const plan::Job& job);
/// "A to B": a wall by its corners.
QString wallCorners(const plan::Job& job, int ring, int edge);

/// Ids of all things, in the order they are listed in the job.
std::vector<std::string> thingIds(const plan::Job& job);

/// What of a thing is one of a closed list, as a choice: label, the choices, the one that holds.
struct ThingChoice {
  QString label;
  QStringList choices;
  int chosen = 0;
};
/// Nothing where a thing has no such choice.
std::optional<ThingChoice> choiceOf(const plan::Thing& thing);
/// The thing with another choice. Contract: choiceOf(thing) has that many.
plan::Thing withChoice(plan::Thing thing, int chosen);

}  // namespace sumpwright::stages
