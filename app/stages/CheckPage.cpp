#include "stages/CheckPage.h"

#include <QVBoxLayout>

#include "paint/Icons.h"
#include "paint/Look.h"
#include "plan/Fixes.h"
#include "plan/PlanCheck.h"
#include "stages/SitingText.h"

namespace sumpwright::stages {

namespace {

QIcon checkSign(rules::State state, const QPalette& palette, double scale) {
  const int side = qRound(18 * scale);
  QPixmap picture(side, side);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  paint::paintSign(painter, state, QPointF(side / 2.0, side / 2.0), side - 2.0,
                   paint::themeOf(palette));
  return QIcon(picture);
}

}  // namespace

CheckPage::CheckPage(session::Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
  setAccessibleName(tr("Plan check"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(8);
  m_summary = new QLabel(this);
  m_summary->setWordWrap(true);
  m_summary->setFont(paint::sized(font(), 1.25));
  column->addWidget(m_summary);
  m_list = new QListWidget(this);
  m_list->setAccessibleName(tr("What is wrong or missing"));
  m_list->setWordWrap(true);
  m_list->setFrameShape(QFrame::NoFrame);
  m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  m_list->setSpacing(3);
  column->addWidget(m_list, 1);
  m_fix = new QPushButton(this);
  m_fix->setProperty("role", QStringLiteral("primary"));
  m_fix->hide();
  column->addWidget(m_fix);
  connect(m_fix, &QPushButton::clicked, this, &CheckPage::fix);
  connect(m_list, &QListWidget::itemSelectionChanged, this, &CheckPage::offer);
  connect(m_list, &QListWidget::itemActivated, this,
          [this](QListWidgetItem* item) { goTo(m_list->row(item)); });
  connect(m_list, &QListWidget::itemClicked, this,
          [this](QListWidgetItem* item) { goTo(m_list->row(item)); });
  connect(&session, &session::Session::studyChanged, this, &CheckPage::refresh);
  connect(&session, &session::Session::jobChanged, this, &CheckPage::refresh);
  refresh();
}

void CheckPage::refresh() {
  if (m_session.isPreviewing()) return;  // a drag shows its faults on the plan; the list can wait
  m_list->clear();
  m_rows.clear();
  m_things.clear();
  m_fix->hide();
  if (!m_session.hasJob()) return m_summary->clear();
  const plan::Job& job = m_session.job();
  int unsound = 0;
  int missing = 0;
  for (const base::Gravity gravity : {base::Gravity::unsound, base::Gravity::missing}) {
    for (const base::Problem& p : m_session.problems()) {
      if (p.gravity != gravity) continue;
      ++(gravity == base::Gravity::unsound ? unsound : missing);
      auto* item = new QListWidgetItem(said(p.message, job), m_list);
      item->setIcon(checkSign(
          gravity == base::Gravity::unsound ? rules::State::refused : rules::State::not_proven,
          palette(), paint::uiScale(font())));
      m_rows.push_back(p);
      m_things.push_back(plan::thingAt(job, p.pointer));
    }
  }
  QString text = unsound == 1  ? tr("One thing cannot be.")
                 : unsound > 1 ? tr("%1 things cannot be.").arg(unsound)
                               : tr("Nothing contradicts itself.");
  text += QLatin1Char(' ');
  text += missing == 1  ? tr("One thing is not known yet.")
          : missing > 1 ? tr("%1 things are not known yet.").arg(missing)
                        : tr("Nothing is missing.");
  m_summary->setText(text);
}

/// The cure of the chosen line, where there is a safe one.
void CheckPage::offer() {
  const QList<QListWidgetItem*> chosen = m_list->selectedItems();
  m_fix->hide();
  if (chosen.isEmpty() || !m_session.hasJob()) return;
  const auto row = static_cast<std::size_t>(m_list->row(chosen.front()));
  const auto fix = plan::fixFor(m_session.job(), m_rows[row]);
  if (!fix) return;
  m_fix->setText(said(fix->says, m_session.job()));
  m_fix->show();
}

void CheckPage::fix() {
  const QList<QListWidgetItem*> chosen = m_list->selectedItems();
  if (chosen.isEmpty() || !m_session.hasJob()) return;
  const auto row = static_cast<std::size_t>(m_list->row(chosen.front()));
  auto fix = plan::fixFor(m_session.job(), m_rows[row]);
  if (!fix) return;
  const QString text = said(fix->says, m_session.job());
  m_session.edit(text, std::move(fix->job));
}

void CheckPage::goTo(int row) {
  const auto index = static_cast<std::size_t>(row);
  if (row < 0 || index >= m_things.size() || m_things[index].empty()) return;
  m_session.show(m_things[index]);
}

}  // namespace sumpwright::stages
