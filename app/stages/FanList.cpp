#include "stages/FanList.h"

#include <QLayout>
#include <algorithm>
#include <cmath>

#include "paint/Look.h"
#include "plan/SuctionEdits.h"
#include "plan/SumpList.h"
#include "stages/NoteOnTop.h"
#include "stages/SitingText.h"
#include "stages/SuctionFacts.h"
#include "stages/SurveyText.h"

namespace sumpwright::stages {

namespace {

constexpr double kFanSecondsAnHour = 3600.0;

QString suitsWord(airflow::FanSuits suits) {
  if (suits == airflow::FanSuits::yes) return FanList::tr("suits");
  if (suits == airflow::FanSuits::noisy) return FanList::tr("suits, but is heard");
  return FanList::tr("does not suit");
}

/// Of all its fans together.
QString dutyText(const airflow::DutySummary& duty, const plan::Job& job) {
  base::Flow sum;
  for (const airflow::LineDuty& line : duty.lines) sum += line.flow;
  const QString air = flow(sum.m3PerS() * kFanSecondsAnHour, job);
  if (duty.lines.size() > 1) return FanList::tr("≈ %1, fans: %2").arg(air).arg(duty.lines.size());
  if (duty.lines.empty()) return {};
  return FanList::tr("≈ %1 at ≈ %2").arg(air, pressure(duty.lines[0].fan.pa(), job));
}

}  // namespace

FanList::FanList(session::Session& session, session::SuctionDesk& desk, QWidget* parent)
    : QWidget(parent), m_session(session), m_desk(desk), m_note(noteOnTop(this)) {
  setAccessibleName(tr("Which fan suits"));
}

void FanList::addRow() {
  const std::size_t index = m_rows.size();
  Row row{new FanCell(this), new QLabel(this)};
  row.cell->setObjectName(QStringLiteral("fan%1").arg(index));
  row.remark->setWordWrap(true);
  row.remark->setTextFormat(Qt::PlainText);
  row.remark->setProperty("tone", QStringLiteral("second"));
  row.remark->setFont(paint::sized(font(), 0.87));
  layout()->addWidget(row.cell);
  layout()->addWidget(row.remark);
  connect(row.cell, &FanCell::clicked, this, [this, index] { take(index); });
  m_rows.push_back(row);
}

/// One step; the one in use stays.
void FanList::take(std::size_t index) {
  const siting::FanOffer& offer = m_offers[index];
  if (offer.taken) return;
  plan::FanPick fan;
  fan.table = offer.table;
  fan.id = offer.id;
  fan.speed = m_session.job().design.fan.speed;
  const base::Problems problems =
      m_session.edit(tr("Choose the fan"), plan::setFan(m_session.job(), fan));
  if (!problems.empty()) m_note->setText(said(problems.front().message, m_session.job()));
}

void FanList::look() {
  m_offers.clear();
  const siting::SuctionAnswer* answer = m_desk.answer();
  // Without a sump the study answers for the best place: that is not what stands on the plan.
  if (answer == nullptr || !plan::hasPlacedSump(m_session.job())) return;
  for (const siting::FanOffer& one : answer->fans) {
    if (m_offers.size() < kMost || one.taken) m_offers.push_back(one);
  }
}

QString FanList::why() const {
  if (m_offers.empty()) {
    return m_desk.isWorking() ? tr("Being worked out with the guesses at the ground.")
                              : tr("Fans are compared once a sump stands in a floor on fill.");
  }
  QString note;
  const auto& reasons = m_offers.front().verdict.reasons;
  // Why the first is first; what it holds stands in its row.
  const bool says = !reasons.empty() && reasons.front().id != "airflow.choice.floor-held" &&
                    reasons.front().id != "airflow.choice.floor-short";
  if (says) note = said(reasons.front(), m_session.job()) + QLatin1Char(' ');
  const std::size_t all = m_desk.answer()->fans.size();
  if (all > m_offers.size()) note += tr("The best of %1. ").arg(all);
  return note + tr("Share of the floor held on the middle guess, predicted; electricity alone, the "
                   "heat of the air drawn comes on top. Press one to take it.");
}

QString FanList::costText(const siting::FanOffer& offer, const price::Tariff& tariff) const {
  if (!offer.verdict.power_w) return tr("its power is not known");
  const price::RunningYear year =
      price::runningYear(0.0, offer.verdict.power_w, m_session.job().design.running, tariff);
  const QString power = tr("≈ %1 W").arg(std::lround(*offer.verdict.power_w));
  if (!year.fan->cost) return tr("%1, ≈ %2 kWh a year").arg(power).arg(std::lround(year.fan->kwh));
  const QString cost = QString::fromStdString(price::moneyText(*year.fan->cost, 0));
  return tr("%1, ≈ %2 %3 a year")
      .arg(power, cost, QString::fromStdString(tariff.currency))
      .simplified();
}

void FanList::showRow(std::size_t index, const price::Tariff& tariff) {
  const siting::FanOffer& offer = m_offers[index];
  const plan::Job& job = m_session.job();
  FanLine line;
  line.title = fanTitle(offer.title, offer.invented);
  line.figure =
      tr("≈ %1 %").arg(static_cast<int>(std::floor(100.0 * offer.verdict.held.value_or(0) + 1e-9)));
  line.duty = offer.taken ? tr("in use: %1").arg(dutyText(offer.verdict.duty, job))
                          : dutyText(offer.verdict.duty, job);
  line.cost = costText(offer, tariff);
  line.taken = offer.taken;
  line.state_word = suitsWord(offer.verdict.suits);
  line.state = offer.verdict.suits == airflow::FanSuits::yes ? rules::State::clear
                                                             : rules::State::advised_against;
  m_rows[index].cell->show(line);
  QStringList remarks;
  for (const base::Message& one : offer.verdict.duty.remarks) remarks << said(one, job);
  m_rows[index].remark->setText(remarks.join(QLatin1Char(' ')));
  m_rows[index].remark->setVisible(!remarks.isEmpty());
}

void FanList::refresh(const price::Tariff& tariff) {
  if (!m_session.hasJob() || m_session.isMoving() || m_session.isPreviewing()) return;
  look();
  while (m_rows.size() < m_offers.size()) addRow();
  for (std::size_t k = 0; k < m_rows.size(); ++k) {
    m_rows[k].cell->setVisible(k < m_offers.size());
    m_rows[k].remark->setVisible(false);
    if (k < m_offers.size()) showRow(k, tariff);
  }
  m_note->setText(why());
}

}  // namespace sumpwright::stages
