#include "tools/ThingPlace.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/Contract.h"
#include "geometry/Point.h"
#include "perimeter/Perimeter.h"
#include "plan/OpeningEdits.h"
#include "plan/ThingEdits.h"

namespace sumpwright::tools {

namespace {

using geometry::Point;
using geometry::Segment;
using geometry::Vec;

constexpr double kOffWall_m =
    0.02;  // own figure: an inner wall does not meet the wall it starts on

base::Problem placeProblem(const char* id, std::vector<base::Arg> args = {}) {
  return {base::Message(id, std::move(args)), "", base::Gravity::unsound};
}

struct WallFrame {
  Segment face;
  Vec along;
  Vec inward;
  double length_m = 0.0;
  double thickness_m = 0.0;
};

std::optional<WallFrame> frameOf(const plan::Job& job, int ring, int edge) {
  if (ring < 0 || static_cast<std::size_t>(ring) >= job.plan.rings.size()) return std::nullopt;
  const plan::Ring& r = job.plan.rings[static_cast<std::size_t>(ring)];
  const auto i = static_cast<std::size_t>(edge);
  const std::size_t walls = r.closed || r.corners.empty() ? r.corners.size() : r.corners.size() - 1;
  if (edge < 0 || i >= walls || i >= r.walls.size()) return std::nullopt;
  WallFrame frame;
  frame.face = {r.corners[i], r.corners[(i + 1) % r.corners.size()]};
  frame.length_m = geometry::distance(frame.face.a, frame.face.b);
  if (frame.length_m <= 0.0) return std::nullopt;
  frame.along = (1.0 / frame.length_m) * (frame.face.b - frame.face.a);
  frame.inward = geometry::left(frame.along);
  frame.thickness_m = r.walls[i].thickness_m.value_or(
      job.house.wall_thickness_m.value_or(perimeter::kAssumedWallThickness_m));
  return frame;
}

plan::OnWall onWall(const WallFrame& frame, int ring, int edge, const ThingLine& line,
                    double width_m) {
  const double offset = line.from_right ? frame.length_m - line.offset_m - width_m : line.offset_m;
  return {ring, edge, offset};
}

base::Problem pastEnd(const WallFrame& frame, const ThingLine& line, double width_m) {
  return placeProblem("place.past-end", {base::metres("end", line.offset_m + width_m),
                                         base::metres("length", frame.length_m)});
}

/// Distance along a ray to a segment; nothing where it does not meet it.
std::optional<double> rayTo(Point from, Vec along, const Segment& s) {
  const Vec side = s.b - s.a;
  const double sine = geometry::cross(along, side);
  if (std::abs(sine) < 1e-9) return std::nullopt;
  const double t = geometry::cross(s.a - from, side) / sine;
  const double u = geometry::cross(s.a - from, along) / sine;
  if (t < kOffWall_m || u < -1e-9 || u > 1.0 + 1e-9) return std::nullopt;
  return t;
}

/// The inner faces of the outside walls and the middle lines of the inner ones.
std::vector<Segment> facesInside(const plan::Job& job) {
  std::vector<Segment> faces;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    for (std::size_t i = 0; i < job.plan.rings[r].corners.size(); ++i) {
      const auto frame = frameOf(job, static_cast<int>(r), static_cast<int>(i));
      if (!frame) continue;
      const Vec in = frame->thickness_m * frame->inward;
      faces.push_back({frame->face.a + in, frame->face.b + in});
    }
  }
  for (const plan::InnerWall& wall : job.plan.inner_walls) {
    for (std::size_t i = 0; i + 1 < wall.line_m.size(); ++i) {
      faces.push_back({wall.line_m[i], wall.line_m[i + 1]});
    }
  }
  return faces;
}

base::Result<plan::Job> withInnerWall(const plan::Job& job, const WallFrame& frame,
                                      const ThingLine& line) {
  const double offset = line.from_right ? frame.length_m - line.offset_m : line.offset_m;
  if (offset < 0.0 || offset > frame.length_m) return pastEnd(frame, line, 0.0);
  const Point start = frame.face.a + offset * frame.along + frame.thickness_m * frame.inward;
  double reach = line.width_m.value_or(std::numeric_limits<double>::infinity());
  if (!line.width_m) {
    for (const Segment& face : facesInside(job)) {
      if (const auto t = rayTo(start, frame.inward, face)) reach = std::min(reach, *t);
    }
  }
  if (!std::isfinite(reach)) return placeProblem("place.meets-nothing");
  plan::InnerWall wall;
  wall.line_m = {start, start + reach * frame.inward};
  return plan::addThing(job, wall);
}

base::Result<plan::Job> withOpening(const plan::Job& job, int ring, int edge,
                                    const ThingLine& line) {
  plan::Opening facts;
  facts.kind = line.opening;
  // A vent is always open; a flue terminal is none that lets air in.
  if (line.opening == plan::OpeningKind::air_vent) facts.opens = plan::Opens::vent;
  facts.sill_m = line.sill_m;
  facts.head_m = line.head_m;
  const plan::Side from = line.from_right ? plan::Side::right : plan::Side::left;
  const double width = line.width_m.value_or(0.0);
  base::Result<plan::Job> one =
      plan::addOpening(job, ring, edge, from, line.offset_m, width, facts);
  if (!one || line.times < 2) return one;
  const double pitch = line.offset_m + width;
  return plan::repeatOpening(*one, one->plan.openings.back().id, line.times - 1,
                             line.from_right ? -pitch : pitch);
}

}  // namespace

