#include "stages/SignLabel.h"

#include <QPainter>

#include "paint/Icons.h"
#include "paint/Look.h"

namespace sumpwright::stages {

SignLabel::SignLabel(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

QSize SignLabel::sizeHint() const {
  const int side = qRound(28 * paint::uiScale(font()));
  return {side, side};
}

void SignLabel::show(std::optional<rules::State> state) {
  m_state = state;
  setVisible(state.has_value());
  update();
}

void SignLabel::paintEvent(QPaintEvent*) {
  if (!m_state) return;
  QPainter p(this);
  paint::paintSign(p, *m_state, QRectF(rect()).center(), height() * 0.9, paint::themeOf(palette()));
}

}  // namespace sumpwright::stages
