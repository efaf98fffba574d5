// Real widgets without a display: offscreen platform, settings and user data in a temporary folder,
// a broken contract ends the test run.

#include <gtest/gtest.h>

#include <QApplication>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <cstdio>
#include <cstdlib>

#include "base/Contract.h"

namespace {

void contractFails(const char* condition, const char* file, int line) {
  std::fprintf(stderr, "contract broken: %s at %s:%d\n", condition, file, line);
  std::abort();
}

}  // namespace

int main(int argc, char** argv) {
  testing::InitGoogleTest(&argc, argv);
  const QTemporaryDir home;
  qputenv("XDG_CONFIG_HOME", home.path().toUtf8());
  qputenv("XDG_DATA_HOME", home.path().toUtf8());
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  sumpwright::base::setContractHandler(contractFails);
  QApplication app(argc, argv);
  QApplication::setApplicationName(QStringLiteral("sumpwright"));
  return RUN_ALL_TESTS();
}
