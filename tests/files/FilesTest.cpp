#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "files/JobFile.h"
#include "files/RuleSheets.h"
#include "resources/BuiltIn.h"

namespace sumpwright::files {
namespace {

using ::testing::Contains;
using ::testing::Field;

/// A data folder of our own for each test.
class Files : public ::testing::Test {
 protected:
  Files() {
    m_before = qgetenv("XDG_DATA_HOME");
    qputenv("XDG_DATA_HOME", m_folder.path().toUtf8());
    QDir().mkpath(QString::fromStdString(userSheetFolder()));
  }
  ~Files() override { qputenv("XDG_DATA_HOME", m_before); }

  std::string path(const std::string& name) const {
    return m_folder.filePath(QString::fromStdString(name)).toStdString();
  }
  static void put(const std::string& file, const std::string& text) {
    QFile out(QString::fromStdString(file));
    ASSERT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(text.data(), static_cast<qint64>(text.size()));
  }
  static std::string userSheet(const std::string& name) { return userSheetFolder() + "/" + name; }

 private:
  QTemporaryDir m_folder;
  QByteArray m_before;
};

std::string builtIn(const std::string& id) {
  for (const resources::BuiltInFile& file : resources::builtInRuleSheets()) {
    if (file.id == id) return std::string(file.text);
  }
  return {};
}

/// A built-in sheet under another id or title.
std::string changed(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return text.replace(at, from.size(), to);
}

template <class T>
std::string firstId(const base::Result<T>& result) {
  return result.ok() ? "" : result.problems().front().message.id;
}

TEST_F(Files, WrittenBytesAreReadBack) {
  const std::string bytes("a\0b\n\xC3\xA9", 6);
  ASSERT_TRUE(writeBytes(path("x"), bytes).ok());
  EXPECT_EQ(*readBytes(path("x"), 6), bytes);
}

TEST_F(Files, OneByteTooManyIsTooLarge) {
  put(path("x"), "1234567");
  EXPECT_TRUE(readBytes(path("x"), 7).ok());
  EXPECT_EQ(firstId(readBytes(path("x"), 6)), "file.too-large");
}

TEST_F(Files, WhatIsNotAFile) {
  EXPECT_EQ(firstId(readBytes(path("absent"), 10)), "file.not-found");
  EXPECT_EQ(firstId(readBytes(path(""), 10)), "file.folder");
  EXPECT_EQ(firstId(writeBytes(path("absent/x"), "1")), "file.not-writable");
}

TEST_F(Files, AFailedWriteLeavesTheOldFile) {
  put(path("x"), "old");
  QFile::setPermissions(QString::fromStdString(path("")),
                        QFileDevice::ReadOwner | QFileDevice::ExeOwner);
  const auto written = writeBytes(path("x"), "new");
  QFile::setPermissions(QString::fromStdString(path("")),
                        QFileDevice::ReadOwner | QFileDevice::WriteOwner | QFileDevice::ExeOwner);
  // Root may write anywhere; then the new text is there as a whole.
  EXPECT_EQ(*readBytes(path("x"), 10), written.ok() ? "new" : "old");
}

TEST_F(Files, AJobIsSavedAsItWas) {
  const std::string file = std::string(SUMPWRIGHT_TESTS_DIR) + "/cli/data/sound.sump.json";
  const auto read = openJob(file);
  ASSERT_TRUE(read.ok());
  ASSERT_TRUE(saveJob(path("copy.sump.json"), read->job, read->source).ok());
  const auto again = openJob(path("copy.sump.json"));
  ASSERT_TRUE(again.ok());
  EXPECT_EQ(again->job, read->job);
}

TEST_F(Files, BuiltInSheetsAreAllReadable) {
  const SheetList list = availableSheets();
  EXPECT_TRUE(list.problems.empty());
  ASSERT_FALSE(list.sheets.empty());
  EXPECT_EQ(list.sheets.front().id, "ie-practice");
  for (const SheetEntry& entry : list.sheets) EXPECT_TRUE(sheetById(entry.id).ok()) << entry.id;
}

TEST_F(Files, AnUnknownIdIsNeverTheDefault) {
  EXPECT_EQ(firstId(sheetById("atlantis-practice")), "file.sheet-unknown");
  EXPECT_EQ(firstId(sheetById("")), "file.sheet-unknown");
}

TEST_F(Files, TheUsersSheetOfTheSameIdWins) {
  put(userSheet("mine.json"), changed(builtIn("ie-practice"), "Irish practice", "Mine (invented)"));
  const auto sheet = sheetById("ie-practice");
  ASSERT_TRUE(sheet.ok());
  EXPECT_EQ(sheet->sheet.title, "Mine (invented)");
  EXPECT_EQ(sheet->origin, SheetOrigin::user_folder);
  EXPECT_EQ(sheet->path, userSheet("mine.json"));
}

TEST_F(Files, TheUsersOwnIdsAreListed) {
  put(userSheet("firm.json"),
      changed(builtIn("ie-practice"), "\"ie-practice\"", "\"firm-practice\""));
  EXPECT_THAT(availableSheets().sheets, Contains(Field(&SheetEntry::id, "firm-practice")));
  EXPECT_TRUE(sheetById("firm-practice").ok());
}

TEST_F(Files, ABrokenSheetOfTheUsersIsNotPassedOver) {
  put(userSheet("ie-practice.json"), "{");
  EXPECT_EQ(firstId(sheetById("ie-practice")), "file.sheet-unusable");
  EXPECT_TRUE(sheetById("uk-practice").ok());
  EXPECT_FALSE(availableSheets().problems.empty());
}

TEST_F(Files, TwoSheetsOfOneIdAreAProblem) {
  put(userSheet("a.json"), builtIn("ie-practice"));
  put(userSheet("b.json"), builtIn("ie-practice"));
  EXPECT_EQ(firstId(sheetById("ie-practice")), "file.sheet-twice");
}

TEST_F(Files, TheJobsOwnCopyComesFirst) {
  const std::string sheet =
      changed(changed(builtIn("ie-practice"), "\"ie-practice\"", "\"firm-practice\""),
              "Irish practice", "From the job (invented)");
  put(userSheet("firm.json"),
      changed(builtIn("ie-practice"), "\"ie-practice\"", "\"firm-practice\""));
  const auto job = plan::readJob(
      R"({"format": "sumpwright.job", "version": 1, "id": "j", "rule_sheet": "firm-practice",)"
      R"("rule_sheet_copy": )" +
      sheet + "}");
  ASSERT_TRUE(job.ok());
  const auto found = sheetById("firm-practice", job->source);
  ASSERT_TRUE(found.ok());
  EXPECT_EQ(found->sheet.title, "From the job (invented)");
  EXPECT_EQ(found->origin, SheetOrigin::job_copy);
  // Another id is not answered by the copy.
  EXPECT_EQ(sheetById("uk-practice", job->source)->origin, SheetOrigin::built_in);
}

TEST_F(Files, AJobTakesItsSheetAlong) {
  put(userSheet("firm.json"),
      changed(builtIn("ie-practice"), "\"ie-practice\"", "\"firm-practice\""));
  plan::Job job;
  job.id = "j";
  job.rule_sheet = "firm-practice";
  ASSERT_TRUE(saveJob(path("j.sump.json"), job, {}).ok());
  QFile::remove(QString::fromStdString(userSheet("firm.json")));
  const auto read = openJob(path("j.sump.json"));
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read->job.rule_sheet, "firm-practice");
  EXPECT_EQ(sheetById("firm-practice", read->source)->origin, SheetOrigin::job_copy);

  // Another sheet is chosen: the copy it no longer needs goes.
  job.rule_sheet = "uk-practice";
  ASSERT_TRUE(saveJob(path("j.sump.json"), job, read->source).ok());
  EXPECT_EQ(plan::embeddedRuleSheet(openJob(path("j.sump.json"))->source), "");
}

TEST_F(Files, ABuiltInSheetIsNotCopied) {
  plan::Job job;
  job.id = "j";
  ASSERT_TRUE(saveJob(path("j.sump.json"), job, {}).ok());
  EXPECT_EQ(readBytes(path("j.sump.json"), 100000)->find("rule_sheet_copy"), std::string::npos);
}

TEST_F(Files, ANameWithASlashOrEndingIsAFile) {
  put(path("own.json"), changed(builtIn("ie-practice"), "\"ie-practice\"", "\"own\""));
  EXPECT_EQ(sheetByIdOrFile(path("own.json"))->sheet.id, "own");
  EXPECT_EQ(firstId(sheetByIdOrFile("absent.json")), "file.not-found");
  EXPECT_EQ(sheetByIdOrFile("uk-practice")->origin, SheetOrigin::built_in);
}

}  // namespace
}  // namespace sumpwright::files
