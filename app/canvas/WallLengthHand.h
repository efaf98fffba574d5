#pragma once
// While choosing: the dimension of the chosen wall, and a press on it to type another length.

#include <optional>

#include "canvas/PlanHand.h"
#include "session/Session.h"

namespace sumpwright::canvas {

class WallLengthHand final : public PlanHand {
 public:
  explicit WallLengthHand(session::Session& session) : m_session(session) {}

  bool serves(tools::Task task) const override { return task == tools::Task::choose; }
  bool press(QPointF at) override;
  void move(QPointF /*at*/) override {}
  void release() override {}
  void cancel() override;
  bool isActive() const override { return m_typing; }
  bool isTyping() const override { return m_typing; }
  bool key(QKeyEvent& event) override;
  std::optional<Qt::CursorShape> cursor(QPointF at) const override;
  QString hint() const override;
  void paint(QPainter& painter, const drawing::Theme& theme, const QFont& font) const override;

  /// Where the chosen wall's dimension is pressed; nothing while no wall of a closed ring is
  /// chosen.
  std::optional<QRectF> plate() const;

 private:
  struct ChosenWall {
    int ring = 0;
    int edge = 0;
    geometry::Segment line;  ///< of the dimension, off the wall
  };
  std::optional<ChosenWall> chosen() const;
  void take();

  session::Session& m_session;
  bool m_typing = false;
  std::string m_wall;  ///< what is typed is of this one
  QString m_typed;
  QString m_warning;
  mutable QFont m_font;  ///< as painted last: the plate is as wide as its words
};

}  // namespace sumpwright::canvas
