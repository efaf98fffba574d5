#include "cli/Display.h"

#include <QGuiApplication>
#include <QLoggingCategory>
#include <QtGlobal>
#include <array>

#include "words/Words.h"

namespace sumpwright::cli {

bool canShowWindow(std::ostream& err) {
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) {
    if (!qEnvironmentVariableIsEmpty(name)) return true;
  }
  const base::Message message("cli.no-display");
  err << "sumpwright: " << message.id << ": " << words::say(message, words::Units::metric) << '\n';
  return false;
}

void ensureGui() {
  if (QCoreApplication::instance() != nullptr) return;
  // Qt's own remarks on the environment (no runtime folder, ...) are no errors of ours.
  QLoggingCategory::setFilterRules(QStringLiteral("default.warning=false\nqt.*.warning=false"));
  static std::array<char, 11> name{"sumpwright"};
  static std::array<char, 10> option{"-platform"};
  static std::array<char, 10> platform{"offscreen"};
  static std::array<char*, 4> arguments{name.data(), option.data(), platform.data(), nullptr};
  static int count = 3;
  // Never destroyed: at exit Qt's own statics may be gone before it.
  static const auto* const application = new QGuiApplication(count, arguments.data());
  Q_UNUSED(application)
}

}  // namespace sumpwright::cli
