#include <algorithm>
#include <array>
#include <cmath>

#include "plan/Checks.h"
#include "plan/WallThickness.h"

namespace sumpwright::plan {

namespace {

using base::Gravity;

struct FloorLayer {
  const char* key;
  std::optional<double> House::*thickness;
};

constexpr auto kFloorLayers = std::to_array<FloorLayer>({{"cavity_m", &House::cavity_m},
                                                         {"slab_m", &House::slab_m},
                                                         {"screed_m", &House::screed_m},
                                                         {"insulation_m", &House::insulation_m},
                                                         {"hardcore_m", &House::hardcore_m}});

void checkBuildUp(const House& house, ProblemList& problems) {
  for (const FloorLayer& layer : kFloorLayers) {
    const auto& thickness = house.*layer.thickness;
    if (thickness && *thickness < 0.0) {
      problems.add("plan.house.negative", at("/house", layer.key),
                   {base::metres("thickness", *thickness)});
    }
  }
  if (house.wall_thickness_m) {
    checkThickness(*house.wall_thickness_m, "plan.wall.thickness", "/house/wall_thickness_m", "",
                   problems);
  } else if (const auto thickness = thicknessOf(house.wall_layers)) {
    checkThickness(*thickness, "plan.wall.thickness", "/house/wall_layers", "", problems);
  }
  if (house.cavity_m && house.wall_thickness_m && *house.cavity_m > 0.0 &&
      *house.cavity_m >= *house.wall_thickness_m) {
    problems.add(
        "plan.house.cavity", "/house/cavity_m",
        {base::metres("cavity", *house.cavity_m), base::metres("wall", *house.wall_thickness_m)});
  }
  if (house.barrier == Barrier::unknown) {
    problems.add(Gravity::missing, "plan.house.barrier-unknown", "/house/barrier");
  }
}

void checkFooting(const Job& job, ProblemList& problems) {
  const House& house = job.house;
  const auto& low = house.footing_top_low_m;
  const auto& high = house.footing_top_high_m;
  if (low && high && *low > *high) {
    problems.add("plan.house.footing-reversed", "/house/footing_top_low_m",
                 {base::metres("low", *low), base::metres("high", *high)});
  }
  // A footing stands in the ground; a top measured from the wrong level does not.
  const double ground = std::min(highestGround_m(job).value_or(0.0), 0.0);
  if (high && *high > ground) {
    problems.add(Gravity::missing, "plan.house.footing-above-ground", "/house/footing_top_high_m",
                 {base::metres("footing", *high), base::metres("ground", ground)});
  }
  if (!low || !high) {
    problems.add(
        Gravity::missing, "plan.house.footing-unknown",
        low ? "/house/footing_top_high_m" : "/house/footing_top_low_m",
        {base::metres("low", kAssumedFootingLow_m), base::metres("high", kAssumedFootingHigh_m)});
  }
}

void checkStandby(const Job& job, ProblemList& problems) {
  const StandbySump& standby = job.house.standby;
  if (standby.state == StandbyState::found && !standby.at_m && standby.where.empty()) {
    problems.add(Gravity::missing, "plan.standby.where-unknown", "/house/standby/where");
  }
  const bool looked = standby.state != StandbyState::not_searched ||
                      job.looked_for.standby_pipe != Looked::not_looked;
  if (looked) return;
  if (!job.house.year_built) {
    problems.add(Gravity::missing, "plan.house.year-unknown", "/house/year_built",
                 {base::text("since", std::to_string(kStandbySince))});
  } else if (*job.house.year_built >= kStandbySince) {
    problems.add(Gravity::missing, "plan.standby.not-searched", "/house/standby/state",
                 {base::text("year", std::to_string(*job.house.year_built)),
                  base::text("since", std::to_string(kStandbySince))});
  }
}

void checkYear(const Job& job, ProblemList& problems) {
  if (!job.house.year_built || !isDate(job.surveyed_on)) return;
  const int surveyed = std::stoi(job.surveyed_on.substr(0, 4));
  if (*job.house.year_built <= surveyed) return;
  problems.add("plan.house.year-after-survey", "/house/year_built",
               {base::text("year", std::to_string(*job.house.year_built)),
                base::text("surveyed", job.surveyed_on)});
}

/// A sill or threshold that somebody reaches with a tape.
void checkDatum(const House& house, ProblemList& problems) {
  constexpr double kFarthest_m = 5.0;  // own figure
  if (!house.height_datum_m || std::abs(*house.height_datum_m) <= kFarthest_m) return;
  problems.add("plan.house.datum", "/house/height_datum_m",
               {base::metres("level", *house.height_datum_m), base::metres("most", kFarthest_m)});
}

}  // namespace

void checkHouse(const Job& job, ProblemList& problems) {
  checkYear(job, problems);
  checkBuildUp(job.house, problems);
  checkFooting(job, problems);
  checkDatum(job.house, problems);
  checkStandby(job, problems);
}

}  // namespace sumpwright::plan
