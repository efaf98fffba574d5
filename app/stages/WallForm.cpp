#include "stages/WallForm.h"

#include <QVBoxLayout>

#include "paint/Look.h"
#include "plan/WallEdits.h"
#include "stages/SitingText.h"
#include "stages/ThingForm.h"
#include "stages/ThingText.h"
#include "stages/WallFacts.h"

namespace sumpwright::stages {

namespace {

/// A wall, what is not known of it taken from another but name, kind, side and ground along it.
/// What is known stays: a raft edge or a neighbour's ground found on one wall is not to be talked
/// away.
plan::Wall likeWall(plan::Wall wall, const plan::Wall& facts) {
  if (wall.foundation == plan::Foundation::unknown) wall.foundation = facts.foundation;
  if (wall.ground == plan::OutsideGround::unknown) wall.ground = facts.ground;
  if (!wall.thickness_m) wall.thickness_m = facts.thickness_m;
  if (!wall.free_depth_m) wall.free_depth_m = facts.free_depth_m;
  if (!wall.ground_level_m) wall.ground_level_m = facts.ground_level_m;
  if (wall.layers.empty()) wall.layers = facts.layers;
  return wall;
}

base::Result<plan::Job> allLike(const plan::Job& job, const plan::Wall& facts) {
  base::Result<plan::Job> all = job;
  for (std::size_t r = 0; r < job.plan.rings.size(); ++r) {
    for (std::size_t w = 0; all && w < job.plan.rings[r].walls.size(); ++w) {
      const plan::Wall& wall = job.plan.rings[r].walls[w];
      if (wall.kind != plan::WallKind::outside) continue;
      all = plan::setWall(*all, static_cast<int>(r), static_cast<int>(w), likeWall(wall, facts));
    }
  }
  return all;
}

}  // namespace

WallForm::WallForm(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setAccessibleName(tr("The wall in hand"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  m_title = new QLabel(this);
  m_title->setFont(paint::sized(font(), 1.1, true));
  m_title->setWordWrap(true);
  column->addWidget(m_title);
  m_facts = new FactForm(session, tr("The wall in hand"), this);
  column->addWidget(m_facts);
  m_for_all = new QPushButton(tr("Fill in the other walls"), this);
  m_for_all->setToolTip(
      tr("What is known of this wall but its name, kind, side and the ground along it, for every "
         "outside wall of which it is not known yet"));
  column->addWidget(m_for_all);
  m_message = new QLabel(this);
  m_message->setWordWrap(true);
  m_message->setProperty("tone", QStringLiteral("warning"));
  m_message->hide();
  column->addWidget(m_message);
  connect(m_for_all, &QPushButton::clicked, this, &WallForm::toAll);
  hide();
}

void WallForm::refresh() {
  const std::string id = m_session.hasJob() ? m_session.selected() : std::string();
  int ring = 0;
  int edge = 0;
  const bool there = !id.empty() && wallOf(m_session.job(), id, &ring, &edge).has_value();
  setVisible(there);
  if (!there) return;
  m_title->setText(capital(wallTitle(m_session.job(), ring, edge)));
  m_message->hide();
  m_facts->setTold(toldOf(m_session, id));
  m_facts->setFacts(wallFacts(id), id);
}

void WallForm::toAll() {
  const auto wall = m_session.hasJob() ? wallOf(m_session.job(), m_session.selected())
                                       : std::optional<plan::Wall>();
  if (!wall) return;
  const base::Problems problems =
      m_session.edit(tr("Fill in the other walls"), allLike(m_session.job(), *wall));
  if (problems.empty()) return;
  m_message->setText(saidNamed(problems.front().message, m_session.job()));
  m_message->show();
}

}  // namespace sumpwright::stages
