#include "stages/ThingFacts.h"

#include "stages/ThingFactParts.h"

namespace sumpwright::stages {

namespace {

template <class... L>
struct EachKind : L... {
  using L::operator()...;
};
template <class... L>
EachKind(L...) -> EachKind<L...>;

template <class T>
void addName(FactTable<T>& t) {
  t.text("name", ThingFacts::tr("Name"), &T::name);
}

std::vector<Fact> roomFacts(const plan::Room& room) {
  auto t = factTable<plan::Room>(room.id);
  addName(t);
  t.choice("use", ThingFacts::tr("Use"), &plan::Room::use, roomUseWords());
  t.choice("old_tiles", ThingFacts::tr("Old tiles"), &plan::Room::old_tiles, yesNoWords()).says =
      ThingFacts::tr("Thin tiles or black glue that may be older than 2000: may hold asbestos");
  addPoints(t, room.id, "outline_m", &plan::Room::outline_m).label = ThingFacts::tr("Corners");
  return t.take();
}

std::vector<Fact> innerWallFacts(const plan::InnerWall& wall) {
  auto t = factTable<plan::InnerWall>(wall.id);
  t.choice("below_floor", ThingFacts::tr("Below"), &plan::InnerWall::below_floor, belowFloorWords())
      .says = ThingFacts::tr("What carries it below the floor");
  t.measure("thickness_m", ThingFacts::tr("Thickness"), &plan::InnerWall::thickness_m);
  addPoints(t, wall.id, "line_m", &plan::InnerWall::line_m);
  return t.take();
}

std::vector<Fact> pipeFacts(const plan::HeatingPipe& pipe) {
  auto t = factTable<plan::HeatingPipe>(pipe.id);
  addName(t);
  addPoints(t, pipe.id, "line_m", &plan::HeatingPipe::line_m);
  return t.take();
}

std::vector<Fact> fittingFacts(const plan::Fitting& fitting) {
  auto t = factTable<plan::Fitting>(fitting.id);
  addName(t);
  t.choice("kind", ThingFacts::tr("Kind"), &plan::Fitting::kind, fittingKindWords());
  addPoint(t);
  return t.take();
}

std::vector<Fact> supplyFacts(const plan::Supply& supply) {
  auto t = factTable<plan::Supply>(supply.id);
  addName(t);
  t.choice("kind", ThingFacts::tr("Kind"), &plan::Supply::kind, supplyKindWords());
  t.text("circuit", ThingFacts::tr("Circuit"), &plan::Supply::circuit).says =
      ThingFacts::tr("The circuit, as the consumer unit calls it");
  t.choice("rcd_shared", ThingFacts::tr("RCD shared"), &plan::Supply::rcd_shared, yesNoWords())
      .says = ThingFacts::tr("Whether its residual-current device protects other circuits too");
  addPoint(t);
  return t.take();
}

std::vector<Fact> outsideFacts(const plan::OutsideThing& thing) {
  auto t = factTable<plan::OutsideThing>(thing.id);
  addName(t);
  t.choice("kind", ThingFacts::tr("Kind"), &plan::OutsideThing::kind, outsideKindWords());
  addPoints(t, thing.id, "points_m", &plan::OutsideThing::points_m);
  return t.take();
}

std::vector<Fact> testHoleFacts(const plan::TestHole& hole) {
  auto t = factTable<plan::TestHole>(hole.id);
  addName(t);
  addPoint(t);
  return t.take();
}

std::vector<Fact> featureFacts(const plan::Job& job, const plan::WallFeature& feature) {
  auto t = factTable<plan::WallFeature>(feature.id);
  addName(t);
  t.choice("kind", ThingFacts::tr("Kind"), &plan::WallFeature::kind, featureKindWords());
  addOnWall(
      t, job, [](auto& f) -> auto& { return f.at; });
  t.measure("width_m", ThingFacts::tr("Wide"), &plan::WallFeature::width_m);
  return t.take();
}

std::vector<Fact> applianceFacts(const plan::Appliance& appliance) {
  auto t = factTable<plan::Appliance>(appliance.id);
  t.text("name", ThingFacts::tr("What it is"), &plan::Appliance::name);
  t.text("where", ThingFacts::tr("Where"), &plan::Appliance::where);
  t.choice("open_flued", ThingFacts::tr("Open flue"), &plan::Appliance::open_flued, noYesWords())
      .says = ThingFacts::tr("Takes its air from the room");
  return t.take();
}

}  // namespace

WallChoices wallChoices(const plan::Job& job) {
  WallChoices walls;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    const plan::Ring& ring = job.plan.rings[r];
    const std::size_t open = ring.closed || ring.corners.empty() ? 0 : 1;
    for (std::size_t e = 0; e + open < ring.corners.size(); ++e) {
      walls.names << wallTitle(job, static_cast<int>(r), static_cast<int>(e));
      walls.at.emplace_back(static_cast<int>(r), static_cast<int>(e));
    }
  }
  return walls;
}

int wallNumber(const WallChoices& walls, const plan::OnWall& at) {
  for (std::size_t i = 0; i < walls.at.size(); ++i) {
    if (walls.at[i] == std::pair(at.ring, at.edge)) return static_cast<int>(i);
  }
  return -1;
}

std::vector<Fact> thingFacts(const plan::Job& job, const plan::Thing& thing) {
  return std::visit(EachKind{[&](const plan::Opening& o) { return openingFacts(job, o); },
                             [&](const plan::Service& s) { return serviceFacts(job, s); },
                             [](const plan::Room& r) { return roomFacts(r); },
                             [](const plan::FloorZone& z) { return zoneFacts(z); },
                             [](const plan::InnerWall& w) { return innerWallFacts(w); },
                             [&](const plan::InnerDoor& d) { return innerDoorFacts(job, d); },
                             [](const plan::RisingWall& w) { return risingWallFacts(w); },
                             [&](const plan::Radiator& r) { return radiatorFacts(job, r); },
                             [](const plan::HeatingPipe& p) { return pipeFacts(p); },
                             [](const plan::Supply& s) { return supplyFacts(s); },
                             [](const plan::Fitting& f) { return fittingFacts(f); },
                             [](const plan::OutsideThing& o) { return outsideFacts(o); },
                             [](const plan::TestHole& t) { return testHoleFacts(t); },
                             [&](const plan::WallFeature& f) { return featureFacts(job, f); },
                             [&](const plan::Dimension& d) { return dimensionFacts(job, d); },
                             [](const plan::Appliance& a) { return applianceFacts(a); }},
                    thing);
}

}  // namespace sumpwright::stages
