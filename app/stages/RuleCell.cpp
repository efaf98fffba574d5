#include "stages/RuleCell.h"

#include <QPainter>

#include "paint/Icons.h"
#include "paint/Look.h"

namespace sumpwright::stages {

RuleCell::RuleCell(QWidget* parent) : QAbstractButton(parent) {
  setFocusPolicy(Qt::TabFocus);
  setAttribute(Qt::WA_Hover);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize RuleCell::sizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(140 * k), qRound((m_line.third.isEmpty() ? 42 : 58) * k)};
}

void RuleCell::show(const RuleLine& line) {
  const bool as_high = m_line.third.isEmpty() == line.third.isEmpty();
  m_line = line;
  if (!as_high) updateGeometry();
  const QString state = stateWord(line.state, line.waived);
  setAccessibleName(line.title + QStringLiteral(": ") + state);
  const QString below =
      line.third.isEmpty() ? line.second : line.second + QStringLiteral(", ") + line.third;
  setAccessibleDescription(line.figure.isEmpty() ? below : below + QLatin1Char(' ') + line.figure);
  QString tip = line.title + QStringLiteral(" — ") + state + QLatin1Char('\n') + below;
  if (!line.figure.isEmpty()) tip += QStringLiteral(", ") + line.figure;
  if (line.close) tip += QLatin1Char('\n') + tr("Too close to call: measure on site.");
  setToolTip(tip);
  setEnabled(true);
  update();
}

void RuleCell::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::ThemeName name = paint::themeOf(palette());
  const drawing::Theme& t = drawing::theme(name);
  const bool met = m_line.state == rules::State::clear;
  const auto& state = t.of(m_line.state);
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);

  QColor face = paint::colour(met ? t.raised : state.tint);
  if (isDown()) face = paint::colour(t.selection_tint);
  QColor edge = paint::colour(met ? t.rule : state.text);
  if (underMouse()) edge = paint::colour(met ? t.ink2 : state.text);
  p.setBrush(face);
  p.setPen(QPen(edge, met ? 1.0 : 1.5));
  p.drawRoundedRect(QRectF(rect()).adjusted(0.8, 0.8, -0.8, -0.8), 6, 6);

  const double sign = 13 * k;
  const double left = 7 * k;
  const QRectF upper(0, 4 * k, width(), 17 * k);
  paint::paintSign(p, m_line.state, {left + sign / 2, upper.center().y()}, sign, name);

  const QFont bold = paint::sized(font(), 0.92, true);
  const QFont small = paint::sized(font(), 0.87);
  p.setFont(bold);
  const QFontMetrics metrics(bold);
  const double right = width() - 8 * k;
  const double text = left + sign + 6 * k;
  p.setPen(paint::colour(met ? t.ink : state.text));
  const double below = upper.bottom() + 1 * k;
  const double third_height = m_line.third.isEmpty() ? 0.0 : 16 * k;
  const double below_height = height() - below - 4 * k - third_height;
  double room = right - text;
  double title_room = right - text;
  if (!m_line.figure.isEmpty()) {
    const int figure_width = metrics.horizontalAdvance(m_line.figure);
    // Beside a short title, so that what the figure is measured to has its whole row.
    const bool above =
        metrics.horizontalAdvance(m_line.title) + figure_width + 6 * k <= right - text;
    const QRectF row = above ? upper : QRectF(0, below, width(), below_height);
    p.drawText(QRectF(right - figure_width, row.y(), figure_width, row.height()),
               Qt::AlignVCenter | Qt::AlignRight, m_line.figure);
    (above ? title_room : room) -= figure_width + 5 * k;
  }
  p.setPen(paint::colour(t.ink));
  p.drawText(QRectF(text, upper.y(), title_room, upper.height()), Qt::AlignVCenter | Qt::AlignLeft,
             metrics.elidedText(m_line.title, Qt::ElideRight, static_cast<int>(title_room)));

  p.setFont(small);
  p.setPen(paint::colour(met ? t.ink2 : t.ink));
  const QString second = m_line.waived  ? tr("waived: %1").arg(m_line.second)
                         : m_line.close ? tr("measure: %1").arg(m_line.second)
                                        : m_line.second;
  p.drawText(QRectF(text, below, room, below_height), Qt::AlignVCenter | Qt::AlignLeft,
             QFontMetrics(small).elidedText(second, Qt::ElideRight, static_cast<int>(room)));
  p.drawText(
      QRectF(text, below + below_height, right - text, third_height),
      Qt::AlignVCenter | Qt::AlignLeft,
      QFontMetrics(small).elidedText(m_line.third, Qt::ElideRight, static_cast<int>(right - text)));
}

}  // namespace sumpwright::stages
