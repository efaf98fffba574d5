#include "window/StageRail.h"

#include <QCoreApplication>
#include <QMenu>
#include <QPainter>
#include <QPainterPath>
#include <QVBoxLayout>

#include "paint/Icons.h"
#include "paint/Look.h"

namespace sumpwright::window {

namespace {

constexpr double kWidth_px = 168.0;
constexpr double kHead_px = 60.0;
constexpr std::array<const char*, kStages> kNames{
    QT_TRANSLATE_NOOP("StageRail", "Survey"), QT_TRANSLATE_NOOP("StageRail", "Siting"),
    QT_TRANSLATE_NOOP("StageRail", "Suction"), QT_TRANSLATE_NOOP("StageRail", "Run"),
    QT_TRANSLATE_NOOP("StageRail", "Paper")};

}  // namespace

StageButton::StageButton(const QString& name, QWidget* parent) : QAbstractButton(parent) {
  setText(name);
  setAccessibleName(name);
  setCheckable(true);
  setAutoExclusive(true);
  setFocusPolicy(Qt::TabFocus);
  setAttribute(Qt::WA_Hover);
}

void StageButton::tell(const QString& words, int done, std::optional<rules::State> state) {
  m_words = words;
  m_done = done;
  m_state = state;
  setAccessibleDescription(words);
  setToolTip(words);
  update();
}

QSize StageButton::sizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(kWidth_px * k), qRound(76 * k)};
}

void StageButton::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  if (isChecked() || underMouse()) {
    QPainterPath leaf;  // round at the left, open to the canvas at the right
    leaf.addRoundedRect(QRectF(8 * k, 0.5, width() + 20, height() - 1), 8 * k, 8 * k);
    p.fillPath(leaf, paint::colour(isChecked() ? t.paper : t.panel));
  }
  const double staff = 12 * k;
  const double gap = 1.5 * k;
  for (int i = 0; i < 4; ++i) {
    const bool filled = i < m_done;
    const QColor ink = paint::colour(filled ? (isChecked() ? t.selection : t.wall) : t.hairline);
    p.fillRect(QRectF(20 * k, 13 * k + i * (staff + gap), 6 * k, staff), ink);
  }
  const double x = 38 * k;
  const double room = width() - x - 8 * k;
  p.setFont(paint::sized(font(), 1.1, true));
  p.setPen(paint::colour(isChecked() ? t.ink : t.ink2));
  p.drawText(QRectF(x, 14 * k, room, 22 * k), Qt::AlignVCenter | Qt::AlignLeft, text());
  const QFont second = paint::sized(font(), 0.88, isChecked() && m_state);
  p.setFont(second);
  p.setPen(paint::colour(m_state ? t.of(*m_state).text : t.ink2));
  const QRectF below(x, 37 * k, room, 34 * k);
  p.drawText(below, Qt::TextWordWrap | Qt::AlignLeft | Qt::AlignTop, m_words);
}

StageRail::StageRail(QWidget* parent)
    : QWidget(parent), m_buttons{}, m_menu(new QToolButton(this)) {
  const double k = paint::uiScale(font());
  setFixedWidth(qRound(kWidth_px * k));
  setAccessibleName(tr("Stages of the job"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, qRound(kHead_px * k), 0, qRound(12 * k));
  column->setSpacing(qRound(4 * k));
  for (std::size_t i = 0; i < kStages; ++i) {
    m_buttons[i] = new StageButton(QCoreApplication::translate("StageRail", kNames[i]), this);
    column->addWidget(m_buttons[i]);
    connect(m_buttons[i], &QAbstractButton::clicked, this,
            [this, i] { Q_EMIT picked(static_cast<Stage>(i)); });
  }
  column->addStretch();
  m_menu->setText(tr("Menu"));
  m_menu->setAccessibleName(tr("Menu"));
  m_menu->setToolTip(tr("Everything the program can do (F10)"));
  m_menu->setIcon(paint::icon(paint::Glyph::menu));
  m_menu->setIconSize(QSize(qRound(18 * k), qRound(18 * k)));
  m_menu->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  m_menu->setProperty("role", QStringLiteral("quiet"));
  m_menu->setPopupMode(QToolButton::InstantPopup);
  m_menu->setFocusPolicy(Qt::TabFocus);
  m_menu->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  auto* foot = new QVBoxLayout;
  foot->setContentsMargins(qRound(10 * k), 0, qRound(10 * k), 0);
  foot->addWidget(m_menu);
  column->addLayout(foot);
}

void StageRail::choose(Stage stage) { button(stage)->setChecked(true); }

void StageRail::setMenu(QMenu* menu) { m_menu->setMenu(menu); }

void StageRail::openMenu() { m_menu->showMenu(); }

void StageRail::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  p.fillRect(rect(), paint::colour(t.desk));
  paint::paintMark(p, QRectF(18 * k, 12 * k, 26 * k, 26 * k), t);
  p.setFont(paint::sized(font(), 1.15, true));
  p.setPen(paint::colour(t.ink));
  p.drawText(QRectF(54 * k, 8 * k, width() - 54 * k, 34 * k), Qt::AlignVCenter | Qt::AlignLeft,
             QStringLiteral("Sumpwright"));
}

}  // namespace sumpwright::window
