#pragma once
// What the survey says in words: directions, lengths to the millimetre, closing error. Plain
// values, tested without a widget.

#include <QLabel>
#include <QString>

#include "geometry/Traverse.h"
#include "plan/Job.h"

namespace sumpwright::stages {

/// Gives a label the colour of a warning or of what is said beside: that of the theme, whichever
/// comes.
void setTone(QLabel* label, bool warning);

/// To the millimetre, or to an eighth of an inch.
QString tapedLength(double metres, const plan::Job& job);
/// The same without its unit, as it would be typed.
QString typedLength(double metres, const plan::Job& job);
/// "east", "north-west", or "123.5°" off the eighths: by the compass, for a sheet bearing.
QString directionText(double sheet_deg, const plan::Job& job);
/// "14 mm", or metres from 1 m on.
QString gapText(double gap_m, const plan::Job& job);
/// "1 in 3 550 of 50.20 m"; "closes exactly" without a gap.
QString oneInText(const geometry::Closing& closing, const plan::Job& job);
/// "Wall 4 would close it if it were 6.895 m, not 6.985 m: two digits changed round."
QString misreadText(const geometry::Misread& misread, double as_taped_m, std::size_t more,
                    const plan::Job& job);

}  // namespace sumpwright::stages
