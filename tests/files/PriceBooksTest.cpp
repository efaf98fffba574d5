#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "files/PriceBooks.h"

namespace sumpwright::files {
namespace {

/// A data folder of our own for each test.
class PriceBooks : public ::testing::Test {
 protected:
  PriceBooks() {
    m_before = qgetenv("XDG_DATA_HOME");
    qputenv("XDG_DATA_HOME", m_folder.path().toUtf8());
    QDir().mkpath(QString::fromStdString(userPriceFolder()));
  }
  ~PriceBooks() override { qputenv("XDG_DATA_HOME", m_before); }

  static void putBook(const std::string& name, const std::string& id, const std::string& more) {
    QFile out(QString::fromStdString(userPriceFolder() + "/" + name));
    ASSERT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(QByteArray::fromStdString(
        R"({"format": "sumpwright.prices", "version": 1, "id": ")" + id +
        R"(", "title": "Own, invented", "currency": "EUR", "items": [])" + more + "}"));
  }

 private:
  QTemporaryDir m_folder;
  QByteArray m_before;
};

std::string firstProblem(const std::string& id) {
  const base::Problems problems = priceBookById(id).problems();
  return problems.empty() ? "" : problems[0].message.id;
}

TEST_F(PriceBooks, TheUsersTakesTheBuiltInOnesPlace) {
  EXPECT_EQ(priceBookById(kPricesUnchosen)->path, "");
  putBook("mine.json", kPricesUnchosen, "");
  EXPECT_EQ(priceBookById(kPricesUnchosen)->book.title, "Own, invented");
  EXPECT_THAT(knownPriceBooks(), ::testing::ElementsAre(kPricesUnchosen));
}

TEST_F(PriceBooks, NoOtherIsTakenForOneThatIsMissingTwiceOrBroken) {
  EXPECT_EQ(firstProblem("ours"), "file.prices-unknown");
  putBook("ours.json", "ours", R"(, "tax_percent": 13.5)");
  EXPECT_EQ(firstProblem("ours"), "file.prices-unusable");
  putBook("ours.json", "ours", "");
  EXPECT_EQ(firstProblem("ours"), "");
  putBook("other.json", "ours", "");
  EXPECT_EQ(firstProblem("ours"), "file.prices-twice");
}

TEST_F(PriceBooks, AnOwnOneIsMadeOfTheDemoAndChanged) {
  const auto demo = priceBookById(kPricesUnchosen);
  const auto own = ownPriceBook(demo->book);
  ASSERT_TRUE(own.ok());
  EXPECT_EQ(own->book.id, "our-prices");
  EXPECT_TRUE(own->book.invented);
  // Papers would show an invented price of electricity to clients as the firm's.
  EXPECT_TRUE(demo->book.per_kwh.has_value());
  EXPECT_FALSE(own->book.per_kwh.has_value());
  price::PriceBook firms = own->book;
  firms.invented = false;
  firms.per_kwh = price::Decimal::parse("0.42");
  EXPECT_EQ(ownPriceBook(demo->book)->book.id, "our-prices-2");
  EXPECT_EQ(ownPriceBook(firms)->book.per_kwh, firms.per_kwh);
  LoadedPrices changed = *own;
  changed.book.items[0].price = price::Decimal::of(7);
  EXPECT_TRUE(savePriceBook(changed).empty());
  EXPECT_EQ(priceBookById("our-prices")->book.items[0].price, price::Decimal::of(7));
  changed.book.currency = "euros";
  EXPECT_EQ(savePriceBook(changed)[0].message.id, "prices.not-currency");
  EXPECT_EQ(priceBookById("our-prices")->book.currency, "EUR");
}

TEST_F(PriceBooks, OneFromElsewhereIsCopiedButNeverOverAnother) {
  const QTemporaryDir elsewhere;
  const std::string path = elsewhere.filePath("book.json").toStdString();
  const auto put = [&](const char* title, const char* id) {
    QFile out(QString::fromStdString(path));
    ASSERT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(QByteArray(R"({"format": "sumpwright.prices", "version": 1, "id": ")") + id +
              R"(", "title": ")" + title + R"(", "currency": "EUR", "items": []})");
  };
  put("Invented", "a/b");
  const auto taken = takePriceBook(path);
  ASSERT_TRUE(taken.ok());
  EXPECT_THAT(taken->path, ::testing::EndsWith("a_b.json"));
  EXPECT_EQ(priceBookById("a/b")->book.title, "Invented");
  EXPECT_TRUE(takePriceBook(path).ok());  // the same again
  put("Another", "a/b");
  EXPECT_EQ(takePriceBook(path).problems()[0].message.id, "file.prices-taken");
  EXPECT_EQ(priceBookById("a/b")->book.title, "Invented");
  put("Another", kPricesUnchosen);
  EXPECT_EQ(takePriceBook(path).problems()[0].message.id, "file.prices-taken");
  put("Another", "fine");
  EXPECT_TRUE(takePriceBook(path).ok());
  EXPECT_EQ(availablePriceBooks().size(), 3U);
}

}  // namespace
}  // namespace sumpwright::files
