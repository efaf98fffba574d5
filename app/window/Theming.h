#pragma once
// Light or dark: the user's choice or the system's, put on the whole application.

#include <QString>

#include "drawing/Theme.h"

namespace sumpwright::window {

enum class ThemeChoice;

ThemeChoice themeFromText(const QString& text);
QString textOf(ThemeChoice choice);

/// Fusion style and the program's font; called once, before the first window, and remembers the
/// palette and font of the system.
void prepareLook();
/// Palette and style sheet of the application.
void applyTheme(ThemeChoice choice);

}  // namespace sumpwright::window
