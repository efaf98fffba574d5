#include "stages/HousePage.h"

#include <QVBoxLayout>

#include "paint/Look.h"
#include "plan/PlanCheck.h"
#include "plan/ThingEdits.h"
#include "stages/HouseFacts.h"
#include "stages/ThingText.h"

namespace sumpwright::stages {

HousePage::HousePage(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setAccessibleName(tr("House"));
  const double k = paint::uiScale(font());
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  m_scroll = new QScrollArea(this);
  m_scroll->setWidgetResizable(true);
  m_scroll->setFrameShape(QFrame::NoFrame);
  m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_scroll->setFocusPolicy(Qt::NoFocus);
  auto* all = new QWidget(m_scroll);
  auto* rows = new QVBoxLayout(all);
  rows->setContentsMargins(3, 3, qRound(10 * k), 3);
  rows->setSpacing(8);
  for (const FactSection& section : houseSections(plan::Job())) {
    auto* title = new QLabel(section.title, all);
    title->setFont(paint::sized(font(), 1.1, true));
    rows->addWidget(title);
    auto* form = new FactForm(session, section.title, all);
    connect(form, &FactForm::entered, m_scroll,
            [this](QWidget* field) { m_scroll->ensureWidgetVisible(field, 0, 40); });
    rows->addWidget(form);
    rows->addSpacing(qRound(6 * k));
    m_sections.push_back(form);
  }
  m_appliance = new QPushButton(tr("Add an appliance with a flue"), all);
  m_appliance->setToolTip(tr("A stove, boiler or fire: a fan can draw its flue gas into the room"));
  rows->addWidget(m_appliance);
  rows->addStretch();
  m_scroll->setWidget(all);
  column->addWidget(m_scroll);
  connect(m_appliance, &QPushButton::clicked, this, &HousePage::newAppliance);
  connect(&session, &session::Session::studyChanged, this, &HousePage::refresh);
  connect(&session, &session::Session::jobChanged, this, &HousePage::refresh);
  refresh();
}

void HousePage::refresh() {
  setEnabled(m_session.hasJob());
  if (!m_session.hasJob() || m_session.isPreviewing()) return;
  const plan::Job& job = m_session.job();
  std::map<std::string, QString> told;
  for (const base::Problem& p : m_session.problems()) {
    told.emplace(p.pointer, saidNamed(p.message, job));
  }
  const auto sections = houseSections(job);
  for (std::size_t i = 0; i < sections.size(); ++i) {
    m_sections[i]->setTold(told);
    m_sections[i]->setFacts(sections[i].facts, job.id);
  }
}

void HousePage::takeFocus() {
  if (QWidget* first = field("/address")) first->setFocus(Qt::OtherFocusReason);
}

QWidget* HousePage::field(const std::string& key) const {
  for (const FactForm* form : m_sections) {
    if (QWidget* found = form->field(key)) return found;
  }
  return nullptr;
}

bool HousePage::takeFocusAt(const std::string& pointer) {
  // "/permissions" as a whole: the first that is asked.
  const std::string place =
      pointer == "/permissions" ? "/permissions/protected_structure" : pointer;
  for (FactForm* form : m_sections) {
    if (form->takeFocusAt(place)) return true;
  }
  return false;
}

/// Its facts are asked for where all things are.
void HousePage::newAppliance() {
  if (!m_session.hasJob()) return;
  auto after = plan::addThing(m_session.job(), plan::Appliance{});
  const std::string id = after ? after->house.appliances.back().id : std::string();
  if (m_session.edit(tr("Add an appliance"), std::move(after)).empty()) m_session.show(id);
}

}  // namespace sumpwright::stages
