#include "support/SampledTwin.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "build/DrillSection.h"

namespace sumpwright::support {

using geometry::Point;
using geometry::Vec;
using plan::Looked;
using plan::Opening;
using plan::OpeningKind;
using plan::Opens;
using rules::Part;
using rules::Rule;
using rules::RuleKind;
using rules::ThingKind;
using rules::Weight;

namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();

// ---- geometry of its own ----

double length(Vec v) { return std::sqrt(v.x * v.x + v.y * v.y); }

double toSegment(Point p, Point a, Point b) {
  const Vec d = b - a;
  const double squared = d.x * d.x + d.y * d.y;
  double t = squared > 0 ? ((p.x - a.x) * d.x + (p.y - a.y) * d.y) / squared : 0.0;
  t = std::min(1.0, std::max(0.0, t));
  return length(p - Point{a.x + t * d.x, a.y + t * d.y});
}

double side(Point a, Point b, Point p) {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

bool cross(Point a, Point b, Point c, Point d) {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

double segmentToSegment(Point a, Point b, Point c, Point d) {
  if (cross(a, b, c, d)) return 0.0;
  return std::min(std::min(toSegment(a, c, d), toSegment(b, c, d)),
                  std::min(toSegment(c, a, b), toSegment(d, a, b)));
}

/// Winding number by the sum of the angles under which the sides are seen.
bool in(const std::vector<Point>& polygon, Point p) {
  double turned = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec a = polygon[i] - p;
    const Vec b = polygon[(i + 1) % polygon.size()] - p;
    turned += std::atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
  }
  return std::abs(turned) > std::numbers::pi;
}

double toPoints(Point p, const std::vector<Point>& points, bool closed) {
  double least = points.size() == 1 ? length(p - points[0]) : kFar;
  for (std::size_t i = 1; i < points.size(); ++i) {
    least = std::min(least, toSegment(p, points[i - 1], points[i]));
  }
  if (closed) least = std::min(least, toSegment(p, points.back(), points.front()));
  return closed && in(points, p) ? 0.0 : least;
}

double roundTheRing(double a, double b, double ring) {
  const double way = std::fmod(std::abs(a - b), ring);
  return std::min(way, ring - way);
}

// ---- what a thing is called in a sheet ----

bool speaksOf(const Rule& rule, ThingKind kind) {
  return std::find(rule.things.begin(), rule.things.end(), kind) != rule.things.end();
}

ThingKind sheetKind(const Opening& o) {
  if (o.kind == OpeningKind::flue_terminal) return ThingKind::flue_terminal;
  if (o.opens == Opens::intake) return ThingKind::intake;
  if (o.kind == OpeningKind::glazed_door) return ThingKind::glazed_door;
  if (o.kind == OpeningKind::air_vent) return ThingKind::air_vent;
  if (o.kind != OpeningKind::window) return ThingKind::door;  // a fixed leaf is a leaf still
  return o.opens == Opens::fixed ? ThingKind::fixed_window : ThingKind::window;
}

bool isDoor(const Opening& o) {
  return o.kind == OpeningKind::door || o.kind == OpeningKind::glazed_door ||
         o.kind == OpeningKind::garage_door;
}

ThingKind sheetKind(plan::ServiceKind kind) {
  static const std::map<plan::ServiceKind, ThingKind> kKinds{
      {plan::ServiceKind::gas, ThingKind::gas},
      {plan::ServiceKind::electricity, ThingKind::electricity},
      {plan::ServiceKind::telecom, ThingKind::telecom},
      {plan::ServiceKind::oil, ThingKind::oil},
      {plan::ServiceKind::water, ThingKind::water},
      {plan::ServiceKind::drain, ThingKind::drain},
      {plan::ServiceKind::waste, ThingKind::waste}};
  return kKinds.at(kind);
}

std::optional<ThingKind> sheetKind(plan::OutsideKind kind) {
  static const std::map<plan::OutsideKind, ThingKind> kKinds{
      {plan::OutsideKind::gully, ThingKind::gully},
      {plan::OutsideKind::inspection_chamber, ThingKind::inspection_chamber},
      {plan::OutsideKind::tank, ThingKind::tank},
      {plan::OutsideKind::air_conditioner, ThingKind::air_conditioner},
      {plan::OutsideKind::neighbour_opening, ThingKind::neighbour_opening},
      {plan::OutsideKind::boundary, ThingKind::boundary},
      {plan::OutsideKind::soakaway, ThingKind::soakaway},
      {plan::OutsideKind::septic_tank, ThingKind::septic_tank},
      {plan::OutsideKind::deck, ThingKind::deck},
      {plan::OutsideKind::carport, ThingKind::carport},
      {plan::OutsideKind::sitting_place, ThingKind::sitting_place}};
  const auto found = kKinds.find(kind);
  return found == kKinds.end() ? std::nullopt : std::optional(found->second);
}

ThingKind sheetKind(plan::FittingKind kind) {
  switch (kind) {
    case plan::FittingKind::sink:
      return ThingKind::sink;
    case plan::FittingKind::wc:
      return ThingKind::wc_fitting;
    case plan::FittingKind::bath:
    case plan::FittingKind::shower:
      return ThingKind::bath_fitting;
    case plan::FittingKind::basin:
    case plan::FittingKind::appliance:
      break;
  }
  return ThingKind::other_fitting;
}

bool isArea(plan::OutsideKind kind) {
  return kind == plan::OutsideKind::inspection_chamber || kind == plan::OutsideKind::tank ||
         kind == plan::OutsideKind::soakaway || kind == plan::OutsideKind::septic_tank ||
         kind == plan::OutsideKind::deck || kind == plan::OutsideKind::carport ||
         kind == plan::OutsideKind::sitting_place;
}

/// A, B, ... Z, AA, ... over the corners of all rings.
std::string letter(const plan::Plan& plan, std::size_t ring, std::size_t corner) {
  std::string name = "A";
  std::size_t n = corner;
  for (std::size_t i = 0; i < ring; ++i) n += plan.rings[i].corners.size();
  for (; n > 0; --n) {
    std::size_t i = name.size();
    while (i > 0 && name[i - 1] == 'Z') name[--i] = 'A';
    if (i == 0) {
      name.insert(name.begin(), 'A');
    } else {
      ++name[i - 1];
    }
  }
  return name;
}

// Written as in job files and sheets.
const char* elevationName(plan::Elevation e) {
  static const char* const kNames[] = {"unmarked", "front", "rear", "gable"};
  return kNames[static_cast<int>(e)];
}
const char* foundationName(plan::Foundation f) {
  static const char* const kNames[] = {"unknown",     "strip",          "rubble",   "raft_edge",
                                       "ground_beam", "insulated_raft", "retaining"};
  return kNames[static_cast<int>(f)];
}
const char* groundName(plan::OutsideGround g) {
  static const char* const kNames[] = {"unknown", "own", "shared", "neighbour", "public"};
  return kNames[static_cast<int>(g)];
}
const char* useName(plan::RoomUse u) {
  static const char* const kNames[] = {"unknown", "living", "bedroom",  "kitchen", "dining",
                                       "hall",    "stairs", "bathroom", "shower",  "wc",
                                       "utility", "store",  "garage",   "office"};
  return kNames[static_cast<int>(u)];
}

bool listed(const Rule& rule, const std::string& value) {
  return std::find(rule.values.begin(), rule.values.end(), value) != rule.values.end();
}

Looked lookedFor(const plan::LookedFor& l, const std::string& kind) {
  static const std::map<std::string, Looked plan::LookedFor::*> kKinds{
      {"openings", &plan::LookedFor::openings},
      {"gas", &plan::LookedFor::gas},
      {"electricity", &plan::LookedFor::electricity},
      {"water", &plan::LookedFor::water},
      {"telecom", &plan::LookedFor::telecom},
      {"oil", &plan::LookedFor::oil},
      {"drain", &plan::LookedFor::drain},
      {"flue_terminal", &plan::LookedFor::flue_terminal},
      {"heating", &plan::LookedFor::heating}};
  return l.*kKinds.at(kind);
}

void keepLeast(std::map<std::string, double>& found, const std::string& id, double distance) {
  const auto [entry, isNew] = found.emplace(id, distance);
  if (!isNew) entry->second = std::min(entry->second, distance);
}

}  // namespace

std::string toText(const TwinFindings& findings) {
  std::string text;
  for (const TwinFinding& f : findings) {
    text += (text.empty() ? "" : ", ") + f.rule + "/" + f.thing + "/" + rules::weightName(f.weight);
  }
  return "{" + text + "}";
}

SampledTwin::SampledTwin(const plan::Job& job, const rules::RuleSheet& sheet,
                         plan::OutletMode outlet, double core_m)
    : m_job(job),
      m_sheet(sheet),
      m_outlet(outlet),
      m_site(std::make_shared<const rules::Site>(
          rules::makeSite(perimeter::Perimeter::of(job).value(), job, sheet, outlet, core_m))),
      m_core_m(core_m) {}

// ---- where ----

const plan::Ring& SampledTwin::ringOf(int ring) const {
  return m_job.plan.rings.at(static_cast<std::size_t>(ring));
}

double SampledTwin::edgeLength(int ring, std::size_t edge) const {
  const auto& corners = ringOf(ring).corners;
  return length(corners[(edge + 1) % corners.size()] - corners[edge]);
}

double SampledTwin::edgeStart(int ring, std::size_t edge) const {
  double s = 0.0;
  for (std::size_t i = 0; i < edge; ++i) s += edgeLength(ring, i);
  return s;
}

double SampledTwin::length_m(int ring) const {
  return edgeStart(ring, ringOf(ring).corners.size());
}

/// The wall's own, else the house's, else 0.35 m (DOMAIN: Behind the wall).
double SampledTwin::thickness(int ring, std::size_t edge) const {
  const auto& own = ringOf(ring).walls[edge].thickness_m;
  if (own) return *own;
  return m_job.house.wall_thickness_m ? *m_job.house.wall_thickness_m : 0.35;
}

SampledTwin::Here SampledTwin::find(int ring, double s) const {
  const auto& corners = ringOf(ring).corners;
  double u = std::fmod(s, length_m(ring));
  if (u < 0) u += length_m(ring);
  std::size_t edge = 0;
  while (edge + 1 < corners.size() && u >= edgeLength(ring, edge)) u -= edgeLength(ring, edge++);
  Here here;
  here.edge = edge;
  here.u = u;
  const Vec d = corners[(edge + 1) % corners.size()] - corners[edge];
  here.along = (1.0 / length(d)) * d;
  here.inward = {-here.along.y, here.along.x};
  here.point = corners[edge] + u * here.along;
  here.depth = thickness(ring, edge) + 0.2;
  return here;
}

Point SampledTwin::pointOn(const plan::OnWall& at, double further, double inwards) const {
  const auto& corners = ringOf(at.ring).corners;
  const auto edge = static_cast<std::size_t>(at.edge);
  const Vec d = corners[(edge + 1) % corners.size()] - corners[edge];
  const Vec along = (1.0 / length(d)) * d;
  return corners[edge] + (at.offset_m + further) * along + inwards * Vec{-along.y, along.x};
}

// ---- half a hole or pipe ----

std::optional<double> SampledTwin::half(const Rule& rule) const {
  std::optional<double> widest;
  for (const Part part : rule.applies_to) {
    const bool hole = part == Part::hole || part == Part::dig || part == Part::void_;
    const bool outlet = part == Part::outlet || part == Part::fan || part == Part::riser;
    const double pipe_m =
        m_job.design.pipe_od_mm.value_or(m_sheet.default_pipe_od_mm.value) / 1000.0;
    if (hole) widest = std::max(widest.value_or(0.0), m_core_m / 2);
    if (outlet && m_outlet == plan::OutletMode::low) {
      widest = std::max(widest.value_or(0.0), pipe_m / 2);
    }
  }
  if (widest && rule.from == rules::MeasuredFrom::centre) return 0.0;
  return widest;
}

bool SampledTwin::waitsForRiser(const Rule& rule) const {
  return m_outlet == plan::OutletMode::riser &&
         std::any_of(rule.applies_to.begin(), rule.applies_to.end(), [](Part p) {
           return p == Part::outlet || p == Part::fan || p == Part::riser;
         });
}

// ---- distances ----

double SampledTwin::toOpening(const Opening& o, const Here& here) const {
  return toSegment(here.point, pointOn(o.at, 0.0, 0.0), pointOn(o.at, o.width_m, 0.0));
}

bool SampledTwin::inHouse(Point p, double deeper_m) const {
  for (std::size_t r = 0; r < m_job.plan.rings.size(); ++r) {
    const auto& corners = m_job.plan.rings[r].corners;
    if (in(corners, p) != (r == 0)) return false;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      if (toSegment(p, corners[i], corners[(i + 1) % corners.size()]) <= deeper_m) return false;
    }
  }
  return true;
}