base::Result<plan::Job> placed(const plan::Job& job, int ring, int edge, const ThingLine& line) {
  SUMPWRIGHT_REQUIRE(line.ok());
  const auto frame = frameOf(job, ring, edge);
  if (!frame) return placeProblem("place.no-wall");
  switch (line.kind) {
    case LineKind::opening:
      return withOpening(job, ring, edge, line);
    case LineKind::inner_wall:
      return withInnerWall(job, *frame, line);
    case LineKind::service: {
      plan::Service service;
      service.kind = line.service;
      service.entry = onWall(*frame, ring, edge, line, 0.0);
      if (service.entry->offset_m < 0.0 || service.entry->offset_m > frame->length_m) {
        return pastEnd(*frame, line, 0.0);
      }
      if (line.width_m) {
        const Point entry = frame->face.a + service.entry->offset_m * frame->along;
        service.run = plan::RunKnown::drawn;
        service.run_m = {entry, entry - *line.width_m * frame->inward};
      }
      return plan::addThing(job, service);
    }
    case LineKind::radiator: {
      plan::Radiator radiator;
      radiator.width_m = line.width_m.value_or(0.0);
      radiator.on = onWall(*frame, ring, edge, line, radiator.width_m);
      if (radiator.on->offset_m < 0.0 ||
          radiator.on->offset_m + radiator.width_m > frame->length_m + 1e-3) {
        return pastEnd(*frame, line, radiator.width_m);
      }
      radiator.on->offset_m = std::min(radiator.on->offset_m, frame->length_m - radiator.width_m);
      return plan::addThing(job, radiator);
    }
  }
  return placeProblem("place.no-wall");
}

std::string lastAdded(const plan::Job& before, const plan::Job& after) {
  const auto newest = [](const auto& was, const auto& is) {
    return is.size() > was.size() ? is.back().id : std::string();
  };
  for (const std::string& id : {newest(before.plan.openings, after.plan.openings),
                                newest(before.plan.services, after.plan.services),
                                newest(before.plan.radiators, after.plan.radiators),
                                newest(before.plan.wall_features, after.plan.wall_features),
                                newest(before.plan.inner_walls, after.plan.inner_walls)}) {
    if (!id.empty()) return id;
  }
  return {};
}

}  // namespace sumpwright::tools
