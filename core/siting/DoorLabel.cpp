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

std::optional<base::Message> roomAt(const plan::Plan& plan, Point p) {
  for (const plan::Room& room : plan.rooms) {
    if (!geometry::contains(room.outline_m, p)) continue;
    if (room.name.empty()) return base::Message("room." + std::string(plan::nameOf(room.use)));
    return base::Message("thing.named", {base::text("name", room.name)});
  }
  return std::nullopt;
}

}  // namespace

base::Message innerDoorLabel(const plan::Plan& plan, const plan::InnerDoor& door) {
  constexpr double kPastFace_m = 0.25;  // own figure: past any plaster
  std::vector<base::Message> rooms;
  const auto wall = std::find_if(plan.inner_walls.begin(), plan.inner_walls.end(),
                                 [&](const plan::InnerWall& w) { return w.id == door.wall; });
  if (wall != plan.inner_walls.end()) {
    if (const auto place = placeOn(*wall, door.offset_m + door.width_m / 2.0)) {
      const geometry::Vec off =
          (wall->thickness_m / 2.0 + kPastFace_m) * geometry::left(place->along);
      for (const Point p : {place->at + off, place->at - off}) {
        if (auto room = roomAt(plan, p)) rooms.push_back(*std::move(room));
      }
    }
  }
  if (rooms.empty()) return base::Message("door.inside");
  if (rooms.size() == 1) return {"door.of", {base::phrase("room", rooms[0])}};
  return {"door.between", {base::phrase("room", rooms[0]), base::phrase("other", rooms[1])}};
}

}  // namespace sumpwright::siting