bool SampledTwin::sees(Point a, Point b) const {
  std::vector<double> marks{0.0, 1.0};
  for (const plan::Ring& ring : m_job.plan.rings) {
    for (std::size_t i = 0; i < ring.corners.size(); ++i) {
      const Point c = ring.corners[i];
      const Point d = ring.corners[(i + 1) % ring.corners.size()];
      const double apart = side(c, d, a) - side(c, d, b);
      if (std::abs(apart) > 1e-12) marks.push_back(std::clamp(side(c, d, a) / apart, 0.0, 1.0));
    }
  }
  std::sort(marks.begin(), marks.end());
  for (std::size_t i = 1; i < marks.size(); ++i) {
    const double t = 0.5 * (marks[i - 1] + marks[i]);
    if (inHouse({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)}, 1e-7)) return false;
  }
  return true;
}

double SampledTwin::lastLeg(Point from, const std::vector<Point>& points, bool closed) const {
  if (closed && in(points, from)) return 0.0;
  double least = kFar;
  const std::size_t sides = points.size() == 1 ? 1 : points.size() - (closed ? 0 : 1);
  for (std::size_t i = 0; i < sides; ++i) {
    const Point a = points[i];
    const Point b = points[(i + 1) % points.size()];
    const Vec d = b - a;
    const double squared = std::max(d.x * d.x + d.y * d.y, 1e-18);
    std::vector<double> tries{((from.x - a.x) * d.x + (from.y - a.y) * d.y) / squared};
    bool indoors = false;
    for (int k = 0; k <= 200; ++k) {
      tries.push_back(k / 200.0);
      indoors = indoors || inHouse(a + (k / 200.0) * d, 1e-3);
    }
    for (const double t : tries) {
      const Point q = a + std::clamp(t, 0.0, 1.0) * d;
      if (length(q - from) < least && (indoors || sees(from, q))) least = length(q - from);
    }
  }
  return least;
}

