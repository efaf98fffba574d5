#include "window/TopRow.h"

#include <QHBoxLayout>
#include <QStyle>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "geometry/Shapes.h"
#include "paint/Look.h"
#include "plan/KindNames.h"
#include "stages/SitingText.h"

namespace sumpwright::window {

namespace {

QString areaOf(const plan::Job& job) {
  double area = 0.0;  // courtyards are walked clockwise: they take themselves off
  for (const plan::Ring& ring : job.plan.rings) area += geometry::signedArea(ring.corners);
  words::QuantityStyle style;
  style.decimals = 1;
  return QString::fromStdString(
      words::print({std::max(0.0, area), base::Unit::squareMetre}, stages::unitsOf(job), style));
}

}  // namespace

TopRow::TopRow(session::Session& session, QAction* undo, QAction* redo, QAction* paper,
               QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_texts(new QWidget(this)),
      m_address(new QLabel(m_texts)),
      m_subtitle(new QLabel(m_texts)),
      m_saved(new QLabel(this)),
      m_paper(new stages::ActionButton(stages::ActionButton::Role::primary, this)) {
  const double k = paint::uiScale(font());
  setProperty("surface", QStringLiteral("panel"));
  setAttribute(Qt::WA_StyledBackground);
  setFixedHeight(qRound(48 * k));
  m_address->setFont(paint::sized(font(), 1.15, true));
  m_subtitle->setFont(paint::sized(font(), 0.88));
  m_subtitle->setProperty("tone", QStringLiteral("second"));
  m_saved->setFont(paint::sized(font(), 0.92));
  m_saved->setProperty("tone", QStringLiteral("second"));
  m_saved->setObjectName(QStringLiteral("savedState"));
  m_texts->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  auto* texts = new QVBoxLayout(m_texts);
  texts->setContentsMargins(0, qRound(5 * k), 0, qRound(4 * k));
  texts->setSpacing(0);
  texts->addWidget(m_address);
  texts->addWidget(m_subtitle);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(qRound(20 * k), 0, qRound(16 * k), 0);
  row->setSpacing(qRound(6 * k));
  row->addWidget(m_texts, 1);
  row->addWidget(m_saved);
  row->addSpacing(qRound(8 * k));
  for (QAction* action : {undo, redo}) {
    auto* button = new stages::ActionButton(stages::ActionButton::Role::square, this);
    button->bind(action);
    row->addWidget(button);
  }
  m_paper->bind(paper);
  row->addWidget(m_paper);

  auto* clock = new QTimer(this);  // "Saved 14:02" turns into a date overnight
  clock->start(60'000);
  connect(clock, &QTimer::timeout, this, &TopRow::refreshSaved);
  connect(&session, &session::Session::jobChanged, this, &TopRow::refreshJob);
  connect(&session, &session::Session::studyChanged, this, &TopRow::refreshJob);
  connect(&session, &session::Session::savedStateChanged, this, &TopRow::refreshJob);
  refreshJob();
}

void TopRow::refreshJob() {
  m_address_text.clear();
  m_subtitle_text.clear();
  if (m_session.hasJob()) {
    const plan::Job& job = m_session.job();
    m_address_text = QString::fromStdString(job.address);
    if (m_address_text.isEmpty())
      m_address_text = m_session.path().isEmpty() ? tr("New job") : tr("No address");
    QStringList parts;
    if (const siting::Study* study = m_session.study()) {
      parts << tr("%1 within the outside walls").arg(areaOf(job));
      parts << QString::fromStdString(study->sheet().title);
      parts << tr("core %1").arg(stages::said(
          base::Message("quantity.of", {base::millimetres("value", 1000.0 * study->site().core_m)}),
          job));
    }
    m_subtitle_text = parts.join(QStringLiteral(" · "));
  }
  elide();
  refreshSaved();
}

void TopRow::refreshSaved() {
  if (!m_session.hasJob()) return m_saved->clear();
  const bool modified = m_session.isModified();
  const bool never = m_session.path().isEmpty();
  m_saved->setProperty("tone", modified ? QStringLiteral("warning") : QStringLiteral("second"));
  m_saved->style()->unpolish(m_saved);  // asks the sheet again, now that the tone is another
  m_saved->style()->polish(m_saved);
  if (modified || never) return m_saved->setText(never ? tr("Never saved") : tr("Not saved"));
  const QDateTime at = m_session.savedAt();
  const bool today = at.date() == QDate::currentDate();
  m_saved->setText(tr("Saved %1")
                       .arg(today ? at.toString(QStringLiteral("HH:mm"))
                                  : at.toString(QStringLiteral("yyyy-MM-dd"))));
}

void TopRow::elide() {
  const int room = m_texts->width();
  m_address->setText(
      QFontMetrics(m_address->font()).elidedText(m_address_text, Qt::ElideRight, room));
  m_subtitle->setText(
      QFontMetrics(m_subtitle->font()).elidedText(m_subtitle_text, Qt::ElideRight, room));
  m_address->setToolTip(m_address_text);
  m_subtitle->setToolTip(m_subtitle_text);
}

void TopRow::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  elide();
}

}  // namespace sumpwright::window
