#pragma once
// How words are broken on paper.

#include <string>
#include <vector>

#include "dossier/Flow.h"

namespace sumpwright::dossier {

/// drawing::wrap(), but never within a quantity: a figure and its unit, feet and inches with their
/// fraction, a sign of about and its figure stay on one line where the width holds them.
std::vector<std::string> wrapped(const Desk& desk, const std::string& words, const Font& font,
                                 double width_mm);

/// The widest of what wrapped() does not break.
double widestWord_mm(const Desk& desk, const std::string& words, const Font& font);

}  // namespace sumpwright::dossier
