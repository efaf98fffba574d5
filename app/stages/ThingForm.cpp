#include "stages/ThingForm.h"

#include <QVBoxLayout>

#include "paint/Look.h"
#include "plan/PlanCheck.h"
#include "stages/ThingFacts.h"
#include "stages/ThingText.h"

namespace sumpwright::stages {

std::map<std::string, QString> toldOf(const session::Session& session, const std::string& id) {
  std::map<std::string, QString> told;
  const plan::Job& job = session.job();
  for (const base::Problem& p : session.problems()) {
    if (plan::thingAt(job, p.pointer) != id) continue;
    const auto slash = p.pointer.find_last_of('/');
    told.emplace(p.pointer.substr(slash + 1), saidNamed(p.message, job));
  }
  return told;
}

ThingForm::ThingForm(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setAccessibleName(tr("The thing in hand"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(6);
  m_title = new QLabel(this);
  m_title->setFont(paint::sized(font(), 1.1, true));
  m_title->setWordWrap(true);
  column->addWidget(m_title);
  m_facts = new FactForm(session, tr("The thing in hand"), this);
  column->addWidget(m_facts);
  hide();
}

void ThingForm::refresh() {
  const std::string id = m_session.hasJob() ? m_session.selected() : std::string();
  const auto thing = id.empty() ? std::optional<plan::Thing>() : plan::thingOf(m_session.job(), id);
  setVisible(thing.has_value());
  if (!thing) return;
  m_title->setText(thingKind(*thing));
  m_facts->setTold(toldOf(m_session, id));
  m_facts->setFacts(thingFacts(m_session.job(), *thing), id);
}

}  // namespace sumpwright::stages
