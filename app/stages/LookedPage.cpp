#include "stages/LookedPage.h"

#include <QAbstractButton>
#include <QFocusEvent>
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

constexpr std::array<const char*, 11> kLookedKeys{
    "openings", "gas",           "electricity", "water",        "telecom",  "oil",
    "drain",    "flue_terminal", "heating",     "standby_pipe", "open_flue"};

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
                    "looked, and draw what was found. Are those drawn all there are?"),
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
    auto* what = new QVBoxLayout;
    what->setSpacing(0);
    auto* drawn = new QLabel(rows);
    drawn->setProperty("tone", QStringLiteral("second"));
    drawn->setFont(paint::sized(font(), 0.85));
    drawn->hide();
    what->addStretch();
    what->addWidget(new QLabel(names[i], rows));
    what->addWidget(drawn);
    what->addStretch();
    grid->addLayout(what, row, 0);
    auto* answer = new Segments(names[i], {tr("Not yet"), tr("There"), tr("None")}, rows);
    grid->addWidget(answer, row, 1, Qt::AlignVCenter);
    connect(answer, &Segments::picked, this, [this, i](int index) { set(i, index); });
    for (int b = 0; b < 3; ++b) answer->button(b)->installEventFilter(this);
    m_rows.push_back(answer);
    m_drawn.push_back(drawn);
  }
  grid->setColumnStretch(1, 1);
  grid->setRowStretch(static_cast<int>(kLookedFields.size()), 1);
  scroll->setWidget(rows);
  column->addWidget(scroll, 1);
  connect(&session, &session::Session::studyChanged, this, &LookedPage::refresh);
  connect(&session, &session::Session::jobChanged, this, [this] {
    m_counts.clear();
    m_found.reset();
    refresh();
  });
  refresh();
}

void LookedPage::takeFocus() {
  Segments* first = m_rows.front();
  first->button(std::max(0, first->chosen()))->setFocus(Qt::OtherFocusReason);
}

void LookedPage::refresh() {
  if (!m_session.hasJob() || m_session.isPreviewing()) return;
  const LookedFor& looked = m_session.job().looked_for;
  m_counts.resize(kLookedFields.size());
  for (std::size_t i = 0; i < kLookedFields.size(); ++i) {
    watchFound(i, looked.*kLookedFields[i]);
    m_rows[i]->show(static_cast<int>(looked.*kLookedFields[i]));
    const QString text = drawnText(i);
    m_drawn[i]->setText(text);
    m_drawn[i]->setVisible(!text.isEmpty());
  }
}

/// By whatever hand it is drawn, on the plan or by the line: "None" was an answer about the house,
/// and one that is there after all asks whether there are more.
void LookedPage::watchFound(std::size_t row, Looked answer) {
  const std::size_t before = m_counts[row];
  m_counts[row] = plan::drawnOfKind(m_session.job(), kLookedKeys[row]);
  const bool was_none = m_rows[row]->chosen() == static_cast<int>(Looked::looked_none);
  if (was_none && answer == Looked::present && m_counts[row] > before) {
    m_found = row;
    Q_EMIT foundAfterAll(m_rows[row]->accessibleName());
  } else if (m_found == row && answer != Looked::present) {
    m_found.reset();
    Q_EMIT foundAfterAll({});
  }
}

QString LookedPage::drawnText(std::size_t row) const {
  if (!m_session.hasJob()) return {};
  const std::size_t count = plan::drawnOfKind(m_session.job(), kLookedKeys[row]);
  if (count == 0) return {};
  return tr("%1 drawn").arg(count);
}

bool LookedPage::takeFocusAt(const std::string& pointer) {
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    if (pointer != std::string("/looked_for/") + kLookedKeys[i]) continue;
    m_rows[i]->button(std::max(0, m_rows[i]->chosen()))->setFocus(Qt::OtherFocusReason);
    return true;
  }
  return false;
}

bool LookedPage::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::FocusIn) {
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
      if (watched->parent() != m_rows[i]) continue;
      const auto reason = static_cast<QFocusEvent*>(event)->reason();
      if (i != m_row_in_hand || reason == Qt::MouseFocusReason) m_gesture = m_session.newGesture();
      m_row_in_hand = i;
    }
  }
  return QWidget::eventFilter(watched, event);
}

void LookedPage::set(std::size_t row, int answer) {
  if (!m_session.hasJob()) return;
  if (row != m_row_in_hand || m_gesture == 0) m_gesture = m_session.newGesture();
  m_row_in_hand = row;
  LookedFor looked = m_session.job().looked_for;
  looked.*kLookedFields[row] = static_cast<Looked>(answer);
  const base::Problems problems = m_session.edit(
      tr("Say what was looked for"), plan::setLookedFor(m_session.job(), looked), m_gesture);
  if (!problems.empty()) refresh();
}

}  // namespace sumpwright::stages
