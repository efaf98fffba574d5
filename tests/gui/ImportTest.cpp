// Outlines taken from drawings and maps, through the real window. (All of them invented.)
// SUMPWRIGHT_SEE=FOLDER keeps what the window showed half-way, to look at.

#include <QApplication>
#include <QDropEvent>
#include <QFile>
#include <QMimeData>
#include <cstdlib>

#include "WindowFixture.h"
#include "geometry/Shapes.h"

namespace sumpwright::gui {
namespace {

class ImportWindow : public WindowFixture {
 protected:
  QString file(const char* name, const std::string& text) {
    const QString path = folder.filePath(QLatin1String(name));
    QFile out(path);
    EXPECT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(text.data(), static_cast<qint64>(text.size()));
    return path;
  }
  static std::string closedPath(const char* layer,
                                const std::vector<std::pair<double, double>>& corners) {
    std::string out = std::string("0\nLWPOLYLINE\n8\n") + layer + "\n90\n" +
                      std::to_string(corners.size()) + "\n70\n1\n";
    for (const auto& [x, y] : corners) {
      out += "10\n" + std::to_string(x) + "\n20\n" + std::to_string(y) + "\n";
    }
    return out;
  }
  /// An L of 15.6 m by 9.5 m with a courtyard, on a plot; the header states no unit.
  QString house() {
    return file(
        "house.dxf",
        "0\nSECTION\n2\nENTITIES\n" +
            closedPath("WALLS", {{1000, 1000},
                                 {16600, 1000},
                                 {16600, 10500},
                                 {11700, 10500},
                                 {11700, 7900},
                                 {1000, 7900}}) +
            closedPath("WALLS", {{6000, 3000}, {9000, 3000}, {9000, 5500}, {6000, 5500}}) +
            closedPath("PLOT", {{-5000, -5000}, {30000, -5000}, {30000, 25000}, {-5000, 25000}}) +
            "0\nENDSEC\n0\nEOF\n");
  }
  void drop(const QString& path) {
    QMimeData mime;
    mime.setUrls({QUrl::fromLocalFile(path)});
    QDragEnterEvent enter(QPoint(300, 300), Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window.get(), &enter);
    EXPECT_TRUE(enter.isAccepted());
    QDropEvent event(QPointF(300, 300), Qt::CopyAction, &mime, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window.get(), &event);
    QCoreApplication::processEvents();
  }
  void see(const char* name) {
    const char* to = std::getenv("SUMPWRIGHT_SEE");
    if (to == nullptr) return;
    for (const char* theme : {"view.theme_dark", "view.theme_light"}) {
      window->action(theme)->trigger();
      QCoreApplication::processEvents();
      const QString colours = QLatin1String(theme).mid(11);
      window->grab().save(QStringLiteral("%1/import-%2-%3.png")
                              .arg(QString::fromUtf8(to), QLatin1String(name), colours));
    }
  }
  stages::ImportPage& page() { return *window->survey().import(); }
};

TEST_F(ImportWindow, ADrawingIsAskedForItsUnitAndTakenAsOneStep) {
  trigger("file.new");
  dialogs.next_open = house();
  trigger("survey.import");
  ASSERT_EQ(window->survey().page(), stages::SurveyPage::import);
  EXPECT_EQ(page().unit()->currentIndex(), -1) << "the drawing states none: asked";
  EXPECT_FALSE(page().takeButton()->isEnabled());
  see("asked");
  page().unit()->setCurrentIndex(0);
  EXPECT_TRUE(page().takeButton()->isEnabled());
  EXPECT_EQ(page().outer()->count(), 3);
  for (int i = 0; i < page().layers()->count(); ++i) {
    auto* layer = page().layers()->item(i);
    if (layer->data(Qt::UserRole).toString() == QLatin1String("PLOT")) {
      layer->setCheckState(Qt::Unchecked);
    }
  }
  EXPECT_EQ(page().outer()->count(), 2);
  EXPECT_TRUE(page().outer()->currentText().contains(QStringLiteral("120.4")))
      << page().outer()->currentText().toStdString();
  ASSERT_EQ(page().courtyards()->count(), 1);
  EXPECT_EQ(page().courtyards()->item(0)->checkState(), Qt::Checked);
  see("rings");
  page().takeButton()->click();
  const auto& rings = session().job().plan.rings;
  ASSERT_EQ(rings.size(), 2U);
  EXPECT_NEAR(geometry::signedArea(rings[0].corners), 120.38, 1e-6);
  EXPECT_NEAR(geometry::signedArea(rings[1].corners), -7.5, 1e-6);
  EXPECT_EQ(session().undoStack().count(), 1);
  EXPECT_NE(session().study(), nullptr);
  EXPECT_EQ(window->survey().page(), stages::SurveyPage::things);
  see("taken");
  session().undoStack().undo();
  EXPECT_TRUE(session().job().plan.rings.empty());
}

TEST_F(ImportWindow, AMapThatIsDroppedStatesItsError) {
  drop(file("map.geojson", R"({"type": "Feature", "properties": {}, "geometry": {"type": "Polygon",
    "coordinates": [[[10.0, 50.0], [10.0002, 50.0], [10.0002, 50.0001], [10.0, 50.0001],
    [10.0, 50.0]]]}})"));
  ASSERT_EQ(window->survey().page(), stages::SurveyPage::import);
  EXPECT_TRUE(page().aboutText().contains(QStringLiteral("16 mm in 100 m")));
  ASSERT_TRUE(page().takeButton()->isEnabled());
  page().takeButton()->click();
  EXPECT_EQ(session().job().plan.rings.size(), 1U);
}

TEST_F(ImportWindow, AnOutlineThatIsThereIsReplacedAndComesBack) {
  open(QStringLiteral("bungalow"));
  const plan::Job before = session().job();
  drop(house());
  EXPECT_EQ(page().takeButton()->text(), QStringLiteral("Replace the outline"));
  page().unit()->setCurrentIndex(0);
  page().outer()->setCurrentIndex(1);
  page().takeButton()->click();
  EXPECT_NE(session().job(), before);
  EXPECT_EQ(session().undoStack().count(), 1);
  session().undoStack().undo();
  EXPECT_EQ(session().job(), before);
}

TEST_F(ImportWindow, WhatIsNoDrawingIsSaidAndNothingChanges) {
  open(QStringLiteral("bungalow"));
  dialogs.next_open = file("words.dxf", "no drawing\nat all\n");
  trigger("survey.import");
  EXPECT_TRUE(window->told().contains(QStringLiteral("not a DXF file")))
      << window->told().toStdString();
  EXPECT_NE(window->survey().page(), stages::SurveyPage::import);
  EXPECT_FALSE(session().isModified());
}

TEST_F(ImportWindow, ItCanBeGivenUp) {
  trigger("file.new");
  drop(house());
  page().giveUpButton()->click();
  EXPECT_EQ(window->survey().page(), stages::SurveyPage::outline);
  EXPECT_EQ(session().undoStack().count(), 0);
}

}  // namespace
}  // namespace sumpwright::gui
