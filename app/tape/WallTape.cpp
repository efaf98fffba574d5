#include "tape/WallTape.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "paint/Look.h"

namespace sumpwright::tape {

WallTape::WallTape(session::Session& session, QWidget* parent)
    : QWidget(parent),
      m_row(new QHBoxLayout),
      m_legend(new Legend(session, this)),
      m_strip(new TapeStrip(session, this)) {
  setProperty("surface", QStringLiteral("panel"));
  setAttribute(Qt::WA_StyledBackground);
  const double k = paint::uiScale(font());
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, qRound(7 * k), 0, qRound(2 * k));
  column->setSpacing(qRound(6 * k));
  m_row->setContentsMargins(qRound(20 * k), 0, qRound(16 * k), 0);
  m_row->setSpacing(qRound(8 * k));
  m_row->addWidget(m_legend, 1);
  column->addLayout(m_row);
  auto* strip = new QHBoxLayout;
  strip->setContentsMargins(qRound(18 * k), 0, 0, 0);
  strip->addWidget(m_strip);
  column->addLayout(strip, 1);
}

void WallTape::addLeading(QWidget* widget) {
  m_row->insertWidget(0, widget);
  m_row->insertSpacing(1, qRound(12 * paint::uiScale(font())));
}

void WallTape::addTrailing(QWidget* widget) { m_row->addWidget(widget); }

}  // namespace sumpwright::tape
