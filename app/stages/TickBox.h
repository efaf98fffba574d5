#pragma once
// A tick box as the program draws it: a large target, the tick in the theme's ink.

#include <QCheckBox>

namespace sumpwright::stages {

class TickBox final : public QCheckBox {
 public:
  explicit TickBox(const QString& text, QWidget* parent = nullptr);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;
  /// Anywhere on its row, not on the box alone.
  bool hitButton(const QPoint& at) const override { return rect().contains(at); }
};

/// The box with its tick, as it stands in a table too.
void paintTick(QPainter& painter, const QRectF& box, bool ticked, bool enabled,
               const QPalette& palette);

}  // namespace sumpwright::stages
