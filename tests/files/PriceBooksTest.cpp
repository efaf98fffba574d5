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

}  // namespace
}  // namespace sumpwright::files
