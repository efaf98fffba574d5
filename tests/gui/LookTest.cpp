// Light and dark, sizes, nothing cut off. With SUMPWRIGHT_SHOTS=FOLDER the pictures are kept.

#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <array>

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

/// Nothing of a panel is wider than its column, no label cut.
void expectWhole(const QWidget& survey) {
  for (int round = 0; round < 4; ++round) QCoreApplication::processEvents();
  for (const QWidget* part : survey.findChildren<QWidget*>()) {
    const bool control = qobject_cast<const QLabel*>(part) != nullptr ||
                         qobject_cast<const QAbstractButton*>(part) != nullptr ||
                         qobject_cast<const QLineEdit*>(part) != nullptr ||
                         qobject_cast<const QComboBox*>(part) != nullptr;
    if (!control || !part->isVisible()) continue;
    const int left = part->mapTo(&survey, QPoint()).x();
    EXPECT_GE(left, 0) << part->accessibleName().toStdString();
    EXPECT_LE(left + part->width(), survey.width())
        << part->metaObject()->className() << part->accessibleName().toStdString();
    // Nor cut by a page that scrolls: pages do so up and down only.
    for (const QWidget* up = part->parentWidget(); up != &survey; up = up->parentWidget()) {
      const auto* scroll = qobject_cast<const QScrollArea*>(up);
      if (scroll == nullptr || !scroll->widget()->isAncestorOf(part)) continue;
      const QWidget* seen = scroll->viewport();
      EXPECT_LE(part->mapTo(seen, QPoint()).x() + part->width(), seen->width())
          << part->metaObject()->className() << part->accessibleName().toStdString();
    }
    const auto* label = qobject_cast<const QLabel*>(part);
    if (label == nullptr || label->text().isEmpty() || !label->wordWrap()) continue;
    EXPECT_GE(label->height(), label->heightForWidth(label->width()) - 1)
        << label->text().toStdString();
  }
}

void expectWhole(window::MainWindow& window) { expectWhole(window.survey()); }

constexpr std::array kSurveyPages{"house", "outline", "things", "looked", "check"};

TEST_F(Look, NothingOfTheSurveyIsCutOff) {
  for (const char* theme : {"light", "dark"}) {
    trigger(qPrintable(QStringLiteral("view.theme_") + QLatin1String(theme)));
    for (const bool begun : {true, false}) {
      dialogs.unsaved = window::Unsaved::discard;
      open("bungalow");
      if (!begun) window->newJob();
      for (std::size_t page = 0; page < kSurveyPages.size(); ++page) {
        for (const bool thing : {true, false}) {
          window->showSurvey(static_cast<stages::SurveyPage>(page));
          if (begun) {
            session().select(thing ? session().job().plan.services.front().id
                                   : session().job().plan.rings[0].walls[1].id);
          }
          const QString shot = QStringLiteral("survey-%1-%2%3%4")
                                   .arg(QLatin1String(kSurveyPages[page]), QLatin1String(theme),
                                        thing ? QString() : QStringLiteral("-wall"),
                                        begun ? QString() : QStringLiteral("-new"));
          SCOPED_TRACE(shot.toStdString());
          expectWhole(*window);
          if (thing || page == 2) keep(window->grab(), shot);
        }
      }
    }
  }
}

/// An outline that is still open has the most to say: its book, the gap, what may be misread.
TEST_F(Look, NothingOfAnOpenFieldBookIsCutOff) {
  window->newJob();
  window->showSurvey(stages::SurveyPage::outline);
  QLineEdit* field = nullptr;
  for (auto* edit : window->survey().outline()->findChildren<QLineEdit*>()) {
    if (edit->accessibleName() == QLatin1String("Length of the wall")) field = edit;
  }
  ASSERT_NE(field, nullptr);
  for (const char* wall : {"n 8.20", "e 7.60", "s 3.00", "e 4.80", "s 5.20", "w 11.40"}) {
    QTest::keyClicks(field, QLatin1String(wall));
    QTest::keyClick(field, Qt::Key_Return);
    SCOPED_TRACE(wall);
    expectWhole(*window);
  }
  ASSERT_EQ(session().job().plan.rings[0].taped.size(), 6U);
  keep(window->grab(), QStringLiteral("survey-outline-open"));
}

TEST_F(Look, NothingOfTheSurveyIsCutOffInLargeType) {
  const QFont usual = QApplication::font();
  QFont large = usual;
  if (usual.pixelSize() > 0) {
    large.setPixelSize(usual.pixelSize() * 3 / 2);
  } else {
    large.setPointSizeF(usual.pointSizeF() * 1.5);
  }
  QApplication::setFont(large);
  {
    window::MainWindow second(settings, dialogs);
    second.resize(1280, 720);
    second.show();
    ASSERT_TRUE(second.openPath(sample(QStringLiteral("bungalow"))));
    for (std::size_t page = 0; page < kSurveyPages.size(); ++page) {
      second.showSurvey(static_cast<stages::SurveyPage>(page));
      second.session().select(second.session().job().plan.services.front().id);
      SCOPED_TRACE(kSurveyPages[page]);
      expectWhole(second);
      keep(second.grab(), QStringLiteral("survey-%1-large").arg(QLatin1String(kSurveyPages[page])));
    }
  }
  QApplication::setFont(usual);
}

TEST_F(Look, NothingOfTheRunIsCutOff) {
  window->resize(1280, 720);
  const QStringList names =
      QDir(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR)).entryList({QStringLiteral("*.sump.json")});
  for (const char* theme : {"light", "dark"}) {
    trigger(qPrintable(QStringLiteral("view.theme_") + QLatin1String(theme)));
    for (const QString& file : names) {
      const QString name = file.chopped(QStringLiteral(".sump.json").size());
      SCOPED_TRACE(name.toStdString());
      dialogs.unsaved = window::Unsaved::discard;
      open(name);
      if (!session().place() && session().bestPlace()) session().putAt(*session().bestPlace());
      window->showStage(window::Stage::run);
      window->elevation().placeDischarge();
      expectWhole(window->run());
      const QString shot = QStringLiteral("run-%1-%2").arg(name, QLatin1String(theme));
      keep(window->grab(), shot);
      auto* scroll = window->run().findChild<QScrollArea*>();
      ASSERT_NE(scroll, nullptr);
      keep(scroll->widget()->grab(), shot + QStringLiteral("-lines"));
      window->showStage(window::Stage::siting);
    }
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
