// Makes the lines of a house: outside faces and rooms that may be wired, with what lies on them.

#include <algorithm>
#include <cmath>

#include "build/CableLines.h"
#include "build/Levels.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "plan/Assumed.h"

namespace sumpwright::build {

namespace {

using geometry::Point;
using geometry::Segment;
using geometry::Vec;

constexpr double kBesideWall_m = 0.15;  // a room's outline this far off a wall's face still is on
                                        // it (own figure: plaster, and how well it was measured)

CableLine lineOf(CablePartKind kind, std::vector<Point> corners, bool wall_left) {
  CableLine line;
  line.kind = kind;
  line.wall_left = wall_left;
  line.corners = std::move(corners);
  for (std::size_t i = 0; i < line.corners.size(); ++i) {
    line.starts_m.push_back(line.length_m);
    const Segment side = line.side(i);
    line.length_m += geometry::distance(side.a, side.b);
  }
  return line;
}

bool isWetUse(plan::RoomUse use) {
  return use == plan::RoomUse::bathroom || use == plan::RoomUse::shower;
}

bool isBathing(plan::FittingKind kind) {
  return kind == plan::FittingKind::bath || kind == plan::FittingKind::shower;
}

/// What the run at a height meets in an opening.
class Heads {
 public:
  Heads(CableLines& lines, const CableFigures& figures) : m_lines(lines), m_figures(figures) {}

  /// Added by going over the head; 0 under the sill.
  double detour_m(const plan::Opening& opening, double run_m) {
    const bool has_sill = opening.kind == plan::OpeningKind::window ||
                          opening.kind == plan::OpeningKind::air_vent ||
                          opening.kind == plan::OpeningKind::flue_terminal;
    if (has_sill) {
      m_lines.sill_assumed = m_lines.sill_assumed || !opening.sill_m;
      if (opening.sill_m.value_or(m_figures.sill_m) >= run_m + m_figures.over_head_m) return 0.0;
    }
    m_lines.head_assumed = m_lines.head_assumed || !opening.head_m;
    const double head = opening.head_m.value_or(m_figures.door_head_m);
    return 2.0 * std::max(0.0, head + m_figures.over_head_m - run_m);
  }
  double innerDoor_m() const {
    return 2.0 * (m_figures.door_head_m + m_figures.over_head_m - m_figures.skirting_m);
  }

 private:
  CableLines& m_lines;
  const CableFigures& m_figures;
};

/// The part of a room's outline that lies in front of something in a wall: on sides that run along
/// it, no further off than `reach_m`.
void layInFront(CableLine& line, const Segment& thing, double reach_m, double detour_m,
                const std::string& id) {
  const Vec along = wayOf(thing);
  for (std::size_t i = 0; i < line.corners.size(); ++i) {
    const Segment side = line.side(i);
    const Vec way = wayOf(side);
    if (std::abs(geometry::dot(way, along)) < kFacing) continue;
    if (std::abs(geometry::cross(way, thing.a - side.a)) > reach_m) continue;
    const double u = geometry::dot(thing.a - side.a, way);
    const double v = geometry::dot(thing.b - side.a, way);
    const double from = std::max(0.0, std::min(u, v));
    const double to = std::min(geometry::distance(side.a, side.b), std::max(u, v));
    if (to - from > kSameSpot_m) {
      line.over.push_back({line.starts_m[i] + from, line.starts_m[i] + to, detour_m, {id}});
    }
  }
}

/// Openings that overlap are gone over in one.
void joinOverlaps(CableLine& line) {
  std::sort(line.over.begin(), line.over.end(),
            [](const OverOpening& a, const OverOpening& b) { return a.from_m < b.from_m; });
  std::vector<OverOpening> joined;
  for (OverOpening& one : line.over) {
    if (!joined.empty() && one.from_m < joined.back().to_m - kSameSpot_m) {
      joined.back().to_m = std::max(joined.back().to_m, one.to_m);
      joined.back().detour_m = std::max(joined.back().detour_m, one.detour_m);
      joined.back().things.insert(joined.back().things.end(), one.things.begin(), one.things.end());
    } else {
      joined.push_back(std::move(one));
    }
  }
  line.over = std::move(joined);
}

/// On one side of the line, at most `stays_up_m` from one to the next.
bool areNeighbours(const CableLine& line, const OverOpening& a, const OverOpening& b,
                   double stays_up_m) {
  const auto sideOf = [&](const OverOpening& one) {
    return line.sideAt((one.from_m + one.to_m) / 2.0);
  };
  return b.from_m - a.to_m <= stays_up_m + kSameSpot_m && sideOf(a) == sideOf(b);
}

/// Up once to the highest of their heads and down once: with no more steps than heads that is as
/// short as following each.
void joinNeighbours(CableLine& line, double stays_up_m) {
  for (std::size_t i = 0; i < line.over.size(); ++i) {
    OverOpening row = line.over[i];
    for (std::size_t k = i + 1; k < line.over.size(); ++k) {
      const OverOpening& next = line.over[k];
      if (!(row.detour_m > 0.0) || !(next.detour_m > 0.0)) break;
      if (!areNeighbours(line, line.over[k - 1], next, stays_up_m)) break;
      row.to_m = next.to_m;
      row.detour_m = std::max(row.detour_m, next.detour_m);
      row.things.insert(row.things.end(), next.things.begin(), next.things.end());
      line.several.push_back({row, line.over[i].to_m, next.from_m});
    }
  }
}

class LineMaker {
 public:
  LineMaker(const rules::Site& site, const CableFigures& figures)
      : m_site(site), m_figures(figures), m_heads(m_made, figures) {}

