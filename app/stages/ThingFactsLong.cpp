// The tables of things with more to them than a kind and a place.

#include <algorithm>

#include "plan/FloorLevels.h"
#include "plan/OpeningEdits.h"
#include "stages/ThingFactParts.h"
#include "tools/WallThing.h"

namespace sumpwright::stages {

namespace {

bool isDrain(const plan::Job& job, const std::string& id) {
  const auto thing = plan::thingOf(job, id);
  const auto* service = thing ? std::get_if<plan::Service>(&*thing) : nullptr;
  return service != nullptr &&
         (service->kind == plan::ServiceKind::drain || service->kind == plan::ServiceKind::waste);
}

/// An entry goes to another place with its run, as a drag takes it.
base::Result<plan::Job> entryMoved(const plan::Job& job, const std::string& id,
                                   const std::function<void(plan::OnWall&)>& move) {
  const auto thing = plan::thingOf(job, id);
  const auto* service = thing ? std::get_if<plan::Service>(&*thing) : nullptr;
  if (service == nullptr || !service->entry) return job;
  plan::OnWall at = *service->entry;
  move(at);
  return tools::withWallThing(job, id, at, 0.0);
}

const plan::Opening* openingIn(const std::optional<plan::Thing>& thing) {
  return thing ? std::get_if<plan::Opening>(&*thing) : nullptr;
}

}  // namespace

std::vector<Fact> openingFacts(const plan::Job& job, const plan::Opening& opening) {
  using plan::Opening;
  const std::string id = opening.id;
  auto t = factTable<Opening>(id);
  t.text("name", ThingFacts::tr("Name"), &Opening::name);
  t.choice("kind", ThingFacts::tr("Kind"), &Opening::kind, openingKindWords());
  t.choice("opens", ThingFacts::tr("Opens"), &Opening::opens, opensWords());
  addOnWall(
      t, job, [](auto& o) -> auto& { return o.at; });
  t.measure("width_m", ThingFacts::tr("Wide"), &Opening::width_m);
  Fact& sill = t.measure("sill_m", ThingFacts::tr("Sill"), &Opening::sill_m, FactKind::level);
  sill.says = ThingFacts::tr("Sill above the floor");
  Fact& head = t.measure("head_m", ThingFacts::tr("Head"), &Opening::head_m, FactKind::level);
  head.says = ThingFacts::tr("Head above the floor");
  t.whole("storey", ThingFacts::tr("Storey"), &Opening::storey).says =
      ThingFacts::tr("Storey, the ground one is 0");
  t.choice("measured", ThingFacts::tr("Taped from"), &Opening::measured, measuredWords());
  std::vector<Fact> facts = t.take();
  // Verbs that see to its room on the wall.
  for (Fact& fact : facts) {
    if (fact.key == "offset_m") {
      fact.set = [id](const plan::Job& j, const FactValue& v) -> base::Result<plan::Job> {
        const auto thing = plan::thingOf(j, id);
        const Opening* o = openingIn(thing);
        const double* offset = std::get_if<double>(&v);
        if (o == nullptr || offset == nullptr) return j;
        return plan::placeOpening(j, id, o->at.ring, o->at.edge, plan::Side::left, *offset);
      };
    } else if (fact.key == "width_m") {
      fact.set = [id](const plan::Job& j, const FactValue& v) -> base::Result<plan::Job> {
        const double* width = std::get_if<double>(&v);
        if (width == nullptr) return j;
        return plan::setOpeningWidth(j, id, *width, plan::Side::left);
      };
    }
  }
  return facts;
}

std::vector<Fact> serviceFacts(const plan::Job& job, const plan::Service& service) {
  using plan::Service;
  const std::string id = service.id;
  auto t = factTable<Service>(id);
  t.text("name", ThingFacts::tr("Name"), &Service::name);
  t.choice("kind", ThingFacts::tr("Kind"), &Service::kind, serviceKindWords());
  const WallChoices walls = wallChoices(job);
  Fact& wall = t.add(
      "entry", ThingFacts::tr("Comes in by"), FactKind::choice,
      [walls](const Service& s) -> FactValue {
        return s.entry ? wallNumber(walls, *s.entry) + 1 : 0;
      },
      [walls](Service& s, const FactValue& v) {
        const int* chosen = std::get_if<int>(&v);
        if (chosen == nullptr) return;
        if (*chosen <= 0) return s.entry.reset();
        const auto [ring, edge] = walls.at[static_cast<std::size_t>(*chosen - 1)];
        s.entry = plan::OnWall{ring, edge, 0.0};
      });
  wall.choices = QStringList{ThingFacts::tr("Not known")} + walls.names;
  const auto entered = wall.set;
  wall.set = [id, walls, entered](const plan::Job& j,
                                  const FactValue& v) -> base::Result<plan::Job> {
    const int* chosen = std::get_if<int>(&v);
    const auto thing = plan::thingOf(j, id);
    const auto* s = thing ? std::get_if<Service>(&*thing) : nullptr;
    const bool moves = s != nullptr && s->entry && chosen != nullptr && *chosen > 0;
    if (!moves) return entered(j, v);
    return entryMoved(j, id, [&](plan::OnWall& at) {
      const auto [ring, edge] = walls.at[static_cast<std::size_t>(*chosen - 1)];
      at.ring = ring;
      at.edge = edge;
    });
  };
  Fact& offset = t.add("entry/offset_m", ThingFacts::tr("From left"), FactKind::length,
                       [](const Service& s) -> FactValue {
                         return s.entry ? FactValue(s.entry->offset_m) : FactValue();
                       },
                       {});
  offset.says = ThingFacts::tr("From the wall's left corner, seen from outside");
  offset.required = true;
  offset.set = [id](const plan::Job& j, const FactValue& v) -> base::Result<plan::Job> {
    const double* metres = std::get_if<double>(&v);
    if (metres == nullptr) return j;
    return entryMoved(j, id, [metres](plan::OnWall& at) { at.offset_m = *metres; });
  };
  offset.applies = [id](const plan::Job& j) {
    const auto thing = plan::thingOf(j, id);
    const auto* s = thing ? std::get_if<Service>(&*thing) : nullptr;
    return s != nullptr && s->entry.has_value();
  };
  Fact& run = t.add(
      "run", ThingFacts::tr("Its run"), FactKind::choice,
      [](const Service& s) -> FactValue { return static_cast<int>(s.run); },
      [](Service& s, const FactValue& v) {
        const int* chosen = std::get_if<int>(&v);
        if (chosen == nullptr) return;
        s.run = static_cast<plan::RunKnown>(*chosen);
        if (s.run != plan::RunKnown::drawn) s.run_m.clear();  // else the job contradicts itself
      });
  run.choices = runWords();
  run.says = ThingFacts::tr("Where it runs in the ground");
  Fact& points = addPoints(t, id, "run_m", &Service::run_m);
  points.label = ThingFacts::tr("Run");
  points.set = [id](const plan::Job& j, const FactValue& v) -> base::Result<plan::Job> {
    auto thing = plan::thingOf(j, id);
    auto* s = thing ? std::get_if<Service>(&*thing) : nullptr;
    if (s == nullptr) return j;
    auto read = listRead<plan::Point>(v, j, s->run_m);
    if (!read) return read.problems();
    s->run_m = std::move(read).value();
    s->run = s->run_m.empty() ? plan::RunKnown::unknown : plan::RunKnown::drawn;
    return plan::replaceThing(j, *thing);
  };
  t.choice("located", ThingFacts::tr("Located"), &Service::located, noYesWords()).says =
      ThingFacts::tr("Found on site by locator or trial dig");
  t.text("locating_record", ThingFacts::tr("By whom, how"), &Service::locating_record).says =
      ThingFacts::tr("Locating record: who, when, how");
  const auto drain = [id](const plan::Job& j) { return isDrain(j, id); };
  t.choice("drain_kind", ThingFacts::tr("Carries"), &Service::drain_kind, drainKindWords())
      .applies = drain;
  Fact& invert =
      t.measure("invert_m", ThingFacts::tr("Invert"), &Service::invert_m, FactKind::level);
  invert.says = ThingFacts::tr("Inside bottom of the pipe, above the floor (below: with a minus)");
  invert.applies = drain;
  Fact& trap = t.choice("trapped", ThingFacts::tr("Trapped"), &Service::trapped, yesNoWords());
  trap.applies = drain;
  return t.take();
}

std::vector<Fact> zoneFacts(const plan::FloorZone& zone) {
  using plan::FloorZone;
  auto t = factTable<FloorZone>(zone.id);
  t.choice("kind", ThingFacts::tr("Floor"), &FloorZone::kind, floorKindWords());
  t.text("name", ThingFacts::tr("Name"), &FloorZone::name);
  t.choice("part", ThingFacts::tr("Part of"), &FloorZone::part, housePartWords());
  Fact& oversite =
      t.choice("oversite", ThingFacts::tr("Under it"), &FloorZone::oversite, oversiteWords());
  oversite.says = ThingFacts::tr("Ground cover under a suspended floor");
  oversite.applies = [id = zone.id](const plan::Job& job) {
    const auto thing = plan::thingOf(job, id);
    const auto* z = thing ? std::get_if<FloorZone>(&*thing) : nullptr;
    return z != nullptr && (plan::isSuspended(z->kind) || z->oversite != plan::Oversite::unknown);
  };
  t.choice("underfloor_heating", ThingFacts::tr("Heated"), &FloorZone::underfloor_heating,
           noYesWords())
      .says = ThingFacts::tr("Underfloor heating");
  const QString house = ThingFacts::tr("The house's is taken.");
  t.whole("year_built", ThingFacts::tr("Year"), &FloorZone::year_built).unknown = house;
  Fact& level = t.measure("level_m", ThingFacts::tr("Level"), &FloorZone::level_m, FactKind::level);
  level.says = ThingFacts::tr("Level of this floor above the house's (below: with a minus)");
  level.unknown = ThingFacts::tr("Taken to be level with the house's.");
  t.measure("slab_m", ThingFacts::tr("Slab"), &FloorZone::slab_m).unknown = house;
  t.choice("barrier", ThingFacts::tr("Barrier"), &FloorZone::barrier, barrierWords()).says =
      ThingFacts::tr("Radon barrier of this floor");
  addPoints(t, zone.id, "outline_m", &FloorZone::outline_m).label = ThingFacts::tr("Corners");
  return t.take();
}

std::vector<Fact> radiatorFacts(const plan::Job& job, const plan::Radiator& radiator) {
  using plan::Radiator;
  auto t = factTable<Radiator>(radiator.id);
  t.text("name", ThingFacts::tr("Name"), &Radiator::name);
  if (radiator.on) {
    addOnWall(
        t, job, [](auto& r) -> auto& { return *r.on; });
    t.measure("width_m", ThingFacts::tr("Wide"), &Radiator::width_m);
  } else {
    addPoints(t, radiator.id, "line_m", &Radiator::line_m);
  }
  return t.take();
}

std::vector<Fact> risingWallFacts(const plan::RisingWall& wall) {
  using plan::RisingWall;
  const std::string id = wall.id;
  auto t = factTable<RisingWall>(id);
  t.measure("thickness_m", ThingFacts::tr("Thickness"), &RisingWall::thickness_m);
  Fact gaps;
  gaps.key = "gaps";
  gaps.label = ThingFacts::tr("Gaps");
  gaps.says = ThingFacts::tr("Known gaps, along the wall from its start");
  gaps.kind = FactKind::list;
  gaps.example = gapsExample();
  gaps.get = [id](const plan::Job& job) -> FactValue {
    const auto thing = plan::thingOf(job, id);
    const auto* mine = thing ? std::get_if<RisingWall>(&*thing) : nullptr;
    if (mine == nullptr || mine->gaps.empty()) return {};
    return listShown(mine->gaps, job);
  };
  gaps.set = [id](const plan::Job& job, const FactValue& v) -> base::Result<plan::Job> {
    auto thing = plan::thingOf(job, id);
    auto* mine = thing ? std::get_if<RisingWall>(&*thing) : nullptr;
    if (mine == nullptr) return job;
    auto read = listRead<plan::Gap>(v, job, mine->gaps);
    if (!read) return read.problems();
    mine->gaps = std::move(read).value();
    return plan::replaceThing(job, *thing);
  };
  t.add(std::move(gaps));
  addPoints(t, id, "line_m", &RisingWall::line_m);
  return t.take();
}

std::vector<Fact> innerDoorFacts(const plan::Job& job, const plan::InnerDoor& door) {
  using plan::InnerDoor;
  auto t = factTable<InnerDoor>(door.id);
  QStringList names;
  std::vector<std::string> ids;
  for (const plan::InnerWall& wall : job.plan.inner_walls) {
    names << namedIn(wall.id, job);
    ids.push_back(wall.id);
  }
  Fact& wall = t.add(
      "wall", ThingFacts::tr("In wall"), FactKind::choice,
      [ids](const InnerDoor& d) -> FactValue {
        const auto it = std::find(ids.begin(), ids.end(), d.wall);
        return it == ids.end() ? -1 : static_cast<int>(it - ids.begin());
      },
      [ids](InnerDoor& d, const FactValue& v) {
        const int* chosen = std::get_if<int>(&v);
        if (chosen != nullptr && *chosen >= 0) d.wall = ids[static_cast<std::size_t>(*chosen)];
      });
  wall.choices = names;
  t.measure("offset_m", ThingFacts::tr("From start"), &InnerDoor::offset_m).says =
      ThingFacts::tr("Along the inner wall from its start");
  t.measure("width_m", ThingFacts::tr("Wide"), &InnerDoor::width_m);
  return t.take();
}

std::vector<Fact> dimensionFacts(const plan::Job& job, const plan::Dimension& dimension) {
  using plan::Dimension;
  auto t = factTable<Dimension>(dimension.id);
  std::vector<std::string> ids;
  for (const plan::Ring& ring : job.plan.rings) {
    for (const plan::Wall& wall : ring.walls) ids.push_back(wall.id);
  }
  for (const std::string& id : thingIds(job)) ids.push_back(id);
  QStringList names;
  for (const std::string& id : ids) names << namedIn(id, job);
  const auto thing = [&](std::string key, const QString& label,
                         plan::DimensionEnd Dimension::*end) {
    Fact& fact = t.add(
        std::move(key), label, FactKind::choice,
        [ids, end](const Dimension& d) -> FactValue {
          const auto it = std::find(ids.begin(), ids.end(), (d.*end).thing);
          return it == ids.end() ? -1 : static_cast<int>(it - ids.begin());
        },
        [ids, end](Dimension& d, const FactValue& v) {
          const int* chosen = std::get_if<int>(&v);
          if (chosen != nullptr && *chosen >= 0) {
            (d.*end).thing = ids[static_cast<std::size_t>(*chosen)];
          }
        });
    fact.choices = names;
  };
  thing("from/thing", ThingFacts::tr("From"), &Dimension::from);
  t.choice(
      "from/end", ThingFacts::tr("Its"), [](auto& d) -> auto& { return d.from.end; }, endWords());
  thing("to/thing", ThingFacts::tr("To"), &Dimension::to);
  t.choice(
      "to/end", ThingFacts::tr("Its"), [](auto& d) -> auto& { return d.to.end; }, endWords());
  t.measure("off_m", ThingFacts::tr("Aside"), &Dimension::off_m, FactKind::level);
  return t.take();
}

}  // namespace sumpwright::stages