double SampledTwin::alongString(Point from, const std::vector<Point>& points, bool closed) const {
  std::vector<Point> nodes{from};
  for (const plan::Ring& ring : m_job.plan.rings) {
    nodes.insert(nodes.end(), ring.corners.begin(), ring.corners.end());
  }
  std::vector<double> far(nodes.size(), kFar);
  std::vector<bool> done(nodes.size(), false);
  far[0] = 0.0;
  double least = kFar;
  for (std::size_t round = 0; round < nodes.size(); ++round) {
    std::size_t next = 0;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      if (!done[i] && (done[next] || far[i] < far[next])) next = i;
    }
    if (done[next] || far[next] >= least) break;
    done[next] = true;
    least = std::min(least, far[next] + lastLeg(nodes[next], points, closed));
    for (std::size_t i = 0; i < nodes.size(); ++i) {
      const double way = far[next] + length(nodes[i] - nodes[next]);
      if (way < far[i] && sees(nodes[next], nodes[i])) far[i] = way;
    }
  }
  return least;
}

void SampledTwin::addClearances(const Rule& rule, const Here& here,
                                std::map<std::string, double>& found) const {
  const bool string = rule.path == rules::PathKind::string;
  const auto toShape = [&](const std::vector<Point>& points, bool closed) {
    return string ? alongString(here.point, points, closed) : toPoints(here.point, points, closed);
  };
  for (const Opening& o : m_job.plan.openings) {
    if (o.storey != 0 || isOfRoof(o.kind) || !speaksOf(rule, sheetKind(o))) continue;
    keepLeast(found, o.id,
              string ? toShape({pointOn(o.at, 0.0, 0.0), pointOn(o.at, o.width_m, 0.0)}, false)
                     : toOpening(o, here));
  }
  for (const plan::Service& s : m_job.plan.services) {
    if (!speaksOf(rule, sheetKind(s.kind))) continue;
    if (s.entry) keepLeast(found, s.id, toShape({pointOn(*s.entry, 0.0, 0.0)}, false));
    if (s.run == plan::RunKnown::drawn) keepLeast(found, s.id, toShape(s.run_m, false));
  }
  addPartyLines(rule, here, found);
  for (const plan::OutsideThing& t : m_job.plan.outside) {
    const auto kind = sheetKind(t.kind);
    if (!kind || !speaksOf(rule, *kind)) continue;
    keepLeast(found, t.id, toShape(t.points_m, isArea(t.kind) && t.points_m.size() > 2));
  }
}

