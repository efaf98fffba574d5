#pragma once
// Numbers typed while something is held with the pointer: "1.20 1.05", parted by space or Tab.

#include <QString>
#include <vector>

#include "tools/LengthText.h"

class QKeyEvent;

namespace sumpwright::canvas {

/// Takes a key into `typed`: what belongs to a length, space and Tab between lengths, Backspace.
/// Only a figure or a decimal mark begins. True when taken.
bool takeNumberKey(QString& typed, const QKeyEvent& event);

/// The lengths so far, metres; one that cannot be read (yet) and all after it are left out.
std::vector<double> typedLengths(const QString& typed, tools::BareUnit bare);
/// Whether all that is typed can be read.
bool typedWhole(const QString& typed, tools::BareUnit bare);

}  // namespace sumpwright::canvas
