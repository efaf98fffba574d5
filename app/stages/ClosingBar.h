#pragma once
// How well an outline closes, on a scale from poor to good: 1 in N, with the marks of
// plan/TapeEdits.h.

#include <QWidget>
#include <optional>

namespace sumpwright::stages {

class ClosingBar final : public QWidget {
  Q_OBJECT

 public:
  explicit ClosingBar(QWidget* parent = nullptr);
  /// Nothing: closes exactly.
  void show(std::optional<double> one_in);
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::optional<double> m_one_in;
};

}  // namespace sumpwright::stages