void SampledTwin::addPartyLines(const Rule& rule, const Here& here,
                                std::map<std::string, double>& found) const {
  if (!speaksOf(rule, ThingKind::party_line)) return;
  for (const plan::Ring& ring : m_job.plan.rings) {
    for (std::size_t i = 0; i < ring.corners.size(); ++i) {
      const plan::Wall& wall = ring.walls[i];
      if (wall.kind != plan::WallKind::party || wall.party_below == plan::PartyBelow::cut) continue;
      const std::vector<Point> face{ring.corners[i], ring.corners[(i + 1) % ring.corners.size()]};
      keepLeast(found, wall.id, toPoints(here.point, face, false));
    }
  }
}

void SampledTwin::addAlong(const Rule& rule, int ring, double s,
                           std::map<std::string, double>& found) const {
  const double round = length_m(ring);
  for (const Opening& o : m_job.plan.openings) {
    if (o.storey != 0 || o.at.ring != ring || o.kind == OpeningKind::flue_terminal) continue;
    if (o.kind == OpeningKind::soffit_vent || o.kind == OpeningKind::roof_window) continue;
    const double first = edgeStart(ring, static_cast<std::size_t>(o.at.edge)) + o.at.offset_m;
    const double last = first + o.width_m;
    double least = std::min(roundTheRing(s, first, round), roundTheRing(s, last, round));
    if (isDoor(o) && s >= first && s <= last) least = 0.0;
    if (speaksOf(rule, isDoor(o) ? ThingKind::door_width : ThingKind::jamb)) {
      keepLeast(found, o.id, least);
    }
  }
  for (const plan::WallFeature& f : m_job.plan.wall_features) {
    if (f.at.ring != ring || !speaksOf(rule, ThingKind::wall_feature)) continue;
    const double first = edgeStart(ring, static_cast<std::size_t>(f.at.edge)) + f.at.offset_m;
    const double last = first + f.width_m;
    const bool upon = s >= first && s <= last;
    keepLeast(found, f.id,
              upon ? 0.0 : std::min(roundTheRing(s, first, round), roundTheRing(s, last, round)));
  }
  if (!speaksOf(rule, ThingKind::corner)) return;
  const auto& corners = ringOf(ring).corners;
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec before = corners[i] - corners[(i + n - 1) % n];
    const Vec after = corners[(i + 1) % n] - corners[i];
    const double turn = std::acos(std::clamp(
        (before.x * after.x + before.y * after.y) / (length(before) * length(after)), -1.0, 1.0));
    if (turn * 180.0 / std::numbers::pi <= m_sheet.corner_turn_deg.value) continue;
    keepLeast(found, "corner." + letter(m_job.plan, static_cast<std::size_t>(ring), i),
              roundTheRing(s, edgeStart(ring, i), round));
  }
}

