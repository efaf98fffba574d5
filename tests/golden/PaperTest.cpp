// The client's plan of every sample with the program's own words and fonts: nothing leaves the
// page, no two texts overlap, and the files say what the paper says.

#include <gtest/gtest.h>

#include <QBuffer>
#include <QDir>
#include <QFile>
#include <QGuiApplication>
#include <QImage>
#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include "airflow/FanTable.h"
#include "core/drawing/Drawn.h"
#include "dossier/Papers.h"
#include "dossier/Sheet.h"
#include "drawing/Box.h"
#include "drawing/PlanDrawing.h"
#include "paint/Export.h"
#include "paint/Fonts.h"
#include "paint/Painting.h"
#include "paint/QtVoice.h"
#include "plan/JobText.h"

namespace sumpwright {
namespace {

using dossier::ClientPlanOptions;
using dossier::Document;
using dossier::PaperSize;
using drawing::Box;
using drawing::DrawList;

std::vector<std::string> samples() {
  std::vector<std::string> out;
  const QDir folder(QStringLiteral(SUMPWRIGHT_SAMPLES_DIR));
  for (const QString& name : folder.entryList({QStringLiteral("*.sump.json")}, QDir::Files)) {
    out.push_back(name.toStdString());
  }
  return out;
}

plan::Job sample(const std::string& name) {
  QFile file(QString::fromStdString(SUMPWRIGHT_SAMPLES_DIR "/" + name));
  EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name;
  return plan::readJob(file.readAll().toStdString()).value().job;
}

rules::RuleSheet sheetOf(const std::string& id) {
  for (const auto& built_in : resources::builtInRuleSheets()) {
    auto sheet = rules::readRuleSheet(built_in.text);
    if (sheet.ok() && sheet->id == id) return *sheet;
  }
  ADD_FAILURE() << "no sheet " << id;
  return {};
}

Document paperOf(const plan::Job& job, PaperSize size = PaperSize::a4) {
  const auto study = siting::Study::of(job, sheetOf(job.rule_sheet));
  const paint::QtVoice voice(job.display_units);
  ClientPlanOptions options;
  options.size = size;
  options.date = "2026-06-02";
  return dossier::clientPlan(study.value(), voice, options);
}

std::optional<QByteArray> run(const char* program, const QStringList& arguments);

struct Placed {
  Box box;
  std::string words;
};

/// Boxes of texts, drawn in a little: touching is no overlap.
std::vector<Placed> textsOf(const DrawList& page, const drawing::Voice& voice) {
  std::vector<Placed> out;
  for (const drawing::Item& item : page.items) {
    if (const auto* text = std::get_if<drawing::Text>(&item.shape)) {
      // A slant text's upright box is no measure of it.
      if (std::fmod(std::abs(text->turn_deg), 90.0) > 0.5) continue;
      out.push_back({drawing::grown(boxOf(*text, voice), -0.15), text->text});
    }
  }
  return out;
}

void expectSound(const Document& document, const drawing::Voice& voice, const std::string& name) {
  for (const DrawList& page : document.pages) {
    SCOPED_TRACE(name);
    drawing::expectInside(page, voice);
    const auto texts = textsOf(page, voice);
    for (std::size_t i = 0; i < texts.size(); ++i) {
      for (std::size_t j = i + 1; j < texts.size(); ++j) {
        EXPECT_FALSE(overlap(texts[i].box, texts[j].box))
            << texts[i].words << " | " << texts[j].words;
      }
    }
  }
}

TEST(Paper, OfEverySampleHasNothingOutsideAndNoOverlap) {
  ASSERT_FALSE(samples().empty());
  for (const std::string& name : samples()) {
    plan::Job job = sample(name);
    for (const PaperSize size : {PaperSize::a4, PaperSize::a3}) {
      for (const auto units : {plan::DisplayUnits::metric, plan::DisplayUnits::imperial}) {
        job.display_units = units;
        const paint::QtVoice voice(units);
        expectSound(paperOf(job, size), voice, name);
      }
    }
  }
}

/// Every sample at both sizes.
template <typename Check>
void onEverySample(Check check) {
  for (const std::string& name : samples()) {
    const plan::Job job = sample(name);
    for (const PaperSize size : {PaperSize::a4, PaperSize::a3}) {
      SCOPED_TRACE(name + (size == PaperSize::a4 ? " A4" : " A3"));
      check(job, paperOf(job, size).pages.front());
    }
  }
}

TEST(Paper, EveryDimensionLineCarriesItsLength) {
  onEverySample([](const plan::Job&, const DrawList& page) {
    constexpr int kStrokes = 5;  // two extension lines, the line itself, two ticks
    int strokes = 0;
    int texts = 0;
    for (const drawing::Item& item : page.items) {
      if (item.tag != "dimension") continue;
      strokes += std::holds_alternative<drawing::Stroke>(item.shape) ? 1 : 0;
      texts += std::holds_alternative<drawing::Text>(item.shape) ? 1 : 0;
    }
    EXPECT_GE(texts, 2);
    EXPECT_EQ(strokes, kStrokes * texts);
  });
}

TEST(Paper, NoWordsStandUnderTheGrip) {
  onEverySample([](const plan::Job& job, const DrawList& page) {
    const paint::QtVoice voice(job.display_units);
    for (const drawing::Item& grip : page.items) {
      const auto* disc = std::get_if<drawing::Arc>(&grip.shape);
      if (grip.tag != "grip" || disc == nullptr || disc->radius_mm < 4.0) continue;
      const Box covered =
          drawing::around(disc->centre, 0.7 * disc->radius_mm, 0.7 * disc->radius_mm);
      for (const auto& text : textsOf(page, voice)) {
        EXPECT_FALSE(overlap(covered, text.box)) << text.words;
      }
    }
  });
}

TEST(Paper, LegendShowsOnlyWhatOccurs) {
  onEverySample([](const plan::Job&, const DrawList& page) {
    int entries = 0;
    for (const drawing::Item& item : page.items) {
      const auto* text = std::get_if<drawing::Text>(&item.shape);
      if (item.tag != "legend" || text == nullptr) continue;
      ++entries;
      EXPECT_EQ(text->text.find(" 0.0 m"), std::string::npos) << text->text;
    }
    EXPECT_GE(entries, 1);
  });
}

TEST(Paper, SettingOutStandsBesideThePlan) {
  onEverySample([](const plan::Job& job, const DrawList& page) {
    const bool cored =
        std::any_of(job.design.sumps.begin(), job.design.sumps.end(),
                    [](const plan::Sump& s) { return s.kind == plan::SumpKind::cored; });
    EXPECT_EQ(drawing::itemsTagged(page, "set-out") > 0, cored);
  });
}

TEST(Paper, WithoutSumpsAndWithLongWordsIsSoundToo) {
  for (const std::string& name : samples()) {
    plan::Job job = sample(name);
    job.design.sumps.clear();
    job.design.waivers.clear();
    job.suction.tests.clear();  // they name the sumps
    job.address =
        "The Very Long Name of an Invented House at the End of a Long Invented Lane, "
        "Ballyinvented, County Nowhere, X00 0000";
    job.client = "Somebody with Several Long Names and a Hyphenated-One-As-Well";
    const paint::QtVoice voice(job.display_units);
    expectSound(paperOf(job), voice, name);
  }
}

/// With the suction told, a letterhead and terms of the firm's own.
ClientPlanOptions everything(const siting::Study& study, PaperSize size) {
  ClientPlanOptions options;
  options.size = size;
  options.date = "2026-06-02";
  options.letterhead.firm = "Invented Soil Gas Works of a Rather Long Name";
  options.letterhead.lines = {"4 Made-up Yard, Nowhere", "000 0000"};
  options.letterhead.insurer = "Invented Mutual, policy 0000";
  options.tariff = price::firmTariff(0.35, "EUR");
  options.suction = dossier::Suction::expected;
  const auto fans = airflow::readFanTable(resources::builtInFanTables()[0].text).value();
  const auto system = siting::usualSystem(study.site(), fans.fans.front(), true);
  auto answer = siting::studySuction(study, system);
  auto outlook = std::make_shared<dossier::Outlook>();
  outlook->fan = fans.fans.front().title;
  if (answer.ok()) {
    outlook->answer = std::move(answer).value();
  } else {
    outlook->why_not = answer.problems();
  }
  options.outlook = outlook;
  const auto book = price::readPriceBook(resources::builtInPriceBooks()[0].text).value();
  plan::Quote terms = study.job().design.quote;
  terms.tax_percent = "13.5";  // invented, as is the margin
  terms.margin_percent = "10";
  dossier::Pricing pricing;
  pricing.quote = price::priced(price::needsOf(study, system), book, terms).value();
  options.pricing = std::make_shared<const dossier::Pricing>(std::move(pricing));
  return options;
}

TEST(Papers, OfEverySampleHaveNothingOutsideAndNoOverlap) {
  for (const std::string& name : samples()) {
    const plan::Job job = sample(name);
    const auto study = siting::Study::of(job, sheetOf(job.rule_sheet)).value();
    const paint::QtVoice voice(job.display_units);
    ClientPlanOptions options = everything(study, PaperSize::a4);
    for (const PaperSize size : {PaperSize::a4, PaperSize::letter, PaperSize::a3}) {
      options.size = size;
      for (const dossier::Paper paper : dossier::allPapers()) {
        const Document document = dossier::paperOf(paper, study, voice, options);
        EXPECT_GE(document.pages.size(), 1U);
        EXPECT_LE(document.pages.size(), 8U) << name;
        expectSound(document, voice, name + " " + std::string(dossier::nameOf(paper)));
      }
    }
  }
}

/// Every font of a PDF is in it.
void expectFontsInside(const QByteArray& listed) {
  const QList<QByteArray> lines = listed.split('\n');
  EXPECT_GT(lines.size(), 2);
  for (qsizetype i = 2; i < lines.size(); ++i) {
    if (lines[i].trimmed().isEmpty()) continue;
    EXPECT_TRUE(lines[i].contains(" yes ")) << lines[i].toStdString();
  }
}

TEST(Papers, BoundAreOneFileThatIsSoundWithItsFonts) {
  const plan::Job job = sample("bungalow.sump.json");
  const auto study = siting::Study::of(job, sheetOf(job.rule_sheet)).value();
  const paint::QtVoice voice(job.display_units);
  ClientPlanOptions options = everything(study, PaperSize::a4);
  QImage logo(60, 20, QImage::Format_RGB32);
  logo.fill(Qt::darkGreen);
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  logo.save(&buffer, "png");
  options.letterhead.logo = dossier::Logo{bytes.toStdString(), 60, 20};
  std::vector<Document> documents;
  std::size_t pages = 0;
  for (const dossier::Paper paper : dossier::allPapers()) {
    documents.push_back(dossier::paperOf(paper, study, voice, options));
    EXPECT_EQ(documents.back().pictures.size(), 1U);
    pages += documents.back().pages.size();
  }
  const Document all = dossier::bound(std::move(documents), "Papers");
  ASSERT_EQ(all.pages.size(), pages);
  EXPECT_GT(all.pictures.back().page, 0U);
  const QTemporaryDir folder;
  const QString pdf = folder.filePath(QStringLiteral("all.pdf"));
  ASSERT_TRUE(paint::exportPages(paint::pagesOf(all), pdf.toStdString()).ok());
  const auto info = run("pdfinfo", {pdf});
  if (!info) GTEST_SKIP() << "poppler-utils is not installed";
  EXPECT_TRUE(info->contains("Pages:           " + QByteArray::number(qsizetype(pages))))
      << info->toStdString();
  const auto text = run("pdftotext", {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
  for (const char* words :
       {"What to expect", "Predicted, not measured", "the re-test decides",
        "No radon concentration", "What we stand for", "No radon level is guaranteed", "Crew sheet",
        "Hold points", "less than 1 Pa", "What to seal, room by room", "Commissioning form",
        "Spillage test", "Shopping list", "Quote", "Total", "Tax, 13.5 %", "Margin, 10 %",
        "Invented Soil Gas Works", "Insurance: Invented Mutual"}) {
    EXPECT_TRUE(text->contains(words)) << words;
  }
  EXPECT_FALSE(text->contains("Registration:"));  // nobody entered one
  expectFontsInside(run("pdffonts", {pdf}).value_or(QByteArray()));
  run("qpdf", {QStringLiteral("--check"), pdf});  // fails the test where it complains
}

/// Pages as counted, each numbered; address and title in words; fonts inside; sound to qpdf.
void expectSoundPdf(const Document& document, const std::string& title, const std::string& address,
                    const QString& pdf) {
  ASSERT_TRUE(paint::exportPages(paint::pagesOf(document), pdf.toStdString()).ok());
  const auto pages = static_cast<qsizetype>(document.pages.size());
  const auto info = run("pdfinfo", {pdf});
  EXPECT_TRUE(info->contains("Pages:           " + QByteArray::number(pages)));
  const auto text = run("pdftotext", {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
  const QString words = QString::fromUtf8(*text);
  for (qsizetype page = 1; page <= pages; ++page) {
    EXPECT_TRUE(words.contains(QStringLiteral("page %1 of %2").arg(page).arg(pages))) << page;
  }
  EXPECT_TRUE(words.contains(QString::fromStdString(title)));
  EXPECT_TRUE(words.contains(QString::fromStdString(address)));
  expectFontsInside(run("pdffonts", {pdf}).value_or(QByteArray()));
  run("qpdf", {QStringLiteral("--check"), pdf});  // fails the test where it complains
}

TEST(Papers, OfEverySampleAreSoundFiles) {
  for (const char* program : {"pdfinfo", "pdftotext", "pdffonts", "qpdf"}) {
    if (QStandardPaths::findExecutable(QLatin1String(program)).isEmpty()) {
      GTEST_SKIP() << program << " is not installed (packaging/debian-packages-test names it)";
    }
  }
  const QTemporaryDir folder;
  for (const std::string& name : samples()) {
    const plan::Job job = sample(name);
    const auto study = siting::Study::of(job, sheetOf(job.rule_sheet)).value();
    const paint::QtVoice voice(job.display_units);
    const ClientPlanOptions options = everything(study, PaperSize::a4);
    for (const dossier::Paper paper : dossier::allPapers()) {
      SCOPED_TRACE(name + " " + std::string(dossier::nameOf(paper)));
      const Document document = dossier::paperOf(paper, study, voice, options);
      // The plan is headed by the question it answers.
      const bool plan = paper == dossier::Paper::plan;
      const bool no_quote = paper == dossier::Paper::quote && job.design.sumps.empty();
      expectSoundPdf(document,
                     voice.say(plan       ? base::Message("paper.title")
                               : no_quote ? base::Message("paper.quote.title-none")
                                          : dossier::titleOf(paper)),
                     job.address, folder.filePath(QStringLiteral("one.pdf")));
    }
  }
}

/// What a proposal says in the size of its text, not of its sources.
TEST(Papers, AProposalKeepsItsSourcesToThemselvesAndEndsOnASignature) {
  for (const std::string& name : samples()) {
    const plan::Job job = sample(name);
    const auto study = siting::Study::of(job, sheetOf(job.rule_sheet)).value();
    const paint::QtVoice voice(job.display_units);
    const auto paper =
        dossier::paperOf(dossier::Paper::proposal, study, voice, everything(study, PaperSize::a4));
    for (const DrawList& page : paper.pages) {
      for (const drawing::Item& item : page.items) {
        const auto* text = std::get_if<drawing::Text>(&item.shape);
        if (text == nullptr || text->font.size_pt < 8.0) continue;
        for (const char* words : {"from memory", "own figure", "ommon practice", "(derived",
                                  "Demo fan", "Where the sump goes"}) {
          EXPECT_EQ(text->text.find(words), std::string::npos) << name << ": " << text->text;
        }
      }
    }
    // None is asked where nothing may be built.
    const dossier::ClientPlanOptions plain;
    const dossier::Sheet sheet(study, voice, plain);
    if (sheet.assessment && !dossier::isStopped(sheet)) {
      EXPECT_TRUE(drawing::says(paper.pages.back(), "Your consent")) << name;
      // Not alone on a page.
      EXPECT_TRUE(drawing::says(paper.pages.back(), "What we stand for")) << name;
    }
  }
}

/// In feet and inches no metric figure stands by itself; one in brackets is how a size is sold, and
/// what small print quotes is its source's.
TEST(Papers, InFeetAndInchesAreSoThroughout) {
  const QRegularExpression metric(QStringLiteral(
      "(?<![(0-9.])\\b[0-9][0-9.]* ?(m|mm|cm|Pa|m\u00B3/h|m\u00B2|\u00B0C)(?![\\w\u00B2\u00B3/])"));
  plan::Job job = sample("bungalow.sump.json");
  job.display_units = plan::DisplayUnits::imperial;
  const auto study = siting::Study::of(job, sheetOf("us-practice")).value();
  const paint::QtVoice voice(job.display_units);
  const auto options = everything(study, PaperSize::letter);
  for (const dossier::Paper paper : {dossier::Paper::plan, dossier::Paper::proposal,
                                     dossier::Paper::crew, dossier::Paper::commissioning}) {
    for (const DrawList& page : dossier::paperOf(paper, study, voice, options).pages) {
      for (const drawing::Item& item : page.items) {
        const auto* text = std::get_if<drawing::Text>(&item.shape);
        // A rule sheet's own words have both: "3.05 m (10 ft)".
        if (text == nullptr || text->font.size_pt < 8.0 || drawing::says({0, 0, {item}}, " ft")) {
          continue;
        }
        EXPECT_FALSE(metric.match(QString::fromStdString(text->text)).hasMatch())
            << dossier::nameOf(paper) << ": " << text->text;
        EXPECT_EQ(text->text.find(".."), std::string::npos) << text->text;
      }
    }
  }
}

/// It is filled by hand: two pages with lines that a pen can write on, rather than one without.
TEST(Papers, CommissioningIsTwoPagesAtMostForEverySample) {
  for (const std::string& name : samples()) {
    const plan::Job job = sample(name);
    const auto study = siting::Study::of(job, sheetOf(job.rule_sheet)).value();
    const paint::QtVoice voice(job.display_units);
    ClientPlanOptions options = everything(study, PaperSize::a4);
    for (const PaperSize size : {PaperSize::a4, PaperSize::letter, PaperSize::a3}) {
      options.size = size;
      const auto form = dossier::paperOf(dossier::Paper::commissioning, study, voice, options);
      EXPECT_LE(form.pages.size(), size == PaperSize::letter ? 3U : 2U) << name;
    }
  }
}

TEST(Paper, SumpAnywhereIsSound) {
  for (const std::string& name :
       {std::string("bungalow.sump.json"), std::string("mid-terrace.sump.json")}) {
    plan::Job job = sample(name);
    if (job.design.sumps.empty()) continue;
    const auto study = siting::Study::of(job, sheetOf(job.rule_sheet));
    const double length = study->perimeter().length_m(0);
    for (int i = 0; i < 12; ++i) {
      job.design.sumps[0].kind = plan::SumpKind::cored;
      job.design.sumps[0].ring = 0;
      job.design.sumps[0].chainage_m = length * (i + 0.4) / 12.0;
      const paint::QtVoice voice(job.display_units);
      expectSound(paperOf(job), voice,
                  name + " at " + std::to_string(job.design.sumps[0].chainage_m));
    }
  }
}

QString pathOf(const QTemporaryDir& folder, const char* name) {
  return folder.filePath(QLatin1String(name));
}

/// Output of a program, or nothing when it is not installed.
std::optional<QByteArray> run(const char* program, const QStringList& arguments) {
  if (QStandardPaths::findExecutable(QLatin1String(program)).isEmpty()) return std::nullopt;
  QProcess process;
  process.start(QLatin1String(program), arguments);
  if (!process.waitForFinished(60000)) return std::nullopt;
  EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
  return process.readAllStandardOutput();
}

class PaperFile : public testing::Test {
 protected:
  void SetUp() override {
    ASSERT_TRUE(m_folder.isValid());
    m_job = sample("bungalow.sump.json");
    m_document = paperOf(m_job);
    m_pdf = pathOf(m_folder, "plan.pdf");
    const auto written = paint::exportPages(paint::pagesOf(m_document), m_pdf.toStdString());
    ASSERT_TRUE(written.ok());
    EXPECT_EQ(written->size(), 1U);
  }
  QTemporaryDir m_folder;
  plan::Job m_job;
  Document m_document;
  QString m_pdf;
};

TEST_F(PaperFile, PdfHoldsItsTextAsText) {
  const auto text = run("pdftotext", {QStringLiteral("-layout"), m_pdf, QStringLiteral("-")});
  if (!text) GTEST_SKIP() << "pdftotext (poppler-utils) is not installed";
  for (const char* words : {"Where the sump goes", "Clear", "rule sheet", "Electrical work",
                            "Silica dust", "Asbestos", "re-test decides", "page 1 of"}) {
    EXPECT_TRUE(QString::fromUtf8(*text).contains(QLatin1String(words), Qt::CaseInsensitive))
        << words;
  }
  EXPECT_TRUE(QString::fromUtf8(*text).contains(QString::fromStdString(m_job.address)));
}

TEST_F(PaperFile, PdfEmbedsItsFonts) {
  const auto text = run("pdffonts", {m_pdf});
  if (!text) GTEST_SKIP() << "pdffonts (poppler-utils) is not installed";
  const QList<QByteArray> lines = text->split('\n');
  ASSERT_GT(lines.size(), 3);
  for (qsizetype i = 2; i < lines.size(); ++i) {
    if (lines[i].trimmed().isEmpty()) continue;
    EXPECT_TRUE(lines[i].contains(" yes ")) << lines[i].toStdString();
    EXPECT_FALSE(lines[i].contains("Mono")) << lines[i].toStdString();
  }
}

TEST_F(PaperFile, PdfIsSoundAndVector) {
  if (!run("qpdf", {QStringLiteral("--check"), m_pdf})) GTEST_SKIP() << "qpdf is not installed";
  const auto images = run("pdfimages", {QStringLiteral("-list"), m_pdf});
  if (images) {
    EXPECT_LE(images->trimmed().count('\n'), 1) << images->toStdString();
  }
}

TEST_F(PaperFile, PdfNamesTitleAndAuthorInXmp) {
  const auto info = run("pdfinfo", {QStringLiteral("-meta"), m_pdf});
  if (!info) GTEST_SKIP() << "pdfinfo (poppler-utils) is not installed";
  QXmlStreamReader xml(*info);
  QString creator;
  QString title;
  QString inside;
  while (!xml.atEnd()) {
    xml.readNext();
    if (!xml.isStartElement()) continue;
    if (xml.name() == QLatin1String("creator") || xml.name() == QLatin1String("title")) {
      inside = xml.name().toString();
    }
    if (xml.name() == QLatin1String("li")) {
      (inside == QLatin1String("creator") ? creator : title) = xml.readElementText();
      inside.clear();
    }
    if (!creator.isEmpty() && !title.isEmpty()) break;
  }
  EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
  EXPECT_EQ(creator.toStdString(), m_job.surveyor);
  EXPECT_EQ(title.toStdString(), m_document.title);
}

/// Everything in a PDF but its dates and what hangs on them.
QByteArray withoutDates(QByteArray bytes) {
  qsizetype at = 0;
  while ((at = bytes.indexOf("(D:", at)) >= 0) {
    const qsizetype end = bytes.indexOf(')', at);
    bytes.replace(at, end - at, QByteArray(end - at, '#'));
    at = end;
  }
  return bytes;
}

TEST_F(PaperFile, PdfIsTheSameEachTimeApartFromItsDate) {
  const QString again = pathOf(m_folder, "again.pdf");
  ASSERT_TRUE(paint::exportPages(paint::pagesOf(m_document), again.toStdString()).ok());
  QFile a(m_pdf);
  QFile b(again);
  ASSERT_TRUE(a.open(QIODevice::ReadOnly) && b.open(QIODevice::ReadOnly));
  EXPECT_TRUE(withoutDates(a.readAll()) == withoutDates(b.readAll()));
}

TEST_F(PaperFile, SvgIsOneSoundFileAPageWithoutClipsOrPatterns) {
  const QString svg = pathOf(m_folder, "plan.svg");
  const auto written = paint::exportPages(paint::pagesOf(m_document), svg.toStdString());
  ASSERT_TRUE(written.ok());
  ASSERT_EQ(written->size(), m_document.pages.size());
  EXPECT_EQ(written->front(), svg.toStdString());
  EXPECT_EQ(written->back(), pathOf(m_folder, "plan-2.svg").toStdString());
  for (const std::string& name : *written) {
    QFile file(QString::fromStdString(name));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    QXmlStreamReader xml(&file);
    int texts = 0;
    while (!xml.atEnd()) {
      xml.readNext();
      if (!xml.isStartElement()) continue;
      EXPECT_NE(xml.name(), QLatin1String("pattern"));
      EXPECT_NE(xml.name(), QLatin1String("mask"));
      EXPECT_NE(xml.name(), QLatin1String("clipPath"));
      texts += xml.name() == QLatin1String("text") ? 1 : 0;
    }
    EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
    EXPECT_GT(texts, 10);
  }
  QFile first(svg);
  ASSERT_TRUE(first.open(QIODevice::ReadOnly));
  const QByteArray bytes = first.readAll();
  EXPECT_TRUE(bytes.contains("width=\"210mm\""));
  EXPECT_TRUE(bytes.contains("B612") || !paint::drawingFamilies().contains(QStringLiteral("Bsix")));
  EXPECT_FALSE(bytes.contains("Bsix"));
}

TEST_F(PaperFile, PngIs200Dpi) {
  const QString png = pathOf(m_folder, "plan.png");
  ASSERT_TRUE(paint::exportPages(paint::pagesOf(m_document), png.toStdString()).ok());
  const QImage image(png);
  EXPECT_EQ(image.width(), qRound(210.0 / 25.4 * 200.0));
  EXPECT_EQ(image.height(), qRound(297.0 / 25.4 * 200.0));
  EXPECT_NEAR(image.dotsPerMeterX() * 0.0254, 200.0, 0.1);
}

TEST_F(PaperFile, SaysWhyItCannotWrite) {
  const auto nowhere = paint::exportPages(paint::pagesOf(m_document),
                                          pathOf(m_folder, "no/such/plan.pdf").toStdString());
  ASSERT_FALSE(nowhere.ok());
  EXPECT_EQ(nowhere.problems()[0].message.id, "paper.write");
  const auto odd =
      paint::exportPages(paint::pagesOf(m_document), pathOf(m_folder, "plan.doc").toStdString());
  ASSERT_FALSE(odd.ok());
  EXPECT_EQ(odd.problems()[0].message.id, "paper.format");
  Document empty;
  const auto nothing =
      paint::exportPages(paint::pagesOf(empty), pathOf(m_folder, "empty.pdf").toStdString());
  ASSERT_FALSE(nothing.ok());
  EXPECT_EQ(nothing.problems()[0].message.id, "paper.no-pages");
  EXPECT_FALSE(QFile::exists(pathOf(m_folder, "empty.pdf")));
}

/// How far two pictures are apart.
struct Apart {
  int most = 0;  ///< of 255, over colours and pixels
  int many = 0;  ///< pixels
};

Apart apart(const QImage& a, const QImage& b) {
  Apart out;
  for (int y = 0; y < a.height(); ++y) {
    for (int x = 0; x < a.width(); ++x) {
      const QRgb p = a.pixel(x, y);
      const QRgb q = b.pixel(x, y);
      const int off = std::max({std::abs(qRed(p) - qRed(q)), std::abs(qGreen(p) - qGreen(q)),
                                std::abs(qBlue(p) - qBlue(q))});
      if (off > 0) ++out.many;
      out.most = std::max(out.most, off);
    }
  }
  return out;
}

/// On screen a plan is painted in two halves at once, and nobody may see where they meet: lines cut
/// at the edge are rounded a little otherwise, but nothing is left out or stands elsewhere. Own
/// figures: an eighth of full scale, and (at ratio 1) fewer pixels than one line of the grid has.
TEST(Painting, HalvesLookLikeTheWhole) {
  const paint::QtVoice voice(plan::DisplayUnits::metric);
  for (const std::string& name : samples()) {
    const plan::Job job = sample(name);
    const auto study = siting::Study::of(job, sheetOf(job.rule_sheet));
    ASSERT_TRUE(study.ok()) << name;
    const DrawList list = drawing::planBase(
        *study, drawing::fitted(*study, 200.0, 150.0, drawing::ThemeName::light), voice);
    for (const double ratio : {1.0, 1.25, 2.0}) {
      constexpr double kUnits = 4.0;
      QImage halves((QSizeF(200.0, 150.0) * kUnits * ratio).toSize(), QImage::Format_RGB32);
      halves.setDevicePixelRatio(ratio);
      halves.fill(Qt::white);
      QImage whole = halves;
      paint::paintOn(halves, list, kUnits);
      QPainter painter(&whole);
      paint::paintDrawList(painter, list, kUnits);
      painter.end();
      const Apart found = apart(halves, whole);
      EXPECT_LE(found.most, 32) << name << " at " << ratio;
      EXPECT_LT(700 * found.many, whole.width() * whole.height()) << name << " at " << ratio;
    }
  }
}

TEST(QtVoice, MeasuresWhatIsPainted) {
  const paint::QtVoice voice(plan::DisplayUnits::metric);
  const drawing::Font font{9.6, true, false};
  const std::string words = "Distances from the edge";
  DrawList list{120, 20, {{drawing::Text{{5, 10}, words, font, {0, 0, 0, 255}}, ""}}};
  constexpr double kUnits = 20.0;
  QImage image(2400, 400, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  paint::paintDrawList(painter, list, kUnits);
  painter.end();
  int right = 0;
  int top = image.height();
  for (int y = 0; y < image.height(); ++y) {
    for (int x = 0; x < image.width(); ++x) {
      if (qGray(image.pixel(x, y)) > 128) continue;
      right = std::max(right, x);
      top = std::min(top, y);
    }
  }
  EXPECT_NEAR(right / kUnits, 5.0 + voice.width_mm(words, font), 0.4);
  EXPECT_NEAR(10.0 - top / kUnits, voice.capHeight_mm(font), 0.25);
}

TEST(QtVoice, WidthsGrowWithTheSize) {
  const paint::QtVoice voice(plan::DisplayUnits::metric);
  const double small = voice.width_mm("Kitchen 16.5", {7.5, false, false});
  EXPECT_NEAR(voice.width_mm("Kitchen 16.5", {15.0, false, false}), 2.0 * small, 1e-9);
}

TEST(Fonts, FiguresAreOneWidthAndLettersAreNot) {
  if (!paint::drawingFamilies().contains(QStringLiteral("Bsix"))) {
    GTEST_SKIP() << "B612 (fonts-b612) is not installed";
  }
  const paint::QtVoice voice(plan::DisplayUnits::metric);
  for (const bool bold : {false, true}) {
    const drawing::Font font{10, bold, false};
    EXPECT_NEAR(voice.width_mm("1", font), voice.width_mm("8", font), 1e-9);
    EXPECT_LT(voice.width_mm("i", font), 0.6 * voice.width_mm("m", font));  // not the Mono cut
  }
}

}  // namespace
}  // namespace sumpwright

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  testing::InitGoogleTest(&argc, argv);
  const QGuiApplication application(argc, argv);
  return RUN_ALL_TESTS();
}
