#pragma once
// What the stage Run says of a sump, as plain values in the user's words and units.

#include <QString>
#include <vector>

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

std::vector<RunLine> runLines(const siting::Study& study, const plan::Sump& sump,
                              const build::DrillSection& section);

/// What somebody has to see to before the work: the section's notes, then what is not answered.
QStringList runNotes(const siting::Study& study, const build::DrillSection& section);
/// What was assumed, each with its mark.
QStringList runAssumed(const siting::Study& study, const build::DrillSection& section);

/// A few words for the stage's entry in the rail.
QString runBriefly(const build::DrillSection& section);

}  // namespace sumpwright::stages
