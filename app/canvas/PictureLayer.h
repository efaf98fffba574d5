#pragma once
// The picture under the plan, painted: kept at the camera's scale, so that a wall dragged over it
// costs one blit.
//
// It shines through the plan as if drawn on tracing paper: in light colours its white is clear and
// its dark is ink, in dark colours the other way round (lightness turned over, hue kept), so that
// neither hides the plan, nor the plan it.

#include <QImage>
#include <QPainter>

#include "canvas/Camera.h"
#include "session/PictureDesk.h"

namespace sumpwright::canvas {

/// Pixels of a premultiplied picture as ink on light paper, or, `dark`, as chalk on dark.
void toInk(QImage& picture, bool dark);

class PictureLayer {
 public:
  /// Over what is painted already. `size` in widget pixels; `ratio` of the device's to them.
  void paint(QPainter& painter, const session::PictureDesk::Layer& layer, const Camera& camera,
             QSizeF size, double ratio, bool dark);

 private:
  void render(const session::PictureDesk::Layer& layer, double ratio);

  QImage m_image;
  Camera m_camera;
  QSizeF m_size;
  bool m_dark = false;
  int m_revision = -1;
  plan::Underlay m_placed;
};

/// Outline of the picture on the plan, corner by corner from its top left.
std::array<geometry::Point, 4> outlineOf(const session::PictureDesk::Layer& layer);

}  // namespace sumpwright::canvas
