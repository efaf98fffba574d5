#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QImage>
#include <QTemporaryDir>

#include "cli/Run.h"

namespace sumpwright::cli {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class PapersCommand : public ::testing::Test {
 protected:
  std::string in(const std::string& name) const {
    return m_folder.filePath(QString::fromStdString(name)).toStdString();
  }
  void write(const std::string& name, const QByteArray& bytes) const {
    QFile file(QString::fromStdString(in(name)));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes);
  }
  QTemporaryDir m_folder;
};

TEST_F(PapersCommand, WritesAFileOfEachIntoAFolderThatIsMade) {
  const Ran run = ran({"papers", data("sound"), "-o", in("a/b"), "--no-suction"});
  EXPECT_EQ(run.code, kDone) << run.err;
  for (const char* name : {"a/b/plan.pdf", "a/b/proposal.pdf", "a/b/quote.pdf", "a/b/crew.pdf",
                           "a/b/shopping.pdf", "a/b/commissioning.pdf"}) {
    EXPECT_THAT(run.out, HasSubstr(name));
    EXPECT_TRUE(QFile::exists(QString::fromStdString(in(name)))) << name;
  }
}

TEST_F(PapersCommand, WritesOnlyThoseAskedFor) {
  const Ran run =
      ran({"papers", data("sound"), "-o", in("c"), "--paper", "crew", "--size", "letter"});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_THAT(run.out, HasSubstr("crew.pdf"));
  EXPECT_THAT(run.out, Not(HasSubstr("proposal")));
}

TEST_F(PapersCommand, NeedsAPriceBookForQuoteAndListOnly) {
  const auto of = [&](const char* paper) {
    return ran({"papers", data("sound"), "-o", in("q"), "--paper", paper, "--book", "nobodys",
                "--no-suction"});
  };
  EXPECT_EQ(of("crew").code, kDone);
  for (const char* paper : {"quote", "shopping"}) {
    const Ran run = of(paper);
    EXPECT_EQ(run.code, kUnusable) << paper;
    EXPECT_THAT(run.err, HasSubstr("nobodys"));
  }
}

TEST_F(PapersCommand, BindsThemInOneFile) {
  const Ran run = ran({"papers", data("sound"), "--one", in("all.pdf"), "--no-suction"});
  EXPECT_EQ(run.code, kDone) << run.err;
  EXPECT_EQ(run.out, in("all.pdf") + "\n");
}

TEST_F(PapersCommand, NeedsToKnowWhereToAndWhichPaper) {
  EXPECT_NE(ran({"papers", data("sound")}).code, kDone);
  EXPECT_NE(ran({"papers", data("sound"), "-o", in("d"), "--one", in("e.pdf")}).code, kDone);
  EXPECT_NE(ran({"papers", data("sound"), "--one", in("e.png")}).code, kDone);
  EXPECT_NE(ran({"papers", data("sound"), "-o", in("d"), "--paper", "poem"}).code, kDone);
}

TEST_F(PapersCommand, PutsTheFirmOnThem) {
  QImage(30, 10, QImage::Format_RGB32).save(QString::fromStdString(in("logo.png")));
  write("firm.json", R"({"format": "sumpwright.firm/1", "name": "Invented Works",
                         "logo": "logo.png", "terms": ["None."]})");
  const Ran run = ran({"papers", data("sound"), "-o", in("f"), "--paper", "crew", "--firm",
                       in("firm.json"), "--no-suction"});
  EXPECT_EQ(run.code, kDone) << run.err;
}

TEST_F(PapersCommand, SaysWhatIsWrongWithAFirm) {
  const auto refused = [&](const QByteArray& text, const char* why) {
    write("bad.json", text);
    const Ran run = ran({"papers", data("sound"), "-o", in("g"), "--firm", in("bad.json")});
    EXPECT_EQ(run.code, kUnusable) << why;
    EXPECT_THAT(run.err, HasSubstr(why));
  };
  refused("[]", "no JSON object");
  refused("{}", "format");
  refused(R"({"format": "sumpwright.firm/1", "name": 4})", "'name'");
  refused(R"({"format": "sumpwright.firm/1", "terms": [1]})", "'terms'");
  refused(R"({"format": "sumpwright.firm/1", "price_per_kwh": -1})", "'price_per_kwh'");
  refused(R"({"format": "sumpwright.firm/1", "logo": "bad.json"})", "no PNG or JPEG");
  refused(R"({"format": "sumpwright.firm/1", "logo": "missing.png"})", "missing.png");
}

}  // namespace
}  // namespace sumpwright::cli
