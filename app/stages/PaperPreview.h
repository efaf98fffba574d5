#pragma once
// One page of a paper on screen, painted from the same draw list as the file. Wheel and pinch zoom,
// a drag moves the sheet, a double click shows all of it again.

#include <QPixmap>
#include <QWidget>
#include <optional>

#include "dossier/Document.h"

namespace sumpwright::stages {

class PaperPreview final : public QWidget {
  Q_OBJECT

 public:
  explicit PaperPreview(QWidget* parent = nullptr);
  void show(const dossier::Document* document, int page);
  void fit();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;

 private:
  double fitScale() const;
  QRectF sheet() const;
  void render();

  const dossier::Document* m_document = nullptr;  ///< of the paper stage
  int m_page = 0;
  double m_zoom = 1.0;  ///< over the scale that fits
  QPointF m_shift;      ///< of the sheet's middle from the widget's
  std::optional<QPointF> m_grabbed;
  QPixmap m_picture;
  bool m_old = true;
};

}  // namespace sumpwright::stages