void SampledTwin::addHeating(const Rule& rule, const Here& here,
                             std::map<std::string, double>& found) const {
  const Point end = here.point + here.depth * here.inward;
  const auto toDrill = [&](const std::string& id, const std::vector<Point>& line) {
    for (std::size_t i = 1; i < line.size(); ++i) {
      keepLeast(found, id, segmentToSegment(here.point, end, line[i - 1], line[i]));
    }
  };
  for (const plan::Radiator& r : m_job.plan.radiators) {
    if (!speaksOf(rule, ThingKind::radiator)) continue;
    if (!r.on) {
      toDrill(r.id, r.line_m);
      continue;
    }
    const double in = thickness(r.on->ring, static_cast<std::size_t>(r.on->edge));
    toDrill(r.id, {pointOn(*r.on, 0.0, in), pointOn(*r.on, r.width_m, in)});
  }
  for (const plan::HeatingPipe& p : m_job.plan.heating_pipes) {
    if (speaksOf(rule, ThingKind::heating_pipe)) toDrill(p.id, p.line_m);
  }
}

void SampledTwin::addFittings(const Rule& rule, int ring, double s, int rays,
                              std::map<std::string, double>& found) const {
  const std::set<std::string> behind = roomsBehind(ring, s, rays);
  for (const plan::Fitting& f : m_job.plan.fittings) {
    if (!speaksOf(rule, sheetKind(f.kind))) continue;
    const auto room = std::find_if(
        m_job.plan.rooms.begin(), m_job.plan.rooms.end(),
        [&](const plan::Room& r) { return toPoints(f.at_m, r.outline_m, true) <= 0.001; });
    if (room == m_job.plan.rooms.end() || !behind.contains(room->id)) continue;
    keepLeast(found, f.id, length(find(ring, s).point - f.at_m));
  }
}

std::map<std::string, double> SampledTwin::distances(const Rule& rule, int ring, double s,
                                                     int rays) const {
  std::map<std::string, double> found;
  const auto off = half(rule);
  if (!off) return found;
  const Here here = find(ring, s);
  if (rule.kind == RuleKind::clearance) addClearances(rule, here, found);
  if (rule.kind == RuleKind::along_wall) addAlong(rule, ring, s, found);
  if (rule.kind == RuleKind::drill_line) addHeating(rule, here, found);
  if (rule.kind == RuleKind::fitting_behind) addFittings(rule, ring, s, rays, found);
  for (auto& [id, distance] : found) distance -= *off;
  return found;
}

// ---- behind the wall ----

std::set<std::string> SampledTwin::roomsBehind(int ring, double s, int rays) const {
  const Here here = find(ring, s);
  const double half = m_core_m / 2;
  std::vector<double> offsets;
  for (int i = 0; i < rays; ++i) offsets.push_back(-half + m_core_m * (i + 0.5) / rays);
  offsets.push_back(-half + 1e-9);
  offsets.push_back(half - 1e-9);
  for (const plan::Room& room : m_job.plan.rooms) {
    for (const Point p : room.outline_m) {
      const double u = (p.x - here.point.x) * here.along.x + (p.y - here.point.y) * here.along.y;
      for (const double beside : {u - 1e-9, u + 1e-9}) {
        if (std::abs(beside) < half) offsets.push_back(beside);
      }
    }
  }
  std::set<std::string> behind;
  for (const double offset : offsets) {
    const Point from = here.point + offset * here.along;
    const Point to = from + here.depth * here.inward;
    // Every depth at which the ray may go in or out of anything; between two of them nothing
    // changes, so the first piece that lies in a room tells which is entered first.
    std::vector<double> depths{0.0, here.depth};
    for (const plan::Room& room : m_job.plan.rooms) {
      const auto& o = room.outline_m;
      for (std::size_t i = 0; i < o.size(); ++i) {
        const double a = side(from, to, o[i]);
        const double b = side(from, to, o[(i + 1) % o.size()]);
        if ((a < 0) == (b < 0)) continue;
        const Vec d = o[(i + 1) % o.size()] - o[i];
        const Point at = o[i] + (a / (a - b)) * d;
        depths.push_back((at.x - from.x) * here.inward.x + (at.y - from.y) * here.inward.y);
      }
    }
    std::sort(depths.begin(), depths.end());
    bool entered = false;
    for (std::size_t i = 1; i < depths.size() && !entered; ++i) {
      if (depths[i - 1] < 0.0 || depths[i] > here.depth || depths[i] - depths[i - 1] < 1e-12)
        continue;
      const Point middle = from + (0.5 * (depths[i - 1] + depths[i])) * here.inward;
      for (const plan::Room& room : m_job.plan.rooms) {
        if (!in(room.outline_m, middle)) continue;
        behind.insert(room.id);
        entered = true;
      }
    }
  }
  return behind;
}

