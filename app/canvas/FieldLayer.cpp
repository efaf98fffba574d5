#include "canvas/FieldLayer.h"

#include <algorithm>

#include "paint/Painting.h"

namespace sumpwright::canvas {

namespace {

drawing::FieldValues valuesOf(const session::SuctionDesk& desk) {
  const siting::SolvedCase& one = desk.live()->cases()[desk.field()->which];
  return {&one.solver.network(), &desk.field()->suction};
}

}  // namespace

std::vector<drawing::HoleMark> holesOf(const session::Session& session,
                                       const session::SuctionDesk& desk) {
  const plan::Job& job = session.job();
  const bool has_field = desk.live() != nullptr && desk.field().has_value();
  std::vector<drawing::HoleMark> marks =
      drawing::predictedAt(job.plan, has_field ? valuesOf(desk) : drawing::FieldValues{});
  for (const plan::PressureTest& test : job.suction.tests) {
    for (const plan::HoleReading& reading : test.readings) {
      const auto mark = std::find_if(marks.begin(), marks.end(), [&](const drawing::HoleMark& m) {
        return m.id == reading.hole;
      });
      if (mark == marks.end()) continue;
      mark->measured_pa = reading.suction_pa;
      mark->stale = !test.sump.empty() && test.sump != session.sump();
    }
  }
  return marks;
}

bool FieldLayer::shows() const {
  return m_session.study() != nullptr && m_desk.live() != nullptr && m_desk.field().has_value();
}

bool FieldLayer::isOld() const { return shows() && m_desk.field()->which != m_which; }

void FieldLayer::render(QImage& base, const drawing::PlanView& view, const paint::QtVoice& voice,
                        double units_per_mm) {
  m_which = m_desk.field()->which;
  m_sheet = drawing::fieldSheet(*m_session.study(), m_desk.live()->cases()[m_which].model, view,
                                voice, m_session.sump());
  paint::paintOn(base, m_sheet->under, units_per_mm);
  if (m_over.size() != base.size()) {
    m_over = QImage(base.size(), QImage::Format_ARGB32_Premultiplied);
  }
  m_over.setDevicePixelRatio(base.devicePixelRatio());
  m_over.fill(Qt::transparent);
  QPainter painter(&m_over);
  painter.setRenderHint(QPainter::Antialiasing);
  paint::paintDrawList(painter, m_sheet->over, units_per_mm);
}

void FieldLayer::paint(QPainter& painter, const paint::QtVoice& voice, double units_per_mm) const {
  drawing::FieldShown shown;
  shown.field = valuesOf(m_desk);
  shown.target = m_desk.live()->target().design_pa;
  shown.stale = m_desk.isStale();
  const drawing::FieldLayers layers =
      drawing::fieldLayers(*m_sheet, shown, holesOf(m_session, m_desk), voice);
  paint::paintDrawList(painter, layers.areas, units_per_mm);
  painter.drawImage(0, 0, m_over);
  paint::paintDrawList(painter, layers.labels, units_per_mm);
}

}  // namespace sumpwright::canvas
