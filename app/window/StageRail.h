#pragma once
// The stages of the job along the window's left edge, in the job's order: name, what is missing in
// a few words, and a levelling staff that fills from the top as the stage gets done.

#include <QAbstractButton>
#include <QToolButton>
#include <QWidget>
#include <array>
#include <optional>

#include "rules/Finding.h"

class QMenu;

namespace sumpwright::window {

/// In the order of the job; each has its name in StageRail.cpp.
enum class Stage { survey, siting, suction, run, paper };
inline constexpr std::size_t kStages = 5;

class StageButton final : public QAbstractButton {
  Q_OBJECT

 public:
  explicit StageButton(const QString& name, QWidget* parent = nullptr);
  /// `done`: quarters of the staff that are filled, 0 to 4. `state` inks the words; none: quiet.
  void tell(const QString& words, int done, std::optional<rules::State> state = std::nullopt);
  QString words() const { return m_words; }
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QString m_words;
  int m_done = 0;
  std::optional<rules::State> m_state;
};

class StageRail final : public QWidget {
  Q_OBJECT

 public:
  explicit StageRail(QWidget* parent = nullptr);
  StageButton* button(Stage stage) const { return m_buttons[static_cast<std::size_t>(stage)]; }
  void choose(Stage stage);
  void setMenu(QMenu* menu);
  void openMenu();
  QToolButton* menuButton() const { return m_menu; }

 Q_SIGNALS:
  void picked(Stage stage);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::array<StageButton*, kStages> m_buttons;
  QToolButton* m_menu;
};

}  // namespace sumpwright::window
