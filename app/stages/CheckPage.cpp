#include "stages/CheckPage.h"

#include <QEvent>
#include <QVBoxLayout>
#include <algorithm>

#include "paint/Icons.h"
#include "paint/Look.h"
#include "plan/Fixes.h"
#include "stages/Leading.h"
#include "stages/SitingText.h"
#include "stages/ThingText.h"

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
  m_list->viewport()->installEventFilter(this);
  m_list->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
  column->addWidget(m_list, 1);
  m_fix = new QPushButton(this);
  m_fix->setProperty("role", QStringLiteral("primary"));
  m_fix->hide();
  column->addWidget(m_fix);
  m_answer = new QPushButton(tr("Go where it is answered"), this);
  m_answer->setToolTip(tr("Opens the page and field; Enter on the line does the same"));
  m_answer->hide();
  column->addWidget(m_answer);
  connect(m_answer, &QPushButton::clicked, this, [this] { lead(chosen()); });
  connect(m_fix, &QPushButton::clicked, this, &CheckPage::fix);
  connect(m_list, &QListWidget::itemSelectionChanged, this, &CheckPage::offer);
  connect(m_list, &QListWidget::itemActivated, this,
          [this](QListWidgetItem* item) { lead(m_list->row(item)); });
  connect(m_list, &QListWidget::itemClicked, this,
          [this](QListWidgetItem* item) { point(m_list->row(item)); });
  connect(&session, &session::Session::studyChanged, this, &CheckPage::refresh);
  connect(&session, &session::Session::jobChanged, this, &CheckPage::refresh);
  refresh();
}

void CheckPage::refresh() {
  if (m_session.isPreviewing()) return;  // a drag shows its faults on the plan; the list can wait
  m_list->clear();
  m_rows.clear();
  m_fix->hide();
  m_answer->hide();
  if (!m_session.hasJob()) return m_summary->clear();
  const plan::Job& job = m_session.job();
  int unsound = 0;
  int missing = 0;
  for (const base::Gravity gravity : {base::Gravity::unsound, base::Gravity::missing}) {
    base::Problems problems = m_session.problems();
    problems.insert(problems.end(), m_more.begin(), m_more.end());
    for (const base::Problem& p : problems) {
      if (p.gravity != gravity) continue;
      ++(gravity == base::Gravity::unsound ? unsound : missing);
      const QString stage = stageOf(p);
      const QString text = saidNamed(p.message, job);
      auto* item = new QListWidgetItem(
          stage.isEmpty() ? text : tr("%1: %2", "stage, what is missing").arg(stage, text), m_list);
      item->setIcon(checkSign(
          gravity == base::Gravity::unsound ? rules::State::refused : rules::State::not_proven,
          palette(), paint::uiScale(font())));
      m_rows.push_back(p);
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
  fitLines();
}

/// Each line as high as its text needs: what the list makes of it by itself leaves the padding out.
void CheckPage::fitLines() {
  const double k = paint::uiScale(font());
  const int width = m_list->viewport()->width() - qRound(48 * k);
  const QFontMetrics metrics(m_list->font());
  for (int row = 0; row < m_list->count(); ++row) {
    QListWidgetItem* item = m_list->item(row);
    const QRect text = metrics.boundingRect(0, 0, std::max(width, 40), 10'000,
                                            Qt::TextWordWrap | Qt::AlignLeft, item->text());
    item->setSizeHint(QSize(10, text.height() + qRound(14 * k)));
  }
}

void CheckPage::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) refresh();  // the signs have the theme's colours
}

bool CheckPage::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::Resize) fitLines();
  return QWidget::eventFilter(watched, event);
}

int CheckPage::chosen() const {
  const QList<QListWidgetItem*> chosen = m_list->selectedItems();
  return chosen.isEmpty() ? -1 : m_list->row(chosen.front());
}

/// The cure of the chosen line, where there is a safe one, and the way to where it is answered.
void CheckPage::offer() {
  const int row = chosen();
  m_fix->hide();
  m_answer->setVisible(row >= 0);
  if (row < 0 || !m_session.hasJob()) return;
  const auto fix = plan::fixFor(m_session.job(), m_rows[static_cast<std::size_t>(row)]);
  if (!fix) return;
  m_fix->setText(said(fix->says, m_session.job()));
  m_fix->show();
}

void CheckPage::fix() {
  const int row = chosen();
  if (row < 0 || !m_session.hasJob()) return;
  auto fix = plan::fixFor(m_session.job(), m_rows[static_cast<std::size_t>(row)]);
  if (!fix) return;
  const QString text = said(fix->says, m_session.job());
  m_session.edit(text, std::move(fix->job));
}

void CheckPage::lead(int row) {
  const auto index = static_cast<std::size_t>(row);
  if (row < 0 || index >= m_rows.size()) return;
  const base::Problem problem = m_rows[index];  // the list may be made anew on the way
  Q_EMIT led(problem);
}

/// A click shows the thing; the page is left only where nothing else is offered here.
void CheckPage::point(int row) {
  const auto index = static_cast<std::size_t>(row);
  if (row < 0 || index >= m_rows.size() || !m_session.hasJob()) return;
  if (!plan::fixFor(m_session.job(), m_rows[index])) return lead(row);
  const std::string thing = thingAnswering(m_session.job(), m_rows[index]);
  if (!thing.empty()) m_session.show(thing);
}

void CheckPage::setMore(const base::Problems& more) {
  if (more == m_more) return;
  m_more = more;
  refresh();
}

}  // namespace sumpwright::stages
