// Where to drill test holes: proposeHoles() and noDrill() of Fit.h.

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>

#include "base/Contract.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "perimeter/Perimeter.h"
#include "suction/Fit.h"
#include "suction/Sensitivity.h"

namespace sumpwright::suction {

namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

constexpr double kFromServices_m = 0.3;  // common practice
constexpr int kMostExchanges = 20;

struct Candidate {
  Point at;
  double suction_pa = 0.0;
  Vector3d row;  ///< derivatives over the reading's standard deviation
};

double lnVolume(const Matrix3d& information) { return std::log(information.determinant()); }

class HoleChooser {
 public:
  HoleChooser(std::vector<Candidate> candidates, const HoleOptions& options)
      : m_candidates(std::move(candidates)), m_options(options) {
    const double weight = 1.0 / (options.prior_sd * options.prior_sd);
    m_prior = weight * Matrix3d::Identity();
  }

  std::vector<ProposedHole> chosen() {
    std::vector<std::size_t> holes;
    const auto count = static_cast<std::size_t>(std::max(0, m_options.count));
    while (holes.size() < std::min(count, m_candidates.size())) {
      holes.push_back(bestBeside(holes));
    }
    for (int round = 0; round < kMostExchanges && exchanged(holes); ++round) {
    }
    std::vector<ProposedHole> proposed;
    for (std::size_t k = 0; k < holes.size(); ++k) {
      const Candidate& c = m_candidates[holes[k]];
      const double with = lnVolume(informationOf(holes));
      std::vector<std::size_t> without = holes;
      without.erase(without.begin() + static_cast<std::ptrdiff_t>(k));
      proposed.push_back({c.at, c.suction_pa, 0.5 * (with - lnVolume(informationOf(without)))});
    }
    return proposed;
  }

 private:
  Matrix3d informationOf(const std::vector<std::size_t>& holes) const {
    Matrix3d information = m_prior;
    for (const std::size_t k : holes) {
      information += m_candidates[k].row * m_candidates[k].row.transpose();
    }
    return information;
  }

  /// The candidate that adds most to these.
  std::size_t bestBeside(const std::vector<std::size_t>& holes) const {
    const Matrix3d inverse = informationOf(holes).inverse();
    std::size_t best = 0;
    double most = -1.0;
    for (std::size_t k = 0; k < m_candidates.size(); ++k) {
      if (std::find(holes.begin(), holes.end(), k) != holes.end()) continue;
      // det(M + r r^T) = det M (1 + r^T M^-1 r)
      const double gain = m_candidates[k].row.dot(inverse * m_candidates[k].row);
      if (gain <= most) continue;
      most = gain;
      best = k;
    }
    return best;
  }

  bool exchanged(std::vector<std::size_t>& holes) const {
    bool changed = false;
    for (std::size_t k = 0; k < holes.size(); ++k) {
      std::vector<std::size_t> others = holes;
      others.erase(others.begin() + static_cast<std::ptrdiff_t>(k));
      const double before = lnVolume(informationOf(holes));
      std::vector<std::size_t> next = others;
      next.push_back(bestBeside(others));
      if (lnVolume(informationOf(next)) <= before + 1e-9) continue;
      holes = next;
      changed = true;
    }
    return changed;
  }

  std::vector<Candidate> m_candidates;
  const HoleOptions& m_options;
  Matrix3d m_prior;
};

double distanceToJoint(const Network& network, Point at) {
  double least = std::numeric_limits<double>::infinity();
  for (const Joint& joint : network.joints) {
    least = std::min(least, geometry::distance(at, network.centre(joint.cell)));
  }
  return least;
}

bool isWet(plan::RoomUse use) {
  return use == plan::RoomUse::bathroom || use == plan::RoomUse::shower ||
         use == plan::RoomUse::wc || use == plan::RoomUse::utility;
}

bool isIn(const Polygon& area, Point at) { return geometry::distanceToArea(at, area) <= 0.0; }

/// Whether the floor there is not known to be of 2000 or later.
bool isOldFloor(const plan::Job& job, Point at) {
  constexpr int kWithoutAsbestosSince = 2000;  // from memory
  std::optional<int> built = job.house.year_built;
  for (const plan::FloorZone& zone : job.plan.floor_zones) {
    if (zone.year_built && isIn(zone.outline_m, at)) built = zone.year_built;
  }
  return !built || *built < kWithoutAsbestosSince;
}

}  // namespace

