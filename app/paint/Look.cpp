#include "paint/Look.h"

#include <QFontInfo>
#include <algorithm>
#include <cmath>

#include "paint/Fonts.h"

namespace sumpwright::paint {

using drawing::Theme;
using drawing::ThemeName;

namespace {

double pixelsOf(const QFont& font) {
  return font.pixelSize() > 0 ? font.pixelSize() : QFontInfo(font).pixelSize();
}

QString hex(const drawing::Colour& c) { return colour(c).name(); }

QColor halfway(const drawing::Colour& a, const drawing::Colour& b) {
  return QColor((a.r + b.r) / 2, (a.g + b.g) / 2, (a.b + b.b) / 2);
}

// $names are filled in from the theme; lengths marked px are scaled.
constexpr const char* kSheet = R"(
QToolTip { background: $raised; color: $ink; border: 1px solid $edge; padding: 4px 6px; }
QMenu { background: $raised; color: $ink; border: 1px solid $edge; padding: 4px; }
QMenu::item { padding: 7px 28px 7px 26px; border-radius: 4px; }
QMenu::item:selected { background: $seltint; color: $ink; }
QMenu::item:disabled { color: $dim; }
QMenu::separator { height: 1px; background: $hairline; margin: 4px 8px; }
QMenu::indicator { width: 14px; height: 14px; left: 7px; }

QPushButton, QToolButton { background: $raised; color: $ink; border: 1px solid $edge;
  border-radius: 6px; padding: 0 14px; min-height: 34px; font-weight: bold; }
QToolButton { padding: 0 10px; }
QPushButton:hover, QToolButton:hover { background: $paper; border-color: $ink2; }
QPushButton:pressed, QToolButton:pressed { background: $seltint; }
QPushButton:disabled, QToolButton:disabled { color: $dim; border-color: $hairline; background: $panel; }
QToolButton::menu-indicator { image: none; }
QPushButton[role="primary"], QToolButton[role="primary"] { background: $primary; color: $onprimary;
  border-color: $primary; }
QPushButton[role="primary"]:hover, QToolButton[role="primary"]:hover { background: $wall; border-color: $wall; }
QPushButton[role="primary"]:pressed, QToolButton[role="primary"]:pressed { background: $ink2; }
QPushButton[role="primary"]:disabled, QToolButton[role="primary"]:disabled { background: $rule;
  color: $panel; border-color: $rule; }
QPushButton[role="quiet"], QToolButton[role="quiet"] { background: transparent; border-color: transparent;
  font-weight: normal; color: $ink2; text-align: left; }
QPushButton[role="quiet"]:hover, QToolButton[role="quiet"]:hover { background: $raised; color: $ink; }
QToolButton[role="arrow"] { padding: 0; }
QToolButton[role="arrow"]:checked { background: $seltint; border: 2px solid $select; color: $select; }
QToolButton[role="square"] { padding: 0; min-width: 36px; max-width: 36px; min-height: 36px; max-height: 36px; }
QToolButton[role="square"]:checked { background: $seltint; border: 2px solid $select;
  min-width: 34px; max-width: 34px; min-height: 34px; max-height: 34px; }

QLineEdit, QPlainTextEdit, QComboBox, QDateEdit { background: $raised; color: $ink;
  border: 1px solid $edge; border-radius: 6px; padding: 0 8px; min-height: 34px;
  selection-background-color: $select; selection-color: $paper; }
QPlainTextEdit { padding: 4px 4px; }
QLineEdit:focus, QPlainTextEdit:focus, QComboBox:focus { border-color: $select; }
QLineEdit:disabled, QPlainTextEdit:disabled, QComboBox:disabled { color: $dim; border-color: $hairline; }
QComboBox::drop-down { border: none; width: 24px; }
QComboBox::down-arrow { image: none; width: 0; height: 0; }
QComboBox QAbstractItemView { background: $raised; color: $ink; border: 1px solid $edge; outline: none;
  selection-background-color: $seltint; selection-color: $ink; }
QComboBox QAbstractItemView::item { min-height: 30px; }

QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; border: none; }
QScrollBar:vertical { background: transparent; width: 10px; margin: 0; }
QScrollBar::handle:vertical { background: $rule; border-radius: 3px; min-height: 28px; margin: 0 2px; }
QScrollBar::handle:vertical:hover { background: $edge; }
QScrollBar:horizontal { background: transparent; height: 10px; margin: 0; }
QScrollBar::handle:horizontal { background: $rule; border-radius: 3px; min-width: 28px; margin: 2px 0; }
QScrollBar::handle:horizontal:hover { background: $edge; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: none; }

QWidget[surface="desk"] { background: $desk; }
QWidget[surface="panel"] { background: $panel; }
QWidget[surface="paper"] { background: $paper; }
QFrame[line="true"] { background: $hairline; border: none; }
QLabel { background: transparent; color: $ink; }
QLabel[tone="second"] { color: $ink2; }
QLabel[tone="warning"] { color: $warntext; }
QDialog, QMessageBox { background: $panel; }
QTableView { background: $raised; color: $ink; border: 1px solid $edge; gridline-color: $hairline;
  selection-background-color: $seltint; selection-color: $ink; }
QTableWidget[bare="true"], QListWidget { background: transparent; border: none; outline: none; color: $ink;
  selection-background-color: $seltint; selection-color: $ink; }
QListWidget::item { padding: 3px 4px; border-radius: 4px; }
QListWidget::item:selected { background: $seltint; color: $ink; }
QListWidget::item:hover { background: $raised; }
QListWidget[choice="true"] { background: $raised; border: 1px solid $edge; border-radius: 6px; }
QHeaderView::section { background: $panel; color: $ink2; border: none; border-bottom: 1px solid $rule; padding: 6px; }
)";

