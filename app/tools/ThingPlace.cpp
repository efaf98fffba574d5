#include "tools/ThingPlace.h"

#include <algorithm>
#include <cmath>

#include "base/Contract.h"
#include "plan/OpeningEdits.h"
#include "plan/ThingEdits.h"
#include "plan/WallEdits.h"
#include "tools/FloorPlace.h"
#include "tools/WallFrame.h"

namespace sumpwright::tools {

namespace {

using geometry::Point;

/// An inner wall within this of the place typed is the one that is meant (own figure: its half
/// thickness).
constexpr double kSameStart_m = 0.06;

base::Problem placeProblem(const char* id, std::vector<base::Arg> args = {}) {
  return {base::Message(id, std::move(args)), "", base::Gravity::unsound};
}

/// From the left corner to the nearer end of something that wide.
double offsetOf(const WallFrame& frame, const ThingLine& line, double width_m) {
  return line.from_right ? frame.length_m - line.offset_m - width_m : line.offset_m;
}

plan::OnWall onWall(const WallFrame& frame, const ThingLine& line, double width_m) {
  return {frame.ring, frame.edge, offsetOf(frame, line, width_m)};
}

base::Problem pastEnd(const WallFrame& frame, const ThingLine& line, double width_m) {
  return placeProblem("place.past-end", {base::metres("end", line.offset_m + width_m),
                                         base::metres("length", frame.length_m)});
}

bool fits(const WallFrame& frame, double offset_m, double width_m) {
  return offset_m >= 0.0 && offset_m + width_m <= frame.length_m + 1e-3;
}

/// A place inside, counted from the inner face.
Point inside(const WallFrame& frame, const ThingLine& line) {
  return frame.at(offsetOf(frame, line, 0.0), frame.thickness_m + line.off_m);
}

const plan::InnerWall* innerWallAt(const plan::Job& job, Point start) {
  for (const plan::InnerWall& wall : job.plan.inner_walls) {
    if (wall.line_m.empty()) continue;
    if (geometry::distance(wall.line_m.front(), start) <= kSameStart_m ||
        geometry::distance(wall.line_m.back(), start) <= kSameStart_m) {
      return &wall;
    }
  }
  return nullptr;
}

/// The line from the inner face to the next wall, or as long as it was typed.
base::Result<std::vector<Point>> lineInside(const plan::Job& job, const WallFrame& frame,
                                            const ThingLine& line) {
  const double offset = offsetOf(frame, line, 0.0);
  if (!fits(frame, offset, 0.0)) return pastEnd(frame, line, 0.0);
  const Point start = frame.at(offset, frame.thickness_m);
  const auto reach = line.width_m ? line.width_m : reachInside(job, start, frame.inward);
  if (!reach) return placeProblem("place.meets-nothing");
  return std::vector<Point>{start, start + *reach * frame.inward};
}

base::Result<plan::Job> withInnerWall(const plan::Job& job, const WallFrame& frame,
                                      const ThingLine& line) {
  auto points = lineInside(job, frame, line);
  if (!points) return points.problems();
  plan::InnerWall wall;
  wall.line_m = std::move(points).value();
  return plan::addThing(job, wall);
}

base::Result<plan::Job> withRisingWall(const plan::Job& job, const WallFrame& frame,
                                       const ThingLine& line) {
  const Point start = frame.at(offsetOf(frame, line, 0.0), frame.thickness_m);
  plan::RisingWall rising;
  const plan::InnerWall* above = innerWallAt(job, start);
  if (above == nullptr || line.width_m) {
    auto points = lineInside(job, frame, line);
    if (!points) return points.problems();
    rising.line_m = std::move(points).value();
    return plan::addThing(job, rising);
  }
  rising.line_m = above->line_m;
  rising.thickness_m = above->thickness_m;
  plan::InnerWall carried = *above;
  carried.below_floor = plan::BelowFloor::own_footing;
  const auto result = plan::replaceThing(job, carried);
  return result ? plan::addThing(*result, rising) : result;
}

base::Result<plan::Job> withInnerDoor(const plan::Job& job, const WallFrame& frame,
                                      const ThingLine& line) {
  const Point start = frame.at(offsetOf(frame, line, 0.0), frame.thickness_m);
  const plan::InnerWall* wall = innerWallAt(job, start);
  if (wall == nullptr) return placeProblem("place.no-inner-wall");
  double length = 0.0;
  for (std::size_t i = 1; i < wall->line_m.size(); ++i) {
    length += geometry::distance(wall->line_m[i - 1], wall->line_m[i]);
  }
  plan::InnerDoor door;
  door.wall = wall->id;
  door.width_m = line.width_m.value_or(0.0);
  const bool from_its_start = geometry::distance(wall->line_m.front(), start) <= kSameStart_m;
  door.offset_m = from_its_start ? line.off_m : length - line.off_m - door.width_m;
  if (door.offset_m < -1e-3 || door.offset_m + door.width_m > length + 1e-3) {
    return placeProblem("place.past-end", {base::metres("end", line.off_m + door.width_m),
                                           base::metres("length", length)});
  }
  return plan::addThing(job, door);
}

base::Result<plan::Job> withOpening(const plan::Job& job, const WallFrame& frame,
                                    const ThingLine& line) {
  plan::Opening facts;
  facts.kind = line.opening();
  // A vent is always open; a flue terminal is none that lets air in.
  if (facts.kind == plan::OpeningKind::air_vent || facts.kind == plan::OpeningKind::soffit_vent)
    facts.opens = plan::Opens::vent;
  facts.sill_m = line.sill_m;
  facts.head_m = line.head_m;
  const plan::Side from = line.from_right ? plan::Side::right : plan::Side::left;
  const double width = line.width_m.value_or(0.0);
  base::Result<plan::Job> one =
      plan::addOpening(job, frame.ring, frame.edge, from, line.offset_m, width, facts);
  if (!one || line.times < 2) return one;
  const double pitch = line.offset_m + width;
  return plan::repeatOpening(*one, one->plan.openings.back().id, line.times - 1,
                             line.from_right ? -pitch : pitch);
}

base::Result<plan::Job> withService(const plan::Job& job, const WallFrame& frame,
                                    const ThingLine& line) {
  plan::Service service;
  service.kind = line.service();
  service.entry = onWall(frame, line, 0.0);
  if (!fits(frame, service.entry->offset_m, 0.0)) return pastEnd(frame, line, 0.0);
  if (line.width_m) {
    service.run = plan::RunKnown::drawn;
    service.run_m = {frame.at(service.entry->offset_m, 0.0),
                     frame.at(service.entry->offset_m, -*line.width_m)};
  }
  return plan::addThing(job, service);
}

base::Result<plan::Job> withRadiator(const plan::Job& job, const WallFrame& frame,
                                     const ThingLine& line) {
  plan::Radiator radiator;
  radiator.width_m = line.width_m.value_or(0.0);
  radiator.on = onWall(frame, line, radiator.width_m);
  if (!fits(frame, radiator.on->offset_m, radiator.width_m)) {
    return pastEnd(frame, line, radiator.width_m);
  }
  radiator.on->offset_m = std::min(radiator.on->offset_m, frame.length_m - radiator.width_m);
  return plan::addThing(job, radiator);
}

base::Result<plan::Job> withFeature(const plan::Job& job, const WallFrame& frame,
                                    const ThingLine& line) {
  plan::WallFeature feature;
  feature.kind = static_cast<plan::WallFeatureKind>(line.which);
  feature.width_m = line.width_m.value_or(0.0);
  feature.at = onWall(frame, line, feature.width_m);
  if (!fits(frame, feature.at.offset_m, feature.width_m)) {
    return pastEnd(frame, line, feature.width_m);
  }
  feature.at.offset_m =
      std::clamp(feature.at.offset_m, 0.0, std::max(0.0, frame.length_m - feature.width_m));
  return plan::addThing(job, feature);
}

/// The corners of something beside the wall: `in` as WallFrame counts it, to its near side.
std::vector<Point> boxBeside(const WallFrame& frame, double from, double width, double in,
                             double depth) {
  return {frame.at(from, in), frame.at(from + width, in), frame.at(from + width, in + depth),
          frame.at(from, in + depth)};
}

plan::OutsideThing outsideThing(const WallFrame& frame, const ThingLine& line) {
  plan::OutsideThing thing;
  thing.kind = static_cast<plan::OutsideKind>(line.which);
  const double width = line.width_m.value_or(0.0);
  const double from = offsetOf(frame, line, width);
  const bool is_line = thing.kind == plan::OutsideKind::path ||
                       thing.kind == plan::OutsideKind::boundary ||
                       thing.kind == plan::OutsideKind::neighbour_opening ||
                       thing.kind == plan::OutsideKind::overhead_line;
  if (is_line) {
    thing.points_m = {frame.at(from, -line.off_m), frame.at(from + width, -line.off_m)};
  } else if (line.width_m) {
    thing.points_m = boxBeside(frame, from, width, -line.off_m, -line.depth_m.value_or(width));
  } else {
    thing.points_m = {frame.at(from, -line.off_m)};
  }
  return thing;
}

base::Result<plan::Job> withPipe(const plan::Job& job, const WallFrame& frame,
                                 const ThingLine& line) {
  const double width = line.width_m.value_or(0.0);
  const double from = offsetOf(frame, line, width);
  if (!fits(frame, from, width)) return pastEnd(frame, line, width);
  plan::HeatingPipe pipe;
  const double in = frame.thickness_m + line.off_m;
  pipe.line_m = {frame.at(from, in), frame.at(from + width, in)};
  return plan::addThing(job, pipe);
}

base::Result<plan::Job> withPoint(const plan::Job& job, const WallFrame& frame,
                                  const ThingLine& line) {
  if (!fits(frame, offsetOf(frame, line, 0.0), 0.0)) return pastEnd(frame, line, 0.0);
  const Point at = inside(frame, line);
  if (line.kind == LineKind::supply) {
    return plan::addThing(job, plan::Supply{"", "", static_cast<plan::SupplyKind>(line.which), at,
                                            plan::YesNo::unknown, ""});
  }
  if (line.kind == LineKind::fitting) {
    return plan::addThing(job,
                          plan::Fitting{"", "", static_cast<plan::FittingKind>(line.which), at});
  }
  return plan::addThing(job, plan::TestHole{"", "", at});
}

}  // namespace

base::Result<plan::Job> placed(const plan::Job& job, int ring, int edge, const ThingLine& line) {
  SUMPWRIGHT_REQUIRE(line.ok());
  if (line.kind == LineKind::floor) return withFloor(job, line);
  const auto frame = wallFrame(job, ring, edge);
  if (!frame) return placeProblem("place.no-wall");
  switch (line.kind) {
    case LineKind::opening:
      return withOpening(job, *frame, line);
    case LineKind::service:
      return withService(job, *frame, line);
    case LineKind::radiator:
      return withRadiator(job, *frame, line);
    case LineKind::inner_wall:
      return withInnerWall(job, *frame, line);
    case LineKind::rising_wall:
      return withRisingWall(job, *frame, line);
    case LineKind::inner_door:
      return withInnerDoor(job, *frame, line);
    case LineKind::heating_pipe:
      return withPipe(job, *frame, line);
    case LineKind::supply:
    case LineKind::fitting:
    case LineKind::test_hole:
      return withPoint(job, *frame, line);
    case LineKind::outside:
      return plan::addThing(job, outsideThing(*frame, line));
    case LineKind::feature:
      return withFeature(job, *frame, line);
    case LineKind::courtyard: {
      const double width = line.width_m.value_or(0.0);
      return plan::addCourtyard(job, boxBeside(*frame, offsetOf(*frame, line, width), width,
                                               line.off_m, line.depth_m.value_or(width)));
    }
    case LineKind::floor:
      break;
  }
  return placeProblem("place.no-wall");
}

std::string lastAdded(const plan::Job& before, const plan::Job& after) {
  const plan::Plan& was = before.plan;
  const plan::Plan& is = after.plan;
  std::string added;
  const auto look = [&](const auto& old, const auto& now) {
    if (now.size() > old.size()) added = now.back().id;
  };
  look(was.inner_walls, is.inner_walls);
  look(was.openings, is.openings);
  look(was.services, is.services);
  look(was.floor_zones, is.floor_zones);
  look(was.inner_doors, is.inner_doors);
  look(was.rising_walls, is.rising_walls);
  look(was.radiators, is.radiators);
  look(was.heating_pipes, is.heating_pipes);
  look(was.supplies, is.supplies);
  look(was.fittings, is.fittings);
  look(was.outside, is.outside);
  look(was.test_holes, is.test_holes);
  look(was.wall_features, is.wall_features);
  if (added.empty() && is.rings.size() > was.rings.size() && !is.rings.back().walls.empty()) {
    added = is.rings.back().walls.front().id;
  }
  return added;
}

}  // namespace sumpwright::tools
