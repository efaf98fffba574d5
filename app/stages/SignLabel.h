#pragma once
// The sign of a state, as large as the word beside it.

#include <QWidget>
#include <optional>

#include "rules/Finding.h"

namespace sumpwright::stages {

class SignLabel final : public QWidget {
  Q_OBJECT

 public:
  explicit SignLabel(QWidget* parent = nullptr);
  void show(std::optional<rules::State> state);
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::optional<rules::State> m_state;
};

}  // namespace sumpwright::stages
