#include "stages/SideNote.h"

#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>

#include "paint/Icons.h"
#include "paint/Look.h"

namespace sumpwright::stages {

SideNote::SideNote(Kind kind, QWidget* parent)
    : QFrame(parent),
      m_kind(kind),
      m_text(new QLabel(this)),
      m_cure(new QPushButton(this)),
      m_dismiss(new QPushButton(this)) {
  m_text->setWordWrap(true);
  m_text->setTextInteractionFlags(Qt::TextSelectableByMouse);
  if (kind == Kind::warning) m_text->setProperty("tone", QStringLiteral("warning"));
  m_cure->hide();
  m_cure->setFocusPolicy(Qt::TabFocus);
  m_dismiss->hide();
  m_dismiss->setProperty("role", QStringLiteral("quiet"));
  m_dismiss->setIcon(paint::icon(paint::Glyph::close));
  m_dismiss->setFixedSize(30, 30);
  m_dismiss->setAccessibleName(tr("Close this note"));
  m_dismiss->setToolTip(tr("Close this note"));
  m_dismiss->setFocusPolicy(Qt::TabFocus);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(14, 8, 8, 8);
  column->setSpacing(8);
  auto* row = new QHBoxLayout;
  row->setSpacing(4);
  row->addWidget(m_text, 1);
  row->addWidget(m_dismiss, 0, Qt::AlignTop);
  column->addLayout(row);
  column->addWidget(m_cure, 0, Qt::AlignLeft);
  connect(m_cure, &QPushButton::clicked, this, &SideNote::curePressed);
  connect(m_dismiss, &QPushButton::clicked, this, &QWidget::hide);
}

void SideNote::setText(const QString& text) {
  m_text->setText(text);
  m_text->setFont(paint::sized(font(), 0.94));
  setAccessibleName(text);
}

void SideNote::setCure(const QString& label) {
  m_cure->setText(label);
  m_cure->setVisible(!label.isEmpty());
}

void SideNote::setDismissable() { m_dismiss->show(); }

void SideNote::paintEvent(QPaintEvent*) {
  const drawing::Theme& t = paint::look(palette());
  QPainter p(this);
  p.setPen(Qt::NoPen);
  p.setBrush(paint::colour(m_kind == Kind::warning ? t.warning_tint : t.raised));
  p.drawRect(rect());
  p.setBrush(paint::colour(m_kind == Kind::warning ? t.warning_text : t.rule));
  p.drawRect(0, 0, 4, height());
}

}  // namespace sumpwright::stages
