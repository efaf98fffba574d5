#pragma once
// What the tables of things have in common: a name, a place on a wall, points. Internal to
// ThingFacts*.cpp.

#include <QCoreApplication>

#include "stages/KindWords.h"
#include "stages/ThingFacts.h"
#include "stages/ThingText.h"

namespace sumpwright::stages {

struct ThingFacts {
  Q_DECLARE_TR_FUNCTIONS(ThingFacts)
};

/// The table of the thing of type T with that id, kept by replaceThing().
template <class T>
FactTable<T> factTable(const std::string& id) {
  return FactTable<T>(
      [id](const plan::Job& job) -> std::optional<T> {
        const auto thing = plan::thingOf(job, id);
        const T* mine = thing ? std::get_if<T>(&*thing) : nullptr;
        return mine == nullptr ? std::nullopt : std::optional<T>(*mine);
      },
      [](const plan::Job& job, const T& thing) { return plan::replaceThing(job, thing); });
}

/// Every wall as a choice, "A to B" and so on, and where each is.
struct WallChoices {
  QStringList names;
  std::vector<std::pair<int, int>> at;
};
WallChoices wallChoices(const plan::Job& job);

/// Number of the wall a place is on; -1: none.
int wallNumber(const WallChoices& walls, const plan::OnWall& at);

/// The wall and the offset of what stands on one. `place` gives an OnWall&.
template <class T, class Place>
void addOnWall(FactTable<T>& table, const plan::Job& job, Place place) {
  const WallChoices walls = wallChoices(job);
  Fact& wall = table.add(
      "edge", ThingFacts::tr("On wall"), FactKind::choice,
      [walls, place](const T& t) -> FactValue { return wallNumber(walls, std::invoke(place, t)); },
      [walls, place](T& t, const FactValue& v) {
        const int* chosen = std::get_if<int>(&v);
        if (chosen == nullptr || *chosen < 0) return;
        const auto [ring, edge] = walls.at[static_cast<std::size_t>(*chosen)];
        std::invoke(place, t).ring = ring;
        std::invoke(place, t).edge = edge;
      });
  wall.choices = walls.names;
  table
      .measure(
          "offset_m", ThingFacts::tr("From left"),
          [place](auto& t) -> auto& { return std::invoke(place, t).offset_m; })
      .says = ThingFacts::tr("From the wall's left corner, seen from outside");
}

/// Points as a list of text.
template <class T>
Fact& addPoints(FactTable<T>& table, const std::string& id, std::string key,
                std::vector<plan::Point> T::*part) {
  Fact fact;
  fact.key = std::move(key);
  fact.label = ThingFacts::tr("Points");
  fact.says = ThingFacts::tr("Points on the plan: along it : up it");
  fact.kind = FactKind::list;
  fact.example = pointsExample();
  fact.get = [id, part](const plan::Job& job) -> FactValue {
    const auto thing = plan::thingOf(job, id);
    const T* mine = thing ? std::get_if<T>(&*thing) : nullptr;
    if (mine == nullptr || (mine->*part).empty()) return {};
    return listShown(mine->*part, job);
  };
  fact.set = [id, part](const plan::Job& job, const FactValue& v) -> base::Result<plan::Job> {
    auto thing = plan::thingOf(job, id);
    T* mine = thing ? std::get_if<T>(&*thing) : nullptr;
    if (mine == nullptr) return job;
    auto read = listRead<plan::Point>(v, job, mine->*part);
    if (!read) return read.problems();
    mine->*part = std::move(read).value();
    return plan::replaceThing(job, *thing);
  };
  return table.add(std::move(fact));
}

/// One point, as along it and up it.
template <class T>
void addPoint(FactTable<T>& table) {
  table
      .measure(
          "at_m/0", ThingFacts::tr("Along"), [](auto& t) -> auto& { return t.at_m.x; },
          FactKind::level)
      .says = ThingFacts::tr("Place on the plan, along it");
  table
      .measure(
          "at_m/1", ThingFacts::tr("Up"), [](auto& t) -> auto& { return t.at_m.y; },
          FactKind::level)
      .says = ThingFacts::tr("Place on the plan, up it");
}

std::vector<Fact> openingFacts(const plan::Job& job, const plan::Opening& opening);
std::vector<Fact> serviceFacts(const plan::Job& job, const plan::Service& service);
std::vector<Fact> zoneFacts(const plan::FloorZone& zone);
std::vector<Fact> radiatorFacts(const plan::Job& job, const plan::Radiator& radiator);
std::vector<Fact> risingWallFacts(const plan::RisingWall& wall);
std::vector<Fact> innerDoorFacts(const plan::Job& job, const plan::InnerDoor& door);
std::vector<Fact> dimensionFacts(const plan::Job& job, const plan::Dimension& dimension);

}  // namespace sumpwright::stages
