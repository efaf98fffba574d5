#include "stages/WaiverList.h"

#include <QHBoxLayout>
#include <QPushButton>

#include "paint/Look.h"
#include "stages/SitingText.h"

namespace sumpwright::stages {

WaiverList::WaiverList(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_rows(new QVBoxLayout(this)) {
  m_rows->setContentsMargins(0, 0, 0, 0);
  m_rows->setSpacing(4);
}

void WaiverList::refresh() {
  while (QLayoutItem* item = m_rows->takeAt(0)) {
    if (item->widget() != nullptr) item->widget()->deleteLater();
    delete item;
  }
  const siting::Study* study = m_session.study();
  const auto place = m_session.place();
  if (study == nullptr || !place) return hide();
  for (const plan::Waiver& w : m_session.job().design.waivers) {
    if (w.sump != m_session.sump()) continue;
    addRow(w, plan::waiverHolds(w, place->ring, place->chainage_m,
                                study->perimeter().length_m(place->ring)));
  }
  setVisible(m_rows->count() > 0);
}

void WaiverList::addRow(const plan::Waiver& waiver, bool holds) {
  const siting::Study& study = *m_session.study();
  const rules::Rule* rule = study.sheet().find(waiver.rule);
  QString title = QString::fromStdString(rule == nullptr ? waiver.rule : rule->title);
  if (!waiver.thing.empty())
    title += QStringLiteral(": ") + said(study.labelOf(waiver.thing), study.job());
  const QString reason =
      tr("“%1” — %2, %3")
          .arg(QString::fromStdString(waiver.reason), QString::fromStdString(waiver.name),
               QString::fromStdString(waiver.date));
  auto* row = new QWidget(this);
  auto* layout = new QHBoxLayout(row);
  layout->setContentsMargins(0, 2, 0, 2);
  auto* text = new QLabel(row);
  text->setWordWrap(true);
  text->setTextFormat(Qt::RichText);
  const QString body =
      QStringLiteral("<b>%1</b><br>%2").arg(title.toHtmlEscaped(), reason.toHtmlEscaped());
  text->setText(holds ? tr("Waiver — %1").arg(body)
                      : tr("Lapsed — %1").arg(QStringLiteral("<s>%1</s>").arg(body)));
  text->setObjectName(holds ? QStringLiteral("waiver") : QStringLiteral("lapsedWaiver"));
  text->setFont(paint::sized(font(), 0.9));
  layout->addWidget(text, 1);
  auto* withdraw = new QPushButton(tr("Withdraw"), row);
  withdraw->setFocusPolicy(Qt::TabFocus);
  withdraw->setAccessibleName(tr("Withdraw the waiver of %1").arg(title));
  layout->addWidget(withdraw, 0, Qt::AlignTop);
  connect(withdraw, &QPushButton::clicked, this,
          [this, id = waiver.id] { m_session.withdrawWaiver(id); });
  m_rows->addWidget(row);
}

}  // namespace sumpwright::stages
