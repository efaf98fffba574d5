// The stage Paper: which papers are ticked, what the files say, under whose head they stand.

#include <QCheckBox>
#include <QDir>
#include <QImage>
#include <QProcess>
#include <QRegularExpression>

#include "dossier/Papers.h"
#include "files/FirmFile.h"
#include "gui/WindowFixture.h"
#include "plan/SumpEdits.h"

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

/// What a program of poppler-utils says of a PDF.
QString toldBy(const QString& program, const QStringList& arguments) {
  QProcess process;
  process.start(program, arguments);
  EXPECT_TRUE(process.waitForFinished(30'000));
  EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
  return QString::fromUtf8(process.readAllStandardOutput());
}

int pagesOfPdf(const QString& pdf) {
  const QRegularExpression pages(QStringLiteral("Pages:\\s+(\\d+)"));
  return pages.match(toldBy(QStringLiteral("pdfinfo"), {pdf})).captured(1).toInt();
}

/// Width and height of every page in points.
QList<QSizeF> sheetsOfPdf(const QString& pdf) {
  QList<QSizeF> out;
  const QRegularExpression size(QStringLiteral("Page\\s+\\d+ size:\\s+([\\d.]+) x ([\\d.]+) pts"));
  const QString told = toldBy(
      QStringLiteral("pdfinfo"),
      {QStringLiteral("-f"), QStringLiteral("1"), QStringLiteral("-l"), QStringLiteral("99"), pdf});
  for (auto it = size.globalMatch(told); it.hasNext();) {
    const auto match = it.next();
    out << QSizeF(match.captured(1).toDouble(), match.captured(2).toDouble());
  }
  return out;
}

/// The firm's file belongs to no job: each test begins without one.
class Paper : public WindowFixture {
 protected:
  Paper() { forget(); }
  ~Paper() override { forget(); }
  static QString firmFile() { return QString::fromStdString(files::userFirmFile()); }
  static void forget() { QFile::remove(firmFile()); }

  stages::PaperStage& paper() { return window->paper(); }
  void click(QAbstractButton* button) {
    ASSERT_TRUE(button->isVisible());
    QTest::mouseClick(button, Qt::LeftButton);
  }
  void tick(dossier::Paper which) { click(paper().list()->box(which)); }
  /// The samples' own firm file is read when the window begins.
  void openAnew() {
    window = std::make_unique<window::MainWindow>(settings, dialogs);
    window->resize(1280, 720);
    window->show();
  }
  QString savedAs(const QString& name) {
    dialogs.next_save = folder.filePath(name);
    trigger("paper.pdf");
    EXPECT_TRUE(window->told().isEmpty()) << window->told().toStdString();
    return dialogs.next_save;
  }
  QString logoFile() {
    QImage logo(80, 20, QImage::Format_RGB32);
    logo.fill(Qt::darkGreen);
    const QString path = folder.filePath(QStringLiteral("invented.png"));
    EXPECT_TRUE(logo.save(path));
    return path;
  }
};

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
  EXPECT_EQ(paper().choice().size, dossier::PaperSize::a4);
  const double a4 = window->paper().document()->width_mm;
  click(paper().list()->sizes()->button(1));
  EXPECT_EQ(paper().choice().size, dossier::PaperSize::a3);
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

TEST_F(Paper, TickingAddsPagesAndTheyAreTurned) {
  open("bungalow");
  trigger("view.paper");
  const int plan = paper().pageCount();
  ASSERT_GE(plan, 1);
  EXPECT_TRUE(paper().pageLabel()->text().contains(QStringLiteral("1 of %1").arg(plan)));
  tick(dossier::Paper::crew);
  const int both = paper().pageCount();
  EXPECT_GT(both, plan);
  int sum = 0;
  for (const stages::MadePaper& made : paper().papers())
    sum += static_cast<int>(made.document.pages.size());
  EXPECT_EQ(sum, both);
  for (int page = 1; page < both; ++page) {
    QTest::keyClick(window.get(), Qt::Key_PageDown, Qt::ControlModifier);
    EXPECT_EQ(paper().page(), page);
    EXPECT_TRUE(paper().pageLabel()->text().startsWith(page < plan ? QStringLiteral("Client")
                                                                   : QStringLiteral("Crew")))
        << paper().pageLabel()->text().toStdString();
  }
  EXPECT_FALSE(window->action("paper.next_page")->isEnabled());
  tick(dossier::Paper::crew);
  EXPECT_EQ(paper().pageCount(), plan);
  EXPECT_EQ(paper().page(), plan - 1);  // never past the end
}

TEST_F(Paper, WithNoneTickedThereIsNothingToWrite) {
  open("bungalow");
  trigger("view.paper");
  tick(dossier::Paper::plan);
  EXPECT_EQ(paper().document(), nullptr);
  for (const char* id : {"paper.pdf", "paper.svg", "paper.png", "paper.print"})
    EXPECT_FALSE(window->action(id)->isEnabled()) << id;
  EXPECT_TRUE(window->action("paper.shopping_csv")->isEnabled());
  tick(dossier::Paper::plan);
  EXPECT_TRUE(window->action("paper.pdf")->isEnabled());
}

TEST_F(Paper, OnePdfHoldsAllThatAreTickedInOrder) {
  open("bungalow");
  trigger("view.paper");
  for (const auto which : {dossier::Paper::commissioning, dossier::Paper::shopping,
                           dossier::Paper::quote, dossier::Paper::crew})
    tick(which);
  const QString pdf = savedAs(QStringLiteral("all.pdf"));
  EXPECT_EQ(pagesOfPdf(pdf), paper().pageCount());
  const QString text = textOf(pdf);
  qsizetype last = -1;
  for (const char* title : {"Where the sump goes", "Offered on top", "Crew sheet",
                            "Material of the design", "Commissioning form"}) {
    const auto at = text.indexOf(QLatin1String(title));
    EXPECT_GT(at, last) << title;
    last = at;
  }
}

TEST_F(Paper, OneEachIsWrittenBesideAndNeverOverAnotherUnasked) {
  open("bungalow");
  trigger("view.paper");
  tick(dossier::Paper::crew);
  click(paper().list()->files()->button(1));
  savedAs(QStringLiteral("house.pdf"));
  EXPECT_FALSE(QFile::exists(folder.filePath(QStringLiteral("house.pdf"))));
  const QString plan = folder.filePath(QStringLiteral("house-plan.pdf"));
  const QString crew = folder.filePath(QStringLiteral("house-crew.pdf"));
  EXPECT_TRUE(textOf(plan).contains(QStringLiteral("Where the sump goes")));
  EXPECT_FALSE(textOf(plan).contains(QStringLiteral("Crew sheet")));
  EXPECT_TRUE(textOf(crew).contains(QStringLiteral("Crew sheet")));
  EXPECT_EQ(pagesOfPdf(plan) + pagesOfPdf(crew), paper().pageCount());

  QFile mine(crew);
  ASSERT_TRUE(mine.open(QFile::WriteOnly));
  mine.write("mine");
  mine.close();
  savedAs(QStringLiteral("house.pdf"));
  ASSERT_FALSE(dialogs.asked.isEmpty());
  EXPECT_TRUE(dialogs.asked.back().contains(QStringLiteral("house-crew.pdf")));
  EXPECT_EQ(QFileInfo(crew).size(), 4);
  dialogs.replace = true;
  savedAs(QStringLiteral("house.pdf"));
  EXPECT_TRUE(textOf(crew).contains(QStringLiteral("Crew sheet")));
}

TEST_F(Paper, LetterIsLetterAndOnlyPlansLie) {
  open("bungalow");
  trigger("view.paper");
  tick(dossier::Paper::shopping);
  click(paper().list()->sizes()->button(2));
  // North American letter: 8.5 by 11 inches of 72 points (ANSI/ASME Y14.1, from memory).
  for (const QSizeF& sheet : sheetsOfPdf(savedAs(QStringLiteral("letter.pdf")))) {
    EXPECT_NEAR(sheet.width(), 612.0, 0.5);
    EXPECT_NEAR(sheet.height(), 792.0, 0.5);
  }
  click(paper().list()->lie()->button(1));
  const QList<QSizeF> lying = sheetsOfPdf(savedAs(QStringLiteral("lying.pdf")));
  ASSERT_GE(lying.size(), 2);
  EXPECT_NEAR(lying.front().width(), 792.0, 0.5);
  EXPECT_NEAR(lying.front().height(), 612.0, 0.5);
  EXPECT_NEAR(lying.back().width(), 612.0, 0.5);  // a list stands
  dialogs.print_to = folder.filePath(QStringLiteral("printed.pdf"));
  trigger("paper.print");
  EXPECT_EQ(sheetsOfPdf(dialogs.print_to).size(), lying.size());
  EXPECT_NEAR(sheetsOfPdf(dialogs.print_to).front().width(), 792.0, 1.0);
  EXPECT_NEAR(sheetsOfPdf(dialogs.print_to).back().width(), 612.0, 1.0);
}

TEST_F(Paper, LandscapeCannotBeChosenWhereNothingLies) {
  open("bungalow");
  trigger("view.paper");
  EXPECT_TRUE(paper().list()->lie()->isEnabled());
  tick(dossier::Paper::shopping);
  tick(dossier::Paper::plan);
  EXPECT_FALSE(paper().list()->lie()->isEnabled());
}

TEST_F(Paper, TheChoiceIsRemembered) {
  open("bungalow");
  trigger("view.paper");
  tick(dossier::Paper::quote);
  tick(dossier::Paper::plan);
  click(paper().list()->sizes()->button(2));
  click(paper().list()->files()->button(1));
  const stages::PaperChoice chosen = paper().choice();
  EXPECT_EQ(chosen.papers, std::vector{dossier::Paper::quote});
  openAnew();
  EXPECT_EQ(paper().choice(), chosen);
  EXPECT_TRUE(paper().list()->box(dossier::Paper::quote)->isChecked());
  EXPECT_FALSE(paper().list()->box(dossier::Paper::plan)->isChecked());
  settings.setValue(QStringLiteral("paper/size"), QStringLiteral("tablecloth"));
  settings.setValue(QStringLiteral("paper/papers"), QStringList{QStringLiteral("poem")});
  openAnew();
  EXPECT_EQ(paper().choice().size, dossier::PaperSize::a4);
  EXPECT_TRUE(paper().choice().papers.empty());
}

TEST_F(Paper, AQuoteSaysThatItsPricesAreInvented) {
  open("bungalow");
  trigger("view.paper");
  tick(dossier::Paper::plan);
  tick(dossier::Paper::quote);
  EXPECT_TRUE(paper().warned().contains(QStringLiteral("invented")));
  const QString text = textOf(savedAs(QStringLiteral("quote.pdf")));
  EXPECT_TRUE(text.contains(QStringLiteral("no firm, shop or product")));
  const price::PricedQuote* quote = window->quoteDesk().quote();
  ASSERT_NE(quote, nullptr);
  EXPECT_TRUE(
      text.contains(QString::fromStdString(price::moneyText(quote->total, quote->minor_digits))));
}

TEST_F(Paper, ABookThatIsNotThereIsSaidAndTheListStays) {
  open("bungalow");
  plan::Quote quote = session().job().design.quote;
  quote.price_book = "nobodys";
  ASSERT_TRUE(
      session().edit(QStringLiteral("book"), plan::setQuote(session().job(), quote)).empty());
  trigger("view.paper");
  tick(dossier::Paper::quote);
  EXPECT_TRUE(paper().warned().contains(QStringLiteral("nobodys")))
      << paper().warned().toStdString();
  tick(dossier::Paper::plan);
  EXPECT_TRUE(textOf(savedAs(QStringLiteral("none.pdf"))).contains(QStringLiteral("no quote")));
  tick(dossier::Paper::quote);
  tick(dossier::Paper::shopping);
  EXPECT_TRUE(textOf(savedAs(QStringLiteral("list.pdf"))).contains(QStringLiteral("Fan")));
}

TEST_F(Paper, ShoppingListForASpreadsheet) {
  open("bungalow");
  dialogs.next_save = folder.filePath(QStringLiteral("list"));
  trigger("paper.shopping_csv");
  QFile file(dialogs.next_save + QStringLiteral(".csv"));
  ASSERT_TRUE(file.open(QFile::ReadOnly)) << window->told().toStdString();
  const QByteArray csv = file.readAll();
  EXPECT_TRUE(csv.startsWith("\xEF\xBB\xBFitem,text,quantity,unit,detail,sold_in,packs\r\n"));
  EXPECT_TRUE(csv.contains("\r\nfan,Fan,1,each,")) << csv.toStdString();
  EXPECT_TRUE(paper().told().contains(QStringLiteral("list.csv")));
}

TEST_F(Paper, TheFirmsHeadIsTypedSeenPrintedAndKept) {
  open("bungalow");
  trigger("view.paper");
  const std::string before = drawing::toText(paper().document()->pages.front());
  click(paper().pages()->button(static_cast<int>(stages::PaperPage::firm)));
  stages::FirmPage* firm = paper().firm();
  ASSERT_TRUE(firm->name()->isVisible());
  QTest::keyClicks(firm->name(), QStringLiteral("Invented Soil Gas Works"));
  QTest::keyClick(firm->name(), Qt::Key_Return);
  EXPECT_NE(drawing::toText(paper().document()->pages.front()), before);
  QTest::keyClicks(firm->lines(), QStringLiteral("4 Made-up Yard"));
  QTest::keyClick(firm->lines(), Qt::Key_Return);
  QTest::keyClicks(firm->lines(), QStringLiteral("000 0000"));
  dialogs.next_open = logoFile();
  QTest::mouseClick(firm->chooseLogo(), Qt::LeftButton);
  EXPECT_EQ(firm->told(), QString());
  ASSERT_EQ(paper().document()->pictures.size(), 1U);

  const QString pdf = savedAs(QStringLiteral("headed.pdf"));  // takes what is still being typed
  dialogs.print_to = folder.filePath(QStringLiteral("headed-printed.pdf"));
  trigger("paper.print");
  for (const QString& file : {pdf, dialogs.print_to}) {
    const QString text = textOf(file);
    for (const char* words : {"Invented Soil Gas Works", "4 Made-up Yard", "000 0000"})
      EXPECT_TRUE(text.contains(QLatin1String(words))) << words;
    EXPECT_FALSE(text.contains(QStringLiteral("Registration")));  // nobody entered one
    const QString images = toldBy(QStringLiteral("pdfimages"), {QStringLiteral("-list"), file});
    EXPECT_TRUE(images.contains(QRegularExpression(QStringLiteral("\\b80\\s+20\\b"))))
        << file.toStdString() << images.toStdString();
  }
  const auto kept = files::userFirm();
  ASSERT_TRUE(kept.ok());
  EXPECT_EQ(kept->name, "Invented Soil Gas Works");
  EXPECT_EQ(kept->lines, (std::vector<std::string>{"4 Made-up Yard", "000 0000"}));
  EXPECT_EQ(kept->logo_width_px, 80);

  // A picture that is gone takes nothing else of the letterhead with it, and is said.
  const QFileInfo beside(QString::fromStdString(files::userFirmFile()));
  const QString picture = beside.dir().filePath(QStringLiteral("firm-logo.png"));
  ASSERT_TRUE(QFile::rename(picture, picture + QStringLiteral(".away")));
  EXPECT_FALSE(files::userFirm().ok());  // asked for whole, it is none
  base::Problems trouble;
  EXPECT_EQ(files::userFirm(&trouble)->name, "Invented Soil Gas Works");
  EXPECT_EQ(trouble.size(), 1U);
  session::FirmDesk again;
  EXPECT_EQ(again.firm().name, "Invented Soil Gas Works");
  EXPECT_EQ(again.logoProblems().size(), 1U);
  files::Firm changed = again.firm();
  changed.insurer = "Invented Mutual";
  EXPECT_TRUE(again.set(changed).empty());
  EXPECT_TRUE(QFile::rename(picture + QStringLiteral(".away"), picture));
  EXPECT_FALSE(files::userFirm()->logo.empty());  // its name is still in the file
  EXPECT_EQ(files::userFirm()->insurer, "Invented Mutual");

  QTest::mouseClick(firm->removeLogo(), Qt::LeftButton);
  EXPECT_TRUE(paper().document()->pictures.empty());
  EXPECT_EQ(files::userFirm()->logo, "");
}

TEST_F(Paper, WhatIsTypedOfTheFirmIsTakenWithoutEnter) {
  open("bungalow");
  trigger("view.paper");
  click(paper().pages()->button(1));
  QTest::keyClicks(paper().firm()->insurer(), QStringLiteral("Invented Mutual"));
  EXPECT_TRUE(
      QTest::qWaitFor([] { return files::userFirm()->insurer == "Invented Mutual"; }, 5000));
  QTest::keyClicks(paper().firm()->perKwh(), QStringLiteral("a lot"));
  QTest::keyClick(paper().firm()->perKwh(), Qt::Key_Return);
  EXPECT_TRUE(paper().firm()->told().contains(QStringLiteral("a lot")));
  EXPECT_FALSE(files::userFirm()->price_per_kwh);
}

TEST_F(Paper, AFirmsFileThatCannotBeReadIsSaidAndLeftAlone) {
  QDir().mkpath(QFileInfo(firmFile()).path());
  QFile file(firmFile());
  ASSERT_TRUE(file.open(QFile::WriteOnly));
  file.write("{\"format\": \"sumpwright.firm/1\", \"name\": 4}");
  file.close();
  openAnew();
  open("bungalow");
  trigger("view.paper");
  click(paper().pages()->button(1));
  EXPECT_TRUE(paper().firm()->told().contains(QStringLiteral("'name'")))
      << paper().firm()->told().toStdString();
  EXPECT_FALSE(paper().firm()->name()->isEnabled());
  window->firmDesk().set(files::Firm());
  ASSERT_TRUE(file.open(QFile::ReadOnly));
  EXPECT_TRUE(file.readAll().contains("\"name\": 4"));
}

}  // namespace
}  // namespace sumpwright::gui
