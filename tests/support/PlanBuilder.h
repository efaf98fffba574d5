#pragma once
// Sound jobs for tests in one line each, then changed by chaining:
//
//   const plan::Job job = PlanBuilder::rectangle(10, 8).window("win1", 0, 2.0, 1.2).job();
//
// Every start is fully surveyed (kinds looked for, strip footings, 0.35 m walls, own ground with
// 3 m free, one ground-bearing slab and one living room inside the walls), so that a test only
// states what it is about. All houses are invented; their figures are the tests' own. Adding a
// thing turns its kind from looked_none to present. Metres; edges as in plan/Plan.h.

#include <functional>
#include <string>
#include <vector>

#include "geometry/Point.h"
#include "plan/Job.h"

namespace sumpwright::support {

using geometry::Point;
using geometry::Polygon;

class PlanBuilder {
 public:
  /// Corners (0,0) (w,0) (w,d) (0,d): edge 0 faces south and is the front, 1 east gable, 2 rear,
  /// 3 west gable.
  static PlanBuilder rectangle(double width_m = 10.0, double depth_m = 8.0);
  /// 10 x 8 with the north-east 4 x 3 cut out; edge 0 is the front. Corner 3 is the inner corner.
  static PlanBuilder lShape();
  /// 14 x 12 round a 4 x 3 courtyard at (5,5)..(9,8), ring 1, clockwise from (5,5).
  static PlanBuilder courtyard();
  /// Any counter-clockwise outline; no room and no zone (add them), edge 0 front.
  static PlanBuilder outline(Polygon corners);
  /// A rectangle nobody has surveyed: outline only, everything not looked for or unknown.
  static PlanBuilder bare(double width_m = 10.0, double depth_m = 8.0);

  PlanBuilder& hole(Polygon clockwise);  ///< a further courtyard ring
  PlanBuilder& window(const std::string& id, int edge, double offset_m, double width_m,
                      int ring = 0);
  PlanBuilder& door(const std::string& id, int edge, double offset_m, double width_m = 0.9,
                    int ring = 0);
  PlanBuilder& vent(const std::string& id, int edge, double offset_m, double width_m = 0.215,
                    int ring = 0);
  PlanBuilder& flue(const std::string& id, int edge, double offset_m, double width_m = 0.1,
                    int ring = 0);
  PlanBuilder& opening(plan::Opening opening);
  /// Entry whose run is overhead (so nothing buried is unknown); see run() and runUnknown().
  PlanBuilder& service(const std::string& id, plan::ServiceKind kind, int edge, double offset_m,
                       int ring = 0);
  PlanBuilder& run(const std::string& service, std::vector<Point> points);  ///< drawn run
  PlanBuilder& runUnknown(const std::string& service);
  PlanBuilder& room(const std::string& id, plan::RoomUse use, Polygon outline);
  PlanBuilder& zone(const std::string& id, plan::FloorKind kind, Polygon outline);
  PlanBuilder& noRooms();
  PlanBuilder& noZones();
  PlanBuilder& radiator(const std::string& id, int edge, double offset_m, double width_m,
                        int ring = 0);
  PlanBuilder& heatingPipe(const std::string& id, std::vector<Point> line);
  PlanBuilder& innerWall(const std::string& id, std::vector<Point> line);
  PlanBuilder& fitting(const std::string& id, plan::FittingKind kind, Point at);
  PlanBuilder& supply(const std::string& id, plan::SupplyKind kind, Point at);
  PlanBuilder& outside(const std::string& id, plan::OutsideKind kind, std::vector<Point> points);
  PlanBuilder& sump(const std::string& id, int ring, double chainage_m);
  PlanBuilder& waiver(plan::Waiver waiver);
  PlanBuilder& outlet(plan::OutletMode mode);
  PlanBuilder& wall(int edge, const std::function<void(plan::Wall&)>& change, int ring = 0);
  PlanBuilder& with(const std::function<void(plan::Job&)>& change);  ///< anything else

  /// The job as built.
  const plan::Job& job() const { return m_job; }
  operator const plan::Job&() const { return m_job; }  // NOLINT(google-explicit-constructor)

 private:
  PlanBuilder() = default;
  void addRing(Polygon corners);
  void surveyed();
  void insideOf(const Polygon& inner);

  plan::Job m_job;
};

}  // namespace sumpwright::support
