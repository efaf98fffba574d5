#include "core/build/LatticeHouse.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "support/PlanBuilder.h"

namespace sumpwright::build {

namespace {

using support::Random;

constexpr int kInnerWall = 2;
constexpr int kLeastRoom = 24;  // 1.2 m: deeper than what is drilled through
constexpr int kDoor = 16;
constexpr int kOffCorner = 8;  // of entries and openings

geometry::Point metres(GridPoint p) { return {kSquare_m * p.x, kSquare_m * p.y}; }

geometry::Polygon outlineOf(const GridRect& r) {
  return {metres({r.x0, r.y0}), metres({r.x1, r.y0}), metres({r.x1, r.y1}), metres({r.x0, r.y1})};
}

class Maker {
 public:
  Maker(Random& random, const LatticeOptions& options) : m_random(random), m_options(options) {}

  LatticeHouse made() {
    m_house.thickness = m_random.between(6, 8);
    switch (m_random.between(0, 2)) {
      case 0:
        rectangle();
        break;
      case 1:
        lShape();
        break;
      default:
        court();
    }
    findSides();
    chooseUses();
    if (m_random.chance(0.3)) m_house.party = m_random.index(4);
    openInnerDoors();
    openOutside();
    addEntries();
    addSupplies();
    m_house.ground_m = m_random.oneOf<double>({-0.3, -0.15, 0.0, 0.2});
    if (m_random.chance(0.6)) m_house.dpc_m = m_house.ground_m + 0.15;
    drawJob();
    return std::move(m_house);
  }

 private:
  /// A wall between rooms, with the squares it stands on.
  struct Between {
    GridRect squares;
    bool upright = false;
  };

  void rectangle() {
    const int w = m_random.between(90, 190);
    const int d = m_random.between(80, 140);
    const int t = m_house.thickness;
    m_house.rings = {{{0, 0}, {w, 0}, {w, d}, {0, d}}};
    divide({t, t, w - t, d - t});
  }

  void lShape() {
    const int t = m_house.thickness;
    const int w = m_random.between(140, 200);
    const int across = m_random.between(60, w - 50);
    const int up = m_random.between(60, 90);
    const int d = up + m_random.between(50, 90);
    m_house.rings = {{{0, 0}, {w, 0}, {w, up}, {across, up}, {across, d}, {0, d}}};
    divide({t, t, w - t, up - t});
    wallBetween({t, up - t, across - t, up - t + kInnerWall}, false);
    divide({t, up - t + kInnerWall, across - t, d - t});
  }

  void court() {
    const int t = m_house.thickness;
    const int x0 = m_random.between(60, 80);
    const int y0 = m_random.between(60, 80);
    const int x1 = x0 + m_random.between(40, 70);
    const int y1 = y0 + m_random.between(50, 70);
    const int w = x1 + m_random.between(60, 80);
    const int d = y1 + m_random.between(60, 80);
    m_house.rings = {{{0, 0}, {w, 0}, {w, d}, {0, d}}, {{x0, y0}, {x0, y1}, {x1, y1}, {x1, y0}}};
    const int low = y0 - t;
    const int high = y1 + t;
    divide({t, t, w - t, low});
    divide({t, high, w - t, d - t});
    for (const GridRect& arm :
         {GridRect{t, low, x0 - t, high}, GridRect{x1 + t, low, w - t, high}}) {
      wallBetween({arm.x0, arm.y0, arm.x1, arm.y0 + kInnerWall}, false);
      wallBetween({arm.x0, arm.y1 - kInnerWall, arm.x1, arm.y1}, false);
      divide({arm.x0, arm.y0 + kInnerWall, arm.x1, arm.y1 - kInnerWall});
    }
  }

  void wallBetween(GridRect squares, bool upright) { m_between.push_back({squares, upright}); }

  /// Into two with a wall between, again and again, while both are rooms.
  void divide(const GridRect& r) {
    const int w = r.x1 - r.x0;
    const int d = r.y1 - r.y0;
    const bool upright = w >= d;
    const int length = upright ? w : d;
    const bool small = length < 2 * kLeastRoom + kInnerWall;
    if (small || m_random.chance(length > 100 ? 0.05 : 0.35)) {
      m_house.rooms.push_back({r});
      return;
    }
    const int at = m_random.between(kLeastRoom, length - kLeastRoom - kInnerWall);
    if (upright) {
      wallBetween({r.x0 + at, r.y0, r.x0 + at + kInnerWall, r.y1}, true);
      divide({r.x0, r.y0, r.x0 + at, r.y1});
      divide({r.x0 + at + kInnerWall, r.y0, r.x1, r.y1});
    } else {
      wallBetween({r.x0, r.y0 + at, r.x1, r.y0 + at + kInnerWall}, false);
      divide({r.x0, r.y0, r.x1, r.y0 + at});
      divide({r.x0, r.y0 + at + kInnerWall, r.x1, r.y1});
    }
  }

