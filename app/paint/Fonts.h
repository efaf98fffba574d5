#pragma once
// The program's font family.

#include <QString>
#include <QStringList>

namespace sumpwright::paint {

/// B612 in its proportional cut where it is installed, then DejaVu Sans. Asking for "B612" by name
/// is not enough: the files of B612 Mono call themselves "B612" as well (name table, typographic
/// family), and which of the two answers is the order of a directory. So the four proportional
/// files are looked up in the system's font folders and added under a name nobody else has. Needs a
/// QGuiApplication.
QStringList drawingFamilies();

/// The public name, for files that name fonts without holding them (SVG).
QStringList publicFamilies();

}  // namespace sumpwright::paint
