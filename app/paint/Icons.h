#pragma once
// The window's icons, drawn here so that they take the theme's ink and any scale.

#include <QIcon>
#include <QPainter>

#include "drawing/Theme.h"
#include "rules/Finding.h"

namespace sumpwright::paint {

enum class Glyph {
  undo,
  redo,
  sheet,
  plus,
  minus,
  fit,
  previous_stretch,
  next_stretch,
  menu,
  close,
  go,
  warning,
  printer,
  page_left,
  page_right,
  choose,
  opening,
  service,
  on_wall,
  at_point,
  outline,
  line,
  area,
  measure
};

/// Painted in the ink of the application's palette at the moment of painting.
QIcon icon(Glyph glyph);
void paintGlyph(QPainter& painter, Glyph glyph, const QRectF& box, const QColor& ink);

/// The sign of a state, as the drawings have it, `size` across.
void paintSign(QPainter& painter, rules::State state, QPointF centre, double size,
               drawing::ThemeName theme);

/// A sample of a state's band, as in the drawings' legends.
void paintBand(QPainter& painter, rules::State state, const QRectF& box, double scale,
               drawing::ThemeName theme);

/// The program's mark: a floor line, the hole through it and the pit below.
void paintMark(QPainter& painter, const QRectF& box, const drawing::Theme& theme);

}  // namespace sumpwright::paint
