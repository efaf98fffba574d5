#pragma once
// A slow judge of one place at a time, written from the definitions alone: it knows no intervals,
// only points, and shares no geometry with the core. Property tests hold the exact one against it.
//
// Distance: from the point on the outside face, straight, less half the core or pipe. Behind the
// wall: many rays in a band as wide as the core, each asked which room it enters first. Floor: the
// zone that holds the inner end of the drill line. Street side: walked along the ring.

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "build/BuildUp.h"
#include "plan/Job.h"
#include "rules/Finding.h"
#include "rules/Judge.h"
#include "rules/RuleSheet.h"

namespace sumpwright::support {

struct TwinFinding {
  std::string rule;
  std::string thing;
  rules::Weight weight = rules::Weight::binding;
  auto operator<=>(const TwinFinding&) const = default;
};

using TwinFindings = std::set<TwinFinding>;

std::string toText(const TwinFindings& findings);

class SampledTwin {
 public:
  SampledTwin(const plan::Job& job, const rules::RuleSheet& sheet, plan::OutletMode outlet,
              double core_m);

  double length_m(int ring) const;
  /// Everything that is said of a place. `rays`: how many across the band.
  TwinFindings at(int ring, double s, int rays = 24) const;
  /// Distance from the edge of hole or pipe of every thing a rule measures to, by id; empty where
  /// the rule has no distance or cannot be judged.
  std::map<std::string, double> distances(const rules::Rule& rule, int ring, double s,
                                          int rays = 24) const;
  /// Rooms behind a place, by id.
  std::set<std::string> roomsBehind(int ring, double s, int rays = 24) const;

 private:
  struct Here {
    std::size_t edge = 0;
    double u = 0.0;  ///< along the edge
    geometry::Point point;
    geometry::Vec along;
    geometry::Vec inward;
    double depth = 0.0;  ///< of the drill line
  };
  const plan::Ring& ringOf(int ring) const;
  double edgeLength(int ring, std::size_t edge) const;
  double edgeStart(int ring, std::size_t edge) const;
  double thickness(int ring, std::size_t edge) const;
  Here find(int ring, double s) const;
  bool saysNoCore(build::NoCore why, int ring, double s) const;
  bool addNoCore(const rules::Rule& rule, int ring, double s, TwinFindings& found) const;
  void addHole(const rules::Rule& rule, int ring, double s, TwinFindings& found) const;
  bool inHouse(geometry::Point p, double deeper_m) const;
  bool sees(geometry::Point a, geometry::Point b) const;
  /// Round the house: a search over corners; sides that go through it are measured straight.
  double alongString(geometry::Point from, const std::vector<geometry::Point>& points,
                     bool closed) const;
  double lastLeg(geometry::Point from, const std::vector<geometry::Point>& points,
                 bool closed) const;
  geometry::Point pointOn(const plan::OnWall& at, double further, double inwards) const;
  std::optional<double> half(const rules::Rule& rule) const;
  bool waitsForRiser(const rules::Rule& rule) const;
  double toOpening(const plan::Opening& o, const Here& here) const;
  void addClearances(const rules::Rule&, const Here&, std::map<std::string, double>&) const;
  void addPartyLines(const rules::Rule&, const Here&, std::map<std::string, double>&) const;
  void addAlong(const rules::Rule&, int ring, double s, std::map<std::string, double>&) const;
  void addHeating(const rules::Rule&, const Here&, std::map<std::string, double>&) const;
  void addFittings(const rules::Rule&, int ring, double s, int rays,
                   std::map<std::string, double>&) const;
  bool mayRunHere(const plan::Service& service, int ring, double s) const;
  std::string wallObjection(const rules::Rule& rule, const plan::Wall& wall) const;
  bool mayMeet(const rules::Rule& rule) const;
  bool meetsWall(const Here& here, int ring, geometry::Point from, geometry::Vec way,
                 double most) const;
  bool isBetweenWalls(const rules::Rule& rule, int ring, double s) const;
  void addFloor(const rules::Rule& rule, int ring, double s, TwinFindings& found) const;
  void addUnknownRuns(const rules::Rule& rule, int ring, double s, TwinFindings& found) const;
  void addGates(const rules::Rule& rule, TwinFindings& found) const;
  void judge(const rules::Rule& rule, int ring, double s, int rays, TwinFindings& found) const;

  plan::Job m_job;
  rules::RuleSheet m_sheet;
  plan::OutletMode m_outlet;
  std::shared_ptr<const rules::Site> m_site;  ///< for the drill section alone
  double m_core_m;
};

}  // namespace sumpwright::support
