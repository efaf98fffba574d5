#include "stages/FanCell.h"

#include <QPainter>

#include "paint/Icons.h"
#include "paint/Look.h"

namespace sumpwright::stages {

FanCell::FanCell(QWidget* parent) : QAbstractButton(parent) {
  setFocusPolicy(Qt::TabFocus);
  setAttribute(Qt::WA_Hover);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize FanCell::sizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(140 * k), qRound(60 * k)};
}

void FanCell::show(const FanLine& line) {
  m_line = line;
  setAccessibleName(line.title + QStringLiteral(": ") + line.state_word);
  QStringList all{line.figure, line.duty, line.cost};
  all.removeAll(QString());
  setAccessibleDescription(all.join(QStringLiteral(", ")));
  setToolTip(line.title + QStringLiteral(" — ") + line.state_word + QLatin1Char('\n') +
             all.join(QLatin1Char('\n')));
  update();
}

void FanCell::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::ThemeName name = paint::themeOf(palette());
  const drawing::Theme& t = drawing::theme(name);
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  const bool pressed = isDown() || m_line.taken;
  p.setBrush(paint::colour(pressed ? t.selection_tint : t.raised));
  const QColor edge = paint::colour(m_line.taken   ? t.selection
                                    : underMouse() ? t.ink2
                                                   : t.control_edge);
  p.setPen(QPen(edge, m_line.taken ? 2.0 : 1.0));
  p.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 6, 6);

  const double sign = 13 * k;
  const double left = 8 * k;
  const double text = left + sign + 6 * k;
  const double right = width() - 9 * k;
  const QRectF upper(text, 5 * k, right - text, 17 * k);
  paint::paintSign(p, m_line.state, {left + sign / 2, upper.center().y()}, sign, name);

  const QFont bold = paint::sized(font(), 0.92, true);
  QFont share = bold;
  share.setItalic(true);  // a prediction
  p.setPen(paint::colour(t.ink));
  p.setFont(bold);
  p.drawText(upper, Qt::AlignVCenter | Qt::AlignLeft,
             QFontMetrics(bold).elidedText(m_line.title, Qt::ElideMiddle,
                                           static_cast<int>(upper.width())));
  // Below the title: that it is invented is at its end.
  p.setFont(share);
  p.drawText(upper.translated(0, 17 * k), Qt::AlignVCenter | Qt::AlignRight, m_line.figure);
  const double room = upper.width() - QFontMetrics(share).horizontalAdvance(m_line.figure) - 8 * k;

  QFont small = paint::sized(font(), 0.87);
  p.setPen(paint::colour(t.ink2));
  QRectF lower = upper.translated(0, 17 * k);
  small.setItalic(true);
  for (const QString& each : {m_line.duty, m_line.cost}) {
    p.setFont(small);
    p.drawText(lower, Qt::AlignVCenter | Qt::AlignLeft,
               QFontMetrics(small).elidedText(each, Qt::ElideRight, static_cast<int>(room)));
    lower.translate(0, 16 * k);
  }
}

}  // namespace sumpwright::stages
