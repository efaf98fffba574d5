#include "stages/LookedPage.h"

#include <QGridLayout>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>
#include <array>

#include "paint/Look.h"
#include "plan/FactEdits.h"

namespace sumpwright::stages {

namespace {

using plan::Looked;
using plan::LookedFor;

constexpr std::array<Looked LookedFor::*, 11> kLookedFields{
    &LookedFor::openings,     &LookedFor::gas,           &LookedFor::electricity,
    &LookedFor::water,        &LookedFor::telecom,       &LookedFor::oil,
    &LookedFor::drain,        &LookedFor::flue_terminal, &LookedFor::heating,
    &LookedFor::standby_pipe, &LookedFor::open_flue};

}  // namespace

LookedPage::LookedPage(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setAccessibleName(tr("Looked for"));
  const std::array<QString, 11> names{
      tr("Openings"), tr("Gas"),          tr("Electricity"), tr("Water"),
      tr("Telecom"),  tr("Oil"),          tr("Drains"),      tr("Flue terminals"),
      tr("Heating"),  tr("Standby pipe"), tr("Open flues")};
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  auto* why =
      new QLabel(tr("Nothing drawn does not mean nothing there. Say for each whether somebody "
                    "looked, and draw what was found."),
                 this);
  why->setWordWrap(true);
  why->setProperty("tone", QStringLiteral("second"));
  column->addWidget(why);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  auto* rows = new QWidget(scroll);
  auto* grid = new QGridLayout(rows);
  grid->setContentsMargins(0, 0, qRound(10 * paint::uiScale(font())), 0);
  grid->setVerticalSpacing(4);
  for (std::size_t i = 0; i < kLookedFields.size(); ++i) {
    const int row = static_cast<int>(i);
    auto* name = new QLabel(names[i], rows);
    grid->addWidget(name, row, 0);
    auto* answer = new Segments(names[i], {tr("Not yet"), tr("There"), tr("None")}, rows);
    grid->addWidget(answer, row, 1);
    connect(answer, &Segments::picked, this, [this, i](int index) { set(i, index); });
    m_rows.push_back(answer);
  }
  grid->setColumnStretch(1, 1);
  grid->setRowStretch(static_cast<int>(kLookedFields.size()), 1);
  scroll->setWidget(rows);
  column->addWidget(scroll, 1);
  connect(&session, &session::Session::studyChanged, this, &LookedPage::refresh);
  connect(&session, &session::Session::jobChanged, this, &LookedPage::refresh);
  refresh();
}

void LookedPage::takeFocus() {
  Segments* first = m_rows.front();
  first->button(std::max(0, first->chosen()))->setFocus(Qt::OtherFocusReason);
}

void LookedPage::refresh() {
  if (!m_session.hasJob() || m_session.isPreviewing()) return;
  const LookedFor& looked = m_session.job().looked_for;
  for (std::size_t i = 0; i < kLookedFields.size(); ++i) {
    m_rows[i]->show(static_cast<int>(looked.*kLookedFields[i]));
  }
}

void LookedPage::set(std::size_t row, int answer) {
  if (!m_session.hasJob()) return;
  LookedFor looked = m_session.job().looked_for;
  looked.*kLookedFields[row] = static_cast<Looked>(answer);
  const base::Problems problems =
      m_session.edit(tr("Say what was looked for"), plan::setLookedFor(m_session.job(), looked));
  if (!problems.empty()) refresh();
}

}  // namespace sumpwright::stages
