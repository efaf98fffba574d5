#include "canvas/TaskStrip.h"

#include <QAction>
#include <QMenu>
#include <QPainter>
#include <QToolButton>
#include <algorithm>

#include "paint/Look.h"

namespace sumpwright::canvas {

namespace {

QString plainText(const QAction& action) { return action.text().remove(QLatin1Char('&')); }

/// Shows by a mark in its corner that a press opens a menu.
class MenuMarkButton final : public QToolButton {
 public:
  using QToolButton::QToolButton;

 protected:
  void paintEvent(QPaintEvent* event) override {
    QToolButton::paintEvent(event);
    if (menu() == nullptr) return;
    const double k = paint::uiScale(font());
    const QPointF corner(width() - 5 * k, height() - 5 * k);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(paint::colour(paint::look(palette()).ink));
    painter.drawPolygon(QPolygonF{corner, corner - QPointF(5 * k, 0), corner - QPointF(0, 5 * k)});
  }
};

}  // namespace

TaskStrip::TaskStrip(session::TaskDesk& desk, const std::vector<TaskChoice>& choices,
                     QWidget* parent)
    : QWidget(parent), m_desk(desk), m_choices(choices) {
  setAccessibleName(tr("What the pointer does"));
  for (const TaskChoice& choice : m_choices) {
    auto* button = new MenuMarkButton(this);
    button->setProperty("role", QStringLiteral("square"));
    button->setIcon(paint::icon(choice.glyph));
    button->setToolButtonStyle(Qt::ToolButtonIconOnly);
    button->setFocusPolicy(Qt::TabFocus);
    button->setCheckable(true);
    if (choice.menu != nullptr) {
      button->setMenu(choice.menu);
      button->setPopupMode(QToolButton::InstantPopup);
    }
    connect(button, &QToolButton::clicked, this, [this, action = choice.tasks.front().action] {
      action->trigger();
      refresh();  // a press has turned the button off where it was on
    });
    m_buttons.push_back(button);
  }
  connect(&desk, &session::TaskDesk::changed, this, &TaskStrip::refresh);
  refresh();
}

void TaskStrip::refresh() {
  const tools::TaskGroup group = tools::groupOf(m_desk.task());
  for (std::size_t i = 0; i < m_buttons.size(); ++i) {
    const TaskChoice& choice = m_choices[i];
    const bool chosen = choice.group == group;
    m_buttons[i]->setChecked(chosen);
    QString name = choice.title;
    if (chosen && choice.menu != nullptr) name = tr("%1: %2").arg(name, taskTitle());
    m_buttons[i]->setAccessibleName(name);
    m_buttons[i]->setToolTip(
        choice.key.isEmpty() ? name : QStringLiteral("%1  (%2)").arg(name, choice.key));
  }
}

QString TaskStrip::taskTitle() const {
  for (const TaskChoice& choice : m_choices) {
    for (const TaskAction& task : choice.tasks) {
      if (task.task == m_desk.task()) return plainText(*task.action);
    }
  }
  return {};
}

void TaskStrip::place(QPoint corner, int height) {
  const double k = paint::uiScale(font());
  const int side = qRound(38 * k);
  const int pitch = side + 2;
  const int rows = std::max(1, (height + 2) / pitch);
  const int count = static_cast<int>(m_buttons.size());
  for (int i = 0; i < count; ++i) {
    auto* button = m_buttons[static_cast<std::size_t>(i)];
    button->setIconSize(QSize(side * 3 / 5, side * 3 / 5));
    button->setGeometry(i / rows * pitch, i % rows * pitch, side, side);
  }
  const int columns = (count + rows - 1) / rows;
  setGeometry(corner.x(), corner.y(), columns * pitch - 2, std::min(rows, count) * pitch - 2);
}

QToolButton* TaskStrip::button(tools::TaskGroup group) const {
  for (std::size_t i = 0; i < m_buttons.size(); ++i) {
    if (m_choices[i].group == group) return m_buttons[i];
  }
  return nullptr;
}

}  // namespace sumpwright::canvas
