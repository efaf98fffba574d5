#pragma once
// How well an outline closes, on a scale from poor to good: 1 in N, with the marks the trade knows.

#include <QWidget>
#include <optional>

namespace sumpwright::stages {

/// Under 1 in 500 is poor, from 1 in 1,000 good (own figures, for a house of some 40 m round: 80
/// and 40 mm).
inline constexpr double kPoorClosing = 500.0;
inline constexpr double kGoodClosing = 1000.0;

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