  CableLines made() {
    m_made.thickest_m = m_figures.thickest_m;
    m_made.from_corner_m = m_figures.from_corner_m;
    takeHeights();
    for (int r = 0; r < m_site.perimeter.ringCount(); ++r) addRing(r);
    for (const plan::Service& service : m_site.job.plan.services) addEntry(service);
    findWetRooms();
    for (const plan::Room& room : m_site.job.plan.rooms) addRoom(room);
    for (const plan::Opening& opening : m_site.job.plan.openings) addOpening(opening);
    for (const plan::InnerDoor& door : m_site.job.plan.inner_doors) addDoor(door);
    for (CableLine& line : m_made.lines) {
      joinOverlaps(line);
      joinNeighbours(line, m_figures.stays_up_m);
    }
    return std::move(m_made);
  }

 private:
  /// One height for the whole run outside: over the highest ground and damp-proof course there is.
  void takeHeights() {
    double ground = -1e300;
    for (int r = 0; r < m_site.perimeter.ringCount(); ++r) {
      for (const perimeter::Edge& edge : m_site.perimeter.edges(r)) {
        if (isNeighbours(edge)) continue;
        for (const GroundLine::At& at : groundAlong(m_site, edge).points) {
          ground = std::max(ground, at.level_m);
        }
      }
    }
    if (ground == -1e300) ground = plan::kAssumedGround_m;  // no wall of one's own
    m_made.dpc_m = m_site.job.house.dpc_height_m.value_or(ground + plan::kGroundUnderDpc_m);
    m_made.run_outside_m =
        std::max({m_figures.lowest_sleeve_m, m_made.dpc_m + m_figures.sleeve_above_dpc_m,
                  ground + m_figures.above_ground_m});
  }

  /// Behind a party wall is another's house; a dwarf wall has no face to clip a cable to.
  bool isNeighbours(const perimeter::Edge& edge) const {
    const plan::WallKind kind = m_site.perimeter.wall(edge).kind;
    return kind == plan::WallKind::party || kind == plan::WallKind::dwarf;
  }

  void addRing(int ring) {
    std::vector<Point> corners;
    for (const perimeter::Edge& edge : m_site.perimeter.edges(ring)) corners.push_back(edge.from);
    CableLine line = lineOf(CablePartKind::outside, std::move(corners), true);
    for (const perimeter::Edge& edge : m_site.perimeter.edges(ring)) {
      if (isNeighbours(edge)) line.closed.push_back({edge.start_m, edge.end_m()});
    }
    m_made.lines.push_back(std::move(line));
  }

  void addEntry(const plan::Service& service) {
    if (!service.entry) return;
    const perimeter::Place at = m_site.perimeter.placeOf(*service.entry);
    CableLine& line = m_made.lines[static_cast<std::size_t>(at.ring)];
    const double from = at.chainage_m - m_figures.off_entry_m;
    const double to = at.chainage_m + m_figures.off_entry_m;
    line.entries.push_back({from, to});
    if (from < 0.0) line.entries.push_back({from + line.length_m, line.length_m});
    if (to > line.length_m) line.entries.push_back({0.0, to - line.length_m});
  }

  void findWetRooms() {
    for (const plan::Room& room : m_site.job.plan.rooms) {
      if (room.outline_m.size() >= 3 && isWet(room)) m_made.wet_rooms.push_back(room.outline_m);
    }
  }