// ---- runs nobody drew ----

bool SampledTwin::mayRunHere(const plan::Service& service, int ring, double s) const {
  const auto isFront = [&](int r, std::size_t e) {
    return ringOf(r).walls[e].elevation == plan::Elevation::front;
  };
  if (isFront(ring, find(ring, s).edge)) return true;
  if (ring != service.entry->ring) return false;
  const std::size_t n = ringOf(ring).corners.size();
  const auto edge = static_cast<std::size_t>(service.entry->edge);
  if (isFront(ring, edge)) return false;
  // Walk from the entry wall by wall, either way, to the first front wall.
  double ahead = edgeLength(ring, edge) - service.entry->offset_m;
  double behind = service.entry->offset_m;
  std::size_t steps = 1;
  for (; steps < n && !isFront(ring, (edge + steps) % n); ++steps) {
    ahead += edgeLength(ring, (edge + steps) % n);
  }
  if (steps == n) return true;  // no front wall
  for (std::size_t k = 1; k < n && !isFront(ring, (edge + n - k) % n); ++k) {
    behind += edgeLength(ring, (edge + n - k) % n);
  }
  const double round = length_m(ring);
  double further = std::fmod(s - edgeStart(ring, edge) - service.entry->offset_m + round, round);
  if (further < 0) further += round;
  const bool sameWay = std::abs(ahead - behind) < 1e-6;
  if ((ahead < behind || sameWay) && further <= ahead) return true;
  return (behind < ahead || sameWay) && round - further <= behind;
}

// ---- walls and floors ----

std::string SampledTwin::wallObjection(const Rule& rule, const plan::Wall& wall) const {
  std::string value;
  switch (rule.attribute) {
    case rules::WallAttribute::kind:
      value = wall.kind == plan::WallKind::party ? "party" : "outside";
      break;
    case rules::WallAttribute::elevation:
      value = elevationName(wall.elevation);
      break;
    case rules::WallAttribute::foundation:
      value = foundationName(wall.foundation);
      break;
    case rules::WallAttribute::ground:
      value = groundName(wall.ground);
      break;
    case rules::WallAttribute::free_depth_m:
      if (!wall.free_depth_m) return rule.unknown_gates ? "unknown" : "";
      return *wall.free_depth_m < rule.needed_m->value ? "objected" : "";
  }
  if (listed(rule, value)) return "objected";
  return value == "unknown" && rule.unknown_gates ? "unknown" : "";
}

void SampledTwin::addFloor(const Rule& rule, int ring, double s, TwinFindings& found) const {
  const Here here = find(ring, s);
  const Point end = here.point + here.depth * here.inward;
  const Weight objects =
      rule.severity == rules::Severity::binding ? Weight::binding : Weight::advisory;
  bool any = false;
  for (const plan::FloorZone& zone : m_job.plan.floor_zones) {
    if (!in(zone.outline_m, end)) continue;
    any = true;
    std::string what;
    switch (zone.kind) {
      case plan::FloorKind::unknown:
        what = "unknown";
        break;
      case plan::FloorKind::ground_bearing_slab:
        what = "ground_bearing_slab";
        break;
      default:
        what = zone.oversite == plan::Oversite::sealed    ? "sealed_oversite"
               : zone.oversite == plan::Oversite::unknown ? "unknown"
                                                          : "suspended";
    }
    if (what == "unknown" && rule.unknown_gates) {
      found.insert({rule.id, zone.id, Weight::unknown});
    } else if (what != "unknown" && !listed(rule, what)) {
      found.insert({rule.id, zone.id, objects});
    }
  }
  if (!any && rule.unknown_gates) found.insert({rule.id, "", Weight::unknown});
}

// ---- the verdict ----

void SampledTwin::addUnknownRuns(const Rule& rule, int ring, double s, TwinFindings& found) const {
  if (rule.kind != RuleKind::clearance) return;
  for (const plan::Service& service : m_job.plan.services) {
    const bool unknown = service.entry && service.run == plan::RunKnown::unknown;
    if (unknown && speaksOf(rule, sheetKind(service.kind)) && mayRunHere(service, ring, s)) {
      found.insert({rule.id, service.id, Weight::unknown});
    }
  }
}

void SampledTwin::addGates(const Rule& rule, TwinFindings& found) const {
  for (const rules::Gate& gate : m_sheet.gates) {
    if (gate.rule == rule.id &&
        lookedFor(m_job.looked_for, gate.looked_for) == Looked::not_looked) {
      found.insert({rule.id, "looked_for." + gate.looked_for, Weight::unknown});
    }
  }
}

