#pragma once
// Numbers typed while something is held with the pointer: a length, or two as tools/PairText.h
// reads them ("1.20 1.05"); Tab parts them for certain. What is one length (12' 6") is never two.

#include <QString>
#include <vector>

#include "tools/LengthText.h"

class QKeyEvent;

namespace sumpwright::canvas {

/// Takes a key into `typed`: what belongs to a length, space and Tab between lengths, Backspace.
/// Only a figure or a decimal mark begins. True when taken.
bool takeNumberKey(QString& typed, const QKeyEvent& event);

/// The lengths so far, metres, two at most; one that cannot be read (yet) is left out.
std::vector<double> typedLengths(const QString& typed, tools::BareUnit bare);
/// Whether all that is typed can be read.
bool typedWhole(const QString& typed, tools::BareUnit bare);

}  // namespace sumpwright::canvas
