#include "tools/WallStop.h"

#include <algorithm>
#include <cmath>

#include "geometry/Distance.h"
#include "plan/ThingEdits.h"

namespace sumpwright::tools {

namespace {

constexpr double kParallel = 0.02;  // sine; own figure: walls a degree apart face each other

Vec wallAlong(const Segment& face) {
  return (1.0 / geometry::distance(face.a, face.b)) * (face.b - face.a);
}

std::optional<plan::OnWall> wallUnder(const plan::Plan& plan, Point middle, double width_m,
                                      const WallSnapField& field) {
  auto nearest = plan::nearestOnWalls(plan, middle, width_m);
  if (!nearest) return std::nullopt;
  const auto held = field.on ? faceOf(plan, *field.on) : std::nullopt;
  const auto there = faceOf(plan, *nearest);
  if (!there) return std::nullopt;
  if (held &&
      geometry::distance(middle, *there) > geometry::distance(middle, *held) - kWallJump_m) {
    nearest->ring = field.on->ring;
    nearest->edge = field.on->edge;
  }
  return nearest;
}

/// The offset at which a thing so wide is in line with an opening; nothing where the walls do not
/// face each other.
std::optional<double> inLine(const plan::Plan& plan, const Segment& face, double width_m,
                             const plan::Opening& with) {
  const auto other = faceOf(plan, with.at);
  if (!other) return std::nullopt;
  const Vec along = wallAlong(face);
  if (std::abs(geometry::cross(along, wallAlong(*other))) > kParallel) return std::nullopt;
  plan::OnWall centre = with.at;
  centre.offset_m += with.width_m / 2.0;
  return geometry::dot(pointOn(plan, centre) - face.a, along) - width_m / 2.0;
}

struct Offer {
  double offset_m;
  StopKind kind;
  std::optional<Point> from;
};

std::vector<Offer> offersOn(const plan::Plan& plan, const plan::OnWall& wall, const Segment& face,
                            double width_m, const WallSnapField& field) {
  std::vector<Offer> offers;
  for (const plan::Opening& o : plan.openings) {
    if (o.id == field.self) continue;
    const bool same_wall = o.at.ring == wall.ring && o.at.edge == wall.edge;
    if (same_wall && o.storey == field.storey) continue;  // would stand in it
    const auto offset = inLine(plan, face, width_m, o);
    if (!offset) continue;
    plan::OnWall centre = o.at;
    centre.offset_m += o.width_m / 2.0;
    offers.push_back({*offset, StopKind::in_line, pointOn(plan, centre)});
  }
  const double length = geometry::distance(face.a, face.b);
  offers.push_back({(length - width_m) / 2.0, StopKind::middle, std::nullopt});
  return offers;
}

}  // namespace

std::optional<WallStop> wallStop(const plan::Plan& plan, Point middle, double width_m,
                                 const WallSnapField& field) {
  const auto wall = wallUnder(plan, middle, width_m, field);
  if (!wall) return std::nullopt;
  const Segment face = *faceOf(plan, *wall);
  const Vec along = wallAlong(face);
  const double last = std::max(0.0, geometry::distance(face.a, face.b) - width_m);
  const double aimed = std::clamp(geometry::dot(middle - face.a, along) - width_m / 2.0, 0.0, last);
  WallStop stop{*wall, StopKind::none, {}};
  stop.at.offset_m = aimed;
  double nearest = field.reach_m;
  for (const Offer& offer : offersOn(plan, *wall, face, width_m, field)) {
    const double away = std::abs(offer.offset_m - aimed);
    const bool fits = offer.offset_m >= 0.0 && offer.offset_m <= last;
    if (!fits || away > nearest || (stop.kind != StopKind::none && away >= nearest)) continue;
    nearest = away;
    stop.kind = offer.kind;
    stop.at.offset_m = offer.offset_m;
    stop.guides.clear();
    const Point centre = face.a + (offer.offset_m + width_m / 2.0) * along;
    if (offer.from) stop.guides.push_back({*offer.from, centre});
  }
  if (stop.kind == StopKind::none && field.grid_m > 0.0) {
    stop.at.offset_m = std::clamp(std::round(aimed / field.grid_m) * field.grid_m, 0.0, last);
    stop.kind = StopKind::grid;
  }
  return stop;
}

}  // namespace sumpwright::tools
