#pragma once
// What the stage Run says of a sump, as plain values in the user's words and units.

#include <QString>
#include <vector>

#include "build/CableRoute.h"
#include "build/DrillSection.h"
#include "siting/Study.h"

namespace sumpwright::stages {

/// One line of the list beside the elevation.
struct RunLine {
  QString label;
  QString value;
  bool warning = false;
};

/// The word beside the sign, and which sign: fits, fits with advice, depends, does not fit.
QString fitWord(const build::DrillSection& section);
rules::State fitState(const build::DrillSection& section);

/// Of a sump whose hole stands at a place.
std::vector<RunLine> runLines(const siting::Study& study, const plan::Sump& sump,
                              perimeter::Place hole, const build::DrillSection& section,
                              const build::CableAnswer& cable);

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
