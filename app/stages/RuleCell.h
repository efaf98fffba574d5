#pragma once
// One rule of the verdict: sign, title, signed margin, and the thing it is about. A press shows
// the thing on the plan.

#include <QAbstractButton>

#include "stages/SitingText.h"

namespace sumpwright::stages {

class RuleCell final : public QAbstractButton {
  Q_OBJECT

 public:
  explicit RuleCell(QWidget* parent = nullptr);
  void show(const RuleLine& line);
  const RuleLine& line() const { return m_line; }
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  RuleLine m_line;
};

}  // namespace sumpwright::stages
