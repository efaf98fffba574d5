// Light and dark, sizes, nothing cut off. With SUMPWRIGHT_SHOTS=FOLDER the pictures are kept.

#include <QLabel>

#include "gui/WindowFixture.h"
#include "paint/Look.h"

namespace sumpwright::gui {
namespace {

class Look : public WindowFixture {
 protected:
  void TearDown() override { window->setTheme(window::ThemeChoice::light); }
  void keep(const QPixmap& picture, const QString& name) {
    const QString folder_to = qEnvironmentVariable("SUMPWRIGHT_SHOTS");
    if (!folder_to.isEmpty()) {
      EXPECT_TRUE(picture.save(folder_to + QLatin1Char('/') + name + QStringLiteral(".png")));
    }
  }
};

TEST_F(Look, ThemeIsChosenKeptAndShown) {
  trigger("view.theme_dark");
  EXPECT_EQ(paint::themeOf(window->palette()), drawing::ThemeName::dark);
  EXPECT_EQ(settings.value(QStringLiteral("theme")).toString(), QStringLiteral("dark"));
  EXPECT_TRUE(window->action("view.theme_dark")->isChecked());
  window::MainWindow again(settings, dialogs);
  EXPECT_EQ(again.theme(), window::ThemeChoice::dark);
  trigger("view.theme_light");
  EXPECT_EQ(paint::themeOf(window->palette()), drawing::ThemeName::light);
}

TEST_F(Look, EverySampleInBothThemesAndSizes) {
  const QStringList names =
      QDir(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR)).entryList({QStringLiteral("*.sump.json")});
  for (const char* theme : {"light", "dark"}) {
    trigger(qPrintable(QStringLiteral("view.theme_") + QLatin1String(theme)));
    for (const QSize size : {QSize(1280, 720), QSize(1920, 1080)}) {
      window->resize(size);
      for (const QString& file : names) {
        const QString name = file.chopped(QStringLiteral(".sump.json").size());
        SCOPED_TRACE(name.toStdString());
        dialogs.unsaved = window::Unsaved::discard;
        open(name);
        if (!session().place() && session().bestPlace()) session().putAt(*session().bestPlace());
        QCoreApplication::processEvents();
        const QPixmap picture = window->grab();
        EXPECT_EQ(picture.size(), size);
        const QString base =
            QStringLiteral("%1-%2-%3").arg(name, QLatin1String(theme)).arg(size.width());
        keep(picture, base);
        trigger("view.paper");
        QCoreApplication::processEvents();
        if (size.width() == 1280) keep(window->grab(), base + QStringLiteral("-paper"));
        trigger("view.siting");
      }
    }
  }
}

// A label that does not wrap must have the room its text needs.
TEST_F(Look, NoLabelIsCutOff) {
  for (const QSize size : {QSize(1280, 720), QSize(1920, 1080)}) {
    window->resize(size);
    open("bungalow");
    for (const rules::State state :
         {rules::State::refused, rules::State::clear, rules::State::advised_against}) {
      const auto place = middleOf(state);
      if (!place) continue;
      session().putAt(*place);
      // A label that grows asks its parent, which asks its own: a round each.
      for (int round = 0; round < 4; ++round) QCoreApplication::processEvents();
      for (const QLabel* label : window->findChildren<QLabel*>()) {
        if (!label->isVisible() || label->text().isEmpty()) continue;
        if (label->wordWrap()) {
          EXPECT_GE(label->height(), label->heightForWidth(label->width()) - 1)
              << label->text().toStdString();
        } else {
          EXPECT_GE(label->width(), label->sizeHint().width() - 1) << label->text().toStdString();
        }
      }
    }
    dialogs.unsaved = window::Unsaved::discard;
  }
}

TEST_F(Look, FontIsOursAndFiguresAreOneWidth) {
  const QFontMetricsF metrics(window->font());
  for (char c = '1'; c <= '9'; ++c) {
    EXPECT_EQ(metrics.horizontalAdvance(QLatin1Char(c)),
              metrics.horizontalAdvance(QLatin1Char('0')));
  }
}

}  // namespace
}  // namespace sumpwright::gui