// ---- between walls ----

bool SampledTwin::mayMeet(const Rule& rule) const {
  if (rule.kind == RuleKind::wall) {
    for (const plan::Ring& ring : m_job.plan.rings) {
      for (const plan::Wall& wall : ring.walls) {
        if (!wallObjection(rule, wall).empty()) return true;
      }
    }
    return false;
  }
  if (rule.kind != RuleKind::clearance) return true;
  for (const rules::Gate& gate : m_sheet.gates) {
    if (gate.rule == rule.id) return true;
  }
  for (const Opening& o : m_job.plan.openings) {
    const bool vent = o.kind == OpeningKind::soffit_vent;
    const bool roof = o.kind == OpeningKind::roof_window;
    const ThingKind kind = o.opens == Opens::intake ? ThingKind::intake
                           : vent                   ? ThingKind::soffit_vent
                           : roof                   ? ThingKind::roof_window
                                                    : sheetKind(o);
    if (speaksOf(rule, kind)) return true;
  }
  for (const plan::Service& s : m_job.plan.services) {
    if (speaksOf(rule, sheetKind(s.kind))) return true;
  }
  for (const plan::Ring& ring : m_job.plan.rings) {
    for (const plan::Wall& wall : ring.walls) {
      const bool open =
          wall.kind == plan::WallKind::party && wall.party_below != plan::PartyBelow::cut;
      if (open && speaksOf(rule, ThingKind::party_line)) return true;
    }
  }
  return std::any_of(m_job.plan.outside.begin(), m_job.plan.outside.end(), [&](const auto& t) {
    const auto kind = sheetKind(t.kind);
    return kind && speaksOf(rule, *kind);
  });
}

bool SampledTwin::meetsWall(const Here& here, int ring, Point from, Vec way, double most) const {
  for (std::size_t r = 0; r < m_job.plan.rings.size(); ++r) {
    const auto& corners = m_job.plan.rings[r].corners;
    for (std::size_t i = 0; i < corners.size(); ++i) {
      if (static_cast<int>(r) == ring && i == here.edge) continue;
      const Point a = corners[i];
      const Vec side = corners[(i + 1) % corners.size()] - a;
      const double across = way.x * side.y - way.y * side.x;
      if (std::abs(across) < 1e-12) continue;
      const Vec to = a - from;
      const double along = (to.x * side.y - to.y * side.x) / across;
      const double on = (to.x * way.y - to.y * way.x) / across;
      if (along > 0.0 && along < most && on > 0.0 && on < 1.0) return true;
    }
  }
  return false;
}

bool SampledTwin::isBetweenWalls(const Rule& rule, int ring, double s) const {
  if (ring > 0) return true;
  const Here here = find(ring, s);
  const Vec out{-here.inward.x, -here.inward.y};
  const Vec back{-here.along.x, -here.along.y};
  const auto& free = ringOf(ring).walls[here.edge].free_depth_m;
  if (free && *free < rule.needed_m->value) return true;
  if (meetsWall(here, ring, here.point, out, rule.needed_m->value)) return true;
  const Point off = here.point + 0.05 * out;
  const int sides = 1 + (meetsWall(here, ring, here.point, out, 3.0) ? 1 : 0) +
                    (meetsWall(here, ring, off, back, 3.0) ? 1 : 0) +
                    (meetsWall(here, ring, off, here.along, 3.0) ? 1 : 0);
  return sides >= 3;
}

void SampledTwin::judge(const Rule& rule, int ring, double s, int rays, TwinFindings& found) const {
  const Weight objects =
      rule.severity == rules::Severity::binding ? Weight::binding : Weight::advisory;
  const auto& walls = ringOf(ring).walls;
  if (rule.kind == RuleKind::discharge) {
    const bool judged =
        rule.measure == rules::DischargeMeasure::enclosed && m_outlet == plan::OutletMode::low;
    if (judged && isBetweenWalls(rule, ring, s)) found.insert({rule.id, "", objects});
    return;
  }
  // A rule of which nothing can be judged yet says only that; in part, it says that as well.
  const bool nothing = !half(rule);
  const bool waits = waitsForRiser(rule);
  if ((waits && mayMeet(rule)) || (nothing && !waits)) {
    found.insert({rule.id, "", Weight::unknown});
  }
  addUnknownRuns(rule, ring, s, found);
  addGates(rule, found);
  if (nothing) return;
  switch (rule.kind) {
    case RuleKind::clearance:
    case RuleKind::along_wall:
    case RuleKind::drill_line:
    case RuleKind::fitting_behind:
      for (const auto& [id, distance] : distances(rule, ring, s, rays)) {
        if (distance < rule.needed_m->value) found.insert({rule.id, id, objects});
      }
      break;
    case RuleKind::wall: {
      const plan::Wall& wall = walls[find(ring, s).edge];
      const std::string objection = wallObjection(rule, wall);
      if (objection == "objected") found.insert({rule.id, wall.id, objects});
      if (objection == "unknown") found.insert({rule.id, wall.id, Weight::unknown});
      break;
    }
    case RuleKind::room_behind:
      for (const std::string& id : roomsBehind(ring, s, rays)) {
        for (const plan::Room& room : m_job.plan.rooms) {
          if (room.id == id && listed(rule, useName(room.use)))
            found.insert({rule.id, id, objects});
        }
      }
      break;
    case RuleKind::floor_behind:
      addFloor(rule, ring, s, found);
      break;
    case RuleKind::section:
      addHole(rule, ring, s, found);
      break;
    case RuleKind::supply:
      break;  // off on every sheet: CableAlongTest
    case RuleKind::suction:
      break;  // speaks of clean stone only, which no random house has: SumpPerAreaTest
    case RuleKind::discharge:
      break;
  }
}

