// Opening jobs: what the window shows of sound, unsound and unreadable ones.

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMimeData>

#include "gui/WindowFixture.h"
#include "plan/JobText.h"

namespace sumpwright::gui {
namespace {

class Window : public WindowFixture {};

TEST_F(Window, BeginsWithoutAJob) {
  EXPECT_FALSE(session().hasJob());
  EXPECT_EQ(window->windowTitle(), QStringLiteral("Sumpwright"));
  EXPECT_FALSE(window->action("file.save")->isEnabled());
  EXPECT_FALSE(window->action("paper.pdf")->isEnabled());
  EXPECT_TRUE(window->action("file.open")->isEnabled());
}

TEST_F(Window, OpensEverySample) {
  const QDir samples(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR));
  const QStringList names = samples.entryList({QStringLiteral("*.sump.json")});
  ASSERT_GE(names.size(), 8);
  for (const QString& name : names) {
    SCOPED_TRACE(name.toStdString());
    open(name.chopped(QStringLiteral(".sump.json").size()));
    ASSERT_NE(session().study(), nullptr);
    EXPECT_TRUE(window->told().isEmpty()) << window->told().toStdString();
    EXPECT_FALSE(window->panel().word().isEmpty());
    EXPECT_FALSE(window->panel().sentence().isEmpty());
    EXPECT_FALSE(session().isModified());
    EXPECT_TRUE(window->windowTitle().contains(QString::fromStdString(session().job().address)));
    trigger("view.paper");
    EXPECT_NE(window->paper().document(), nullptr);
    trigger("view.siting");
  }
}

TEST_F(Window, AnUnreadableFileLeavesTheOpenJobAlone) {
  open("bungalow");
  const plan::Job before = session().job();
  const QString bad = folder.filePath(QStringLiteral("bad.sump.json"));
  QFile file(bad);
  ASSERT_TRUE(file.open(QFile::WriteOnly));
  file.write("this is no job");
  file.close();
  EXPECT_FALSE(window->openPath(bad));
  EXPECT_TRUE(window->told().contains(QStringLiteral("bad.sump.json")));
  EXPECT_TRUE(window->told().contains(QStringLiteral("still open")));
  EXPECT_EQ(session().job(), before);

  EXPECT_FALSE(window->openPath(folder.filePath(QStringLiteral("none.sump.json"))));
  EXPECT_TRUE(window->told().contains(QStringLiteral("none.sump.json")));
}

TEST_F(Window, AnUnsoundJobOpensWithItsProblemsAndSitingOff) {
  const QString path = sample(QStringLiteral("bungalow"));
  auto read = plan::readJob([&] {
    QFile file(path);
    EXPECT_TRUE(file.open(QFile::ReadOnly));
    return file.readAll().toStdString();
  }());
  ASSERT_TRUE(read.ok());
  plan::Job job = read->job;
  ASSERT_GE(job.plan.rings[0].corners.size(), 4U);
  std::swap(job.plan.rings[0].corners[1], job.plan.rings[0].corners[2]);  // crosses itself
  QFile file(path);
  ASSERT_TRUE(file.open(QFile::WriteOnly));
  file.write(QByteArray::fromStdString(plan::writeJob(job)));
  file.close();

  ASSERT_TRUE(window->openPath(path));
  EXPECT_EQ(session().study(), nullptr);
  EXPECT_EQ(window->panel().word(), QStringLiteral("Siting is off"));
  EXPECT_TRUE(window->panel().sentence().contains(QStringLiteral("/plan/")))
      << window->panel().sentence().toStdString();
  for (const char* id : {"sump.best", "paper.pdf", "paper.print", "sump.go_to", "sump.waive"}) {
    EXPECT_FALSE(window->action(id)->isEnabled()) << id;
  }
  // Neither pointer nor keys do anything to it.
  QTest::mouseClick(&window->canvas(), Qt::LeftButton, {}, QPoint(300, 200));
  QTest::keyClick(&window->canvas(), Qt::Key_Right);
  EXPECT_FALSE(session().isModified());
  trigger("view.paper");
  EXPECT_EQ(window->paper().document(), nullptr);
}

TEST_F(Window, ADroppedFileOpens) {
  QMimeData data;
  data.setUrls({QUrl::fromLocalFile(sample(QStringLiteral("bungalow")))});
  QDragEnterEvent enter(QPoint(400, 300), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QCoreApplication::sendEvent(window.get(), &enter);
  EXPECT_TRUE(enter.isAccepted());
  QDropEvent drop(QPointF(400, 300), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QCoreApplication::sendEvent(window.get(), &drop);
  EXPECT_TRUE(session().hasJob());

  QMimeData text;
  text.setText(QStringLiteral("not a file"));
  QDragEnterEvent other(QPoint(400, 300), Qt::CopyAction, &text, Qt::LeftButton, Qt::NoModifier);
  other.ignore();
  QCoreApplication::sendEvent(window.get(), &other);
  EXPECT_FALSE(other.isAccepted());
}

TEST_F(Window, RemembersRecentJobs) {
  const QString path = sample(QStringLiteral("bungalow"));
  ASSERT_TRUE(window->openPath(path));
  EXPECT_EQ(settings.value(QStringLiteral("recent")).toStringList(), QStringList{path});
  trigger("file.close");
  EXPECT_FALSE(session().hasJob());
}

TEST_F(Window, ANarrowOrEnlargedWindowPutsTheVerdictBelow) {
  open("bungalow");
  EXPECT_FALSE(window->isCompact());
  EXPECT_TRUE(window->panel().isVisible());
  window->resize(860, 600);
  QCoreApplication::processEvents();
  EXPECT_TRUE(window->isCompact());
  trigger("sump.go_to");  // brings the verdict to the front
  EXPECT_TRUE(window->panel().entry()->isVisible());
  window->resize(1280, 720);
  QCoreApplication::processEvents();
  EXPECT_FALSE(window->isCompact());
  EXPECT_TRUE(window->panel().isVisible());
}

}  // namespace
}  // namespace sumpwright::gui
