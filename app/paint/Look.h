#pragma once
// The window's colours, type sizes and style sheet, all made from drawing::theme. Widgets that
// paint themselves find their theme in their palette, so that nothing is handed down to them.

#include <QColor>
#include <QFont>
#include <QPalette>
#include <QString>

#include "drawing/Theme.h"

namespace sumpwright::paint {

QColor colour(const drawing::Colour& colour);

/// Light or dark, judged by the window colour.
drawing::ThemeName themeOf(const QPalette& palette);
inline const drawing::Theme& look(const QPalette& palette) {
  return drawing::theme(themeOf(palette));
}

QPalette paletteOf(drawing::ThemeName name);
/// One style sheet for the whole window; `scale` as uiScale().
QString styleSheetOf(drawing::ThemeName name, double scale);

/// Body size at 100 %, px: every size in the window is a multiple of the font's.
inline constexpr double kBodyPx = 13.0;

/// B612, else DejaVu Sans, else the system's own, in the system font's size (never under kBodyPx).
QFont bodyFont(const QFont& system);
/// `factor` times the size of `base`, never under 11 px at 100 %.
QFont sized(const QFont& base, double factor, bool bold = false, bool italic = false);
/// How much larger than at 100 % things are drawn: the font's size over kBodyPx.
double uiScale(const QFont& font);

}  // namespace sumpwright::paint
