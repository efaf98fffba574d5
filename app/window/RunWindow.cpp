#include "window/RunWindow.h"

#include <QApplication>
#include <QSettings>
#include <QTimer>

#include "window/Dialogs.h"
#include "window/MainWindow.h"
#include "window/Theming.h"

namespace sumpwright::window {

int runWindow(int argc, char** argv) {
  QApplication app(argc, argv);
  QApplication::setApplicationName(QStringLiteral("sumpwright"));
  QApplication::setApplicationVersion(QStringLiteral(SUMPWRIGHT_VERSION));
  QApplication::setDesktopFileName(QStringLiteral("sumpwright"));
  prepareLook();
  QSettings settings(QSettings::IniFormat, QSettings::UserScope, QStringLiteral("sumpwright"),
                     QStringLiteral("window"));
  DesktopDialogs dialogs;
  MainWindow window(settings, dialogs);
  window.show();  // first: what opening asks is asked over the window
  const QStringList arguments = QApplication::arguments();
  for (qsizetype i = 1; i < arguments.size(); ++i) {
    if (arguments[i].startsWith(QLatin1Char('-'))) continue;
    window.openPath(arguments[i]);
    break;
  }
  return QApplication::exec();
}

}  // namespace sumpwright::window
