#pragma once
// A list of rows under a note.

#include <QLabel>

namespace sumpwright::stages {

/// Lays a list out as a column with a note of its own on top, empty as yet; rows go into its
/// layout.
QLabel* noteOnTop(QWidget* list);

}  // namespace sumpwright::stages
