#include "stages/ThingText.h"

#include <QCoreApplication>

#include "perimeter/Perimeter.h"
#include "stages/SurveyText.h"

namespace sumpwright::stages {

namespace {

struct ThingText {
  Q_DECLARE_TR_FUNCTIONS(ThingText)
};

template <class... F>
struct Overloaded : F... {
  using F::operator()...;
};
template <class... F>
Overloaded(F...) -> Overloaded<F...>;

QStringList openingNames() {
  return {ThingText::tr("Window"),      ThingText::tr("Door"), ThingText::tr("Glazed door"),
          ThingText::tr("Garage door"), ThingText::tr("Vent"), ThingText::tr("Flue terminal")};
}
QStringList opensNames() {
  return {ThingText::tr("Opens"), ThingText::tr("Fixed pane"), ThingText::tr("Always open"),
          ThingText::tr("Air intake")};
}
QStringList serviceNames() {
  return {ThingText::tr("Gas"),  ThingText::tr("Electricity"), ThingText::tr("Telecom"),
          ThingText::tr("Oil"),  ThingText::tr("Water"),       ThingText::tr("Drain"),
          ThingText::tr("Waste")};
}
QStringList roomNames() {
  return {ThingText::tr("Room"),    ThingText::tr("Living room"), ThingText::tr("Bedroom"),
          ThingText::tr("Kitchen"), ThingText::tr("Dining room"), ThingText::tr("Hall"),
          ThingText::tr("Stairs"),  ThingText::tr("Bathroom"),    ThingText::tr("Shower"),
          ThingText::tr("WC"),      ThingText::tr("Utility"),     ThingText::tr("Store"),
          ThingText::tr("Garage"),  ThingText::tr("Office")};
}
QStringList floorNames() {
  return {ThingText::tr("Floor not known"), ThingText::tr("Ground-bearing slab"),
          ThingText::tr("Suspended concrete"), ThingText::tr("Suspended timber")};
}
QStringList belowNames() {
  return {ThingText::tr("Not known what carries it"), ThingText::tr("On its own footing"),
          ThingText::tr("On the slab")};
}
QStringList supplyNames() {
  return {ThingText::tr("Socket"), ThingText::tr("Fused spur"), ThingText::tr("Consumer unit")};
}
QStringList fittingNames() {
  return {ThingText::tr("Sink"), ThingText::tr("Bath"),  ThingText::tr("Shower"),
          ThingText::tr("WC"),   ThingText::tr("Basin"), ThingText::tr("Appliance")};
}
QStringList outsideNames() {
  return {ThingText::tr("Path"),
          ThingText::tr("Gully"),
          ThingText::tr("Inspection chamber"),
          ThingText::tr("Tank"),
          ThingText::tr("Air conditioner"),
          ThingText::tr("Deck"),
          ThingText::tr("Neighbour's opening"),
          ThingText::tr("Boundary"),
          ThingText::tr("Soakaway"),
          ThingText::tr("Septic tank"),
          ThingText::tr("Overhead line")};
}
QStringList featureNames() {
  return {ThingText::tr("Pier"),         ThingText::tr("Chimney breast"),
          ThingText::tr("Beam bearing"), ThingText::tr("Movement joint"),
          ThingText::tr("Weep hole"),    ThingText::tr("Stepped footing")};
}

template <class E>
QString named(const QStringList& names, E value) {
  const int index = static_cast<int>(value);
  return index >= 0 && index < names.size() ? names[index] : ThingText::tr("Thing");
}

std::optional<plan::OnWall> standsOn(const plan::Thing& thing) {
  return std::visit(Overloaded{[](const plan::Opening& o) { return std::optional(o.at); },
                               [](const plan::Service& s) { return s.entry; },
                               [](const plan::Radiator& r) { return r.on; },
                               [](const plan::WallFeature& f) { return std::optional(f.at); },
                               [](const auto&) { return std::optional<plan::OnWall>(); }},
                    thing);
}

QString letter(const plan::Job& job, int ring, std::size_t corner) {
  std::size_t first = 0;
  for (int r = 0; r < ring; ++r)
    first += job.plan.rings[static_cast<std::size_t>(r)].corners.size();
  return QString::fromStdString(perimeter::letterOfCorner(first + corner));
}

template <class E>
ThingChoice choice(const QString& label, const QStringList& names, E value) {
  return {label, names, static_cast<int>(value)};
}

}  // namespace

QString thingKind(const plan::Thing& thing) {
  return std::visit(
      Overloaded{[](const plan::Opening& o) { return named(openingNames(), o.kind); },
                 [](const plan::Service& s) { return named(serviceNames(), s.kind); },
                 [](const plan::Room& r) { return named(roomNames(), r.use); },
                 [](const plan::FloorZone& z) { return named(floorNames(), z.kind); },
                 [](const plan::InnerWall&) { return ThingText::tr("Inner wall"); },
                 [](const plan::InnerDoor&) { return ThingText::tr("Inner door"); },
                 [](const plan::RisingWall&) { return ThingText::tr("Rising wall"); },
                 [](const plan::Radiator&) { return ThingText::tr("Radiator"); },
                 [](const plan::HeatingPipe&) { return ThingText::tr("Heating pipe"); },
                 [](const plan::Supply& s) { return named(supplyNames(), s.kind); },
                 [](const plan::Fitting& f) { return named(fittingNames(), f.kind); },
                 [](const plan::OutsideThing& o) { return named(outsideNames(), o.kind); },
                 [](const plan::TestHole&) { return ThingText::tr("Test hole"); },
                 [](const plan::WallFeature& f) { return named(featureNames(), f.kind); },
                 [](const plan::Dimension&) { return ThingText::tr("Dimension"); },
                 [](const plan::Appliance&) { return ThingText::tr("Appliance with a flue"); }},
      thing);
}

QString thingTitle(const plan::Thing& thing) {
  const std::string name = std::visit(
      [](const auto& t) {
        if constexpr (requires { t.name; }) return t.name;
        return std::string();
      },
      thing);
  return name.empty() ? thingKind(thing) : QString::fromStdString(name);
}

QString wallCorners(const plan::Job& job, int ring, int edge) {
  const plan::Ring& r = job.plan.rings[static_cast<std::size_t>(ring)];
  const auto from = static_cast<std::size_t>(edge);
  const std::size_t to = r.closed ? (from + 1) % r.corners.size() : from + 1;
  return ThingText::tr("%1 to %2").arg(letter(job, ring, from), letter(job, ring, to));
}

QString thingWhere(const plan::Thing& thing, const plan::Job& job) {
  const auto at = standsOn(thing);
  if (!at || at->ring < 0 || static_cast<std::size_t>(at->ring) >= job.plan.rings.size()) return {};
  const auto& corners = job.plan.rings[static_cast<std::size_t>(at->ring)].corners;
  if (at->edge < 0 || static_cast<std::size_t>(at->edge) >= corners.size()) return {};
  return ThingText::tr("%1, %2 from %3")
      .arg(wallCorners(job, at->ring, at->edge), tapedLength(at->offset_m, job),
           letter(job, at->ring, static_cast<std::size_t>(at->edge)));
}

std::vector<std::string> thingIds(const plan::Job& job) {
  std::vector<std::string> ids;
  const auto all = [&](const auto& list) {
    for (const auto& thing : list) ids.push_back(thing.id);
  };
  const plan::Plan& p = job.plan;
  all(p.openings);
  all(p.services);
  all(p.rooms);
  all(p.floor_zones);
  all(p.inner_walls);
  all(p.inner_doors);
  all(p.rising_walls);
  all(p.radiators);
  all(p.heating_pipes);
  all(p.supplies);
  all(p.fittings);
  all(p.outside);
  all(p.test_holes);
  all(p.wall_features);
  all(p.dimensions);
  all(job.house.appliances);
  return ids;
}

std::optional<ThingChoice> choiceOf(const plan::Thing& thing) {
  using Choice = std::optional<ThingChoice>;
  return std::visit(
      Overloaded{[](const plan::Opening& o) {
                   return Choice(choice(ThingText::tr("Opens"), opensNames(), o.opens));
                 },
                 [](const plan::Room& r) {
                   return Choice(choice(ThingText::tr("Use"), roomNames(), r.use));
                 },
                 [](const plan::FloorZone& z) {
                   return Choice(choice(ThingText::tr("Floor"), floorNames(), z.kind));
                 },
                 [](const plan::InnerWall& w) {
                   return Choice(choice(ThingText::tr("Below"), belowNames(), w.below_floor));
                 },
                 [](const plan::Service& s) {
                   return Choice(choice(ThingText::tr("Kind"), serviceNames(), s.kind));
                 },
                 [](const plan::Supply& s) {
                   return Choice(choice(ThingText::tr("Kind"), supplyNames(), s.kind));
                 },
                 [](const plan::Fitting& f) {
                   return Choice(choice(ThingText::tr("Kind"), fittingNames(), f.kind));
                 },
                 [](const plan::OutsideThing& o) {
                   return Choice(choice(ThingText::tr("Kind"), outsideNames(), o.kind));
                 },
                 [](const plan::WallFeature& f) {
                   return Choice(choice(ThingText::tr("Kind"), featureNames(), f.kind));
                 },
                 [](const auto&) { return Choice(); }},
      thing);
}

plan::Thing withChoice(plan::Thing thing, int chosen) {
  std::visit(
      Overloaded{[&](plan::Opening& o) { o.opens = static_cast<plan::Opens>(chosen); },
                 [&](plan::Room& r) { r.use = static_cast<plan::RoomUse>(chosen); },
                 [&](plan::FloorZone& z) { z.kind = static_cast<plan::FloorKind>(chosen); },
                 [&](plan::InnerWall& w) { w.below_floor = static_cast<plan::BelowFloor>(chosen); },
                 [&](plan::Service& s) { s.kind = static_cast<plan::ServiceKind>(chosen); },
                 [&](plan::Supply& s) { s.kind = static_cast<plan::SupplyKind>(chosen); },
                 [&](plan::Fitting& f) { f.kind = static_cast<plan::FittingKind>(chosen); },
                 [&](plan::OutsideThing& o) { o.kind = static_cast<plan::OutsideKind>(chosen); },
                 [&](plan::WallFeature& f) { f.kind = static_cast<plan::WallFeatureKind>(chosen); },
                 [](auto&) {}},
      thing);
  return thing;
}

}  // namespace sumpwright::stages
