#pragma once
// One fan that may be taken: sign, title, share of floor, what it does and what it costs. A press
// takes it.

#include <QAbstractButton>

#include "rules/Finding.h"

namespace sumpwright::stages {

struct FanLine {
  QString title;
  QString figure;  ///< share of floor
  QString duty;
  QString cost;
  QString state_word;
  rules::State state = rules::State::clear;  ///< its sign: clear or advised against
  bool taken = false;
};

class FanCell final : public QAbstractButton {
  Q_OBJECT

 public:
  explicit FanCell(QWidget* parent = nullptr);
  void show(const FanLine& line);
  const FanLine& line() const { return m_line; }
  QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  FanLine m_line;
};

}  // namespace sumpwright::stages
