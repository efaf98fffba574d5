#pragma once
// How loud a fan outside is, roughly.

#include <optional>

#include "rules/Judge.h"

namespace sumpwright::build {

/// Sound power taken where no maker's figure is at hand, dB(A) (own figure).
inline constexpr double kFanSound_db = 50.0;

/// Level at a distance from a source against a wall near the ground, into a quarter of space:
/// L = Lw - 10 log10(pi r2) (derived: directivity 4 over 4 pi r2). 50 dB make 39 at 2 m. Contract:
/// distance above nothing.
double levelAt_db(double power_db, double distance_m);

/// A window that somebody sleeps behind, own or the neighbour's, and how far the placed fan is from
/// it.
struct Hearer {
  double distance_m = 0.0;
  base::Message label;
};
/// The nearest; nothing without a placed run, a fan outside, or such a window.
std::optional<Hearer> nearestHearer(const rules::Site& site, perimeter::Place hole);

}  // namespace sumpwright::build
