#include "stages/ActionButton.h"

#include <QApplication>
#include <QPainter>
#include <QStyleOptionToolButton>
#include <QStylePainter>

#include "paint/Look.h"

namespace sumpwright::stages {

namespace {

/// The icon's shape in another ink: on a primary button the window's own would not be seen.
QPixmap inInk(const QIcon& icon, int side, const QColor& ink) {
  const double ratio = qApp->devicePixelRatio();
  QPixmap pixmap = icon.pixmap(QSize(side, side), ratio);
  QPainter p(&pixmap);
  p.setCompositionMode(QPainter::CompositionMode_SourceIn);
  p.fillRect(QRect(QPoint(), QSize(side, side)), ink);
  return pixmap;
}

}  // namespace

ActionButton::ActionButton(Role role, QWidget* parent) : QToolButton(parent), m_role(role) {
  setFocusPolicy(Qt::TabFocus);
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  if (role == Role::primary) setProperty("role", QStringLiteral("primary"));
  if (role == Role::square) setProperty("role", QStringLiteral("square"));
}

void ActionButton::bind(QAction* action) {
  if (action == defaultAction()) return;
  if (defaultAction() != nullptr) {
    // The button takes its former action off itself, but not our own listening.
    disconnect(defaultAction(), &QAction::changed, this, nullptr);
    removeAction(defaultAction());
  }
  setDefaultAction(action);
  setFocusPolicy(Qt::TabFocus);
  setAccessibleName(action->text().remove(QLatin1Char('&')));
  connect(action, &QAction::changed, this, [this] {
    setAccessibleName(shownText());
    updateGeometry();
    update();
  });
}

void ActionButton::setLabel(const QString& label) {
  if (label == m_label) return;
  m_label = label;
  setAccessibleName(shownText());
  updateGeometry();
  update();
}

void ActionButton::setKeyShown(bool shown) {
  m_key_shown = shown;
  updateGeometry();
}

QString ActionButton::shownText() const {
  if (m_role == Role::square && m_label.isEmpty())
    return defaultAction() ? defaultAction()->text() : QString();
  QString text = m_label.isEmpty() && defaultAction() ? defaultAction()->iconText() : m_label;
  return text.remove(QLatin1Char('&'));
}

QString ActionButton::keyText() const {
  if (!m_key_shown || defaultAction() == nullptr) return {};
  QString key = defaultAction()->shortcut().toString(QKeySequence::NativeText);
  key.replace(QLatin1String("Left"), QStringLiteral("←"));
  key.replace(QLatin1String("Right"), QStringLiteral("→"));
  return key.replace(QLatin1Char('+'), QLatin1Char(' '));
}

QSize ActionButton::sizeHint() const {
  const double k = paint::uiScale(font());
  const int height = qRound(38 * k);
  if (m_role == Role::square) return {height, height};
  int width = QFontMetrics(paint::sized(font(), 0.98, true)).horizontalAdvance(shownText()) +
              qRound(24 * k);
  if (!icon().isNull()) width += qRound(24 * k);
  if (const QString key = keyText(); !key.isEmpty()) {
    width += QFontMetrics(paint::sized(font(), 0.85)).horizontalAdvance(key) + qRound(22 * k);
  }
  return {width, height};
}

void ActionButton::paintEvent(QPaintEvent*) {
  QStyleOptionToolButton option;
  initStyleOption(&option);
  option.text.clear();
  option.icon = {};
  option.features = QStyleOptionToolButton::None;
  QStylePainter p(this);
  p.drawComplexControl(QStyle::CC_ToolButton, option);

  const double k = paint::uiScale(font());
  // The style sheet puts the button's face into its own palette: ask the application's.
  const drawing::Theme& t = paint::look(QApplication::palette());
  QColor ink = paint::colour(m_role == Role::primary ? t.primary_text : t.ink);
  if (!isEnabled()) ink = paint::colour(m_role == Role::primary ? t.panel : t.ink3);
  p.setPen(ink);
  p.setRenderHint(QPainter::Antialiasing);
  const int glyph = qRound(20 * k);
  if (m_role == Role::square) {
    const QRect box(rect().center() - QPoint(glyph / 2 - 1, glyph / 2 - 1), QSize(glyph, glyph));
    icon().paint(&p, box, Qt::AlignCenter, isEnabled() ? QIcon::Normal : QIcon::Disabled);
    return;
  }
  QString key = keyText();
  const QFont text_font = paint::sized(font(), 0.98, true);
  const QFont key_font = paint::sized(font(), 0.85);
  const int text_width = QFontMetrics(text_font).horizontalAdvance(shownText());
  int icon_width = icon().isNull() ? 0 : glyph + qRound(5 * k);
  // What the button does is never cut short: first the key goes (the menu has it), then the
  // picture.
  const int bare = width() - qRound(16 * k);
  const int key_alone = QFontMetrics(key_font).horizontalAdvance(key) + qRound(20 * k);
  if (text_width + icon_width + key_alone > bare) key.clear();
  if (text_width + icon_width > bare) icon_width = 0;
  const int key_width =
      key.isEmpty() ? 0 : QFontMetrics(key_font).horizontalAdvance(key) + qRound(12 * k);
  const int key_gap = key.isEmpty() ? 0 : qRound(8 * k);
  int x = std::max(qRound(6 * k), (width() - text_width - icon_width - key_width - key_gap) / 2);
  if (icon_width > 0) {
    p.drawPixmap(x, (height() - glyph) / 2, inInk(icon(), glyph, ink));
    x += icon_width;
  }
  p.setFont(text_font);
  const int room = width() - x - key_width - key_gap - qRound(6 * k);
  p.drawText(QRect(x, 0, room, height()), Qt::AlignVCenter | Qt::AlignLeft,
             QFontMetrics(text_font).elidedText(shownText(), Qt::ElideRight, room));
  if (key.isEmpty()) return;
  const int plate_height = qRound(22 * k);
  const QRectF plate(width() - key_width - 8 * k, (height() - plate_height) / 2.0, key_width,
                     plate_height);
  QColor edge = ink;
  edge.setAlphaF(0.5F);
  p.setPen(QPen(edge, 1));
  p.setBrush(Qt::NoBrush);
  p.drawRoundedRect(plate, 4, 4);
  p.setPen(ink);
  p.setFont(key_font);
  p.drawText(plate, Qt::AlignCenter, key);
}

}  // namespace sumpwright::stages
