// The client's plan: what the PDF says, and that it can be printed.

#include <QProcess>
#include <QRegularExpression>

#include "gui/WindowFixture.h"

namespace sumpwright::gui {
namespace {

/// Text of a PDF with white space evened out (pdftotext, poppler-utils).
QString textOf(const QString& pdf) {
  QProcess process;
  process.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
  EXPECT_TRUE(process.waitForFinished(30'000));
  EXPECT_EQ(process.exitCode(), 0);
  QString text = QString::fromUtf8(process.readAllStandardOutput());
  return text.replace(QRegularExpression(QStringLiteral("\\s+")), QStringLiteral(" "));
}

class Paper : public WindowFixture {};

TEST_F(Paper, PdfHoldsAddressVerdictRuleAndCautions) {
  open("bungalow");
  session().putAt(*middleOf(rules::State::refused));
  dialogs.next_save = folder.filePath(QStringLiteral("plan.pdf"));
  trigger("paper.pdf");
  ASSERT_TRUE(QFile::exists(dialogs.next_save)) << window->told().toStdString();
  const QString text = textOf(dialogs.next_save);
  EXPECT_TRUE(text.contains(QString::fromStdString(session().job().address))) << text.toStdString();
  EXPECT_TRUE(text.contains(QStringLiteral("Refused"))) << text.toStdString();
  const std::string rule = session().assessment()->findings.front().rule;
  EXPECT_TRUE(text.contains(QString::fromStdString(study().sheet().find(rule)->title)));
  for (const char* caution : {"asbestos", "silica", "re-test", "local"}) {
    EXPECT_TRUE(text.contains(QLatin1String(caution), Qt::CaseInsensitive)) << caution;
  }
  EXPECT_EQ(window->stage(), window::Stage::paper);
  EXPECT_TRUE(window->paper().told().contains(QStringLiteral("plan.pdf")));
  EXPECT_TRUE(
      window->rail().button(window::Stage::paper)->words().startsWith(QStringLiteral("PDF")));
}

TEST_F(Paper, FollowsTheSump) {
  open("bungalow");
  session().putAt(*middleOf(rules::State::refused));
  const std::string before = drawing::toText(window->paper().document()->pages.front());
  session().putAt(*middleOf(rules::State::clear));
  EXPECT_NE(drawing::toText(window->paper().document()->pages.front()), before);
}

TEST_F(Paper, A3AndA4) {
  open("bungalow");
  trigger("view.paper");
  EXPECT_EQ(window->paper().size(), dossier::PaperSize::a4);
  const double a4 = window->paper().document()->width_mm;
  QTest::mouseClick(window->paper().sizes()->button(1), Qt::LeftButton);
  EXPECT_EQ(window->paper().size(), dossier::PaperSize::a3);
  EXPECT_GT(window->paper().document()->width_mm, a4);
}

TEST_F(Paper, SvgAndPng) {
  open("bungalow");
  for (const char* format : {"svg", "png"}) {
    dialogs.next_save = folder.filePath(QStringLiteral("plan.") + QLatin1String(format));
    trigger(qPrintable(QStringLiteral("paper.") + QLatin1String(format)));
    EXPECT_TRUE(QFile::exists(dialogs.next_save)) << format;
  }
}

TEST_F(Paper, Prints) {
  open("bungalow");
  dialogs.print_to = folder.filePath(QStringLiteral("printed.pdf"));
  trigger("paper.print");
  ASSERT_TRUE(QFile::exists(dialogs.print_to));
  EXPECT_TRUE(textOf(dialogs.print_to).contains(QString::fromStdString(session().job().address)));
}

TEST_F(Paper, AFolderThatIsNotThereIsSaid) {
  open("bungalow");
  dialogs.next_save = folder.filePath(QStringLiteral("no/such/plan.pdf"));
  trigger("paper.pdf");
  EXPECT_TRUE(window->told().contains(QStringLiteral("not saved")));
}

}  // namespace
}  // namespace sumpwright::gui
