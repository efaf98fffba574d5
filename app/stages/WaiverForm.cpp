#include "stages/WaiverForm.h"

#include <QDate>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QVBoxLayout>
#include <algorithm>

#include "paint/Look.h"
#include "stages/SitingText.h"
#include "stages/SteadyCombo.h"

namespace sumpwright::stages {

WaiverForm::WaiverForm(session::Session& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_which(new SteadyCombo(this)),
      m_evidence(new QLabel(this)),
      m_reason(new QPlainTextEdit(this)),
      m_name(new QLineEdit(this)),
      m_date(new QLineEdit(this)),
      m_message(new QLabel(this)),
      m_record(new QPushButton(tr("Record waiver"), this)) {
  m_which->setAccessibleName(tr("Rule and thing to waive"));
  m_which->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_evidence->setWordWrap(true);
  m_evidence->setProperty("tone", QStringLiteral("warning"));
  m_reason->setAccessibleName(tr("Reason and evidence"));
  m_reason->setPlaceholderText(tr("Why this place is accepted, and what that rests on"));
  m_reason->setTabChangesFocus(true);
  m_reason->setFixedHeight(qRound(66 * paint::uiScale(font())));
  m_name->setAccessibleName(tr("Name"));
  m_name->setPlaceholderText(tr("who accepts it"));
  m_date->setAccessibleName(tr("Date"));
  m_date->setPlaceholderText(tr("yyyy-mm-dd"));
  m_message->setWordWrap(true);
  m_message->setProperty("tone", QStringLiteral("warning"));
  m_message->hide();
  m_record->setProperty("role", QStringLiteral("primary"));
  auto* cancel = new QPushButton(tr("Cancel"), this);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(4, 4, 4, 4);
  column->setSpacing(8);
  column->addWidget(m_which);
  column->addWidget(m_evidence);
  column->addWidget(m_reason);
  auto* who = new QHBoxLayout;
  who->setSpacing(8);
  who->addWidget(m_name, 3);
  who->addWidget(m_date, 2);
  column->addLayout(who);
  column->addWidget(m_message);
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(m_record);
  buttons->addStretch();
  buttons->addWidget(cancel);
  column->addLayout(buttons);
  auto* note =
      new QLabel(tr("The place stays refused. Every paper prints the waiver; it lapses when "
                    "the sump is moved more than 10 mm."),
                 this);
  note->setWordWrap(true);
  note->setProperty("tone", QStringLiteral("second"));
  column->addWidget(note);
  column->addStretch();
  connect(m_which, &QComboBox::currentIndexChanged, this, &WaiverForm::chooseFinding);
  connect(m_record, &QPushButton::clicked, this, &WaiverForm::submit);
  connect(cancel, &QPushButton::clicked, this, &WaiverForm::close);
}

std::vector<rules::Finding> WaiverForm::waivable(const session::Session& session) {
  std::vector<rules::Finding> found;
  if (session.assessment() == nullptr) return found;
  const siting::Assessment& a = *session.assessment();
  for (std::size_t i = 0; i < a.findings.size(); ++i) {
    if (mayWaive(a.findings[i]) && !a.accepted[i]) found.push_back(a.findings[i]);
  }
  return found;
}

void WaiverForm::open(const std::string& rule) {
  m_findings = waivable(m_session);
  std::stable_partition(m_findings.begin(), m_findings.end(),
                        [&](const rules::Finding& f) { return f.rule == rule; });
  m_which->clear();
  for (const rules::Finding& f : m_findings) {
    const rules::Rule* in_sheet = m_session.study()->sheet().find(f.rule);
    const QString title = QString::fromStdString(in_sheet == nullptr ? f.rule : in_sheet->title);
    const QString thing =
        said(f.thing_label.id.empty() ? f.reason : f.thing_label, m_session.job());
    m_which->addItem(title + QStringLiteral(": ") + thing);
  }
  m_reason->clear();
  if (m_name->text().isEmpty()) m_name->setText(QString::fromStdString(m_session.job().surveyor));
  m_name->setCursorPosition(0);
  m_date->setText(QDate::currentDate().toString(Qt::ISODate));
  m_message->hide();
  m_reason->setFocus(Qt::OtherFocusReason);
}

void WaiverForm::chooseFinding(int index) {
  if (index < 0) return;
  const auto& finding = m_findings[static_cast<std::size_t>(index)];
  m_evidence->setText(evidenceText(finding.waivable.evidence));
}

void WaiverForm::submit() {
  const int index = m_which->currentIndex();
  if (index < 0 || !m_session.place()) return;
  if (!m_date->text().trimmed().isEmpty() &&
      !QDate::fromString(m_date->text().trimmed(), Qt::ISODate).isValid()) {
    m_message->setText(
        tr("“%1” is not a date. Type year-month-day, as 2026-03-31.").arg(m_date->text()));
    m_message->show();
    return;
  }
  const rules::Finding& f = m_findings[static_cast<std::size_t>(index)];
  plan::Waiver waiver;
  waiver.sump = m_session.sump();
  waiver.rule = f.rule;
  waiver.thing = f.thing;
  waiver.ring = m_session.place()->ring;
  waiver.chainage_m = m_session.place()->chainage_m;
  waiver.evidence = f.waivable.evidence;
  waiver.reason = m_reason->toPlainText().trimmed().toStdString();
  waiver.name = m_name->text().trimmed().toStdString();
  waiver.date = m_date->text().trimmed().toStdString();
  const base::Problems problems = m_session.recordWaiver(waiver);
  if (problems.empty()) return close();
  QStringList lines;
  for (const base::Problem& p : problems) lines << said(p.message, m_session.job());
  m_message->setText(lines.join(QLatin1Char('\n')));
  m_message->show();
}

void WaiverForm::close() { Q_EMIT closed(); }

void WaiverForm::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return close();
  QWidget::keyPressEvent(event);
}

}  // namespace sumpwright::stages
