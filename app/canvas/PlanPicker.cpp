#include "canvas/PlanPicker.h"

#include <algorithm>
#include <limits>

#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "plan/Dimensions.h"
#include "plan/OutsideShape.h"
#include "tools/WallThing.h"

namespace sumpwright::canvas {

namespace {

using geometry::Point;

/// In the body of the wall between two places of its face.
bool inWall(const plan::Job& job, const plan::OnWall& from, double width_m, Point at,
            double slack_m, double outside_m) {
  const auto face = tools::faceOf(job.plan, from);
  if (!face) return false;
  const geometry::Vec run = face->b - face->a;
  const geometry::Vec along = (1.0 / geometry::norm(run)) * run;
  const double u = geometry::dot(at - face->a, along) - from.offset_m;
  const double depth = geometry::cross(along, at - face->a);
  return u >= -slack_m && u <= width_m + slack_m && depth >= -outside_m &&
         depth <= tools::wallThickness_m(job, from);
}

/// Those drawn in the gaps of walls: the last drawn lies on top. Thin ones have `reach_m` aside.
std::string inWalls(const plan::Job& job, Point at, double reach_m) {
  const auto hit = [&](const auto& thing, double slack_m) {
    return inWall(job, thing.at, thing.width_m, at, slack_m, 0.3 * reach_m);
  };
  for (const double slack_m : {0.0, reach_m}) {
    for (const plan::Opening& o : job.plan.openings) {
      if (o.storey == 0 && hit(o, o.width_m < reach_m ? slack_m : 0.0)) return o.id;
    }
    for (const plan::WallFeature& f : job.plan.wall_features) {
      if (hit(f, f.width_m < reach_m ? slack_m : 0.0)) return f.id;
    }
    for (const plan::Opening& o : job.plan.openings) {
      if (hit(o, 0.0)) return o.id;
    }
  }
  return {};
}

/// Keeps the nearest of what it is shown; ties stay with the first.
class Nearest {
 public:
  Nearest(Point at, double reach_m) : m_at(at), m_least_m(reach_m) {}
  void line(const std::string& id, const geometry::Polyline& line, double lead_m = 0.0) {
    if (!line.empty()) offer(id, geometry::distance(m_at, line) - lead_m);
  }
  void point(const std::string& id, Point p, double lead_m = 0.0) {
    offer(id, geometry::distance(m_at, p) - lead_m);
  }
  const std::string& id() const { return m_id; }

 private:
  void offer(const std::string& id, double away_m) {
    if (away_m > m_least_m || (!m_id.empty() && away_m >= m_least_m)) return;
    m_least_m = away_m;
    m_id = id;
  }
  Point m_at;
  double m_least_m;
  std::string m_id;
};

void offerRadiator(Nearest& nearest, const plan::Job& job, const plan::Radiator& r) {
  if (!r.on) return nearest.line(r.id, r.line_m);
  const auto face = tools::faceOf(job.plan, *r.on);
  if (!face) return;
  const geometry::Vec along = (1.0 / geometry::distance(face->a, face->b)) * (face->b - face->a);
  const Point from =
      face->a + r.on->offset_m * along + tools::wallThickness_m(job, *r.on) * geometry::left(along);
  nearest.line(r.id, {from, from + r.width_m * along});
}

void offerDimension(Nearest& nearest, const plan::Job& job, const plan::Dimension& d) {
  if (const auto line = plan::lineOf(job, d)) nearest.line(d.id, {line->a, line->b});
}

/// Points and lines. A point is drawn as a sign, so it reaches as far as that.
std::string onPlan(const plan::Job& job, const std::vector<drawing::ServiceSpot>& plates, Point at,
                   double reach_m) {
  Nearest nearest(at, reach_m);
  const double sign_m = 0.5 * reach_m;
  const plan::Plan& plan = job.plan;
  for (const auto& plate : plates) nearest.point(plate.service, plate.plate_m, sign_m);
  for (const auto& s : plan.supplies) nearest.point(s.id, s.at_m, sign_m);
  for (const auto& f : plan.fittings) nearest.point(f.id, f.at_m, sign_m);
  for (const auto& h : plan.test_holes) nearest.point(h.id, h.at_m, sign_m);
  for (const auto& s : job.design.sumps) {
    if (s.kind != plan::SumpKind::cored && s.at_m) nearest.point(s.id, *s.at_m, sign_m);
  }
  for (const auto& d : plan.inner_doors) {
    const auto from = plan::placeOf(job, {d.id, plan::ThingEnd::start});
    const auto to = plan::placeOf(job, {d.id, plan::ThingEnd::end});
    if (from && to) nearest.line(d.id, {*from, *to}, 0.25 * sign_m);  // before the wall it is in
  }
  for (const auto& r : plan.radiators) offerRadiator(nearest, job, r);
  for (const auto& plate : plates) nearest.line(plate.service, {plate.tip_m, plate.plate_m});
  for (const auto& s : plan.services) {
    if (s.run == plan::RunKnown::drawn) nearest.line(s.id, s.run_m);
  }
  for (const auto& w : plan.inner_walls) nearest.line(w.id, w.line_m);
  for (const auto& w : plan.rising_walls) nearest.line(w.id, w.line_m);
  for (const auto& p : plan.heating_pipes) nearest.line(p.id, p.line_m);
  for (const auto& t : plan.outside) {
    geometry::Polyline line = t.points_m;
    if (plan::enclosesArea(t)) line.push_back(line.front());
    nearest.line(t.id, line);
  }
  for (const auto& d : plan.dimensions) offerDimension(nearest, job, d);
  return nearest.id();
}

std::string inAreas(const plan::Job& job, Point at) {
  for (const auto& t : job.plan.outside) {
    if (plan::enclosesArea(t) && geometry::contains(t.points_m, at)) return t.id;
  }
  for (const auto& room : job.plan.rooms) {
    if (geometry::contains(room.outline_m, at)) return room.id;
  }
  for (const auto& zone : job.plan.floor_zones) {
    if (geometry::contains(zone.outline_m, at)) return zone.id;
  }
  return {};
}

}  // namespace

std::string thingAt(const plan::Job& job, const std::vector<drawing::ServiceSpot>& plates, Point at,
                    double reach_m) {
  if (std::string id = inWalls(job, at, reach_m); !id.empty()) return id;
  if (std::string id = onPlan(job, plates, at, reach_m); !id.empty()) return id;
  return inAreas(job, at);
}

std::optional<Point> spotOf(const plan::Job& job, const std::string& id) {
  for (const auto& room : job.plan.rooms) {
    if (room.id == id && room.outline_m.size() >= 3) return geometry::labelPoint(room.outline_m);
  }
  for (const auto& zone : job.plan.floor_zones) {
    if (zone.id == id && zone.outline_m.size() >= 3) return geometry::labelPoint(zone.outline_m);
  }
  for (const auto& d : job.plan.dimensions) {
    const auto from = d.id == id ? plan::placeOf(job, d.from) : std::nullopt;
    const auto to = from ? plan::placeOf(job, d.to) : std::nullopt;
    if (to) return geometry::lerp(*from, *to, 0.5);
  }
  return plan::placeOf(job, {id, plan::ThingEnd::middle});
}

}  // namespace sumpwright::canvas
