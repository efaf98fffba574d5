#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>
#include <nlohmann/json.hpp>

#include "cli/Run.h"

namespace sumpwright::cli {
namespace {

using QuoteReport = nlohmann::ordered_json;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::StartsWith;

std::string quoteSample(const std::string& name) {
  return std::string(SUMPWRIGHT_SOURCE_DIR) + "/samples/" + name + ".sump.json";
}

std::string quoteBytes(const QString& path) {
  QFile file(path);
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  return file.readAll().toStdString();
}

TEST(QuoteCommand, SaysLinesTotalsAndWhatIsNotStated) {
  const Ran run = ran({"quote", quoteSample("bungalow")});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.err, IsEmpty());
  for (const char* said :
       {"Quote in EUR, by Demo prices (invented)", "Material", "Labour", "Total, tax not stated",
        "Offered on top", "registered electrician", "no firm, shop or product"}) {
    EXPECT_THAT(run.out, HasSubstr(said));
  }
  EXPECT_THAT(run.out, Not(HasSubstr("{")));
  EXPECT_THAT(run.out, Not(HasSubstr("[price")));
}

TEST(QuoteCommand, WithoutASumpHasNoSum) {
  const QTemporaryDir folder;
  QuoteReport job = QuoteReport::parse(quoteBytes(QString::fromStdString(quoteSample("bungalow"))));
  job["design"]["sumps"] = QuoteReport::array();
  job["design"]["waivers"] = QuoteReport::array();
  QFile file(folder.filePath("none.sump.json"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(QByteArray::fromStdString(job.dump()));
  file.close();
  const Ran run = ran({"quote", file.fileName().toStdString()});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.out, HasSubstr("The design has no sump"));
  EXPECT_THAT(run.out, Not(HasSubstr("0.00")));
}

TEST(QuoteCommand, MarksWhatFollowsFromAUsualRunAndShowsNoPriceOfOneWithAMarginInIt) {
  const QTemporaryDir folder;
  QuoteReport job = QuoteReport::parse(quoteBytes(QString::fromStdString(quoteSample("bungalow"))));
  job["design"]["quote"]["margin_percent"] = "10";
  job["design"]["quote"]["margin_shown"] = "in_lines";
  QFile file(folder.filePath("margin.sump.json"));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(QByteArray::fromStdString(job.dump()));
  file.close();
  const Ran run = ran({"quote", file.fileName().toStdString()});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.out, Not(HasSubstr(" 9.40 ")));  // a metre of pipe in the demo book
  EXPECT_THAT(run.out, HasSubstr("Pipe, a tenth more than is laid \u2248"));
  EXPECT_THAT(run.out, HasSubstr("are taken for it, as usual (own figures)"));
  EXPECT_THAT(ran({"quote", quoteSample("bungalow")}).out, HasSubstr(" 9.40 "));
}

TEST(QuoteCommand, TheShoppingListSaysWhatToAskFor) {
  const Ran run = ran({"shopping", quoteSample("bungalow")});
  EXPECT_EQ(run.code, kDone) << run.err;
  for (const char* said : {"110 mm outside diameter", "3 cores of 1.5 mm²", "Backer", "Mesh"})
    EXPECT_THAT(run.out, HasSubstr(said));
  const QuoteReport report =
      QuoteReport::parse(ran({"shopping", "--json", quoteSample("bungalow")}).out);
  EXPECT_EQ(report["lines"][0]["detail"], "110 mm outside diameter");
}

TEST(QuoteCommand, JsonAmountsAreText) {
  const Ran run = ran({"quote", "--json", quoteSample("bungalow")});
  ASSERT_EQ(run.code, kDone) << run.err;
  const QuoteReport report = QuoteReport::parse(run.out);
  EXPECT_EQ(report["format"], "sumpwright.quote/1");
  EXPECT_EQ(report["price_book"], "demo-prices");
  EXPECT_TRUE(report["invented"].get<bool>());
  EXPECT_TRUE(report["total"].is_string());
  EXPECT_TRUE(report["tax_percent"].is_null());
  for (const auto& line : report["lines"]) EXPECT_TRUE(line["total"].is_string()) << line;
}

TEST(QuoteCommand, CsvBeginsWithAMarkWhenAskedTo) {
  const QTemporaryDir folder;
  const QString file = folder.filePath("quote.csv");
  const Ran run = ran({"quote", "--csv", file.toStdString(), "--bom", quoteSample("bungalow")});
  ASSERT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(quoteBytes(file), StartsWith("\xEF\xBB\xBFgroup,state,item,text,"));
  EXPECT_EQ(ran({"quote", "--bom", quoteSample("bungalow")}).code, kUnusable);
}

TEST(QuoteCommand, AnUnknownBookIsNeverReplaced) {
  const Ran run = ran({"quote", "--book", "nobody", quoteSample("bungalow")});
  EXPECT_EQ(run.code, kUnusable);
  EXPECT_THAT(run.out, IsEmpty());
  EXPECT_THAT(run.err, HasSubstr("file.prices-unknown: There is no price book “nobody”"));
}

TEST(QuoteCommand, AFileThatIsNoBookSaysWhy) {
  const QTemporaryDir folder;
  const QString path = folder.filePath("own.json");
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(R"({"format": "sumpwright.prices", "version": 1, "id": "own", "title": "Own",)"
             R"( "currency": "EUR", "items": [{"id": "fan", "title": "F", "unit": "each",)"
             R"( "price": 200.1}]})");
  file.close();
  const Ran run = ran({"quote", "--book", path.toStdString(), quoteSample("bungalow")});
  EXPECT_EQ(run.code, kUnusable);
  EXPECT_THAT(run.err, HasSubstr("file.prices-unusable"));
  EXPECT_THAT(run.err, HasSubstr("(/items/0/price)"));
}

TEST(QuoteCommand, WritesPapers) {
  const QTemporaryDir folder;
  for (const char* command : {"quote", "shopping"}) {
    const QString file = folder.filePath(QString::fromLatin1(command) + QStringLiteral(".pdf"));
    const Ran run = ran({command, "-o", file.toStdString(), quoteSample("bungalow")});
    ASSERT_EQ(run.code, kDone) << run.err;
    EXPECT_EQ(run.out, file.toStdString() + "\n");
    EXPECT_THAT(quoteBytes(file), StartsWith("%PDF"));
  }
  EXPECT_EQ(ran({"quote", "-o", "quote.txt", quoteSample("bungalow")}).code, kUnusable);
}

TEST(ShoppingCommand, HasMaterialAndNoPrices) {
  const Ran run = ran({"shopping", quoteSample("bungalow")});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.out, HasSubstr("Lockable isolator"));
  EXPECT_THAT(run.out, Not(HasSubstr("Coring")));
  const Ran json = ran({"shopping", "--json", quoteSample("bungalow")});
  const QuoteReport report = QuoteReport::parse(json.out);
  EXPECT_EQ(report["format"], "sumpwright.shopping/1");
  EXPECT_FALSE(report["lines"].empty());
  EXPECT_FALSE(report["lines"][0].contains("unit_price"));
}

}  // namespace
}  // namespace sumpwright::cli
