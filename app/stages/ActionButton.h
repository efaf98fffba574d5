#pragma once
// A button that presses an action of the window's table: it takes over its text, icon, tip and
// whether it can be pressed, and may carry its key as a plate inside.

#include <QAction>
#include <QToolButton>

namespace sumpwright::stages {

class ActionButton final : public QToolButton {
  Q_OBJECT

 public:
  enum class Role { plain, primary, square };
  explicit ActionButton(Role role = Role::plain, QWidget* parent = nullptr);
  void bind(QAction* action);
  /// Another text than the action's; empty: the action's again.
  void setLabel(const QString& label);
  void setKeyShown(bool shown);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QString shownText() const;
  QString keyText() const;

  Role m_role;
  QString m_label;
  bool m_key_shown = false;
};

}  // namespace sumpwright::stages
