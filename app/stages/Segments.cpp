#include "stages/Segments.h"

#include <QAbstractButton>
#include <QHBoxLayout>
#include <QPainter>

#include "paint/Look.h"

namespace sumpwright::stages {

namespace {

class Segment final : public QAbstractButton {
 public:
  Segment(const QString& text, bool close, QWidget* parent)
      : QAbstractButton(parent), m_size(close ? 0.85 : 0.96), m_room_px(close ? 8 : 24) {
    setText(text);
    setCheckable(true);
    setFocusPolicy(Qt::TabFocus);
    setAttribute(Qt::WA_Hover);
  }
  QSize sizeHint() const override {
    const double k = paint::uiScale(font());
    const int width = QFontMetrics(paint::sized(font(), m_size, true)).horizontalAdvance(text());
    return {width + qRound(m_room_px * k), qRound(32 * k)};
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    const drawing::Theme& t = paint::look(palette());
    QPainter p(this);
    p.setRenderHint(QPainter::Antialiasing);
    if (isChecked() || isDown()) {
      p.setPen(isChecked() ? QPen(paint::colour(t.selection), 1.5) : QPen(Qt::NoPen));
      p.setBrush(paint::colour(t.selection_tint));
      p.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 5, 5);
    }
    p.setFont(paint::sized(font(), m_size, isChecked()));
    QColor ink = paint::colour(isChecked() || underMouse() ? t.ink : t.ink2);
    if (!isEnabled()) ink.setAlphaF(0.5F);
    p.setPen(ink);
    p.drawText(rect(), Qt::AlignCenter, text());
  }

 private:
  double m_size;
  int m_room_px;
};

}  // namespace

Segments::Segments(const QString& name, const QStringList& choices, QWidget* parent,
                   Spacing spacing)
    : QWidget(parent) {
  setAccessibleName(name);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(2, 2, 2, 2);
  row->setSpacing(0);
  for (int i = 0; i < choices.size(); ++i) {
    auto* segment = new Segment(choices[i], spacing == Spacing::close, this);
    segment->setAccessibleName(name + QStringLiteral(": ") + choices[i]);
    m_group.addButton(segment, i);
    row->addWidget(segment);
  }
  connect(&m_group, &QButtonGroup::idClicked, this, &Segments::picked);
}

void Segments::show(int index) {
  if (QAbstractButton* button = m_group.button(index)) button->setChecked(true);
}

void Segments::paintEvent(QPaintEvent*) {
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing);
  p.setPen(QPen(paint::colour(t.control_edge), 1));
  p.setBrush(paint::colour(t.raised));
  p.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 6, 6);
}

}  // namespace sumpwright::stages
