#include "stages/ClosingBar.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "paint/Icons.h"
#include "paint/Look.h"
#include "plan/TapeEdits.h"

namespace sumpwright::stages {

namespace {

constexpr double kLeast = 100.0;  // ends of the scale, 1 in N (own figures)
constexpr double kMost = 10000.0;

/// 0 at the poor end, 1 at the good one.
double share(double one_in) {
  return std::log(std::clamp(one_in, kLeast, kMost) / kLeast) / std::log(kMost / kLeast);
}

}  // namespace

ClosingBar::ClosingBar(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("How well the outline closes"));
}

QSize ClosingBar::sizeHint() const {
  const double k = paint::uiScale(font());
  return {qRound(200 * k), qRound(34 * k)};
}

void ClosingBar::show(std::optional<double> one_in) {
  m_one_in = one_in;
  update();
}

void ClosingBar::paintEvent(QPaintEvent*) {
  const double k = paint::uiScale(font());
  const drawing::ThemeName name = paint::themeOf(palette());
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  const double top = 5 * k;
  const double high = 8 * k;
  const double poor = share(plan::kPoorClosing) * width();
  const double good = share(plan::kGoodClosing) * width();
  paint::paintBand(p, rules::State::refused, {0, top, poor, high}, k, name);
  paint::paintBand(p, rules::State::advised_against, {poor, top, good - poor, high}, k, name);
  paint::paintBand(p, rules::State::clear, {good, top, width() - good, high}, k, name);
  p.setFont(paint::sized(font(), 0.87));
  p.setPen(paint::colour(t.ink2));
  const QRectF row(0, top + high + 2 * k, width(), 16 * k);
  p.drawText(row, Qt::AlignLeft | Qt::AlignVCenter, tr("poor"));
  p.drawText(row, Qt::AlignRight | Qt::AlignVCenter, tr("good"));
  p.drawText(QRectF(good - 60 * k, row.top(), 120 * k, row.height()), Qt::AlignCenter,
             tr("1 in 1 000"));
  const double at = (m_one_in ? share(*m_one_in) : 1.0) * (width() - 4 * k) + 2 * k;
  p.setPen(QPen(paint::colour(t.panel), 6 * k));
  p.drawLine(QPointF(at, 0), QPointF(at, top + high + 4 * k));
  p.setPen(QPen(paint::colour(t.ink), 3 * k));
  p.drawLine(QPointF(at, 1), QPointF(at, top + high + 3 * k));
}

}  // namespace sumpwright::stages
