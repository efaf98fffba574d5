#include "stages/WallForm.h"

#include <QGridLayout>

#include "paint/Look.h"
#include "plan/WallEdits.h"
#include "stages/SitingText.h"
#include "stages/SurveyText.h"
#include "stages/ThingText.h"
#include "tools/LengthText.h"

namespace sumpwright::stages {

WallForm::WallForm(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setAccessibleName(tr("The wall in hand"));
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setSpacing(6);
  m_title = new QLabel(this);
  m_title->setFont(paint::sized(font(), 1.1, true));
  grid->addWidget(m_title, 0, 0, 1, 4);
  const auto combo = [&](int row, const QString& name, const QStringList& choices) {
    auto* label = new QLabel(name, this);
    label->setProperty("tone", QStringLiteral("second"));
    auto* box = new SteadyCombo(this);
    box->addItems(choices);
    box->setAccessibleName(name);
    grid->addWidget(label, row, 0);
    grid->addWidget(box, row, 1, 1, 3);
    connect(box, &QComboBox::activated, this, [this](int) { commit(); });
    return box;
  };
  // In the order of the lists in plan/Kinds.h.
  m_kind = combo(1, tr("Wall"), {tr("Outside wall"), tr("Party wall"), tr("Dwarf wall")});
  m_foundation = combo(2, tr("Stands on"),
                       {tr("Not known"), tr("Strip footing"), tr("Rubble"), tr("Edge of a raft"),
                        tr("Ground beam"), tr("Insulated raft"), tr("Retaining wall")});
  m_ground = combo(3, tr("Outside"),
                   {tr("Not known"), tr("Own ground"), tr("Shared ground"),
                    tr("Neighbour's ground"), tr("Public ground")});
  const auto length = [&](int column, const QString& name, const QString& full) {
    auto* label = new QLabel(name, this);
    label->setProperty("tone", QStringLiteral("second"));
    auto* field = new QLineEdit(this);
    field->setAccessibleName(full);
    field->setToolTip(full);
    field->setPlaceholderText(tr("not known"));
    grid->addWidget(label, 4, column);
    grid->addWidget(field, 4, column + 1);
    connect(field, &QLineEdit::editingFinished, this, &WallForm::commit);
    return field;
  };
  m_thickness = length(0, tr("Thick"), tr("Thickness of the wall"));
  m_free_depth = length(2, tr("Free"), tr("Free working depth outside the wall"));
  m_for_all = new QPushButton(tr("Same for all walls"), this);
  m_for_all->setToolTip(
      tr("What is known of this wall but its name and kind, for every outside wall"));
  grid->addWidget(m_for_all, 5, 0, 1, 4);
  connect(m_for_all, &QPushButton::clicked, this, &WallForm::toAll);
  m_message = new QLabel(this);
  m_message->setWordWrap(true);
  m_message->setProperty("tone", QStringLiteral("warning"));
  m_message->hide();
  grid->addWidget(m_message, 6, 0, 1, 4);
  hide();
}

std::pair<int, int> WallForm::at() const {
  if (!m_session.hasJob() || m_session.selected().empty()) return {-1, -1};
  const auto& rings = m_session.job().plan.rings;
  for (std::size_t r = 0; r < rings.size(); ++r) {
    for (std::size_t w = 0; w < rings[r].walls.size(); ++w) {
      if (rings[r].walls[w].id == m_session.selected()) {
        return {static_cast<int>(r), static_cast<int>(w)};
      }
    }
  }
  return {-1, -1};
}

void WallForm::refresh() {
  const auto [ring, edge] = at();
  setVisible(ring >= 0);
  if (ring < 0) return;
  m_filling = true;
  const plan::Job& job = m_session.job();
  const plan::Wall& wall =
      job.plan.rings[static_cast<std::size_t>(ring)].walls[static_cast<std::size_t>(edge)];
  m_title->setText(tr("Wall %1").arg(wallCorners(job, ring, edge)));
  m_kind->setCurrentIndex(static_cast<int>(wall.kind));
  m_foundation->setCurrentIndex(static_cast<int>(wall.foundation));
  m_ground->setCurrentIndex(static_cast<int>(wall.ground));
  m_thickness->setText(wall.thickness_m ? typedLength(*wall.thickness_m, job) : QString());
  m_free_depth->setText(wall.free_depth_m ? typedLength(*wall.free_depth_m, job) : QString());
  m_message->hide();
  m_filling = false;
}

/// The wall with what the form shows; a length that is only looked at keeps its last digits.
plan::Wall WallForm::shown(const plan::Wall& before) const {
  const plan::Job& job = m_session.job();
  const bool feet = job.display_units == plan::DisplayUnits::imperial;
  const auto read = [&](const QLineEdit& field, std::optional<double> now) {
    const QString text = field.text().trimmed();
    if (text == (now ? typedLength(*now, job) : QString())) return now;
    const tools::LengthReading reading = tools::readLength(
        text.toStdString(), feet ? tools::BareUnit::foot : tools::BareUnit::metre);
    if (reading.ok()) return std::optional(reading.metres.front());
    return text.isEmpty() ? std::optional<double>() : now;
  };
  plan::Wall wall = before;
  wall.kind = static_cast<plan::WallKind>(m_kind->currentIndex());
  wall.foundation = static_cast<plan::Foundation>(m_foundation->currentIndex());
  wall.ground = static_cast<plan::OutsideGround>(m_ground->currentIndex());
  wall.thickness_m = read(*m_thickness, before.thickness_m);
  wall.free_depth_m = read(*m_free_depth, before.free_depth_m);
  return wall;
}

void WallForm::commit() {
  const auto [ring, edge] = at();
  if (m_filling || ring < 0) return;
  const plan::Wall& before =
      m_session.job().plan.rings[static_cast<std::size_t>(ring)].walls[static_cast<std::size_t>(
          edge)];
  const plan::Wall after = shown(before);
  if (after == before) {
    refresh();
    return;
  }
  const base::Problems problems =
      m_session.edit(tr("Change a wall"), plan::setWall(m_session.job(), ring, edge, after));
  if (problems.empty()) return;
  m_message->setText(said(problems.front().message, m_session.job()));
  m_message->show();
}

void WallForm::toAll() {
  const auto [ring, edge] = at();
  if (ring < 0) return;
  const plan::Job& job = m_session.job();
  const plan::Wall facts =
      shown(job.plan.rings[static_cast<std::size_t>(ring)].walls[static_cast<std::size_t>(edge)]);
  plan::Job all = job;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    for (std::size_t w = 0; w < job.plan.rings[r].walls.size(); ++w) {
      plan::Wall wall = job.plan.rings[r].walls[w];
      if (wall.kind != plan::WallKind::outside)
        continue;  // What is not known of this wall says nothing of the others.
      if (facts.foundation != plan::Foundation::unknown) wall.foundation = facts.foundation;
      if (facts.ground != plan::OutsideGround::unknown) wall.ground = facts.ground;
      if (facts.thickness_m) wall.thickness_m = facts.thickness_m;
      if (facts.free_depth_m) wall.free_depth_m = facts.free_depth_m;
      auto next = plan::setWall(all, static_cast<int>(r), static_cast<int>(w), wall);
      if (!next) {
        m_message->setText(said(next.problems().front().message, job));
        return m_message->show();
      }
      all = std::move(next).value();
    }
  }
  m_session.edit(tr("Say it of all walls"), all);
}

}  // namespace sumpwright::stages
