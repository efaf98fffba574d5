#pragma once
// What can be said of a wall, and of anything with an id that stands on the plan.

#include "plan/ThingEdits.h"
#include "stages/Fact.h"

namespace sumpwright::stages {

/// Of the wall with that id.
std::vector<Fact> wallFacts(const std::string& id);

/// A list that is typed as text: what is read must be wholly understood, else the problem
/// "place.not-read" is given back. Entries that read as they did in `before` stay exactly those.
/// `T` is plan::Layer, plan::GroundPoint, plan::Gap or a point.
template <class T>
std::string listShown(const std::vector<T>& list, const plan::Job& job);
template <class T>
base::Result<std::vector<T>> listRead(const FactValue& text, const plan::Job& job,
                                      const std::vector<T>& before);

/// Examples of how each list is typed.
QString layersExample();
QString groundExample();
QString gapsExample();
QString pointsExample();

}  // namespace sumpwright::stages
