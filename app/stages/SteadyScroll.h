#pragma once
// Keeps the field that has the keys where it is on screen while the panel around it grows and
// shrinks: a note comes or goes, an answer that took a second is there. What moves is the rest.

#include <QPointer>
#include <QScrollArea>

namespace sumpwright::stages {

class SteadyScroll final : public QScrollArea {
  Q_OBJECT

 public:
  explicit SteadyScroll(QWidget* parent = nullptr);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  bool holds(const QWidget* widget) const;
  int heightOf(const QWidget* widget) const;  ///< in the window
  void hold(QWidget* widget);
  void restore();

  QPointer<QWidget> m_held;
  int m_at_px = 0;
  bool m_restoring = false;
  bool m_soon = false;
};

}  // namespace sumpwright::stages
