#pragma once
// Where the sump stands, in two lines at the right of the verdict's word; a press lets another
// place be typed.

#include <QAbstractButton>

namespace sumpwright::stages {

class PlaceButton final : public QAbstractButton {
  Q_OBJECT

 public:
  explicit PlaceButton(QWidget* parent = nullptr);
  using QWidget::show;
  void show(const QString& wall, const QString& chainage);
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QString m_wall;
  QString m_chainage;
};

}  // namespace sumpwright::stages
