#pragma once
// The unrolled elevation on screen. Large, it is where the run is worked on: drag the discharge
// along the walls and up, the fan up and down, the foot of the riser along. Small, it is the whole
// house in a strip; press or drag on it to move the sump.
//
// Keys on the large one: arrows move the discharge by 10 cm, with Shift by 1 cm; Page Up and Page
// Down the fan; P places a discharge; Escape ends a drag as if it had not been.

#include <QPixmap>
#include <QWidget>
#include <optional>

#include "build/CableRoute.h"
#include "drawing/ElevationDrawing.h"
#include "paint/QtVoice.h"
#include "session/Session.h"

namespace sumpwright::tape {

class ElevationPicture final : public QWidget {
  Q_OBJECT

 public:
  enum class Size { large, strip };
  ElevationPicture(session::Session& session, Size size, QWidget* parent = nullptr);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

  /// Widget position of a spot, for tests.
  QPointF pointOf(drawing::ElevationSpot spot) const;
  bool isDragging() const { return m_grip != Grip::none; }
  /// A discharge to begin with, where the sump has none; else nothing.
  void placeDischarge();

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  bool event(QEvent* event) override;

 private:
  enum class Grip { none, sump, discharge, fan, view };

  double scale() const;
  paint::QtVoice voice() const;
  drawing::ElevationView view() const;
  drawing::ElevationSpot spotAt(QPointF at) const;
  const plan::Sump* sump() const;
  Grip gripAt(QPointF at) const;
  void takeStudy();
  void followPlace();
  void renderBase();
  void paintLive(QPainter& painter);
  struct Cable {
    build::CableRoute route;
    drawing::ElevationSpot fan;
  };
  const Cable* cableAtRest();
  void paintVerdict(QPainter& painter, const siting::Assessment& assessment);
  void drag(QPointF at);
  void endDrag(bool keep);
  void moveDischarge(double along_m, double up_m);
  void moveFan(double up_m);
  void tellVerdict();

  session::Session& m_session;
  Size m_size;
  QPixmap m_base;
  bool m_base_old = true;
  std::optional<Cable> m_cable;
  bool m_cable_old = true;
  plan::Plan m_drawn_plan;  ///< of the base: it stays while only the run changes
  plan::House m_drawn_house;
  std::string m_drawn_sheet;
  std::optional<drawing::ElevationView> m_drawn_view;
  std::vector<drawing::Box> m_words;             ///< of the base: those of the run keep off them
  std::optional<drawing::ElevationView> m_held;  ///< during a drag nothing else moves
  QString m_told;
  std::optional<perimeter::Place> m_centre;  ///< what the large one looks at
  double m_zoom = 1.0;
  Grip m_grip = Grip::none;
  QPointF m_off;   ///< from what is held to the pointer
  QPointF m_last;  ///< of a moved view
  int m_keys = 0;  ///< gesture of a run of keys
};

}  // namespace sumpwright::tape
