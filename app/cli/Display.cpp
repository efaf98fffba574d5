#include "cli/Display.h"

#include <QtGlobal>

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

}  // namespace sumpwright::cli