  void findSides() {
    for (std::size_t ring = 0; ring < m_house.rings.size(); ++ring) {
      const auto& corners = m_house.rings[ring];
      int start = 0;
      for (std::size_t i = 0; i < corners.size(); ++i) {
        const GridPoint to = corners[(i + 1) % corners.size()];
        m_house.sides.push_back(
            {static_cast<int>(ring), static_cast<int>(i), corners[i], to, start});
        start += lengthOf(m_house.sides.back());
      }
    }
  }

  static int lengthOf(const GridSide& side) {
    return std::abs(side.to.x - side.from.x) + std::abs(side.to.y - side.from.y);
  }

  static GridPoint along(const GridSide& side, int off) {
    const auto sign = [](int v) { return v > 0 ? 1 : v < 0 ? -1 : 0; };
    return {side.from.x + off * sign(side.to.x - side.from.x),
            side.from.y + off * sign(side.to.y - side.from.y)};
  }

  /// The squares behind a stretch of a side, as deep as the wall. The house is on the left.
  GridRect behind(const GridSide& side, int from, int to) const {
    const GridPoint a = along(side, from);
    const GridPoint b = along(side, to);
    const int t = m_house.thickness;
    GridRect r{std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
    if (b.x > a.x) r.y1 += t;
    if (b.x < a.x) r.y0 -= t;
    if (b.y > a.y) r.x0 -= t;
    if (b.y < a.y) r.x1 += t;
    return r;
  }

  void chooseUses() {
    for (GridRoom& room : m_house.rooms) {
      room.bath = m_random.chance(0.08);
      room.wet = room.bath || m_random.chance(0.12);
      room.drawn = room.wet || m_random.chance(0.9);
    }
    if (!m_options.shower) return;
    GridRoom& other = m_house.rooms[m_random.index(m_house.rooms.size())];
    other = {other.squares, false, false, false};
    const GridRect& r = other.squares;
    m_house.shower = {m_random.between(r.x0 + 2, r.x1 - 2), m_random.between(r.y0 + 2, r.y1 - 2)};
  }

  void openInnerDoors() {
    for (const Between& wall : m_between) {
      if (!m_random.chance(0.7)) continue;
      const GridRect& r = wall.squares;
      const int length = wall.upright ? r.y1 - r.y0 : r.x1 - r.x0;
      const int off = m_random.between(0, length - kDoor);
      GridRect door = r;
      (wall.upright ? door.y0 : door.x0) += off;
      (wall.upright ? door.y1 : door.x1) = (wall.upright ? door.y0 : door.x0) + kDoor;
      m_house.openings.push_back(
          {"inner-" + std::to_string(m_house.openings.size()), door, false, {}, {}});
      m_doors.push_back({&wall - m_between.data(), off});
    }
    m_inner = m_house.openings.size();
  }

  /// One after another along each side, some of them jamb to jamb.
  void openOutside() {
    for (const GridSide& side : m_house.sides) {
      int at = kOffCorner + m_random.between(0, 20);
      while (!isParty(side)) {
        const int width = m_random.between(8, 30);
        if (at + width > lengthOf(side) - kOffCorner) break;
        if (m_random.chance(0.6)) {
          const bool window = m_random.chance(0.7);
          GridOpening o{"o" + std::to_string(m_house.openings.size()),
                        behind(side, at, at + width),
                        window,
                        {},
                        {}};
          if (window && m_random.chance(0.8)) {
            o.sill_m = m_random.oneOf<double>({0.1, 0.25, 0.45, 0.9});
          }
          if (m_random.chance(0.7)) o.head_m = m_random.oneOf<double>({1.9, 2.0, 2.1});
          m_house.openings.push_back(o);
          m_outer.push_back({&side - m_house.sides.data(), at, width});
        }
        at += width + m_random.between(1, 30);
      }
    }
  }

  bool isParty(const GridSide& side) const {
    return m_house.party && &side == &m_house.sides[*m_house.party];
  }

  void addEntries() {
    for (const GridSide& side : m_house.sides) {
      if (!m_random.chance(0.4)) continue;
      const int off = m_random.between(kOffCorner, lengthOf(side) - kOffCorner);
      m_house.entries.push_back(along(side, off));
      m_entries.push_back({side.ring, side.edge, kSquare_m * off});
    }
  }

  void addSupplies() {
    for (int k = 0; k < 5; ++k) {
      GridSupply supply{"s" + std::to_string(k), {}, m_random.chance(0.2)};
      const GridRoom& room = m_house.rooms[m_random.index(m_house.rooms.size())];
      const GridSide& side = m_house.sides[m_random.index(m_house.sides.size())];
      if (k == 0 && !isParty(side)) {
        supply.at = along(side, m_random.between(1, lengthOf(side) - 1));
      } else {
        if (!room.drawn) continue;
        supply.at = onFaceOf(room.squares);
      }
      m_house.supplies.push_back(supply);
    }
  }

  GridPoint onFaceOf(const GridRect& r) {
    const bool level = m_random.chance(0.5);
    const bool far = m_random.chance(0.5);
    if (level) return {m_random.between(r.x0 + 1, r.x1 - 1), far ? r.y1 : r.y0};
    return {far ? r.x1 : r.x0, m_random.between(r.y0 + 1, r.y1 - 1)};
  }

  void drawJob() {
    geometry::Polygon outer;
    for (const GridPoint p : m_house.rings[0]) outer.push_back(metres(p));
    support::PlanBuilder house = support::PlanBuilder::outline(outer);
    if (m_house.rings.size() > 1) {
      geometry::Polygon hole;
      for (const GridPoint p : m_house.rings[1]) hole.push_back(metres(p));
      house.hole(hole);
    }
    house.noRooms();
    drawInside(house);
    m_house.job = house;
    drawWalls();
    drawOpenings();
  }

  void drawInside(support::PlanBuilder& house) const {
    int n = 0;
    for (const GridRoom& room : m_house.rooms) {
      if (!room.drawn) continue;
      const std::string id = "room" + std::to_string(n++);
      const geometry::Polygon outline = outlineOf(room.squares);
      const bool called = room.wet && !room.bath;
      house.room(id, called ? plan::RoomUse::bathroom : plan::RoomUse::living, outline);
      if (room.bath) {
        house.fitting("bath-" + id, plan::FittingKind::bath,
                      geometry::lerp(outline[0], outline[2], 0.4));
      }
    }
    if (m_house.shower) {
      house.fitting("shower", plan::FittingKind::shower, metres(*m_house.shower));
    }
    for (const GridSupply& s : m_house.supplies) {
      house.supply(s.id, s.board ? plan::SupplyKind::consumer_unit : plan::SupplyKind::socket,
                   metres(s.at));
    }
  }

  void drawWalls() {
    plan::Job& job = m_house.job;
    for (plan::Ring& ring : job.plan.rings) {
      for (plan::Wall& wall : ring.walls) {
        wall.thickness_m = kSquare_m * m_house.thickness;
        wall.ground_level_m = m_house.ground_m;
      }
    }
    if (m_house.party) job.plan.rings[0].walls[*m_house.party].kind = plan::WallKind::party;
    job.house.dpc_height_m = m_house.dpc_m;
    job.house.ground_level_m = m_house.ground_m;
    for (const Between& wall : m_between) {
      const GridRect& r = wall.squares;
      const geometry::Point a = metres({r.x0, r.y0});
      const geometry::Point b = metres({r.x1, r.y1});
      const geometry::Point half{(a.x + b.x) / 2.0, (a.y + b.y) / 2.0};
      geometry::Polyline line{{a.x, half.y}, {b.x, half.y}};
      if (wall.upright) line = {{half.x, a.y}, {half.x, b.y}};
      job.plan.inner_walls.push_back({"wall" + std::to_string(job.plan.inner_walls.size()), line,
                                      kSquare_m * kInnerWall, plan::BelowFloor::on_slab});
    }
    for (const plan::OnWall& at : m_entries) {
      plan::Service service;
      service.id = "entry" + std::to_string(job.plan.services.size());
      service.kind = plan::ServiceKind::water;
      service.entry = at;
      job.plan.services.push_back(service);
    }
  }

  void drawOpenings() {
    plan::Job& job = m_house.job;
    for (std::size_t k = 0; k < m_inner; ++k) {
      job.plan.inner_doors.push_back({m_house.openings[k].id,
                                      "wall" + std::to_string(m_doors[k].wall),
                                      kSquare_m * m_doors[k].off, kSquare_m * kDoor});
    }
    for (std::size_t k = 0; k < m_outer.size(); ++k) {
      const GridOpening& from = m_house.openings[m_inner + k];
      const GridSide& side = m_house.sides[static_cast<std::size_t>(m_outer[k].side)];
      plan::Opening o;
      o.id = from.id;
      o.kind = from.window ? plan::OpeningKind::window : plan::OpeningKind::door;
      o.at = {side.ring, side.edge, kSquare_m * m_outer[k].off};
      o.width_m = kSquare_m * m_outer[k].width;
      o.sill_m = from.sill_m;
      o.head_m = from.head_m;
      job.plan.openings.push_back(o);
    }
  }

  struct DoorIn {
    std::ptrdiff_t wall;
    int off;
  };
  struct OpeningIn {
    std::ptrdiff_t side;
    int off;
    int width;
  };

  Random& m_random;
  const LatticeOptions& m_options;
  LatticeHouse m_house;
  std::vector<Between> m_between;
  std::vector<DoorIn> m_doors;
  std::vector<OpeningIn> m_outer;
  std::vector<plan::OnWall> m_entries;
  std::size_t m_inner = 0;  // openings in inner walls: these come first
};

}  // namespace

LatticeHouse latticeHouse(Random& random, const LatticeOptions& options) {
  return Maker(random, options).made();
}

}  // namespace sumpwright::build
