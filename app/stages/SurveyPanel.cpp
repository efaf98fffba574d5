#include "stages/SurveyPanel.h"

#include <QVBoxLayout>

#include "paint/Look.h"

namespace sumpwright::stages {

SurveyPanel::SurveyPanel(session::Session& session, session::TapeDesk& desk, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setProperty("surface", QStringLiteral("panel"));
  setAttribute(Qt::WA_StyledBackground);
  setAccessibleName(tr("Survey"));
  auto* column = new QVBoxLayout(this);
  const int margin = qRound(20 * paint::uiScale(font()));
  column->setContentsMargins(margin, qRound(0.6 * margin), margin, qRound(0.6 * margin));
  column->setSpacing(10);
  m_choice = new Segments(tr("Part of the survey"),
                          {tr("Outline"), tr("Things"), tr("Looked for"), tr("Check")}, this);
  column->addWidget(m_choice);
  m_pages = new QStackedWidget(this);
  m_outline = new OutlinePage(session, desk, m_pages);
  m_things = new ThingsPage(session, m_pages);
  m_looked = new LookedPage(session, m_pages);
  m_check = new CheckPage(session, m_pages);
  for (QWidget* page : std::initializer_list<QWidget*>{m_outline, m_things, m_looked, m_check}) {
    m_pages->addWidget(page);
  }
  column->addWidget(m_pages, 1);
  m_choice->show(0);
  connect(m_choice, &Segments::picked, this,
          [this](int index) { showPage(static_cast<SurveyPage>(index)); });
  connect(m_outline, &OutlinePage::outlineClosed, this, [this] { showPage(SurveyPage::things); });
  connect(&session, &session::Session::jobChanged, this, [this] {
    const bool begun = m_session.hasJob() && m_session.study() != nullptr;
    showPage(begun ? SurveyPage::things : SurveyPage::outline);
  });
}

void SurveyPanel::showPage(SurveyPage page) {
  m_choice->show(static_cast<int>(page));
  m_pages->setCurrentIndex(static_cast<int>(page));
  if (isVisible()) takeFocus();
}

void SurveyPanel::takeFocus() {
  switch (page()) {
    case SurveyPage::outline:
      return m_outline->takeFocus();
    case SurveyPage::things:
      return m_things->takeFocus();
    case SurveyPage::looked:
      return m_looked->takeFocus();
    case SurveyPage::check:
      return m_check->takeFocus();
  }
}

}  // namespace sumpwright::stages
