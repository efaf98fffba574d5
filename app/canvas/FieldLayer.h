#pragma once
// The suction field on the plan in the stage Suction: a sheet painted once for a plan and a view,
// the field and its words on it with every frame of a drag.

#include <QImage>
#include <QPainter>
#include <optional>

#include "drawing/FieldDrawing.h"
#include "paint/QtVoice.h"
#include "session/SuctionDesk.h"

namespace sumpwright::canvas {

/// Holes with what is predicted there by the newest field, and what was measured last: stale where
/// it was measured with another sump.
std::vector<drawing::HoleMark> holesOf(const session::Session& session,
                                       const session::SuctionDesk& desk);

class FieldLayer final {
 public:
  FieldLayer(session::Session& session, session::SuctionDesk& desk)
      : m_session(session), m_desk(desk) {}

  /// Whether there is a field to draw; else the plan is drawn as ever.
  bool shows() const;
  /// The case whose walls shape the field was another when render() was called.
  bool isOld() const;
  /// Paper and what lies over the field, in pictures of the size of `base`.
  void render(QImage& base, const drawing::PlanView& view, const paint::QtVoice& voice,
              double units_per_mm);
  /// On top of the base: field, walls, words. Contract: render() was called.
  void paint(QPainter& painter, const paint::QtVoice& voice, double units_per_mm) const;

 private:
  session::Session& m_session;
  session::SuctionDesk& m_desk;
  std::optional<drawing::FieldSheet> m_sheet;
  QImage m_over;
  std::size_t m_which = 0;
};

}  // namespace sumpwright::canvas
