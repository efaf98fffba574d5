#pragma once
// The ground as the job's pressure tests tell it. What is fitted here was measured in the holes;
// what is made of it elsewhere is a prediction.

#include <optional>
#include <vector>

#include "siting/Study.h"
#include "suction/Fit.h"
#include "suction/Presets.h"

namespace sumpwright::siting {

struct FittedGround {
  suction::Fit fit;
  suction::ModelChoices choices;  ///< the answer to what nobody knows that suits the readings best
  base::Message label;            ///< of that answer; empty where there is only one
  int tests = 0;                  ///< with a sump of the plan
  int readings = 0;               ///< that were fitted
  suction::Narrowed narrowed;     ///< meant only where usable()
  /// What was found, hole by hole, and what the readings cannot tell.
  std::vector<base::Message> sentences;
  bool usable() const {
    return fit.state == suction::FitState::settled || fit.state == suction::FitState::not_settled;
  }
};

/// All tests of the job together, about the middle of the ranges, by every answer to what nobody
/// knows; that with the least misfit is kept. Nothing where the job has no test. Guesses are
/// narrowed so that 95 % of them lie in the bands of the fit; the depth of fill stays in the middle
/// of its range, for only its product with the permeability is told.
std::optional<FittedGround> fittedGround(const Study& study, const suction::GroundRanges& ranges,
                                         double pit_m3, double cell_m);

/// Whether the job wants it and has any test.
bool wantsFit(const plan::Job& job);

}  // namespace sumpwright::siting
