#pragma once
// The ring round whatever has the keys, 3 px outside it, shown while keys are used and hidden as
// soon as the pointer is. Style sheets cannot draw outside a control, so this is one widget on top
// of the window that sets its property "keysUsed", which drawings ask.

#include <QPointer>
#include <QWidget>

namespace sumpwright::window {

class FocusRing final : public QWidget {
  Q_OBJECT

 public:
  /// A child of `window`, watching the application.
  explicit FocusRing(QWidget* window);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void follow();
  void setKeysUsed(bool used);

  QPointer<QWidget> m_around;
  QRect m_clip;  ///< of the window, what of it the parts that scroll show
  bool m_keys = false;
  bool m_soon = false;
};

}  // namespace sumpwright::window
