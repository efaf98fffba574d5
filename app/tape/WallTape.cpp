#include "tape/WallTape.h"

#include <QHBoxLayout>
#include <QStackedLayout>
#include <QVBoxLayout>

#include "paint/Look.h"

namespace sumpwright::tape {

WallTape::WallTape(session::Session& session, QWidget* parent)
    : QWidget(parent),
      m_row(new QHBoxLayout),
      m_legend(new Legend(session, this)),
      m_strip(new TapeStrip(session, this)),
      m_elevation(new ElevationPicture(session, ElevationPicture::Size::strip, this)),
      m_either(new QStackedLayout) {
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
  m_either->addWidget(m_strip);
  m_either->addWidget(m_elevation);
  strip->addLayout(m_either, 1);
  column->addLayout(strip, 1);
}

void WallTape::showElevation(bool elevation) { m_either->setCurrentIndex(elevation ? 1 : 0); }

void WallTape::addLeading(QWidget* widget) {
  m_row->insertWidget(0, widget);
  m_row->insertSpacing(1, qRound(12 * paint::uiScale(font())));
}

void WallTape::addTrailing(QWidget* widget) { m_row->addWidget(widget); }

}  // namespace sumpwright::tape
