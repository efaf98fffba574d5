#pragma once
// Who takes back what: a field what is typed in it, the window what was taken from it.

#include <QEvent>
#include <QWidget>

namespace sumpwright::stages {

/// Whether this is a key for undo or redo on a field that has nothing of its own to take back or
/// bring again: it is the window's then, and the event says so. For an event filter of the field.
bool isWindowsUndo(QWidget* field, QEvent* event);

/// What is typed in the field was taken: from here on undo is the window's.
void forgetTyping(QWidget* field);

}  // namespace sumpwright::stages
