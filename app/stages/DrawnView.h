#pragma once
// A drawing made anew for the widget's size and theme, with a thin frame.

#include <QPixmap>
#include <QWidget>
#include <functional>

#include "drawing/DrawList.h"
#include "drawing/Theme.h"

namespace sumpwright::stages {

class DrawnView final : public QWidget {
  Q_OBJECT

 public:
  /// Gives the drawing for a size in millimetres of the screen's scale; nothing to show: empty.
  using Draw =
      std::function<drawing::DrawList(double width_mm, double height_mm, drawing::ThemeName theme)>;
  explicit DrawnView(QWidget* parent = nullptr);
  /// From now on the view is as high as what it draws at its width.
  void fitHeight();
  /// `words` are what a screen reader says instead.
  void show(Draw draw, const QString& words);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  void render();
  double inset() const;
  void takeHeight();

  Draw m_draw;
  QPixmap m_picture;
  bool m_old = true;
  bool m_fits = false;
};

}  // namespace sumpwright::stages
