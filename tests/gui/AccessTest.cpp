// Everything that can be pressed or typed into says what it is.

#include <QAbstractButton>
#include <QAccessible>
#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>

#include "gui/WindowFixture.h"

namespace sumpwright::gui {
namespace {

class Access : public WindowFixture {};

TEST_F(Access, EveryControlHasAName) {
  open("bungalow");
  session().putAt(*middleOf(rules::State::refused));
  QCoreApplication::processEvents();
  int seen = 0;
  for (QWidget* widget : window->findChildren<QWidget*>()) {
    const bool control = qobject_cast<QAbstractButton*>(widget) != nullptr ||
                         qobject_cast<QLineEdit*>(widget) != nullptr ||
                         qobject_cast<QPlainTextEdit*>(widget) != nullptr ||
                         qobject_cast<QComboBox*>(widget) != nullptr ||
                         widget->focusPolicy() == Qt::StrongFocus;
    // Qt's own helpers inside a combo box or scroll area have no name and are not reached.
    if (!control || widget->objectName().startsWith(QStringLiteral("qt_")) || widget->isHidden())
      continue;
    if (widget->parentWidget() != nullptr &&
        qobject_cast<QComboBox*>(widget->parentWidget()) != nullptr)
      continue;
    if (widget->inherits("QComboBoxPrivateContainer") || widget->inherits("QComboBoxListView"))
      continue;
    if (widget->inherits("QMenu") || widget->inherits("QScrollArea")) continue;
    QAccessibleInterface* face = QAccessible::queryAccessibleInterface(widget);
    ASSERT_NE(face, nullptr);
    EXPECT_FALSE(face->text(QAccessible::Name).isEmpty())
        << widget->metaObject()->className() << " in "
        << widget->parentWidget()->metaObject()->className();
    ++seen;
  }
  EXPECT_GT(seen, 20);
}

TEST_F(Access, TargetsAreLargeEnough) {
  open("bungalow");
  for (const QAbstractButton* button : window->findChildren<QAbstractButton*>()) {
    if (!button->isVisible()) continue;
    EXPECT_GE(button->height(), 30) << button->accessibleName().toStdString();
    EXPECT_GE(button->width(), 30) << button->accessibleName().toStdString();
  }
}

}  // namespace
}  // namespace sumpwright::gui