  bool isWet(const plan::Room& room) const {
    const auto& fittings = m_site.job.plan.fittings;
    return isWetUse(room.use) ||
           std::any_of(fittings.begin(), fittings.end(), [&](const plan::Fitting& fitting) {
             return isBathing(fitting.kind) && geometry::contains(room.outline_m, fitting.at_m);
           });
  }

  void addRoom(const plan::Room& room) {
    if (room.outline_m.size() < 3 || isWet(room)) return;
    // A room is walked with the wall on its right when its inside is on the left.
    CableLine line =
        lineOf(CablePartKind::skirting, room.outline_m, geometry::signedArea(room.outline_m) < 0.0);
    for (const plan::Fitting& fitting : m_site.job.plan.fittings) {
      // One in a room has that room to itself: the walls end its zones.
      if (isBathing(fitting.kind) && !isInRoom(fitting.at_m)) keepOff(line, fitting);
    }
    m_made.lines.push_back(std::move(line));
  }

  bool isInRoom(Point at) const {
    return std::any_of(m_made.wet_rooms.begin(), m_made.wet_rooms.end(),
                       [&](const geometry::Polygon& room) { return geometry::contains(room, at); });
  }

  void keepOff(CableLine& line, const plan::Fitting& bathing) const {
    const Point fitting = bathing.at_m;
    const double reach =
        m_figures.wet_m +
        (bathing.kind == plan::FittingKind::bath ? m_figures.bath_half_m : m_figures.shower_half_m);
    for (std::size_t i = 0; i < line.corners.size(); ++i) {
      const Segment side = line.side(i);
      const double length = geometry::distance(side.a, side.b);
      const Vec way = wayOf(side);
      const double off = std::abs(geometry::cross(way, fitting - side.a));
      if (off >= reach) continue;
      const double half = std::sqrt(reach * reach - off * off);
      const double middle = geometry::dot(fitting - side.a, way);
      const double from = std::max(0.0, middle - half);
      const double to = std::min(length, middle + half);
      if (to > from) line.closed.push_back({line.starts_m[i] + from, line.starts_m[i] + to});
    }
  }

  void addOpening(const plan::Opening& opening) {
    if (opening.storey != 0) return;
    const perimeter::Place from = m_site.perimeter.placeOf(opening.at);
    CableLine& face = m_made.lines[static_cast<std::size_t>(from.ring)];
    face.over.push_back({from.chainage_m,
                         std::min(from.chainage_m + opening.width_m, face.length_m),
                         m_heads.detour_m(opening, m_made.run_outside_m),
                         {opening.id}});
    const double thickness = m_site.perimeter.edgeAt(from).thickness_m;
    const Segment segment = m_site.perimeter.faceOf(opening.at, opening.width_m);
    const double detour = m_heads.detour_m(opening, m_figures.skirting_m);
    forEachRoomLine([&](CableLine& line) {
      layInFront(line, segment, thickness + kBesideWall_m, detour, opening.id);
    });
  }

  void addDoor(const plan::InnerDoor& door) {
    for (const plan::InnerWall& wall : m_site.job.plan.inner_walls) {
      if (wall.id != door.wall) continue;
      const auto segments = alongWall(wall, door.offset_m, door.offset_m + door.width_m);
      for (const Segment& s : segments) {
        forEachRoomLine([&](CableLine& line) {
          layInFront(line, s, wall.thickness_m / 2.0 + kBesideWall_m, m_heads.innerDoor_m(),
                     door.id);
        });
      }
    }
  }

  static std::vector<Segment> alongWall(const plan::InnerWall& wall, double from_m, double to_m) {
    std::vector<Segment> parts;
    double start = 0.0;
    for (std::size_t i = 1; i < wall.line_m.size(); ++i) {
      const Point a = wall.line_m[i - 1];
      const Point b = wall.line_m[i];
      const double length = geometry::distance(a, b);
      const double from = std::max(from_m, start) - start;
      const double to = std::min(to_m, start + length) - start;
      if (to > from) {
        parts.push_back({geometry::lerp(a, b, from / length), geometry::lerp(a, b, to / length)});
      }
      start += length;
    }
    return parts;
  }

  template <class Visit>
  void forEachRoomLine(const Visit& visit) {
    for (CableLine& line : m_made.lines) {
      if (line.kind == CablePartKind::skirting) visit(line);
    }
  }

  const rules::Site& m_site;
  const CableFigures& m_figures;
  CableLines m_made;
  Heads m_heads;
};

}  // namespace

CableLines cableLines(const rules::Site& site, const CableFigures& figures) {
  return LineMaker(site, figures).made();
}

}  // namespace sumpwright::build
