#include "siting/SuctionPlaces.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"

namespace sumpwright::siting {

namespace {

using base::Message;
using geometry::Point;

/// Compass side a point lies on, seen from another.
std::string sideOf(const plan::Plan& plan, Point from, Point to) {
  static constexpr std::array<const char*, 8> kSides{"north", "north-east", "east", "south-east",
                                                     "south", "south-west", "west", "north-west"};
  const double bearing =
      std::atan2(to.x - from.x, to.y - from.y) * 180.0 / std::numbers::pi - plan.north_deg;
  const auto eighth = static_cast<int>(std::lround(bearing / 45.0)) % 8;
  return kSides[static_cast<std::size_t>((eighth + 8) % 8)];
}

/// Cells at a wall may have their centre beside the room (own figure).
constexpr double kBesideRoom_m = 0.3;

double distanceTo(const geometry::Polygon& outline, Point at) {
  if (geometry::contains(outline, at)) return 0.0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const geometry::Segment side{outline[k], outline[(k + 1) % outline.size()]};
    least = std::min(least, geometry::distance(at, side));
  }
  return least;
}

const plan::Room* roomAt(const plan::Plan& plan, Point at) {
  const plan::Room* nearest = nullptr;
  double least = kBesideRoom_m;
  for (const plan::Room& room : plan.rooms) {
    if (room.outline_m.size() < 3) continue;
    const double off = distanceTo(room.outline_m, at);
    if (off >= least) continue;
    least = off;
    nearest = &room;
  }
  return nearest;
}

const perimeter::Edge* cornerNear(const perimeter::Perimeter& perimeter, Point at) {
  const perimeter::Edge* nearest = nullptr;
  double least = kNearCorner_m;
  for (int ring = 0; ring < perimeter.ringCount(); ++ring) {
    for (const perimeter::Edge& edge : perimeter.edges(ring)) {
      const double off = geometry::distance(edge.from, at);
      if (off > least) continue;
      least = off;
      nearest = &edge;
    }
  }
  return nearest;
}

}  // namespace

Message placeOnFloor(const Study& study, Point at) {
  const plan::Plan& plan = study.job().plan;
  const Point middle = geometry::centroid(plan.rings[0].corners);
  const perimeter::Edge* corner = cornerNear(study.perimeter(), at);
  const plan::Room* room = roomAt(plan, at);
  std::vector<base::Arg> args{
      base::text("side", sideOf(plan, middle, corner != nullptr ? corner->from : at))};
  if (corner != nullptr) {
    args.push_back(
        base::text("corner", study.perimeter().cornerLetter(corner->ring, corner->edge)));
  }
  Message where(corner != nullptr ? "suction.where.corner" : "suction.where.side", std::move(args));
  if (room == nullptr) return where;
  return Message("suction.where.in-room", {base::phrase("where", std::move(where)),
                                           base::phrase("room", study.labelOf(room->id))});
}

Message placeOfSump(const Study& study, const plan::SumpPlace& place) {
  if (place.at_m) return placeOnFloor(study, *place.at_m);
  const auto& perimeter = study.perimeter();
  const Place on{place.ring, place.chainage_m};
  if (!perimeter.contains(on)) return Message("suction.where.nowhere");
  return Message("suction.where.wall",
                 {base::phrase("wall", perimeter.wallLabel(perimeter.edgeAt(on))),
                  base::metres("chainage", place.chainage_m),
                  base::text("corner", perimeter.cornerLetter(place.ring, 0))});
}

}  // namespace sumpwright::siting
