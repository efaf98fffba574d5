// Typing a place.

#include "gui/WindowFixture.h"

namespace sumpwright::gui {
namespace {

class Typing : public WindowFixture {
 protected:
  void SetUp() override {
    open("bungalow");
    trigger("sump.go_to");
  }
  stages::PlaceEntry& entry() { return *window->panel().entry(); }
  void type(const char* text) {
    entry().field()->clear();
    QTest::keyClicks(entry().field(), QString::fromUtf8(text));
    QTest::keyClick(entry().field(), Qt::Key_Return);
  }
};

TEST_F(Typing, AComma) {
  type("12,40");
  EXPECT_NEAR(session().place()->chainage_m, 12.40, 1e-9);
  EXPECT_FALSE(entry().isVisible());
}

TEST_F(Typing, FromAnotherCorner) {
  entry().corners()->setCurrentIndex(1);
  const double corner = study().perimeter().edges(0)[1].start_m;
  type("125cm");
  EXPECT_NEAR(session().place()->chainage_m, corner + 1.25, 1e-9);
}

TEST_F(Typing, TwoReadingsAreAsked) {
  const auto before = session().place();
  type("1,900");
  EXPECT_EQ(session().place(), before);
  EXPECT_TRUE(entry().isVisible());
  ASSERT_TRUE(entry().reading(0)->isVisible());
  ASSERT_TRUE(entry().reading(1)->isVisible());
  QTest::mouseClick(entry().reading(0), Qt::LeftButton);
  EXPECT_NEAR(session().place()->chainage_m, 1.9, 1e-9);
}

TEST_F(Typing, NonsenseAndTooFarAreSaid) {
  const auto before = session().place();
  type("twelve");
  EXPECT_TRUE(entry().message().contains(QStringLiteral("twelve")));
  type("4000");
  EXPECT_FALSE(entry().message().isEmpty());
  EXPECT_EQ(session().place(), before);
}

TEST_F(Typing, ADigitOnThePlanBeginsIt) {
  entry().hide();
  window->canvas().setFocus();
  QTest::keyClick(&window->canvas(), Qt::Key_7);
  EXPECT_TRUE(entry().isVisible());
  EXPECT_EQ(entry().field()->text(), QStringLiteral("7"));
}

}  // namespace
}  // namespace sumpwright::gui
