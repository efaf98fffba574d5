#pragma once
// What the stage Run says of a sump, as plain values in the user's words and units.

#include <QString>
#include <vector>

#include "build/CableRoute.h"
#include "build/DrillSection.h"
#include "build/Run.h"
#include "siting/RunDuty.h"
#include "siting/Study.h"

namespace sumpwright::stages {

/// One line of the list beside the elevation.
struct RunLine {
  QString label;
  QString value;
  bool warning = false;
};

/// Pipe and air of one sump's run.
struct RunAir {
  double before_m = 0.0;  ///< pipe from the pit to the fan ...
  double after_m = 0.0;   ///< ... and on to the open air
  int bends = 0;
  bool assumed = true;                  ///< neither drawn nor stated
  std::optional<double> exposed_m;      ///< of a placed discharge
  std::optional<siting::RunDuty> duty;  ///< nothing: the fan has no duty point
};

/// Of a sump whose hole stands at a place: its run as drawn, with the duty of `answer` where that
/// counts the sump (nullptr: none), else what the fan moves at most.
RunAir runAir(const siting::Study& study, const plan::Sump& sump, perimeter::Place hole,
              const siting::SuctionAnswer* answer);

/// Lines on pipe, air, speed and power.
std::vector<RunLine> airLines(const RunAir& air, const plan::Job& job);

/// The word beside the sign, and which sign: fits, fits with advice, depends, does not fit.
QString fitWord(const build::DrillSection& section);
rules::State fitState(const build::DrillSection& section);

/// Of a sump whose hole stands at a place.
std::vector<RunLine> runLines(const siting::Study& study, const plan::Sump& sump,
                              perimeter::Place hole, const build::DrillSection& section,
                              const build::CableAnswer& cable, const RunAir& air);

/// What somebody has to see to before the work: the section's notes, what is not answered, the
/// cable's cautions.
QStringList runNotes(const siting::Study& study, const build::DrillSection& section,
                     const build::CableAnswer& cable);
/// What was assumed, each with its mark.
QStringList runAssumed(const siting::Study& study, const build::DrillSection& section,
                       const build::CableAnswer& cable);

/// The shortest cable to each of the nearest supplies, and where none leads.
QStringList runSupplies(const siting::Study& study, const build::CableAnswer& cable);

/// A few words for the stage's entry in the rail.
QString runBriefly(const build::DrillSection& section);

}  // namespace sumpwright::stages
