#include "siting/DoorLabel.h"

#include <algorithm>
#include <optional>
#include <vector>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "plan/KindNames.h"

namespace sumpwright::siting {

namespace {

using geometry::Point;

/// A place on the wall's line, and the way along it there.
struct OnLine {
  Point at;
  geometry::Vec along;
};

std::optional<OnLine> placeOn(const plan::InnerWall& wall, double along_m) {
  for (std::size_t i = 1; i < wall.line_m.size(); ++i) {
    const Point a = wall.line_m[i - 1];
    const Point b = wall.line_m[i];
    const double length = geometry::distance(a, b);
    if (along_m <= length && length > 0.0) {
      return OnLine{geometry::lerp(a, b, along_m / length), (1.0 / length) * (b - a)};
    }
    along_m -= length;
  }
  return std::nullopt;
}

const plan::Room* roomHolding(const plan::Plan& plan, Point p) {
  const auto room = std::find_if(plan.rooms.begin(), plan.rooms.end(), [&](const plan::Room& r) {
    return geometry::contains(r.outline_m, p);
  });
  return room == plan.rooms.end() ? nullptr : &*room;
}

base::Message roomLabel(const plan::Room& room) {
  if (room.name.empty()) return base::Message("room." + std::string(plan::nameOf(room.use)));
  return {"thing.named", {base::text("name", room.name)}};
}

}  // namespace

base::Message innerDoorLabel(const plan::Plan& plan, const plan::InnerDoor& door) {
  constexpr double kPastFace_m = 0.25;  // own figure: past any plaster
  std::vector<const plan::Room*> rooms;
  const auto wall = std::find_if(plan.inner_walls.begin(), plan.inner_walls.end(),
                                 [&](const plan::InnerWall& w) { return w.id == door.wall; });
  if (wall != plan.inner_walls.end()) {
    if (const auto place = placeOn(*wall, door.offset_m + door.width_m / 2.0)) {
      const geometry::Vec off =
          (wall->thickness_m / 2.0 + kPastFace_m) * geometry::left(place->along);
      for (const Point p : {place->at + off, place->at - off}) {
        const plan::Room* room = roomHolding(plan, p);
        if (room != nullptr && (rooms.empty() || rooms[0] != room)) rooms.push_back(room);
      }
    }
  }
  if (rooms.empty()) return base::Message("door.inside");
  const auto room = base::phrase("room", roomLabel(*rooms[0]));
  if (rooms.size() == 1) return {"door.of", {room}};
  return {"door.between", {room, base::phrase("other", roomLabel(*rooms[1]))}};
}

}  // namespace sumpwright::siting
