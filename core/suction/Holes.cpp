// Where to drill test holes: proposeHoles() and noDrill() of Fit.h.

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "base/Contract.h"
#include "geometry/Distance.h"
#include "geometry/Shapes.h"
#include "perimeter/Perimeter.h"
#include "suction/FitForward.h"

namespace sumpwright::suction {

namespace {

constexpr int kHoleParts = static_cast<int>(Narrowed::kParts);
using HoleInformation = Eigen::Matrix<double, kHoleParts, kHoleParts>;
using HoleRow = Eigen::Matrix<double, kHoleParts, 1>;

constexpr double kFromServices_m = 0.3;  // common practice
constexpr int kMostExchanges = 20;
constexpr double kSameRoom = 0.5;  // what a hole in a room that has one must be beaten by (own)

struct Candidate {
  Point at;
  double suction_pa = 0.0;
  HoleRow row;  ///< derivatives over the reading's standard deviation
  int room = -1;
};

double lnVolume(const HoleInformation& information) { return std::log(information.determinant()); }

class HoleChooser {
 public:
  HoleChooser(std::vector<Candidate> candidates, std::vector<Candidate> there, double apart_m,
              const HoleOptions& options)
      : m_candidates(std::move(candidates)),
        m_there(std::move(there)),
        m_apart_m(apart_m),
        m_count(static_cast<std::size_t>(std::clamp(options.count, 2, 5))) {
    const FitOptions& fit = options.fit;
    const std::array<double, Narrowed::kParts> sds{fit.prior_sd, fit.prior_sd, fit.split_sd,
                                                   fit.footing_sd};
    m_known = HoleInformation::Zero();
    for (int k = 0; k < kHoleParts; ++k) {
      const double sd = sds[static_cast<std::size_t>(k)];
      m_known(k, k) = 1.0 / (sd * sd);
    }
    for (const Candidate& hole : m_there) m_known += hole.row * hole.row.transpose();
  }

  std::vector<ProposedHole> chosen() {
    std::vector<std::size_t> holes;
    while (holes.size() < m_count) {
      const auto next = bestBeside(holes);
      if (!next) break;
      holes.push_back(*next);
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
  HoleInformation informationOf(const std::vector<std::size_t>& holes) const {
    HoleInformation information = m_known;
    for (const std::size_t k : holes) {
      information += m_candidates[k].row * m_candidates[k].row.transpose();
    }
    return information;
  }

  bool standsApart(const Candidate& candidate, const std::vector<std::size_t>& holes) const {
    const auto near = [&](const Candidate& other) {
      return geometry::distance(candidate.at, other.at) < m_apart_m;
    };
    return std::none_of(m_there.begin(), m_there.end(), near) &&
           std::none_of(holes.begin(), holes.end(),
                        [&](std::size_t k) { return near(m_candidates[k]); });
  }

  bool hasRoom(int room, const std::vector<std::size_t>& holes) const {
    if (room < 0) return false;
    return std::any_of(m_there.begin(), m_there.end(),
                       [&](const Candidate& c) { return c.room == room; }) ||
           std::any_of(holes.begin(), holes.end(),
                       [&](std::size_t k) { return m_candidates[k].room == room; });
  }

  /// The candidate that adds most to these, in a room of its own if it can be.
  std::optional<std::size_t> bestBeside(const std::vector<std::size_t>& holes) const {
    const HoleInformation inverse = informationOf(holes).inverse();
    std::optional<std::size_t> best;
    double most = -1.0;
    for (std::size_t k = 0; k < m_candidates.size(); ++k) {
      const Candidate& candidate = m_candidates[k];
      // det(M + r r^T) = det M (1 + r^T M^-1 r)
      double gain = candidate.row.dot(inverse * candidate.row);
      if (hasRoom(candidate.room, holes)) gain *= kSameRoom;
      if (gain <= most || !standsApart(candidate, holes)) continue;
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
      const auto best = bestBeside(others);
      if (!best) continue;
      next.push_back(*best);
      if (lnVolume(informationOf(next)) <= before + 1e-9) continue;
      holes = next;
      changed = true;
    }
    return changed;
  }

  std::vector<Candidate> m_candidates;
  std::vector<Candidate> m_there;
  double m_apart_m;
  std::size_t m_count;
  HoleInformation m_known;
};

/// Corner to corner of the box round the floor.
double longestWay_m(const Network& network) {
  constexpr double kFar = std::numeric_limits<double>::infinity();
  Point low{kFar, kFar};
  Point high{-kFar, -kFar};
  for (std::size_t c = 0; c < network.cells.size(); ++c) {
    if (!(network.cells[c].own_m2 > 0.0)) continue;
    const Point at = network.centre(static_cast<int>(c));
    low = {std::min(low.x, at.x), std::min(low.y, at.y)};
    high = {std::max(high.x, at.x), std::max(high.y, at.y)};
  }
  return low.x <= high.x ? geometry::distance(low, high) : 0.0;
}

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
  const auto changes =
      logChanges(network, solver.factor(), solver.scales(), leaksOf(network).soilShare(), suction);
  const auto candidateAt = [&](std::size_t cell, Point at) {
    Candidate candidate{at, suction[cell], HoleRow::Zero(),
                        options.room_of ? options.room_of(at) : -1};
    for (int p = 0; p < kHoleParts; ++p) {
      candidate.row[p] = changes[static_cast<std::size_t>(p)][cell] / readingSd_pa(suction[cell]);
    }
    return candidate;
  };
  std::vector<Candidate> there;
  for (const Point at : options.there) {
    const int cell = network.cellNear(at);
    if (cell >= 0) there.push_back(candidateAt(static_cast<std::size_t>(cell), at));
  }
  const int step =
      std::max(1, static_cast<int>(std::lround(options.spacing_m / network.frame.h_m)));
  std::vector<Candidate> candidates;
  for (std::size_t c = 0; c < network.cells.size(); ++c) {
    const Cell& cell = network.cells[c];
    if (cell.i % step != 0 || cell.j % step != 0 || !(cell.own_m2 > 0.0)) continue;
    const Point at = network.centre(static_cast<int>(c));
    if (geometry::distance(at, sink.at) < options.from_sump_m) continue;
    if (distanceToJoint(network, at) < options.from_edge_m || (may && !may(at))) continue;
    candidates.push_back(candidateAt(c, at));
  }
  return HoleChooser(std::move(candidates), std::move(there), options.apart * longestWay_m(network),
                     options)
      .chosen();
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
