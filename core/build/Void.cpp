#include "build/Void.h"

#include <cmath>

#include "build/Figures.h"
#include "geometry/HalfBall.h"

namespace sumpwright::build {

namespace {

constexpr double kLitre_m3 = 0.001;

void noteVoid(const BuildUp& up, Void& made) {
  const double litres = made.volume_m3 / kLitre_m3;
  if (litres < kLeastVoid_l) {
    made.notes.emplace_back("section.void.small", std::vector{base::number("litres", litres),
                                                              base::number("least", 7.0)});
  }
  if (up.fill == plan::Fill::none && litres < kTightVoid_l - 0.5) {
    made.notes.emplace_back("section.void.tight", std::vector{base::number("advised", 28.0)});
  }
  if (made.reach_m > kArm_m) {
    made.notes.emplace_back("section.void.reach", std::vector{base::metres("reach", made.reach_m),
                                                              base::metres("arm", kArm_m)});
  }
  if (made.bottom_m < up.footing_high_m - kFootingThin_m) {
    made.notes.emplace_back("section.void.footing");
  }
}

}  // namespace

Void voidOf(const BuildUp& up, std::optional<double> litres, double fall) {
  Void made;
  made.volume_stated = litres.has_value();
  const double usual = up.fill == plan::Fill::none ? kTightVoid_l : kBucket_l;
  made.volume_m3 = litres.value_or(usual) * kLitre_m3;
  made.radius_m = geometry::halfBallRadius_m(made.volume_m3);
  made.buckets = made.volume_m3 / kLitre_m3 / kBucket_l;
  made.past_inner_m = 2.0 * made.radius_m;
  made.reach_m = (up.wall_m + made.past_inner_m) * std::sqrt(1.0 + fall * fall);
  made.bottom_m = up.underside_m() - made.radius_m;
  noteVoid(up, made);
  return made;
}

}  // namespace sumpwright::build
