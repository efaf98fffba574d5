// Waivers: recorded through the form, holding at their place, lapsing when the sump moves.

#include <algorithm>

#include "gui/WindowFixture.h"
#include "stages/SitingText.h"

namespace sumpwright::gui {
namespace {

using rules::State;

class Waiving : public WindowFixture {
 protected:
  /// A refused place all of whose binding findings may be waived, and where nothing is unknown.
  std::optional<perimeter::Place> waivablePlace() {
    const double length = study().perimeter().length_m(0);
    for (double s = 0.0; s < length; s += 0.05) {
      const siting::Assessment a = study().assess({0, s});
      if (a.state != State::refused) continue;
      const bool all =
          std::all_of(a.findings.begin(), a.findings.end(), [](const rules::Finding& f) {
            if (f.weight == rules::Weight::unknown) return false;
            return f.weight == rules::Weight::advisory || stages::mayWaive(f);
          });
      if (all) return perimeter::Place{0, s};
    }
    return std::nullopt;
  }
  void waiveAll() {
    stages::WaiverForm& form = *window->panel().waiverForm();
    for (int guard = 0; guard < 8 && !session().assessment()->waived; ++guard) {
      trigger("sump.waive");
      // Those waived already stand in the list too: take the one that is still open.
      for (int i = 0; i < form.which()->count(); ++i) {
        form.which()->setCurrentIndex(i);
        form.reason()->setPlainText(QStringLiteral("Window is never opened, invented"));
        form.name()->setText(QStringLiteral("A. Invented"));
        form.date()->setText(QStringLiteral("2026-03-31"));
        QTest::mouseClick(form.record(), Qt::LeftButton);
        if (session().assessment()->waived) return;
        trigger("sump.waive");
      }
    }
  }
};

TEST_F(Waiving, AcceptedThenLapsed) {
  open("bungalow");
  const auto place = waivablePlace();
  ASSERT_TRUE(place);
  session().putAt(*place);
  ASSERT_EQ(window->panel().word(), QStringLiteral("Refused"));
  waiveAll();
  EXPECT_EQ(state(), State::refused) << "a waiver never changes a stretch";
  EXPECT_TRUE(session().assessment()->waived);
  EXPECT_EQ(window->panel().word(), QStringLiteral("Accepted by waiver"));
  EXPECT_NE(window->panel().findChild<QLabel*>(QStringLiteral("waiver")), nullptr);

  session().nudge(0.02);
  QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  EXPECT_FALSE(session().assessment()->waived);
  EXPECT_EQ(window->panel().findChild<QLabel*>(QStringLiteral("waiver")), nullptr);
  const QLabel* lapsed = window->panel().findChild<QLabel*>(QStringLiteral("lapsedWaiver"));
  ASSERT_NE(lapsed, nullptr);
  EXPECT_TRUE(lapsed->text().contains(QStringLiteral("<s>")));

  trigger("edit.undo");  // back where it holds
  EXPECT_TRUE(session().assessment()->waived);
}

TEST_F(Waiving, NeedsReasonNameAndDate) {
  open("bungalow");
  session().putAt(*waivablePlace());
  trigger("sump.waive");
  stages::WaiverForm& form = *window->panel().waiverForm();
  form.reason()->clear();
  form.name()->clear();
  QTest::mouseClick(form.record(), Qt::LeftButton);
  EXPECT_FALSE(form.message().isEmpty());
  EXPECT_TRUE(session().job().design.waivers.empty());
  form.reason()->setPlainText(QStringLiteral("because"));
  form.name()->setText(QStringLiteral("A. Invented"));
  form.date()->setText(QStringLiteral("31.3.26"));
  QTest::mouseClick(form.record(), Qt::LeftButton);
  EXPECT_TRUE(form.message().contains(QStringLiteral("31.3.26")));
  EXPECT_TRUE(session().job().design.waivers.empty());
}

TEST_F(Waiving, WithdrawnByItsButton) {
  open("bungalow");
  session().putAt(*waivablePlace());
  waiveAll();
  const std::size_t count = session().job().design.waivers.size();
  ASSERT_GT(count, 0U);
  auto* list = window->panel().findChild<stages::WaiverList*>();
  auto* button = list->findChild<QPushButton*>();
  ASSERT_NE(button, nullptr);
  button->click();
  EXPECT_EQ(session().job().design.waivers.size(), count - 1);
}

TEST_F(Waiving, NotOfferedWhereNeverAllowed) {
  open("bungalow");
  const double length = study().perimeter().length_m(0);
  for (double s = 0.0; s < length; s += 0.05) {
    const siting::Assessment a = study().assess({0, s});
    const bool any = std::any_of(a.findings.begin(), a.findings.end(), stages::mayWaive);
    if (a.state != State::refused || any) continue;
    session().putAt({0, s});
    EXPECT_FALSE(window->action("sump.waive")->isEnabled());
    return;
  }
  GTEST_SKIP() << "every refused place of this sample may be waived in part";
}

}  // namespace
}  // namespace sumpwright::gui
