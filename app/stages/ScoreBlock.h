#pragma once
// The score and its parts: points of weight with a bar each, and which parts were left out.

#include <QWidget>
#include <optional>

#include "siting/Study.h"

namespace sumpwright::stages {

class ScoreBlock final : public QWidget {
  Q_OBJECT

 public:
  explicit ScoreBlock(QWidget* parent = nullptr);
  /// Nothing: drained, without figures. `would_be`: the place is refused; this is what it would
  /// score.
  void show(const std::optional<siting::Score>& score, bool would_be, bool best);
  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  int rows() const;  ///< of parts
  QString note() const;
  QString leftOut() const;

  std::optional<siting::Score> m_score;
  bool m_would_be = false;
  bool m_best = false;
};

}  // namespace sumpwright::stages
