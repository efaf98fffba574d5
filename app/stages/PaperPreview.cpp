#include "stages/PaperPreview.h"

#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "paint/Export.h"
#include "paint/Look.h"
#include "paint/Painting.h"

namespace sumpwright::stages {

PaperPreview::PaperPreview(QWidget* parent) : QWidget(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setMinimumSize(240, 180);
  setAccessibleName(tr("The paper as it will be printed"));
}

void PaperPreview::show(const dossier::Document* document, int page) {
  m_document = document;
  m_page = page;
  m_old = true;
  update();
}

void PaperPreview::fit() {
  m_zoom = 1.0;
  m_shift = {};
  m_old = true;
  update();
}

double PaperPreview::fitScale() const {
  const double margin = 2 * 18 * paint::uiScale(font());
  const drawing::DrawList& page = m_document->pages[static_cast<std::size_t>(m_page)];
  return std::max(
      0.5, std::min((width() - margin) / page.width_mm, (height() - margin) / page.height_mm));
}

QRectF PaperPreview::sheet() const {
  const double scale = fitScale() * m_zoom;
  const drawing::DrawList& page = m_document->pages[static_cast<std::size_t>(m_page)];
  QRectF r(0, 0, page.width_mm * scale, page.height_mm * scale);
  r.moveCenter(QRectF(rect()).center() + m_shift);
  return r;
}

void PaperPreview::render() {
  const double ratio = devicePixelRatioF();
  const QSize pixels = (QSizeF(size()) * ratio).toSize();
  m_picture = QPixmap(pixels);
  m_picture.setDevicePixelRatio(ratio);
  const drawing::Theme& t = paint::look(palette());
  m_picture.fill(paint::colour(t.desk));
  QPainter p(&m_picture);
  p.setRenderHint(QPainter::Antialiasing);
  const QRectF r = sheet();
  p.setPen(QPen(paint::colour(t.rule), 1));
  p.setBrush(Qt::white);
  p.drawRect(r);
  p.translate(r.topLeft());
  paint::paintDrawList(p, m_document->pages[static_cast<std::size_t>(m_page)], fitScale() * m_zoom);
  const paint::Pages pages = paint::pagesOf(*m_document);
  paint::paintPictures(p, pages.pictures, static_cast<std::size_t>(m_page), fitScale() * m_zoom);
  m_old = false;
}

void PaperPreview::paintEvent(QPaintEvent*) {
  QPainter p(this);
  if (m_document == nullptr || m_page >= static_cast<int>(m_document->pages.size())) {
    p.fillRect(rect(), paint::colour(paint::look(palette()).desk));
    return;
  }
  if (m_old) render();
  p.drawPixmap(0, 0, m_picture);
}

void PaperPreview::resizeEvent(QResizeEvent*) { m_old = true; }

void PaperPreview::wheelEvent(QWheelEvent* event) {
  if (m_document == nullptr) return;
  const QPointF held = event->position() - QRectF(rect()).center() - m_shift;
  const double before = m_zoom;
  m_zoom = std::clamp(m_zoom * std::pow(1.2, event->angleDelta().y() / 120.0), 1.0, 12.0);
  m_shift += held * (1.0 - m_zoom / before);
  if (m_zoom == 1.0) m_shift = {};
  m_old = true;
  update();
  event->accept();
}

void PaperPreview::mousePressEvent(QMouseEvent* event) {
  m_grabbed = event->position();
  setCursor(Qt::ClosedHandCursor);
}

void PaperPreview::mouseMoveEvent(QMouseEvent* event) {
  if (!m_grabbed || m_zoom <= 1.0) return;
  m_shift += event->position() - *m_grabbed;
  m_grabbed = event->position();
  m_old = true;
  update();
}

void PaperPreview::mouseReleaseEvent(QMouseEvent*) {
  m_grabbed.reset();
  unsetCursor();
}

void PaperPreview::mouseDoubleClickEvent(QMouseEvent*) { fit(); }

}  // namespace sumpwright::stages