/// Scales every "<n>px" of the sheet but hairlines.
QString scaledSheet(QString sheet, double scale) {
  if (std::abs(scale - 1.0) < 0.02) return sheet;
  QString out;
  for (qsizetype i = 0; i < sheet.size();) {
    qsizetype end = i;
    while (end < sheet.size() && sheet[end].isDigit()) ++end;
    if (end > i && QStringView(sheet).mid(end, 2) == QLatin1String("px")) {
      const int px = QStringView(sheet).mid(i, end - i).toInt();
      out += QString::number(px <= 1 ? px : std::lround(px * scale));
      i = end;
    } else {
      out += sheet[i++];
    }
  }
  return out;
}

}  // namespace

QColor colour(const drawing::Colour& c) { return QColor(c.r, c.g, c.b, c.a); }

ThemeName themeOf(const QPalette& palette) {
  return palette.color(QPalette::Window).lightness() < 128 ? ThemeName::dark : ThemeName::light;
}

QPalette paletteOf(ThemeName name) {
  const Theme& t = drawing::theme(name);
  QPalette p;
  p.setColor(QPalette::Window, colour(t.panel));
  p.setColor(QPalette::WindowText, colour(t.ink));
  p.setColor(QPalette::Base, colour(t.raised));
  p.setColor(QPalette::AlternateBase, colour(t.panel));
  p.setColor(QPalette::Text, colour(t.ink));
  p.setColor(QPalette::PlaceholderText, colour(t.ink3));
  p.setColor(QPalette::Button, colour(t.raised));
  p.setColor(QPalette::ButtonText, colour(t.ink));
  p.setColor(QPalette::BrightText, colour(t.paper));
  p.setColor(QPalette::ToolTipBase, colour(t.raised));
  p.setColor(QPalette::ToolTipText, colour(t.ink));
  p.setColor(QPalette::Highlight, colour(t.selection));
  p.setColor(QPalette::HighlightedText, colour(t.paper));
  p.setColor(QPalette::Link, colour(t.selection));
  p.setColor(QPalette::Light, colour(t.raised));
  p.setColor(QPalette::Midlight, colour(t.hairline));
  p.setColor(QPalette::Mid, colour(t.rule));
  p.setColor(QPalette::Dark, colour(t.control_edge));
  p.setColor(QPalette::Shadow, colour(t.desk));
  for (const QPalette::ColorRole role :
       {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
    p.setColor(QPalette::Disabled, role, halfway(t.ink, t.panel));
  }
  return p;
}

QString styleSheetOf(ThemeName name, double scale) {
  const Theme& t = drawing::theme(name);
  QString sheet = scaledSheet(QString::fromLatin1(kSheet), scale);
  // Longer names first where one begins another.
  const std::pair<const char*, QString> names[] = {
      {"$onprimary", hex(t.primary_text)},
      {"$primary", hex(t.primary)},
      {"$seltint", hex(t.selection_tint)},
      {"$select", hex(t.selection)},
      {"$warntext", hex(t.warning_text)},
      {"$hairline", hex(t.hairline)},
      {"$raised", hex(t.raised)},
      {"$panel", hex(t.panel)},
      {"$paper", hex(t.paper)},
      {"$desk", hex(t.desk)},
      {"$edge", hex(t.control_edge)},
      {"$rule", hex(t.rule)},
      {"$ink2", hex(t.ink2)},
      {"$ink", hex(t.ink)},
      {"$wall", hex(t.wall)},
      {"$dim", halfway(t.ink, t.panel).name()},
  };
  for (const auto& [key, value] : names) sheet.replace(QLatin1String(key), value);
  return sheet;
}

QFont bodyFont(const QFont& system) {
  QFont font = system;
  font.setFamilies(drawingFamilies() << system.family());
  font.setPixelSize(static_cast<int>(std::lround(std::max(kBodyPx, pixelsOf(system)))));
  return font;
}

QFont sized(const QFont& base, double factor, bool bold, bool italic) {
  QFont font = base;
  const double body = pixelsOf(base);
  const double least = 11.0 / kBodyPx * body;
  font.setPixelSize(static_cast<int>(std::lround(std::max(least, factor * body))));
  font.setBold(bold);
  font.setItalic(italic);
  return font;
}

double uiScale(const QFont& font) { return pixelsOf(font) / kBodyPx; }

}  // namespace sumpwright::paint