/// Whether some binding rule of the sheet says what keeps all holes away.
bool SampledTwin::saysNoCore(build::NoCore why, int ring, double s) const {
  const plan::Wall& wall = ringOf(ring).walls[find(ring, s).edge];
  for (const Rule& rule : m_sheet.rules) {
    if (!rule.enabled || rule.severity != rules::Severity::binding || !half(rule)) continue;
    const bool of_kind = why == build::NoCore::party || why == build::NoCore::dwarf;
    const bool of_foundation = why == build::NoCore::foundation;
    if (rule.kind == RuleKind::wall &&
        ((of_kind && rule.attribute == rules::WallAttribute::kind) ||
         (of_foundation && rule.attribute == rules::WallAttribute::foundation)) &&
        wallObjection(rule, wall) == "objected") {
      return true;
    }
    if (rule.kind != RuleKind::floor_behind || of_kind || of_foundation) continue;
    TwinFindings floor;
    addFloor(rule, ring, s, floor);
    for (const auto& one : floor) {
      if (why != build::NoCore::deep && !one.thing.empty()) return true;
    }
  }
  return false;
}

/// What the rule itself says of why none is cored, and whether a hole is judged all the same. Why
/// none is cored is what core/build says of the place.
bool SampledTwin::addNoCore(const Rule& rule, int ring, double s, TwinFindings& found) const {
  const auto all = build::noCores(*m_site, {ring, s});
  const std::size_t before = found.size();
  for (const build::NoCore why : all) {
    if (saysNoCore(why, ring, s)) continue;
    const bool floor = why == build::NoCore::timber || why == build::NoCore::concrete;
    const plan::FloorZone* zone = build::floorBehind(*m_site, {ring, s});
    const bool open = floor && zone->oversite == plan::Oversite::unknown;
    found.insert({rule.id, ringOf(ring).walls[find(ring, s).edge].id,
                  open                                        ? Weight::unknown
                  : rule.severity == rules::Severity::binding ? Weight::binding
                                                              : Weight::advisory});
  }
  return found.size() == before && std::all_of(all.begin(), all.end(), [](build::NoCore why) {
           return why == build::NoCore::foundation;
         });
}

/// The section itself is what core/build says of a place; where it holds is judged here.
void SampledTwin::addHole(const Rule& rule, int ring, double s, TwinFindings& found) const {
  const perimeter::Place place{ring, s};
  if (!addNoCore(rule, ring, s, found)) return;
  const build::DrillSection section = build::drillSection(build::buildUpAt(*m_site, place), {});
  const std::string id = ringOf(ring).walls[find(ring, s).edge].id;
  if (section.fit == build::Fit::fits_if_footing && rule.unknown_gates) {
    found.insert({rule.id, id, Weight::unknown});
  }
  const plan::Wall& wall = ringOf(ring).walls[find(ring, s).edge];
  if (section.fit == build::Fit::fits && wall.foundation == plan::Foundation::rubble) {
    found.insert({rule.id, id, Weight::advisory});
  }
  if (section.fit != build::Fit::never) return;
  static const std::set<std::string> kNoMatter{
      "section.assumed.leaves",   "section.assumed.one-leaf", "section.assumed.blinding",
      "section.assumed.hardcore", "section.assumed.barrier",  "section.assumed.barrel"};
  bool assumed = false;
  for (const build::Assumption& one : section.up.assumed) {
    assumed = assumed || !kNoMatter.contains(one.what.id);
  }
  const bool binding = rule.severity == rules::Severity::binding;
  found.insert({rule.id, id,
                assumed   ? Weight::unknown
                : binding ? Weight::binding
                          : Weight::advisory});
}

TwinFindings SampledTwin::at(int ring, double s, int rays) const {
  TwinFindings found;
  for (const Rule& rule : m_sheet.rules) {
    if (rule.enabled && rule.severity != rules::Severity::preference) {
      judge(rule, ring, s, rays, found);
    }
  }
  if (m_outlet == plan::OutletMode::riser) found.insert({"discharge", "", Weight::unknown});
  return found;
}

}  // namespace sumpwright::support