std::vector<ProposedHole> proposeHoles(const FieldSolver& solver, const Sink& sink,
                                       double flow_m3_s, const HoleOptions& options,
                                       const std::function<bool(Point)>& may) {
  SUMPWRIGHT_REQUIRE(solver.ok() && options.spacing_m > 0.0);
  const auto unit = solver.unit(sink);
  if (!unit) return {};
  const Network& network = solver.network();
  std::vector<double> suction = unit->suction;
  for (double& s : suction) s *= flow_m3_s;
  const auto by_t =
      sensitivity(network, solver.factor(), solver.scales(), suction, GroundPart::transmissivity);
  const auto by_l =
      sensitivity(network, solver.factor(), solver.scales(), suction, GroundPart::leakage);
  auto by_g = sensitivity(network, solver.factor(), solver.scales(), suction, GroundPart::joints);
  if (!options.fit_joints) std::fill(by_g.begin(), by_g.end(), 0.0);
  const int step =
      std::max(1, static_cast<int>(std::lround(options.spacing_m / network.frame.h_m)));
  std::vector<Candidate> candidates;
  for (std::size_t c = 0; c < network.cells.size(); ++c) {
    const Cell& cell = network.cells[c];
    if (cell.i % step != 0 || cell.j % step != 0 || !(cell.own_m2 > 0.0)) continue;
    const Point at = network.centre(static_cast<int>(c));
    if (geometry::distance(at, sink.at) < options.from_sump_m) continue;
    if (distanceToJoint(network, at) < options.from_edge_m || (may && !may(at))) continue;
    const double sd = readingSd_pa(suction[c]);
    candidates.push_back({at, suction[c], Vector3d{by_t[c], by_l[c], by_g[c]} / sd});
  }
  return HoleChooser(std::move(candidates), options).chosen();
}

std::optional<base::Message> noDrill(const plan::Job& job, Point at) {
  if (auto reason = noDrill(job.plan, at)) return reason;
  for (const plan::Room& room : job.plan.rooms) {
    if (room.old_tiles == plan::YesNo::no || !isIn(room.outline_m, at)) continue;
    if (room.old_tiles == plan::YesNo::yes) return base::Message("suction.hole.old-tiles");
    if (isOldFloor(job, at)) return base::Message("suction.hole.old-tiles-unknown");
  }
  return std::nullopt;
}

std::optional<base::Message> noDrill(const plan::Plan& plan, Point at) {
  for (const plan::FloorZone& zone : plan.floor_zones) {
    if (zone.underfloor_heating && isIn(zone.outline_m, at)) {
      return base::Message("suction.hole.underfloor-heating");
    }
  }
  for (const plan::Room& room : plan.rooms) {
    if (isWet(room.use) && isIn(room.outline_m, at)) {
      return base::Message("suction.hole.wet-room");
    }
  }
  for (const plan::Service& service : plan.services) {
    if (geometry::distance(at, service.run_m) < kFromServices_m) {
      return base::Message("suction.hole.service");
    }
  }
  for (const plan::HeatingPipe& pipe : plan.heating_pipes) {
    if (geometry::distance(at, pipe.line_m) < kFromServices_m) {
      return base::Message("suction.hole.heating-pipe");
    }
  }
  for (const plan::Fitting& fitting : plan.fittings) {
    if (geometry::distance(at, fitting.at_m) < kFromServices_m) {
      return base::Message("suction.hole.fitting");
    }
  }
  return std::nullopt;
}

}  // namespace sumpwright::suction
