#include "window/Theming.h"

#include <QApplication>
#include <QStyleFactory>
#include <optional>

#include "paint/Look.h"
#include "window/MainWindow.h"

namespace sumpwright::window {

namespace {

/// As it was before the program put its own on; Qt 6.4 tells of no change while it runs.
std::optional<drawing::ThemeName>& systemTheme() {
  static std::optional<drawing::ThemeName> theme;
  return theme;
}

}  // namespace

ThemeChoice themeFromText(const QString& text) {
  if (text == QLatin1String("light")) return ThemeChoice::light;
  if (text == QLatin1String("dark")) return ThemeChoice::dark;
  return ThemeChoice::system;
}

QString textOf(ThemeChoice choice) {
  switch (choice) {
    case ThemeChoice::light:
      return QStringLiteral("light");
    case ThemeChoice::dark:
      return QStringLiteral("dark");
    case ThemeChoice::system:
      break;
  }
  return QStringLiteral("system");
}

void prepareLook() {
  if (systemTheme()) return;
  systemTheme() = paint::themeOf(QApplication::palette());
  QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
  QApplication::setFont(paint::bodyFont(QApplication::font()));
}

void applyTheme(ThemeChoice choice) {
  prepareLook();
  drawing::ThemeName name = *systemTheme();
  if (choice == ThemeChoice::light) name = drawing::ThemeName::light;
  if (choice == ThemeChoice::dark) name = drawing::ThemeName::dark;
  QApplication::setPalette(paint::paletteOf(name));
  qApp->setStyleSheet(paint::styleSheetOf(name, paint::uiScale(QApplication::font())));
}

}  // namespace sumpwright::window
