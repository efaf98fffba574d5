#include <algorithm>
#include <numbers>

#include "plan/Blank.h"
#include "plan/KindNames.h"
#include "rules/Judge.h"

namespace sumpwright::rules {

namespace {

using base::Message;
using perimeter::Perimeter;
using plan::Job;

/// "the kitchen window" for a named thing; else what it is and, where it sits on a wall, which.
Message label(const std::string& name, const std::string& kind, const Message* wall = nullptr) {
  if (!name.empty()) return Message("thing.named", {base::text("name", name)});
  Message what("thing." + kind);
  if (wall == nullptr) return what;
  return Message("thing.on-wall", {base::phrase("thing", what), base::phrase("wall", *wall)});
}

const perimeter::Edge& edgeOf(const Perimeter& p, const plan::OnWall& at) {
  return p.edges(at.ring)[static_cast<std::size_t>(at.edge)];
}

ThingKind kindOf(const plan::Opening& o) {
  using plan::OpeningKind;
  using plan::Opens;
  if (o.kind == OpeningKind::flue_terminal) return ThingKind::flue_terminal;
  if (o.opens == Opens::intake) return ThingKind::intake;
  const bool fixed = o.opens == Opens::fixed;
  switch (o.kind) {
    case OpeningKind::glazed_door:
      return ThingKind::glazed_door;
    case OpeningKind::air_vent:
      return ThingKind::air_vent;
    case OpeningKind::door:
    case OpeningKind::garage_door:
      return ThingKind::door;  // a leaf leaks at its edges even when it is never opened
    case OpeningKind::soffit_vent:
      return ThingKind::soffit_vent;
    case OpeningKind::roof_window:
      return ThingKind::roof_window;
    default:
      return fixed ? ThingKind::fixed_window : ThingKind::window;
  }
}

bool isDoor(const plan::Opening& o) {
  return o.kind == plan::OpeningKind::door || o.kind == plan::OpeningKind::glazed_door ||
         o.kind == plan::OpeningKind::garage_door;
}

/// A door is kept clear over its whole width, a window or vent beside its jambs (its sill may stand
/// well above the hole). A flue terminal has no jambs.
Thing jambsOf(const plan::Opening& o, const Perimeter& p, const Message& opening) {
  const double first = edgeOf(p, o.at).start_m + o.at.offset_m;
  const double last = first + o.width_m;
  Thing t;
  t.id = o.id;
  t.label = Message("thing.jamb", {base::phrase("opening", opening)});
  if (isDoor(o)) {
    t.kind = ThingKind::door_width;
    t.ranges = {{o.at.ring, first, last}};
  } else {
    t.kind = ThingKind::jamb;
    t.ranges = {{o.at.ring, first, first}, {o.at.ring, last, last}};
  }
  return t;
}

bool isUpThere(const plan::Opening& o) {
  return o.storey != 0 || o.kind == plan::OpeningKind::soffit_vent ||
         o.kind == plan::OpeningKind::roof_window;
}

/// Both heights or none: with only one known the other end could be anywhere.
void takeHeights(const Job& job, const Perimeter& p, const plan::Opening& o, Thing& t) {
  const auto eaves = p.wall(edgeOf(p, o.at)).eaves_m;
  if (o.kind == plan::OpeningKind::soffit_vent && !o.sill_m && !o.head_m) {
    const std::optional<double> at = eaves ? eaves : job.house.eaves_m;
    if (at) t.low_m = t.high_m = *at;
  }
  if (!o.sill_m || !o.head_m) return;
  t.low_m = *o.sill_m;
  t.high_m = *o.head_m;
}

/// Upstairs no rooms are drawn: any window there may be a bedroom's.
bool mayBeBedroom(const Job& job, const Perimeter& p, const plan::Opening& o) {
  if (kindOf(o) != ThingKind::window) return false;
  if (o.storey != 0) return true;
  const perimeter::Edge& edge = edgeOf(p, o.at);
  const double from = edge.start_m + o.at.offset_m;
  for (const perimeter::Span& span : perimeter::roomsBehind(edge, job.plan.rooms, 0.0)) {
    if (!(span.from_m < from + o.width_m && span.to_m > from)) continue;
    for (const plan::Room& room : job.plan.rooms) {
      if (room.id == span.id && room.use == plan::RoomUse::bedroom) return true;
    }
  }
  return false;
}

void addOpenings(const Job& job, const Perimeter& p, std::vector<Thing>& out,
                 std::vector<Thing>& later) {
  for (const plan::Opening& o : job.plan.openings) {
    const Message wall = p.wallLabel(edgeOf(p, o.at));
    const Message what = label(o.name, std::string(plan::nameOf(o.kind)), &wall);
    Thing t;
    t.id = o.id;
    t.kind = kindOf(o);
    t.label = what;
    const geometry::Segment face = p.faceOf(o.at, o.width_m);
    t.shapes = {{face.a, face.b}};
    takeHeights(job, p, o, t);
    std::vector<Thing>& list = isUpThere(o) ? later : out;
    list.push_back(t);
    if (mayBeBedroom(job, p, o)) {
      t.kind = ThingKind::bedroom_window;
      list.push_back(std::move(t));
    }
    if (!isUpThere(o) && o.kind != plan::OpeningKind::flue_terminal) {
      out.push_back(jambsOf(o, p, what));
    }
  }
}

ThingKind kindOf(plan::ServiceKind kind) {
  return static_cast<ThingKind>(static_cast<int>(ThingKind::gas) + static_cast<int>(kind));
}
static_assert(static_cast<int>(ThingKind::waste) - static_cast<int>(ThingKind::gas) ==
              static_cast<int>(plan::ServiceKind::waste));

/// No overhead line hangs lower over the finished floor (own figure: over the heads of all who walk
/// there). How high it does hang, and how near it comes to the wall, its operator tells.
constexpr double kLowestWire_m = 2.5;

/// Where a supply comes to the wall through the air there is a line a riser and a ladder keep off.
void addWire(const plan::Service& s, Thing t, std::vector<Thing>& out) {
  const bool wire =
      s.kind == plan::ServiceKind::electricity || s.kind == plan::ServiceKind::telecom;
  if (!wire || s.run != plan::RunKnown::overhead || t.shapes.empty()) return;
  t.kind = ThingKind::overhead_line;
  t.low_m = kLowestWire_m;
  out.push_back(std::move(t));
}

void addServices(const Job& job, const Perimeter& p, std::vector<Thing>& out) {
  for (const plan::Service& s : job.plan.services) {
    Thing t;
    t.id = s.id;
    t.kind = kindOf(s.kind);
    t.label = label(s.name, std::string(plan::nameOf(s.kind)) + "-service");
    t.located = s.located && !plan::isBlank(s.locating_record);
    if (s.entry) {
      const perimeter::Edge& e = edgeOf(p, *s.entry);
      t.shapes.push_back({e.line().at(s.entry->offset_m)});
      if (s.run == plan::RunKnown::unknown) t.street_from = p.placeOf(*s.entry);
    }
    if (s.run == plan::RunKnown::drawn && !s.run_m.empty()) t.shapes.push_back(s.run_m);
    t.nowhere = t.shapes.empty();
    out.push_back(t);
    addWire(s, std::move(t), out);
  }
}

/// The inner face is where heat is: a radiator on an outside wall hangs the wall's thickness in.
geometry::Polyline radiatorLine(const plan::Radiator& r, const Perimeter& p) {
  if (!r.on) return r.line_m;
  const perimeter::Edge& e = edgeOf(p, *r.on);
  const geometry::Vec in = e.thickness_m * e.inward;
  return {e.line().at(r.on->offset_m) + in, e.line().at(r.on->offset_m + r.width_m) + in};
}

void addShape(std::vector<Thing>& out, const std::string& id, ThingKind kind, Message what,
              geometry::Polyline shape, bool area = false) {
  if (shape.empty()) return;
  Thing t;
  t.id = id;
  t.kind = kind;
  t.label = std::move(what);
  t.shapes = {std::move(shape)};
  t.area = area;
  out.push_back(std::move(t));
}

ThingKind kindOf(plan::FittingKind kind) {
  switch (kind) {
    case plan::FittingKind::sink:
      return ThingKind::sink;
    case plan::FittingKind::wc:
      return ThingKind::wc_fitting;
    case plan::FittingKind::bath:
    case plan::FittingKind::shower:
      return ThingKind::bath_fitting;
    default:
      return ThingKind::other_fitting;
  }
}

/// Heating stands from the underside of the screed up (common practice): of the lowest floor, of a
/// screed of 65 mm where none is stated (common practice).
double lowestHeating_m(const Job& job) {
  double floor = 0.0;
  for (const plan::FloorZone& zone : job.plan.floor_zones) {
    floor = std::min(floor, zone.level_m.value_or(0.0));
  }
  return floor - job.house.screed_m.value_or(0.065);
}

void addInside(const Job& job, const Perimeter& p, std::vector<Thing>& out) {
  for (const plan::Radiator& r : job.plan.radiators) {
    addShape(out, r.id, ThingKind::radiator, label(r.name, "radiator"), radiatorLine(r, p));
  }
  for (const plan::HeatingPipe& h : job.plan.heating_pipes) {
    addShape(out, h.id, ThingKind::heating_pipe, label(h.name, "heating_pipe"), h.line_m);
  }
  for (Thing& thing : out) {
    const bool heats = thing.kind == ThingKind::radiator || thing.kind == ThingKind::heating_pipe;
    if (heats) thing.low_m = lowestHeating_m(job);
  }
  for (const plan::Fitting& f : job.plan.fittings) {
    addShape(out, f.id, kindOf(f.kind), label(f.name, std::string(plan::nameOf(f.kind))), {f.at_m});
  }
}

ThingKind kindOf(plan::OutsideKind kind) {
  switch (kind) {
    case plan::OutsideKind::gully:
      return ThingKind::gully;
    case plan::OutsideKind::inspection_chamber:
      return ThingKind::inspection_chamber;
    case plan::OutsideKind::tank:
      return ThingKind::tank;
    case plan::OutsideKind::air_conditioner:
      return ThingKind::air_conditioner;
    case plan::OutsideKind::neighbour_opening:
      return ThingKind::neighbour_opening;
    case plan::OutsideKind::boundary:
      return ThingKind::boundary;
    case plan::OutsideKind::soakaway:
      return ThingKind::soakaway;
    case plan::OutsideKind::septic_tank:
      return ThingKind::septic_tank;
    case plan::OutsideKind::path:
      return ThingKind::path;
    case plan::OutsideKind::steps:
      return ThingKind::steps;
    case plan::OutsideKind::sitting_place:
      return ThingKind::sitting_place;
    case plan::OutsideKind::deck:
      return ThingKind::deck;
    case plan::OutsideKind::carport:
      return ThingKind::carport;
    case plan::OutsideKind::overhead_line:
      break;
  }
  return ThingKind::overhead_line;
}

/// How far up somebody who sits or stands there breathes, or what is covered traps air; above
/// finished floor. A neighbour's opening and all else of unknown height goes up for ever.
double topOf(ThingKind kind) {
  constexpr double kHead_m = 2.0;     // own figure: over the head of a person who stands
  constexpr double kDeck_m = 0.5;     // own figure: a deck at or a step above floor level
  constexpr double kCarport_m = 3.0;  // own figure: roof of a carport
  switch (kind) {
    case ThingKind::sitting_place:
      return kHead_m;
    case ThingKind::deck:
      return kDeck_m;
    case ThingKind::carport:
      return kCarport_m;
    default:
      return std::numeric_limits<double>::infinity();
  }
}

void addOutside(const Job& job, std::vector<Thing>& out) {
  for (const plan::OutsideThing& o : job.plan.outside) {
    const ThingKind kind = kindOf(o.kind);
    const bool line = kind == ThingKind::boundary || kind == ThingKind::neighbour_opening ||
                      kind == ThingKind::path || kind == ThingKind::overhead_line;
    addShape(out, o.id, kind, label(o.name, std::string(plan::nameOf(o.kind))), o.points_m,
             !line && o.points_m.size() >= 3);
    if (out.empty() || out.back().id != o.id) continue;
    out.back().high_m = topOf(kind);
    if (kind == ThingKind::overhead_line) out.back().low_m = kLowestWire_m;
  }
}

/// Where the fill is cut at the party wall, what lies beyond is another floor.
void addPartyLines(const Perimeter& p, std::vector<Thing>& out) {
  for (int ring = 0; ring < p.ringCount(); ++ring) {
    for (const perimeter::Edge& e : p.edges(ring)) {
      const plan::Wall& wall = p.wall(e);
      if (wall.kind != plan::WallKind::party || wall.party_below == plan::PartyBelow::cut) continue;
      const geometry::Segment face = e.face();
      addShape(out, wall.id, ThingKind::party_line,
               Message("thing.party_line", {base::phrase("wall", p.wallLabel(e))}),
               {face.a, face.b});
    }
  }
}

void addWallFeatures(const Job& job, const Perimeter& p, std::vector<Thing>& out) {
  for (const plan::WallFeature& f : job.plan.wall_features) {
    const Message wall = p.wallLabel(edgeOf(p, f.at));
    const double first = edgeOf(p, f.at).start_m + f.at.offset_m;
    Thing t;
    t.id = f.id;
    t.kind = ThingKind::wall_feature;
    t.label = label(f.name, std::string(plan::nameOf(f.kind)), &wall);
    t.ranges = {{f.at.ring, first, first + f.width_m}};
    out.push_back(std::move(t));
  }
}

void addCorners(const Perimeter& p, double corner_turn_rad, std::vector<Thing>& out) {
  for (int ring = 0; ring < p.ringCount(); ++ring) {
    for (const perimeter::Edge& e : p.edges(ring)) {
      if (!(std::abs(e.turn_rad) > corner_turn_rad)) continue;
      const std::string letter = p.cornerLetter(ring, e.edge);
      Thing t;
      t.id = "corner." + letter;
      t.kind = ThingKind::corner;
      t.label = Message("thing.corner", {base::text("letter", letter)});
      t.ranges = {{ring, e.start_m, e.start_m}};
      out.push_back(std::move(t));
    }
  }
}

std::vector<std::vector<int>> thingsOfRules(const Site& site) {
  std::vector<std::vector<int>> result;
  for (const Rule& rule : site.sheet.rules) {
    auto& list = result.emplace_back();
    for (std::size_t i = 0; i < site.things.size(); ++i) {
      const bool meant = std::find(rule.things.begin(), rule.things.end(), site.things[i].kind) !=
                         rule.things.end();
      if (meant) list.push_back(static_cast<int>(i));
    }
  }
  return result;
}

bool atHole(Part part) { return part == Part::hole || part == Part::dig || part == Part::void_; }

bool atOutlet(Part part) {
  return part == Part::outlet || part == Part::fan || part == Part::riser;
}

}  // namespace

std::optional<double> halfWidth_m(const Rule& rule, const Site& site) {
  std::optional<double> half;
  const auto take = [&](double width) { half = std::max(half.value_or(0.0), width / 2.0); };
  for (const Part part : rule.applies_to) {
    if (atHole(part)) take(site.core_m);
    if (atOutlet(part) && site.outlet == plan::OutletMode::low && !site.run) take(site.pipe_od_m);
  }
  if (half && rule.from == MeasuredFrom::centre) half = 0.0;
  return half;
}

bool isAboutRun(const Rule& rule) {
  return std::any_of(rule.applies_to.begin(), rule.applies_to.end(), atOutlet);
}

bool partlyUnjudged(const Rule& rule, const Site& site) {
  return site.outlet == plan::OutletMode::riser && !site.run && isAboutRun(rule);
}

/// Strings round the house, to the things of the rules that measure along them.
void stretchStrings(Site& site) {
  for (const Rule& rule : site.sheet.rules) {
    if (!rule.enabled || rule.path != PathKind::string) continue;
    if (!site.strings) {
      site.strings = std::make_shared<const perimeter::StringPaths>(site.perimeter);
    }
    for (const int i : site.things_of_rule[static_cast<std::size_t>(site.indexOf(rule))]) {
      Thing& thing = site.things[static_cast<std::size_t>(i)];
      if (thing.string || thing.shapes.empty()) continue;
      thing.string = std::make_shared<const perimeter::StringTarget>(
          site.strings->targetOf(thing.shapes, thing.area));
    }
  }
}

Site makeSite(perimeter::Perimeter perimeter, const plan::Job& job, const RuleSheet& sheet,
              plan::OutletMode outlet, double core_m) {
  Site site;
  site.perimeter = std::move(perimeter);
  site.job = job;
  site.sheet = sheet;
  site.outlet = outlet;
  site.core_m = core_m;
  site.pipe_od_m = job.design.pipe_od_mm.value_or(sheet.default_pipe_od_mm.value) / 1000.0;
  addOpenings(job, site.perimeter, site.things, site.later);
  addServices(job, site.perimeter, site.things);
  addInside(job, site.perimeter, site.things);
  addOutside(job, site.things);
  addPartyLines(site.perimeter, site.things);
  addWallFeatures(job, site.perimeter, site.things);
  addCorners(site.perimeter, sheet.corner_turn_deg.value * std::numbers::pi / 180.0, site.things);
  site.things_of_rule = thingsOfRules(site);
  stretchStrings(site);
  for (int ring = 0; ring < site.perimeter.ringCount(); ++ring) {
    auto& rooms = site.rooms_behind.emplace_back();
    auto& zones = site.zones_behind.emplace_back();
    for (const perimeter::Edge& e : site.perimeter.edges(ring)) {
      rooms.push_back(perimeter::roomsBehind(e, job.plan.rooms, core_m));
      zones.push_back(perimeter::zonesBehind(e, job.plan.floor_zones));
    }
  }
  return site;
}

}  // namespace sumpwright::rules
